"""Both exhaust dampers to a wanted total and share of air in few measurements: where to put the handles next."""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from typing import Literal

from diagnose.handover.ends import Flowmeter, Learnt, Outlook, Pair, Trial, learn
from diagnose.units import Quantity, show_number

__all__ = ["ENDS", "DamperAim", "DamperStep", "Kind", "next_dampers"]

Kind = Literal["set", "again", "reached", "closest", "short", "leaks", "loose"]

ENDS = ("entrance", "exit")
SURE = 0.93  # likely enough to call it reached; judgement
_HOPE = 0.5  # under this a position is as near as handles come, not one that wants another reading; judgement
_READ = 2  # readings in one place, after which another tells little: judgement
_BETTER = 0.03  # by which a position between the marks must be likelier, to be worth the trouble; judgement
_LIKE = 0.03  # positions that are as good as each other: the one with less air is taken; judgement
_AMONG = 8  # positions looked at closely
_NARROW = math.log(2.5)  # so much less than the other end, for its share, passes one that is narrow itself: judgement
_MOVED = 0.2  # of a handle's travel, after which the air at its end must have changed; judgement
_FITS_BETTER = 20.0  # by which a handle without effect must explain the readings better, in squares; judgement


@dataclass(frozen=True)
class DamperAim:
    """What is wanted at each end, [m3/s], how nearly, and with what it is read.

    The air in all must lie within `band` of what is wanted, and so must the smaller end's share of it. Handles are set
    to multiples of `step`; where none of those does, to multiples of `fine`, between the marks. After `most`
    measurements what is more likely right than not is left so. `unit` is for the text.
    """

    wanted: Pair
    meter: Flowmeter
    band: float = 0.05
    step: float = 0.05
    fine: float = 0.01
    most: int = 5
    unit: str = "cfm"

    @property
    def bounds(self) -> tuple[float, float]:
        """How far the logarithms of total and ratio may lie off."""
        return math.log1p(self.band), self.band * sum(self.wanted) / max(self.wanted)


@dataclass(frozen=True)
class DamperStep:
    """What to do now: `open` are the handles' next or last positions, `flow` what is expected there, [m3/s].

    `sure` is how likely both total and share lie within the band there. `where` is the end that can't be set, or
    "fan"; `says` the sentence for the technician and `lines` what it rests on.
    """

    kind: Kind
    open: Pair
    flow: Pair
    sure: float
    says: str
    lines: tuple[str, ...]
    where: str = ""


def next_dampers(trials: Sequence[Trial], aim: DamperAim) -> DamperStep:
    """The next step after these trials, the last of which shows how the handles stand now.

    Raises ValueError without a trial, for a handle outside 0 to 1, and for a wanted flow that is not above nought.

    >>> aim = DamperAim(Pair(0.1, 0.2), Flowmeter(0.001, 0.03))
    >>> next_dampers([Trial(Pair(0.6, 0.6), Pair(0.1, 0.2))], aim).kind
    'reached'
    >>> step = next_dampers([Trial(Pair(1.0, 1.0), Pair(0.06, 0.13))], aim)
    >>> step.kind, step.where
    ('short', 'fan')
    """
    _checked(trials, aim)
    at = learn(trials, aim.wanted, aim.meter)
    here = trials[-1].open
    now = at.outlook(here)
    sure = now.within(*aim.bounds)
    told = (*_read(trials[-1], aim), _estimate(now, sure, aim))
    if sure >= SURE:
        return DamperStep("reached", here, now.flow, sure, _REACHED.format(band=_percent(aim.band)), told)
    if len(trials) >= aim.most and sure >= _HOPE:
        return DamperStep("reached", here, now.flow, sure, _ENOUGH.format(band=_percent(aim.band)), told)
    loose = _loose(at, aim)
    if loose:
        return DamperStep("loose", here, now.flow, sure, _LOOSE.format(end=loose), told, loose)
    best, then = _best(at, aim)
    stopped = _stopped(at, aim, here, best)
    if stopped:
        kind, where, says = stopped
        return DamperStep(kind, here, now.flow, sure, says, told, where)
    likely = then.within(*aim.bounds)
    if max(abs(a - b) for a, b in zip(best, here, strict=True)) < aim.fine / 2:
        if sure >= _HOPE and sum(trial.open == here for trial in trials) < _READ:
            return DamperStep("again", here, now.flow, sure, _AGAIN, told)
        return DamperStep("closest", here, now.flow, sure, _CLOSEST.format(off=_off(now, aim)), told)
    expected = f"Expected there: {_flows(then.flow, aim)}; {_percent(likely)} likely within {_percent(aim.band)}."
    return DamperStep("set", best, then.flow, likely, _moves(here, best), (*told, expected))


