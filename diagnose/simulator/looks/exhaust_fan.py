"""What can be read of the exhaust fan and its motor."""

from __future__ import annotations

from copy import deepcopy
from dataclasses import replace

from diagnose.simulator.airing import air_now
from diagnose.simulator.bench import Bench
from diagnose.simulator.control import stalls, starts
from diagnose.simulator.looks.pump_motor import amps_by_line
from diagnose.simulator.moment import moment_of
from diagnose.simulator.motoring import tripped
from diagnose.simulator.registry import look
from diagnose.simulator.senses import Answer

__all__: list[str] = []

_THREE, _ONE = (3,), (1,)
_OVER = 1.02  # of the nameplate's current: what a clamp tells from it


@look("exhaust_fan.running")
def running(bench: Bench) -> Answer:
    """The fan heard from below."""
    flow = bench.restarted.standing.motors["fan"]
    if max(flow.amps) <= 0.0:
        return bench.seen("silent", sure=0.98)
    if not flow.turns or stalls(bench.plant, "fan"):
        return bench.seen("hums", "silent", sure=0.95)
    grinding = max(
        bench.sign("fan wheel scrape grinds"), bench.sign("fan bearing growl"), bench.sign("fan wheel knock")
    )
    squeal = bench.sign("fan belt squeals")
    if max(grinding, squeal) > 0.15:
        heard = "squeals" if squeal > grinding else "scrapes"
        rest = "cuts_out" if "fan" in tripped(bench) else "even"
        return Answer(outcome=bench.senses.notice(0.4 + max(grinding, squeal), heard, rest, 0.94))
    if "fan" in tripped(bench):
        return bench.seen("cuts_out", "even", sure=0.93)
    return bench.seen("even", "squeals", "scrapes", sure=0.97)


@look("exhaust_fan.rotation", phases=_THREE)
def rotation(bench: Bench) -> Answer:
    """The wheel and a pump watched while they run down."""
    if bench.plant.power.swapped:
        return bench.seen("all_wrong", "fan_only", sure=0.97)
    return bench.seen("fan_only" if bench.plant.air.fan_backwards else "as_arrow", "as_arrow", "fan_only", sure=0.98)


@look("exhaust_fan.belt_look")
def belt_look(bench: Bench) -> Answer:
    """The belt pressed and looked at."""
    found = {
        "slack": bench.sign("fan belt slack"),
        "tight": bench.sign("fan belt tight"),
        "gone": bench.sign("fan belt gone"),
    }
    return bench.worst(found, "right", sure=0.97)


@look("exhaust_fan.turn_by_hand")
def turn_by_hand(bench: Bench) -> Answer:
    """Shafts turned by hand, the belt off one pulley."""
    return bench.worst(
        {"rough": bench.sign("fan bearing growl"), "scrapes": bench.sign("fan wheel rubs")}, "free", 0.96
    )


@look("exhaust_fan.wheel_look")
def wheel_look(bench: Bench) -> Answer:
    """The housing opened."""
    found = {
        "loose": bench.sign("fan wheel loose"),
        "rub_marks": bench.sign("fan wheel rubs"),
        "coated": 3.0 * (1.0 - bench.plant.air.wheel),
    }
    return bench.worst(found, "sound", sure=0.97)


@look("exhaust_fan.call_look")
def call_look(bench: Bench) -> Answer:
    """Switch, timer and starter."""
    if bench.sign("fan switch at off") > 0.15:
        return bench.seen("off", "no_pull", sure=0.98)
    if not bench.plant.motors["fan"].coil_works or not starts(bench.plant):
        return bench.seen("no_pull", "off", sure=0.97)
    return bench.seen("pulled_in", "off", sure=0.99)


@look("exhaust_fan.suction")
def suction(bench: Bench) -> Answer:
    """Suction in the duct before the fan."""
    return Answer({"": max(0.0, bench.senses.measure("manometer", air_now(bench).suction))})


@look("exhaust_fan.pole_drop", phases=_THREE)
def pole_drop(bench: Bench) -> Answer:
    """Volts across the closed poles of its starter."""
    if bench.plant.power.line_open:
        return bench.seen("feed_missing", sure=0.98)
    return bench.seen("all_made" if all(bench.plant.motors["fan"].poles) else "pole_open", sure=0.99)


@look("exhaust_fan.line_amps", phases=_THREE)
def line_amps(bench: Bench) -> Answer:
    """The fan's three lines."""
    return amps_by_line(bench, "fan")


@look("exhaust_fan.line_amps_single", phases=_ONE)
def line_amps_single(bench: Bench) -> Answer:
    """The fan's live wire."""
    return bench.value("small current clamp", bench.running_amps("fan")[0])


@look("exhaust_fan.throttle_test")
def throttle_test(bench: Bench) -> Answer:
    """Amps before and with both ends half closed."""
    plate = bench.plant.motors["fan"].amps
    before = max(bench.running_amps("fan"))
    if before <= _OVER * plate:
        return bench.seen("as_before", sure=0.98)
    after = _throttled(bench)
    return bench.seen("falls_under" if after <= plate else "stays_over", "as_before", sure=0.97)


def _throttled(bench: Bench) -> float:
    plant = deepcopy(bench.plant)
    for end in plant.air.damper:
        plant.air.damper[end] *= 0.5
    if plant.air.let_in > 0.3:
        plant.air.let_in *= 0.5  # a sheet before whatever lets the air in
    state = replace(bench.service.state, running=starts(plant), tripped=set(), stalled=set())
    return max(moment_of(plant, state, True).standing.motors["fan"].amps)


@look("exhaust_fan.speed_look")
def speed_look(bench: Bench) -> Answer:
    """Pulleys against the fan's tag: what they were set to, slip apart."""
    return bench.seen("faster" if bench.plant.air.fan > 1.045 else "as_tag", "as_tag", "faster", sure=0.97)


@look("exhaust_fan.motor_air")
def motor_air(bench: Bench) -> Answer:
    """Air a hand's breadth from the motor."""
    return bench.value("reference thermometer", bench.plant.motors["fan"].around)


@look("exhaust_fan.capacitor_read", phases=_ONE)
def capacitor_read(bench: Bench) -> Answer:
    """Microfarads against the print."""
    return bench.seen("within" if bench.plant.motors["fan"].starts else "weak", "within", sure=0.98)
