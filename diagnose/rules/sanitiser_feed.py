"""Sanitiser fed: the stock drawn against what the plate's strength takes, and the strip against the dose."""

from __future__ import annotations

import math
from dataclasses import dataclass

from diagnose.formulas import said, system_of
from diagnose.model import Finding, Reading
from diagnose.physics.dosing import dose_for_strength, pump_flow_for_strength, strength_in_stream, strength_of_dose
from diagnose.rules.bands import normal_share
from diagnose.rules.facts import Expected, Facts, Silent
from diagnose.rules.instruments import spread
from diagnose.rules.told import plates_told, reading_told
from diagnose.units import Quantity, show_number

__all__ = ["DRAWN", "STEP", "STRONG", "dose_told", "drawn", "expected_drawn", "feed_balance", "strip_wanted"]

STEP = 0.75  # strips and doses are told apart from what is wanted by a quarter; judgement
STRONG = 1.6  # a strip this many times the wanted strength is too strong; judgement
MUCH = 1.4  # a dose this many times the wanted one is too much; judgement
STOCK = 0.10  # what a sound stock may differ from its label; judgement
NOTHING = 0.1  # of the wanted dose
STRIP, RACK, OUTPUT = "sanitiser_feed.strip", "sanitiser_feed.per_rack", "sanitiser_feed.output"
DRAWN = (RACK, OUTPUT)
WATER, FLOW = "sanitiser_feed.water_per_rack", "rinse_arms.flow_measured"
_PLATE = {RACK: ("sanitiser_wanted", "sanitiser_stock", "rinse_per_rack"),
          OUTPUT: ("sanitiser_wanted", "sanitiser_stock", "rinse_flow")}  # fmt: skip


@dataclass(frozen=True)
class _Dose:
    """What is wanted, SI, and the lines that lead to it in a system of units."""

    value: float
    lines: tuple[str, ...]


def strip_wanted(facts: Facts) -> Quantity | None:
    """Strength the plate asks for."""
    wanted = facts.plate("sanitiser_wanted")
    return wanted if wanted is not None and wanted.si > 0 else None


def _dose_wanted(facts: Facts, check: str, system: str) -> _Dose | Silent:
    figures = [facts.plate(name) for name in _PLATE[check]]
    if any(f is None or f.si <= 0 for f in figures):
        return Silent("needs the strength wanted, the stock's strength and the rinse water of the plate")
    strength, stock, water = (f.si for f in figures if f is not None)
    if check == RACK:
        lines = said("dose-wanted", system, strength=strength, stock=stock, water=water)
        return _Dose(dose_for_strength(strength, stock, water), lines)
    lines = said("feed-wanted", system, strength=strength, stock=stock, water_flow=water)
    return _Dose(pump_flow_for_strength(strength, stock, water), lines)


def drawn(facts: Facts, check_id: str = RACK) -> Finding | Silent | None:
    """Judge the stock that is drawn by what the plate's strength takes.

    Purpose: the same mL are right for one stock and half of what is needed for another; only reckoning tells.
    Formula: dose = ppm x litres / (10 x percent); with the pump running in the rinse, mL/min from L/min.
    Source: conservation of mass; under 75 % is short and over 140 % too much, judgement.
    Fires: single_tank_chemical_208 (sanitiser_stock = 5.25 %): sanitiser_feed.per_rack = 2.1 mL -> short
    Silent: single_tank_chemical_208: sanitiser_feed.strip = 50 ppm
    """
    reading, check = facts.fresh(check_id), facts.check(check_id)
    if reading is None or check is None:
        return None
    system = _system(facts, check_id)
    wanted = _dose_wanted(facts, check_id, system)
    if isinstance(wanted, Silent):
        return Silent(f"{check.title}: {wanted.why}")
    ratio = reading.value.si / wanted.value
    error = math.hypot(spread(check, reading.value, reading) / max(reading.value.value, 0.5) * ratio, STOCK / 2)
    nothing = normal_share((NOTHING - ratio) / error)
    under = normal_share((STEP - ratio) / error)
    over = normal_share((ratio - MUCH) / error)
    weights = {
        "nothing": nothing,
        "short": max(under - nothing, 0.0),
        "as_wanted": max(1 - under - over, 0.0),
        "too_much": over,
    }
    working = [
        *(f"{line} wanted." for line in wanted.lines),
        f"Read: {reading.value} = {ratio * 100:.0f} % of that; from 75 to 140 % it is in order.",
        *facts.assumed(*_PLATE[check_id]),
    ]
    says = _DRAWN[max(weights, key=lambda o: weights[o])]
    return facts.conclude(check_id, weights, check_id, [reading], (), working, says)


def expected_drawn(facts: Facts, check: str) -> Expected | None:
    """The stock a rack, or a minute, that gives the plate's strength."""
    system = _system(facts, check)
    wanted = _dose_wanted(facts, check, system)
    if isinstance(wanted, Silent):
        return None
    unit, quantity = ("mL", "volume") if check == RACK else ("mL/min", "flow")
    low, high = (Quantity.of_si(wanted.value * share, quantity, unit) for share in (STEP, MUCH))
    plate = ", ".join(str(facts.plate(n)) for n in _PLATE[check])
    line = f"{show_number(Quantity.of_si(wanted.value, quantity, unit).value, 3)} {unit} ({plate})"
    working = (*wanted.lines, *plates_told(facts, *_PLATE[check]), "From 75 to 140 % of it is in order (judgement).")
    return Expected((line,), low, high, facts.assumed(*_PLATE[check]), "dose = ppm × litres ÷ (10 × percent)", working)


