"""What things cost in minutes: opening a cover once, bringing the machine into a state and back, calling for help."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field

from diagnose.model import Book

__all__ = ["Circumstances", "Economy", "Task"]


@dataclass(frozen=True)
class Economy:
    """Minutes to open each access, to enter and leave each state of the machine, and to get help.

    >>> economy = Economy({"control box": 3}, {"running": 0, "isolated": 5}, {"running": 0, "isolated": 3}, 240)
    >>> economy.move("running", "isolated"), economy.move("isolated", "running"), economy.move("running", "running")
    (5.0, 3.0, 0.0)
    """

    access: Mapping[str, float]
    enter: Mapping[str, float]
    leave: Mapping[str, float]
    help_minutes: float

    @classmethod
    def of(cls, book: Book) -> Economy:
        """As the knowledge has it (access.toml)."""
        if not book.help or not book.states:
            raise ValueError("the knowledge does not say what access and help cost (access.toml)")
        return cls(
            {a.id: a.minutes for a in book.access.values()},
            {s.id: s.minutes for s in book.states.values()},
            {s.id: s.back for s in book.states.values()},
            min(h.minutes for h in book.help.values()),
        )

    def move(self, before: str, after: str) -> float:
        """Minutes from one state of the machine to another."""
        return 0.0 if before == after else float(self.leave[before] + self.enter[after])


@dataclass(frozen=True)
class Task:
    """A check or a repair as work: its own minutes, what must be open, and the machine's state for it.

    `wasted` minutes come on top where a repair was not the one.
    """

    minutes: float
    open: frozenset[str] = frozenset()
    state: str = "running"
    wasted: float = 0.0


@dataclass(frozen=True)
class Circumstances:
    """How things stand: what is open already, the machine's state, who is there, and what may not be done.

    `who` and `may_open` limit what is advised; None stands for no limit. `unavailable` checks and repairs
    were skipped, or are nothing for these people in this place.
    """

    open: frozenset[str] = frozenset()
    state: str = "running"
    who: frozenset[str] | None = None
    may_open: frozenset[str] | None = None
    unavailable: frozenset[str] = field(default=frozenset())

    def allows(self, who: str, opens: frozenset[str]) -> bool:
        """Whether this person may do it here."""
        may_open = self.may_open is None or opens - {"none"} <= self.may_open | self.open
        return may_open and (self.who is None or who in self.who)
