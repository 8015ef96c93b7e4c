"""A formula as the trade asks it: what it takes, in which units, from where, and how its working is written."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from typing import Any

from diagnose.physics.manual import Manual, manual_of

__all__ = ["Answer", "Argument", "Formula"]


@dataclass(frozen=True)
class Argument:
    """One thing a formula takes.

    `quantity` is a kind of quantity of `units`, "number" for a figure without unit (a share, a pH), or
    "words" for one of `words`. `us` and `si` are the units shown, and meant when none is typed. `plate`
    names a plate figure, `usual` is taken when nothing else is known and `stands` says on what ground.
    `many` is how many values it takes: 1, a number of them, or 0 for any number.
    """

    name: str
    ask: str
    quantity: str
    us: str = ""
    si: str = ""
    plate: str = ""
    usual: str = ""
    stands: str = ""
    words: tuple[str, ...] = ()
    many: int = 1

    def unit(self, system: str) -> str:
        """The unit shown in "us" or "si"."""
        return self.us if system == "us" else self.si or self.us


@dataclass(frozen=True)
class Answer:
    """What a formula gives: like an argument, without anywhere to come from."""

    name: str
    title: str
    quantity: str
    us: str = ""
    si: str = ""

    def unit(self, system: str) -> str:
        """The unit shown in "us" or "si"."""
        return self.us if system == "us" else self.si or self.us


@dataclass(frozen=True)
class Formula:
    """One formula of `physics`, put in the trade's words.

    `run` is called with SI values by name and returns the first answer, or a tuple with one item per
    answer. `us` and `si` are lines of working with `{name}` for an argument, answer or step with its unit
    and `{name:n}` for its number alone; a line `left = right` must come out by hand, which a test does.
    `steps` gives further SI values for the lines: name -> (value, quantity, us unit, si unit). `limit` is
    the id of a figure of good order the first answer is held against. `by_hand` says why no line can be
    worked by hand, where that is so.
    """

    id: str
    subject: str
    title: str
    asks: str
    run: Callable[..., Any]
    takes: tuple[Argument, ...]
    gives: tuple[Answer, ...]
    us: tuple[str, ...]
    si: tuple[str, ...] = ()
    steps: Callable[..., Mapping[str, tuple[float, str, str, str]]] | None = None
    limit: str = ""
    by_hand: str = ""
    also: tuple[str, ...] = ()  # other words by which it is looked for

    @property
    def manual(self) -> Manual:
        """What the docstring of the physics says."""
        return manual_of(self.run)

    def lines(self, system: str) -> tuple[str, ...]:
        """The lines of working in "us" or "si"."""
        return self.us if system == "us" else self.si or self.us

    def argument(self, name: str) -> Argument:
        """The argument of that name. Raises KeyError."""
        for argument in self.takes:
            if argument.name == name:
                return argument
        raise KeyError(name)
