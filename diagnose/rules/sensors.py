"""A temperature sensor's ohms against the temperature it is at: as its curve, low, high, open or short."""

from __future__ import annotations

import math
from collections.abc import Callable, Mapping
from dataclasses import dataclass

from diagnose.formulas import said, system_of
from diagnose.model import Finding, Reading
from diagnose.physics.ntc import ROOM, beta_of_two_points, beta_resistance, beta_temperature
from diagnose.physics.pt100 import pt100_resistance, pt100_temperature
from diagnose.rules.bands import normal_share
from diagnose.rules.facts import Expected, Facts, Silent
from diagnose.rules.instruments import spread
from diagnose.units import Quantity, show_number

__all__ = ["SENSORS", "Curve", "curve_of", "expected_ohms", "sensor_ohms"]

# Check -> readings of a second thermometer at the same place, the most telling first.
SENSORS: Mapping[str, tuple[str, ...]] = {
    "rinse_thermometer.sensor_ohms": (
        "rinse_thermometer.reference_reading",
        "rinse_thermometer.reference_reading_chemical",
    ),
    "tank_thermometer.sensor_ohms": ("tank_thermometer.reference_reading",),
    "booster_control.sensor_ohms": ("booster_control.cut_out",),
}
HOT = 353.15  # 80 °C, where plates state the second figure
ALIKE = 1.5  # K a thermometer may be off, Food Code 4-203.12
PLACE = 1.0  # K, probe and sensor are not at the very same spot; judgement
AWAY = 15.0  # K, a sensor that is off may be off by anything up to this; judgement
FIT = 0.5  # K, the curve between the two figures of the plate; judgement
OPEN, SHORT = 1e6, 5.0  # ohm: beyond these it is a broken or a bridged lead, whatever the curve; judgement
COLDEST, HOTTEST = 263.15, 423.15  # K: further off, no sensor in a warewasher is at such a temperature; judgement
_NEEDED = (
    "the curve of this probe is needed, its ohms at 25 and at 80 °C from the plate or the maker's list: two probes "
    "alike at room temperature can stand 8 °C apart at 80"
)


@dataclass(frozen=True)
class Curve:
    """A sensor's curve from two figures of the plate: temperature of ohms, and back."""

    words: str
    rising: bool
    temperature: Callable[[float], float]
    ohms: Callable[[float], float]
    beta: float = 0.0


def curve_of(facts: Facts) -> Curve | None:
    """The curve through the plate's two figures; None where it does not have both."""
    cold, hot = facts.plate("sensor_ohms_25"), facts.plate("sensor_ohms_80")
    if cold is None or hot is None or cold.si <= 0 or hot.si <= 0 or cold.si == hot.si:
        return None
    if hot.si > cold.si:
        return _platinum(cold.si, hot.si)
    beta = beta_of_two_points(cold.si, ROOM, hot.si, HOT)
    return Curve(
        f"falling, a thermistor with a beta of {beta:.0f}",
        False,
        lambda ohms: beta_temperature(ohms, cold.si, beta),
        lambda kelvin: beta_resistance(kelvin, cold.si, beta),
        beta,
    )


def _platinum(cold: float, hot: float) -> Curve:
    """Rising: the platinum curve, stretched to pass through both figures."""
    ice, steep = pt100_resistance(ROOM), pt100_resistance(HOT) - pt100_resistance(ROOM)
    step = (hot - cold) / steep

    def as_platinum(ohms: float) -> float:
        return ice + (ohms - cold) / step

    return Curve(
        "rising, platinum",
        True,
        lambda ohms: pt100_temperature(as_platinum(ohms)),
        lambda kelvin: cold + (pt100_resistance(kelvin) - ice) * step,
    )


