"""Where faults, looks and complaints are entered: plain ids, so that the physics never sees the knowledge."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field

from diagnose.simulator.bench import Bench
from diagnose.simulator.plant import Plant
from diagnose.simulator.plate import Plate
from diagnose.simulator.senses import Answer

__all__ = ["COMPLAINTS", "FAULTS", "LOOKS", "Fault", "complaint", "fault", "look"]

Traits = Mapping[str, tuple[object, ...]]


@dataclass(frozen=True)
class Fault:
    """What can be wrong: `apply` changes the plant by a severity of 0 (barely a complaint) to 1 (gross).

    `physics` explains it in three sentences. `onset` is how it comes: suddenly, slowly, installed (so since it was
    connected), comes and goes; `after` the kind of work it follows, if any.
    """

    id: str
    apply: Callable[[Plant, float], None]
    physics: tuple[str, str, str]
    onset: str = "suddenly"
    after: str = ""
    traits: Traits = field(default_factory=dict)

    def fits(self, plate: Plate) -> bool:
        """Whether the fault can be on this machine."""
        return all(plate.traits.get(name) in wanted for name, wanted in self.traits.items())


@dataclass(frozen=True)
class Look:
    """A check that can be read: what it gives on a bench, and on which machines."""

    id: str
    read: Callable[[Bench], Answer]
    traits: Traits = field(default_factory=dict)
    there: Callable[[Bench], bool] | None = None  # whether this machine has the part at all, where the plate is silent

    def fits(self, plate: Plate) -> bool:
        """Whether it can be read on this machine."""
        return all(plate.traits.get(name) in wanted for name, wanted in self.traits.items())


@dataclass(frozen=True)
class Complaint:
    """What the kitchen would say: `strength` is how loudly, 0 for not at all."""

    id: str
    strength: Callable[[Bench], float]
    traits: Traits = field(default_factory=dict)

    def fits(self, plate: Plate) -> bool:
        """Whether it can arise on this machine."""
        return all(plate.traits.get(name) in wanted for name, wanted in self.traits.items())


FAULTS: dict[str, Fault] = {}
LOOKS: dict[str, Look] = {}
COMPLAINTS: dict[str, Complaint] = {}


def fault(
    name: str, physics: tuple[str, str, str], onset: str = "suddenly", after: str = "", **traits: tuple[object, ...]
) -> Callable[[Callable[[Plant, float], None]], Callable[[Plant, float], None]]:
    """Enter a fault; the function decorated changes the plant by a severity."""

    def enter(apply: Callable[[Plant, float], None]) -> Callable[[Plant, float], None]:
        _new(FAULTS, name)
        FAULTS[name] = Fault(name, apply, physics, onset, after, traits)
        return apply

    return enter


def look(
    name: str, there: Callable[[Bench], bool] | None = None, **traits: tuple[object, ...]
) -> Callable[[Callable[[Bench], Answer]], Callable[[Bench], Answer]]:
    """Enter a check that can be read; the function decorated reads it, `there`: where the machine has that part."""

    def enter(read: Callable[[Bench], Answer]) -> Callable[[Bench], Answer]:
        _new(LOOKS, name)
        LOOKS[name] = Look(name, read, traits, there)
        return read

    return enter


def complaint(
    name: str, **traits: tuple[object, ...]
) -> Callable[[Callable[[Bench], float]], Callable[[Bench], float]]:
    """Enter a complaint; the function decorated says how loudly the kitchen says it."""

    def enter(strength: Callable[[Bench], float]) -> Callable[[Bench], float]:
        _new(COMPLAINTS, name)
        COMPLAINTS[name] = Complaint(name, strength, traits)
        return strength

    return enter


def _new(entered: Mapping[str, object], name: str) -> None:
    if name in entered:
        raise ValueError(f"{name} is entered twice")
