"""A number with its unit: read from what a technician types, converted, printed."""

from __future__ import annotations

import math
import re
from dataclasses import dataclass
from functools import lru_cache

from diagnose.units.table import DIMENSIONS, UNITS, Unit, find_unit, units_of

__all__ = ["Quantity", "UnitError", "parse_quantity", "show_number"]

_FORM = re.compile(r"^\s*([+-]?(?:\d+(?:[.,]\d+)?|[.,]\d+)(?:[eE][+-]?\d+)?)\s*(.*?)\s*$")


class UnitError(ValueError):
    """What was typed is no quantity of the wanted kind; the message says what would be."""


def show_number(value: float, digits: int = 4) -> str:
    """At least all digits before the point, at most `digits` significant ones; no exponent.

    >>> show_number(83.274), show_number(12345.6), show_number(0.04561), show_number(180.0)
    ('83.27', '12346', '0.04561', '180')
    >>> show_number(83.274, 3)
    '83.3'
    """
    if value == 0 or not math.isfinite(value):
        return "0" if value == 0 else "endless" if value == math.inf else str(value)
    decimals = max(0, digits - 1 - math.floor(math.log10(abs(value))))
    text = f"{value:.{min(decimals, 9)}f}"
    return text.rstrip("0").rstrip(".") if "." in text else text


@dataclass(frozen=True)
class Quantity:
    """A value in the unit it was given in. `si` is the same in SI (temperatures in kelvin)."""

    value: float
    unit: Unit

    @property
    def dimension(self) -> str:
        return self.unit.dimension

    @property
    def si(self) -> float:
        return self.unit.to_si(self.value)

    def to(self, symbol: str) -> float:
        """The value in another unit of the same dimension; raises UnitError for any other."""
        unit = find_unit(symbol, self.dimension)
        if unit is None:
            raise UnitError(f"{symbol!r} is no unit of {self.dimension}; use {_names(self.dimension)}")
        return unit.from_si(self.si)

    def as_unit(self, unit: Unit) -> Quantity:
        """The same quantity expressed in `unit` (same dimension)."""
        if unit.dimension != self.dimension:
            raise UnitError(f"{unit.symbol} is {unit.dimension}, not {self.dimension}")
        return Quantity(unit.from_si(self.si), unit)

    @property
    def exact(self) -> str:
        """The quantity as text that reads back to the same value."""
        return f"{self.value!r} {self.unit.symbol}"

    @classmethod
    def of_si(cls, value: float, dimension: str, symbol: str) -> Quantity:
        """A quantity from its SI value, expressed in `symbol`."""
        unit = find_unit(symbol, dimension)
        if unit is None:
            raise UnitError(f"{symbol!r} is no unit of {dimension}; use {_names(dimension)}")
        return cls(unit.from_si(value), unit)

    def __str__(self) -> str:
        gap = "" if self.unit.symbol == "%" else " "
        return f"{show_number(self.value)}{gap}{self.unit.symbol}"


def _names(dimension: str) -> str:
    return ", ".join(u.symbol for u in units_of(dimension))


@lru_cache(maxsize=4096)
def parse_quantity(text: str, dimension: str, default: str | None = None) -> Quantity:
    """Read `71`, `71.5`, `71,5`, `160F`, `71 C`, `20psi`, `1.4 bar` as a quantity of `dimension`.

    `default` is the symbol meant when no unit is typed; without it a bare number is refused.
    Raises UnitError, whose message names the units that would do.

    >>> str(parse_quantity("71,5", "temperature", "°C")), str(parse_quantity("20psi", "pressure"))
    ('71.5 °C', '20 psi')
    """
    if dimension not in DIMENSIONS:
        raise UnitError(f"{dimension!r} is no kind of quantity known here")
    match = _FORM.match(text)
    if match is None:
        raise UnitError(f"{text.strip()[:40]!r} is no number; type one, with {_names(dimension)} if you like")
    value = float(match[1].replace(",", "."))
    if not math.isfinite(value) or abs(value) > 1e12:
        raise UnitError(f"{match[1]} is out of all range")
    unit = _unit(match[2], dimension, default)
    quantity = Quantity(value, unit)
    if dimension == "temperature" and quantity.si < 0:
        raise UnitError(f"{quantity} is below absolute zero")
    return quantity


def _unit(word: str, dimension: str, default: str | None) -> Unit:
    if not word:
        unit = find_unit(default, dimension) if default else None
        if unit is None:
            raise UnitError(f"say the unit: {_names(dimension)}")
        return unit
    unit = find_unit(word, dimension)
    if unit is not None:
        return unit
    others = {u.dimension for u in UNITS if find_unit(word, u.dimension)}
    if others:
        raise UnitError(f"{word} is a unit of {' or '.join(sorted(others))}; this wants {_names(dimension)}")
    raise UnitError(f"{word[:20]!r} is no unit known here; this wants {_names(dimension)}")
