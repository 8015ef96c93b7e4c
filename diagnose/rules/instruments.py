"""How far the instrument of a reading may be off, as a spread. The kinds stand in the knowledge."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import replace

from diagnose.model import Book, Check, Reading, shipped_knowledge
from diagnose.model.instruments import Instrument, kind_of, kinds_in
from diagnose.units import Quantity

__all__ = ["instrument_of", "spread", "told_instruments", "with_instruments"]


def with_instruments(book: Book, readings: Sequence[Reading]) -> list[Reading]:
    """Readings with what they were taken with, by the book's kinds, where they do not say it themselves."""
    kinds = tuple(book.instruments.values())
    return [
        replace(r, accuracy=kind_of(kinds, book.checks[r.check], r.instrument))
        if kinds and r.values and r.accuracy is None and r.check in book.checks
        else r
        for r in readings
    ]


def instrument_of(check: Check, reading: Reading | None = None) -> Instrument:
    """What a reading was taken with: as it says, else the kind its words or those of the check name."""
    if reading is not None and reading.accuracy is not None:
        return reading.accuracy
    return kind_of(kinds_in(shipped_knowledge()), check, reading.instrument if reading else None)


def spread(check: Check, quantity: Quantity, reading: Reading | None = None) -> float:
    """One standard deviation of a reading in its own unit.

    An accuracy stated without more is taken as limits between which every error is equally likely: its
    standard deviation is the accuracy over the root of three (the rule for stated limits in the guide to
    the expression of uncertainty in measurement; from memory).
    """
    error = instrument_of(check, reading).accuracy(quantity)
    return max(error / math.sqrt(3.0), 1e-6)  # never nought: it is divided by


def told_instruments(readings: Sequence[Reading | None], working: Sequence[str]) -> list[str]:
    """A line for each instrument of one's own that took these readings, unless the working names it already."""
    own = dict.fromkeys(str(r.accuracy) for r in readings if r is not None and r.accuracy and r.accuracy.name)
    return [f"{text[0].upper()}{text[1:]}." for text in own if not any(text in line for line in working)]
