"""A simulated machine with hidden faults: complained of, read with instruments and eyes, repaired."""

from __future__ import annotations

import random
from collections import Counter
from collections.abc import Mapping, Sequence
from copy import copy

from diagnose.simulator.bench import Bench
from diagnose.simulator.control import SAID_STANDING, starts
from diagnose.simulator.plant import Plant
from diagnose.simulator.plate import Plate
from diagnose.simulator.registry import COMPLAINTS, FAULTS, LOOKS, Fault
from diagnose.simulator.senses import ACCURACY, Answer, CannotReadError, Senses

__all__ = ["Simulated"]

_RUSH = 0.85  # racks that come at the rush over the plate's, half-full ones: judgement
_HEAT_A_RACK = 170e3  # J of tank heat a rack wants of a single tank; with less, fewer are sent through: judgement
_SINCE = {
    "suddenly": ("today, suddenly", "days, suddenly"),
    "slowly": ("grew worse over weeks",),
    "installed": ("since it was connected",),
    "comes and goes": ("comes and goes",),
}
# No two sound machines are alike: each of these figures is drawn within the share given, at the same seed the same.
_SCATTER = 0.015


class Simulated:
    """One machine, its hidden faults and the technician's instruments.

    `faults` are pairs of id and severity (0 to 1), `lies` pairs of an instrument's kind (see `senses.ACCURACY`) and its
    error in SI. Raises ValueError for an unknown fault, one that can't be on this machine, or an unknown instrument.
    """

    def __init__(
        self,
        plate: Plate,
        faults: Sequence[tuple[str, float]] = (),
        seed: int = 0,
        lies: Sequence[tuple[str, float]] = (),
        rush: float | None = None,
    ) -> None:
        self.plate, self.seed = plate, seed
        self.rush = rush if rush is not None else _busy(plate)
        self.lies = dict(lies)
        unknown = next((each for each in self.lies if each not in ACCURACY), None)
        if unknown is not None:
            raise ValueError(f"no instrument {unknown!r}; there are {', '.join(ACCURACY)}")
        self._all = tuple(faults)
        self._faults = dict(faults)
        for name in self._faults:
            if name not in FAULTS:
                raise ValueError(f"no fault {name!r} can be simulated")
            if not FAULTS[name].fits(plate):
                raise ValueError(f"{name} can't be on this type of machine")
        self._read: Counter[str] = Counter()
        self._repairs = 0
        self._benches: dict[tuple[str, ...], Bench] = {}  # by what is still the matter
        self.bench = self._bench()

    def again(self) -> Simulated:
        """The same machine as the story begins, all faults there and nothing read; what it did is not run anew.

        Only for a machine whose parts nobody changed but by repairs.
        """
        fresh = copy(self)
        fresh._faults, fresh._read, fresh._repairs = dict(self._all), Counter(), 0
        fresh.bench = fresh._bench()
        return fresh

    def _bench(self) -> Bench:
        """The machine with the faults that are left; what was worked out of it before, by whomever, stays."""
        left = tuple(self._faults)
        if left not in self._benches:
            self._benches[left] = self._built()
            return self._benches[left]
        bench = copy(self._benches[left])
        bench.senses = Senses("", self.lies)
        return bench

    def _built(self) -> Bench:
        plant = Plant.built(self.plate)
        chance = random.Random(f"machine {self.seed}")
        plant.water.static *= 1.0 + 2 * _SCATTER * chance.uniform(-1.0, 1.0)
        plant.water.temperature += 1.0 * chance.uniform(-0.5, 1.0)
        plant.power.volts *= 1.0 + 0.7 * _SCATTER * chance.uniform(-1.0, 1.0)
        plant.air.room += 2.0 * chance.uniform(-1.0, 1.0)
        for motor in plant.motors.values():
            motor.load *= 1.0 + 2 * _SCATTER * chance.uniform(-1.0, 1.0)
        plant.conveyor.slips_at *= 1.0 + 3 * _SCATTER * chance.uniform(-1.0, 1.0)
        plant.conveyor.jam.gap *= 1.0 + 3 * _SCATTER * chance.uniform(-1.0, 1.0)
        for name, severity in self._faults.items():
            FAULTS[name].apply(plant, severity)
        return Bench(plant, self.rush, Senses("", self.lies))

    @property
    def present(self) -> tuple[str, ...]:
        """Faults that are still there."""
        return tuple(self._faults)

    def fault(self, name: str) -> Fault:
        """A fault by id; KeyError."""
        return FAULTS[name]

    def complaints(self) -> tuple[str, ...]:
        """What the kitchen says now, the worst first; nothing when all is well."""
        found = []
        runs = starts(self.bench.plant)
        for nth, each in enumerate(COMPLAINTS.values()):
            if each.fits(self.plate) and (runs or each.id in SAID_STANDING):
                strength = each.strength(self.bench)
                if strength > 0.0:
                    found.append((-strength, nth, each.id))
        return tuple(name for _, _, name in sorted(found))

    def context(self) -> Mapping[str, str]:
        """What the kitchen answers to the questions about the job as a whole; what it does not know is not there."""
        if not self._faults:
            return {}
        chance = random.Random(f"context {self.seed}")
        first = FAULTS[next(iter(self._faults))]
        told = {"since": chance.choice(_SINCE[first.onset])}
        if first.after:
            told["last_done"] = first.after
        elif chance.random() < 0.5:
            told["last_done"] = "nothing lately"
        return told

    def can_read(self, check: str) -> bool:
        """Whether a check can be read on this machine."""
        found = LOOKS.get(check)
        return found is not None and found.fits(self.plate) and (found.there is None or found.there(self.bench))

    def read(self, check: str) -> Answer:
        """Read a check: the same in the same place of the same story. Raises CannotReadError."""
        if not self.can_read(check):
            raise CannotReadError(check)
        nth = self._read[check]
        self._read[check] += 1
        self.bench.senses = Senses(f"{self.seed} {check} {nth} {self._repairs}", self.lies)
        return LOOKS[check].read(self.bench)

    def repair(self, cause: str) -> bool:
        """Repair a part: whether it was faulty. The machine then is run again."""
        if cause not in self._faults:
            return False
        del self._faults[cause]
        self._repairs += 1
        self.bench = self._bench()
        return True


def _busy(plate: Plate) -> float:
    """The share of the plate's racks that a rush brings: a crew sends no more through than the machine keeps hot."""
    if plate.has(tanks=1, tank_heat="electric", sanitising="hot water"):
        return min(_RUSH, _RUSH * plate.get("tank_power", 10e3) / plate["racks_per_hour"] / _HEAT_A_RACK)
    return _RUSH
