"""Gas: pressure at rest against firing, and the input clocked against what the manifold's pressure gives."""

from __future__ import annotations

import math

from diagnose.formulas import said, system_of
from diagnose.model import Finding
from diagnose.physics.gas import input_at_manifold
from diagnose.rules.bands import normal_share
from diagnose.rules.facts import Facts, Silent
from diagnose.rules.instruments import spread
from diagnose.rules.told import limit_si, plates_told

__all__ = ["BURNERS", "droop", "input_for_pressure"]

REST, FIRING, DROOP = "supply_gas.inlet_at_rest", "supply_gas.inlet_firing", "supply_gas.droop"
FALL = 0.25  # share of the pressure at rest that may be lost firing; judgement
# Assembly -> plate figure of its input.
BURNERS = {"tank_heater_gas": "tank_gas_input", "booster_gas": "gas_input"}
BURNS = 0.2  # of the plate's pressure and input: under it nothing burns, and nothing can be set against it
LESS, MORE = 0.88, 1.15  # of the input that sound jets pass at this pressure; judgement


def droop(facts: Facts) -> Finding | Silent | None:
    """Judge the inlet pressure at rest and firing together.

    Purpose: 7.8 inWG that falls to 5.4 is within the limits both times, and yet something stands in the way;
    short at rest is the regulator, or no gas at all; too high at rest is a seat that does not lock up.
    Formula: lost = (rest - firing) / rest; over a quarter falls. Rest itself by the limits of the inlet.
    Source: a flow loses pressure with nearly its square, gas at rest loses none; the quarter is judgement.
    Fires: single_tank_gas_208: supply_gas.inlet_at_rest = 7.8 inWG; supply_gas.inlet_firing = 5.4 inWG -> falls
    Silent: single_tank_gas_208: supply_gas.inlet_firing = 5.4 inWG
    """
    rest, firing, check = facts.fresh(REST), facts.fresh(FIRING), facts.check(DROOP)
    if check is None or (rest is None and firing is None):
        return None
    if rest is None or firing is None:
        return Silent(f"{check.title}: the inlet must be read at rest and firing")
    unit = rest.value.unit
    try:
        least, most = (limit_si(facts, "gas_inlet", end, unit) for end in ("low", "high"))
    except LookupError as error:
        return Silent(f"{check.title}: {error}")
    errors = [spread(facts.book.checks[r.check], r.value, r) * r.value.unit.factor for r in (rest, firing)]
    low, high = (
        normal_share((least - rest.value.si) / errors[0]),
        normal_share((rest.value.si - most) / errors[0]),
    )
    right = max(1 - low - high, 0.0)
    kept = (1 - FALL) * rest.value.si
    falls = normal_share((kept - firing.value.si) / math.hypot((1 - FALL) * errors[0], errors[1]))
    weights = {"low_at_rest": low, "high_at_rest": high, "falls": right * falls, "holds": right * (1 - falls)}
    lost = (1 - firing.value.si / rest.value.si) * 100 if rest.value.si > 0 else 0.0
    working = [
        f"At rest {rest.value}, firing {firing.value}: {lost:.0f} % lost by flow, and up to {FALL * 100:.0f} % may be.",
        f"At rest {unit.from_si(least):.3g} to {unit.from_si(most):.3g} {unit.symbol} is usual; the plate governs.",
    ]
    outcome = max(weights, key=lambda o: weights[o])
    return facts.conclude(DROOP, weights, DROOP, [rest, firing], (), working, _DROOP[outcome])


def input_for_pressure(facts: Facts, burner: str = "tank_heater_gas") -> Finding | Silent | None:
    """Set the input clocked at the meter against what sound jets pass at the manifold's pressure.

    Purpose: 65,000 of 80,000 BTU/h with a low manifold is the pressure's doing and the jets are sound; with the
    manifold right it is the jets. Neither reading says so alone.
    Formula: input = plate x sqrt(manifold / plate's manifold); under 88 % of it jets are blocked or too small,
    over 115 % too large.
    Source: flow through an orifice; the edges are judgement.
    Fires: single_tank_gas_208 (tank_gas_input = 80000 BTU/h, gas_pressure = 3.5 inWG):
      tank_heater_gas.gas_clocked = 56000 BTU/h; tank_heater_gas.manifold_pressure = 3.5 inWG -> less
    Silent: single_tank_gas_208: tank_heater_gas.gas_clocked = 56000 BTU/h
    """
    name = f"{burner}.input_for_pressure"
    check, clocked = facts.check(name), facts.fresh(f"{burner}.gas_clocked")
    if check is None or clocked is None:
        return None
    manifold = facts.now(f"{burner}.manifold_pressure")
    rated, pressure = facts.plate(BURNERS[burner]), facts.plate("gas_pressure")
    if manifold is None or rated is None or pressure is None or rated.si <= 0 or pressure.si <= 0:
        return Silent(f"{check.title}: needs the manifold's pressure, and both figures of the plate")
    if manifold.value.si < BURNS * pressure.si or clocked.value.si < BURNS * rated.si:
        return Silent(f"{check.title}: it does not burn")
    passes = input_at_manifold(rated.si, manifold.value.si, pressure.si)
    share = clocked.value.si / passes
    parts = [spread(facts.book.checks[r.check], r.value, r) / r.value.value for r in (clocked, manifold)]
    sigma = share * math.hypot(parts[0], parts[1] / 2)
    less, more = normal_share((LESS - share) / sigma), normal_share((share - MORE) / sigma)
    weights = {"less": less, "more": more, "as_pressure": max(1 - less - more, 0.0)}
    working = [
        *plates_told(facts, BURNERS[burner], "gas_pressure"),
        *said(
            "gas-manifold",
            system_of(clocked.value.unit),
            rated_input=rated.si,
            manifold=manifold.value.si,
            rated_manifold=pressure.si,
        ),
        f"The meter says {clocked.value}: {share * 100:.0f} % of what sound jets pass at this pressure.",
    ]
    outcome = max(weights, key=lambda o: weights[o])
    return facts.conclude(name, weights, name, [clocked], [manifold], working, _JETS[outcome])


_DROOP = {
    "holds": "Right at rest, and little is lost firing.",
    "falls": "Right at rest and lost by flow: cock, connector, strainer or pipe.",
    "low_at_rest": "Short with nothing flowing: regulator, supplier, or a valve that is shut.",
    "high_at_rest": "Too high with nothing flowing: the regulator does not lock up.",
}
_JETS = {
    "as_pressure": "The jets pass what this pressure gives: if it is little, the pressure is.",
    "less": "Less gas than this pressure drives through sound jets: blocked, or bored for less.",
    "more": "More gas than this pressure drives through the plate's jets: bored too large.",
}
