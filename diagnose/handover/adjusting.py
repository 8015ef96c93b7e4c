"""What is set where a line fails: what to ask of how it stands, and which way and how far to set it."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field

from diagnose.handover.sheet import Line, Sheet
from diagnose.model import Adjustment, ReadingSpec

__all__ = ["Suggestion", "knobs", "setting_of", "suggest"]


@dataclass(frozen=True)
class Suggestion:
    """Which way and how far: to what by place, as text with unit; empty where nothing could be worked out.

    `possible` is False where setting this will not do; `says` then tells why.
    """

    says: str
    settings: Mapping[str, str] = field(default_factory=dict)
    working: tuple[str, ...] = ()
    possible: bool = True


def knobs(sheet: Sheet, line: Line, adjustment: Adjustment) -> tuple[str, ReadingSpec] | None:
    """The question of how it stands now, and what it is answered in; None where that need not be known."""
    return None


def setting_of(adjustment: Adjustment) -> ReadingSpec | None:
    """What it is set to is told in; None where nothing is worked out."""
    return None


def suggest(sheet: Sheet, line: Line, adjustment: Adjustment) -> Suggestion | None:
    """How far to set it after all that was read and set so far; None where it is set by eye."""
    return None


_SUGGEST: Mapping[str, Callable[[Sheet, Line, Adjustment], Suggestion | None]] = {}
