"""Insulation of a motor's winding, brought to the temperature at which its figures of good order hold."""

from __future__ import annotations

import math
from collections.abc import Mapping

from diagnose.formulas import said, system_of
from diagnose.model import Finding, Reading
from diagnose.physics.insulation import insulation_at_40
from diagnose.rules.bands import Band, bands_of, normal_share
from diagnose.rules.facts import Expected, Facts, Silent
from diagnose.rules.instruments import spread
from diagnose.rules.told import limit_si, reading_told, shown
from diagnose.units import Quantity, UnitError, parse_quantity, show_number

__all__ = ["WARMTHS", "expected_insulation", "insulation"]

# Insulation check -> the check that says how warm that motor was when it was isolated.
WARMTHS: Mapping[str, str] = {f"{m}.insulation": f"{m}.case_temperature" for m in ("pump_motor", "drive_motor")}
COOLS = 7.0  # K by which the winding may stand off its case, or have cooled meanwhile; judgement
DOUBLING = math.log(2.0) / 10.0  # relative change for each kelvin
COLDEST, HOTTEST = 253.15, 453.15  # a case outside is a slip of the pen
MEGOHM = parse_quantity("1 Mohm", "resistance").unit


def insulation(facts: Facts, check_id: str) -> Finding | Silent | None:
    """Judge insulation to ground by what it would read at 40 °C.

    Purpose: the same megohms are good in a hot motor and poor in a cold one. With no temperature read the plain
    band is left to answer.
    Formula: R_40 = R × 2^((T − 40 °C) / 10 C°), held against the bands of the check; the winding's own
    temperature is taken as its case's, 7 K more or less.
    Source: TM 55-1905-223-24-17, 2-14 (5 Mohm); the halving for each 10 C° is common practice.
    Fires: two_tank_electric_208: pump_motor.case_temperature = 160 °F; pump_motor.insulation = 2 Mohm -> good
    Fires: two_tank_electric_208: pump_motor.case_temperature = 50 °F; pump_motor.insulation = 2 Mohm -> leaks
    Fires: two_tank_steam_208: drive_motor.case_temperature = 150 °F; drive_motor.insulation = 1.5 Mohm -> good
    Silent: two_tank_electric_208: pump_motor.case_temperature = 160 °F
    """
    reading, check = facts.fresh(check_id), facts.check(check_id)
    warmth = _warmth(facts, check_id)
    if reading is None or check is None or warmth is None or reading.value.si <= 0:
        return None
    try:
        bands = bands_of(facts.book, facts.machine, check, reading.value.unit)
    except (LookupError, UnitError) as error:
        return Silent(f"{check.title}: {error}")
    at_40 = insulation_at_40(reading.value.si, warmth.value.si)
    own = spread(check, reading.value, reading) * reading.value.unit.factor / reading.value.si
    weights = _weights(bands, reading.value.unit.from_si(at_40), math.hypot(own, COOLS * DOUBLING))
    outcome = max(weights, key=lambda o: weights[o])
    system = system_of(warmth.value.unit)
    working = [
        f"{reading.value} with the case at {warmth.value}; brought to 40 °C (104 °F):",
        *said("insulation-warm", system, resistance=reading.value.si, temperature=warmth.value.si),
        f"So {shown(at_40, 'resistance', 'Mohm')} at 40 °C ({check.outcomes[outcome].title}).",
    ]
    return facts.conclude(check_id, weights, "insulation", [reading], [warmth], working, _SAYS[outcome])


def _weights(bands: list[Band], value: float, relative: float) -> dict[str, float]:
    """Share of each band when the logarithm of the value is blurred: temperature makes a factor of it."""
    weights: dict[str, float] = {}
    for band in bands:
        under = 0.0 if band.low is None else normal_share(math.log(band.low.value / value) / relative)
        below = 1.0 if band.high is None else normal_share(math.log(band.high.value / value) / relative)
        weights[band.outcome] = weights.get(band.outcome, 0.0) + max(below - under, 0.0)
    return weights


def _warmth(facts: Facts, check_id: str) -> Reading | None:
    """The case's temperature as read at this stage: an earlier one is of another hour."""
    warmth = facts.now(WARMTHS[check_id])
    return warmth if warmth is not None and COLDEST <= warmth.value.si <= HOTTEST else None


def expected_insulation(facts: Facts, check: str) -> Expected | None:
    """What good insulation reads in a motor this warm."""
    warmth = _warmth(facts, check)
    try:
        good = limit_si(facts, "insulation_good", "low", MEGOHM)
    except LookupError:
        return None
    if warmth is None:
        line = f"{shown(good, 'resistance', 'Mohm')} or more at 40 °C; half for each 10 C° (18 F°) warmer"
        return Expected(
            (line,), Quantity.of_si(good, "resistance", "Mohm"), None, (), "TM 55-1905-223-24-17, 2-14", (line,)
        )
    factor = insulation_at_40(1.0, warmth.value.si)
    low = Quantity.of_si(good / factor, "resistance", "Mohm")
    line = f"{show_number(low.value, 3)} Mohm or more with the case at {warmth.value}"
    working = (
        *reading_told(facts, warmth),
        f"{shown(good, 'resistance', 'Mohm')} or more is good at 40 °C (104 °F); it halves for each 10 C°.",
        *said("insulation-warm", system_of(warmth.value.unit), resistance=low.si, temperature=warmth.value.si),
    )
    return Expected((line,), low, None, (), "TM 55-1905-223-24-17, 2-14; halving is common practice", working)


_SAYS = {
    "good": "The insulation is good for its warmth.",
    "weak": "The insulation is weak for its warmth: damp, or aging.",
    "leaks": "The winding leaks to ground.",
}
