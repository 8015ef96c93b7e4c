"""How a trainee stands with each complaint, and which to practise next: where they are weakest.

Spaced repetition with boxes, as cards are learned (the method and the law of forgetting from memory; the numbers are
judgement). A complaint stands in a box from 0 to 6:

    found, safe, at most one wrong repair and in time    one box up
    found, but slowly or with more wrong repairs         stays
    not found, or somebody would have been hurt          back to box 0

In time is at most SLOW times the longer of the minutes expected and those of the best path. What was learned fades with
a half-life of 2^box days, so that what is known well is asked for seldom:

    kept     = 2 ^ (-days since the last exercise / 2^box)
    skill    = (UNTRIED + sum of grades) / (1 + their number)      of the last LAST exercises
    strength = skill * kept

A grade is 1, 1/2 or 0 for the three cases above. A complaint not tried yet counts as UNTRIED with nothing faded. The
weakest comes next; the level is one above its box, 5 at most.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from datetime import UTC, datetime

from diagnose.practice.exercise import Result

__all__ = ["Standing", "grade", "kept_of", "standing", "standings", "weakest"]

HIGHEST = 6
UNTRIED = 0.3
SLOW = 1.5
LAST = 5
_MOST_LEVEL = 5
_DAY = 86400.0


@dataclass(frozen=True)
class Standing:
    """One trainee and one complaint."""

    complaint: str
    tried: int = 0
    found: int = 0  # and safe
    box: int = 0
    strength: float = UNTRIED
    days: float | None = None  # since the last exercise; None: never

    @property
    def level(self) -> int:
        """The level to practise it on."""
        return min(self.box + 1, _MOST_LEVEL)

    @property
    def due(self) -> float:
        """Days until it is as weak as one not tried; 0 or less: now."""
        if self.days is None:
            return 0.0
        from math import log2

        fresh = self.strength / kept_of(self.days, self.box)
        return (log2(fresh / UNTRIED) * 2.0**self.box if fresh > 0.0 else 0.0) - self.days


def grade(result: Result) -> float:
    """1 found safely and in time, 1/2 found safely, 0 else.

    >>> from diagnose.practice.exercise import Exercise
    >>> one = Exercise(seed=1, level=1, machine="m", faults=[("a.b", 1.0)], complaint="c")
    >>> def of(**more): return grade(Result(exercise=one, at="", expected=30, best=20, **more))
    >>> of(minutes=44, solved=True), of(minutes=46, solved=True), of(minutes=9, solved=True, unsafe=["x"])
    (1.0, 0.5, 0.0)
    """
    if not result.solved or result.unsafe:
        return 0.0
    in_time = result.minutes <= SLOW * max(result.expected, result.best)
    return 1.0 if in_time and result.wrong_repairs <= 1 else 0.5


def kept_of(days: float, box: int) -> float:
    """The share still known after so many days, never quite nothing.

    >>> kept_of(0, 0), kept_of(2, 1), kept_of(8, 2)
    (1.0, 0.5, 0.25)
    """
    return float(max(2.0 ** (-max(days, 0.0) / 2.0**box), 1e-9))


def standing(complaint: str, results: Sequence[Result], now: datetime) -> Standing:
    """Where a complaint stands after these results of it, the oldest first."""
    if not results:
        return Standing(complaint)
    grades = [grade(each) for each in results]
    box = 0
    for each in grades:
        box = min(box + 1, HIGHEST) if each == 1.0 else box if each else 0
    recent = grades[-LAST:]
    skill = (UNTRIED + sum(recent)) / (1 + len(recent))
    days = max((now - _moment(results[-1].at, now)).total_seconds() / _DAY, 0.0)
    return Standing(complaint, len(results), sum(g > 0 for g in grades), box, skill * kept_of(days, box), days)


def standings(complaints: Iterable[str], results: Iterable[Result], now: datetime) -> list[Standing]:
    """Where each complaint stands, in the order given."""
    of: dict[str, list[Result]] = {}
    for each in sorted(results, key=lambda r: _moment(r.at, now)):
        of.setdefault(each.exercise.complaint, []).append(each)
    return [standing(complaint, of.get(complaint, ()), now) for complaint in complaints]


def weakest(standings: Sequence[Standing], order: Mapping[str, int]) -> list[Standing]:
    """The weakest first; of equals the one that stands first in `order`."""
    return sorted(standings, key=lambda s: (round(s.strength, 9), order.get(s.complaint, len(order)), s.complaint))


def _moment(text: str, else_: datetime) -> datetime:
    """A time as written in a result; one that can't be read counts as just now."""
    try:
        moment = datetime.fromisoformat(text)
    except ValueError:
        return else_
    return moment if moment.tzinfo else moment.replace(tzinfo=UTC)
