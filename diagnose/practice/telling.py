"""Was that telling: what the tool makes of a reading, and which causes it moved."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from math import log2

from diagnose.inference import solve
from diagnose.job.assess import Assessment
from diagnose.practice.course import Course
from diagnose.view.layout import Line, wrap
from diagnose.view.question import paragraphs

__all__ = ["why_lines"]

_MOVED = 0.3  # bits of log odds under which a cause is not worth naming: judgement
_SEEN = 0.02  # belief, before or after, under which a cause is not worth naming: judgement
_NAMED = 3

Moved = tuple[float, str, float, float]  # bits, title, belief before and after


def why_lines(course: Course, check: str, width: int) -> list[Line]:
    """The finding with its working, what was to be expected, and what became more and less likely by it."""
    judged = course.practice.judged()
    lines = wrap(course.book.title(check), width, role="heading")
    found = [f for f in judged.findings if f.check == check]
    expected = judged.expected(check)
    if expected is not None:
        lines += wrap(" ".join(expected.lines), width, "  Expected: ", "    ")
    if found:
        outcome = course.book.checks[check].outcomes[found[-1].outcome]
        good = " (as it should be)" if outcome.good else ""
        lines += wrap(outcome.title + good, width, "  Judged: ", "    ", "good")
        lines += paragraphs(found[-1].working, width)
        lines += _moved_lines(_moved(judged, check), width)
    elif check in judged.state.newest():
        lines += wrap("Nothing follows from it alone; it was used with another reading.", width, "  ")
    else:
        lines += wrap("It was not read yet.", width, "  ")
    return lines


def _moved(judged: Assessment, check: str) -> list[Moved]:
    """What this check's last finding moved, against the same without it."""
    last = [f for f in judged.situation.findings if f.check == check][-1:]
    others = tuple(f for f in judged.situation.findings if f not in last)
    before = solve(judged.tree, replace(judged.situation, findings=others)).posterior
    moved = []
    for row in judged.rows:
        was, now = before.get(row.id, 0.0), row.probability
        if max(was, now) >= _SEEN:
            moved.append((_log_odds(now) - _log_odds(was), row.title, was, now))
    return [each for each in moved if abs(each[0]) >= _MOVED]


def _log_odds(p: float) -> float:
    p = min(max(p, 1e-9), 1.0 - 1e-9)
    return log2(p / (1.0 - p))


def _moved_lines(moved: Sequence[Moved], width: int) -> list[Line]:
    if not moved:
        return wrap("It told next to nothing: all causes stand as before.", width, "  ")
    lines: list[Line] = []
    for label, some in (
        ("More likely by it: ", sorted((m for m in moved if m[0] > 0), key=lambda m: -m[3])),
        ("Less likely: ", sorted((m for m in moved if m[0] < 0), key=lambda m: m[3] - m[2])),
    ):
        named = [f"{title} ({100 * was:.0f} to {100 * now:.0f} %)" for _, title, was, now in some[:_NAMED]]
        if named:
            more = f"; and {len(some) - _NAMED} more" if len(some) > _NAMED else ""
            lines += wrap("; ".join(named) + more + ".", width, f"  {label}", "    ")
    return lines
