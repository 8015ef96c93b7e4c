"""Steam at the machine: the heat of its pipe against the pressure on its gauge."""

from __future__ import annotations

import math

from diagnose.formulas import said, system_of
from diagnose.model import Finding, Reading
from diagnose.physics.steam import steam_temperature_at_gauge
from diagnose.rules.bands import normal_share
from diagnose.rules.facts import Expected, Facts, Silent
from diagnose.rules.instruments import spread
from diagnose.rules.told import plates_told, reading_told, shown
from diagnose.units import Quantity, parse_quantity

__all__ = ["expected_pipe", "pipe_heat"]

PIPE, GAUGE = "supply_steam.pipe_heat", "supply_steam.pressure_at_machine"
# The skin of a pipe under lagging is a little cooler than its steam; how much, and how surely: judgement.
SKIN, SKIN_ERROR, APART = (parse_quantity(q, "temperature difference").si for q in ("5 F°", "5 F°", "15 F°"))


def pipe_heat(facts: Facts) -> Finding | Silent | None:
    """Judge the heat of the steam pipe by what the gauge beside it says.

    Purpose: saturated steam has one temperature for each pressure, so a pipe at 254 °F beside a gauge at 5 psi
    is a gauge that lies; a pipe at 150 °F beside 20 psi has no steam in it, or the gauge sticks.
    Formula: pipe - (saturation temperature at the gauge - 5 F°); over 15 F° either way they cannot both be right.
    Source: steam tables (IAPWS-IF97); 5 and 15 F° are judgement.
    Fires: two_tank_steam_208: supply_steam.pressure_at_machine = 5 psi; supply_steam.pipe_heat = 254 F -> hotter
    Silent: two_tank_steam_208: supply_steam.pipe_heat = 254 F
    """
    reading, check, gauge = facts.fresh(PIPE), facts.check(PIPE), facts.now(GAUGE)
    if reading is None or check is None:
        return None
    if gauge is None:
        return Silent(f"{check.title}: needs the steam pressure at the machine")
    steam = steam_temperature_at_gauge(gauge.value.si)
    higher = steam_temperature_at_gauge(gauge.value.si + _error(facts, gauge))
    sigma = math.hypot(_error(facts, reading), SKIN_ERROR, higher - steam)
    apart = reading.value.si - (steam - SKIN)
    hotter, cooler = normal_share((apart - APART) / sigma), normal_share((-apart - APART) / sigma)
    weights = {"hotter": hotter, "cooler": cooler, "agrees": max(1 - hotter - cooler, 0.0)}
    outcome = max(weights, key=lambda o: weights[o])
    sign = reading.value.unit.symbol
    working = [
        *said("steam-temperature", system_of(reading.value.unit), gauge=gauge.value.si),
        f"A pipe's skin stands some 5 F° under its steam: {shown(steam - SKIN, 'temperature', sign)} here, "
        f"and it was read at {reading.value}.",
    ]
    return facts.conclude(PIPE, weights, PIPE, [reading], [gauge], working, _SAYS[outcome])


def expected_pipe(facts: Facts, check: str) -> Expected | None:
    """The heat of the pipe by the gauge as read, or by the plate's pressure."""
    gauge, plate = facts.now(GAUGE), facts.plate("steam_pressure")
    pressure = gauge.value if gauge is not None else plate
    entry = facts.check(check)
    if pressure is None or entry is None or entry.reading is None:
        return None
    unit = "°C" if pressure.unit.system == "si" else entry.reading.unit
    middle = steam_temperature_at_gauge(pressure.si) - SKIN
    low, high = (Quantity.of_si(middle + way * APART, "temperature", unit) for way in (-1, 1))
    line = f"{shown(middle, 'temperature', unit)} on a pipe with steam of {pressure}"
    told = reading_told(facts, gauge) if gauge is not None else plates_told(facts, "steam_pressure")
    working = (*told, *said("steam-temperature", system_of(pressure.unit), gauge=pressure.si))
    assumed = () if gauge is not None else facts.assumed("steam_pressure")
    return Expected((line,), low, high, assumed, "steam tables", working)


def _error(facts: Facts, reading: Reading) -> float:
    return spread(facts.book.checks[reading.check], reading.value, reading) * reading.value.unit.factor


_SAYS = {
    "agrees": "Pipe and gauge agree: the gauge can be believed.",
    "hotter": "The pipe is hotter than steam of that pressure can be: the gauge reads low.",
    "cooler": "The pipe is cooler than steam of that pressure: the gauge reads high, or there is no steam in it.",
}
