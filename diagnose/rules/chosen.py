"""Outcomes chosen from a list: what was seen is taken as seen."""

from __future__ import annotations

from diagnose.model import Finding
from diagnose.rules.facts import Facts, Silent

__all__ = ["chosen_outcome"]


def chosen_outcome(facts: Facts) -> Finding | Silent | None:
    """Answer a check by the outcome that was chosen.

    Purpose: eyes and ears have no band; how far they are to be trusted is held by the check's own table.
    Formula: weight 1 on the outcome chosen.
    Source: none; what eyes and ears are worth stands in the table of each check.
    Fires: two_tank_electric_208: motor_overload.which_tripped = pump -> pump
    Silent: two_tank_electric_208: rinse_thermometer.panel_reading = 172 F
    """
    silent: Silent | None = None
    for (stage, name), reading in facts.newest.items():
        check = facts.check(name)
        if stage != facts.stage or reading.outcome is None or reading.values or check is None:
            continue
        if reading.id in facts.spent:
            continue
        if facts.finding(name) is not None:
            silent = Silent(f"{check.title}: answered by the readings it is worked out from")
            continue
        if reading.outcome not in check.outcomes:
            silent = Silent(f"{check.title}: no outcome {reading.outcome}; use {', '.join(check.outcomes)}")
            continue
        gap = " " if check.title.endswith("?") else ": "
        says = f"{check.title}{gap}{check.outcomes[reading.outcome].title}."
        return facts.conclude(name, {reading.outcome: 1.0}, "chosen_outcome", [reading], says=says)
    return silent
