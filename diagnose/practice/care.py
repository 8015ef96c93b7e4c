"""What to do first: before work that can hurt, the trainee chooses, and may choose wrongly.

A stop button, a door switch or haste are offered beside what the cautions ask for. What was chosen decides whether
there is a reading at all, and the debrief says where somebody would have been hurt.
"""

from __future__ import annotations

import random
from collections.abc import Mapping
from dataclasses import dataclass

from diagnose.model import Book, Cause, Check

__all__ = ["Way", "due", "ways", "wrong"]

_DEAD = ("isolated", "cold and drained")
# What each caution asks for, short enough to choose from a list; the caution itself is read out in the debrief.
_CARE = {
    "live_parts": "rated gloves and glasses, dry floor, one hand, and a meter proved before and after",
    "scald": "long gloves and face shield, stand aside, pressure off before a pipe is opened",
    "steam": "stop valve closed and locked and the line cold, or eyes only and no hand near it",
    "moving_conveyor": "guards on, sleeves and hair tied back, one person at the stop button",
    "chemical": "face shield, goggles, rubber gloves and apron, the safety data sheet read",
    "gas": "nose first, no flame or switch where it smells, a soap test after every joint",
}


@dataclass(frozen=True)
class Way:
    """One way to begin: its id as kept, and its words."""

    id: str
    text: str


def due(entry: Check | Cause, book: Book, now: str, isolated: bool) -> bool:
    """Whether there is a choice to make: a caution with a word to type, and the machine not safely off already."""
    hard = [c for c in entry.cautions if c in book.cautions and book.cautions[c].word]
    if not hard:
        return False
    return not (isolated and entry.state in _DEAD and now == entry.state and hard == ["isolate"])


def ways(entry: Check | Cause, book: Book, seed: int) -> list[Way]:
    """The ways offered, in an order of this exercise's own, and last to leave it."""
    care = "; ".join(_CARE.get(c, book.cautions[c].title.lower()) for c in _own(entry, book))
    offered = [
        Way("straight", "go straight to it, the machine as it stands"),
        Way("button", "press stop, open the door so that its switch holds the machine, and begin"),
        Way("dead", _isolating(book, entry.state == "cold and drained")),
        Way("care", f"{_powered(entry)}; {care or 'keep clear of all that moves'}"),
    ]
    random.Random(f"ways {seed} {entry.id}").shuffle(offered)
    return [*offered, Way("leave", "leave it for now")]


def _powered(entry: Check | Cause) -> str:
    return "leave the power on, nothing running" if entry.state == "idle hot" else "leave it on and ready to run"


def _own(entry: Check | Cause, book: Book) -> list[str]:
    return [c for c in entry.cautions if c in book.cautions and book.cautions[c].word and c != "isolate"]


def _isolating(book: Book, drained: bool) -> str:
    off = "tell the kitchen, open every disconnect, lock and tag it, prove dead"
    return f"{off}; let it cool and drain" if drained else off


def right(entry: Check | Cause) -> str:
    """The way that the work asks for."""
    return "dead" if entry.state in _DEAD else "care"


def wrong(entry: Check | Cause, way: str) -> str | None:
    """Why beginning this way would hurt somebody; None where it would not."""
    if way in ("leave", "", right(entry), "dead"):
        return None
    told: Mapping[str, str] = {
        "straight": "you went straight to it",
        "button": "you trusted a stop button and a door switch, which isolate nothing"
        if entry.state in _DEAD
        else "you pressed stop, and began without what its cautions ask for",
        "care": "you worked with the power on where it must be off, locked and proved dead",
    }
    return told[way]


def nothing_to_read(entry: Check | Cause, way: str) -> bool:
    """Whether the machine was made dead for something that shows only while it runs."""
    return way == "dead" and entry.state == "running" and isinstance(entry, Check)
