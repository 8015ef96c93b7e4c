"""Sanitiser strip: is the rinse as strong as wanted, and warm enough for its strength and pH?"""

from __future__ import annotations

from itertools import product

from diagnose.model import Finding, Reading
from diagnose.physics.chlorine import chlorine_least_temperature, chlorine_verdict, contact_time_least
from diagnose.physics.conveyor import dwell
from diagnose.rules.conveyor_bar_pawls import speed_now
from diagnose.rules.facts import Expected, Facts, Silent
from diagnose.rules.instruments import spread
from diagnose.rules.sanitiser_feed import STEP, STRONG, dose_told, strip_wanted
from diagnose.rules.told import plates_told, reading_told
from diagnose.units import Quantity, show_number

__all__ = ["expected_strip", "strip"]

STRIP, PH = "sanitiser_feed.strip", "water_quality.rinse_ph"
HEATS = ("rinse_thermometer.reference_reading_chemical", "rinse_thermometer.panel_reading_chemical")
TRACE = 10.0  # mg/L, the least a strip shows; judgement
# Middles of nine equal shares of a normal distribution, in standard deviations.
_NODES = (-1.59, -0.97, -0.59, -0.28, 0.0, 0.28, 0.59, 0.97, 1.59)
_PH_UNREAD = (7.5, 9.0)  # either column of the code's table, where nobody read the pH


def strip(facts: Facts) -> Finding | Silent | None:
    """Judge the strip by the strength wanted and by the code's table for its pH and temperature.

    Purpose: 50 ppm at 90 °F is enough at pH 8 and not at pH 9; at pH 10.5 no temperature is enough.
    Formula: row of the table by strength and pH gives the least temperature; each reading blurred by its error.
    Source: Food Code 4-501.114(A); a strip under 75 % of the wanted strength is weak, judgement.
    Fires: single_tank_chemical_208 (sanitiser_wanted = 50 ppm): sanitiser_feed.strip = 55 ppm;
      water_quality.rinse_ph = 9.3 pH; rinse_thermometer.reference_reading_chemical = 88 F -> not_here
    Silent: single_tank_chemical_208: water_quality.rinse_ph = 9.3 pH
    """
    reading, check, wanted = facts.fresh(STRIP), facts.check(STRIP), strip_wanted(facts)
    if reading is None or check is None:
        return None
    if wanted is None:
        return Silent(f"{check.title}: needs the strength wanted on the plate")
    heat, ph = _heat(facts), facts.now(PH)
    weights = _weights(facts, reading, heat, ph, wanted.si)
    outcome = max(weights, key=lambda o: weights[o])
    working = [*_words(facts, reading, heat, ph, wanted), *facts.assumed("sanitiser_wanted")]
    return facts.conclude(STRIP, weights, STRIP, [reading], [heat, ph], working, _SAYS[outcome])


def _weights(
    facts: Facts, reading: Reading, heat: Reading | None, ph: Reading | None, wanted: float
) -> dict[str, float]:
    """Share of the points round the readings that fall to each outcome."""
    strengths = _points(facts, reading)
    heats = _points(facts, heat) if heat is not None else [None]
    acids = _points(facts, ph) if ph is not None else list(_PH_UNREAD)
    weights = dict.fromkeys(("good", "none", "weak", "not_here", "strong"), 0.0)
    every = list(product(strengths, heats, acids))
    for strength, temperature, acid in every:
        weights[_outcome(strength, temperature, acid, wanted)] += 1.0 / len(every)
    return weights


def _outcome(strength: float, temperature: float | None, ph: float, wanted: float) -> str:
    if strength < TRACE:
        return "none"
    if strength < STEP * wanted:
        return "weak"
    # Between two colours of a strip the wanted strength stands for what was read.
    judged = wanted if strength < STRONG * wanted else strength
    if ph > 10.0 or (temperature is not None and chlorine_verdict(judged, ph, temperature) == "too cold"):
        return "not_here"
    return "strong" if strength >= STRONG * wanted else "good"


