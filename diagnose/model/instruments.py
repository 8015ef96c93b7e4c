"""Instruments: how far a reading may be off, by kind or by one instrument of one's own."""

from __future__ import annotations

import re
import tomllib
from collections.abc import Iterable
from dataclasses import dataclass, replace
from functools import cache
from pathlib import Path

import msgspec

from diagnose.model.entities import Check
from diagnose.model.record import Basis
from diagnose.model.supporting import InstrumentKind
from diagnose.units import Quantity, UnitError, find_unit, parse_quantity

__all__ = ["Instrument", "kind_of", "kinds_in", "parse_accuracy"]

_ANY = Basis(kind="judgement", note="no kind is known: one twentieth of the reading")


@dataclass(frozen=True)
class Instrument:
    """What a reading was taken with: an absolute error, a share of the reading, or both.

    `name` is given for an instrument of one's own; `note` then says what was made of its accuracy.
    """

    kind: str
    quantity: str
    absolute: str = ""
    share: float = 0.0
    basis: Basis = _ANY
    name: str = ""
    note: str = ""

    def accuracy(self, reading: Quantity) -> float:
        """Largest error expected of a reading, in the reading's own unit."""
        error = abs(reading.value) * self.share
        if self.absolute:
            error += abs(parse_quantity(self.absolute, _error_of(self.quantity)).si) / reading.unit.factor
        return error

    @property
    def text(self) -> str:
        """The accuracy in words that `parse_accuracy` reads again.

        >>> Instrument("clamp meter", "current", "0.05 A", 0.03).text
        '3 % and 0.05 A'
        """
        share = f"{self.share * 100:g} %{' of the reading' if self.quantity == 'share' else ''}"
        return " and ".join(p for p in (share if self.share else "", self.absolute) if p)

    def widened(self, factor: float) -> Instrument:
        """The same with errors so many times as large."""
        absolute = self.absolute
        if absolute:
            error = parse_quantity(absolute, _error_of(self.quantity))
            absolute = f"{error.value * factor:.4g} {_symbol(absolute, self.quantity) or error.unit.symbol}"
        return replace(self, absolute=absolute, share=self.share * factor)

    def __str__(self) -> str:
        if self.name:
            return f"your {self.kind} '{self.name}', {self.note or f'± {self.text}'}"
        return f"{self.kind}, ± {self.text}"


def parse_accuracy(text: str, quantity: str) -> tuple[str, float]:
    """(absolute error as text, share) of an accuracy as written on a data sheet. Raises UnitError.

    >>> parse_accuracy("±1 % + 0.5 °F", "temperature"), parse_accuracy("2 F", "temperature")
    (('0.5 °F', 0.01), ('2 °F', 0.0))
    """
    absolute, share = "", 0.0
    parts = [p.strip() for p in re.split(r"\band\b|[+±;]", text) if p.strip()]
    for part in parts:
        of_reading = part.removesuffix("of the reading").removesuffix("of reading").strip()
        if of_reading.endswith("%") and (quantity != "share" or of_reading != part):
            share += parse_quantity(of_reading, "share").si
        elif absolute:
            raise UnitError(f"{text[:40]!r} names two absolute errors; give one, like 1 % + 0.5 °F")
        else:
            error = parse_quantity(part, _error_of(quantity))
            absolute = f"{error.value:g} {_symbol(part, quantity) or error.unit.symbol}"
            if error.value <= 0:
                raise UnitError(f"an accuracy of {part} can't be; give how far it may be off")
    if not parts or (not absolute and share <= 0):
        raise UnitError("an accuracy of nothing can't be; give how far it may be off, like 1 °F or 2 %")
    if share > 0.5:
        raise UnitError(f"{share * 100:g} % of the reading is no accuracy; write a share like 2 %")
    return absolute, share


def kind_of(kinds: Iterable[InstrumentKind], check: Check, said: str | None = None) -> Instrument:
    """The first kind of the check's quantity that the words fit: those `said`, or the check's own."""
    quantity = check.reading.quantity if check.reading else ""
    text = (said or check.instrument).lower()
    fallback = Instrument("instrument not known", quantity, "", 0.05)
    for kind in kinds:
        if kind.quantity != quantity:
            continue
        if any(word in text for word in kind.words):
            return _made(kind)
        if not kind.words:
            fallback = _made(kind)
    return fallback


def _made(kind: InstrumentKind) -> Instrument:
    return Instrument(kind.title, kind.quantity, kind.absolute, kind.share, kind.basis)


@cache
def kinds_in(folder: Path) -> tuple[InstrumentKind, ...]:
    """The kinds of a knowledge folder; none where it has no such file. For readings judged without a book."""
    path = folder / "instruments.toml"
    data = tomllib.loads(path.read_text("utf-8")) if path.is_file() else {}
    return tuple(msgspec.convert(raw, InstrumentKind) for raw in data.get("instrument", []))


def _symbol(text: str, quantity: str) -> str:
    """The unit as errors are written: that of the quantity itself, ± 2 °F and not 2 F°."""
    said = text.lstrip("-+.0123456789, ")
    unit = find_unit(said, quantity)
    return unit.symbol if unit else said


def _error_of(quantity: str) -> str:
    """An error of a temperature is a difference: 1 °F of error is 0.56 °C, not -17.2."""
    return "temperature difference" if quantity == "temperature" else quantity
