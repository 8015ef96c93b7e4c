"""One knob to one reading: the next setting from the tries so far, or why there is none."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from typing import Literal

__all__ = ["Ended", "Knob", "Step", "Try", "next_setting", "slope_learnt"]

Ended = Literal["set", "reached", "closest", "end", "not this"]

_DOUBT = 0.6  # of the first slope: how far it may be off, as a standard error; judgement
_HARDLY = 0.15  # of the slope believed at first: the least a knob may bring that is the right one; judgement
_FURTHEST = 0.5  # of the knob's travel in one step, so that nothing is upset by one bad reading; judgement
_INSIDE = 0.1  # of the way between two tries on either side, nearer than which a step to one of them tells little


@dataclass(frozen=True)
class Try:
    """A setting and what was read with it."""

    setting: float
    reading: float


@dataclass(frozen=True)
class Knob:
    """What is set, all settings in its own marks and all readings in one unit.

    `low` to `high` is the band wanted, `target` the place in it to aim for; `error` is how far one reading may be off
    at the most. The knob goes from `least` to `most`, by `grain` at the finest (0: any). `slope` is what one mark is
    believed to bring before anything is learnt, below nought where more of it gives less: judgement.
    """

    target: float
    low: float
    high: float
    error: float
    least: float
    most: float
    slope: float
    grain: float = 0.0


@dataclass(frozen=True)
class Step:
    """What to do: `setting` is the next one, or the one that stands; `slope` what one mark brings, as learnt so far.

    `ended` is `set` (go on), `reached`, `closest` (the knob's grain allows no better), `end` (it stands at its end) or
    `not this` (the reading does not follow it). `says` is the reason in a sentence, without figures.
    """

    ended: Ended
    setting: float
    slope: float
    says: str
    expected: float = math.nan  # the reading expected at the next setting


def next_setting(tries: Sequence[Try], knob: Knob) -> Step:
    """The next step after these tries, the last of which is how the knob stands now.

    Between tries on both sides of the target it stays there (regula falsi); else it goes by the slope learnt from the
    last two, weighed by the instrument's error against the slope believed at first. Raises ValueError without a try,
    where the band does not hold the target, or where the slope is nought.

    >>> screw = Knob(target=20.0, low=18.0, high=22.0, error=0.5, least=-4.0, most=4.0, slope=8.0, grain=0.25)
    >>> next_setting([Try(0.0, 14.0)], screw).setting  # 6 more at 8 a turn: three quarters of a turn
    0.75
    >>> next_setting([Try(0.0, 14.0), Try(0.75, 16.9)], screw).setting  # 3.9 a turn: 3.1 more
    1.5
    >>> next_setting([Try(0.0, 14.0), Try(0.75, 14.1), Try(2.0, 14.0)], screw).ended
    'not this'
    """
    _checked(tries, knob)
    now = tries[-1]
    slope = slope_learnt(tries, knob)
    if knob.low <= now.reading <= knob.high:
        return Step("reached", now.setting, slope, _SAYS["reached"], now.reading)
    silent = _does_not_follow(tries, knob)
    if silent:
        return Step("not this", now.setting, slope, silent)
    wanted = now.setting + (knob.target - now.reading) / slope
    span = _FURTHEST * (knob.most - knob.least)
    wanted = min(max(wanted, now.setting - span), now.setting + span)
    wanted = _between(tries, knob, wanted)
    place = min(max(_rounded(wanted, knob), knob.least), knob.most)
    if abs(place - now.setting) < max(knob.grain / 2.0, 1e-9 * (knob.most - knob.least)):
        at_end = now.setting in (knob.least, knob.most) and (wanted - now.setting) * _outward(now, knob) > 0.0
        return Step("end" if at_end else "closest", now.setting, slope, _SAYS["end" if at_end else "closest"])
    best = min(tries, key=lambda each: abs(each.reading - knob.target))
    if knob.grain and any(abs(each.setting - place) < knob.grain / 2.0 for each in tries) and _apart(tries, knob):
        if best.setting == now.setting:
            return Step("closest", now.setting, slope, _SAYS["closest"])
        return Step("set", best.setting, slope, _SAYS["back"], best.reading)
    return Step("set", place, slope, _SAYS["set"], now.reading + slope * (place - now.setting))


def slope_learnt(tries: Sequence[Try], knob: Knob) -> float:
    """What one mark brings: the secant that matters, weighed against what was believed at first.

    Of the sign believed at first always: a reading that moves the other way is no slope to go by.

    >>> knob = Knob(20.0, 18.0, 22.0, 0.5, -4.0, 4.0, 8.0)
    >>> slope_learnt([], knob), round(slope_learnt([Try(0.0, 14.0), Try(1.0, 18.0)], knob), 2)
    (8.0, 4.03)
    """
    pair = _pair(tries, knob)
    if pair is None:
        return knob.slope
    one, other = pair
    moved = other.setting - one.setting
    seen = (other.reading - one.reading) / moved
    noise = knob.error * (2.0 / 3.0) ** 0.5 / abs(moved)  # each reading drawn evenly within its error
    doubt = _DOUBT * abs(knob.slope)
    weight = doubt**2 / (doubt**2 + noise**2)
    found = weight * seen + (1.0 - weight) * knob.slope
    least = _HARDLY * abs(knob.slope)
    return math.copysign(max(found * math.copysign(1.0, knob.slope), least), knob.slope)


def _pair(tries: Sequence[Try], knob: Knob) -> tuple[Try, Try] | None:
    """The two tries to take the slope from: the nearest on either side of the target, else the last two apart."""
    under, over = _sides(tries, knob)
    if under and over and under.setting != over.setting:
        return under, over
    now = tries[-1] if tries else None
    for each in reversed(tries):
        if now and each.setting != now.setting:
            return each, now
    return None


def _sides(tries: Sequence[Try], knob: Knob) -> tuple[Try | None, Try | None]:
    under = [each for each in tries if each.reading <= knob.target]
    over = [each for each in tries if each.reading > knob.target]
    nearest = (max(under, key=lambda e: e.reading, default=None), min(over, key=lambda e: e.reading, default=None))
    one, other = nearest
    if one and other and (other.setting - one.setting) * knob.slope <= 0.0:
        return None, None  # not in order: the readings scatter more than they tell
    return nearest


def _between(tries: Sequence[Try], knob: Knob, wanted: float) -> float:
    """A setting kept inside two tries on either side of the target, not too near to either."""
    under, over = _sides(tries, knob)
    if not under or not over:
        return wanted
    low, high = sorted((under.setting, over.setting))
    inside = _INSIDE * (high - low)
    return min(max(wanted, low + inside), high - inside)


def _apart(tries: Sequence[Try], knob: Knob) -> bool:
    """Whether the tries on either side are one grain apart: nothing is left between them."""
    under, over = _sides(tries, knob)
    return bool(under and over and abs(under.setting - over.setting) < 1.5 * knob.grain)


def _does_not_follow(tries: Sequence[Try], knob: Knob) -> str:
    """Why this is not the knob, "" where the reading follows it or it was not moved enough to tell."""
    now, pair_error = tries[-1], 2.0 * knob.error
    for first in tries[:-1]:
        expected = knob.slope * (now.setting - first.setting)
        seen = (now.reading - first.reading) * math.copysign(1.0, expected)
        if seen < -pair_error and abs(expected) > pair_error:
            return _SAYS["wrong way"]
        if seen <= pair_error < _HARDLY * abs(expected):
            return _SAYS["not moved"]
    return ""


def _rounded(setting: float, knob: Knob) -> float:
    return round(setting / knob.grain) * knob.grain if knob.grain else setting


def _outward(now: Try, knob: Knob) -> float:
    return 1.0 if now.setting == knob.most else -1.0


def _checked(tries: Sequence[Try], knob: Knob) -> None:
    if not tries:
        raise ValueError("read it once as it stands before anything is set")
    if not knob.low <= knob.target <= knob.high:
        raise ValueError(f"the target {knob.target} lies outside its band, {knob.low} to {knob.high}")
    if knob.slope == 0.0 or not knob.least < knob.most or knob.error < 0.0 or knob.grain < 0.0:
        raise ValueError("a knob wants a slope, a least under its most, and an error and a grain of nought or more")
    if any(not math.isfinite(each.setting) or not math.isfinite(each.reading) for each in tries):
        raise ValueError("a setting or a reading is no number")


_SAYS = {
    "reached": "It reads as wanted.",
    "set": "Set it so and measure again.",
    "back": "Set it back: no place between reads better.",
    "closest": "It can't be set any finer: this is as near as it comes.",
    "end": "It stands at its end and the reading is still not as wanted: it can't be reached with this.",
    "wrong way": "The reading moved the wrong way: it is not this that is wrong, or it was turned the other way.",
    "not moved": "The reading did not follow: it is not this that governs it.",
}
