"""A repair is proved by a check that has a healthy outcome and looks at what was repaired."""

from __future__ import annotations

from collections.abc import Iterator

from diagnose.model.book import Book
from diagnose.model.problems import Problem
from diagnose.model.truth import likelihood_row, row_of, so_nodes

__all__ = ["check"]


def check(book: Book) -> Iterator[Problem]:
    """Causes without proof, proofs that can't show anything, and complaints likewise."""
    for name, complaint in book.complaints.items():
        if not complaint.prove_by:
            yield Problem(book.places[name], f"{name}: nothing shows that it is gone", "name a check in prove_by")
    for name, cause in book.causes.items():
        if not cause.prove_by:
            yield Problem(book.places[name], f"{name}: nothing proves the repair", "name a check in prove_by")
        elif not any(_tells(book, name, each) for each in cause.prove_by):
            yield Problem(
                book.places[name],
                f"{name}: no check in prove_by would read otherwise while the cause is there",
                "name a check that looks at the cause, or at an event above it",
            )


def _tells(book: Book, cause: str, name: str) -> bool:
    each = book.checks[name]
    row = row_of(each, so_nodes(book, [cause]))
    if row == "none":
        return False
    good = [o for o, outcome in each.outcomes.items() if outcome.good]
    sick, well = likelihood_row(book, each, row), likelihood_row(book, each, "none")
    return sum(sick[o] for o in good) < sum(well[o] for o in good) - 0.2
