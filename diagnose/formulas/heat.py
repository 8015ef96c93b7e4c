"""Heat into water, as the trade asks it."""

from __future__ import annotations

from diagnose.formulas.formula import Answer, Argument, Formula
from diagnose.physics import heat

__all__ = ["FORMULAS"]

_FLOW = Argument("flow", "Rinse flow", "flow", "gpm", "L/min", plate="rinse_flow")
_POWER = Argument("power", "Heater power", "power", "kW", plate="booster_power")

FORMULAS: tuple[Formula, ...] = (
    Formula(
        id="booster-rise",
        subject="heat",
        title="Rise a booster gives the rinse",
        asks="How many degrees does this power give this flow?",
        run=heat.rise_of_flow,
        takes=(_POWER, _FLOW),
        gives=(Answer("rise", "Rise", "temperature difference", "F°", "C°"),),
        us=("{power} × 3412 ÷ (500 × {flow}) = {rise}",),
        si=("{power} × 14.36 ÷ {flow} = {rise}",),
        also=("temperature rise", "booster"),
    ),
)
