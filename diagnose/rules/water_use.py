"""Gallons a rack by the water meter, against what rinse flow and rinse time make."""

from __future__ import annotations

import math
from dataclasses import dataclass

from diagnose.formulas import said, system_of
from diagnose.model import Finding, Reading
from diagnose.physics.conveyor import arm_held_time
from diagnose.rules.bands import normal_share
from diagnose.rules.conveyor_bar_pawls import speed_now
from diagnose.rules.facts import Expected, Facts, Silent
from diagnose.rules.instruments import spread
from diagnose.rules.rinse_arms import flow_now
from diagnose.rules.told import plates_told, reading_told, shown
from diagnose.units import Quantity

__all__ = ["expected_per_rack", "per_rack"]

RACK, RUN = "water_use.per_rack", "rinse_actuator.rinse_run"
MORE_FROM = 0.25  # a quarter over what flow and time make is too much; judgement
PLATE_ERROR = 0.10  # of flow times time, both from the plate; judgement
_PLATE = ("rinse_per_rack", "rinse_flow", "rack_length", "conveyor_speed")


@dataclass(frozen=True)
class _Rinse:
    """Water one rack should take: SI volume, relative error, how it was reckoned, and the readings behind it."""

    volume: float
    error: float
    words: tuple[str, ...]
    read: tuple[Reading, ...] = ()


def per_rack(facts: Facts) -> Finding | Silent | None:
    """Judge the water a rack takes by what the rinse's flow and its time make of it.

    Purpose: more than the plate's may be the rinse itself, by flow, pressure or time as they were measured; more
    than even these make goes elsewhere: fill, drain or another consumer on the meter.
    Formula: V = Q t, from the plate first (t = rack length / speed), then from what was measured; a quarter over is
    too much.
    Source: conservation of volume; plate; a quarter is judgement.
    Fires: two_tank_electric_208 (rinse_flow = 4.2 gpm, rack_length = 20 in, conveyor_speed = 5.8 ft/min):
      water_use.per_rack = 1.2 gal -> as_plate
    Fires: two_tank_electric_208 (rinse_flow = 4.2 gpm): water_use.per_rack = 2.4 gal -> more
    Fires: two_tank_electric_208 (rinse_flow = 4.2 gpm, rinse_pressure = 20 psi): water_use.per_rack = 2.4 gal;
      rinse_gauge.flow_pressure = 20 psi; rinse_actuator.rinse_run = 34 s -> rinse_takes_it
    Fires: two_tank_electric_208 (rinse_flow = 4.2 gpm, rinse_pressure = 20 psi): water_use.per_rack = 2.4 gal;
      rinse_gauge.flow_pressure = 20 psi; rinse_actuator.rinse_run = 17 s -> elsewhere
    Silent: two_tank_electric_208: rinse_actuator.rinse_run = 17 s
    """
    reading, check = facts.fresh(RACK), facts.check(RACK)
    if reading is None or check is None:
        return None
    plate, now = _of_plate(facts), _of_readings(facts)
    if plate is None:
        return Silent(f"{check.title}: needs the rinse's flow, the rack's length and the conveyor's speed")
    own = spread(check, reading.value, reading) / max(reading.value.value, 1e-9)
    over = _over(reading, plate, own)
    weights = {"as_plate": 1 - over}
    if now is None:
        weights["more"] = over
    else:
        beyond = min(_over(reading, now, own), over)
        weights |= {"rinse_takes_it": over - beyond, "elsewhere": beyond}
    told = now or plate
    share = reading.value.si / told.volume
    working = [
        *plate.words,
        *(now.words if now is not None else ()),
        f"Read: {reading.value}, {share:.0%} of {_gallons(reading, told)}; a quarter more is too much.",
        *facts.assumed(*_PLATE),
    ]
    says = _SAYS[max(weights, key=lambda o: weights[o])]
    return facts.conclude(RACK, weights, RACK, [reading], told.read, working, says)


def _over(reading: Reading, rinse: _Rinse, own: float) -> float:
    """How sure it is that a quarter more was used than `rinse` makes."""
    ratio = reading.value.si / rinse.volume
    return normal_share((ratio - 1 - MORE_FROM) / (math.hypot(own, rinse.error) * max(ratio, 1.0)))


