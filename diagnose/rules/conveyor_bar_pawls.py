"""Conveyor timing against the plate: racks through a zone, strokes of the bar, and both together."""

from __future__ import annotations

import math
from dataclasses import dataclass

from diagnose.formulas import said, system_of
from diagnose.model import Check, Finding, Reading
from diagnose.physics.conveyor import dwell
from diagnose.physics.conveyor_speed import speed_of_strokes, speed_of_time
from diagnose.rules.bands import normal_share
from diagnose.rules.facts import Expected, Facts, Silent
from diagnose.rules.instruments import spread
from diagnose.units import Quantity, Unit, parse_quantity, show_number

__all__ = ["Pace", "expected_strokes", "expected_zone", "pace", "speed_now", "strokes", "zone_time"]

ZONE, STROKES, PACE, SPEED = (f"conveyor_bar_pawls.{n}" for n in ("zone_time", "strokes", "pace", "rack_speed"))
LENGTH_SPREAD = 0.015  # where curtain and tape are taken to stand, as a share of the zone; judgement
# Edges as shares of the plate's speed, midway between right (1), five sixths and six fifths; judgement.
LEVELS = (("far_slow", 0.79), ("sixth_slow", 0.88), ("as_plate", 1.13), ("fifth_fast", 1.28), ("far_fast", math.inf))
LAG = 0.92  # racks under this share of the bar's speed lose part of each stroke; judgement
AHEAD = 1.15  # nor can racks go faster than the bar


@dataclass(frozen=True)
class Pace:
    """A speed found, SI, one standard deviation of it, the readings behind it, and how it was found."""

    speed: float
    sigma: float
    read: tuple[Reading, ...]
    words: tuple[str, ...]


def speed_now(facts: Facts) -> Pace | Silent:
    """The conveyor's speed: as timed at this stage or before, else the plate's."""
    timed = facts.known(ZONE)
    zone = facts.plate("wash_zone")
    if timed is not None and zone is not None and timed.value.si > 0:
        return _of_time(facts, timed, zone.si)
    read = facts.known(SPEED)
    if read is not None and read.value.si > 0:
        return Pace(read.value.si, 0.03 * read.value.si, (read,), (f"Conveyor as timed: {read.value}.",))
    plate = facts.plate("conveyor_speed")
    if plate is None or plate.si <= 0:
        return Silent("needs the conveyor's speed, from the plate or timed")
    stands = "type's figure, assumed" if facts.machine.assumed("conveyor_speed") else "data plate"
    return Pace(plate.si, 0.03 * plate.si, (), (f"Conveyor {plate} ({stands}); not timed.",))


def zone_time(facts: Facts) -> Finding | Silent | None:
    """Judge a rack's time through the wash zone.

    Purpose: the same seconds are right on one machine and a sixth slow on another.
    Formula: speed = wash zone / time; over the plate's speed: under 0.79 far slow, to 0.88 a sixth slow, to
    1.13 as the plate, to 1.28 a fifth fast, above far fast.
    Source: plate (Food Code 4-204.113 has the speed on it); 5/6 and 6/5 from 50 and 60 Hz; edges are judgement.
    Fires: two_tank_electric_208 (wash_zone = 28 in, conveyor_speed = 5.8 ft/min):
      conveyor_bar_pawls.zone_time = 29 s -> sixth_slow
    Silent: two_tank_electric_208: conveyor_bar_pawls.zone_time = 24 s; conveyor_bar_pawls.strokes = 11.6 per minute
    """
    reading, plate, zone = facts.fresh(ZONE), facts.plate("conveyor_speed"), facts.plate("wash_zone")
    if reading is None:
        return None
    if plate is None or zone is None or plate.si <= 0:
        return Silent("Time through the wash zone: needs the plate's speed and the zone's length")
    found = _of_time(facts, reading, zone.si)
    return _judged(facts, ZONE, found, plate, "wash_zone")


