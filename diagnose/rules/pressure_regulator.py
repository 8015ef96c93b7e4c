"""The rinse regulator at rest and flowing: its droop against what this flow allows."""

from __future__ import annotations

import math

from diagnose.formulas import said, system_of
from diagnose.model import Finding, Reading
from diagnose.physics.flow import flow_at_pressure
from diagnose.physics.regulator import drooped_pressure
from diagnose.rules.bands import normal_share
from diagnose.rules.facts import Expected, Facts, Silent
from diagnose.rules.instruments import spread
from diagnose.rules.told import limit_si, plates_told, reading_told, shown
from diagnose.units import Quantity, parse_quantity

__all__ = ["droop_line", "expected_droop"]

PAIR, FLOW = "pressure_regulator.droop_line", "rinse_arms.flow_measured"
USUAL = parse_quantity("3 psi", "pressure").si  # droop of a sound regulator at its rated flow; common practice 2 to 5
MARGIN = parse_quantity("2 psi", "pressure").si  # over that before it counts as sagging; judgement
_PLATE = ("rinse_flow", "rinse_pressure")


def _share(facts: Facts, flowing: float) -> tuple[float, Reading | None] | None:
    """Flow over rated flow: as measured, else as sound jets pass at this pressure."""
    plate, rated = facts.plate("rinse_flow"), facts.plate("rinse_pressure")
    if plate is None or rated is None or plate.si <= 0 or rated.si <= 0:
        return None
    measured = facts.now(FLOW)
    if measured is not None and measured.value.si > 0:
        return measured.value.si / plate.si, measured
    return flow_at_pressure(plate.si, rated.si, max(flowing, 0.0)) / plate.si, None


def droop_line(facts: Facts) -> Finding | Silent | None:
    """Judge the pair of pressures behind the regulator, at rest and flowing, by the flow there is.

    Purpose: a regulator that sags, one that creeps up at rest, and one only set low or high look alike in one
    figure; and worn jets pull a sound regulator down.
    Formula: allowed fall = 5 psi × Q / Q_plate, and 2 psi more; within it the flowing figure is judged by the
    plate's band; beyond it, flowing under the band sags, else it creeps up at rest.
    Source: common practice (2 to 5 psi between rest and flow); 2 psi more is judgement.
    Fires: two_tank_electric_208: pressure_regulator.droop_line = 22 11 psi -> sags
    Fires: two_tank_electric_208: pressure_regulator.droop_line = 55 20 psi -> creeps
    Fires: two_tank_electric_208 (rinse_flow = 4.2 gpm): rinse_arms.flow_measured = 6.6 gpm;
      pressure_regulator.droop_line = 23 15.5 psi -> holds
    Silent: two_tank_electric_208: rinse_gauge.flow_pressure = 20 psi
    """
    reading, check = facts.fresh(PAIR), facts.check(PAIR)
    if reading is None or check is None:
        return None
    rest, flowing = reading.values["at rest"], reading.values["flowing"]
    share = _share(facts, flowing.si)
    if share is None:
        return Silent(f"{check.title}: needs the rinse flow and pressure of the plate")
    errors = [spread(check, value, reading) * value.unit.factor for value in (rest, flowing)]
    if flowing.si - rest.si > 3 * math.hypot(*errors):
        return Silent(f"{check.title}: more flowing than at rest cannot be; at rest comes first")
    try:
        low, high = (limit_si(facts, "rinse_pressure", end, flowing.unit) for end in ("low", "high"))
        droop = limit_si(facts, "regulator_droop", "high", rest.unit)
    except LookupError as error:
        return Silent(f"{check.title}: {error}")
    allowed = droop * share[0] + MARGIN
    beyond = normal_share((rest.si - flowing.si - allowed) / math.hypot(*errors, MARGIN / 2))
    under = normal_share((low - flowing.si) / errors[1])
    over = normal_share((flowing.si - high) / errors[1])
    weights = {
        "holds": (1 - beyond) * max(1 - under - over, 0.0),
        "low_and_steady": (1 - beyond) * under,
        "high_and_steady": (1 - beyond) * over,
        "sags": beyond * under,
        "creeps": beyond * (1 - under),
    }
    working = [*_words(facts, rest, flowing, share, droop), *facts.assumed(*_PLATE)]
    says = _SAYS[max(weights, key=lambda o: weights[o])]
    return facts.conclude(PAIR, weights, PAIR, [reading], [share[1]], working, says)


def _words(
    facts: Facts, rest: Quantity, flowing: Quantity, share: tuple[float, Reading | None], droop: float
) -> list[str]:
    """The fall at this flow, what it comes to at the rated flow, and how far a sound one may fall here."""
    plate, unit = facts.plate("rinse_flow"), rest.unit
    flow = share[0] * (plate.si if plate is not None else 1.0)
    words: list[str] = []
    if plate is not None and rest.si > flowing.si > 0 and flow > 0:
        values = {"rest": rest.si, "flowing": flowing.si, "flow": flow, "rated_flow": plate.si}
        words += said("regulator-droop", system_of(unit), **values)
    origin = "measured" if share[1] is not None else "as sound jets pass at this pressure"
    most, limit = shown(droop, "pressure", unit.symbol), shown(droop * share[0], "pressure", unit.symbol)
    more = shown(MARGIN, "pressure", unit.symbol)
    words.append(f"A sound one falls {most} at most at the rated flow, here {limit} ({share[0]:.2f} of it, {origin}),")
    words.append(f"and {more} more are let pass.")
    return words


def expected_droop(facts: Facts, check: str) -> Expected | None:
    """What a sound regulator set to the plate's pressure shows at rest, and flowing at the flow there is."""
    plate, rated = facts.plate("rinse_flow"), facts.plate("rinse_pressure")
    share = _share(facts, rated.si) if rated is not None else None
    if plate is None or rated is None or share is None:
        return None
    rest, flow = rated.si + USUAL, share[0] * plate.si
    system = system_of(rated.unit)
    values = {"rest": rest, "droop": USUAL, "rated_flow": plate.si, "flow": flow}
    flowing = drooped_pressure(**values)
    symbol = rated.unit.symbol
    working = (
        *plates_told(facts, *_PLATE),
        *reading_told(facts, share[1]),
        f"At rest {shown(USUAL, 'pressure', symbol)} over the plate's (common practice: 2 to 5 psi).",
        *said("regulator-pressure", system, **values),
    )
    line = f"{shown(rest, 'pressure', symbol)} at rest, {shown(flowing, 'pressure', symbol)} flowing"
    return Expected((line,), None, None, facts.assumed(*_PLATE), "common practice", working)


_SAYS = {
    "holds": "At rest and flowing it stands as a sound regulator does at this flow.",
    "low_and_steady": "It holds, only too low: the setting, not the regulator.",
    "high_and_steady": "It holds, only too high: the setting, not the regulator.",
    "sags": "Good at rest and gone when it flows: a weary regulator, or something chokes at it or ahead of it.",
    "creeps": "Right when it flows, far over it at rest: it lets water past.",
}
