"""The booster's relief valve: pressure before and after heating, and what it lets out, against the expansion."""

from __future__ import annotations

import math
from dataclasses import dataclass

from diagnose.formulas import said, system_of
from diagnose.model import Finding, Reading
from diagnose.physics.expansion import expanded_volume
from diagnose.rules.bands import normal_share
from diagnose.rules.facts import Expected, Facts, Silent
from diagnose.rules.instruments import spread
from diagnose.rules.told import plates_told, reading_told, shown
from diagnose.units import Quantity, parse_quantity

__all__ = ["caught", "expected_caught", "expected_pair", "standing_pair"]

PAIR, CAUGHT = "relief_valve.standing_pair", "relief_valve.caught"
CUT_OUT, INLET = "booster_control.cut_out", "supply_water.inlet_temperature"
CLIMB = parse_quantity("15 psi", "pressure").si  # more than a free line climbs as the booster heats; judgement
CLIMB_SPREAD = parse_quantity("4 psi", "pressure").si  # one line differs from another by this; judgement
HIGH_SHARE = 0.75  # of the stamp: a valve may simmer from there on; judgement
DRY_SHARE = 0.05  # of the expansion: less is a drop at the end of a pipe; judgement
BEYOND_SHARE = 1.5  # of the expansion: more than water that only grows can make; judgement
ERROR = 0.15  # of the expansion: the booster's gallons and the two temperatures are not better known; judgement
HOTTEST = 363.0  # K, as far as the density reaches; a few degrees more change it by 1 % of the whole
HEATED = parse_quantity("188 °F", "temperature").si  # where a thermostat usually cuts; common practice


def standing_pair(facts: Facts) -> Finding | Silent | None:
    """Judge the pressure at the booster right after a rinse and as its heat is cut, rinse valve shut.

    Purpose: a relief valve that blows may be right: water that is heated with no way out climbs, and a line may
    stand too high from the start. Only one that blows on a quiet line is at fault itself.
    Formula: high from the start: after the rinse above 0.75 of the stamp; climbs: heat cut less after the rinse
    more than 15 psi; else steady.
    Source: a valve may simmer from about three quarters of its stamp; 0.75 and 15 psi are judgement.
    Fires: two_tank_electric_208 (relief_pressure = 125 psi): relief_valve.standing_pair = 23 118 psi -> climbs
    Fires: two_tank_electric_208 (relief_pressure = 125 psi): relief_valve.standing_pair = 100 104 psi -> stands_high
    Fires: two_tank_electric_208 (relief_pressure = 150 psi): relief_valve.standing_pair = 100 104 psi -> steady
    Silent: two_tank_electric_208: rinse_gauge.static_pressure = 60 psi
    """
    reading, check, stamp = facts.fresh(PAIR), facts.check(PAIR), facts.plate("relief_pressure")
    if reading is None or check is None:
        return None
    if stamp is None or stamp.si <= 0:
        return Silent(f"{check.title}: needs the pressure stamped on the relief valve")
    before, after = reading.values["after a rinse"], reading.values["heat cut"]
    errors = [spread(check, value, reading) * value.unit.factor for value in (before, after)]
    climbs = normal_share((after.si - before.si - CLIMB) / math.hypot(*errors, CLIMB_SPREAD))
    high = normal_share((before.si - HIGH_SHARE * stamp.si) / errors[0])
    weights = {"steady": (1 - high) * (1 - climbs), "climbs": (1 - high) * climbs, "stands_high": high}
    unit = before.unit.symbol
    rise = shown(max(after.si - before.si, 0.0), "pressure", unit)
    working = [
        f"{after} as the heat is cut − {before} after the rinse = {rise}; a free line climbs "
        f"{shown(CLIMB, 'pressure', unit)} at most.",
        f"Stamp {stamp}: {after} is {after.si / stamp.si * 100:.0f} % of it; "
        f"from {HIGH_SHARE * 100:.0f} % on a valve may simmer.",
        *facts.assumed("relief_pressure"),
    ]
    return facts.conclude(
        PAIR, weights, PAIR, [reading], (), working, _PAIR_SAYS[max(weights, key=lambda o: weights[o])]
    )


def expected_pair(facts: Facts, check: str) -> Expected | None:
    """What a line with room to expand shows: its standing pressure, and little more when hot."""
    stamp, plate = facts.plate("relief_pressure"), facts.plate("rinse_pressure")
    if stamp is None or plate is None or stamp.si <= 0:
        return None
    least = shown(HIGH_SHARE * stamp.si, "pressure", stamp.unit.symbol)
    climb = shown(CLIMB, "pressure", stamp.unit.symbol)
    working = (
        *plates_told(facts, "relief_pressure", "rinse_pressure"),
        f"Three quarters of {stamp} is {least}: from there on a valve may simmer (judgement).",
        f"A line with room to expand climbs {climb} at most as it heats (judgement).",
    )
    line = f"both under {least}, and within {climb} of one another"
    basis = "stamp of the valve and judgement"
    return Expected((line,), None, None, facts.assumed("relief_pressure"), basis, working)


