"""Faults of the gas line up to the burners' valves."""

from __future__ import annotations

from diagnose.simulator.burning import burners
from diagnose.simulator.gas_parts import INCH
from diagnose.simulator.plant import Plant
from diagnose.simulator.registry import fault

__all__: list[str] = []

_GAS = ("gas",)
_SQUARE = "Pressure is lost with the square of the flow, so nothing is missing at rest."
_ROOT = "Gas through the jets goes with the root of their pressure, and the heat with it."


def _left(plant: Plant, severity: float) -> float:
    """Share of a passage that is left, so that the main burner alone loses inches of water in it."""
    found = burners(plant)
    main = found.get("booster") or next(iter(found.values()))
    return (0.115 - 0.045 * severity) * main.input / sum(b.input for b in found.values())


@fault(
    "supply_gas.gas_cock_part_closed",
    ("The cock behind the machine is not fully open, or its connector is kinked.", _SQUARE, _ROOT),
    after="cleaning by the crew",
    tank_heat=_GAS,
)
def gas_cock_part_closed(plant: Plant, severity: float) -> None:
    """So far that the main burner alone is short."""
    plant.fuel.gas.cock_open = _left(plant, severity)


@fault(
    "supply_gas.gas_regulator_low",
    ("The line's regulator holds too little pressure.", "It is short at rest already, and for everybody.", _ROOT),
    onset="slowly",
    tank_heat=_GAS,
)
def gas_regulator_low(plant: Plant, severity: float) -> None:
    """Its vent blocked, or its spring weak."""
    plant.fuel.gas.supply = (4.4 - 2.2 * severity) * INCH


@fault(
    "supply_gas.gas_line_small",
    (
        "The pipe is too small for all that hangs on it.",
        "What is lost in it goes with the square of all the gas that flows: alone the machine has enough.",
        "At the rush, with the others on, the pressure at its valves falls and the burners shrink.",
    ),
    onset="installed",
    tank_heat=_GAS,
)
def gas_line_small(plant: Plant, severity: float) -> None:
    """Appliances were added to it."""
    plant.fuel.gas.branch = 90.0 + 140.0 * severity


@fault(
    "supply_gas.gas_shut_off",
    ("A valve ahead of the machine is shut.", "No pressure, at rest or firing.", "Burners spark, try and lock out."),
    after="plumbing work",
    tank_heat=_GAS,
)
def gas_shut_off(plant: Plant, severity: float) -> None:
    """The machine's own cock, or (worse) the valve of the whole branch."""
    plant.fuel.gas.shut = True
    plant.fuel.gas.dead_branch = severity >= 0.4
    plant.signs["gas valve across its pipe"] = 0.9 if severity < 0.4 else 0.5


@fault(
    "supply_gas.gas_interlock_shut",
    (
        "The ventilation's panel has not got its proof of air and holds the gas valve shut.",
        "All on that branch are without gas until the air is proved.",
        "It does what it is there for: no burner without its air.",
    ),
    tank_heat=_GAS,
)
def gas_interlock_shut(plant: Plant, severity: float) -> None:
    """Filters felted, a tube off its nipple."""
    plant.fuel.gas.held = plant.fuel.gas.dead_branch = True


@fault(
    "supply_gas.air_in_gas",
    (
        "Air stands in the line since it was opened.",
        "It comes out of the jets at the right pressure and does not burn.",
        "Each try draws some of it; then the burner lights and stays.",
    ),
    after="plumbing work",
    tank_heat=_GAS,
)
def air_in_gas(plant: Plant, severity: float) -> None:
    """Not let out after the work."""
    plant.fuel.gas.aired = 0.3 + 0.7 * severity


@fault(
    "supply_gas.gas_strainer_choked",
    ("Scale and thread compound fill the screen of the branch's strainer.", _SQUARE, _ROOT),
    onset="slowly",
    after="plumbing work",
    tank_heat=_GAS,
)
def gas_strainer_choked(plant: Plant, severity: float) -> None:
    """So far that the main burner alone is short."""
    plant.fuel.gas.strainer_open = _left(plant, severity)


@fault(
    "supply_gas.line_wet",
    (
        "Water lies in a low place of the pipe.",
        "Gas pushes through it in slugs: pressure and flames swing while it flows and stand still at rest.",
        "In the mean some pressure is lost as well.",
    ),
    after="plumbing work",
    tank_heat=_GAS,
)
def line_wet(plant: Plant, severity: float) -> None:
    """Inches of water in a sag."""
    plant.fuel.gas.slug = (2.2 + 1.8 * severity) * INCH


@fault(
    "supply_gas.bottle_spent",
    (
        "The bottle is nearly empty, or too small for what burns.",
        "Its liquid takes the heat to boil from itself and its shell, and cools with every minute of firing.",
        "So the pressure sinks with what is drawn, and comes back in an hour's rest.",
    ),
    onset="slowly",
    tank_heat=_GAS,
)
def bottle_spent(plant: Plant, severity: float) -> None:
    """Frost rings it at its liquid's height."""
    line = plant.fuel.gas
    line.sinks = (1.15 + 0.7 * severity) * INCH
    line.supply -= max(0.0, severity - 0.5) * 5.0 * INCH


@fault(
    "supply_gas.gas_regulator_high",
    (
        "Grit on its seat keeps the line's regulator from locking up.",
        "With nothing flowing the pressure creeps up; firing, it falls back to nearly right.",
        "Burners light with a thump against it, and roar.",
    ),
    after="plumbing work",
    tank_heat=_GAS,
)
def gas_regulator_high(plant: Plant, severity: float) -> None:
    """It creeps by inches."""
    line = plant.fuel.gas
    line.supply += (0.4 + 1.0 * severity) * INCH
    line.lockup = (3.8 + 3.2 * severity) * INCH
