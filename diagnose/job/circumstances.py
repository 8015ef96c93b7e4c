"""How things stand at the machine: what is open, in which state it is, who works, what can't be done now."""

from __future__ import annotations

from diagnose.inference import Circumstances
from diagnose.job.state import JobState
from diagnose.model import Book, Cause, Check
from diagnose.model.telephone import asked_aloud

__all__ = ["circumstances"]


def circumstances(book: Book, state: JobState) -> Circumstances:
    """Covers opened for a check stay open until a repair is finished; the machine stays as the last work left it."""
    work: list[Check | Cause] = []
    if state.repairs and state.repairs[-1].cause in book.causes:
        work.append(book.causes[state.repairs[-1].cause])
    work += [book.checks[r.check] for r in state.readings if r.stage == state.stage and r.check in book.checks]
    opened = frozenset(access for each in work for access in each.open) - {"none"}
    return Circumstances(
        open=opened,
        state=work[-1].state if work else "running",
        who=state.allowed,
        may_open=frozenset(book.access) - state.keep_closed if state.keep_closed else None,
        unavailable=frozenset(state.skipped) | _not_by_telephone(book, state),
    )


def _not_by_telephone(book: Book, state: JobState) -> frozenset[str]:
    """Checks and repairs that a kitchen worker is not asked for: those not said aloud, as things are."""
    if not state.by_kitchen or state.machine is None:
        return frozenset()
    silent = book.checks.keys() - asked_aloud(book, state.machine, state.present)
    return frozenset(silent | {name for name, cause in book.causes.items() if not cause.aloud})
