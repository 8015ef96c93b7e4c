"""Figures in the units the reader wants: as typed, US, SI or both; in quantities and inside sentences."""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Literal

from diagnose.language import Texts
from diagnose.model.answers import show_values
from diagnose.units import Quantity, Unit, counterpart, find_unit, in_system, show_number

__all__ = ["SYSTEMS", "Measures", "System"]

System = Literal["typed", "us", "si", "both"]
SYSTEMS: tuple[System, ...] = ("us", "si", "both")

_NUMBER = r"[+-]?\d+(?:\.\d+)?"
# What a sentence of the rules or the knowledge may name. A bare letter or a word that is also English is left alone.
_SYMBOLS: Mapping[str, str] = {
    "°F": "temperature",
    "°C": "temperature",
    "F°": "temperature difference",
    "C°": "temperature difference",
    "psi": "pressure",
    "kPa": "pressure",
    "bar": "pressure",
    "inWG": "pressure",
    "Pa": "pressure",
    "gpm": "flow",
    "L/min": "flow",
    "gph": "flow",
    "L/h": "flow",
    "cfm": "air flow",
    "m3/h": "air flow",
    "fpm": "air speed",
    "m/s": "air speed",
    "hp": "power",
    "BTU/h": "power",
    "ft/min": "speed",
    "m/min": "speed",
    "gal": "volume",
    "fl oz": "volume",
    "mL": "volume",
    "lbf": "force",
    "gpg": "hardness",
}
_UNITS = "|".join(sorted((re.escape(s) for s in _SYMBOLS), key=len, reverse=True))
# A sentence may call a difference of temperatures "8 °F over". Under these figures it is left as it stands; no
# difference in this trade is above them.
_LEAST_TOLD = {"°F": 100.0, "°C": 56.0}
# Several figures may share the unit behind the last: "48 48 83 A", "15 to 25 psi", "24/26 psi".
_BETWEEN = r"(?: (?:up )?to | and | or | a | y | o | hasta |, | |/|-|–)"
_FIGURES = re.compile(
    rf"(?P<off>±\s*)?(?P<figures>(?<![\w.,°+-]){_NUMBER}(?:{_BETWEEN}{_NUMBER})*) ?"
    rf"(?P<unit>{_UNITS})(?![\w°/²³·])"
    rf"(?: \((?P<beside>{_NUMBER}) ?(?P<other>{_UNITS})\))?"
)


@dataclass(frozen=True)
class Measures:
    """How figures are written in one document."""

    system: System = "typed"

    def values(self, values: Mapping[str, Quantity]) -> str:
        """A reading: `48 48 83 A`; with both systems `180 °F (82 °C)`."""
        if self.system != "both":
            return show_values({place: self.one(q) for place, q in values.items()})
        other = {place: _other(q) for place, q in values.items()}
        typed = show_values(values)
        return typed if all(other[p] == q for p, q in values.items()) else f"{typed} ({show_values(other)})"

    def one(self, quantity: Quantity) -> Quantity:
        """The quantity as it is written first."""
        return in_system(quantity, self.system) if self.system in ("us", "si") else quantity

    def figures(self, values: Sequence[Quantity], like: Unit | None = None) -> tuple[float, ...]:
        """Values for a chart, all in one unit: that of `like`, else of the first, as it is written."""
        if not values:
            return ()
        unit = self.one(Quantity(0.0, like or values[0].unit)).unit
        return tuple(q.value if q.unit == unit else q.as_unit(unit).value for q in values)

    def show(self, quantity: Quantity) -> str:
        """One figure, to three digits where it was worked out."""
        return self.values({"": _short(quantity)})

    def span(self, low: Quantity | None, high: Quantity | None, texts: Texts) -> str:
        """A band in words; "" for one open at both ends."""
        if low is not None and high is not None:
            low, high = _short(low), _short(high)
            if low == high:
                return self.values({"": low})
            first, second = self._span(self.one(low), self.one(high), texts), ""
            if self.system == "both" and (_other(low), _other(high)) != (low, high):
                second = f" ({self._span(_other(low), _other(high), texts)})"
            return first + second
        if low is not None:
            return texts.say("{figure} or more", figure=self.show(low))
        return texts.say("under {figure}", figure=self.show(high)) if high is not None else ""

    def _span(self, low: Quantity, high: Quantity, texts: Texts) -> str:
        return texts.say("{low} to {high}", low=show_number(low.value), high=str(high))

    def text(self, sentence: str) -> str:
        """A sentence of the rules or the knowledge with its figures so; what can't be told for sure stays as it is."""
        if self.system == "typed":
            return sentence
        return _FIGURES.sub(self._put, sentence)

    def _put(self, match: re.Match[str]) -> str:
        unit = _unit(match["unit"], bool(match["off"]))
        if unit is None or (not match["off"] and not match["beside"] and _may_be_difference(match)):
            return match[0]
        other = counterpart(unit, "si" if unit.system == "us" else "us")
        paired = match["other"] is not None and _SYMBOLS[match["other"]] == _SYMBOLS[match["unit"]]
        if other == unit or (paired and self.system == "both"):
            return match[0]
        wanted = self.system in (unit.system, "both")
        said = match[0] if not paired else match[0][: match.start("beside") - match.start() - 2]
        if paired:  # both systems stand there already: one of them is taken as it was written
            return said if wanted else f"{match['beside']} {_symbol(match['other'], match['off'])}"
        turned = f"{match['off'] or ''}{_each(match['figures'], unit)} {_symbol(other.symbol, match['off'])}"
        if self.system == "both":
            return f"{match[0]} ({turned})"
        return match[0] if wanted else turned


def _may_be_difference(match: re.Match[str]) -> bool:
    least = _LEAST_TOLD.get(match["unit"])
    return least is not None and any(float(figure) < least for figure in re.findall(_NUMBER, match["figures"]))


def _each(figures: str, unit: Unit) -> str:
    """Every figure of a run in the other system, without a unit."""
    to = "si" if unit.system == "us" else "us"

    def put(match: re.Match[str]) -> str:
        quantity = Quantity(float(match[0]), unit)
        if "." in match[0]:  # as fine as it was written, not as it is shown
            decimals = len(match[0].partition(".")[2])
            quantity = Quantity(round(quantity.value, decimals), unit)
        return show_number(in_system(quantity, to).value)

    return re.sub(_NUMBER, put, figures)


def _unit(symbol: str, off: bool) -> Unit | None:
    """The unit a sentence names; an error of a temperature, ± 2 °F, is a difference."""
    dimension = _SYMBOLS[symbol]
    return find_unit(symbol, "temperature difference" if off and dimension == "temperature" else dimension)


def _symbol(symbol: str, off: str | None) -> str:
    """Errors are written with the unit of the quantity itself: ± 1 °C and not ± 1 C°."""
    return {"F°": "°F", "C°": "°C"}.get(symbol, symbol) if off else symbol


def _other(quantity: Quantity) -> Quantity:
    """The same in the other system; itself where it belongs to both."""
    return in_system(quantity, "si" if quantity.unit.system == "us" else "us")


def _short(quantity: Quantity) -> Quantity:
    return Quantity(float(show_number(quantity.value, 3)), quantity.unit)
