"""What is typed for one argument of a formula, read into SI."""

from __future__ import annotations

import math
import re

from diagnose.formulas import Answer, Argument
from diagnose.units import Quantity, Unit, UnitError, find_unit, parse_quantity, units_of

__all__ = ["hint", "read_value", "show_si", "unit_typed"]

_CUT = re.compile(r"[\s;]+|,(?=\s)|,$")  # a comma between digits is a decimal comma, unless there are several
_WHOLE = re.compile(r"^([+-]?(?:\d+(?:[.,]\d+)?|[.,]\d+)(?:[eE][+-]?\d+)?)\s*(.*)$")


def read_value(entry: Argument | Answer, text: str, system: str) -> float | tuple[float, ...] | str:
    """One value in SI, a tuple of them, or a word. Raises UnitError, whose message holds the remedy.

    >>> read_value(Argument("v", "Line volts", "voltage", "V", many=3), "462 463 455", "us")
    (462.0, 463.0, 455.0)
    """
    many = entry.many if isinstance(entry, Argument) else 1
    if entry.quantity == "words":
        return _word(entry.words if isinstance(entry, Argument) else (), text)
    if many == 1:
        return _one(entry, text, system)
    pieces = _pieces(text)
    if many and len(pieces) != many:
        raise UnitError(f"this wants {hint(entry, system)}; {len(pieces)} came")
    last = _WHOLE.match(pieces[-1])
    unit = last[2] if last else ""
    return tuple(_one(entry, p if _unit_of(p) else f"{p} {unit}", system) for p in pieces)


def _one(entry: Argument | Answer, text: str, system: str) -> float:
    if entry.quantity == "number":
        try:
            value = float(text.strip().replace(",", "."))
        except ValueError:
            raise UnitError(f"{text.strip()[:40]!r} is no plain number") from None
        if not math.isfinite(value):
            raise UnitError(f"{text.strip()[:40]} is out of all range")
        return value
    return parse_quantity(text, entry.quantity, entry.unit(system)).si


def _pieces(text: str) -> list[str]:
    """Cut `462, 463, 455 V` or `462 463 455V` into values, each with the unit that stands behind it."""
    words = [w for w in _CUT.split(text.strip()) if w]
    if len(words) == 1 and words[0].count(",") > 1:
        words = [w for w in words[0].split(",") if w]
    pieces: list[str] = []
    for word in words:
        if _WHOLE.match(word) or not pieces:
            pieces.append(word)
        else:
            pieces[-1] += f" {word}"
    if not pieces:
        raise UnitError("type numbers, and the unit behind the last if you like")
    return pieces


def _unit_of(piece: str) -> str:
    match = _WHOLE.match(piece)
    return match[2] if match else ""


def _word(words: tuple[str, ...], text: str) -> str:
    wanted = text.strip().casefold()
    if wanted.isascii() and wanted.isdigit() and 1 <= int(wanted[:6]) <= len(words):
        return words[int(wanted) - 1]
    found = [w for w in words if w.casefold() == wanted] or [w for w in words if wanted and wanted in w.casefold()]
    if len(found) != 1:
        raise UnitError(f"{text.strip()[:40]!r} won't do; say one of {', '.join(words)}")
    return found[0]


def hint(entry: Argument | Answer, system: str) -> str:
    """What may be typed: `gpm (or L/min, gph, L/h)`, or the words to choose from."""
    if entry.quantity == "words":
        return ", ".join(entry.words if isinstance(entry, Argument) else ())
    many = entry.many if isinstance(entry, Argument) else 1
    several = f"{many} values " if many > 1 else "values " if many == 0 else ""
    if entry.quantity == "number":
        return f"{several}a plain number" if not several else f"{several}without unit"
    unit = entry.unit(system)
    others = [u.symbol for u in units_of(entry.quantity) if u.symbol != unit]
    return f"{several}{'in ' if several else ''}{unit}" + (f" (or {', '.join(others)})" if others else "")


def unit_typed(entry: Argument | Answer, text: str) -> Unit | None:
    """The unit written behind the last number, if it is one of this quantity."""
    if entry.quantity in ("number", "words"):
        return None
    match = _WHOLE.match(_pieces(text)[-1]) if text.strip() else None
    return find_unit(match[2], entry.quantity) if match and match[2] else None


def show_si(value: float, entry: Argument | Answer, system: str) -> str:
    """An SI value in the unit of the system asked for."""
    if entry.quantity in ("number", "words"):
        return f"{value:g}"
    return str(Quantity.of_si(value, entry.quantity, entry.unit(system)))
