"""The units a technician writes, each with its factor to SI."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cache, lru_cache

__all__ = ["DIMENSIONS", "UNITS", "Unit", "find_unit", "units_of"]


@dataclass(frozen=True)
class Unit:
    """One unit: `si = (value + offset) * factor`, so that only temperatures need an offset."""

    symbol: str
    dimension: str
    factor: float
    offset: float = 0.0
    aliases: tuple[str, ...] = ()
    system: str = "both"  # us | si | both

    def to_si(self, value: float) -> float:
        return (value + self.offset) * self.factor

    def from_si(self, value: float) -> float:
        return value / self.factor - self.offset


_INCH = 0.0254
_FOOT = 0.3048
_GALLON = 3.785411784e-3
_POUND = 0.45359237
_POUND_FORCE = 4.4482216152605
_PSI = _POUND_FORCE / _INCH**2
_BTU = 1055.05585262

UNITS: tuple[Unit, ...] = (
    Unit("°F", "temperature", 5 / 9, 459.67, ("F", "degF", "deg F", "fahrenheit"), "us"),
    Unit("°C", "temperature", 1.0, 273.15, ("C", "degC", "deg C", "celsius"), "si"),
    Unit("K", "temperature", 1.0, 0.0, ("kelvin",), "si"),
    # Differences are a dimension of their own: 40 °F of rise is 22.2 K, never 4.4 °C.
    Unit("F°", "temperature difference", 5 / 9, 0.0, ("°F", "F", "degF", "deg F", "fahrenheit"), "us"),
    Unit("C°", "temperature difference", 1.0, 0.0, ("K", "°C", "C", "degC", "deg C", "celsius"), "si"),
    Unit("psi", "pressure", _PSI, 0.0, ("psig", "lb/in2", "pounds"), "us"),
    Unit("kPa", "pressure", 1e3, 0.0, ("kpa",), "si"),
    Unit("bar", "pressure", 1e5, 0.0, (), "si"),
    Unit("Pa", "pressure", 1.0, 0.0, ("pa", "pascal"), "si"),
    Unit("inWG", "pressure", 249.08891, 0.0, ("in wg", "inwc", "in w.g."), "us"),
    Unit("gpm", "flow", _GALLON / 60, 0.0, ("gal/min",), "us"),
    Unit("L/min", "flow", 1e-3 / 60, 0.0, ("lpm", "l/min"), "si"),
    Unit("gph", "flow", _GALLON / 3600, 0.0, ("gal/h",), "us"),
    Unit("L/h", "flow", 1e-3 / 3600, 0.0, ("l/h", "lph"), "si"),
    Unit("mL/min", "flow", 1e-6 / 60, 0.0, ("ml/min", "cc/min"), "both"),
    Unit("cfm", "air flow", _FOOT**3 / 60, 0.0, ("ft3/min",), "us"),
    Unit("m3/h", "air flow", 1 / 3600, 0.0, ("m³/h", "cmh"), "si"),
    Unit("fpm", "air speed", _FOOT / 60, 0.0, (), "us"),
    Unit("m/s", "air speed", 1.0, 0.0, (), "si"),
    Unit("kW", "power", 1e3, 0.0, ("kw",)),
    Unit("W", "power", 1.0, 0.0, ("watt", "watts")),
    Unit("hp", "power", 745.69987158227, 0.0, ("HP", "horsepower"), "us"),
    Unit("BTU/h", "power", _BTU / 3600, 0.0, ("btu/h", "btuh"), "us"),
    Unit("A", "current", 1.0, 0.0, ("amp", "amps", "ampere"), "both"),
    Unit("mA", "current", 1e-3, 0.0, ("ma", "milliamp", "milliamps")),
    Unit("V", "voltage", 1.0, 0.0, ("v", "volt", "volts")),
    Unit("mV", "voltage", 1e-3, 0.0, ("millivolt", "millivolts")),
    Unit("ohm", "resistance", 1.0, 0.0, ("Ω", "ohms", "R")),
    Unit("kohm", "resistance", 1e3, 0.0, ("kΩ", "k")),
    Unit("Mohm", "resistance", 1e6, 0.0, ("MΩ", "megohm", "megohms", "meg")),
    Unit("in", "length", _INCH, 0.0, ("inch", "inches", '"'), "us"),
    Unit("ft", "length", _FOOT, 0.0, ("foot", "feet", "'"), "us"),
    Unit("mm", "length", 1e-3, 0.0, (), "si"),
    Unit("cm", "length", 1e-2, 0.0, (), "si"),
    Unit("m", "length", 1.0, 0.0, ("metre", "meter"), "si"),
    Unit("ft/min", "speed", _FOOT / 60, 0.0, (), "us"),
    Unit("m/min", "speed", 1 / 60, 0.0, (), "si"),
    Unit("ft/s", "speed", _FOOT, 0.0, (), "us"),
    Unit("m/s", "speed", 1.0, 0.0, (), "si"),
    Unit("in2", "area", _INCH**2, 0.0, ("sq in", "in²"), "us"),
    Unit("ft2", "area", _FOOT**2, 0.0, ("sq ft", "ft²"), "us"),
    Unit("cm2", "area", 1e-4, 0.0, ("cm²",), "si"),
    Unit("m2", "area", 1.0, 0.0, ("m²",), "si"),
    Unit("gal", "volume", _GALLON, 0.0, ("gallon", "gallons"), "us"),
    Unit("L", "volume", 1e-3, 0.0, ("l", "litre", "litres", "liter", "liters"), "si"),
    Unit("ft3", "volume", _FOOT**3, 0.0, ("cu ft", "ft³", "cf"), "us"),
    Unit("m3", "volume", 1.0, 0.0, ("m³",), "si"),
    Unit("fl oz", "volume", _GALLON / 128, 0.0, ("floz", "oz"), "us"),
    Unit("mL", "volume", 1e-6, 0.0, ("ml", "cc"), "si"),
    Unit("s", "time", 1.0, 0.0, ("sec", "second", "seconds")),
    Unit("min", "time", 60.0, 0.0, ("minute", "minutes")),
    Unit("h", "time", 3600.0, 0.0, ("hour", "hours")),
    Unit("lb", "mass", _POUND, 0.0, ("lbs",), "us"),
    Unit("kg", "mass", 1.0, 0.0, (), "si"),
    Unit("oz", "mass", _POUND / 16, 0.0, ("ounce", "ounces"), "us"),
    Unit("g", "mass", 1e-3, 0.0, ("gram", "grams"), "si"),
    Unit("gr", "mass", 6.479891e-5, 0.0, ("grain", "grains"), "us"),
    Unit("lb/h", "mass flow", _POUND / 3600, 0.0, ("lb/hr",), "us"),
    Unit("kg/h", "mass flow", 1 / 3600, 0.0, (), "si"),
    Unit("lb/ft3", "density", _POUND / _FOOT**3, 0.0, ("lb/ft³",), "us"),
    Unit("kg/m3", "density", 1.0, 0.0, ("kg/m³",), "si"),
    Unit("lbf", "force", _POUND_FORCE, 0.0, ("lb",), "us"),
    Unit("N", "force", 1.0, 0.0, (), "si"),
    Unit("lbf·ft", "torque", _POUND_FORCE * _FOOT, 0.0, ("lbf ft", "lb ft", "ft lb", "ftlb", "lbft"), "us"),
    Unit("lbf·in", "torque", _POUND_FORCE * _INCH, 0.0, ("lbf in", "lb in", "in lb", "inlb", "lbin"), "us"),
    Unit("N·m", "torque", 1.0, 0.0, ("Nm", "N m"), "si"),
    Unit("kWh", "energy", 3.6e6, 0.0, ("kwh",)),
    Unit("BTU", "energy", _BTU, 0.0, ("btu",), "us"),
    Unit("kJ", "energy", 1e3, 0.0, ("kj",), "si"),
    Unit("BTU/(h·F°)", "heat loss", _BTU / 3600 * 1.8, 0.0, ("btu/h/f", "BTU/hF"), "us"),
    Unit("W/C°", "heat loss", 1.0, 0.0, ("W/K", "w/c"), "si"),
    Unit("BTU/(h·ft·F°)", "loss per length", _BTU / 3600 * 1.8 / _FOOT, 0.0, ("btu/h/ft/f",), "us"),
    Unit("W/(m·C°)", "loss per length", 1.0, 0.0, ("W/m/K", "W/mK"), "si"),
    Unit("ohm/kft", "resistance per length", 1e-3 / _FOOT, 0.0, ("ohm/1000ft", "ohms per thousand feet"), "us"),
    Unit("ohm/km", "resistance per length", 1e-3, 0.0, ("ohms per km",), "si"),
    Unit("BTU/(lb·F°)", "specific heat", _BTU / _POUND * 1.8, 0.0, ("btu/lb/f",), "us"),
    Unit("kJ/(kg·C°)", "specific heat", 1e3, 0.0, ("kJ/kg/K", "kJ/kgK"), "si"),
    Unit("BTU/lb", "heat per mass", _BTU / _POUND, 0.0, ("btu/lb",), "us"),
    Unit("kJ/kg", "heat per mass", 1e3, 0.0, ("kj/kg",), "si"),
    Unit("BTU/ft3", "heating value", _BTU / _FOOT**3, 0.0, ("BTU/ft³", "btu/cf"), "us"),
    Unit("MJ/m3", "heating value", 1e6, 0.0, ("MJ/m³",), "si"),
    Unit("kWh/m3", "heating value", 3.6e6, 0.0, ("kWh/m³",), "si"),
    Unit("gpm/√psi", "flow factor", _GALLON / 60 / _PSI**0.5, 0.0, ("K", "gpm/psi^0.5"), "us"),
    Unit("L/min/√bar", "flow factor", 1e-3 / 60 / 1e5**0.5, 0.0, ("l/min/bar^0.5",), "si"),
    Unit("in/ft", "slope", 1 / 12, 0.0, ("in per ft",), "us"),
    Unit("mm/m", "slope", 1e-3, 0.0, (), "si"),
    Unit("%", "share", 0.01, 0.0, ("percent", "pct")),
    Unit("ppm", "concentration", 1.0, 0.0, ("mg/L", "mg/l")),
    Unit("pH", "acidity", 1.0, 0.0, ("ph",)),
    Unit("gpg", "hardness", 17.118, 0.0, ("grains", "gr/gal"), "us"),
    Unit("mg/L", "hardness", 1.0, 0.0, ("ppm", "mg/l"), "si"),
    Unit("°dH", "hardness", 17.848, 0.0, ("dH", "degdH", "german degrees"), "si"),
    Unit("°f", "hardness", 10.0, 0.0, ("fH", "french degrees"), "si"),
    Unit("°e", "hardness", 14.254, 0.0, ("eH", "english degrees", "clark"), "both"),
    Unit("mmol/L", "hardness", 100.09, 0.0, ("mmol",), "si"),
    Unit("Hz", "frequency", 1.0, 0.0, ("hz",)),
    Unit("rpm", "frequency", 1 / 60, 0.0, ("r/min", "turns/min")),
    Unit("per hour", "rate", 1 / 3600, 0.0, ("/h", "perhour", "racks/h", "starts/h")),
    Unit("per minute", "rate", 1 / 60, 0.0, ("/min", "perminute", "strokes/min", "racks/min")),
    Unit("count", "count", 1.0, 0.0, ("x", "times", "racks", "pieces")),
)

DIMENSIONS: tuple[str, ...] = tuple(dict.fromkeys(u.dimension for u in UNITS))


@cache
def units_of(dimension: str) -> tuple[Unit, ...]:
    """Every unit of one dimension, in the order of the table; empty for an unknown dimension."""
    return tuple(u for u in UNITS if u.dimension == dimension)


@lru_cache(maxsize=1024)
def find_unit(text: str, dimension: str) -> Unit | None:
    """The unit of `dimension` that `text` names, exactly first, then regardless of case; else None."""
    wanted = text.strip()
    candidates = units_of(dimension)
    for fold in (str, str.lower):
        matches = [u for u in candidates if fold(wanted) in {fold(n) for n in (u.symbol, *u.aliases)}]
        if matches:
            return matches[0]
    return None
