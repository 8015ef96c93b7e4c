"""Every hazard of a check, a repair or an adjustment has its caution."""

from __future__ import annotations

import re
from collections.abc import Iterator

from diagnose.model.book import Book
from diagnose.model.entities import Cause, Check
from diagnose.model.problems import Problem
from diagnose.model.sheet import Adjustment

__all__ = ["check"]

_LIVE_COVERS = {"control box", "booster cover", "front panel"}
_MOVING_COVERS = {"drive guard", "pump guard"}
_HANDS = {"control box", "booster cover", "pump guard", "drive guard"}
# A word in a step -> the caution it calls for.
_WORDS: tuple[tuple[re.Pattern[str], str], ...] = (
    (re.compile(r"\b(delim\w+|descal\w+|acid)\b", re.I), "chemical"),
    (re.compile(r"\bladder\b", re.I), "height"),
    (re.compile(r"\b(gas cock|gas valve|gas train|burner door)\b", re.I), "gas"),
    (re.compile(r"\bsteam (trap|coil|valve|strainer|stop)\b", re.I), "steam"),
    (re.compile(r"\b(disconnect and lock|lock, tag|prove dead)\b", re.I), "isolate"),
)


def check(book: Book) -> Iterator[Problem]:
    """Live covers, moving parts, isolation, acid, ladders, gas and steam without their caution."""
    entries: dict[str, Cause | Check | Adjustment] = {**book.causes, **book.checks}
    entries |= {f"adjust:{name}": entry for name, entry in book.adjustments.items()}
    for name, entry in entries.items():
        for caution, why in _called_for(entry):
            if caution not in entry.cautions:
                yield Problem(
                    book.places[name], f"{entry.id}: {why}, but no caution {caution}", f"add {caution} to cautions"
                )


def _called_for(entry: Cause | Check | Adjustment) -> Iterator[tuple[str, str]]:
    opened = set(entry.open)
    powered = entry.state in ("running", "idle hot")
    if powered and opened & _LIVE_COVERS:
        yield "live_parts", "a cover over live parts is open with the power on"
    if powered and opened & _MOVING_COVERS:
        yield "moving_conveyor", "a guard is off with the power on"
    if not powered and opened & _HANDS:
        yield "isolate", "hands go behind a cover"
    steps = entry.repair if isinstance(entry, Cause) else entry.how if isinstance(entry, Adjustment) else entry.steps
    text = " ".join(steps)
    for pattern, caution in _WORDS:
        match = pattern.search(text)
        if match:
            yield caution, f"its text says {match[0]!r}"
