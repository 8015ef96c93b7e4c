"""Every cause can be told from each of its siblings, or it is said why not."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import combinations

from diagnose.model.book import Book
from diagnose.model.entities import Cause, Check
from diagnose.model.machine import TRAITS
from diagnose.model.problems import Problem
from diagnose.model.truth import likelihood_row, row_of, so_nodes

__all__ = ["APART", "check", "inseparable_pairs"]

APART = 0.3  # judgement: the two must differ in at least three of ten times the check is made


def check(book: Book) -> Iterator[Problem]:
    """Siblings no check separates."""
    for parent, one, other in inseparable_pairs(book):
        first, second = book.causes[one], book.causes[other]
        if other not in first.inseparable_from and one not in second.inseparable_from:
            yield Problem(
                book.places[one],
                f"{one}: no check tells it from {other} under {parent}",
                "add such a check, or say in inseparable_from why none can",
            )


def inseparable_pairs(book: Book) -> Iterator[tuple[str, str, str]]:
    """(parent, cause, cause) for each two causes of one parent that no check tells apart."""
    so = {name: so_nodes(book, [name]) for name in book.causes}
    seen: set[tuple[str, str]] = set()
    for parent in (*book.events, *book.complaints):
        causes = [child for child in book.children(parent) if child in book.causes]
        for one, other in combinations(causes, 2):
            if (one, other) in seen or not _together(book.causes[one], book.causes[other]):
                continue
            seen.add((one, other))
            if not any(_separates(book, each, so[one], so[other]) for each in book.checks.values()):
                yield parent, one, other


def _together(one: Cause, other: Cause) -> bool:
    """Whether a machine can have both."""
    return all(
        set(one.fits.get(trait, values)) & set(other.fits.get(trait, values)) for trait, values in TRAITS.items()
    )


def _separates(book: Book, each: Check, so_one: frozenset[str], so_other: frozenset[str]) -> bool:
    row, other = row_of(each, so_one), row_of(each, so_other)
    if row == other:
        return False
    first, second = likelihood_row(book, each, row), likelihood_row(book, each, other)
    return sum(abs(first[o] - second[o]) for o in each.outcomes) / 2 >= APART
