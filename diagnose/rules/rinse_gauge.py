"""Rinse pressure: flowing against the plate and the code, and at rest against flowing."""

from __future__ import annotations

import math

from diagnose.formulas import said, system_of
from diagnose.model import Finding, Reading
from diagnose.rules.bands import Edge, band_weights, bands_of, limit_end, normal_share
from diagnose.rules.facts import Expected, Facts, Silent
from diagnose.rules.instruments import instrument_of, spread
from diagnose.rules.told import plates_told, reading_told, shown
from diagnose.units import Quantity, UnitError, parse_quantity, show_number

__all__ = ["expected_static", "flow_pressure", "static_pressure"]

PSI = parse_quantity("0 psi", "pressure").unit
CREEP_PSI = 10.0  # at rest this much over flowing is more than a regulator's usual 2 to 5 psi; judgement
CREEP_SPREAD_PSI = 2.0  # how much one regulator differs from another in that; judgement


def flow_pressure(facts: Facts) -> Finding | Silent | None:
    """Judge the flowing rinse pressure by the plate, and say where the code's wider band stands.

    Purpose: a pressure may be out of this machine's plate and yet inside the code: the plate governs.
    Formula: share of N(reading, gauge) under, in and over the plate's band.
    Source: Food Code 4-501.113 (5 to 30 psi, or 35 to 200 kPa, and the data plate's range).
    Fires: two_tank_electric_208 (rinse_pressure_least = 15 psi): rinse_gauge.flow_pressure = 12 psi -> low
    Fires: two_tank_electric_208 (rinse_pressure_least = 10 psi): rinse_gauge.flow_pressure = 12 psi -> good
    Silent: two_tank_electric_208: rinse_gauge.static_pressure = 12 psi
    """
    name = "rinse_gauge.flow_pressure"
    reading, check = facts.fresh(name), facts.check(name)
    if reading is None or check is None:
        return None
    value = reading.value
    try:
        bands = bands_of(facts.book, facts.machine, check, value.unit)
        ends = [limit_end(facts.book, facts.machine, "rinse_pressure", end, value.unit) for end in ("low", "high")]
    except (LookupError, UnitError) as error:
        return Silent(f"{check.title}: {error}")
    if not bands:
        return Silent(f"{check.title}: the check has no bands")
    weights = band_weights(bands, value.value, spread(check, value, reading))
    ordered = {o: weights[o] for o in sorted(weights, key=lambda o: not check.outcomes[o].good)}
    plate = _place(value, ends[0], ends[1])
    stands = ", ".join(dict.fromkeys(e.stands for e in ends))
    working = [
        f"Wanted here: {show_number(ends[0].value)} to {ends[1]} flowing ({stands}).",
        f"Read: {value} ({instrument_of(check, reading)}): {plate} that band.",
        *_flow_words(facts, value),
        *_code_words(facts, value),
    ]
    near = any(abs(value.value - e.value) < instrument_of(check, reading).accuracy(value) for e in ends)
    doubt = " Within the gauge's error of the limit: confirm with a test gauge." if near else ""
    says = f"{value} is {plate} the band of this machine.{doubt}"
    return facts.conclude(name, ordered, name, [reading], (), working, says)


def _place(value: Quantity, low: Edge, high: Edge) -> str:
    """Both ends of a code's band belong to it."""
    return "below" if value.value < low.value else "above" if value.value > high.value else "inside"


def _flow_words(facts: Facts, value: Quantity) -> tuple[str, ...]:
    """What this pressure drives through sound jets: low is little water, high is much."""
    plate, rated = facts.plate("rinse_flow"), facts.plate("rinse_pressure")
    if plate is None or rated is None or min(plate.si, rated.si, value.si) <= 0:
        return ()
    values = {"rated_flow": plate.si, "rated_pressure": rated.si, "pressure": value.si}
    return said("rinse-flow-at-pressure", system_of(value.unit), **values)


def _code_words(facts: Facts, value: Quantity) -> list[str]:
    try:
        low, high = (
            limit_end(facts.book, facts.machine, "rinse_pressure_code", e, value.unit) for e in ("low", "high")
        )
    except LookupError:
        return []
    place = _place(value, low, high)
    return [
        f"Widest band of the code: {show_number(low.value)} to {high} ({low.stands}): {place} it. The plate governs."
    ]


