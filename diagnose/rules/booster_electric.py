"""Electric booster: what its line currents and its isolated resistances say of its elements."""

from __future__ import annotations

import math

from diagnose.model import Check, Finding, Reading
from diagnose.physics.bank_states import current_likelihoods, resistance_likelihoods
from diagnose.physics.electric_heat import balanced_line_current, single_phase_current
from diagnose.physics.element_bank import bank_resistances, element_resistance
from diagnose.rules.bands import normal_share
from diagnose.rules.booster_supply import Supply, supply_of
from diagnose.rules.facts import Expected, Facts, Silent
from diagnose.rules.instruments import spread
from diagnose.units import Quantity, show_number

__all__ = [
    "expected_amps",
    "expected_ohms",
    "line_amps",
    "line_amps_single",
    "terminal_ohms",
]

ELEMENT_SPREAD = 0.025  # elements of one bank against each other; judgement
RATING_SPREAD = 0.04  # a whole bank against its rating, cold and hot; judgement (makers allow +5 % -10 %)
VOLTS_UNREAD = 0.04  # supply volts against the plate where nobody measured them; judgement from C84.1's ±5 %
LOW_FROM = 0.90  # share of the plate's volts, hence of the current, below which it is low (as for volts)
_PLATE = ("booster_power", "booster_volts", "volts")


def line_amps(facts: Facts) -> Finding | Silent | None:
    """Tell an open element from a lost line by the three currents of the booster.

    Purpose: the clamp meter alone separates them in a delta; in a wye without neutral it can't.
    Formula: I = P / (√3 V), P = P_rated (V / V_rated)²; delta, one element open: 0.577, 0.577, 1; one line
    lost: 0.866, 0.866, 0; two open: 0.577, 0.577, 0; weights from the density of the readings under each.
    Source: Ohm's law; volts as measured if they were, else the plate's.
    Fires: 48 48 83 A on 30 kW at 208 V in delta -> one element out. Silent: power not known.
    """
    reading, check = facts.fresh("booster_electric.line_amps"), facts.check("booster_electric.line_amps")
    if reading is None or check is None:
        return None
    supply, connection = supply_of(facts), str(facts.machine.trait("connection"))
    if isinstance(supply, Silent):
        return Silent(f"{check.title}: {supply.why}")
    if connection not in ("delta", "wye") or len(reading.values) != 3:
        return Silent(f"{check.title}: needs three currents of a delta or wye bank")
    seen = [v.si for v in reading.values.values()]
    weights = _amps_weights(check, reading, supply, connection)
    outcome = max(weights, key=lambda o: weights[o])
    full = balanced_line_current(supply.power_now, supply.volts)
    working = [
        _supply_line(supply, connection, full),
        "Read: " + ", ".join(f"{n} {v}" for n, v in reading.values.items())
        + " = " + ", ".join(f"{i / full * 100:.0f} %" for i in seen) + " of that.",
        *_PATTERNS.get((connection, outcome), ()),
        *facts.assumed(*_PLATE),
    ]  # fmt: skip
    return facts.conclude(
        check.id, weights, "booster_electric.line_amps", [reading], [supply.read], working, _SAYS[outcome]
    )


def _amps_weights(check: Check, reading: Reading, supply: Supply, connection: str) -> dict[str, float]:
    seen = [v.si for v in reading.values.values()]
    biggest = max(reading.values.values(), key=lambda v: v.si)
    clamp = spread(check, biggest, reading) / biggest.value if biggest.value > 0 else 0.02
    each = math.hypot(clamp, ELEMENT_SPREAD)
    common = RATING_SPREAD if supply.read else math.hypot(RATING_SPREAD, VOLTS_UNREAD)
    full = balanced_line_current(supply.power_now, supply.volts)
    likely = current_likelihoods(seen, full, connection, each, common)
    healthy, low = likely["healthy"], likely["low"]
    if supply.share < LOW_FROM:  # as the volts are, so are the currents: right for these volts is low for this plate
        healthy, low = 0.0, low + healthy
    return _shares(
        healthy=healthy,
        one_element_out=likely["one element open"],
        two_elements_out=likely["two elements open"],
        one_line_out=likely["line lost"],
        all_low=low,
        none=likely["none"],
        unlike=likely["unlike"],
    )


