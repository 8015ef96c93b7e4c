"""Evidence as sentences: a reading, an answer, a pair that does not fit together, a thing to do next."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from diagnose.inference import Conflict, Item, Option, Situation
from diagnose.job.state import JobState
from diagnose.model import Book, Finding
from diagnose.model.answers import show_values

__all__ = ["Choice", "Reason", "conflict_sentence", "finding_sentence", "item_sentence", "told"]


@dataclass(frozen=True)
class Choice:
    """Something that can be done next, by title, with the expected minutes from now to a verified repair."""

    what: Literal["check", "repair", "help"]
    id: str
    title: str
    minutes: float
    saves: float
    option: Option


@dataclass(frozen=True)
class Reason:
    """What one piece of evidence does to the odds of a cause: bits above zero speak for it.

    `sole`: without this piece the cause would be certain or impossible, so that no number of bits tells it.
    """

    says: str
    bits: float
    sole: bool = False


def told(book: Book, option: Option) -> Choice:
    """An option of the advice with its title."""
    title = "Call for help" if option.kind == "help" else book.title(option.id)
    return Choice(option.kind, option.id, title, option.expected, option.saves, option)


def item_sentence(book: Book, state: JobState, situation: Situation, item: Item) -> str:
    """One piece of evidence in words."""
    if item.kind == "finding":
        return finding_sentence(book, state, situation.findings[item.nth])
    if item.kind == "context":
        return f"{book.context[item.what].ask} {state.context.get(item.what, '')}".strip()
    if item.kind == "complaint":
        present = situation.complaints[item.nth][2]
        return f"Complaint{'' if present else ' gone'}: {book.title(item.what)}"
    if item.kind == "seen":
        so = situation.seen[item.nth][2]
        return f"Seen at the repair: {book.title(item.what)}{'' if so else ' - no, it was sound'}"
    return f"Ruled out: {book.title(item.what)}"


def finding_sentence(book: Book, state: JobState, finding: Finding) -> str:
    """`Booster line currents (48 48 83 A): pattern of one element out`."""
    check = book.checks[finding.check]
    values = [show_values(r.values) for r in state.readings if r.id in finding.counts and r.values]
    read = f" ({'; '.join(values)})" if values else ""
    before = ", before the repair" if finding.stage < state.stage else ""
    return f"{check.title}{read}{before}: {check.outcomes[finding.outcome].title}"


def conflict_sentence(book: Book, state: JobState, situation: Situation, conflict: Conflict) -> str:
    """Both readings, and that one of them should be taken again."""
    first, second = (finding_sentence(book, state, situation.findings[n]) for n in (conflict.first, conflict.second))
    return f"{first} - against - {second}. Take one of them again, with another instrument if there is one."
