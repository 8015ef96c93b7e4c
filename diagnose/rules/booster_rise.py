"""Rise measured over a steam or gas booster, against what its heat should give: is the heat short, or not taken?"""

from __future__ import annotations

import math

from diagnose.formulas import said, system_of
from diagnose.model import Finding
from diagnose.physics.heat import rise_of_flow
from diagnose.rules.bands import normal_share
from diagnose.rules.booster_supply import Heat
from diagnose.rules.facts import Expected, Facts, Silent
from diagnose.rules.instruments import spread
from diagnose.rules.rinse_arms import RinseFlow, flow_now
from diagnose.rules.told import plates_told, reading_told
from diagnose.units import Quantity, find_unit

__all__ = ["expected_rise", "judge_rise"]

SHORT_FROM = 0.80  # of what the heat should give; under it the heat is not taken up; judgement
RATED_FROM = 0.85  # of the rated rise; under it the booster gives less than its plate; judgement


def judge_rise(facts: Facts, name: str, heat: Heat | Silent, rated: Heat | Silent) -> Finding | Silent | None:
    """A rise read against the heat measured, and against the rated heat, at the flow there is.

    Without heat and flow both measured a short rise is only that: too much water looks like a limed coil.
    """
    reading, check = facts.fresh(name), facts.check(name)
    if reading is None or check is None:
        return None
    flow = flow_now(facts)
    if isinstance(heat, Silent) or isinstance(rated, Silent) or flow is None:
        why = heat if isinstance(heat, Silent) else rated if isinstance(rated, Silent) else Silent("no rinse flow")
        return Silent(f"{check.title}: {why.why}")
    seen, own = reading.value.si, spread(check, reading.value, reading) * reading.value.unit.factor
    now, full = rise_of_flow(heat.power, flow.value), rise_of_flow(rated.power, flow.value)
    short = _share_under(seen, SHORT_FROM * now, own, now * math.hypot(heat.error, flow.error))
    low = _share_under(seen, RATED_FROM * full, own, full * math.hypot(rated.error, flow.error))
    known = heat.read and bool(flow.consults)
    if known:
        weights = {"short_for_input": short, "as_input": (1 - short) * low, "as_rated": (1 - short) * (1 - low)}
    else:
        weights = {"short": low, "as_rated": 1 - low}
    outcome = max(weights, key=lambda o: weights[o])
    system = system_of(reading.value.unit)
    taken = heat if known else rated
    share = seen / max(now if known else full, 1e-9)
    working = [
        *taken.lines,
        _rise_line(taken, flow, system),
        f"Read: {reading.value} = {share * 100:.0f} % of that.",
    ]
    if outcome == "as_input":
        working.append(f"Rated heat would give {_shown(full, system)}: it is the heat put in that is short.")
    plates = facts.assumed(*dict.fromkeys((*taken.plate, *rated.plate, *flow.plate)))
    consults = [*taken.consults, *rated.consults, *flow.consults]
    return facts.conclude(name, weights, name, [reading], consults, [*working, *plates], _SAYS[outcome])


def expected_rise(facts: Facts, heat: Heat | Silent) -> Expected | None:
    """The rise that the heat measured, or else rated, gives the flow there is."""
    flow, plate = flow_now(facts), facts.plate("rinse_flow")
    if isinstance(heat, Silent) or flow is None or plate is None:
        return None
    system = system_of(plate.unit)
    unit = find_unit("C°" if system == "si" else "F°", "temperature difference")
    if unit is None:
        return None
    rise = Quantity(unit.from_si(rise_of_flow(heat.power, flow.value)), unit)
    line = f"{rise.value:.0f} {unit.symbol} or more ({heat.words}; flow {flow.origin})"
    plates = tuple(dict.fromkeys((*heat.plate, *flow.plate)))
    read = [line for reading in (*heat.consults, *flow.consults) for line in reading_told(facts, reading)]
    working = (*plates_told(facts, *plates), *dict.fromkeys(read), *heat.lines, _rise_line(heat, flow, system))
    return Expected((line,), rise, None, facts.assumed(*heat.plate, *flow.plate), "heat balance", working)


def _rise_line(heat: Heat, flow: RinseFlow, system: str) -> str:
    line = said("booster-rise", system, power=heat.power, flow=flow.value)[0]
    return f"{line} of rise ({heat.words}; flow {flow.origin})."


def _shown(rise: float, system: str) -> str:
    return f"{rise:.0f} C°" if system == "si" else f"{rise * 1.8:.0f} F°"


def _share_under(seen: float, edge: float, *errors: float) -> float:
    """Share of the reading, with all its errors, that lies under an edge."""
    return normal_share((edge - seen) / max(math.hypot(*errors), 1e-9))


_SAYS = {
    "as_rated": "The rise is what the booster is rated for.",
    "as_input": "The rise is what the heat put in gives: too little heat gets to the booster.",
    "short_for_input": "The heat goes in, the rise does not come out: it is not taken up by the water.",
    "short": "The rise is short; whether the heat goes in, or too much water runs, was not measured.",
}
