"""Suction before the exhaust fan, judged by what the same duct would want at the flow read."""

from __future__ import annotations

import math

from diagnose.formulas import said, system_of
from diagnose.model import Finding
from diagnose.physics.air_moved import suction_of_flow
from diagnose.rules.bands import limit_end, normal_share
from diagnose.rules.facts import Expected, Facts, Silent
from diagnose.rules.instruments import spread
from diagnose.rules.vent_dampers import total_flow
from diagnose.units import Quantity, show_number

__all__ = ["expected_suction", "suction"]

SUCTION = "exhaust_fan.suction"
SHORT = 0.85  # share of the air wanted in all under which the exhaust is short; as the bands of both vents say


def suction(facts: Facts) -> Finding | Silent | None:
    """Judge the fan's suction together with the air it moves.

    Purpose: a suction that looks usual is strong when little air flows: something chokes before the fan. A weak
    one with little air is the fan itself, or what blocks behind it.
    Formula: least and greatest suction in order x (flow / flow wanted)^2 is what the duct wants; above it is
    strong; else weak where the flow is short or the suction under the least, usual where neither is so.
    Source: square law of resistance; limit fan_suction (judgement); plate's flows.
    Fires: two_tank_electric_208 (vent_entrance = 200 cfm, vent_exit = 400 cfm): vent_dampers.flow_entrance = 110 cfm;
      vent_dampers.flow_exit = 230 cfm; exhaust_fan.suction = 0.6 inWG -> strong
    Silent: two_tank_electric_208: vent_dampers.flow_entrance = 110 cfm; exhaust_fan.suction = 0.6 inWG
    """
    reading, check, flow = facts.fresh(SUCTION), facts.check(SUCTION), total_flow(facts)
    if reading is None or check is None or flow is None:
        return None
    share = flow.now / flow.wanted
    system, unit = system_of(reading.value.unit), reading.value.unit
    try:
        low, high = (limit_end(facts.book, facts.machine, "fan_suction", end, unit) for end in ("low", "high"))
    except LookupError as error:
        return Silent(f"{check.title}: {error}")
    least, most = (suction_of_flow(e.value, flow.wanted, flow.now) for e in (low, high))
    read = spread(check, reading.value, reading)
    strong = 1 - normal_share((most - reading.value.value) / math.hypot(read, 2 * flow.error * most))
    short = normal_share((SHORT - share) / (share * flow.error))
    under = normal_share((low.value - reading.value.value) / read)
    weak = (1 - strong) * (1 - (1 - short) * (1 - under))
    weights = {"weak": weak, "usual": max(1 - strong - weak, 0.0), "strong": strong}
    outcome = max(weights, key=lambda o: weights[o])
    told = [
        said("duct-suction", system, suction=unit.to_si(e.value), flow=flow.wanted, new_flow=flow.now)[0]
        for e in (low, high)
    ]
    working = [
        flow.words,
        f"The duct in order wants {show_number(low.value)} to {high} for that; at the flow read:",
        *told,
        f"Read: {reading.value}; {show_number(least, 2)} to {show_number(most, 2)} {unit.symbol} belongs to this flow.",
        *facts.assumed("vent_entrance", "vent_exit"),
    ]
    return facts.conclude(SUCTION, weights, SUCTION, [reading], flow.read, working, _SAYS[outcome])


def expected_suction(facts: Facts, check: str) -> Expected | None:
    """The suction the duct wants at the flow read, or at the flow wanted where none was read."""
    entry, flow = facts.check(check), total_flow(facts)
    if entry is None or entry.reading is None:
        return None
    unit = Quantity.of_si(100.0, "pressure", entry.reading.unit).unit
    try:
        low, high = (limit_end(facts.book, facts.machine, "fan_suction", end, unit) for end in ("low", "high"))
    except LookupError:
        return None
    now, wanted = (flow.now, flow.wanted) if flow else (1.0, 1.0)
    ends = [Quantity(suction_of_flow(e.value, wanted, now), unit) for e in (low, high)]
    working = [f"In order: {show_number(low.value)} to {high} ({high.stands})."]
    words = "at the flow wanted"
    if flow is not None:
        words = "at the flow read, where nothing chokes before the fan"
        working.append(flow.words)
        for end in (low, high):
            working += said(
                "duct-suction", system_of(unit), suction=unit.to_si(end.value), flow=flow.wanted, new_flow=flow.now
            )
    line = f"{show_number(ends[0].value, 2)} to {show_number(ends[1].value, 2)} {unit.symbol} {words}"
    assumed = facts.assumed("vent_entrance", "vent_exit") if flow else ()
    return Expected((line,), ends[0], ends[1], assumed, high.stands, tuple(working))


_SAYS = {
    "weak": "Weak for a fan in order: slow, blocked behind it, or air let in before it.",
    "usual": "Suction and flow belong together.",
    "strong": "More suction than this flow wants: choked before the fan.",
}
