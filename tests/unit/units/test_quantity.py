"""Quantities against pint, an independent unit library, and against what technicians type."""

from __future__ import annotations

import math
import warnings
from itertools import product

import pytest
from hypothesis import given
from hypothesis import strategies as st

from diagnose.units import DIMENSIONS, UNITS, Unit, UnitError, parse_quantity, show_number
from tests.each import holds_for_each

# Our symbol -> pint's name, and the SI unit of the dimension in pint. Hardness and concentration are conventions
# (1 grain per US gallon as CaCO3 = 17.118 mg/L: published check value, WQA as tabulated, secondary).
PINT = {
    "°F": "degF", "°C": "degC", "K": "kelvin", "F°": "delta_degF", "C°": "delta_degC", "psi": "psi", "kPa": "kPa",
    "bar": "bar", "Pa": "Pa", "inWG": "inH2O", "gpm": "gallon/minute", "L/min": "liter/minute",
    "mL/min": "mL/minute", "gr": "grain",
    "gph": "gallon/hour", "L/h": "liter/hour", "cfm": "foot**3/minute", "m3/h": "meter**3/hour",
    "fpm": "foot/minute", "m/s": "meter/second", "kW": "kW", "W": "W", "hp": "horsepower", "BTU/h": "Btu/hour",
    "A": "A", "mA": "mA", "V": "V", "ohm": "ohm", "kohm": "kiloohm", "Mohm": "megaohm", "in": "inch", "ft": "foot",
    "mm": "mm", "cm": "cm", "m": "m", "ft/min": "foot/minute", "m/min": "meter/minute", "gal": "gallon", "L": "liter",
    "s": "s", "min": "minute", "h": "hour", "lb": "pound", "kg": "kg", "lbf": "force_pound", "N": "N",
    "in/ft": "inch/foot", "mm/m": "mm/m", "%": "percent", "Hz": "1/second", "mV": "mV", "ft/s": "foot/second",
    "in2": "inch**2", "ft2": "foot**2", "cm2": "cm**2", "m2": "m**2", "fl oz": "fluid_ounce", "mL": "mL",
    "oz": "ounce", "g": "g", "lb/h": "pound/hour", "kg/h": "kg/hour", "lb/ft3": "pound/foot**3",
    "kg/m3": "kg/m**3", "lbf·ft": "force_pound*foot", "lbf·in": "force_pound*inch", "N·m": "N*m", "kWh": "kWh",
    "BTU": "Btu", "kJ": "kJ", "BTU/(h·F°)": "Btu/hour/delta_degF", "W/C°": "W/delta_degC",
    "gpm/√psi": "gallon/minute/psi**0.5", "L/min/√bar": "liter/minute/bar**0.5", "rpm": "1/minute",
    "ft3": "foot**3", "m3": "m**3", "BTU/(h·ft·F°)": "Btu/hour/foot/delta_degF", "W/(m·C°)": "W/m/delta_degC",
    "ohm/kft": "ohm/kilofoot", "ohm/km": "ohm/km",
    "BTU/(lb·F°)": "Btu/pound/delta_degF", "kJ/(kg·C°)": "kJ/kg/delta_degC", "BTU/lb": "Btu/pound", "kJ/kg": "kJ/kg",
    "BTU/ft3": "Btu/foot**3", "MJ/m3": "MJ/m**3", "kWh/m3": "kWh/m**3",
    "per hour": "1/hour", "per minute": "1/minute", "count": "dimensionless",
}  # fmt: skip
SI = {
    "temperature": "kelvin", "temperature difference": "delta_degC", "pressure": "Pa", "flow": "meter**3/second",
    "air flow": "meter**3/second", "air speed": "meter/second", "power": "W", "current": "A", "voltage": "V",
    "resistance": "ohm", "length": "m", "speed": "meter/second", "volume": "meter**3", "time": "s", "mass": "kg",
    "force": "N", "slope": "dimensionless", "share": "dimensionless", "frequency": "1/second",
    "area": "m**2", "mass flow": "kg/second", "density": "kg/m**3", "torque": "N*m", "energy": "J",
    "resistance per length": "ohm/m",
    "loss per length": "W/m/delta_degC", "specific heat": "J/kg/delta_degC", "heat per mass": "J/kg",
    "heating value": "J/m**3",
    "heat loss": "W/delta_degC", "flow factor": "m**3/second/Pa**0.5", "rate": "1/second", "count": "dimensionless",
}  # fmt: skip


@pytest.fixture(scope="module")
def registry():  # type: ignore[no-untyped-def]
    with warnings.catch_warnings():
        warnings.simplefilter("ignore")
        import pint

        return pint.UnitRegistry()


