"""Lint of the knowledge: one module per check, each yields problems with a place and a remedy."""

from __future__ import annotations

from collections.abc import Callable, Iterator

from diagnose.model.book import Book
from diagnose.model.lint import (
    access,
    aloud,
    bands,
    basis,
    context,
    hazards,
    instruments,
    machines,
    parts,
    proofs,
    references,
    rows,
    separate,
    sheet,
    texts,
    tree,
    used,
    words,
)
from diagnose.model.problems import Problem

__all__ = ["LINTS", "lint"]

LINTS: dict[str, Callable[[Book], Iterator[Problem]]] = {
    "references": references.check,
    "tree": tree.check,
    "words": words.check,
    "rows": rows.check,
    "bands": bands.check,
    "basis": basis.check,
    "context": context.check,
    "instruments": instruments.check,
    "machines": machines.check,
    "access": access.check,
    "parts": parts.check,
    "aloud": aloud.check,
    "hazards": hazards.check,
    "proofs": proofs.check,
    "used": used.check,
    "separate": separate.check,
    "sheet": sheet.check,
    "texts": texts.check,
}
# These look at what references lead to; without sound references they would only repeat the same faults.
_FIRST = ("references", "tree", "words")


def lint(book: Book) -> tuple[Problem, ...]:
    """Every problem of every check, in the order of places."""
    found = [problem for name in _FIRST for problem in LINTS[name](book)]
    if not found:
        found = [problem for name, each in LINTS.items() if name not in _FIRST for problem in each(book)]
    return tuple(sorted(found, key=lambda p: (p.place.file, p.place.line, p.what)))
