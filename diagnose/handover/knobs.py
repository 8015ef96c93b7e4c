"""What can be told of a knob: how it stands, and what it was set to; and how far to set it, as text."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field

from diagnose.model import ReadingSpec
from diagnose.units import Quantity

__all__ = ["KNOBS", "Knob", "Suggestion", "told"]


@dataclass(frozen=True)
class Suggestion:
    """Which way and how far: to what by place, as text with unit; empty where it stays as it is.

    `possible` is False where setting this will not do; `says` then tells why.
    """

    says: str
    settings: Mapping[str, str] = field(default_factory=dict)
    working: tuple[str, ...] = ()
    possible: bool = True


@dataclass(frozen=True)
class Knob:
    """`ask` and `found`: how it stands before it is set, asked once or `each_time`; `set`: what it was set to."""

    set: ReadingSpec
    ask: str = ""
    found: ReadingSpec | None = None
    each_time: bool = False


def _one(quantity: str, unit: str, place: str, least: str, most: str, example: str) -> ReadingSpec:
    return ReadingSpec(quantity=quantity, unit=unit, each=[place], least=least, most=most, example=example)


def told(value: float, quantity: str, unit: str) -> str:
    """An SI value as it is kept: text with unit, that reads back the same."""
    return Quantity.of_si(value, quantity, unit).exact


_MARK = _one("count", "x", "mark", "0 x", "10000 x", "40")
_HANDLES = ReadingSpec(
    quantity="share", unit="%", each=["entrance", "exit"], least="0 %", most="100 %", example="80 60"
)
_HERTZ = _one("frequency", "Hz", "hertz", "1 Hz", "100 Hz", "60")
_DIAL = _one("temperature", "°F", "dial", "32 °F", "230 °F", "160")
KNOBS: Mapping[str, Knob] = {
    "thermostat": Knob(
        _DIAL,
        "Where does the dial stand, and at which temperatures did the heat go off and come on again?",
        ReadingSpec(
            quantity="temperature",
            unit="°F",
            each=["dial", "goes off at", "comes on at"],
            least="32 °F",
            most="230 °F",
            example="160 158 148",
        ),
        each_time=True,
    ),
    "pressure": Knob(_one("count", "x", "turns", "-10 x", "10 x", "0.5, out with a minus")),
    "dampers": Knob(
        _HANDLES, "How far open do both handles stand now, entrance and exit, 100 % being wide open?", _HANDLES
    ),
    "run on": Knob(_MARK, "At which mark does the timer's dial stand now?", _MARK),
    "dose": Knob(_MARK, "At which mark does the feeder stand now?", _MARK),
    "speed": Knob(_HERTZ, "At how many hertz does the drive's controller stand now?", _HERTZ),
    "overload": Knob(_one("current", "A", "dial", "0.1 A", "200 A", "6.8")),
    "pitch": Knob(
        _one("length", "in", "raised", "-12 in", "12 in", "0.5, lowered with a minus"),
        "How far is it from where it must stay as it is to the foot, and what is the pitch of the foot's thread?",
        ReadingSpec(
            quantity="length",
            unit="in",
            each=["to the foot", "thread"],
            least="0 in",
            most="300 in",
            example="72in 1.5mm; 0 for a thread that is not known",
        ),
    ),
}
