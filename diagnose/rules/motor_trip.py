"""How soon an overload tripped, against what its class does with the current there is."""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import dataclass

from diagnose.formulas import said
from diagnose.model import Finding, Reading
from diagnose.physics.protection import PICKUP, setting_of_trip_time
from diagnose.physics.protection import trip_time as time_of_class
from diagnose.rules.bands import normal_share
from diagnose.rules.facts import Expected, Facts, Silent
from diagnose.rules.instruments import spread
from diagnose.rules.pump_motor import motor_of
from diagnose.units import Quantity, show_number

__all__ = ["STARTS", "expected_trip_time", "trip_time"]

# Check -> share of its heat at the trip that the overload has at the start, from and to. A relay can be reset when it
# has lost a tenth of it at the least, and half when one has to wait some minutes (judgement).
STARTS: Mapping[str, tuple[float, float]] = {
    "motor_overload.trip_time": (0.0, 0.0),
    "motor_overload.trip_time_hot": (0.5, 0.9),
}
CLASS = 10.0  # seconds; common practice where relay and plate do not say
QUICKEST = 0.4  # class 10 may trip from 4 s on: IEC 60947-4-1, secondary
SLACK = 0.25  # start, ambient and tolerance of the curve, as a relative spread of the time; judgement
NAMED = {"drive": "drive_motor", "fan": "exhaust_fan"}  # which motor tripped -> its assembly; else a pump


@dataclass(frozen=True)
class Trip:
    """A motor that trips: its name and nameplate, the current that heats its overload, and the trip class."""

    name: str
    plate: str
    full: float
    current: float
    relative: float  # relative spread of the current
    trip_class: float
    amps: Reading
    heat: tuple[float, float]  # share of its heat at the trip that is left at the start, from and to

    @property
    def start(self) -> str:
        return "from the reset" if self.heat[1] > 0 else "from cold"

    @property
    def before(self) -> tuple[float, float]:
        """The current, as a share of the setting, that would have warmed the overload so: from and to."""
        return PICKUP * math.sqrt(self.heat[0]), PICKUP * math.sqrt(self.heat[1])

    @property
    def window(self) -> tuple[float, float]:
        """Least and greatest time for an overload set to the nameplate; infinite where it bears the current."""
        if self.current <= PICKUP * self.full:
            return math.inf, math.inf
        cooler, warmer = (time_of_class(self.current, self.full, self.trip_class, b) for b in self.before)
        return QUICKEST * warmer, cooler


def trip_time(facts: Facts, check_id: str) -> Finding | Silent | None:
    """Judge the time from a cold start, or from a reset, to the trip, by the current that flowed.

    Purpose: an overload that trips as its class does with this current has an overloaded motor behind it; one
    that trips sooner is set low, heated by something else than its current, or worn.
    Formula: t = tau ln((x^2 - h) / (x^2 - 1)), x = I / (1.12 x nameplate amps), tau from the trip class, h the
    share of its heat left: nought from cold, 0.5 to 0.9 from a reset (judgement); a relay may be as quick as 0.4
    of its class. Currents it bears for ever give no time: any trip is then too early.
    Source: form of IEC 60255-149; windows of IEC 60947-4-1 (secondary); pickup and spread judgement.
    Fires: two_tank_electric_208 (wash_motor_amps = 6.8 A, overload_class = 10 s): motor_overload.trip_time = 100 s;
      pump_motor.line_amps = 12.1 12 12.2 A -> as_class
    Fires: two_tank_electric_208 (wash_motor_amps = 6.8 A, overload_class = 10 s): motor_overload.trip_time_hot = 40 s;
      pump_motor.line_amps = 12.1 12 12.2 A -> as_class
    Silent: two_tank_electric_208: motor_overload.trip_time = 100 s
    """
    reading, check = facts.fresh(check_id), facts.check(check_id)
    if reading is None or check is None:
        return None
    trip = _trip(facts, check_id)
    if trip is None:
        return Silent(f"{check.title}: needs the running currents and the full-load amps of the motor that trips")
    weights = _weights(trip, reading.value.si, spread(check, reading.value, reading) * reading.value.unit.factor)
    outcome = max(weights, key=lambda o: weights[o])
    working = [*_told(facts, trip, _class_origin(facts)), *_verdict(trip, reading, outcome)]
    return facts.conclude(
        check_id, weights, check_id, [reading], [trip.amps], [*working, *facts.assumed(trip.plate)], _SAYS[outcome]
    )