def _best(at: Learnt, aim: DamperAim) -> tuple[Pair, Outlook]:
    """Where the handles are best put: at marks, or between them where that is much likelier to do."""
    marked = _likeliest(at, aim, _grid(Pair(0.5, 0.5), aim.step, 0.5))
    if aim.fine >= aim.step or marked[1].within(*aim.bounds) >= SURE:
        return marked
    between = _likeliest(at, aim, _grid(marked[0], aim.fine, aim.step))
    better = between[1].within(*aim.bounds) - marked[1].within(*aim.bounds)
    return between if better > _BETTER else marked


def _likeliest(at: Learnt, aim: DamperAim, places: Iterator[Pair]) -> tuple[Pair, Outlook]:
    near = sorted(places, key=lambda place: _distance(at.flow(place), aim))[:_AMONG]
    known = {place: at.outlook(place) for place in near}
    likely = {place: outlook.within(*aim.bounds) for place, outlook in known.items()}
    best = max(likely.values())
    if best < _LIKE:
        return near[0], known[near[0]]
    alike = [place for place in near if likely[place] >= best - _LIKE]
    chosen = min(alike, key=lambda place: sum(known[place].flow))
    return chosen, known[chosen]


def _grid(middle: Pair, step: float, reach: float) -> Iterator[Pair]:
    def along(of: float) -> list[float]:
        low, high = max(step, of - reach), min(1.0, of + reach)
        return [nth * step for nth in range(math.ceil(low / step - 1e-6), math.floor(high / step + 1e-6) + 1)]

    return (Pair(round(a, 4), round(b, 4)) for a in along(middle.entrance) for b in along(middle.exit))


def _distance(flow: Pair, aim: DamperAim) -> float:
    total, ratio = aim.bounds
    off = math.log(sum(flow) / sum(aim.wanted)) / total
    parted = math.log(flow.entrance / flow.exit * aim.wanted.exit / aim.wanted.entrance) / ratio
    return off * off + parted * parted


def _stopped(at: Learnt, aim: DamperAim, here: Pair, best: Pair) -> tuple[Kind, str, str] | None:
    """The handle that stands at its stop though its end wants more, or less."""
    wide, then = at.outlook(Pair(1.0, 1.0)), at.outlook(best)
    for nth, end in enumerate(ENDS):
        open_now = min(here[nth], best[nth]) > 1.0 - aim.step / 2
        if open_now and _short(then, aim, nth) > SURE:
            lacking = max(math.log1p(-aim.band) - wide.total, math.log(aim.wanted[1 - nth] / wide.flow[1 - nth]))
            if lacking > 0.0 and wide.ratio * (1.0 if nth else -1.0) < _NARROW:
                return "short", "fan", _FAN
            return "short", end, _END.format(end=end, other=ENDS[1 - nth])
        shut_now = max(here[nth], best[nth]) < 1.5 * aim.step
        over = math.log(then.flow[nth] / aim.wanted[nth]) - math.log1p(aim.band)
        if shut_now and _above(over, math.hypot(then.total_error, then.ratio_error)) > SURE:
            return "leaks", end, _LEAKS.format(end=end)
    return None


def _short(outlook: Outlook, aim: DamperAim, nth: int) -> float:
    """How likely this end gets too little."""
    off = math.log(outlook.flow[nth] / aim.wanted[nth])
    return _above(math.log1p(-aim.band) - off, math.hypot(outlook.total_error, outlook.ratio_error))


