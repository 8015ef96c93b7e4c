"""The machine in time: racks come, thermostats switch, overloads trip; fixed steps of Heun's method."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass, field

from diagnose.physics.protection import PICKUP
from diagnose.simulator.control import stalls, starts
from diagnose.simulator.flowing import Flows
from diagnose.simulator.moment import Moment, Standing, moment_of
from diagnose.simulator.parts import Thermostat
from diagnose.simulator.plant import Plant
from diagnose.simulator.state import DENSITY, Ledger, State, start_state

__all__ = ["Sample", "Samples", "Service", "serve", "warm_up", "warming"]

STEP = 2.0  # s; the error of the scheme is shown by tests/unit/simulator
_WARMING_STEP = 5.0  # s while nothing runs
_RESET = 0.3  # of the trip heat, where an overload resets: judgement
_CALLS_WATER = 0.92  # level at which filling begins, over that at which it ends: judgement


@dataclass(frozen=True)
class Sample:
    """What was so at one time of the run."""

    time: float
    moment: Moment
    thermometer: float  # K at the panel's final-rinse sensor
    levels: dict[str, float]  # over the volume
    calls: dict[str, bool]


@dataclass
class Service:
    """A run of the machine: where it stands, what was booked, what was seen on the way."""

    plant: Plant
    state: State
    rack_rate: float  # racks a second that come
    ledger: Ledger = field(default_factory=Ledger)
    samples: list[Sample] = field(default_factory=list)
    known: dict[object, Standing] = field(default_factory=dict)
    flows: dict[int, Flows] = field(default_factory=dict)  # by the standing known that they follow from
    watch: Callable[[Service], None] | None = None

    def advance(self, seconds: float, step: float = STEP, every: float = 10.0) -> None:
        """Run on for so many seconds; a sample each `every` seconds."""
        for _ in self.advancing(seconds, step, every):
            pass

    def advancing(self, seconds: float, step: float = STEP, every: float = 10.0) -> Iterator[Sample]:
        """The same, only as far as the samples are asked for."""
        steps = max(1, round(seconds / step))
        next_sample = self.state.time
        for _ in range(steps):
            now = self.moment()
            if self.state.time >= next_sample - 1e-9:
                yield self._sample(now)
                next_sample += every
            self._step(now, step)
            self._switch(step)

    def moment(self) -> Moment:
        """What every part does now."""
        return moment_of(self.plant, self.state, self.rack_in_rinse(), self.known)

    def rack_in_rinse(self) -> bool:
        """Whether a rack holds the actuator of the final rinse at this time."""
        state, belt = self.state, self.plant.conveyor
        if not state.running or self.rack_rate <= 0.0:
            return False
        length = self.plant.plate["rack_length"] * self.plant.rinse.actuator_share
        held = length / max(belt.speed * belt.pace, 1e-3)
        return state.time % (1.0 / self.rack_rate) < held

    def _step(self, now: Moment, step: float) -> None:
        flows = self.flows.get(id(now.standing))
        if flows is None:
            flows = self.flows[id(now.standing)] = Flows(self.plant, now.standing, self.rack_rate)
        at, half = self.state.flowing, step / 2
        first = flows.rates(at, now, self.ledger, half)
        ahead = {name: value + step * first[name] for name, value in at.items()}
        second = flows.rates(ahead, now, self.ledger, half)
        self.state.flowing = {name: value + half * (first[name] + second[name]) for name, value in at.items()}
        self.state.time += step

    def _switch(self, step: float) -> None:
        state, plant = self.state, self.plant
        for name, tank in plant.tanks.items():
            state.calls[name] = _call(tank.thermostat, state.flowing[f"sensor {name}"], state.calls[name])
            level = state.flowing[f"mass {name}"] / (tank.volume * DENSITY)
            if tank.says_low:
                state.filling[name] = True
            elif level >= tank.fills_to:
                state.filling[name] = False
            elif level < _CALLS_WATER * tank.fills_to:
                state.filling[name] = True
        booster = plant.booster
        state.calls["booster"] = _call(booster.thermostat, state.flowing["sensor booster"], state.calls["booster"])
        if state.flowing["booster"] + booster.heater.high_limit_offset > booster.heater.high_limit:
            state.limited["booster"] = True
        for name, tank in plant.tanks.items():
            if state.temperature(name) + tank.heater.high_limit_offset > tank.heater.high_limit:
                state.limited[name] = True
        for name in plant.motors:
            heat = state.flowing[f"bimetal {name}"]
            if name not in state.tripped and heat >= PICKUP**2:
                state.tripped.add(name)
                state.trips.append((state.time, name))
            elif name in state.tripped and heat < _RESET * PICKUP**2:
                state.tripped.discard(name)
                if stalls(plant, name):
                    state.stalled.add(name)
        if self.watch is not None:
            self.watch(self)

    def _sample(self, now: Moment) -> Sample:
        plant, state = self.plant, self.state
        levels = {n: state.flowing[f"mass {n}"] / (t.volume * DENSITY) for n, t in plant.tanks.items()}
        self.samples.append(Sample(state.time, now, state.flowing["thermometer"], levels, dict(state.calls)))
        return self.samples[-1]


class Samples:
    """The samples of a run that goes on only as far as somebody looks; whoever looks again sees the same."""

    def __init__(self, run: Iterator[Sample]) -> None:
        self._run, self._seen = run, list[Sample]()

    def __iter__(self) -> Iterator[Sample]:
        nth = 0
        while True:
            if nth == len(self._seen):
                further = next(self._run, None)
                if further is None:
                    return
                self._seen.append(further)
            yield self._seen[nth]
            nth += 1


def _call(control: Thermostat, sensor: float, called: bool) -> bool:
    if control.stuck is not None:
        return control.stuck
    felt = sensor + control.offset
    if felt < control.setting - control.width / 2:
        return True
    return called and felt < control.setting + control.width / 2


def serve(plant: Plant, minutes: float = 30.0, rush: float = 0.85, step: float = STEP) -> Service:
    """A hot machine through so many minutes of service, racks coming at a share `rush` of the plate's rate."""
    state = start_state(plant, hot=True)
    state.running = starts(plant)
    service = Service(plant, state, rush * plant.plate["racks_per_hour"])
    service.advance(minutes * 60.0, step)
    return service


def warm_up(plant: Plant, minutes: float = 60.0, step: float = _WARMING_STEP) -> Service:
    """An empty machine filled and heated, not running, for so many minutes."""
    service = Service(plant, start_state(plant, hot=False), 0.0)
    service.advance(minutes * 60.0, step, every=30.0)
    return service


def warming(plant: Plant, minutes: float = 60.0) -> Samples:
    """The samples of `warm_up`, worked out only as far as they are looked at."""
    service = Service(plant, start_state(plant, hot=False), 0.0)
    return Samples(service.advancing(minutes * 60.0, _WARMING_STEP, every=30.0))
