"""What the judge prints: shares, minutes, wrong repairs, scores of belief, and which causes fail."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable, Iterator, Mapping, Sequence
from itertools import pairwise

from tests.bench.judging.jobs import Job
from tests.bench.judging.played import MOST_STEPS, Outcome
from tests.bench.judging.ways import WAYS

__all__ = ["Played", "report"]

Played = tuple[tuple[Job, str, str], Outcome]
_BINS = (0.0, 0.2, 0.4, 0.6, 0.8, 0.9, 1.01)


def report(outcomes: Sequence[Played], perfect: Mapping[str, float]) -> Iterator[str]:
    """The report, line by line."""
    whole = [o for (_, _, left), o in outcomes if not left]
    tool = [o for o in whole if o.way == "advice"]
    single = [o for o in tool if len(o.job.causes) == 1]
    two = [o for o in tool if len(o.job.causes) == 2]
    yield f"single faults: {len(single)} jobs, {len({o.job.causes for o in single})} faults"
    yield "  complaint: jobs, true cause first at the stop, among three, solved, minutes, wrong repairs a job"
    for complaint, jobs in sorted(_by_complaint(single).items()):
        yield f"  {complaint:20} {_line(jobs)}"
    yield f"  {'ALL':20} {_line(single)}"
    yield f"  Brier {_mean(o.brier for o in single):.3f}, log-loss {_mean(o.log_loss for o in single):.3f} nats a job"
    yield from _calibration(single)
    if two:
        yield f"pairs: {len(two)} jobs; both mended or among the first three at the stop: {_share(o.both for o in two)}"
        yield f"  solved {_share(o.solved for o in two)}, wrong repairs {_mean(len(o.wrong) for o in two):.2f} a job"
    yield from _ways(whole, perfect)
    yield from _left_out([o for (_, _, left), o in outcomes if left])
    for o in whole:
        if o.crash:
            yield f"CRASHED: {', '.join(o.job.causes)} ({o.way}): {o.crash}"
    yield "not first at the stop, or wrong repairs:"
    for o in single:
        if not o.top1 or o.wrong:
            yield f"  {o.job.causes[0]} ({o.job.said[0]}): led {o.first}, wrong {', '.join(o.wrong) or 'none'}"


def _by_complaint(outcomes: Iterable[Outcome]) -> dict[str, list[Outcome]]:
    found: dict[str, list[Outcome]] = defaultdict(list)
    for outcome in outcomes:
        found[outcome.job.said[0]].append(outcome)
    return found


def _line(jobs: Sequence[Outcome]) -> str:
    return (
        f"{len(jobs):4} {_share(o.top1 for o in jobs):>5} "
        f"{_share(bool(set(o.job.causes) & set(o.three)) for o in jobs):>5} {_share(o.solved for o in jobs):>5} "
        f"{_mean(o.minutes for o in jobs):6.0f} {_mean(len(o.wrong) for o in jobs):5.2f}"
    )


def _calibration(jobs: Sequence[Outcome]) -> Iterator[str]:
    yield "  the row that led when checking first ended: believed, jobs, true"
    for low, high in pairwise(_BINS):
        inside = [o for o in jobs if low <= o.first_stop_probability < high]
        if inside:
            believed = _mean(o.first_stop_probability for o in inside)
            yield f"    {believed:5.2f} {len(inside):5} {_share(o.first_stop in o.job.causes for o in inside)}"


def _ways(outcomes: Sequence[Outcome], perfect: Mapping[str, float]) -> Iterator[str]:
    by_way = {way: {o.job.key: o for o in outcomes if o.way == way and len(o.job.causes) == 1} for way in WAYS}
    shared = set.intersection(*(set(each) for each in by_way.values())) if all(by_way.values()) else set()
    if not shared:
        return
    yield f"the same {len(shared)} jobs in other ways: minutes to a proved repair, with the call for help where one was"
    yield f"  made, or where {MOST_STEPS} steps led to no end"
    base = _mean(by_way["advice"][j].minutes for j in shared)
    for way, jobs in by_way.items():
        minutes = _mean(jobs[j].minutes for j in shared)
        wrong = _mean(len(jobs[j].wrong) for j in shared)
        yield f"  {way:16} {minutes:6.0f}  advice takes {base / minutes:.2f} of it; wrong repairs {wrong:.2f}"
    known = [j for j in shared if j in perfect]
    if known:
        yield f"  {'all known':16} {_mean(perfect[j] for j in known):6.0f}  the repair and its proof alone"


def _left_out(outcomes: Sequence[Outcome]) -> Iterator[str]:
    if outcomes:
        fits = _share(o.helped or o.first.startswith("unlisted") for o in outcomes)
        at_once = _share(not o.wrong and (o.helped or o.first_stop.startswith("unlisted")) for o in outcomes)
        wrong = _mean(len(o.wrong) for o in outcomes)
        yield f"cause taken from the knowledge, {len(outcomes)} jobs: {wrong:.2f} wrong repairs a job;"
        yield f"  help, or 'something not listed' first, at the end {fits}, and with nothing repaired before {at_once}"


def _mean(values: Iterable[float]) -> float:
    numbers = list(values)
    return sum(numbers) / len(numbers) if numbers else 0.0


def _share(values: Iterable[bool]) -> str:
    numbers = list(values)
    return f"{100 * sum(numbers) / len(numbers):.0f} %" if numbers else "-"
