"""Faults of the tank's gas burner and of the wall it heats through: of the wash tank."""

from __future__ import annotations

from diagnose.simulator.burning import burner_of
from diagnose.simulator.gas_parts import Burner
from diagnose.simulator.plant import Plant
from diagnose.simulator.registry import fault

__all__: list[str] = []

_GAS = ("gas",)
_UP = "It burns its full gas, and the heat leaves by the flue, which grows hot."
_COLD = "With less heat than racks and air take, the tank sinks at the rush and is slow to heat up."
_ROOT = "Gas goes with the root of the pressure at the jets, and the heat with the gas."


def burner(plant: Plant) -> Burner:
    """The wash tank's; ValueError where it has none."""
    found = burner_of(plant, "wash")
    if found is None:
        raise ValueError("this machine has no gas under its wash tank")
    return found


@fault(
    "tank_heater_gas.pilot_out",
    (
        "Pilot, rod or thermocouple no longer proves the flame.",
        "The burner lights and drops out within seconds, or its pilot does not stay.",
        "The tank stays at what the fill brings.",
    ),
    onset="comes and goes",
    after="cleaning by the crew",
    tank_heat=_GAS,
)
def pilot_out(plant: Plant, severity: float) -> None:
    """Glazed with mist; where it is gross, its jet is full of lint as well."""
    burner(plant).proved = 0.9 - 0.6 * severity
    if severity > 0.9:
        burner(plant).spark = 0.2


@fault(
    "tank_heater_gas.valve_dead",
    ("The tank burner's valve has its volts and stays shut.", "The pilot or the spark is good, no gas follows.", _COLD),
    tank_heat=_GAS,
)
def valve_dead(plant: Plant, severity: float) -> None:
    """Coil open, or its knob at OFF."""
    burner(plant).valve_works = False


@fault(
    "tank_heater_gas.manifold_low",
    ("The valve's regulator holds too little at the tank burner's manifold.", _ROOT, _COLD),
    onset="installed",
    after="parts replaced",
    tank_heat=_GAS,
)
def manifold_low(plant: Plant, severity: float) -> None:
    """Set by ear."""
    burner(plant).manifold = 0.7 - 0.45 * severity


@fault(
    "tank_heater_gas.jets_blocked",
    ("Jets or ports of the tank burner are blocked.", "At the right pressure less gas flows, in gaps of flame.", _COLD),
    onset="slowly",
    tank_heat=_GAS,
)
def jets_blocked(plant: Plant, severity: float) -> None:
    """Webs, lint, rust."""
    burner(plant).jets_open = 0.85 - 0.4 * severity


@fault(
    "tank_heater_gas.jets_wrong",
    (
        "The tank burner's jets are bored for another gas.",
        "At the right pressure their area lets through another gas flow than the plate's.",
        "Too small, all flames are small; too large, they are long and yellow.",
    ),
    onset="installed",
    after="newly connected",
    tank_heat=_GAS,
)
def jets_wrong(plant: Plant, severity: float) -> None:
    """For propane on natural gas; or, gross, the other way round."""
    burner(plant).bore = 1.5 if severity > 0.8 else 0.6 - 0.25 * severity


@fault(
    "tank_heater_gas.surface_limed",
    ("A shell of lime lies on the tube or floor over the flame.", _UP, _COLD),
    onset="slowly",
    tank_heat=_GAS,
)
def surface_limed(plant: Plant, severity: float) -> None:
    """Millimetres, on the hottest metal."""
    burner(plant).lime = 0.0023 + 0.0021 * severity


@fault(
    "tank_heater_gas.surface_sooted",
    ("The flame lacks air and furs its passages with soot.", _UP, "Its tips are yellow, and carbon monoxide rises."),
    onset="slowly",
    tank_heat=_GAS,
)
def surface_sooted(plant: Plant, severity: float) -> None:
    """Lint on its air, soot on its wall."""
    burner(plant).soot = 0.4 + 0.6 * severity
    burner(plant).air = 0.72 - 0.25 * severity
