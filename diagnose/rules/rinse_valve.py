"""The rinse valve: pressure lost across it, against the flow that passes."""

from __future__ import annotations

import math

from diagnose.model import Finding
from diagnose.rules.bands import normal_share
from diagnose.rules.facts import Expected, Facts, Silent
from diagnose.rules.instruments import spread
from diagnose.rules.rinse_arms import RinseFlow, flow_now
from diagnose.rules.told import limit_si, plates_told, reading_told, shown
from diagnose.units import Quantity, parse_quantity

__all__ = ["expected_loss", "loss_across"]

LOSS = "rinse_valve.loss_across"
PSI = parse_quantity("1 psi", "pressure").unit


def _passing(facts: Facts) -> tuple[RinseFlow, float] | None:
    """The flow as best known and its share of the plate's; None where only the plate is known."""
    flow, plate = flow_now(facts), facts.plate("rinse_flow")
    if flow is None or plate is None or plate.si <= 0 or not flow.consults or flow.value <= 0:
        return None
    return flow, flow.value / plate.si


def loss_across(facts: Facts) -> Finding | Silent | None:
    """Judge the pressure lost across the rinse valve at the flow that passes.

    Purpose: 4 psi lost at half the flow is a valve that chokes, 7 psi at half as much again is not. With no flow
    and no pressure read the plain band of 5 psi is left to answer.
    Formula: loss at the rated flow = loss × (Q_plate / Q)²; 5 psi and more is large.
    Source: square-root law of openings; 5 psi is judgement, 1 to 3 psi common practice.
    Fires: two_tank_electric_208 (rinse_flow = 4.2 gpm): rinse_arms.flow_measured = 2.2 gpm;
      rinse_valve.loss_across = 4 psi -> large
    Fires: two_tank_electric_208 (rinse_flow = 4.2 gpm): rinse_arms.flow_measured = 6.4 gpm;
      rinse_valve.loss_across = 6.5 psi -> small
    Silent: two_tank_electric_208: rinse_valve.loss_across = 4 psi
    """
    reading, check = facts.fresh(LOSS), facts.check(LOSS)
    if reading is None or check is None:
        return None
    passing = _passing(facts)
    if passing is None:
        return None
    flow, share = passing
    try:
        most = limit_si(facts, "rinse_valve_loss", "high", reading.value.unit)
    except LookupError as error:
        return Silent(f"{check.title}: {error}")
    at_rated = reading.value.si / share**2
    own = spread(check, reading.value, reading) * reading.value.unit.factor / share**2
    large = normal_share((at_rated - most) / math.hypot(own, 2 * flow.error * at_rated))
    weights = {"small": 1 - large, "large": large}
    unit = reading.value.unit.symbol
    working = [
        *_words(facts, flow, unit),
        f"{reading.value} ÷ {share:.2f}² = {shown(at_rated, 'pressure', unit)} at the rated flow; "
        f"{shown(most, 'pressure', unit)} is the most.",
        *facts.assumed("rinse_flow", *flow.plate),
    ]
    says = _SAYS[max(weights, key=lambda o: weights[o])]
    return facts.conclude(LOSS, weights, LOSS, [reading], flow.consults, working, says)


def _words(facts: Facts, flow: RinseFlow, unit: str) -> tuple[str, ...]:
    plate = facts.plate("rinse_flow")
    if plate is None:
        return ()
    now, rated = shown(flow.value, "flow", plate.unit.symbol), shown(plate.si, "flow", plate.unit.symbol)
    return (f"Flow {now} ({flow.origin}) ÷ {rated} = {flow.value / plate.si:.2f} of the rated flow.",)


def expected_loss(facts: Facts, check: str) -> Expected | None:
    """The most a sound valve loses at the flow that passes, or at the rated flow."""
    passing, plate = _passing(facts), facts.plate("rinse_pressure")
    share = passing[1] if passing is not None else 1.0
    unit = plate.unit if plate is not None else PSI
    try:
        limit = limit_si(facts, "rinse_valve_loss", "high", unit)
    except LookupError:
        return None
    most = Quantity(unit.from_si(limit * share**2), unit)
    figure = shown(most.si, "pressure", unit.symbol, 2)
    at = "at the flow there is" if passing is not None else "at the rated flow"
    readings = passing[0].consults if passing is not None else ()
    working = (
        *plates_told(facts, "rinse_flow"),
        *(line for r in readings for line in reading_told(facts, r)),
        *(_words(facts, passing[0], unit.symbol) if passing is not None else ()),
        f"{shown(limit, 'pressure', unit.symbol)} × {share:.2f}² = {figure}; 1 to 3 psi at the rated flow is usual.",
    )
    line = f"under {figure} {at}"
    return Expected((line,), None, most, facts.assumed("rinse_flow") if passing else (), "common practice", working)


_SAYS = {
    "small": "The valve loses no more than this flow makes it.",
    "large": "The valve loses more than this flow should cost: it opens only part of the way.",
}
