"""Both ends of a machine on one fan: a small model of their air, and what a few readings tell of it.

A share of the fan's pull is lost in fan and duct, with the square of all the air; what is left drives air through both
ends, each by the root of it. So one end's damper closed raises the other end. What a blade lets through is learnt, and
what is believed of it beforehand is judgement.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from typing import NamedTuple

from diagnose.handover.squares import Fit, least_squares, slopes

__all__ = ["Flowmeter", "Learnt", "Outlook", "Pair", "Trial", "learn"]

# Unknowns are logarithms: drag of fan and duct; then of each end its passage wide open, the share of its loss that the
# blade makes even then, and how fast that grows as it shuts. Each with the belief and its standard error, judgement.
_DRAG = (math.log(0.35), 0.7)  # of the pull, at the wanted air
_WIDE = (math.log(3.0), 0.8)  # over the end's share of the air, at the whole pull
_BLADE = (math.log(0.25), 1.0)
_BEND = (math.log(4.5), 0.4)
_ALIKE = 0.2  # by which blades of one machine differ from each other; judgement
_LEAK = 0.03  # of an end wide open, past the shut blade; judgement
_SOFT = 0.3  # of a handle's travel, by which a nearly shut end is gentler than a power of its opening; judgement
_ROUGH = 0.12  # by which the model may be off in the logarithm of a flow e times the wanted one; judgement
_ELSEWHERE = 0.02  # by which it and the hand may be off from one place to the other: judgement
_FAR = 0.15  # by which it may be off over the whole travel of a handle from where it was read; judgement


class Pair(NamedTuple):
    """A figure at each end."""

    entrance: float
    exit: float


@dataclass(frozen=True)
class Trial:
    """Handles as shares open (0 to 1), and the air read at each end so, [m3/s]."""

    open: Pair
    flow: Pair


@dataclass(frozen=True)
class Flowmeter:
    """Largest error of a reading: [m3/s], and as a share of it."""

    absolute: float
    share: float

    def error(self, flow: float) -> float:
        """Largest error at this flow, [m3/s]."""
        return self.absolute + self.share * abs(flow)


@dataclass(frozen=True)
class Outlook:
    """Air over the wanted total, and the entrance's over the exit's against the wanted one, both as logarithms.

    Each with its standard error; `flow` is what is expected at each end, [m3/s].
    """

    total: float
    total_error: float
    ratio: float
    ratio_error: float
    flow: Pair

    def within(self, total: float, ratio: float) -> float:
        """How likely both lie within these bounds to either side of what is wanted."""
        return _between(self.total, self.total_error, total) * _between(self.ratio, self.ratio_error, ratio)


@dataclass(frozen=True)
class Learnt:
    """What the readings tell of both ends."""

    wanted: Pair
    trials: tuple[Trial, ...]
    fit: Fit

    def flow(self, opened: Pair) -> Pair:
        """Air expected with the handles so, [m3/s]."""
        return _flow(self.fit.values, opened, self.wanted)

    def outlook(self, opened: Pair) -> Outlook:
        """What to expect with the handles so, and how surely."""

        def both(values: Sequence[float]) -> list[float]:
            one, other = _flow(values, opened, self.wanted)
            return [math.log((one + other) / sum(self.wanted)), math.log(one / other)]

        at = both(self.fit.values)
        rows = slopes(both, self.fit.values, at)
        errors = [_spread(row, self.fit.covariance) for row in rows]
        near = [min(abs(t.open[end] - opened[end]) for t in self.trials) * _FAR for end in (0, 1)]
        share = self.wanted.entrance / sum(self.wanted)
        beyond = math.hypot(share * near[0], (1.0 - share) * near[1])
        wanted = math.log(self.wanted.entrance / self.wanted.exit)
        return Outlook(
            at[0],
            math.hypot(errors[0], beyond),
            at[1] - wanted,
            math.hypot(errors[1], *near),
            self.flow(opened),
        )


def learn(trials: Sequence[Trial], wanted: Pair, meter: Flowmeter) -> Learnt:
    """What these readings tell, weighed against what is believed of such ends.

    A reading counts by the error of its instrument, and the less the further it lies from the wanted flow, where the
    model need not hold.

    >>> at = learn([Trial(Pair(0.5, 0.5), Pair(0.08, 0.2))], Pair(0.1, 0.2), Flowmeter(0.001, 0.03))
    >>> [round(flow, 2) for flow in at.flow(Pair(0.5, 0.5))]
    [0.08, 0.2]
    >>> at.flow(Pair(0.5, 0.3)).entrance > 0.08  # the exit closed gives the entrance more
    True
    """
    start, errors = _beliefs(wanted)

    def residuals(values: Sequence[float]) -> list[float]:
        found = [(v - s) / e for v, s, e in zip(values, start, errors, strict=True)]
        found += [(values[2] - values[5]) / _ALIKE, (values[3] - values[6]) / _ALIKE]
        for trial in trials:
            for read, model, want in zip(trial.flow, _flow(values, trial.open, wanted), wanted, strict=True):
                seen = max(read, meter.absolute, 1e-3 * want)
                rough = math.hypot(_ROUGH * math.log(seen / want), _ELSEWHERE * (trial.open != trials[-1].open))
                found.append(math.log(model / seen) / math.hypot(meter.error(seen) / seen / 3.0**0.5, rough))
        return found

    return Learnt(wanted, tuple(trials), least_squares(residuals, start))


def _beliefs(wanted: Pair) -> tuple[list[float], list[float]]:
    start, errors = [_DRAG[0]], [_DRAG[1]]
    for end in wanted:
        start += [_WIDE[0] + math.log(end / sum(wanted)), _BLADE[0], _BEND[0]]
        errors += [_WIDE[1], _BLADE[1], _BEND[1]]
    return start, errors


def _flow(values: Sequence[float], opened: Pair, wanted: Pair) -> Pair:
    one = _passage(values[1], values[2], values[3], opened.entrance)
    other = _passage(values[4], values[5], values[6], opened.exit)
    pull = sum(wanted) / (1.0 + math.exp(values[0]) * (one + other) ** 2) ** 0.5
    return Pair(one * pull, other * pull)


def _passage(wide: float, blade: float, bend: float, opened: float) -> float:
    shut = ((1.0 + _SOFT) / (opened + _SOFT)) ** math.exp(bend) - 1.0
    return math.exp(wide) * math.hypot((1.0 + math.exp(blade) * shut) ** -0.5, _LEAK)


def _spread(row: Sequence[float], covariance: Sequence[Sequence[float]]) -> float:
    each = (a * b * c for a, line in zip(row, covariance, strict=True) for b, c in zip(row, line, strict=True))
    return math.sqrt(max(0.0, sum(each)))


def _between(middle: float, error: float, bound: float) -> float:
    width = max(error, 1e-9) * 2.0**0.5
    return 0.5 * (math.erf((bound - middle) / width) + math.erf((bound + middle) / width))