def line_amps_single(facts: Facts) -> Finding | Silent | None:
    """Judge a single-phase booster by its one current.

    Purpose: part of the elements out against volts low or nothing at all.
    Formula: I = P / V; with one of two or three equal elements out 1/2, 1/3 or 2/3 of it is left.
    Source: Ohm's law; how many elements there are is not on the plate, so halves and thirds are both tried.
    Fires: 31 A on 15 kW at 240 V -> part out. Silent: power not known.
    """
    name = "booster_electric.line_amps_single"
    reading, check = facts.fresh(name), facts.check(name)
    if reading is None or check is None:
        return None
    supply = supply_of(facts)
    if isinstance(supply, Silent):
        return Silent(f"{check.title}: {supply.why}")
    full = single_phase_current(supply.power_now, supply.volts)
    share = reading.value.si / full
    clamp = spread(check, reading.value, reading) / max(reading.value.value, 1e-9)
    common = RATING_SPREAD if supply.read else math.hypot(RATING_SPREAD, VOLTS_UNREAD)
    weights = _single_weights(share, math.hypot(min(clamp, 0.1), common), supply)
    outcome = max(weights, key=lambda o: weights[o])
    working = [_supply_line(supply, "single phase", full), f"Read: {reading.value} = {share * 100:.0f} % of that."]
    says = {**_SAYS, "part_out": "Part of the elements gives nothing.", "all_low": "The current is low."}[outcome]
    return facts.conclude(name, weights, name, [reading], [supply.read], [*working, *facts.assumed(*_PLATE)], says)


def _single_weights(share: float, error: float, supply: Supply) -> dict[str, float]:
    """Densities over the share of full current; `unlike` is flat from nought to one and a half."""

    def near(middle: float) -> float:
        width = math.hypot(error * middle, 0.01)
        return math.exp(-0.5 * ((share - middle) / width) ** 2) / (width * math.sqrt(2 * math.pi))

    # With the volts measured they are accounted for; unread, they may be down to 70 % before all else stops.
    low = 0.0 if supply.read else (normal_share((0.9 - share) / 0.02) - normal_share((0.7 - share) / 0.02)) / 0.2
    healthy = near(1.0)
    if supply.share < LOW_FROM:
        healthy, low = 0.0, low + healthy
    part = (near(1 / 2) + near(1 / 3) + near(2 / 3)) / 3
    return _shares(healthy=healthy, part_out=part, all_low=low, none=near(0.0), unlike=0.05)


def terminal_ohms(facts: Facts) -> Finding | Silent | None:
    """Name the open element by the resistances between the terminals of the isolated booster.

    Purpose: the last word on the elements; independent of the supply.
    Formula: delta R = 3 V²/P, healthy 2R/3 each pair, one open 2R, R, R; wye R = V²/P, healthy 2R each pair,
    one open 2R and two pairs without end.
    Source: Ohm's law; element rated volts and power from the plate.
    Fires: 8.6 4.3 4.3 ohm on 30 kW, 208 V, delta -> one element open. Silent: power not known.
    """
    name = "booster_electric.terminal_ohms"
    reading, check = facts.fresh(name), facts.check(name)
    if reading is None or check is None:
        return None
    supply, connection = supply_of(facts), str(facts.machine.trait("connection"))
    if isinstance(supply, Silent):
        return Silent(f"{check.title}: {supply.why}")
    if connection not in ("delta", "wye") or len(reading.values) != 3:
        return Silent(f"{check.title}: needs three resistances of a delta or wye bank")
    element = element_resistance(supply.power, supply.rated_volts, connection)
    healthy = bank_resistances(element, connection)[0]
    middle = Quantity.of_si(healthy, "resistance", "ohm")
    meter = spread(check, middle, reading) / middle.value
    likely = resistance_likelihoods(
        [v.si for v in reading.values.values()], healthy, connection, math.hypot(meter, ELEMENT_SPREAD), 0.05
    )
    weights = _shares(
        healthy=likely["healthy"],
        one_element_open=likely["one element open"],
        two_elements_open=likely["two elements open"],
        all_open=likely["all open"],
        unlike=likely["unlike"],
    )
    outcome = max(weights, key=lambda o: weights[o])
    working = [
        f"{show_number(supply.power / 1e3)} kW at {show_number(supply.rated_volts)} V in {connection}: each element "
        f"{show_number(element)} ohm, {show_number(healthy)} ohm between any two terminals.",
        "Read: " + ", ".join(f"{n} {v}" for n, v in reading.values.items()) + ".",
        *_open_element(reading, connection, outcome),
        *facts.assumed("booster_power", "booster_volts"),
    ]
    return facts.conclude(name, weights, name, [reading], (), working, _OHMS_SAYS[outcome])