@dataclass(frozen=True)
class _Growth:
    """What the booster's water must get rid of in one heating, and what that rests on."""

    volume: float
    cold: float
    hot: float
    consults: tuple[Reading | None, Reading | None]

    @property
    def more(self) -> float:
        return expanded_volume(self.volume, self.cold, self.hot)


def _growth(facts: Facts) -> _Growth | None:
    volume, inlet = facts.plate("booster_volume"), facts.plate("booster_inlet")
    cold_read, hot_read = facts.now(INLET), facts.now(CUT_OUT)
    if volume is None or volume.si <= 0 or (cold_read is None and inlet is None):
        return None
    cold = cold_read.value.si if cold_read is not None else inlet.si if inlet is not None else HOTTEST
    hot = min(hot_read.value.si if hot_read is not None else HEATED, HOTTEST)
    return _Growth(volume.si, cold, hot, (cold_read, hot_read)) if cold < hot else None


def caught(facts: Facts) -> Finding | Silent | None:
    """Set what came from the relief pipe in one heating against what the booster's water must get rid of.

    Purpose: a cupful at each heating is water that grew and had no other way; more, or water that never stops, is a
    valve that leaks. How much a cupful may be is a matter of the booster's gallons and its two temperatures.
    Formula: V_more = V (ρ_cold ÷ ρ_hot − 1); up to 1.5 of it is expansion, under 0.05 of it nothing.
    Source: conservation of mass; density of water; 1.5, 0.05 and 15 % of error are judgement.
    Fires: two_tank_electric_208 (booster_volume = 3 gal): relief_valve.caught = 6 fl oz -> as_expansion
    Fires: two_tank_electric_208 (booster_volume = 3 gal): relief_valve.caught = 40 fl oz -> beyond
    Fires: two_tank_electric_208 (booster_volume = 20 gal): relief_valve.caught = 40 fl oz -> as_expansion
    Silent: two_tank_electric_208: relief_valve.standing_pair = 23 118 psi
    """
    reading, check = facts.fresh(CAUGHT), facts.check(CAUGHT)
    if reading is None or check is None:
        return None
    growth = _growth(facts)
    if growth is None:
        return Silent(f"{check.title}: needs the booster's volume, and water that enters colder than it is heated to")
    own = spread(check, reading.value, reading) * reading.value.unit.factor
    dry = normal_share((DRY_SHARE * growth.more - reading.value.si) / math.hypot(own, ERROR * DRY_SHARE * growth.more))
    most = BEYOND_SHARE * growth.more
    beyond = normal_share((reading.value.si - most) / math.hypot(own, ERROR * most))
    weights = {"nothing": dry, "as_expansion": max(1 - dry - beyond, 0.0), "beyond": beyond}
    share = reading.value.si / growth.more
    working = [
        *_computed(facts, growth),
        f"Caught: {reading.value} = {share:.2f} of it; up to {BEYOND_SHARE} counts as expansion.",
        *facts.assumed("booster_volume", *(() if growth.consults[0] is not None else ("booster_inlet",))),
    ]
    says = _CAUGHT_SAYS[max(weights, key=lambda o: weights[o])]
    return facts.conclude(CAUGHT, weights, CAUGHT, [reading], growth.consults, working, says)


def _computed(facts: Facts, growth: _Growth) -> list[str]:
    plate = facts.plate("booster_volume")
    system = system_of(plate.unit) if plate is not None else "us"
    words = said("water-expansion", system, volume=growth.volume, cold=growth.cold, hot=growth.hot)
    usual = () if growth.consults[1] is not None else ("Heat taken as cut at 188 °F, as is usual; not read here.",)
    return [*usual, *words]


def expected_caught(facts: Facts, check: str) -> Expected | None:
    """Nothing where the line has room; the expansion where it has none."""
    growth = _growth(facts)
    if growth is None:
        return None
    plate = facts.plate("booster_volume")
    unit = "fl oz" if plate is None or system_of(plate.unit) == "us" else "mL"
    names = ("booster_volume",) if growth.consults[0] is not None else ("booster_volume", "booster_inlet")
    working = (
        *plates_told(facts, *names),
        *(line for reading in growth.consults for line in reading_told(facts, reading)),
        *_computed(facts, growth),
        f"Up to {BEYOND_SHARE} of that counts as expansion (judgement).",
    )
    line = f"nothing; with nowhere to expand about {shown(growth.more, 'volume', unit, 2)} each time it heats up"
    most = Quantity.of_si(DRY_SHARE * growth.more, "volume", unit)
    return Expected((line,), None, most, facts.assumed(*names), "density of water; judgement", working)


_PAIR_SAYS = {
    "steady": "The line is quiet: what the valve lets out is its own doing.",
    "climbs": "Pressure climbs as the water heats: it has nowhere to expand, or the heat goes too far.",
    "stands_high": "The line stands near the valve's stamp before it is heated at all.",
}
_CAUGHT_SAYS = {
    "nothing": "Nothing to speak of came while it heated.",
    "as_expansion": "What came is what the water had to get rid of as it grew.",
    "beyond": "More came than the water's growth makes: the valve itself lets it by.",
}