def _points(facts: Facts, reading: Reading) -> list[float]:
    check, unit = facts.book.checks[reading.check], reading.value.unit
    sigma = spread(check, reading.value, reading)
    return [max(unit.to_si(reading.value.value + z * sigma), 0.0) for z in _NODES]


def _heat(facts: Facts) -> Reading | None:
    return next((r for r in map(facts.now, HEATS) if r is not None), None)


def _words(facts: Facts, reading: Reading, heat: Reading | None, ph: Reading | None, wanted: Quantity) -> list[str]:
    share = reading.value.si / wanted.si * 100
    words = [f"Read: {reading.value}, {share:.0f} % of the {wanted} wanted; from 75 % on a strip counts as reached."]
    least = _least(wanted.si, ph, heat)
    if least:
        words.append(least)
    words.extend(reading_told(facts, heat))
    if heat is None or ph is None:
        unread = [w for w, r in (("temperature", heat), ("pH", ph)) if r is None]
        words.append(f"Not read: {' and '.join(unread)} of the rinse, on which it depends whether that is enough.")
    return [*words, *_contact(facts, reading.value.si, heat, ph), *dose_told(facts)]


def _contact(facts: Facts, strength: float, heat: Reading | None, ph: Reading | None) -> list[str]:
    """Seconds the ware is under the rinse, against the code's contact time; nothing where they are not known."""
    zone, speed = facts.plate("rinse_zone"), speed_now(facts)
    if zone is None or isinstance(speed, Silent) or heat is None or ph is None or speed.speed <= 0:
        return []
    least = contact_time_least("chlorine", strength, min(ph.value.value, 10.0), heat.value.si)
    seconds = dwell(zone.si, speed.speed)
    told = f"Contact: {least:.0f} s wanted (Food Code 4-703.11(C)), {seconds:.1f} s under the rinse"
    return [f"{told}; what stays wet goes on working."]


def _least(strength: float, ph: Reading | None, heat: Reading | None) -> str:
    """What the code's table asks for, in the unit of the thermometer used."""
    celsius = heat is not None and heat.value.unit.system == "si"
    unit = "°C" if celsius else "°F"
    told = []
    for acid in (ph.value.value,) if ph is not None else (8.0, 10.0):
        try:
            least = Quantity.of_si(chlorine_least_temperature(strength, acid, celsius), "temperature", unit)
        except ValueError as error:
            return f"Food Code 4-501.114(A): {error}."
        upto = f"pH {show_number(acid, 3)}" if ph is not None else f"pH {acid:.0f} or less"
        told.append(f"{least.value:.0f} {unit} at {upto}")
    return f"Food Code 4-501.114(A): {show_number(strength, 3)} ppm asks for {', '.join(told)}."


def expected_strip(facts: Facts, check: str) -> Expected | None:
    """The strength wanted, and the least temperature that goes with it."""
    wanted = strip_wanted(facts)
    if wanted is None:
        return None
    heat, ph = _heat(facts), facts.now(PH)
    least = _least(wanted.si, ph, heat)
    working = (
        *plates_told(facts, "sanitiser_wanted"),
        *reading_told(facts, ph),
        *reading_told(facts, heat),
        least,
        *dose_told(facts),
    )
    low, high = (Quantity(wanted.value * f, wanted.unit) for f in (STEP, STRONG))
    lines = (f"{wanted}, and the rinse warm enough for it", least)
    assumed = facts.assumed("sanitiser_wanted")
    return Expected(lines, low, high, assumed, "Food Code 4-501.114(A) and the plate", working)


_SAYS = {
    "good": "As strong as wanted, and nothing read says that it is too cold or too alkaline.",
    "none": "Next to no sanitiser arrives on the ware.",
    "weak": "Weaker than wanted.",
    "not_here": "The strip is right, but at this temperature and pH the code does not let it count.",
    "strong": "Stronger than wanted: more smell, more wear, no more safety.",
}
