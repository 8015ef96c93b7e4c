"""Proof at the ware: what a 160 °F label says beside the gauge, and heat units of a plate's own temperature."""

from __future__ import annotations

from diagnose.formulas import said, system_of
from diagnose.model import Finding, Reading
from diagnose.physics.conveyor import dwell
from diagnose.physics.sanitising import HEAT_UNITS_WANTED, heat_units_of_trace, time_for_heat_units
from diagnose.rules.bands import limit_end
from diagnose.rules.conveyor_bar_pawls import speed_now
from diagnose.rules.facts import Expected, Facts, Silent
from diagnose.rules.instruments import spread
from diagnose.rules.told import plates_told, reading_told
from diagnose.units import parse_quantity, show_number

__all__ = ["expected_trace", "label", "trace"]

LABEL, TRACE = "rinse_thermometer.label_on_plate", "rinse_proof.trace"
GAUGES = ("rinse_thermometer.panel_reading", "rinse_thermometer.reference_reading")
SECONDS = 12.0  # the check asks for: ten at the cap would fall short of 3600
STEP = 1.0  # s between two readings of the trace, as the check asks for
PEAK, CAP = parse_quantity("160 °F", "temperature"), parse_quantity("165 °F", "temperature")
# Middles of nine equal shares of a normal distribution: a logger is off by the same at every reading.
_NODES = (-1.59, -0.97, -0.59, -0.28, 0.0, 0.28, 0.59, 0.97, 1.59)


def label(facts: Facts) -> Finding | Silent | None:
    """Read a label on a plate together with the gauge.

    Purpose: turned with a low gauge, the gauge lies; not turned with a gauge that is right, the heat does not reach
    the ware: spray broken up, racks too fast, too little water. Either way it proves the peak alone.
    Formula: the outcome as seen; time for 3600 heat units at 160 °F against the time in the rinse, zone / speed.
    Source: Food Code 4-703.11(B) and its Annex 3; NSF/ANSI 3 for 3600, its text not seen.
    Fires: two_tank_electric_208: rinse_thermometer.panel_reading = 166 F; rinse_thermometer.label_on_plate = all_turn
      -> all_turn
    Silent: two_tank_electric_208: rinse_thermometer.label_on_plate = all_turn
    """
    reading, check = facts.newest.get((facts.stage, LABEL)), facts.check(LABEL)
    if reading is None or check is None or reading.outcome not in check.outcomes or reading.id in facts.spent:
        return None
    gauge = next((r for r in map(facts.now, GAUGES) if r is not None), None)
    if gauge is None:
        return Silent(f"{check.title}: no gauge was read beside it")
    try:
        low, high = (
            limit_end(facts.book, facts.machine, "rinse_temperature", end, gauge.value.unit) for end in ("low", "high")
        )
    except LookupError as error:
        return Silent(f"{check.title}: {error}")
    turned = reading.outcome == "all_turn"
    level = "low" if gauge.value.value < low.value else "high" if gauge.value.value > high.value else "good"
    working = [
        *reading_told(facts, gauge),
        f"The gauge should read {low} to {high} ({low.stands}).",
        "A label that turns proves a peak of 160 °F (71 °C) at the ware, not the time at it.",
        *_dose_words(facts, system_of(gauge.value.unit)),
    ]
    return facts.conclude(LABEL, {reading.outcome: 1.0}, LABEL, [reading], [gauge], working, _LABEL[turned, level])