def _trip(facts: Facts, check_id: str) -> Trip | None:
    """The motor that trips, by its own currents: the greatest line heats the overload that opens first."""
    assembly = NAMED.get(facts.chosen("motor_overload.which_tripped") or "", "pump_motor")
    for name in (f"{assembly}.line_amps", f"{assembly}.line_amps_single"):
        amps, check = facts.known(name), facts.check(name)
        if amps is not None and check is not None:
            break
    else:
        return None
    motor = motor_of(facts, assembly)
    plate = facts.plate(motor.plate)
    most = max(amps.values.values(), key=lambda q: q.si)
    if plate is None or plate.si <= 0 or most.si <= 0:
        return None
    relative = spread(check, most, amps) * most.unit.factor / most.si
    given = facts.plate("overload_class")
    trip_class = given.si if given else CLASS
    return Trip(motor.name, motor.plate, plate.si, most.si, relative, trip_class, amps, STARTS[check_id])


def _weights(trip: Trip, seen: float, read: float) -> dict[str, float]:
    """Sooner than the quickest of its class, within it, or later than it; blurred by current, curve and watch."""
    early = normal_share((PICKUP - trip.current / trip.full) / (PICKUP * trip.relative))  # borne for ever
    low, high = trip.window
    if math.isinf(high):
        # Just under the pickup the curve is all but flat: a minute more or less of current decides nothing.
        return {"too_early": early, "as_class": 1.0 - early}
    x, heat = (trip.current / (PICKUP * trip.full)) ** 2, trip.heat[0]
    # How the time answers the current: d(ln t)/d(ln I) of ln((x - h) / (x - 1)), at its steepest 2 x / (x - 1).
    steep = 2.0 * x * (1.0 - heat) / ((x - heat) * (x - 1.0) * math.log((x - heat) / (x - 1.0)))
    blur = math.hypot(SLACK, steep * trip.relative, read / max(seen, 1.0))
    sooner = normal_share(math.log(low / max(seen, 0.1)) / blur)
    later = normal_share(math.log(max(seen, 0.1) / high) / blur)
    sooner = early + (1.0 - early) * sooner
    return {"too_early": sooner, "too_late": (1.0 - sooner) * later, "as_class": (1.0 - sooner) * (1.0 - later)}


def _class_origin(facts: Facts) -> str:
    if facts.plate("overload_class") is None:
        return "not said; class 10 is common practice"
    return "type's figure, assumed" if facts.machine.assumed("overload_class") else "data plate"


def _told(facts: Facts, trip: Trip, origin: str) -> list[str]:
    lines = [
        f"{trip.name.capitalize()}: {show_number(trip.current)} A in the line that draws most; "
        f"nameplate {show_number(trip.full)} A. Trip class {trip.trip_class:g} s ({origin})."
    ]
    low, high = trip.window
    if math.isinf(high):
        lines.append(
            f"An overload set to the nameplate bears up to {show_number(PICKUP * trip.full, 3)} A for ever: "
            "it should not trip at all."
        )
        return lines
    if trip.heat[1] > 0:
        lines.append(
            f"Of its heat at the trip {trip.heat[0] * 100:.0f} to {trip.heat[1] * 100:.0f} % is left at the reset "
            "(judgement); the coolest and the warmest:"
        )
    for before in dict.fromkeys(trip.before):
        values = {"current": trip.current, "setting": trip.full, "trip_class": trip.trip_class, "before": before}
        lines += [line for line in said("trip-time", "us", **values) if line not in lines]
    lines.append(
        f"A quick one of its class takes {QUICKEST:g} of that: so {trip.start} between {show_number(low, 3)} and "
        f"{show_number(high, 3)} s."
    )
    return lines


def _verdict(trip: Trip, reading: Reading, outcome: str) -> list[str]:
    seen = reading.value.si
    lines = [f"You timed {reading.value}: {_WORDS[outcome]}."]
    if outcome == "too_early":
        like = setting_of_trip_time(trip.current, seen, trip.trip_class, sum(trip.before) / 2)
        if like < trip.full:
            lines.append(
                f"So trips one set to about {show_number(like, 2)} A: hold that against the dial; if the dial stands "
                "right, the heat is not the current's."
            )
    return lines


def expected_trip_time(facts: Facts, check: str) -> Expected | None:
    """Between which times from its start the overload should trip with the current read."""
    trip = _trip(facts, check)
    if trip is None:
        return None
    low, high = trip.window
    working = tuple(_told(facts, trip, _class_origin(facts)))
    assumed = facts.assumed(trip.plate)
    if math.isinf(high):
        return Expected(("no trip at all with this current",), None, None, assumed, "trip class", working)
    line = f"{show_number(low, 3)} to {show_number(high, 3)} s {trip.start} with {show_number(trip.current)} A"
    first, last = (Quantity.of_si(t, "time", "s") for t in (low, high))
    return Expected((line,), first, last, assumed, "trip class, IEC 60947-4-1 (secondary)", working)


_WORDS = {
    "as_class": "as its class does with this current",
    "too_early": "sooner than its class with this current",
    "too_late": "later than its class with this current",
}
_SAYS = {
    "as_class": "The overload does its work: the current it trips on is the fault.",
    "too_early": "It trips sooner than this current would make it: set low, heated from outside, or worn.",
    "too_late": "It trips later than its class: set high, or the wrong one for this motor.",
}
