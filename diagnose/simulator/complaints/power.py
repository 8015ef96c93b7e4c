"""What the kitchen says of motors, breakers, starts, stops and noise."""

from __future__ import annotations

from diagnose.simulator.bench import Bench
from diagnose.simulator.complaints.conveyor import stops_by_itself
from diagnose.simulator.control import shakes_open, starts
from diagnose.simulator.motoring import case_temperature, rattles, tripped
from diagnose.simulator.protecting import opens
from diagnose.simulator.registry import complaint
from diagnose.simulator.sounding import loudest
from diagnose.simulator.starting import silent_pump

__all__: list[str] = []


@complaint("motor_trips")
def motor_trips(bench: Bench) -> float:
    """A motor goes off and comes back after a while, hums, or is too hot to touch."""
    hot = max(case_temperature(bench, name) for name in bench.plant.motors) - 361.0
    now_and_then = 5.0 * bench.sign("overload goes at starts")
    gone = 5.0 + min(3.0, 0.2 * len(bench.service.state.trips)) if tripped(bench) else 0.0
    return max(0.0, gone, now_and_then, 1.0 + hot / 10.0 if hot > 0.0 else 0.0)


@complaint("breaker_trips")
def breaker_trips(bench: Bench) -> float:
    """Everything goes dark and the panel shows why."""
    return 8.0 if opens(bench)[0] else 0.0


@complaint("no_start")
def no_start(bench: Bench) -> float:
    """Nothing moves at start, or one part of it does not come, or the lamp stays dark."""
    if not starts(bench.plant):
        return 0.0 if opens(bench)[1] == "at_reset" else 9.0
    still = 6.0 if silent_pump(bench) else 0.0
    return max(still, 3.0 * bench.sign("lamp stays dark"), 4.0 * bench.sign("waits for a rack"))


@complaint("stops_midrun")
def stops_midrun(bench: Bench) -> float:
    """It goes off by itself with racks inside."""
    found = stops_by_itself(bench)
    if shakes_open(bench.plant):
        found = 7.0
    if rattles(bench):
        found = max(found, 1.5)
    found = max(found, 2.5 * bench.sign("contactor buzz"))
    if any(name != "fan" for name in tripped(bench)):
        found = max(found, 2.0)
    return max(found, 4.0 if opens(bench)[1] in ("under_load", "rinse_on", "heat_on") else 0.0)


@complaint("noise")
def noise(bench: Bench) -> float:
    """Hum, growl, rattle, squeal: what ears notice beyond the sound of work."""
    heard = loudest(bench)
    return 4.0 * heard.loud if heard is not None and heard.loud > 0.15 else 0.0