def sensor_ohms(facts: Facts, check_id: str) -> Finding | Silent | None:
    """Judge a sensor's ohms by the temperature a second thermometer reads beside it.

    Purpose: the same ohms are right on one curve and 8 °C off on another; only the plate's figures tell. A
    falling curve read through a corroded contact is cold, a rising one hot; a leak goes the other way.
    Formula: T(R) by the platinum curve or 1/T = 1/298.15 + ln(R/R25)/B, B from the plate's two figures;
    weights of T(R) - T_reference within 1.5 °C, or anywhere up to 15 °C under or over it.
    Source: IEC 60751; the beta model; 1.5 °C is Food Code 4-203.12; errors of meter, probe and place.
    Fires: two_tank_electric_208 (sensor_ohms_25 = 10000 ohm, sensor_ohms_80 = 1256 ohm):
      rinse_thermometer.reference_reading = 180 F; rinse_thermometer.sensor_ohms = 1550 ohm -> reads_low
    Silent: two_tank_electric_208: rinse_thermometer.reference_reading = 180 F; rinse_thermometer.sensor_ohms = 1550 ohm
    """
    reading, check = facts.fresh(check_id), facts.check(check_id)
    if reading is None or check is None:
        return None
    ohms, curve = reading.value.si, curve_of(facts)
    if ohms >= OPEN or ohms <= SHORT:
        return _broken(facts, check_id, reading, "open" if ohms >= OPEN else "short", [])
    if curve is None or facts.machine.assumed("sensor_ohms_25") or facts.machine.assumed("sensor_ohms_80"):
        return Silent(f"{check.title}: {_NEEDED}")
    try:
        seen = curve.temperature(ohms)
    except ValueError:
        seen = HOTTEST + 1 if (ohms > curve.ohms(HOT)) == curve.rising else COLDEST - 1
    if not COLDEST <= seen <= HOTTEST:
        far = "open" if ohms > curve.ohms(HOT) else "short"
        return _broken(facts, check_id, reading, far, [f"The plate's curve: {curve.words}."])
    beside = _reference(facts, check_id)
    if beside is None:
        named = facts.book.checks.get(SENSORS[check_id][0])
        return Silent(f"{check.title}: needs the temperature there{f', {named.title.lower()}' if named else ''}")
    return _judged(facts, check_id, reading, beside, curve, seen)


def _judged(
    facts: Facts, check_id: str, reading: Reading, beside: Reading, curve: Curve, seen: float
) -> Finding | Silent:
    check, other = facts.check(check_id), facts.check(beside.check)
    assert check is not None
    assert other is not None
    there = beside.value
    slope = abs(curve.ohms(there.si + 0.5) - curve.ohms(there.si - 0.5))
    sigma = math.sqrt(
        (spread(check, reading.value, reading) * reading.value.unit.factor / slope) ** 2
        + (spread(other, there, beside) * there.unit.factor) ** 2
        + PLACE**2 / 3
        + FIT**2
    )
    off = seen - there.si
    low, high = normal_share((-ALIKE - off) / sigma), normal_share((off - ALIKE) / sigma)
    # Densities: within what a thermometer may be off, or anywhere beside it. A coarse meter so proves little.
    weights = {
        "as_curve": max(1 - low - high, 0.0) / (2 * ALIKE),
        "reads_low": low / AWAY,
        "reads_high": high / AWAY,
    }
    outcome = max(weights, key=lambda o: weights[o])
    working = [*_curve_words(facts, curve), *_working(reading, there, curve, seen)]
    says = _SAYS[outcome] if outcome == "as_curve" else f"{_SAYS[outcome]} {_FAULTS[outcome, curve.rising]}"
    return facts.conclude(check_id, weights, check_id, [reading], [beside], working, says)


def _working(reading: Reading, there: Quantity, curve: Curve, seen: float) -> list[str]:
    """Ohms into a temperature, set against the one read beside it."""
    shown = Quantity.of_si(seen, "temperature", there.unit.symbol)
    ohms = f"{show_number(curve.ohms(there.si), 4)} ohm"
    off = Quantity.of_si(seen - there.si, "temperature difference", "F°" if there.unit.symbol == "°F" else "C°")
    return [
        f"At {there} this curve has {ohms}; you read {reading.value}, which is {show_number(shown.value)} "
        f"{shown.unit.symbol}: {show_number(off.value, 3)} {off.unit.symbol}."
    ]


