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
        "In delta the two lines that share it fall to 58 % of the full current and the third keeps all; in wye one "
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


@fault(
    "booster_electric.lead_off",
    (
        "A lead or link has burnt off its terminal, so its element carries nothing though it is whole.",
        "The line currents are those of an open element.",
        "Ohms at the element's own posts are good.",
    ),
    booster=_ELECTRIC,
)
def lead_off(plant: Plant, severity: float) -> None:
    """The path is broken outside the element."""
    plant.booster.heater.elements[0] = 0.0
    plant.signs["booster lead burnt off"] = 0.6 + 0.4 * severity


@fault(
    "booster_electric.links_wrong",
    (
        "The three elements are joined to a star point where they should stand between the lines.",
        "Each then has the line voltage over the root of three, and gives a third of its heat.",
        "All lines carry a third of the full current, alike.",
    ),
    onset="installed",
    after="parts replaced",
    booster=_ELECTRIC,
    phases=(3,),
    connection=("delta",),
)
def links_wrong(plant: Plant, severity: float) -> None:
    """Wye for delta: a third of the conductance between the lines."""
    plant.booster.heater.elements = [1.0 / 3.0] * 3
    plant.signs["booster links not as drawn"] = 1.0


@fault(
    "booster_electric.undersized",
    (
        "The booster has fewer kilowatts than this rinse wants on this water.",
        "Rise is heat over flow, and all its lines carry what its plate says.",
        "It has been short since it was connected.",
    ),
    onset="installed",
    after="newly connected",
    booster=_ELECTRIC,
)
def undersized(plant: Plant, severity: float) -> None:
    """The building's water is colder than the booster was chosen for: the plate itself promises too little."""
    plant.water.temperature -= 11.0 + 9.0 * severity
    plant.signs["booster plate promises too little"] = 1.0


@fault(
    "booster_electric.element_earthed",
    (
        "An element's sheath has split, and water carries current to the shell.",
        "The breaker or the earth-leakage device opens, and the whole bank is dead.",
        "From the bank to the shell there are kilohms instead of megohms.",
    ),
    booster=_ELECTRIC,
)
def element_earthed(plant: Plant, severity: float) -> None:
    """Earthed, and its breaker out."""
    plant.booster.heater.earth_ohms = 2e4 * (1.1 - severity)
    plant.booster.heater.feed_open = False
    plant.signs["booster breaker tripped"] = 1.0


@fault(
    "booster_electric.feed_off",
    (
        "The booster's own disconnect or breaker stands off.",
        "No line of it carries anything, though the machine runs.",
        "Before it there is full voltage, behind it none.",
    ),
    after="electrical work",
    booster=_ELECTRIC,
)
def feed_off(plant: Plant, severity: float) -> None:
    """Left off."""
    plant.booster.heater.feed_open = False
    plant.signs["booster breaker off"] = 1.0
