"""What an exercise is, and what came of one: records that can be written to a file and read back."""

from __future__ import annotations

import msgspec

__all__ = ["Exercise", "Result"]


class Exercise(msgspec.Struct, frozen=True, kw_only=True, forbid_unknown_fields=True):
    """A machine with what is hidden in it, and the story told with it.

    `own` are figures of its plate as text with units; `faults` and `lies` are what the simulated machine is
    built with: (cause, severity) and (instrument, how far it is off, in SI). `about` tells whoever opens a file of
    one what it is.
    """

    about: str = ""
    seed: int
    level: int
    machine: str
    own: dict[str, str] = {}
    faults: list[tuple[str, float]]
    lies: list[tuple[str, float]] = []
    complaint: str
    story: list[str] = []
    title: str = ""
    by: str = ""


class Result(msgspec.Struct, frozen=True, kw_only=True, forbid_unknown_fields=True):
    """How an exercise went: minutes at the machine against those expected and those of the best path."""

    exercise: Exercise
    at: str
    trainee: str = ""
    minutes: float
    expected: float
    best: float
    said: list[str] = []
    solved: bool
    unsafe: list[str] = []
    wrong_repairs: int = 0
    checks: list[str] = []
