"""A small stand-in for the simulated machine: three faults of a booster and its inlet, readings from a table."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field

from diagnose.practice.exercise import Exercise
from diagnose.practice.port import World

__all__ = ["ELEMENT", "INLET", "LINES", "OHMS", "PRESSURE", "THERMOMETER", "exercise", "world"]

ELEMENT, INLET = "booster_electric.element_open", "supply_water.heater_set_low"
LINES, OHMS = "booster_electric.line_amps", "booster_electric.terminal_ohms"
THERMOMETER, PRESSURE = "rinse_thermometer.reference_reading", "rinse_gauge.flow_pressure"
INCOMING = "supply_water.inlet_temperature"
_F, _ZERO_F = 5.0 / 9.0, 255.3722


@dataclass(frozen=True)
class FakeAnswer:
    values: Mapping[str, float] = field(default_factory=dict)
    outcome: str | None = None


@dataclass(frozen=True)
class FakeFault:
    id: str
    physics: tuple[str, str, str] = ("It is open.", "Two lines fall to 58 %.", "A third of the heat is gone.")
    onset: str = "suddenly"
    after: str = ""


class FakeMachine:
    """Rinse of 182 °F when sound; an open element takes a third of the rise, a cold inlet 30 F°."""

    def __init__(self, faults: tuple[tuple[str, float], ...], lies: tuple[tuple[str, float], ...]) -> None:
        self._faults = [name for name, _ in faults]
        self._lies = dict(lies)

    @property
    def present(self) -> tuple[str, ...]:
        return tuple(self._faults)

    def complaints(self) -> tuple[str, ...]:
        return ("rinse_cold",) if self._faults else ()

    def context(self) -> Mapping[str, str]:
        return {"since": "today, suddenly"} if self._faults else {}

    def can_read(self, check: str) -> bool:
        return check in READABLE

    def read(self, check: str) -> FakeAnswer:
        inlet = 110.0 if INLET in self._faults else 140.0
        rise = 28.0 if ELEMENT in self._faults else 42.0
        fahrenheit = {THERMOMETER: inlet + rise, INCOMING: inlet}
        if check in fahrenheit:
            lie = self._lies.get("reference thermometer", 0.0)
            return FakeAnswer({"": _ZERO_F + fahrenheit[check] * _F + lie})
        if check == LINES:
            amps = (48.0, 48.0, 83.0) if ELEMENT in self._faults else (83.0, 83.0, 83.0)
            return FakeAnswer(dict(zip(("L1", "L2", "L3"), amps, strict=True)))
        if check == OHMS:
            ohms = (8.65, 4.33, 4.33) if ELEMENT in self._faults else (2.88, 2.88, 2.88)
            return FakeAnswer(dict(zip(("T1-T2", "T2-T3", "T3-T1"), ohms, strict=True)))
        return FakeAnswer({"": 20 * 6894.757})

    def repair(self, cause: str) -> bool:
        if cause not in self._faults:
            return False
        self._faults.remove(cause)
        return True


READABLE = frozenset((LINES, OHMS, THERMOMETER, PRESSURE, INCOMING))


def world() -> World:
    faults = {name: FakeFault(name) for name in (ELEMENT, INLET)}
    return World(
        faults,
        READABLE,
        lambda name, traits, figures: traits["booster"] == "electric" and traits["phases"] == 3,
        lambda traits, figures, hidden, seed, lies: FakeMachine(hidden, lies),
    )


def exercise(*faults: str, lies: tuple[tuple[str, float], ...] = ()) -> Exercise:
    """One on the machine with two tanks at 208 V."""
    return Exercise(
        seed=7,
        level=1,
        machine="two_tank_electric_208",
        faults=[(name, 0.8) for name in faults],
        lies=list(lies),
        complaint="rinse_cold",
        story=["You are called to an invented canteen."],
        title="Final rinse too cold, an invented canteen",
    )