def feed_balance(facts: Facts) -> Finding | Silent | None:
    """Set the strip against the strength that the measured dose gives the measured water.

    Purpose: dose and water known, the strip must follow; if it reads less, the stock is weak, the dose goes
    elsewhere, or the strips lie, and no turning of the pump helps; if a strip far too strong reads more, the stock is
    too strong or more gets in than is drawn. A strip as strong as wanted is left to its own rule.
    Formula: ppm = mL x percent x 10 / litres; or mL/min x percent x 10 / (L/min).
    Source: conservation of mass; stock within 10 % of its label (judgement), errors of the instruments.
    Fires: single_tank_chemical_208 (sanitiser_stock = 5.25 %): sanitiser_feed.per_rack = 4.1 mL;
      sanitiser_feed.water_per_rack = 1.1 gal; sanitiser_feed.strip = 20 ppm -> strip_below
    Silent: single_tank_chemical_208: sanitiser_feed.per_rack = 4.1 mL; sanitiser_feed.strip = 20 ppm
    """
    name = "sanitiser_feed.feed_balance"
    check, strip_check, strip = facts.check(name), facts.check(STRIP), facts.fresh(STRIP)
    stock, wanted = facts.plate("sanitiser_stock"), strip_wanted(facts)
    if check is None or strip_check is None or strip is None:
        return None
    pair = _dose_and_water(facts)
    if pair is None or stock is None or wanted is None:
        return Silent(f"{check.title}: stock drawn, rinse water and the stock's strength must be known")
    if STEP * wanted.si <= strip.value.si < STRONG * wanted.si:
        return Silent(f"{check.title}: the strip is as strong as wanted")
    dose, water = pair
    computed = _computed(dose, water, stock.si)
    relative = [spread(facts.book.checks[r.check], r.value, r) / max(r.value.value, 1e-6) for r in pair]
    error = math.sqrt(sum(min(r, 0.3) ** 2 for r in relative) + STOCK**2) * computed
    error = math.hypot(error, spread(strip_check, strip.value, strip))
    below = normal_share((STEP * computed - strip.value.si) / error)
    above = normal_share((strip.value.si - MUCH * computed) / error)
    weights = {"agrees": max(1 - below - above, 0.0), "strip_below": below, "strip_above": above}
    system = system_of(water.value.unit)
    formula, values = _formula(dose, water, stock.si)
    working = [
        *said(formula, system, **values),
        f"The strip reads {strip.value}: {strip.value.si / max(computed, 1e-9) * 100:.0f} % of that.",
        *facts.assumed("sanitiser_stock", "sanitiser_wanted"),
    ]
    says = _BALANCE[max(weights, key=lambda o: weights[o])]
    return facts.conclude(name, weights, name, [strip], [dose, water], working, says)


def _dose_and_water(facts: Facts) -> tuple[Reading, Reading] | None:
    """Stock and water that belong together: both a rack, or both a minute."""
    for dose, water in ((RACK, WATER), (OUTPUT, FLOW)):
        first, second = facts.now(dose), facts.now(water)
        if first is not None and second is not None and second.value.si > 0:
            return first, second
    return None


def _computed(dose: Reading, water: Reading, stock: float) -> float:
    run = strength_of_dose if dose.check == RACK else strength_in_stream
    return run(dose.value.si, stock, water.value.si)


def _formula(dose: Reading, water: Reading, stock: float) -> tuple[str, dict[str, float]]:
    if dose.check == RACK:
        return "strength-of-dose", {"dose": dose.value.si, "stock": stock, "water": water.value.si}
    return "strength-of-feed", {"pump_flow": dose.value.si, "stock": stock, "water_flow": water.value.si}


def _system(facts: Facts, check: str) -> str:
    """mL belong to both systems: the plate's water says which one is worked in."""
    water = facts.plate(_PLATE[check][2])
    return system_of(water.unit) if water is not None else "us"


def dose_told(facts: Facts) -> tuple[str, ...]:
    """What is known of the dose, for the working of the strip."""
    pair, stock = _dose_and_water(facts), facts.plate("sanitiser_stock")
    if pair is None or stock is None or stock.si <= 0:
        return ()
    formula, values = _formula(*pair, stock.si)
    computed = said(formula, system_of(pair[1].value.unit), **values)
    told = (*reading_told(facts, pair[0]), *reading_told(facts, pair[1]), *plates_told(facts, "sanitiser_stock"))
    return (*told, *(f"{line} by the dose that is fed." for line in computed))


_DRAWN = {
    "nothing": "No stock is drawn.",
    "short": "Less stock is drawn than the wanted strength takes: pump, line or setting.",
    "as_wanted": "The dose is right: if the strip is weak, look at stock, water and what becomes of it.",
    "too_much": "More stock is drawn than the wanted strength takes.",
}
_BALANCE = {
    "agrees": "The strip is what this dose gives this water: change the dose or the water.",
    "strip_below": "The strip reads less than this dose must give: stock, leak, soil, heat or old strips.",
    "strip_above": "The strip reads more than this dose can give: stronger stock, a second way in, or a strip misread.",
}