def _loose(at: Learnt, aim: DamperAim) -> str:
    """The end whose air does not follow its handle, "" where both do: the readings fit better without the handle."""
    if at.fit.squares <= _FITS_BETTER:
        return ""
    for nth, end in enumerate(ENDS):
        places = [trial.open[nth] for trial in at.trials]
        if max(places) - min(places) < _MOVED:
            continue
        held = [replace(t, open=t.open._replace(**{end: places[0]})) for t in at.trials]
        if at.fit.squares - learn(held, aim.wanted, aim.meter).fit.squares > _FITS_BETTER:
            return end
    return ""


def _above(by: float, error: float) -> float:
    """How likely something is truly above nought that is read as `by` with this standard error."""
    return 0.5 * (1.0 + math.erf(by / max(error, 1e-9) / 2.0**0.5))


def _moves(here: Pair, there: Pair) -> str:
    said = []
    for end, a, b in sorted(zip(ENDS, here, there, strict=True), key=lambda each: each[2] - each[1]):
        if abs(a - b) >= 0.005:
            said.append(f"{'close' if b < a else 'open'} the {end} damper from {_percent(a)} to {_percent(b)} open")
    text = " and ".join(said)
    return f"{text[0].upper()}{text[1:]}, then measure both ends again."


def _read(trial: Trial, aim: DamperAim) -> tuple[str, ...]:
    share = trial.flow.entrance / max(sum(trial.flow), 1e-9)
    return (
        f"Read: {_flows(trial.flow, aim)}; wanted: {_flows(aim.wanted, aim)}.",
        f"The entrance has {_percent(share)} of all; {_percent(_wanted_share(aim))} is wanted.",
    )


def _estimate(now: Outlook, sure: float, aim: DamperAim) -> str:
    return f"From all readings: {_flows(now.flow, aim)}; {_percent(sure)} likely within {_percent(aim.band)}."


def _flows(flow: Pair, aim: DamperAim) -> str:
    told = [show_number(Quantity.of_si(each, "air flow", aim.unit).value, 3) for each in (*flow, sum(flow))]
    return f"entrance {told[0]}, exit {told[1]}, together {told[2]} {aim.unit}"


def _off(now: Outlook, aim: DamperAim) -> str:
    total, share = math.expm1(now.total), now.flow.entrance / sum(now.flow)
    much = "as much air as wanted" if abs(total) < 0.005 else f"{_percent(abs(total))} too {_MUCH[total > 0]} air"
    return f"{much} in all and {_percent(share)} of it at the entrance where {_percent(_wanted_share(aim))} is wanted"


def _wanted_share(aim: DamperAim) -> float:
    return aim.wanted.entrance / sum(aim.wanted)


def _percent(share: float) -> str:
    return f"{share * 100:.0f} %"


def _checked(trials: Sequence[Trial], aim: DamperAim) -> None:
    if not trials:
        raise ValueError("measure both ends with the handles as they stand first")
    if any(not 0.0 <= each <= 1.0 for trial in trials for each in trial.open):
        raise ValueError("a handle stands between 0 (shut) and 1 (wide open)")
    if min(aim.wanted) <= 0.0:
        raise ValueError("the air wanted at each end must be above nought")


_REACHED = "Both ends have their air within {band}: lock both handles and mark where they stand."
_ENOUGH = "As far as so many readings tell, both ends have their air within {band}: lock both handles and mark them."
_AGAIN = "Leave both dampers as they are and measure both ends once more: the readings so far do not settle it."
_CLOSEST = "The handles come no nearer than this, {off}: lock both and mark where they stand."
_MUCH = ("little", "much")
_FAN = "Even with both dampers wide open there is too little air: look at fan and duct, not at the dampers."
_END = "The {end} damper is wide open and its end still lacks air, the {other} does not: look at its blade and slot."
_LEAKS = "The {end} damper is shut and its end still takes too much: look whether its blade shuts."
_LOOSE = "The air at the {end} does not follow its handle: look whether the blade is loose on its spindle."
