"""Instruments, eyes, ears and hands: what is so becomes what is read, with stated errors."""

from __future__ import annotations

import random
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field

__all__ = ["ACCURACY", "Answer", "CannotReadError", "Senses"]

# Kind of instrument -> largest error: absolute in SI of its quantity, and as a share of the reading. Common practice
# for instruments of the trade in fair order; a reading is drawn evenly within it.
ACCURACY: dict[str, tuple[float, float]] = {
    "reference thermometer": (0.5, 0.0),
    "panel thermometer": (1.0, 0.0),
    "infrared thermometer": (1.5, 0.0),
    "clamp meter": (0.03, 0.02),
    "small current clamp": (0.005, 0.02),
    "voltmeter": (0.3, 0.007),
    "fine probes": (0.003, 0.02),  # V, on its millivolt range
    "ohmmeter": (0.05, 0.01),
    "insulation tester": (0.0, 0.07),
    "leakage clamp": (2e-4, 0.03),
    "device tester": (0.01, 0.04),
    "test gauge": (2500.0, 0.0),
    "panel gauge": (7000.0, 0.0),
    "wash gauge": (700.0, 0.015),
    "dial read": (0.8, 0.0),  # K, a setting dial
    "needle read": (3000.0, 0.0),  # how well a sound needle is read
    "two thermometers": (0.7, 0.0),
    "manometer": (8.0, 0.01),
    "gas meter": (200.0, 0.025),  # W, dial and watch
    "flue thermometer": (5.0, 0.0),
    "flue analyser": (5.0, 0.05),
    "bucket and watch": (0.0, 0.03),
    "watch": (0.5, 0.01),
    "tape": (0.0008, 0.003),
    "level": (0.0005, 0.0),
    "level mark": (0.0006, 0.02),
    "anemometer": (0.02, 0.04),
    "vent traverse": (0.001, 0.05),
    "sling thermometers": (0.4, 0.0),
    "room manometer": (0.7, 0.02),
    "hood traverse": (0.001, 0.08),
    "hygrometer": (0.0, 0.03),
    "test strip": (4.0, 0.1),
    "titration kit": (0.0, 0.06),
    "ph paper": (0.3, 0.0),
    "measuring glass": (5e-8, 0.05),
    "water meter": (0.0, 0.02),
    "meter's small hand": (3e-7, 0.02),  # m3/s over a quarter of an hour
    "vibration meter": (0.5, 0.01),
    "feeler gauge": (5e-5, 0.02),
    "scale": (0.0, 0.02),
    "pull scale": (2.0, 0.05),  # N
    "steel rule": (0.0004, 0.0),
    "counter": (0.0, 0.0),
}


class CannotReadError(LookupError):
    """This check has no way to be read on the simulated machine."""


@dataclass(frozen=True)
class Answer:
    """A reading: values by place in SI ("" for the only one), or the id of what was seen."""

    values: Mapping[str, float] = field(default_factory=dict)
    outcome: str | None = None


class Senses:
    """The technician's instruments and eyes on one reading, with the chance that belongs to it.

    `lies` are instruments that are off by so much, in SI of their quantity.
    """

    def __init__(self, seed: str, lies: Mapping[str, float]) -> None:
        self.chance = random.Random(seed)
        self.lies = lies

    def measure(self, instrument: str, value: float) -> float:
        """What the instrument shows where `value` is so, both in SI. KeyError for an unknown instrument."""
        absolute, share = ACCURACY[instrument]
        return value + self.lies.get(instrument, 0.0) + (absolute + share * abs(value)) * self.chance.uniform(-1.0, 1.0)

    def see(self, truth: str, instead: Sequence[str] = (), sure: float = 0.95) -> str:
        """What eyes, ears or hands report: the truth with a probability of `sure`, else any of `instead`, evenly."""
        if not instead or self.chance.random() < sure:
            return truth
        return self.chance.choice([each for each in instead if each != truth] or [truth])

    def notice(self, sign: float, present: str, absent: str, sure: float = 0.95, threshold: float = 0.15) -> str:
        """Whether a sign is noticed: `sign` says how marked it is, 0 to 1; below the threshold it is overlooked.

        A weak sign is seen less surely: half as sure at the threshold as when it is fully marked.
        """
        if sign < threshold:
            return self.see(absent, [present], sure=1.0 - (1.0 - sure) / 4)
        seen = sure * (0.7 + 0.3 * min(1.0, sign))
        return present if self.chance.random() < seen else absent
