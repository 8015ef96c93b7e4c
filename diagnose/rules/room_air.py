"""Air taken from the room against air brought in."""

from __future__ import annotations

import math

from diagnose.formulas import said, system_of
from diagnose.model import Finding
from diagnose.physics.air_moved import makeup_short
from diagnose.rules.bands import normal_share
from diagnose.rules.facts import Expected, Facts, Silent
from diagnose.rules.instruments import spread
from diagnose.rules.vent_dampers import total_flow
from diagnose.units import Quantity

__all__ = ["expected_makeup", "makeup"]

MAKEUP = "room_air.makeup_flows"
LACKS, OVER = 0.25, -0.05  # share of the air taken that may come through cracks, and that may be too much; judgement
PLATE_ERROR = 0.10  # flow wanted taken for the flow there is; judgement


def makeup(facts: Facts) -> Finding | Silent | None:
    """Judge what hoods take and the supply brings, with what the machine's fan takes.

    Purpose: the same hoods and supply leave one machine's fan starved and feed another's.
    Formula: lacking = machine + hoods - supply; over a quarter of all that is taken is short, under -5 % is over.
    Source: conservation of mass; the edges are judgement. Machine: as read at both ends, else the plate.
    Fires: two_tank_electric_208 (vent_entrance = 200 cfm, vent_exit = 400 cfm):
      room_air.makeup_flows = 1500 900 cfm -> short
    Silent: two_tank_electric_208: room_air.room_pressure = -14 Pa
    """
    reading, check = facts.fresh(MAKEUP), facts.check(MAKEUP)
    if reading is None or check is None:
        return None
    flow, own = total_flow(facts), [facts.plate("vent_entrance"), facts.plate("vent_exit")]
    if flow is None and None in own:
        return Silent(f"{check.title}: needs the machine's own exhaust, read or from the plate")
    machine = flow.now if flow else sum(q.si for q in own if q is not None)
    hoods, supplied = (v for v in reading.values.values())
    taken = machine + hoods.si
    if taken <= 0:
        return Silent(f"{check.title}: nothing is taken from the room")
    lacking = makeup_short(machine, hoods.si, supplied.si)
    errors = (
        (flow.error if flow else PLATE_ERROR) * machine,
        spread(check, hoods, reading) * hoods.unit.factor,
        spread(check, supplied, reading) * supplied.unit.factor,
    )
    sigma = math.hypot(*errors) / taken
    share = lacking / taken
    short, over = 1 - normal_share((LACKS - share) / sigma), normal_share((OVER - share) / sigma)
    weights = {"balanced": max(1 - short - over, 0.0), "short": short, "over": over}
    outcome = max(weights, key=lambda o: weights[o])
    working = [
        flow.words if flow else "Machine's exhaust not read: taken as the plate wants it.",
        *said("makeup-air", system_of(hoods.unit), exhaust=machine, hoods=hoods.si, supplied=supplied.si),
        f"Lacking: {share * 100:.0f} % of the air taken; {OVER * 100:.0f} to {LACKS * 100:.0f} % is in order.",
        *(() if flow else facts.assumed("vent_entrance", "vent_exit")),
    ]
    return facts.conclude(MAKEUP, weights, MAKEUP, [reading], flow.read if flow else (), working, _SAYS[outcome])


def expected_makeup(facts: Facts, check: str) -> Expected | None:
    """What the supply should bring beside what hoods take."""
    flow, own = total_flow(facts), [facts.plate("vent_entrance"), facts.plate("vent_exit")]
    if own[0] is None or own[1] is None:
        return None
    machine = Quantity.of_si(flow.now if flow else own[0].si + own[1].si, "air flow", own[0].unit.symbol)
    line = f"supply: {(1 - LACKS) * 100:.0f} to {(1 - OVER) * 100:.0f} % of hoods and {machine} of the machine"
    stands = flow.words if flow else f"Machine's exhaust {own[0]} + {own[1]} = {machine}: as wanted, not read."
    working = (stands, f"Up to {LACKS * 100:.0f} % may come through cracks and doors (judgement).")
    return Expected((line,), None, None, facts.assumed("vent_entrance", "vent_exit"), "judgement", working)


_SAYS = {
    "balanced": "About as much comes in as is taken.",
    "short": "Far less comes in than is taken: the machine's exhaust is starved, or air comes in at its ends.",
    "over": "More is blown in than taken: the room pushes on the machine.",
}