def _open_element(reading: Reading, connection: str, outcome: str) -> list[str]:
    """Which element it is, in the words of the terminals."""
    if outcome != "one_element_open":
        return []
    pairs = {label: q.si for label, q in reading.values.items()}
    if connection == "delta":
        return [f"The open element sits across {max(pairs, key=lambda p: pairs[p])}, where the ohms are highest."]
    whole = min(pairs, key=lambda p: pairs[p])
    return [f"The pair {whole} is whole: the open element is on the terminal that is not in it."]


def expected_amps(facts: Facts, check: str) -> Expected | None:
    """The current each line should carry, with the volts measured or those of the plate."""
    supply, single = supply_of(facts), check.endswith("_single")
    if isinstance(supply, Silent):
        return None
    connection = "single phase" if single else str(facts.machine.trait("connection"))
    current = single_phase_current if single else balanced_line_current
    full = Quantity.of_si(current(supply.power_now, supply.volts), "current", "A")
    each = "" if single else " each"
    plate = Quantity.of_si(supply.power, "power", "kW")
    rated = (
        "" if math.isclose(supply.rated_volts, supply.volts) else f", elements for {show_number(supply.rated_volts)} V"
    )
    measured = " measured" if supply.read else ""
    line = (
        f"{show_number(full.value, 3)} A{each} ({plate}, {connection}, {show_number(supply.volts)} V{measured}{rated})"
    )
    return Expected((line,), full, full, facts.assumed(*_PLATE), "Ohm's law and the plate")


def expected_ohms(facts: Facts, check: str) -> Expected | None:
    """The resistance between any two terminals of the healthy, isolated booster."""
    supply, connection = supply_of(facts), str(facts.machine.trait("connection"))
    if isinstance(supply, Silent) or connection not in ("delta", "wye"):
        return None
    element = element_resistance(supply.power, supply.rated_volts, connection)
    pair = Quantity.of_si(bank_resistances(element, connection)[0], "resistance", "ohm")
    plate = Quantity.of_si(supply.power, "power", "kW")
    shown = f"{show_number(pair.value, 3)} ohm between any two terminals"
    line = f"{shown} ({plate}, {connection}, {show_number(supply.rated_volts)} V)"
    return Expected((line,), pair, pair, facts.assumed("booster_power", "booster_volts"), "Ohm's law and the plate")


def _supply_line(supply: Supply, connection: str, full: float) -> str:
    volts = f"{show_number(supply.volts)} V" + (" (measured)" if supply.read else "")
    rated = ""
    if not math.isclose(supply.rated_volts, supply.volts):
        share = (supply.volts / supply.rated_volts) ** 2 * 100
        rated = f" (elements for {show_number(supply.rated_volts)} V: {share:.0f} % of {supply.power / 1e3:g} kW)"
    each = "" if connection == "single phase" else " in each line"
    return f"{show_number(supply.power_now / 1e3)} kW at {volts} in {connection}: {full:.1f} A{each}{rated}."


def _shares(**likely: float) -> dict[str, float]:
    total = sum(likely.values())
    return {o: v / total for o, v in likely.items()}


_WYE_ALIKE = (
    "Wye without neutral: one element open and one line lost both show 87 %, 87 % and nothing; half of the heat is "
    "left. Volts at the booster terminals, or ohms, isolated, tell them apart."
)
_PATTERNS: dict[tuple[str, str], tuple[str, ...]] = {
    ("delta", "one_element_out"): (
        "Delta, one element open: the two lines that share it 58 %, the third all of it; "
        "two thirds of the heat is left.",
    ),
    ("delta", "one_line_out"): (
        "Delta, one line lost: the other two 87 %, the lost one nothing; half of the heat is left.",
    ),
    ("delta", "two_elements_out"): (
        "Delta, two elements open: two lines 58 %, the third nothing; a third of the heat is left.",
    ),
    ("wye", "one_element_out"): (_WYE_ALIKE,),
    ("wye", "one_line_out"): (_WYE_ALIKE,),
}
_SAYS = {
    "healthy": "The booster draws what it should.",
    "one_element_out": "That is the pattern of one element out.",
    "two_elements_out": "That is the pattern of two elements out.",
    "one_line_out": "That is the pattern of one line out: look at the supply and the contactor, not the elements.",
    "all_low": "All lines are alike but low: look at the volts.",
    "none": "The booster draws nothing: nothing calls it on, or nothing feeds it.",
    "unlike": "No state of this bank draws like that: look at where the clamp was put, then at the plate.",
}
_OHMS_SAYS = {
    "healthy": "The elements are whole.",
    "one_element_open": "One element is open.",
    "two_elements_open": "Two elements are open.",
    "all_open": "No path between any terminals: all elements open, or the links are off.",
    "unlike": "No state of this bank measures like that: look at the links and at what else is on the terminals.",
}
