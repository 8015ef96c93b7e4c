"""Faults of the tank heater's elements: of the wash tank, or of the power-rinse tank where severity is low."""

from __future__ import annotations

from diagnose.simulator.parts import Heater
from diagnose.simulator.plant import Plant
from diagnose.simulator.registry import fault

__all__: list[str] = []

_ELECTRIC = ("electric",)
_COLD = "With less heat than racks and air take, the tank sinks at the rush and comes back in the pause."


def heater(plant: Plant) -> Heater:
    """The heater that is faulty here: the wash tank's."""
    return plant.tanks["wash"].heater


@fault(
    "tank_heater_electric.element_open",
    (
        "One of the tank's elements is burnt through.",
        "In delta two lines fall to 58 %, and a third of the heat is gone.",
        _COLD,
    ),
    tank_heat=_ELECTRIC,
)
def element_open(plant: Plant, severity: float) -> None:
    """Burnt."""
    heater(plant).elements[0] = 0.0
    plant.signs["tank element burnt"] = 0.6 + 0.4 * severity


@fault(
    "tank_heater_electric.two_elements_open",
    (
        "Two of the tank's elements are burnt through.",
        "A third of a delta bank's heat is left, none of a wye bank's.",
        _COLD,
    ),
    tank_heat=_ELECTRIC,
)
def two_elements_open(plant: Plant, severity: float) -> None:
    """Burnt one after the other."""
    heater(plant).elements[0] = heater(plant).elements[1] = 0.0
    plant.signs["tank element burnt"] = 0.6 + 0.4 * severity


@fault(
    "tank_heater_electric.lead_off",
    (
        "A lead has burnt off a tank element's post.",
        "The currents are those of an open element, its own ohms good.",
        _COLD,
    ),
    tank_heat=_ELECTRIC,
)
def lead_off(plant: Plant, severity: float) -> None:
    """Off its post."""
    heater(plant).elements[0] = 0.0
    plant.signs["tank lead burnt off"] = 0.6 + 0.4 * severity


@fault(
    "tank_heater_electric.elements_wrong_voltage",
    (
        "The tank's elements are made for more volts than they get.",
        "Heat falls with the square of the volts, alike in all lines.",
        _COLD,
    ),
    onset="installed",
    after="parts replaced",
    tank_heat=_ELECTRIC,
)
def elements_wrong_voltage(plant: Plant, severity: float) -> None:
    """A step of voltage, or twice."""
    heater(plant).volts *= 1.154 if severity < 0.5 else 2.0


@fault(
    "tank_heater_electric.links_wrong",
    (
        "The tank's elements stand in wye where delta is meant.",
        "Each gives a third of its heat, and all lines a third of their current.",
        _COLD,
    ),
    onset="installed",
    after="parts replaced",
    tank_heat=_ELECTRIC,
    phases=(3,),
    connection=("delta",),
)
def links_wrong(plant: Plant, severity: float) -> None:
    """Wye for delta."""
    heater(plant).elements = [1.0 / 3.0] * 3
    plant.signs["tank links not as drawn"] = 1.0


@fault(
    "tank_heater_electric.element_earthed",
    ("A tank element's sheath is split.", "Its breaker opens, and the whole bank is dead.", _COLD),
    tank_heat=_ELECTRIC,
)
def element_earthed(plant: Plant, severity: float) -> None:
    """Earthed, breaker out."""
    heater(plant).earth_ohms = 2e4 * (1.1 - severity)
    heater(plant).feed_open = False
    plant.signs["tank breaker tripped"] = 1.0


@fault(
    "tank_heater_electric.feed_off",
    ("The tank heater's breaker or switch stands off.", "No line carries anything.", _COLD),
    after="electrical work",
    tank_heat=_ELECTRIC,
)
def feed_off(plant: Plant, severity: float) -> None:
    """Left off."""
    heater(plant).feed_open = False
    plant.signs["tank breaker off"] = 1.0


@fault(
    "tank_heater_electric.pole_open",
    (
        "One pole of the tank heater's contactor does not make.",
        "Its line carries nothing and the others of a delta bank 87 %: half the heat.",
        _COLD,
    ),
    tank_heat=_ELECTRIC,
)
def pole_open(plant: Plant, severity: float) -> None:
    """Burnt contact."""
    heater(plant).poles[1] = False