def strokes(facts: Facts) -> Finding | Silent | None:
    """Judge the bar's strokes a minute.

    Purpose: tell whether the drive keeps the plate's pace, whatever the racks do.
    Formula: speed = stroke x strokes; over the plate's speed, with the edges of the zone's time.
    Source: plate; edges are judgement.
    Fires: two_tank_electric_208 (conveyor_stroke = 6 in, conveyor_speed = 5.8 ft/min):
      conveyor_bar_pawls.strokes = 7.0 per minute -> far_slow
    Silent: two_tank_electric_208: conveyor_bar_pawls.zone_time = 24 s; conveyor_bar_pawls.strokes = 11.6 per minute
    """
    reading, plate, stroke = facts.fresh(STROKES), facts.plate("conveyor_speed"), facts.plate("conveyor_stroke")
    if reading is None:
        return None
    if plate is None or stroke is None or plate.si <= 0:
        return Silent("Strokes of the bar: needs the plate's speed and the stroke")
    return _judged(facts, STROKES, _of_strokes(facts, reading, stroke.si), plate, "conveyor_stroke")


def pace(facts: Facts) -> Finding | Silent | None:
    """Judge racks and bar together.

    Purpose: off by the same share it is the drive; racks behind the bar is pawls, pin or stroke.
    Formula: q = rack speed / bar speed under 0.92 lags; else the mean of both, weighted by their errors, over
    the plate's speed, with the edges of the zone's time.
    Source: plate; edges are judgement.
    Fires: two_tank_electric_208 (wash_zone = 28 in, conveyor_stroke = 6 in, conveyor_speed = 5.8 ft/min):
      conveyor_bar_pawls.zone_time = 33 s; conveyor_bar_pawls.strokes = 11.6 per minute -> racks_lag
    Silent: two_tank_electric_208: conveyor_bar_pawls.zone_time = 33 s
    """
    timed, counted = facts.fresh(ZONE), facts.fresh(STROKES)
    plate, zone, stroke = (facts.plate(n) for n in ("conveyor_speed", "wash_zone", "conveyor_stroke"))
    if timed is None or counted is None or facts.check(PACE) is None:
        return None
    if plate is None or zone is None or stroke is None or plate.si <= 0:
        return Silent("Bar and racks: needs speed, zone and stroke from the plate")
    racks, bar = _of_time(facts, timed, zone.si), _of_strokes(facts, counted, stroke.si)
    q = racks.speed / bar.speed
    sigma = q * math.hypot(racks.sigma / racks.speed, bar.sigma / bar.speed)
    if normal_share((q - AHEAD) / sigma) > 0.9:
        return Silent("Bar and racks: racks can't outrun the bar; count again, or read the stroke off the plate")
    lag = normal_share((LAG - q) / sigma)
    one, two = 1 / racks.sigma**2, 1 / bar.sigma**2
    mean = (racks.speed * one + bar.speed * two) / (one + two)
    weights = {o: w * (1 - lag) for o, w in _levels(mean / plate.si, (one + two) ** -0.5 / plate.si).items()}
    weights["racks_lag"] = lag
    outcome = max(weights, key=lambda o: weights[o])
    working = [
        *racks.words,
        *bar.words,
        f"Racks at {q * 100:.0f} % of the bar's speed; both together at {mean / plate.si * 100:.0f} % of {plate}.",
        *facts.assumed("conveyor_speed", "wash_zone", "conveyor_stroke"),
    ]
    return facts.conclude(PACE, weights, PACE, [timed, counted], (), working, _SAYS[outcome])


def _of_time(facts: Facts, reading: Reading, zone: float) -> Pace:
    check, system = facts.check(ZONE), system_of(facts.plate("conveyor_speed").unit)  # type: ignore[union-attr]
    speed = speed_of_time(zone, reading.value.si)
    return Pace(
        speed,
        speed * math.hypot(_relative(check, reading), LENGTH_SPREAD),
        (reading,),
        said("conveyor-speed", system, length=zone, time=reading.value.si),
    )


