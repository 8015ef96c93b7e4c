"""How far each kind of instrument may be off, and on what ground that is said."""

from __future__ import annotations

import math
from dataclasses import dataclass

from diagnose.model import Basis, Check, Reading
from diagnose.units import Quantity, find_unit, parse_quantity

__all__ = ["INSTRUMENTS", "Instrument", "instrument_of", "spread"]

_PRACTICE = Basis(kind="common practice")
_JUDGED = Basis(kind="judgement")


@dataclass(frozen=True)
class Instrument:
    """A kind of instrument for one quantity: an absolute error, a share of the reading, or both."""

    kind: str
    quantity: str
    words: tuple[str, ...]  # any of these in the check's text names it; () = used when nothing else fits
    absolute: str = ""
    share: float = 0.0
    basis: Basis = _PRACTICE

    def accuracy(self, reading: Quantity) -> float:
        """Largest error expected of a reading, in the reading's own unit."""
        error = abs(reading.value) * self.share
        if self.absolute:
            difference = "temperature difference" if self.quantity == "temperature" else self.quantity
            error += abs(parse_quantity(self.absolute, difference).si) / reading.unit.factor
        return error

    def __str__(self) -> str:
        parts = [p for p in (f"{self.share * 100:g} %" if self.share else "", self.absolute) if p]
        return f"{self.kind}, ± {' and '.join(parts)}"


def _published(where: str) -> Basis:
    return Basis(kind="published", source="food_code", where=where)


# More particular kinds stand before more general ones: the first that matches is taken.
INSTRUMENTS: tuple[Instrument, ...] = (
    Instrument(
        "reference thermometer",
        "temperature",
        ("reference", "probe", "thermocouple", "second therm", "digital", "test therm", "calibrated"),
        "1 °F",
    ),
    Instrument("infrared thermometer", "temperature", ("infrared", "surface"), "5 °F"),
    Instrument(
        "panel thermometer",
        "temperature",
        ("panel", "gauge", "dial", "thermometer"),
        "3 °F",
        basis=_published("4-203.12"),
    ),
    Instrument("thermometer", "temperature", (), "3 °F", basis=_published("4-203.12")),
    Instrument("micromanometer", "pressure", ("micromanometer",), "0.004 inWG", 0.02),
    Instrument("manometer", "pressure", ("column", "manometer", "u-tube", "draft"), "0.05 inWG", 0.01),
    Instrument("test gauge", "pressure", ("test gauge", "reference gauge", "second gauge", "calibrated"), "0.5 psi"),
    Instrument("panel gauge", "pressure", (), "2 psi", basis=Basis(kind="memory", note="Food Code 4-203.13")),
    Instrument("small-range clamp meter", "current", ("small current",), "0.01 A", 0.03),
    Instrument("clamp meter", "current", ("clamp",), "0.05 A", 0.03),
    Instrument(
        "setting dial", "current", ("dial", "eye", "look", "none", "overload", "table", "plate"), "", 0.05, _JUDGED
    ),
    Instrument("ammeter", "current", (), "0.05 A", 0.03),
    Instrument("multimeter, volts", "voltage", (), "", 0.01),
    Instrument("insulation tester", "resistance", ("insulation", "megohm"), "", 0.10),
    Instrument("multimeter, ohms", "resistance", (), "0.1 ohm", 0.02),
    Instrument("two thermometers", "temperature difference", (), "2 F°"),
    Instrument("capacity meter", "share", ("capacity",), "2 %", 0.0, _JUDGED),
    Instrument("two readings compared", "share", (), "1 %", 0.02, _JUDGED),
    Instrument("gas meter and watch", "power", (), "", 0.03, _JUDGED),
    Instrument("tape and watch", "speed", (), "", 0.03, _JUDGED),
    Instrument("flue-gas analyser", "concentration", ("flue", "analyser"), "10 ppm", 0.05, _JUDGED),
    Instrument("bucket and watch", "flow", (), "", 0.05),
    Instrument("anemometer", "air flow", (), "", 0.10),
    Instrument("anemometer", "air speed", (), "", 0.10),
    Instrument("watch", "time", (), "0.5 s", 0.01, _JUDGED),
    Instrument("feeler or caliper", "length", ("feeler", "caliper"), "0.1 mm", 0.0, _JUDGED),
    Instrument("rule", "length", (), "2 mm", 0.0, _JUDGED),
    Instrument("spring balance", "force", (), "", 0.05, _JUDGED),
    Instrument("level and rule", "slope", (), "0.02 in/ft", 0.0, _JUDGED),
    Instrument("hardness test", "hardness", (), "1 gpg", 0.0, _JUDGED),
    Instrument("test strip", "concentration", (), "10 ppm", 0.1, _JUDGED),
    Instrument("count", "count", (), "0.3 count", 0.0, _JUDGED),
    Instrument("count over a time", "rate", (), "", 0.10, _JUDGED),
)
_ANY = Instrument("instrument not known", "", (), "", 0.05, _JUDGED)


def instrument_of(check: Check, reading: Reading | None = None) -> Instrument:
    """The kind of instrument a reading was taken with: named by the reading, else by the check's text."""
    quantity = check.reading.quantity if check.reading else ""
    text = ((reading.instrument if reading else None) or check.instrument).lower()
    fallback = _ANY
    for kind in INSTRUMENTS:
        if kind.quantity != quantity:
            continue
        if any(word in text for word in kind.words):
            return kind
        if not kind.words:
            fallback = kind
    return fallback


def spread(check: Check, quantity: Quantity, reading: Reading | None = None) -> float:
    """One standard deviation of a reading in its own unit.

    An accuracy stated without more is taken as limits between which every error is equally likely: its
    standard deviation is the accuracy over the root of three (the rule for stated limits in the guide to
    the expression of uncertainty in measurement; from memory).
    """
    error = instrument_of(check, reading).accuracy(quantity)
    unit = find_unit(quantity.unit.symbol, quantity.dimension)
    smallest = 1e-6 / (unit.factor if unit else 1.0)
    return max(error / math.sqrt(3.0), smallest)
