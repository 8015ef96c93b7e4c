"""What the simulated machine is built from: the traits and plate figures of a machine, in SI."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

__all__ = ["Plate"]

# Usual figures, taken where a plate says nothing: judgement, in SI.
_USUAL = {
    "frequency": 60.0,
    "control_volts": 120.0,
    "rinse_pressure": 137895.0,  # 20 psi
    "rinse_temperature": 355.37,  # 180 °F
    "wash_temperature": 338.71,  # 150 °F
    "rinse_tank_temperature": 344.26,  # 160 °F
    "booster_volume": 0.0114,
    "booster_inlet": 333.15,
    "wash_tank_volume": 0.1,
    "rinse_tank_volume": 0.09,
    "fill_flow": 3.8e-4,
    "fill_pressure": 206843.0,
    "pump_pressure": 55158.0,
    "conveyor_speed": 0.03048,
    "conveyor_stroke": 0.127,
    "rack_length": 0.508,
    "racks_per_hour": 200.0 / 3600.0,
    "run_on": 30.0,
    "wash_zone": 0.7,
    "rinse_zone": 0.3,
    "vent_entrance": 0.0944,  # 200 cfm
    "vent_exit": 0.1888,  # 400 cfm
    "overload_class": 10.0,
    "sensor_ohms_25": 10000.0,
    "sensor_ohms_80": 1256.0,
    "steam_pressure": 137895.0,
    "gas_pressure": 871.8,  # 3.5 inWG
    "sanitiser_wanted": 50e-6,
    "sanitiser_stock": 0.084,
    "breaker_amps": 100.0,
    "chain_pitch": 0.0254,
    "belt_load": 11.34,
}


@dataclass(frozen=True)
class Plate:
    """Traits (`tanks`, `booster`, `phases`, ...) and plate figures in SI.

    `plate["volts"]` is a figure, or the usual one where the plate has none; KeyError where neither is known.
    """

    traits: Mapping[str, str | int | bool]
    figures: Mapping[str, float]

    def __getitem__(self, name: str) -> float:
        """A figure in SI, of the plate or else the usual one."""
        value = self.figures.get(name)
        return _USUAL[name] if value is None else value

    def get(self, name: str, otherwise: float) -> float:
        """A figure in SI, of the plate or else `otherwise`."""
        value = self.figures.get(name)
        return otherwise if value is None else value

    def has(self, **traits: object) -> bool:
        """Whether the machine has all these traits: a value, or any of a tuple of values.

        >>> Plate({"tanks": 2, "booster": "steam"}, {}).has(tanks=2, booster=("gas", "steam"))
        True
        """
        return all(
            self.traits.get(name) in (wanted if isinstance(wanted, tuple) else (wanted,))
            for name, wanted in traits.items()
        )

    @property
    def tanks(self) -> tuple[str, ...]:
        """The tanks in the order in which ware meets them: `prewash`, `wash`, `rinse`."""
        names = ["wash"]
        if self.traits.get("prewash"):
            names.insert(0, "prewash")
        if self.traits.get("tanks") == 2:
            names.append("rinse")
        return tuple(names)

    @property
    def motors(self) -> tuple[str, ...]:
        """The motors: a pump for each tank, the conveyor's drive, the fan."""
        return (*self.tanks, "drive", "fan")
