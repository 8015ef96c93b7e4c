"""A heater's line currents against the plate: the same rules for booster and tank heater."""

from __future__ import annotations

import math

from diagnose.formulas import said
from diagnose.model import Check, Finding, Reading
from diagnose.physics.bank_reading import BankReading, name_of_state, read_currents
from diagnose.physics.bank_states import SIZES, current_likelihoods
from diagnose.physics.bank_words import element_of_bank
from diagnose.physics.electric_heat import balanced_line_current, single_phase_current
from diagnose.rules.bands import normal_share
from diagnose.rules.bank_supply import (
    ELEMENT_SPREAD,
    LOW_FROM,
    RATING_SPREAD,
    VOLTS_UNREAD,
    bank_of,
    fed,
    shares,
    supply_line,
)
from diagnose.rules.booster_supply import Supply
from diagnose.rules.facts import Expected, Facts, Silent
from diagnose.rules.instruments import spread
from diagnose.rules.told import plates_told, reading_told
from diagnose.units import Quantity, show_number

__all__ = ["expected_amps", "line_amps", "line_amps_single"]

# Elements for 240 V on 208, or for 480 on 240, against one of several open; judgement.
OTHER_VOLTS = 0.1


def line_amps(facts: Facts, assembly: str) -> Finding | Silent | None:
    """Tell an open element from a lost line by the three currents of a heater.

    Purpose: the clamp meter alone separates them in a delta; in a wye without neutral it can't.
    Formula: I = P / (√3 V), P = P_rated (V / V_rated)²; delta, one element open: 0.577, 0.577, 1; one line
    lost: 0.866, 0.866, 0; two open: 0.577, 0.577, 0; with two to four elements side by side in a leg the
    partial patterns besides; weights from the density of the readings under each.
    Source: Ohm's law; volts as measured if they were, else the plate's.
    Fires: two_tank_electric_208 (booster_power = 30 kW): booster_electric.line_amps = 48 48 83 A -> one_element_out
    Silent: two_tank_electric_208 (booster_power = 0 kW): booster_electric.line_amps = 48 48 83 A
    Fires: two_tank_electric_208 (tank_power = 20 kW, tank_volts = 240 V):
      tank_heater_electric.line_amps = 41.7 41.5 41.8 A -> healthy
    Silent: two_tank_steam_208: tank_heater_electric.line_amps = 48 48 48 A
    """
    name = f"{assembly}.line_amps"
    reading, check, bank = facts.fresh(name), facts.check(name), bank_of(facts, assembly)
    if reading is None or check is None:
        return None
    supply, connection = fed(facts, bank), str(facts.machine.trait("connection"))
    if isinstance(supply, Silent):
        return Silent(f"{check.title}: {supply.why}")
    if connection not in ("delta", "wye") or len(reading.values) != 3:
        return Silent(f"{check.title}: needs three currents of a delta or wye bank")
    seen = [v.si for v in reading.values.values()]
    weights = _amps_weights(check, reading, supply, connection)
    outcome = max(weights, key=lambda o: weights[o])
    full = balanced_line_current(supply.power_now, supply.volts)
    working = [
        supply_line(supply, connection, full),
        "Read: " + ", ".join(f"{n} {v}" for n, v in reading.values.items())
        + " = " + ", ".join(f"{i / full * 100:.0f} %" for i in seen) + " of that.",
        *(_size_words(seen, supply, connection, outcome) or _PATTERNS.get((connection, outcome), ())),
        *facts.assumed(*bank.plate),
    ]  # fmt: skip
    return facts.conclude(
        check.id, weights, name, [reading], [supply.read], working, _SAYS[outcome].format(name=bank.name)
    )


def _size_words(seen: list[float], supply: Supply, connection: str, outcome: str) -> list[str]:
    """Where only a bank with several elements in each leg draws so: which one, and how many are out."""
    if outcome not in ("one_element_out", "two_elements_out"):
        return []
    found = {n: _read(seen, supply, connection, n) for n in (1, *SIZES)}
    if found[1].fits:
        return []
    per_leg = min(found, key=lambda n: found[n].distance)
    if not found[per_leg].fits:
        return []
    told = " or ".join(name_of_state(s, connection, per_leg) for s in found[per_leg].same[:3])
    return [f"So draws a bank with {per_leg} elements side by side in a leg: {told}."]


def _read(seen: list[float], supply: Supply, connection: str, per_leg: int) -> BankReading:
    element = element_of_bank(supply.power_now, supply.volts, connection, per_leg)
    return read_currents(seen, element, supply.volts, connection, per_leg, error=RATING_SPREAD)


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
    weights = shares(
        healthy=healthy,
        one_element_out=likely["one element open"],
        two_elements_out=likely["two elements open"],
        one_line_out=likely["line lost"],
        all_low=low,
        all_third=likely["third"],
        none=likely["none"],
        unlike=likely["unlike"],
    )
    if "all_third" not in check.outcomes:  # a check that knows only one kind of low
        weights["all_low"] += weights.pop("all_third")
    return weights


