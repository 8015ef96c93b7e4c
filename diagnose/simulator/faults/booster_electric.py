"""Faults of the electric booster's elements."""

from __future__ import annotations

from diagnose.simulator.plant import Plant
from diagnose.simulator.registry import fault

__all__: list[str] = []

_ELECTRIC = ("electric",)


@fault(
    "booster_electric.element_open",
    (
        "One element of the bank is burnt through and carries nothing.",
        "In delta the two lines that share it fall to 58 % of the full current and the third keeps all of it; in wye one "
        "line carries nothing and the others 87 %.",
        "A third of a delta bank's heat (half of a wye bank's) is gone, and with it the same share of the rise.",
    ),
    booster=_ELECTRIC,
)
def element_open(plant: Plant, severity: float) -> None:
    """The wire is broken or it is not: severity changes nothing but the blueing of the sheath."""
    plant.booster.heater.elements[0] = 0.0
    plant.signs["booster element burnt"] = 0.5 + 0.5 * severity


@fault(
    "booster_electric.two_elements_open",
    (
        "Two elements are burnt through; one is left.",
        "In delta two lines carry 58 % and the third nothing; a wye bank without neutral carries nothing at all.",
        "A third of a delta bank's heat is left, so 49 °F of rise becomes 16.",
    ),
    booster=_ELECTRIC,
)
def two_elements_open(plant: Plant, severity: float) -> None:
    """Two elements burnt out one after the other."""
    plant.booster.heater.elements[0] = plant.booster.heater.elements[1] = 0.0
    plant.signs["booster element burnt"] = 0.6 + 0.4 * severity


@fault(
    "booster_electric.elements_wrong_voltage",
    (
        "The elements are made for a higher voltage than they get.",
        "All lines carry alike, but the current falls with the volts and the heat with their square.",
        "240 V elements on 208 V give 75 % of the heat, so 49 °F of rise becomes 37.",
    ),
    onset="installed",
    after="newly connected",
    booster=_ELECTRIC,
)
def elements_wrong_voltage(plant: Plant, severity: float) -> None:
    """Elements for the next higher voltage: about 15 % more, or (gross) twice."""
    plant.booster.heater.volts *= 1.154 if severity < 0.8 else 2.0