def static_pressure(facts: Facts) -> Finding | Silent | None:
    """Judge the pressure behind the regulator at rest.

    Purpose: a regulator whose seat leaks lets the main's pressure through when nothing flows.
    Formula: creep = rest - max(flowing, plate); over 10 psi creeps; under the plate's least the main is low.
    Source: common practice (2 to 5 psi is right); 10 psi is judgement. Rest says nothing of strainer or jets.
    Fires: two_tank_electric_208: rinse_gauge.flow_pressure = 20 psi; rinse_gauge.static_pressure = 60 psi
      -> creeps_up
    Fires: two_tank_electric_208: rinse_gauge.flow_pressure = 32 psi; rinse_gauge.static_pressure = 36 psi -> steady
    Silent: two_tank_electric_208: rinse_gauge.flow_pressure = 20 psi
    """
    name = "rinse_gauge.static_pressure"
    reading, check = facts.fresh(name), facts.check(name)
    if reading is None or check is None:
        return None
    flowing = facts.now("rinse_gauge.flow_pressure")
    plate, least = facts.plate("rinse_pressure"), facts.plate("rinse_pressure_least") or facts.plate("rinse_pressure")
    if plate is None or least is None:
        return Silent(f"{check.title}: needs the rinse pressure of the plate")
    rest = reading.value.to("psi")
    base = max(plate.to("psi"), flowing.value.to("psi") if flowing else 0.0)
    gauge = spread(check, reading.value, reading) * reading.value.unit.factor / PSI.factor
    creep = normal_share((rest - base - CREEP_PSI) / math.hypot(gauge, CREEP_SPREAD_PSI))
    short = normal_share((least.to("psi") - rest) / gauge)
    weights = {"steady": max(1 - creep - short, 0.0), "creeps_up": creep, "supply_low": short}
    working = _static_words(reading, flowing, plate, least)
    says = _SAYS[max(weights, key=lambda o: weights[o])]
    plates = facts.assumed("rinse_pressure", "rinse_pressure_least")
    return facts.conclude(name, weights, name, [reading], [flowing], [*working, *plates], says)


def _static_words(reading: Reading, flowing: Reading | None, plate: Quantity, least: Quantity) -> list[str]:
    words = [f"At rest {reading.value}; plate {plate} flowing, {least} at least."]
    if flowing is not None:
        words.append(
            f"Flowing {flowing.value}: at rest a sound regulator stands 2 to 5 psi higher. What falls away when "
            "water flows is lost in stop, strainer, valve and pipe, and rest says nothing of those."
        )
    else:
        words.append("Flowing pressure not read: measured against the plate's.")
    return words


def expected_static(facts: Facts, check: str) -> Expected | None:
    """A few psi above the flowing pressure, or above the plate's where that was not read."""
    flowing, plate = facts.now("rinse_gauge.flow_pressure"), facts.plate("rinse_pressure")
    base = flowing.value if flowing else plate
    if base is None:
        return None
    low, high = (Quantity(PSI.from_si(base.si) + d, PSI).as_unit(base.unit) for d in (0.0, CREEP_PSI))
    origin = "flowing pressure read" if flowing else "plate's flowing pressure"
    span = f"{show_number(low.value, 3)} to {show_number(high.value, 3)} {base.unit.symbol}"
    line = f"{span}, steady ({origin} and a little)"
    most = shown(PSI.factor * CREEP_PSI, "pressure", base.unit.symbol)
    working = (
        *(reading_told(facts, flowing) if flowing else plates_told(facts, "rinse_pressure")),
        "A sound regulator stands 2 to 5 psi higher at rest than flowing (common practice).",
        f"{base} + {most} = {high}: above that it lets water past (judgement).",
    )
    return Expected((line,), low, high, () if flowing else facts.assumed("rinse_pressure"), "common practice", working)


_SAYS = {
    "steady": "At rest the pressure stands where it should.",
    "creeps_up": "At rest the pressure climbs: the regulator lets water past.",
    "supply_low": "Even at rest the pressure is short: it is the supply.",
}
