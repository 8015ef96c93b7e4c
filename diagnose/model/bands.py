"""The ends of a band as knowledge writes them: `15 psi`, `limit.rinse_pressure.low`, `plate.rinse_flow * 0.85`."""

from __future__ import annotations

import re

from diagnose.model.book import Book
from diagnose.model.machine import PLATE_FIGURES
from diagnose.units import DIMENSIONS, UnitError, parse_quantity

__all__ = ["BAND_FORM", "band_dimension", "band_text_problem"]

BAND_FORM = re.compile(
    r"^(?:limit\.(?P<limit>\w+)\.(?P<end>low|high)|plate\.(?P<plate>\w+))(?:\s*\*\s*(?P<factor>\d+(?:\.\d+)?))?$"
)


def band_dimension(text: str, book: Book) -> str | None:
    """The quantity a band end is of; None for a plain number with unit, which is checked by parsing."""
    match = BAND_FORM.match(text)
    if match is None:
        return None
    if match["plate"]:
        figure = PLATE_FIGURES.get(match["plate"])
        return figure.quantity if figure else ""
    limit = book.limits.get(match["limit"])
    return limit.quantity if limit else ""


def band_text_problem(text: str, book: Book, quantity: str) -> str | None:
    """What is wrong with a band end, in words; None when nothing is."""
    match = BAND_FORM.match(text)
    if match is None:
        try:
            parse_quantity(text, quantity if quantity in DIMENSIONS else "count")
        except UnitError as error:
            return f"band end {text!r}: {error}"
        return None
    if match["plate"] and match["plate"] not in PLATE_FIGURES:
        return f"band end {text!r} names no plate figure"
    if match["limit"] and match["limit"] not in book.limits:
        return f"band end {text!r} names no limit"
    if match["limit"] and not getattr(book.limits[match["limit"]], match["end"]):
        return f"band end {text!r}: that limit is open there"
    return None
