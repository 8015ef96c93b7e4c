"""An exercise from a seed: faults that fit a machine are tried until the kitchen complains as the level wants.

Level 1 is one common fault, gross; 2 one fault of those met now and then; 3 any fault, also slight; 4 two faults that
bring the same complaint; 5 the same with one of the technician's instruments off.
"""

from __future__ import annotations

import random
from collections.abc import Sequence

import msgspec

from diagnose.model import Book, fits
from diagnose.practice.exercise import Exercise
from diagnose.practice.port import Simulated, World, figures_of, machine_of, simulate, simulator_here
from diagnose.practice.story import tell
from diagnose.units import show_number

__all__ = ["LEVELS", "NoExerciseError", "causes_under", "draw_plate", "make"]

LEVELS = {
    1: "one common fault, plain to see",
    2: "one fault of those met now and then",
    3: "one fault, common or rare, plain or slight",
    4: "two faults behind one complaint",
    5: "two faults behind one complaint, and an instrument of yours that is off",
}
_TRIES = 60  # draws before giving up; each is a machine run once or a few times
# How often a cause must be met, at least, to be drawn on a level; judgement, by the words of the scale.
_AT_LEAST = {1: "common", 2: "occasional", 3: "very rare", 4: "occasional", 5: "occasional"}
# Severity from and to, by level: judgement.
_SEVERITY = {1: (0.8, 1.0), 2: (0.6, 1.0), 3: (0.35, 0.9), 4: (0.6, 1.0), 5: (0.6, 1.0)}
# How far each plate figure may lie from the type's, as factors: judgement. Never more water than the type heats.
_SPREAD = {
    "rinse_flow": (0.92, 1.0),
    "wash_tank_volume": (0.92, 1.08),
    "rinse_tank_volume": (0.92, 1.08),
    "booster_volume": (0.9, 1.1),
    "fill_flow": (0.92, 1.1),
    "vent_entrance": (0.95, 1.05),
    "vent_exit": (0.95, 1.05),
    "run_on": (0.8, 1.5),
}
# Instruments that may be off and by how much, in SI, either way: five to nine times what they may be off when sound;
# judgement. In kelvin, pascal and volts.
_LIARS = {"reference thermometer": (3.0, 5.0), "test gauge": (25000.0, 45000.0), "voltmeter": (14.0, 24.0)}


class NoExerciseError(LookupError):
    """No exercise of this kind can be made; the message says what would do."""


def make(book: Book, seed: int, level: int, complaint: str | None = None, world: World | None = None) -> Exercise:
    """The exercise of this seed and level, and of this complaint where one is named: the same at every call.

    Raises NoExerciseError.
    """
    if level not in LEVELS:
        raise NoExerciseError(f"there is no level {level}; levels go from 1 to {max(LEVELS)}")
    if complaint is not None and complaint not in book.complaints:
        raise NoExerciseError(f"nothing is complained of by the name of {complaint[:40]!r}")
    world = world or simulator_here()
    if complaint is not None and world.complaints is not None and complaint not in world.complaints:
        raise NoExerciseError(f"{complaint} can't be simulated; take another complaint")
    return _Maker(book, seed, level, complaint, world).exercise()


