"""Kinds of instruments state an accuracy that can be read, and every measuring check finds one."""

from __future__ import annotations

from collections.abc import Iterator

from diagnose.model.book import Book
from diagnose.model.instruments import Instrument, kind_of, parse_accuracy
from diagnose.model.problems import Problem
from diagnose.model.supporting import InstrumentKind
from diagnose.units import DIMENSIONS, UnitError

__all__ = ["check"]


def check(book: Book) -> Iterator[Problem]:
    """Unknown quantities, accuracies that can't be, and checks whose quantity no kind measures."""
    for name, kind in book.instruments.items():
        for what, remedy in _kind(kind):
            yield Problem(book.places[f"instrument:{name}"], f"{name}: {what}", remedy)
    if not book.instruments:
        return  # a folder by itself, to be laid over one that has them
    measured = {kind.quantity for kind in book.instruments.values()}
    for name, each in book.checks.items():
        if each.reading is None:
            continue
        if each.reading.quantity not in measured:
            remedy = "add a kind for it to instruments.toml"
            yield Problem(book.places[name], f"{name}: no instrument measures {each.reading.quantity}", remedy)
        elif kind_of(book.instruments.values(), each).kind == "instrument not known":
            remedy = "name one of the words of instruments.toml"
            yield Problem(book.places[name], f"{name}: {each.instrument!r} is no instrument known", remedy)


def _kind(kind: InstrumentKind) -> Iterator[tuple[str, str]]:
    if kind.quantity not in DIMENSIONS:
        yield f"{kind.quantity!r} is no quantity", f"use one of {', '.join(DIMENSIONS)}"
        return
    if not 0 <= kind.share <= 0.5:
        yield f"a share of {kind.share:g} is no accuracy", "write 0.02 for 2 %"
        return
    try:
        parse_accuracy(Instrument(kind.title, kind.quantity, kind.absolute, kind.share).text, kind.quantity)
    except UnitError as error:
        yield str(error), "give absolute, share, or both"