def line_amps_single(facts: Facts, assembly: str) -> Finding | Silent | None:
    """Judge a single-phase heater by its one current.

    Purpose: part of the elements out against volts low or nothing at all.
    Formula: I = P / V; with one of two or three equal elements out 1/2, 1/3 or 2/3 of it is left.
    Source: Ohm's law; how many elements there are is not on the plate, so halves and thirds are both tried.
    Fires: single_tank_electric_240_single_phase (booster_power = 15 kW):
      booster_electric.line_amps_single = 31 A -> part_out
    Silent: single_tank_electric_240_single_phase (booster_power = 0 kW): booster_electric.line_amps_single = 31 A
    Fires: single_tank_electric_240_single_phase (tank_power = 10 kW):
      tank_heater_electric.line_amps_single = 41 A -> healthy
    Silent: single_tank_electric_240_single_phase (tank_power = 0 kW): tank_heater_electric.line_amps_single = 41 A
    """
    name = f"{assembly}.line_amps_single"
    reading, check, bank = facts.fresh(name), facts.check(name), bank_of(facts, assembly)
    if reading is None or check is None:
        return None
    supply = fed(facts, bank)
    if isinstance(supply, Silent):
        return Silent(f"{check.title}: {supply.why}")
    full = single_phase_current(supply.power_now, supply.volts)
    share = reading.value.si / full
    clamp = spread(check, reading.value, reading) / max(reading.value.value, 1e-9)
    common = RATING_SPREAD if supply.read else math.hypot(RATING_SPREAD, VOLTS_UNREAD)
    weights = _single_weights(share, math.hypot(min(clamp, 0.1), common), supply)
    outcome = max(weights, key=lambda o: weights[o])
    working = [supply_line(supply, "single phase", full), f"Read: {reading.value} = {share * 100:.0f} % of that."]
    told = {**_SAYS, "part_out": "Part of the elements gives nothing.", "all_low": "The current is low."}
    says = told[outcome].format(name=bank.name)
    return facts.conclude(name, weights, name, [reading], [supply.read], [*working, *facts.assumed(*bank.plate)], says)


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
    low += OTHER_VOLTS * (near((208 / 240) ** 2) + near((240 / 480) ** 2))
    part = (near(1 / 2) + near(1 / 3) + near(2 / 3)) / 3
    return shares(healthy=healthy, part_out=part, all_low=low, none=near(0.0), unlike=0.05)


def expected_amps(facts: Facts, check: str) -> Expected | None:
    """The current each line should carry, with the volts measured or those of the plate."""
    bank, single = bank_of(facts, check.partition(".")[0]), check.endswith("_single")
    supply = fed(facts, bank)
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
    working = (*plates_told(facts, *bank.plate), *reading_told(facts, supply.read), *_worked(supply, single))
    return Expected((line,), full, full, facts.assumed(*bank.plate), "Ohm's law and the plate", working)


def _worked(supply: Supply, single: bool) -> tuple[str, ...]:
    """Power at the volts there are, then the current."""
    lines: tuple[str, ...] = ()
    if not math.isclose(supply.rated_volts, supply.volts):
        lines = said(
            "power-at-volts",
            "us",
            rated_power=supply.power,
            rated_voltage=supply.rated_volts,
            voltage=supply.volts,
        )
    formula = "line-amps-single" if single else "line-amps"
    return (*lines, *said(formula, "us", power=supply.power_now, voltage=supply.volts))


_WYE_ALIKE = (
    "Wye without neutral: one element open and one line lost both show 87 %, 87 % and nothing; half of the heat is "
    "left. Volts at the heater's terminals, or ohms, isolated, tell them apart."
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
        "One element open and a line lost besides draw the very same: the volts, or the ohms, tell them apart.",
    ),
    ("delta", "all_third"): ("A delta linked as a star: each element sees the volts ÷ 1.73, so a third of the heat.",),
    ("wye", "one_element_out"): (_WYE_ALIKE,),
    ("wye", "one_line_out"): (_WYE_ALIKE,),
}
_SAYS = {
    "healthy": "The {name} draws what it should.",
    "one_element_out": "That is the pattern of one element out.",
    "two_elements_out": "That is the pattern of two elements out.",
    "one_line_out": "That is the pattern of one line out: look at the supply and the contactor, not the elements.",
    "all_low": "All lines are alike but low: look at the volts.",
    "all_third": "All lines are alike at a third: a delta bank linked as a star draws so.",
    "none": "The {name} draws nothing: nothing calls it on, or nothing feeds it.",
    "unlike": "No state of this bank draws like that: look at where the clamp was put, then at the plate.",
}
