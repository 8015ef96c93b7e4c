"""Machine types name every trait, and plate figures that can be read; `fits` tables only what exists."""

from __future__ import annotations

from collections.abc import Iterator

from diagnose.model.book import Book
from diagnose.model.entities import Complaint
from diagnose.model.machine import PLATE_FIGURES, TRAITS, Machine
from diagnose.model.problems import Problem
from diagnose.units import UnitError

__all__ = ["check"]


def check(book: Book) -> Iterator[Problem]:
    """Unknown or missing traits, values no trait takes, figures no plate carries."""
    for name, kind in book.machines.items():
        place = book.places[f"machine:{name}"]
        for trait in TRAITS.keys() ^ kind.traits.keys():
            yield Problem(place, f"{name}: trait {trait} is missing or unknown", f"name each of {', '.join(TRAITS)}")
        for trait, value in kind.traits.items():
            if trait in TRAITS and value not in TRAITS[trait]:
                yield Problem(place, f"{name}: {trait} can't be {value!r}", f"use one of {TRAITS[trait]}")
        for figure in kind.plate:
            if figure not in PLATE_FIGURES:
                yield Problem(place, f"{name}: {figure} is no plate figure", f"use {', '.join(PLATE_FIGURES)}")
                continue
            try:
                Machine(name, kind).plate(figure)
            except UnitError as error:
                yield Problem(place, f"{name}: {error}", "write a number with its unit")
    for table in (book.complaints, book.events, book.causes, book.checks):
        for name, entry in table.items():
            also = entry.until if isinstance(entry, Complaint) else []
            for what in (w for each in (entry, *also) for w in _bad_fits(each.fits)):
                yield Problem(book.places[name], f"{name}: {what}", "see TRAITS in the table of fields")


def _bad_fits(traits: dict[str, list[str | int | bool]]) -> Iterator[str]:
    for trait, values in traits.items():
        if trait not in TRAITS:
            yield f"fits names {trait}, which is no trait"
        else:
            yield from (f"fits: {trait} is never {value!r}" for value in values if value not in TRAITS[trait])