class _Maker:
    def __init__(self, book: Book, seed: int, level: int, complaint: str | None, world: World) -> None:
        self.book, self.seed, self.level, self.wanted, self.world = book, seed, level, complaint, world
        self.chance = random.Random(f"exercise {seed} {level} {complaint or ''}")
        self._under = {name: causes_under(book, name) for name in book.complaints}

    def exercise(self) -> Exercise:
        for _ in range(_TRIES):
            drawn = self._draw()
            made = drawn and self._accepted(drawn)
            if made:
                return made
        of = f" with the complaint {self.wanted}" if self.wanted else ""
        remedy = "try another seed or level"
        raise NoExerciseError(f"no exercise of level {self.level}{of} came of seed {self.seed}; {remedy}")

    def _draw(self) -> Exercise | None:
        """A machine with faults, not yet looked at."""
        type_id = self.chance.choice(sorted(self.book.machines))
        own = draw_plate(self.book, type_id, self.chance)
        faults = self._faults(type_id, own)
        if not faults:
            return None
        low, high = _SEVERITY[self.level]
        hidden = [(name, round(self.chance.uniform(low, high), 2)) for name in faults]
        return Exercise(
            seed=self.seed, level=self.level, machine=type_id, own=own, faults=hidden, complaint=self.wanted or ""
        )

    def _faults(self, type_id: str, own: dict[str, str]) -> Sequence[str]:
        machine = machine_of(self.book, type_id, own)
        figures = figures_of(machine)
        least = self.book.frequency(_AT_LEAST[self.level])
        here = [
            cause
            for cause in sorted(self.world.faults)
            if cause in self.book.causes
            and fits(machine, self.book.causes[cause].fits)
            and self.world.fits(cause, machine.type.traits, figures)
            and self.book.frequency(self.book.causes[cause].how_often) >= least
            and (self.level > 1 or not self.book.causes[cause].no_fault)
        ]
        complaints = [self.wanted] if self.wanted else self._complaints(type_id)
        under = [[cause for cause in here if cause in self._under[complaint]] for complaint in complaints]
        count = 2 if self.level >= 4 else 1
        enough = [each for each in under if len(each) >= count]
        return self.chance.sample(self.chance.choice(enough), count) if enough else ()

    def _complaints(self, type_id: str) -> list[str]:
        machine = machine_of(self.book, type_id, {})
        return sorted(c.id for c in self.book.complaints.values() if fits(machine, c.fits))

    def _accepted(self, drawn: Exercise) -> Exercise | None:
        """The exercise with its complaint and story where the kitchen complains as it should, else None."""
        sim = simulate(self.world, self.book, drawn)
        said = self._said(drawn, sim)
        causes = [name for name, _ in drawn.faults]
        fitting = [c for c in said if self._under[c].issuperset(causes)]
        if not fitting or (self.wanted and self.wanted not in fitting):
            return None
        if len(causes) > 1 and not all(self._alone(drawn, name) for name in causes):
            return None
        first = self.wanted or fitting[0]
        said = [first, *(c for c in said if c != first)][:3]
        lies = self._lies(first, drawn, sim) if self.level >= 5 else []
        if self.level >= 5 and not lies:
            return None
        title, story = tell(self.book, self.seed, said, sim.context(), drawn.machine)
        return msgspec.structs.replace(drawn, lies=lies, complaint=first, story=story, title=title)

    def _readings(self, drawn: Exercise, checks: Sequence[str]) -> list[dict[str, float]]:
        """What these checks read on the machine, each for the first time."""
        sim = simulate(self.world, self.book, drawn)
        return [dict(sim.read(check).values) for check in checks]

    def _said(self, drawn: Exercise, sim: Simulated) -> list[str]:
        here = self._complaints(drawn.machine)
        return [c for c in sim.complaints() if c in here]

    def _alone(self, drawn: Exercise, name: str) -> bool:
        """Whether the kitchen would complain of this fault alone: else nothing would tell that it is left."""
        left = [(fault, severity) for fault, severity in drawn.faults if fault == name]
        single = msgspec.structs.replace(drawn, faults=left)
        return any(
            name in causes_under(self.book, c) for c in self._said(single, simulate(self.world, self.book, single))
        )

    def _lies(self, complaint: str, drawn: Exercise, sim: Simulated) -> list[tuple[str, float]]:
        """An instrument that the checks of this complaint use, and how far it is off."""
        machine = machine_of(self.book, drawn.machine, drawn.own)
        below = nodes_under(self.book, complaint)
        asked = [
            check.id
            for check in self.book.checks.values()
            if check.reading and fits(machine, check.fits) and sim.can_read(check.id) and below & set(check.looks_at)
        ]
        honest = self._readings(drawn, asked)
        liars = [
            name
            for name, (low, _) in _LIARS.items()
            if self._readings(msgspec.structs.replace(drawn, lies=[(name, low)]), asked) != honest
        ]
        if not liars:
            return []
        name = self.chance.choice(liars)
        low, high = _LIARS[name]
        return [(name, round(self.chance.choice((-1.0, 1.0)) * self.chance.uniform(low, high), 2))]


def draw_plate(book: Book, type_id: str, chance: random.Random) -> dict[str, str]:
    """Plate figures of one machine of a type, each drawn about the type's."""
    machine = machine_of(book, type_id, {})
    own = {}
    for name, (low, high) in _SPREAD.items():
        usual = machine.plate(name)
        factor = chance.uniform(low, high)
        if usual is not None:
            digits = 2 if name == "run_on" else 3
            own[name] = f"{show_number(usual.value * factor, digits)} {usual.unit.symbol}"
    return own


def causes_under(book: Book, complaint: str) -> frozenset[str]:
    """The causes a complaint can come of."""
    return frozenset(node for node in nodes_under(book, complaint) if node in book.causes)


def nodes_under(book: Book, complaint: str) -> frozenset[str]:
    """Events and causes below a complaint."""
    found: set[str] = set()
    waiting = [complaint]
    while waiting:
        fresh = set(book.children(waiting.pop())) - found
        found |= fresh
        waiting += fresh
    return frozenset(found)