def _gallons(reading: Reading, rinse: _Rinse) -> str:
    return shown(rinse.volume, "volume", reading.value.unit.symbol)


def _of_plate(facts: Facts) -> _Rinse | None:
    """Water a rack takes by the plate: its own figure, else flow times the time a rack takes to pass."""
    given = facts.plate("rinse_per_rack")
    if given is not None and given.si > 0:
        return _Rinse(given.si, PLATE_ERROR, plates_told(facts, "rinse_per_rack"))
    flow, rack, speed = (facts.plate(name) for name in _PLATE[1:])
    if flow is None or rack is None or speed is None or min(flow.si, rack.si, speed.si) <= 0:
        return None
    time = arm_held_time(rack.si, 0.0, 0.0, speed.si)
    return _Rinse(flow.si * time, PLATE_ERROR, _worked(facts, flow.si, time, "by the plate", rack.si, speed.si))


def _of_readings(facts: Facts) -> _Rinse | None:
    """Water a rack takes by flow, pressure or time as measured; None where none of them was."""
    flow, run, speed, rack = flow_now(facts), facts.now(RUN), speed_now(facts), facts.plate("rack_length")
    check = facts.check(RUN)
    if flow is None or not (flow.consults or run is not None):
        return None
    if run is not None and check is not None and run.value.si > 0:
        time, error = run.value.si, spread(check, run.value, run) / run.value.value
        words = _worked(facts, flow.value, time, f"flow {flow.origin}, time measured")
        read: tuple[Reading, ...] = (*flow.consults, run)
    elif rack is not None and not isinstance(speed, Silent):
        time, error = arm_held_time(rack.si, 0.0, 0.0, speed.speed), speed.sigma / speed.speed
        words = _worked(facts, flow.value, time, f"flow {flow.origin}", rack.si, speed.speed)
        read = (*flow.consults, *speed.read)
    else:
        return None
    return _Rinse(flow.value * time, math.hypot(flow.error, error), words, read)


def _worked(
    facts: Facts, flow: float, time: float, how: str, rack: float | None = None, speed: float | None = None
) -> tuple[str, ...]:
    """`4.2 gpm × 17.2 s ÷ 60 = 1.21 gal (by the plate)`, with the time worked out where it was not read."""
    plate = facts.plate("rinse_flow")
    system = system_of(plate.unit) if plate is not None else "us"
    unit, volume = ("gpm", "gal") if system == "us" else ("L/min", "L")
    lines: tuple[str, ...] = ()
    if rack is not None and speed is not None:
        lines = tuple(said("rinse-time", system, rack=rack, overlap=0.0, delay=0.0, speed=speed))
    product = shown(flow * time, "volume", volume)
    return (*lines, f"{shown(flow, 'flow', unit)} × {shown(time, 'time', 's')} ÷ 60 = {product} ({how}).")


def expected_per_rack(facts: Facts, check: str) -> Expected | None:
    """Gallons a rack by the readings so far, else by the plate."""
    rinse = _of_readings(facts) or _of_plate(facts)
    spec = facts.book.checks[check].reading
    if rinse is None or spec is None:
        return None
    plate = facts.plate("rinse_flow")
    unit = "L" if plate is not None and system_of(plate.unit) == "si" else spec.unit
    wanted = Quantity.of_si(rinse.volume, "volume", unit)
    most = Quantity(wanted.value * (1 + MORE_FROM), wanted.unit)
    working = (
        *plates_told(facts, *_PLATE),
        *(line for reading in rinse.read for line in reading_told(facts, reading)),
        *rinse.words,
        "A quarter more counts as too much (judgement).",
    )
    line = f"about {shown(rinse.volume, 'volume', unit, 2)} a rack"
    return Expected((line,), None, most, facts.assumed(*_PLATE), "rinse flow times rinse time", working)


_SAYS = {
    "as_plate": "A rack takes what flow and time of the plate make: nothing runs away beside the rinse.",
    "more": "A rack takes more than the plate's: measure the rinse's flow and seconds to say whether the rinse does.",
    "rinse_takes_it": "The rinse itself takes it, by its flow or its seconds as measured.",
    "elsewhere": "More than the rinse as measured makes: it goes elsewhere, fill, drain or another consumer.",
}
