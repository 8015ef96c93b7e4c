"""A quantity in the other system of units, rounded as its reader would: 180 °F is 82 °C, not 82.22."""

from __future__ import annotations

import math

from diagnose.units.quantity import Quantity, show_number
from diagnose.units.table import Unit, find_unit

__all__ = ["counterpart", "in_system"]

# (dimension, US unit, its fellow in SI); a unit named in neither column belongs to both systems.
_FELLOWS = (
    ("temperature", "°F", "°C"),
    ("temperature difference", "F°", "C°"),
    ("pressure", "psi", "kPa"),
    ("pressure", "inWG", "Pa"),
    ("flow", "gpm", "L/min"),
    ("flow", "gph", "L/h"),
    ("air flow", "cfm", "m3/h"),
    ("air speed", "fpm", "m/s"),
    ("power", "hp", "kW"),
    ("power", "BTU/h", "kW"),
    ("length", "in", "mm"),
    ("length", "ft", "m"),
    ("speed", "ft/min", "m/min"),
    ("speed", "ft/s", "m/s"),
    ("area", "in2", "cm2"),
    ("area", "ft2", "m2"),
    ("volume", "gal", "L"),
    ("volume", "ft3", "m3"),
    ("volume", "fl oz", "mL"),
    ("mass", "lb", "kg"),
    ("mass", "oz", "g"),
    ("mass", "gr", "g"),
    ("mass flow", "lb/h", "kg/h"),
    ("density", "lb/ft3", "kg/m3"),
    ("force", "lbf", "N"),
    ("torque", "lbf·ft", "N·m"),
    ("torque", "lbf·in", "N·m"),
    ("energy", "BTU", "kJ"),
    ("heat loss", "BTU/(h·F°)", "W/C°"),
    ("loss per length", "BTU/(h·ft·F°)", "W/(m·C°)"),
    ("resistance per length", "ohm/kft", "ohm/km"),
    ("specific heat", "BTU/(lb·F°)", "kJ/(kg·C°)"),
    ("heat per mass", "BTU/lb", "kJ/kg"),
    ("heating value", "BTU/ft3", "MJ/m3"),
    ("flow factor", "gpm/√psi", "L/min/√bar"),
    ("slope", "in/ft", "mm/m"),
    ("hardness", "gpg", "mg/L"),
)
# SI units that have no line of their own above, and the US unit that stands for them.
_BACK = {
    ("pressure", "bar"): "psi",
    ("temperature", "K"): "°F",
    ("length", "cm"): "in",
    ("heating value", "kWh/m3"): "BTU/ft3",
}
# Written so in the trade of either system, and left as they are.
_KEPT = {("power", "kW"), ("power", "W"), ("hardness", "°dH"), ("hardness", "°f"), ("hardness", "mmol/L")}


def counterpart(unit: Unit, system: str) -> Unit:
    """The unit that says the same in `system` ("us" or "si"); the unit itself where it belongs there already.

    >>> from diagnose.units import find_unit
    >>> counterpart(find_unit("psi", "pressure"), "si").symbol, counterpart(find_unit("A", "current"), "si").symbol
    ('kPa', 'A')
    """
    key = (unit.dimension, unit.symbol)
    if unit.system in ("both", system) or key in _KEPT:
        return unit
    if system == "us" and key in _BACK:
        return find_unit(_BACK[key], unit.dimension) or unit
    for dimension, us, si in _FELLOWS:
        if dimension == unit.dimension and unit.symbol == (us if system == "si" else si):
            return find_unit(si if system == "si" else us, dimension) or unit
    return unit


def in_system(quantity: Quantity, system: str) -> Quantity:
    """The quantity in `system`, rounded to a step about as fine as the one it was written with.

    >>> from diagnose.units import parse_quantity
    >>> str(in_system(parse_quantity("180 °F", "temperature"), "si"))
    '82 °C'
    >>> str(in_system(parse_quantity("4.2 gpm", "flow"), "si"))
    '15.9 L/min'
    """
    unit = counterpart(quantity.unit, system)
    if unit == quantity.unit:
        return quantity
    written = show_number(quantity.value)
    step = 10.0 ** -len(written.partition(".")[2]) * quantity.unit.factor / unit.factor
    value = unit.from_si(quantity.si)
    if not unit.offset and value:  # never off by more than a tenth: 2 hp is 1.5 kW, and not 1
        step = min(step, abs(value) / 10)
    decimals = max(0, math.ceil(-math.log10(2 * step) - 1e-9))
    return Quantity(round(value, decimals), unit)
