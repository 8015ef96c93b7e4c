"""The simulated machine as practice sees it: what can be asked of it, and how one is built from an exercise."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from typing import Protocol

from diagnose.model import PLATE_FIGURES, Book, Machine
from diagnose.practice.exercise import Exercise

__all__ = ["Answer", "Fault", "Simulated", "World", "figures_of", "machine_of", "simulate", "simulator_here"]

_BUILT = 4  # machines that are kept as they were run

Traits = Mapping[str, str | int | bool]
Amounts = tuple[tuple[str, float], ...]


class Answer(Protocol):
    """What a check shows: values in SI by place, or the outcome chosen."""

    @property
    def values(self) -> Mapping[str, float]: ...
    @property
    def outcome(self) -> str | None: ...


class Fault(Protocol):
    """A fault the machine can have."""

    @property
    def id(self) -> str: ...
    @property
    def physics(self) -> tuple[str, str, str]: ...
    @property
    def onset(self) -> str: ...
    @property
    def after(self) -> str: ...


class Simulated(Protocol):
    """A machine with its faults: readings, repairs, and what the kitchen says."""

    @property
    def present(self) -> tuple[str, ...]: ...
    def complaints(self) -> tuple[str, ...]: ...
    def context(self) -> Mapping[str, str]: ...
    def can_read(self, check: str, /) -> bool: ...
    def read(self, check: str, /) -> Answer: ...
    def repair(self, cause: str, /) -> bool: ...


@dataclass(frozen=True)
class World:
    """All faults by id, the checks that can be read at all, whether a fault fits a machine, and how to build one.

    `build` takes traits, plate figures in SI, faults with their severity, the seed, and instruments that are off.
    `complaints` are those its kitchen can say at all; None: not told.
    """

    faults: Mapping[str, Fault]
    readable: frozenset[str]
    fits: Callable[[str, Traits, Mapping[str, float]], bool]
    build: Callable[[Traits, Mapping[str, float], Amounts, int, Amounts], Simulated]
    complaints: frozenset[str] | None = None


def simulator_here() -> World:
    """The simulator of this house."""
    from diagnose.simulator import COMPLAINTS, FAULTS, READABLE, Plate, Simulated

    def fits(fault: str, traits: Traits, figures: Mapping[str, float]) -> bool:
        return FAULTS[fault].fits(Plate(traits, figures))

    built: dict[object, Simulated] = {}  # an exercise is played again and again: for the best path, for the debrief

    def build(traits: Traits, figures: Mapping[str, float], faults: Amounts, seed: int, lies: Amounts) -> Simulated:
        key = (tuple(sorted(traits.items())), tuple(sorted(figures.items())), faults, seed, lies)
        if key in built:
            return built[key].again()
        while len(built) >= _BUILT:
            del built[next(iter(built))]
        built[key] = Simulated(Plate(traits, figures), faults=faults, seed=seed, lies=lies)
        return built[key]

    return World(FAULTS, READABLE, fits, build, frozenset(COMPLAINTS))


def machine_of(book: Book, type_id: str, own: Mapping[str, str]) -> Machine:
    """The machine of an exercise, as in a job: its plate has every figure of its type, some of them its own."""
    kind = book.machines[type_id]
    return Machine("practice", kind, {**kind.plate, **own})


def figures_of(machine: Machine) -> dict[str, float]:
    """Its plate in SI."""
    plate = {name: machine.plate(name) for name in PLATE_FIGURES}
    return {name: quantity.si for name, quantity in plate.items() if quantity is not None}


def simulate(world: World, book: Book, exercise: Exercise) -> Simulated:
    """The machine of an exercise with all that is hidden in it, fresh."""
    machine = machine_of(book, exercise.machine, exercise.own)
    return world.build(
        machine.type.traits, figures_of(machine), tuple(exercise.faults), exercise.seed, tuple(exercise.lies)
    )