def trace(facts: Facts) -> Finding | Silent | None:
    """Add up the heat units of a plate's own temperature.

    Purpose: a plate may pass 160 °F, turn its label, and still be short of its dose; racks too fast do that.
    Formula: units = sum of 3.03438e-17 exp(0.265972 T) over the seconds, none under 143 °F, no more above 165 °F.
    Source: "Where did 3600 HUE come from?", 2009; 3600 of NSF/ANSI 3, its text not seen; error of the logger.
    Fires: two_tank_electric_208: rinse_proof.trace = 151 155 160 162 163 164 164 163 162 160 158 153 F
      -> short
    Silent: two_tank_electric_208: rinse_thermometer.panel_reading = 184 F
    """
    reading, check = facts.fresh(TRACE), facts.check(TRACE)
    if reading is None or check is None:
        return None
    values = list(reading.values.values())
    first = values[0]
    sigma = spread(check, first, reading) * first.unit.factor
    weights = dict.fromkeys(("enough", "short", "cold"), 0.0)
    for node in _NODES:
        weights[_dose(tuple(v.si + node * sigma for v in values))] += 1.0 / len(_NODES)
    degrees = tuple(v.si for v in values)
    working = [
        *said("heat-units-trace", system_of(first.unit), temperatures=degrees, step=STEP),
        f"Hottest second: {max(values, key=lambda v: v.si)}; a label turns at 160 °F (71 °C).",
        *_dose_words(facts, system_of(first.unit)),
    ]
    says = _TRACE[max(weights, key=lambda o: weights[o])]
    return facts.conclude(TRACE, weights, TRACE, [reading], _speed_read(facts), working, says)


def _dose(temperatures: tuple[float, ...]) -> str:
    if heat_units_of_trace(temperatures, STEP) >= HEAT_UNITS_WANTED:
        return "enough"
    return "short" if max(temperatures) >= PEAK.si else "cold"


def _speed_read(facts: Facts) -> tuple[Reading, ...]:
    found = speed_now(facts)
    return () if isinstance(found, Silent) else tuple(r for r in found.read if r.stage == facts.stage)


def _dose_words(facts: Facts, system: str) -> list[str]:
    """How long the ware is under the rinse here, and how long 3600 heat units take."""
    least, hot = time_for_heat_units(CAP.si), time_for_heat_units(PEAK.si)
    told = [f"3600 heat units take {least:.1f} s at 165 °F (74 °C) and more, {hot:.0f} s at 160 °F (71 °C)."]
    zone, speed = facts.plate("rinse_zone"), speed_now(facts)
    if zone is None or isinstance(speed, Silent):
        return told
    seconds = dwell(zone.si, speed.speed)
    told.append(f"Here ware is under the rinse for {seconds:.1f} s; what wash and power rinse gave it comes on top.")
    return [
        *told,
        *said("dwell", system, length=zone.si, speed=speed.speed),
        *speed.words,
        *facts.assumed("rinse_zone"),
    ]


def expected_trace(facts: Facts, check: str) -> Expected | None:
    """What twelve seconds must hold for 3600 heat units."""
    zone = facts.plate("rinse_zone")
    system = system_of(zone.unit) if zone is not None else "us"
    degree = CAP if system == "us" else CAP.as_unit(parse_quantity("1 °C", "temperature").unit)
    units = said("heat-units", system, temperature=CAP.si, time=SECONDS)
    hot = f"{show_number(degree.value, 3)} {degree.unit.symbol}"
    line = f"{hot} or more for eleven of the twelve seconds: 3600 heat units"
    working = (*units, *_dose_words(facts, system), *plates_told(facts, "rinse_zone"))
    return Expected((line,), None, None, facts.assumed("rinse_zone"), "NSF/ANSI 3, its text not seen", working)


_LABEL = {
    (True, "low"): "The labels turned though the gauge reads low: the ware was hot, the gauge lies.",
    (True, "good"): "Labels and gauge agree: the ware reached 160 °F.",
    (True, "high"): "The labels turned; the gauge stands over the most, where spray begins to break up.",
    (False, "low"): "Labels and gauge agree: the rinse is too cold.",
    (False, "good"): "The gauge is right and the ware stays cold: racks too fast, too little water, spray broken up.",
    (
        False,
        "high",
    ): "Too hot at the gauge and too cold at the ware: the spray breaks up and loses its heat in the air.",
}
_TRACE = {
    "enough": "The plate got its 3600 heat units.",
    "short": "The plate passed 160 °F, so that a label turns, but not for long enough: look at speed and water.",
    "cold": "The plate never reached 160 °F.",
}
