"""Entries of a shop's own folder say so wherever they are shown: their title and question carry a mark."""

from __future__ import annotations

from typing import Any

import msgspec

__all__ = ["MARK", "marked", "unmarked"]

MARK = " (shop's)"
_SHOWN = ("title", "ask")  # what screens print of an entry


def marked(entry: Any) -> Any:
    """The entry with the mark behind what screens print of it."""
    told = {name: getattr(entry, name) + MARK for name in _SHOWN if getattr(entry, name, None) is not None}
    return msgspec.structs.replace(entry, **told)


def unmarked(text: str) -> str:
    """The text as it was written.

    >>> unmarked("Rinse too cold (shop's)")
    'Rinse too cold'
    """
    return text.removesuffix(MARK)
