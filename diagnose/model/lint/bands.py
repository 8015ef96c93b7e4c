"""Readings, bands and limits agree in their units, and bands leave no hole."""

from __future__ import annotations

from collections.abc import Iterator

from diagnose.model.bands import band_dimension, band_text_problem
from diagnose.model.book import Book
from diagnose.model.entities import Check
from diagnose.model.machine import PLATE_FIGURES
from diagnose.model.problems import Problem
from diagnose.model.supporting import Limit
from diagnose.units import UnitError, find_unit, parse_quantity

__all__ = ["check"]


def check(book: Book) -> Iterator[Problem]:
    """Units of the wrong kind, unknown limits and plate figures, bands with holes."""
    for name, limit in book.limits.items():
        for what, remedy in _limit(limit):
            yield Problem(book.places[f"limit:{name}"], f"{name}: {what}", remedy)
    for name, each in book.checks.items():
        for what, remedy in _reading(each, book):
            yield Problem(book.places[name], f"{name}: {what}", remedy)


def _limit(limit: Limit) -> Iterator[tuple[str, str]]:
    if not limit.low and not limit.high:
        yield "has neither low nor high", "give at least one end"
    for text in (*limit.low, *limit.high):
        try:
            parse_quantity(text, limit.quantity)
        except UnitError as error:
            yield f"{text!r}: {error}", "write a number with a unit of the limit's quantity"
    for figure in (limit.plate_low, limit.plate_high):
        if figure is not None and figure not in PLATE_FIGURES:
            yield f"{figure} is no plate figure", f"use one of {', '.join(PLATE_FIGURES)}"
        elif figure is not None and PLATE_FIGURES[figure].quantity != limit.quantity:
            yield f"{figure} is {PLATE_FIGURES[figure].quantity}, not {limit.quantity}", "name another figure"


def _reading(each: Check, book: Book) -> Iterator[tuple[str, str]]:
    bands = [o for o in each.outcomes.values() if o.low is not None or o.high is not None]
    if each.reading is None:
        if bands:
            yield "has bands but reads no quantity", "give it a reading, or take the bands out"
        return
    spec = each.reading
    if find_unit(spec.unit, spec.quantity) is None:
        yield f"{spec.unit!r} is no unit of {spec.quantity}", "see the unit table"
        return
    for text in (spec.least, spec.most):
        try:
            _ = text and parse_quantity(text, spec.quantity, spec.unit)
        except UnitError as error:
            yield f"{text!r}: {error}", "write a number with a unit of the reading's quantity"
    for outcome in bands:
        for end in (outcome.low, outcome.high):
            if end is not None and (what := band_text_problem(end, book, spec.quantity)):
                yield what, f"write a quantity, limit.<id>.low, limit.<id>.high or plate.<name> of {spec.quantity}"
    yield from _holes(each, book)


def _holes(each: Check, book: Book) -> Iterator[tuple[str, str]]:
    ends = [(o.low, o.high) for o in each.outcomes.values() if o.low is not None or o.high is not None]
    if not ends:
        return
    lows = sorted(str(low) for low, _ in ends if low is not None)
    highs = sorted(str(high) for _, high in ends if high is not None)
    if lows != highs:
        yield "its bands leave a hole or overlap", "let each band begin where another ends, the outer two open"
    assert each.reading is not None
    for end in {*lows, *highs}:
        if band_dimension(end, book) not in (each.reading.quantity, None):
            yield f"band end {end} is not {each.reading.quantity}", "name a figure of the same quantity"