def _of_strokes(facts: Facts, reading: Reading, stroke: float) -> Pace:
    check, system = facts.check(STROKES), system_of(facts.plate("conveyor_speed").unit)  # type: ignore[union-attr]
    speed = speed_of_strokes(stroke, reading.value.si)
    if speed <= 0:
        raise ValueError("no stroke was counted: the bar stands")
    words = said("conveyor-speed-strokes", system, stroke=stroke, strokes=reading.value.si)
    return Pace(speed, speed * _relative(check, reading), (reading,), words)


def _relative(check: Check | None, reading: Reading) -> float:
    if check is None:
        return 0.03
    return spread(check, reading.value, reading) / abs(reading.value.value)


def _levels(share: float, sigma: float) -> dict[str, float]:
    """How much of a normal distribution round the share of the plate's speed lies in each level."""
    weights, below = {}, 0.0
    for outcome, edge in LEVELS:
        upto = normal_share((edge - share) / sigma)
        weights[outcome], below = max(upto - below, 0.0), upto
    return weights


def _judged(facts: Facts, name: str, found: Pace, plate: Quantity, figure: str) -> Finding | Silent:
    share = found.speed / plate.si
    weights = _levels(share, found.sigma / plate.si)
    outcome = max(weights, key=lambda o: weights[o])
    working = [
        *found.words,
        f"That is {share * 100:.0f} % of the plate's {plate}.",
        *facts.assumed("conveyor_speed", figure),
    ]
    return facts.conclude(name, weights, name, found.read, (), working, _SAYS[outcome])


def expected_zone(facts: Facts, check: str) -> Expected | None:
    """Seconds through the wash zone at the plate's speed."""
    plate, zone = facts.plate("conveyor_speed"), facts.plate("wash_zone")
    if plate is None or zone is None or plate.si <= 0:
        return None
    time, unit = dwell(zone.si, plate.si), _unit("s", "time")
    low, high = (Quantity.of_si(time / share, "time", unit.symbol) for share in (1.1, 0.9))
    line = f"{show_number(time, 3)} s ({zone} at {plate})"
    working = (*said("dwell", system_of(plate.unit), length=zone.si, speed=plate.si), *_origins(facts, plate, zone))
    return Expected((line,), low, high, facts.assumed("conveyor_speed", "wash_zone"), "length over speed", working)


def expected_strokes(facts: Facts, check: str) -> Expected | None:
    """Strokes a minute at the plate's speed."""
    plate, stroke = facts.plate("conveyor_speed"), facts.plate("conveyor_stroke")
    if plate is None or stroke is None or stroke.si <= 0:
        return None
    rate = plate.si / stroke.si
    low, high = (Quantity.of_si(rate * share, "rate", "per minute") for share in (0.9, 1.1))
    line = f"{show_number(rate * 60, 3)} a minute ({stroke} a stroke at {plate})"
    system = system_of(plate.unit)
    working = (
        *said("conveyor-speed-strokes", system, stroke=stroke.si, strokes=rate),
        *_origins(facts, plate, stroke, "conveyor_stroke", "Stroke"),
    )
    return Expected(
        (line,), low, high, facts.assumed("conveyor_speed", "conveyor_stroke"), "speed over stroke", working
    )


def _origins(
    facts: Facts, plate: Quantity, length: Quantity, figure: str = "wash_zone", name: str = "Wash zone"
) -> tuple[str, ...]:
    def stands(key: str) -> str:
        return "type's figure, assumed" if facts.machine.assumed(key) else "data plate"

    return (f"Speed {plate}: {stands('conveyor_speed')}.", f"{name} {length}: {stands(figure)}.")


def _unit(symbol: str, quantity: str) -> Unit:
    return parse_quantity(f"1 {symbol}", quantity).unit


_SAYS = {
    "far_slow": "Much slower than the plate.",
    "sixth_slow": "About a sixth slower than the plate: 50 for 60 Hz does just that.",
    "as_plate": "At the plate's speed.",
    "fifth_fast": "About a fifth faster than the plate: 60 for 50 Hz does just that.",
    "far_fast": "Much faster than the plate.",
    "racks_lag": "The bar keeps its pace and the racks do not: pawls, pin or stroke.",
}
