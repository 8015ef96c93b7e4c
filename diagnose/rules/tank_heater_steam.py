"""Steam coil of a tank: the condensate weighed against what its rated heat makes."""

from __future__ import annotations

import math

from diagnose.formulas import said, system_of
from diagnose.model import Finding
from diagnose.physics.steam import latent_heat_at_gauge
from diagnose.rules.bands import normal_share
from diagnose.rules.facts import Expected, Facts, Silent
from diagnose.rules.instruments import spread
from diagnose.rules.tank_balance import tank_meant
from diagnose.rules.tank_heat import CONDENSATE
from diagnose.rules.told import plates_told
from diagnose.units import Quantity, find_unit

__all__ = ["condensate", "expected_condensate"]

SCANT_FROM, SHORT_FROM, MUCH_FROM = 0.15, 0.75, 1.5  # of the condensate reckoned; judgement
RATING = 0.10  # error of a coil's rating: the water it was rated in was warmer or colder; judgement


def condensate(facts: Facts) -> Finding | Silent | None:
    """Judge the condensate of a tank's coil by what its rated heat makes.

    Purpose: condensate is the heat that has gone through the coil, whatever the tank's temperature says; the same
    48 lb/h are full heat on a coil of 14 kW and a fault on one of 20.
    Formula: m = P / h_fg at the plate's pressure; short under 75 %, next to none under 15 %, too much from 150 %.
    Source: steam table (IAPWS R7-97); the shares are judgement.
    Fires: two_tank_steam_208 (tank_power = 20 kW): tank_heater_steam.condensate = 48 lb/h -> short
    Fires: two_tank_steam_208 (tank_power = 14 kW): tank_heater_steam.condensate = 48 lb/h -> as_rated
    Silent: two_tank_steam_208 (tank_power = 0 kW): tank_heater_steam.condensate = 48 lb/h
    """
    reading, check = facts.fresh(CONDENSATE), facts.check(CONDENSATE)
    if reading is None or check is None:
        return None
    wanted = _wanted(facts)
    if wanted is None:
        return Silent(f"{check.title}: the coil's rated heat and steam pressure must be known")
    ratio = reading.value.si / wanted
    own = spread(check, reading.value, reading) / max(reading.value.value, 1e-9)
    error = math.hypot(min(own, 0.2), RATING) * max(ratio, 0.1)
    short, scant = normal_share((SHORT_FROM - ratio) / error), normal_share((SCANT_FROM - ratio) / error)
    much = normal_share((ratio - MUCH_FROM) / error)
    weights = {"as_rated": max(1 - short - much, 0.0), "short": short - scant, "scant": scant, "too_much": much}
    outcome = max(weights, key=lambda o: weights[o])
    system, power, plate = system_of(reading.value.unit), tank_meant(facts).power, facts.plate("steam_pressure")
    heat = said("condensate-heat", system, condensate=reading.value.si, gauge=plate.si) if plate else ()
    made = reading.value.unit.from_si(wanted)
    working = [
        *_lines(facts, made, reading.value.unit.symbol),
        *heat,
        f"Read: {reading.value} = {ratio * 100:.0f} % of what the rated heat makes.",
    ]
    plates = facts.assumed(power, "steam_pressure")
    return facts.conclude(CONDENSATE, weights, CONDENSATE, [reading], (), [*working, *plates], _SAYS[outcome])


def _wanted(facts: Facts) -> float | None:
    """Condensate that the rated heat makes, kg/s."""
    power, steam = facts.plate(tank_meant(facts).power), facts.plate("steam_pressure")
    if power is None or steam is None or power.si <= 0 or steam.si <= 0:
        return None
    return power.si / latent_heat_at_gauge(steam.si)


def _lines(facts: Facts, made: float, unit: str) -> tuple[str, ...]:
    steam, power = facts.plate("steam_pressure"), facts.plate(tank_meant(facts).power)
    if steam is None or power is None:
        return ()
    latent, factor = latent_heat_at_gauge(steam.si), 3600.0
    shown = f"{latent / 1e3:.0f} kJ/kg"
    if unit == "lb/h":
        latent, factor = latent / 2326.0, 3412.0
        shown = f"{latent:.0f} BTU/lb"
    kilowatts = power.si / 1e3
    return (f"{kilowatts:.4g} kW × {factor:.0f} ÷ {shown} at {steam} = {made:.1f} {unit}",)


def expected_condensate(facts: Facts, check: str) -> Expected | None:
    """What the rated heat of this tank's coil makes."""
    wanted, steam = _wanted(facts), facts.plate("steam_pressure")
    unit = find_unit("kg/h" if steam and system_of(steam.unit) == "si" else "lb/h", "mass flow")
    if wanted is None or unit is None:
        return None
    made = unit.from_si(wanted)
    line = f"about {made:.0f} {unit.symbol}, {made / 30:.1f} {unit.symbol[:2]} in two minutes"
    low, high = Quantity(made * SHORT_FROM, unit), Quantity(made * MUCH_FROM, unit)
    plate = (tank_meant(facts).power, "steam_pressure")
    working = (*plates_told(facts, *plate), *_lines(facts, made, unit.symbol))
    return Expected((line,), low, high, facts.assumed(*plate), "steam table and the plate", working)


_SAYS = {
    "as_rated": "The coil gives its rated heat: what is missing in the tank is lost elsewhere.",
    "short": "The coil gives less than its rated heat.",
    "scant": "Next to no heat goes through the coil.",
    "too_much": "More than the rated heat can make: steam blows through, or tank water leaks in.",
}
