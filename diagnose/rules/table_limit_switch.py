"""Seconds from the table switch's click to the standing conveyor, judged by the way they carry the racks."""

from __future__ import annotations

import math

from diagnose.formulas import said, system_of
from diagnose.model import Finding
from diagnose.rules.bands import normal_share
from diagnose.rules.conveyor_bar_pawls import speed_now
from diagnose.rules.facts import Expected, Facts, Silent
from diagnose.rules.instruments import spread
from diagnose.rules.told import shown
from diagnose.units import Quantity

__all__ = ["expected_stop_seconds", "stop_seconds"]

STOP = "table_limit_switch.stop_seconds"
PUSH = 0.0762  # m, 3 in: what a row still gives after the click before a rack lifts; judgement
NEVER = 20.0  # s: no delay is set so long; what runs on longer is not told to stop; judgement


def stop_seconds(facts: Facts) -> Finding | Silent | None:
    """Judge how long the conveyor pushes on after the table switch has clicked.

    Purpose: two seconds are nothing on a slow conveyor and crush racks on a fast one.
    Formula: most = 3 in / speed; over it late, from 20 s on it is not stopped at all.
    Source: way = speed times time; the 3 in and the 20 s are judgement.
    Fires: two_tank_electric_208 (conveyor_speed = 5.8 ft/min): table_limit_switch.stop_seconds = 1.6 s -> at_once
    Fires: two_tank_electric_208 (conveyor_speed = 12 ft/min): table_limit_switch.stop_seconds = 4 s -> late
    Silent: two_tank_electric_208 (conveyor_speed = 0 ft/min): table_limit_switch.stop_seconds = 1.6 s
    """
    reading, check = facts.fresh(STOP), facts.check(STOP)
    if reading is None or check is None:
        return None
    pace = speed_now(facts)
    if isinstance(pace, Silent):
        return Silent(f"{check.title}: {pace.why}")
    most, value = PUSH / pace.speed, reading.value
    own = spread(check, value, reading) * value.unit.factor
    never = normal_share((value.si - NEVER) / own)
    late = normal_share((value.si - most) / math.hypot(own, most * pace.sigma / pace.speed))
    weights = {"at_once": 1 - late, "late": late * (1 - never), "never": late * never}
    figure = facts.plate("conveyor_speed")
    system = system_of(figure.unit) if figure is not None else "us"
    working = [
        *pace.words,
        f"It carries the racks {shown(value.si * pace.speed, 'length', 'in', 2)} further; 3 in is what a row gives:",
        *said("run-on", system, way=PUSH, speed=pace.speed, in_hand=0.0),
        *(() if pace.read else facts.assumed("conveyor_speed")),
    ]
    says = _SAYS[max(weights, key=weights.__getitem__)]
    return facts.conclude(STOP, weights, STOP, [reading], pace.read, working, says)


def expected_stop_seconds(facts: Facts, check: str) -> Expected | None:
    """The seconds in which the conveyor goes on by the 3 in that a row still gives."""
    pace = speed_now(facts)
    if isinstance(pace, Silent):
        return None
    most = Quantity.of_si(PUSH / pace.speed, "time", "s")
    figure = facts.plate("conveyor_speed")
    system = system_of(figure.unit) if figure is not None else "us"
    working = (
        *pace.words,
        "A row still gives some 3 in after the click before a rack lifts (judgement):",
        *said("run-on", system, way=PUSH, speed=pace.speed, in_hand=0.0),
    )
    line = f"at once, {shown(most.si, 'time', 's', 2)} at most"
    assumed = () if pace.read else facts.assumed("conveyor_speed")
    return Expected((line,), None, most, assumed, "way over speed; the way is judgement", working)


_SAYS = {
    "at_once": "It stops before the racks are pushed onto one another.",
    "late": "It is told to stop and stops too late: a delay is set too long.",
    "never": "The switch does not stop it at all.",
}
