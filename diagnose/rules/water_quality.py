"""Softener: is it used up, or does raw water go round it, told from three tests of hardness?"""

from __future__ import annotations

from diagnose.formulas import said, system_of
from diagnose.model import Finding, Reading
from diagnose.physics.water import trade_class, usgs_class
from diagnose.rules.bands import normal_share
from diagnose.rules.facts import Facts, Silent
from diagnose.rules.instruments import spread
from diagnose.units import Quantity, show_number

__all__ = ["softener"]

HARDLY = 51.0  # mg/L, 3 gpg: under it a softener has nothing to show; judgement
SOFT = 0.2  # share of the raw hardness that a working softener may leave; judgement


def softener(facts: Facts) -> Finding | Silent | None:
    """Tell a used-up softener from an open bypass by hardness before it, behind it, and at the machine.

    Purpose: both leave hard water at the machine; only the softener's own outlet parts them.
    Formula: share round the softener = (machine - outlet) / (raw - outlet); above a fifth something is wrong.
    Source: conservation of mass; a fifth of the raw hardness is judgement.
    Fires: single_tank_chemical_208: water_quality.softener = 20 1 8 gpg -> bypassed
    Silent: single_tank_chemical_208: rinse_arms.water_hardness = 8 gpg
    """
    name = "water_quality.softener"
    reading, check = facts.fresh(name), facts.check(name)
    if reading is None or check is None:
        return None
    raw, outlet, machine = (q.si for q in reading.values.values())
    unit = reading.values["raw"].unit
    if raw < HARDLY:
        return Silent(f"{check.title}: the raw water is soft already; a softener has nothing to show")
    error = spread(check, reading.values["raw"], reading) * unit.factor / raw
    exhausted = normal_share((outlet / raw - SOFT) / error)
    round_it = normal_share(((machine - outlet) / raw - SOFT) / error) * (1 - exhausted)
    weights = {"sound": max(1 - exhausted - round_it, 0.0), "exhausted": exhausted, "bypassed": round_it}
    outcome = max(weights, key=lambda o: weights[o])
    return facts.conclude(
        name, weights, name, [reading], (), _words(facts, reading, raw, outlet, machine), _SAYS[outcome]
    )


def _words(facts: Facts, reading: Reading, raw: float, outlet: float, machine: float) -> list[str]:
    unit = reading.values["raw"].unit
    system = system_of(unit)
    left = f"{outlet / raw * 100:.0f} % of the raw hardness is left, at the machine {machine / raw * 100:.0f} %."
    words = [f"Behind the softener {left}"]
    if outlet <= machine <= raw and outlet < raw:
        words.extend(
            f"{line} % goes round it." for line in said("bypass-share", system, mixed=machine, hard=raw, soft=outlet)
        )
    at = show_number(unit.from_si(machine), 3)
    words.append(
        f"{at} {unit.symbol} is {usgs_class(machine)} by the public survey and {trade_class(machine)} by the trade."
    )
    water = facts.plate("rinse_per_rack")
    if water is not None:
        mass = Quantity.of_si(machine * water.si * 100 / 1e3, "mass", "oz" if system == "us" else "g")
        words.append(f"At most {show_number(mass.value, 3)} {mass.unit.symbol} of scale a 100 racks ({water} a rack).")
    return [*words, *facts.assumed(*(("rinse_per_rack",) if water is not None else ()))]


_SAYS = {
    "sound": "Soft behind the softener and at the machine.",
    "exhausted": "Hard behind the softener already: it is used up or does not regenerate.",
    "bypassed": "Soft behind the softener, hard at the machine: raw water goes round it.",
}
