"""A machine as it stands: a type, with the plate figures that were read and those assumed."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import TYPE_CHECKING

from diagnose.units import Quantity, UnitError, parse_quantity

if TYPE_CHECKING:
    from diagnose.model.record import Traits
    from diagnose.model.supporting import MachineType

__all__ = ["PLATE_FIGURES", "TRAITS", "Machine", "PlateFigure", "fits"]

# Trait -> values it may take. `fits` tables in the knowledge use these names and values only.
TRAITS: dict[str, tuple[str | int | bool, ...]] = {
    "tanks": (1, 2),
    "prewash": (False, True),
    "sanitising": ("hot water", "chemical"),
    "booster": ("electric", "steam", "gas", "none"),
    "booster_place": ("built in", "remote", "none"),
    "tank_heat": ("electric", "steam coil", "steam injector", "gas"),
    "phases": (1, 3),
    "connection": ("delta", "wye", "single"),  # of the booster's elements
    "vents": ("both ends", "hood"),
    "table_turn": (False, True),
    "conveyor": ("pawl bar", "chain", "flight"),  # racks pushed by pawls, by a chain; or ware on a belt of flights
    "motor_protection": ("overload relay", "thermal protector"),
}


@dataclass(frozen=True)
class PlateFigure:
    """A figure a data plate may carry: quantity, usual unit, and what it is, to ask for it."""

    quantity: str
    unit: str
    ask: str


PLATE_FIGURES: dict[str, PlateFigure] = {
    "volts": PlateFigure("voltage", "V", "Supply voltage, line to line"),
    "frequency": PlateFigure("frequency", "Hz", "Supply frequency"),
    "booster_power": PlateFigure("power", "kW", "Booster, rated power"),
    "booster_volts": PlateFigure("voltage", "V", "Voltage the booster elements are rated for"),
    "booster_inlet": PlateFigure("temperature", "°F", "Water temperature the booster is sized for"),
    "booster_volume": PlateFigure("volume", "gal", "Booster, water held"),
    "relief_pressure": PlateFigure("pressure", "psi", "Relief valve of the booster, pressure stamped on it"),
    "rinse_flow": PlateFigure("flow", "gpm", "Rated final-rinse flow"),
    "rinse_pressure": PlateFigure("pressure", "psi", "Flow pressure of the final rinse"),
    "rinse_pressure_least": PlateFigure("pressure", "psi", "Least flow pressure"),
    "rinse_pressure_most": PlateFigure("pressure", "psi", "Greatest flow pressure"),
    "rinse_temperature": PlateFigure("temperature", "°F", "Least final-rinse temperature"),
    "wash_temperature": PlateFigure("temperature", "°F", "Least wash-tank temperature"),
    "rinse_tank_temperature": PlateFigure("temperature", "°F", "Least power-rinse-tank temperature"),
    "wash_tank_volume": PlateFigure("volume", "gal", "Wash tank, water held"),
    "rinse_tank_volume": PlateFigure("volume", "gal", "Power-rinse tank, water held"),
    "tank_power": PlateFigure("power", "kW", "Wash-tank heater, rated power"),
    "rinse_tank_power": PlateFigure("power", "kW", "Power-rinse-tank heater, rated power"),
    "tank_volts": PlateFigure("voltage", "V", "Voltage the tank elements are rated for"),
    "tank_gas_input": PlateFigure("power", "BTU/h", "Gas input of the wash-tank burner"),
    "sensor_ohms_25": PlateFigure("resistance", "ohm", "Temperature sensor, ohms at 25 °C (77 °F)"),
    "sensor_ohms_80": PlateFigure("resistance", "ohm", "Temperature sensor, ohms at 80 °C (176 °F)"),
    "steam_pressure": PlateFigure("pressure", "psi", "Steam pressure at the machine"),
    "gas_pressure": PlateFigure("pressure", "inWG", "Gas manifold pressure"),
    "gas_input": PlateFigure("power", "BTU/h", "Gas input of the booster"),
    "wash_motor_power": PlateFigure("power", "hp", "Wash-pump motor, power"),
    "wash_motor_amps": PlateFigure("current", "A", "Wash-pump motor, full-load amps"),
    "rinse_motor_power": PlateFigure("power", "hp", "Rinse-pump motor, power"),
    "rinse_motor_amps": PlateFigure("current", "A", "Rinse-pump motor, full-load amps"),
    "drive_motor_power": PlateFigure("power", "hp", "Conveyor motor, power"),
    "drive_motor_amps": PlateFigure("current", "A", "Conveyor motor, full-load amps"),
    "fan_motor_power": PlateFigure("power", "hp", "Exhaust-fan motor, power"),
    "fan_motor_amps": PlateFigure("current", "A", "Exhaust-fan motor, full-load amps"),
    "prewash_motor_power": PlateFigure("power", "hp", "Pre-wash-pump motor, power"),
    "prewash_motor_amps": PlateFigure("current", "A", "Pre-wash-pump motor, full-load amps"),
    "pump_pressure": PlateFigure("pressure", "psi", "Wash pressure at the manifold"),
    "overload_class": PlateFigure("time", "s", "Trip class of the overload relays, seconds"),
    "control_volts": PlateFigure("voltage", "V", "Control-circuit voltage"),
    "breaker_amps": PlateFigure("current", "A", "Breaker or fuse that feeds the machine"),
    "conveyor_speed": PlateFigure("speed", "ft/min", "Conveyor speed"),
    "vent_entrance": PlateFigure("air flow", "cfm", "Exhaust wanted at the entrance end"),
    "vent_exit": PlateFigure("air flow", "cfm", "Exhaust wanted at the exit end"),
    "run_on": PlateFigure("time", "s", "Run-on time after the last rack"),
    "conveyor_stroke": PlateFigure(
        "length", "in", "Travel of the bar in one stroke; of a chain or belt from lug to lug"
    ),
    "chain_pitch": PlateFigure("length", "in", "Pitch of the chains that carry racks or flights, pin to pin"),
    "belt_load": PlateFigure("mass", "lb", "Greatest load on each foot of a belt of flights"),
    "rack_length": PlateFigure("length", "in", "Length of a rack"),
    "racks_per_hour": PlateFigure("rate", "per hour", "Racks an hour"),
    "wash_zone": PlateFigure("length", "in", "Length of the wash zone"),
    "rinse_zone": PlateFigure("length", "in", "Length of the final-rinse zone"),
    "sanitiser_wanted": PlateFigure("concentration", "ppm", "Sanitiser strength wanted in the final rinse"),
    "sanitiser_stock": PlateFigure("share", "%", "Available chlorine of the sanitiser as delivered"),
    "rinse_per_rack": PlateFigure("volume", "gal", "Final-rinse water a rack"),
    "fill_flow": PlateFigure("flow", "gpm", "Flow of the tank fill"),
    "fill_pressure": PlateFigure("pressure", "psi", "Flowing supply pressure the tank fill is meant for"),
}


@dataclass(frozen=True)
class Machine:
    """One machine: its type and what its own plate says.

    `own` holds figures read from the plate; anything else comes from the type and is `assumed`.
    """

    name: str
    type: MachineType
    own: Mapping[str, str] = field(default_factory=dict)
    serial: str = ""
    site: str = ""

    def trait(self, name: str) -> str | int | bool:
        return self.type.traits[name]

    def plate(self, name: str) -> Quantity | None:
        """A plate figure, or None where neither the plate nor the type has one."""
        text = self.own.get(name) or self.type.plate.get(name)
        if text is None:
            return None
        figure = PLATE_FIGURES[name]
        try:
            return parse_quantity(text, figure.quantity, figure.unit)
        except UnitError as error:
            raise UnitError(f"plate figure {name} = {text!r}: {error}") from None

    def assumed(self, name: str) -> bool:
        """True when the figure is the type's, not read from this machine's plate."""
        return name not in self.own


def fits(machine: Machine, traits: Traits) -> bool:
    """Whether an entry restricted to `traits` belongs to this machine."""
    return all(machine.type.traits.get(name) in values for name, values in traits.items())
