"""Which front suits the terminal at hand."""

from __future__ import annotations

import os
import shutil
import sys

from diagnose.terminal.front import Front
from diagnose.terminal.live import GUARD_SECONDS, LiveFront
from diagnose.terminal.plain import PlainFront

__all__ = ["front_here", "wants_colour", "wants_plain"]


def front_here(plain: bool = False, guard: float | None = None) -> Front:
    """The plain front where it was asked for or nothing else works; else the live one.

    `guard`: seconds in which a second press is no answer; DIAGNOSE_GUARD sets it where it is not given.
    """
    if plain or wants_plain():
        columns = shutil.get_terminal_size().columns if sys.stdout.isatty() else 80
        return PlainFront(columns)
    return LiveFront(wants_colour(), _guard() if guard is None else guard)


def wants_plain() -> bool:
    """Plain output is wanted or all there is: ACCESSIBLE=1, TERM=dumb, input or output no terminal."""
    if os.environ.get("ACCESSIBLE", "0") not in ("", "0") or os.environ.get("TERM", "") in ("dumb", ""):
        return True
    return not (sys.stdin.isatty() and sys.stdout.isatty())


def wants_colour() -> bool:
    """NO_COLOR (any text) switches colours off; FORCE_COLOR is honoured by the drawing library."""
    return not os.environ.get("NO_COLOR")


def _guard() -> float:
    try:
        return max(0.0, float(os.environ.get("DIAGNOSE_GUARD", "")))
    except ValueError:
        return GUARD_SECONDS