def _curve_words(facts: Facts, curve: Curve) -> list[str]:
    cold, hot = facts.plate("sensor_ohms_25"), facts.plate("sensor_ohms_80")
    return [f"The plate: {cold} at 25 °C (77 °F), {hot} at 80 °C (176 °F): {curve.words}."]


def _broken(facts: Facts, check_id: str, reading: Reading, outcome: str, working: list[str]) -> Finding | Silent:
    """Nearly sure: hardly anything but a broken or bridged lead reads so."""
    weights = {outcome: 0.98, "reads_high": 0.01, "reads_low": 0.01}
    working = [*working, f"{reading.value}: no temperature a machine has."]
    return facts.conclude(check_id, weights, check_id, [reading], (), working, _SAYS[outcome])


def _reference(facts: Facts, check_id: str) -> Reading | None:
    return next((r for r in map(facts.now, SENSORS[check_id]) if r is not None and facts.check(r.check)), None)


def expected_ohms(facts: Facts, check: str) -> Expected | None:
    """The ohms of the plate's curve at the temperature read beside the sensor, or at 80 °C."""
    curve = curve_of(facts)
    if curve is None:
        needed = f"{_NEEDED[0].upper()}{_NEEDED[1:]}"
        return Expected((needed,), basis="public curve sheets of thermistors", working=(f"{needed}.",))
    beside = _reference(facts, check)
    there = beside.value.si if beside else HOT
    try:
        least, most = sorted((curve.ohms(there - ALIKE), curve.ohms(there + ALIKE)))
    except ValueError:
        return None
    low, high = (Quantity.of_si(x, "resistance", "ohm") for x in (least, most))
    assumed = facts.assumed("sensor_ohms_25", "sensor_ohms_80")
    where = f"{beside.value}, read beside it" if beside else "176 °F (80 °C)"
    line = f"{show_number(least, 3)} to {show_number(most, 3)} ohm at {where}"
    working = [*_curve_words(facts, curve), *_formula(facts, curve, there, beside)]
    working.append("1.5 °C or 3 °F either way, as a thermometer may be off (Food Code 4-203.12).")
    if assumed:  # a curve of the type is an example, no ground to judge a probe by
        working.append(f"Not this plate's: {_NEEDED}.")
        return Expected((f"{line}, if it is of the type's curve",), None, None, assumed, "", tuple(working))
    return Expected((line,), low, high, assumed, "IEC 60751 or the beta model", tuple(working))


def _formula(facts: Facts, curve: Curve, there: float, beside: Reading | None) -> tuple[str, ...]:
    system, cold = system_of(beside.value.unit) if beside else "us", facts.plate("sensor_ohms_25")
    if curve.rising or cold is None:
        return (f"The platinum curve through both figures has {show_number(curve.ohms(there), 4)} ohm there.",)
    return said("beta-ohms", system, temperature=there, nominal=cold.si, beta=curve.beta)


_SAYS = {
    "as_curve": "The sensor and its leads read as their curve: the fault is not here.",
    "reads_low": "The sensor's ohms stand for a colder water than there is.",
    "reads_high": "The sensor's ohms stand for a hotter water than there is.",
    "open": "The sensor or a lead of it is broken.",
    "short": "The sensor's leads are bridged.",
}
_FAULTS = {
    ("reads_low", False): "Too many ohms: a corroded contact in series, or another curve.",
    ("reads_high", False): "Too few ohms: a wet connector across it, or another curve.",
    ("reads_low", True): "Too few ohms: a wet connector across it, or another kind of sensor.",
    ("reads_high", True): "Too many ohms: a corroded contact in series, or leads on two wires.",
}
