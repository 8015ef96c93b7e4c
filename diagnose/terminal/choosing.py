"""Numbers typed to choose from a list."""

from __future__ import annotations

import re

from diagnose.terminal.refusals import Refused

__all__ = ["number_from", "numbers_from", "refuse_empty", "short"]


def number_from(text: str, most: int, hint: str = "", least: int = 1) -> int:
    """A whole number from `least` to `most`. Raises Refused with the range and the hint."""
    wanted = text.rstrip(".)")
    if wanted.isascii() and wanted.isdigit() and least <= int(wanted[:9]) <= most:
        return int(wanted)
    more = f" {hint}" if hint else ""
    span = f"a number from {least} to {most}" if most > least else f"the number {most}"
    if not text:
        raise Refused(f"Enter alone is no answer here; type {span}.{more}")
    raise Refused(f"{short(text)} is no answer here; type {span}.{more}", text)


def numbers_from(text: str, most: int) -> list[int] | None:
    """Several numbers, `1 3` or `1, 3`, each once; None when there is anything but numbers in range."""
    pieces = [p for p in re.split(r"[\s,;+&.]+|\band\b", text) if p]
    if not pieces or not all(p.isascii() and p.isdigit() and 1 <= int(p[:9]) <= most for p in pieces):
        return None
    return list(dict.fromkeys(int(p) for p in pieces))


def refuse_empty(text: str, hint: str) -> None:
    """Raises Refused where Enter alone is no answer."""
    if not text:
        raise Refused(f"Enter alone is no answer here. {hint}")


def short(text: str) -> str:
    """What was typed, quoted, and cut when it is long."""
    return f'"{text}"' if len(text) <= 40 else f'"{text[:37]}..."'