def test_conversion_agrees_with_pint(registry) -> None:  # type: ignore[no-untyped-def]
    def agrees(tried: tuple[Unit, float]) -> None:
        unit, value = tried
        theirs = registry.Quantity(value, PINT[unit.symbol]).to(SI[unit.dimension]).magnitude
        # A water column is defined at several temperatures (0.1 % apart), a BTU by several tables (1e-6 apart).
        tolerance = 1e-3 if unit.symbol == "inWG" else 2e-6 if unit.symbol.startswith("BTU") else 1e-9
        assert math.isclose(unit.to_si(value), theirs, rel_tol=tolerance, abs_tol=1e-12)

    units = [u for u in UNITS if u.symbol in PINT]
    holds_for_each(product(units, (0.0, 1.0, 71.5, 180.0)), agrees)


# Hardness is told as calcium carbonate: grains in a gallon (US and imperial), 10 mg of it (°f), 10 mg of calcium oxide
# (°dH) or a millimole in a litre. Molar masses 100.0869 and 56.0774 g/mol from standard atomic weights.
HARDNESS = {"gpg": "grain/gallon", "mg/L": "mg/liter", "°e": "grain/imperial_gallon"}
BY_MASS = {"°f": 10.0, "°dH": 10.0 * 100.0869 / 56.0774, "mmol/L": 100.0869}


def test_hardness_scales_agree_with_pint_and_molar_masses(registry) -> None:  # type: ignore[no-untyped-def]
    for unit in (u for u in UNITS if u.dimension == "hardness"):
        if unit.symbol in HARDNESS:
            wanted = registry.Quantity(1.0, HARDNESS[unit.symbol]).to("mg/liter").magnitude
        else:
            wanted = BY_MASS[unit.symbol]
        assert math.isclose(unit.factor, wanted, rel_tol=2e-4)


def test_no_unit_goes_unjudged() -> None:
    """Concentration in water and pH are their own scales: there is nothing to convert."""
    scales = ("hardness", "concentration", "acidity")
    assert {u.symbol for u in UNITS if u.dimension not in scales} <= set(PINT)


@given(st.sampled_from(UNITS), st.floats(-1e6, 1e6))
def test_there_and_back(unit, value: float) -> None:  # type: ignore[no-untyped-def]
    assert math.isclose(unit.from_si(unit.to_si(value)), value, rel_tol=1e-9, abs_tol=1e-6)


@pytest.mark.parametrize(
    ("text", "dimension", "default", "symbol", "value"),
    [
        ("71", "temperature", "°F", "°F", 71),
        ("71.5", "temperature", "°C", "°C", 71.5),
        ("71,5", "temperature", "°C", "°C", 71.5),
        ("160F", "temperature", None, "°F", 160),
        ("71 C", "temperature", None, "°C", 71),
        ("20psi", "pressure", None, "psi", 20),
        ("1.4 bar", "pressure", "psi", "bar", 1.4),
        ("-3", "temperature", "°C", "°C", -3),
        ("40 F", "temperature difference", None, "F°", 40),
    ],
)
def test_what_technicians_type(text: str, dimension: str, default: str | None, symbol: str, value: float) -> None:
    quantity = parse_quantity(text, dimension, default)
    assert (quantity.unit.symbol, quantity.value) == (symbol, value)


@pytest.mark.parametrize(
    ("text", "dimension", "says"),
    [
        ("", "temperature", "is no number"),
        ("hot", "temperature", "is no number"),
        ("71", "temperature", "say the unit"),
        ("20 psi", "temperature", "psi is a unit of pressure; this wants °F, °C, K"),
        ("20 xyz", "pressure", "is no unit known here"),
        ("-500 F", "temperature", "below absolute zero"),
        ("1e400", "pressure", "out of all range"),
    ],
)
def test_refusals_name_the_remedy(text: str, dimension: str, says: str) -> None:
    with pytest.raises(UnitError, match=says):
        parse_quantity(text, dimension)


def test_a_difference_is_no_temperature() -> None:
    assert math.isclose(parse_quantity("40 F", "temperature difference").si, 40 / 1.8)
    assert math.isclose(parse_quantity("40 F", "temperature").si, 277.594, rel_tol=1e-5)


@given(st.text(max_size=30), st.sampled_from(DIMENSIONS))
def test_rubbish_ends_in_a_sentence(text: str, dimension: str) -> None:
    try:
        parse_quantity(text, dimension)
    except UnitError as error:
        assert str(error)


@given(st.floats(-1e9, 1e9))
def test_numbers_print_without_exponent_and_close(value: float) -> None:
    text = show_number(value)
    assert "e" not in text
    assert math.isclose(float(text), value, rel_tol=6e-4, abs_tol=1e-9)
