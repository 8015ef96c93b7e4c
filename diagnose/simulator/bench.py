"""The machine on which a technician stands: asked for any state it can be brought into, each worked out once."""

from __future__ import annotations

from copy import deepcopy
from dataclasses import replace
from functools import cached_property

from diagnose.simulator.control import starts
from diagnose.simulator.moment import Moment, moment_of
from diagnose.simulator.parts import Tank, Thermostat
from diagnose.simulator.plant import Plant
from diagnose.simulator.senses import Answer, Senses
from diagnose.simulator.service import Sample, Samples, Service, serve, warming
from diagnose.simulator.state import State

__all__ = ["Bench"]


class Bench:
    """One plant as it is now, run through half an hour of service, and what can be asked of it.

    `service` is that run; `rinsing` the moment at its end with a rack in the final rinse; `heating` the same with every
    thermostat calling; `resting` the machine filled and hot, not running; `filling` a start from empty. `senses` are
    those of the reading being taken.
    """

    def __init__(self, plant: Plant, rush: float, senses: Senses) -> None:
        self.plant, self.rush, self.senses = plant, rush, senses
        self.kept: dict[str, object] = {}  # what others worked out of it, once

    @cached_property
    def service(self) -> Service:
        """Half an hour of service from a hot start."""
        return serve(self.plant, rush=self.rush)

    @cached_property
    def filling(self) -> Samples:
        """An hour from empty: filling and heating up."""
        return warming(self.plant)

    @cached_property
    def late(self) -> list[Sample]:
        """The samples of the last ten minutes of service."""
        return [s for s in self.service.samples if s.time >= self.service.state.time - 600.0]

    @cached_property
    def rinsing(self) -> Moment:
        """The end of service with a rack held in the final rinse until all is steady there."""
        return self._at(self.service.state, rack=True)

    @cached_property
    def heating(self) -> Moment:
        """The end of service, a rack in the rinse and every thermostat that can call calling."""
        state = self.service.state
        calls = {n: c.stuck is not False for n, c in self._controls().items()}
        return self._at(replace(state, calls=calls), rack=True)

    @cached_property
    def resting(self) -> Moment:
        """Filled and hot, not running, heaters as their thermostats have them."""
        return self._at(replace(self.service.state, running=False), rack=False)

    @cached_property
    def restarted(self) -> Moment:
        """The end of service, overloads reset and started anew, a rack in the rinse: it runs a minute at least."""
        runs = starts(self.plant)
        return self._at(replace(self.service.state, running=runs, tripped=set(), stalled=set()), rack=True)

    def running_amps(self, motor: str) -> tuple[float, ...]:
        """Line currents of a motor just after its overload was reset, [A]."""
        return self.restarted.standing.motors[motor].amps

    @cached_property
    def rested(self) -> State:
        """Ten minutes after service: running, heat on, without a rack."""
        run = Service(self.plant, deepcopy(self.service.state), 0.0)
        run.advance(600.0)
        return run.state

    def _at(self, state: State, rack: bool) -> Moment:
        return moment_of(self.plant, state, rack)

    def _controls(self) -> dict[str, Thermostat]:
        return {"booster": self.plant.booster.thermostat, **{n: t.thermostat for n, t in self.plant.tanks.items()}}

    @cached_property
    def rinse_trace(self) -> list[Sample]:
        """The late samples that were taken while water flowed at the final rinse."""
        return [s for s in self.late if s.moment.rinsing]

    @cached_property
    def manifold(self) -> float:
        """Temperature at the final-rinse manifold while it rinses in late service, [K]; the room's where never."""
        trace = self.rinse_trace
        if not trace:
            return self.plant.air.room
        warm = sorted(s.moment.temperatures["manifold"] for s in trace)
        return warm[len(warm) // 2]

    @cached_property
    def rinse_panel(self) -> float:
        """What the panel's final-rinse thermometer shows while rinsing in late service, [K]."""
        line = self.plant.rinse
        if line.thermometer_stuck is not None:
            return line.thermometer_stuck
        warm = sorted(s.thermometer for s in self.rinse_trace) or [self.plant.air.room]
        return warm[len(warm) // 2] + line.thermometer_offset

    def temperature(self, tank: str) -> float:
        """Of a tank's water over late service, [K]: the mean."""
        return sum(s.moment.temperatures[tank] for s in self.late) / len(self.late)

    def dial(self, tank: str) -> float:
        """What a tank's panel thermometer shows, [K]."""
        part: Tank = self.plant.tanks[tank]
        return part.dial_stuck if part.dial_stuck is not None else self.temperature(tank) + part.dial_offset

    def sign(self, name: str) -> float:
        """How marked a sign is, 0 to 1."""
        return self.plant.signs.get(name, 0.0)

    # What a look hands back.

    def value(self, instrument: str, value: float) -> Answer:
        """One figure read with an instrument."""
        return Answer({"": self.senses.measure(instrument, value)})

    def each(self, instrument: str, **values: float) -> Answer:
        """Figures by place read with an instrument: `each("clamp meter", L1=.., L2=..)`."""
        return self.values(instrument, values)

    def values(self, instrument: str, values: dict[str, float]) -> Answer:
        """Figures by place read with an instrument."""
        return Answer({place: self.senses.measure(instrument, v) for place, v in values.items()})

    def seen(self, truth: str, *instead: str, sure: float = 0.95) -> Answer:
        """What is seen, heard or felt, with what it may be mistaken for."""
        return Answer(outcome=self.senses.see(truth, instead, sure))

    def noticed(self, sign: str, present: str, absent: str, sure: float = 0.95) -> Answer:
        """Whether a sign of the plant is noticed."""
        return Answer(outcome=self.senses.notice(self.sign(sign), present, absent, sure))

    def worst(self, found: dict[str, float], sound: str, sure: float = 0.95) -> Answer:
        """The most marked outcome of those found, or else `sound`, which is seldom taken for anything else.

        Looked for on purpose, a thing half as marked as it can be is as good as seen.
        """
        name = max(found, key=lambda each: found[each])
        if found[name] < 0.12:
            return Answer(outcome=self.senses.see(sound, list(found), sure=1.0 - (1.0 - sure) / 5))
        return Answer(outcome=self.senses.notice(min(1.0, 2.2 * found[name]), name, sound, sure))

    def strongest(self, otherwise: str, sure: float = 0.95, **signs: str) -> Answer:
        """The outcome of the sign that is most marked, `otherwise` where none is.

        `signs` names outcomes by sign, blanks written as underscores: `rinse_jets_limed="white_holes"`.
        """
        found = max(signs, key=lambda name: self.sign(name.replace("_", " ")))
        marked = self.sign(found.replace("_", " "))
        return Answer(outcome=self.senses.notice(marked, signs[found], otherwise, sure))
