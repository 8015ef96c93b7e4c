"""Food Code, read through state codes that adopt it section by section (editions 2009 to 2017)."""

from __future__ import annotations

import pytest

from diagnose.model import Machine, load_book
from diagnose.physics.chlorine import (
    chlorine_least_temperature,
    chlorine_verdict,
    contact_time_least,
    iodine_verdict,
    quat_verdict,
)
from diagnose.rules.bands import limit_end
from diagnose.rules.instruments import instrument_of
from diagnose.units import parse_quantity
from tests.rulebook import BOOK, machine, run

SHIPPED = load_book()
RINSE, PANEL = "rinse_thermometer.reference_reading", "rinse_thermometer.panel_reading"
FLOWING = "rinse_gauge.flow_pressure"


@pytest.mark.parametrize(
    ("seen", "outcome"),
    [
        ("179 F", "low"),  # 4-501.112: at least 180 °F at the manifold, all but stationary rack single temperature
        ("180 F", "good"),
        ("194 F", "good"),  # 4-501.112: at most 194 °F
        ("195 F", "high"),
        ("81 C", "low"),  # 4-501.112 prints 82 °C and 90 °C
        ("82 C", "good"),
        ("90 C", "good"),
        ("91 C", "high"),
    ],
)
def test_rinse_at_the_manifold(seen: str, outcome: str) -> None:
    assert run(machine(), (RINSE, seen)).findings[0].outcome == outcome


def test_179_on_the_panel_is_within_its_error() -> None:
    """4-203.12: ± 3 °F. A reading one degree short is no verdict: confirm with a second instrument."""
    found = run(machine(), (PANEL, "179 F")).findings[0]
    assert found.weights["low"] < 0.8
    assert "confirm" in found.says


@pytest.mark.parametrize(
    ("seen", "outcome", "code"),
    [
        ("12", "low", "inside"),  # 4-501.113: out of the plate's 15 to 25 psi, inside the code's 5 to 30 psi
        ("4", "low", "below"),
        ("31", "high", "above"),
        ("20", "good", "inside"),
        ("30", "high", "inside"),  # both ends belong to the code's band
        ("200 kPa", "high", "inside"),  # 4-501.113 prints 200 kPa: 29.0 psi, yet the code's own end
        ("201 kPa", "high", "above"),
        ("35 kPa", "low", "inside"),
    ],
)
def test_flow_pressure_plate_and_code(seen: str, outcome: str, code: str) -> None:
    found = run(machine(rinse_pressure_least="15 psi", rinse_pressure_most="25 psi"), (FLOWING, seen)).findings[0]
    assert found.outcome == outcome
    assert any(line.startswith("Widest band of the code") and f": {code} it" in line for line in found.working)


def test_without_a_plate_figure_the_plate_is_said_to_govern() -> None:
    """4-501.113: within the data plate's range."""
    found = run(machine(), (FLOWING, "12")).findings[0]
    assert any("data plate governs" in line for line in found.working)


def test_14_with_plate_15_is_flagged_within_gauge_error() -> None:
    """4-203.13: ± 2 psi. FROM MEMORY, confidence high (numbers), medium (wording)."""
    found = run(machine(rinse_pressure_least="15 psi"), (FLOWING, "14")).findings[0]
    assert "Within the gauge's error" in found.says
    assert instrument_of(BOOK.checks[FLOWING]).basis.kind == "memory"


def test_pressure_at_rest_is_not_judged_by_the_flow_pressure_band() -> None:
    """4-501.113 is flow pressure; 60 psi at rest belongs to another check."""
    found = run(machine(), ("rinse_gauge.static_pressure", "23")).findings[0]
    assert found.outcome == "steady"
    assert not any("Widest band" in line for line in found.working)


@pytest.mark.parametrize(
    ("kind", "limit", "low"),
    [
        ("single_tank_electric_208", "tank_temperature", 160.0),  # 4-501.110(A)(3): single-tank conveyor
        ("two_tank_electric_208", "tank_temperature", 150.0),  # 4-501.110(A)(4): multitank conveyor
        ("single_tank_chemical_208", "tank_temperature_chemical", 120.0),  # 4-501.110(B)
        ("two_tank_electric_208", "rinse_temperature", 180.0),  # 4-501.112
        ("single_tank_chemical_208", "rinse_temperature_chemical", 120.0),  # 4-501.114(A), 25 to 49 mg/L chlorine
    ],
)
def test_least_temperatures_of_the_shipped_machines(kind: str, limit: str, low: float) -> None:
    unit = parse_quantity("1 °F", "temperature").unit
    assert limit_end(SHIPPED, Machine("m", SHIPPED.machines[kind]), limit, "low", unit).value == low


@pytest.mark.parametrize(
    ("limit", "end", "unit", "value"),
    [
        ("rinse_temperature", "high", "°F", 194.0),  # 4-501.112
        ("rinse_temperature", "high", "°C", 90.0),
        ("rinse_pressure_code", "low", "psi", 5.0),  # 4-501.113
        ("rinse_pressure_code", "high", "psi", 30.0),
        ("rinse_pressure_code", "low", "kPa", 35.0),
        ("rinse_pressure_code", "high", "kPa", 200.0),
    ],
)
def test_limits_of_the_shipped_book(limit: str, end: str, unit: str, value: float) -> None:
    entry = SHIPPED.limits[limit]
    texts = [parse_quantity(t, entry.quantity) for t in getattr(entry, end)]
    assert value in [q.value for q in texts if q.unit.symbol == unit]


def _kelvin(fahrenheit: float) -> float:
    return (fahrenheit + 459.67) / 1.8


@pytest.mark.parametrize(
    ("strength", "ph", "fahrenheit", "celsius"),
    [
        (25, 8, 120, 49), (25, 10, 120, 49), (49, 8, 120, 49), (49, 10, 120, 49),  # 25 to 49 mg/L
        (50, 8, 75, 24), (50, 8.1, 100, 38), (50, 10, 100, 38), (99, 8, 75, 24), (99, 10, 100, 38),  # 50 to 99 mg/L
        (100, 8, 55, 13), (100, 10, 55, 13), (150, 10, 55, 13),  # 100 mg/L
    ],
)  # fmt: skip
def test_chlorine_table(strength: float, ph: float, fahrenheit: float, celsius: float) -> None:
    """4-501.114(A), both columns as printed."""
    assert chlorine_least_temperature(strength, ph) == pytest.approx(_kelvin(fahrenheit))
    assert chlorine_least_temperature(strength, ph, celsius=True) == pytest.approx(celsius + 273.15)
    assert chlorine_verdict(strength, ph, _kelvin(fahrenheit)) == "enough"
    assert chlorine_verdict(strength, ph, _kelvin(fahrenheit - 1)) == "too cold"
    assert chlorine_verdict(strength, ph, celsius + 273.15) == "enough"


@pytest.mark.parametrize(
    ("strength", "ph", "fahrenheit", "verdict"),
    [
        (50, 9, 90, "too cold"),
        (50, 8, 76, "enough"),
        (30, 8, 110, "too cold"),
        (24, 7, 150, "too weak"),
        (24, 9, 120, "too weak"),
        (200, 10.5, 120, "too alkaline"),
    ],
)
def test_chlorine_verdicts(strength: float, ph: float, fahrenheit: float, verdict: str) -> None:
    """4-501.114(A)."""
    assert chlorine_verdict(strength, ph, _kelvin(fahrenheit)) == verdict


@pytest.mark.parametrize(("strength", "ph"), [(24.9, 8), (50, 10.1)])
def test_no_row_of_the_chlorine_table(strength: float, ph: float) -> None:
    with pytest.raises(ValueError, match=r"25 mg/L|pH 10"):
        chlorine_least_temperature(strength, ph)


@pytest.mark.parametrize(
    ("strength", "ph", "fahrenheit", "verdict"),
    [
        (12.4, 5, 68, "too weak"), (12.5, 5, 68, "enough"), (25, 5, 68, "enough"), (26, 5, 68, "too strong"),
        (20, 5, 67, "too cold"), (20, 5.1, 68, "too alkaline"),
    ],
)  # fmt: skip
def test_iodine(strength: float, ph: float, fahrenheit: float, verdict: str) -> None:
    """4-501.114(B): at least 68 °F (20 °C), pH 5.0 or less or as the label says, 12.5 to 25 mg/L."""
    assert iodine_verdict(strength, ph, _kelvin(fahrenheit)) == verdict


@pytest.mark.parametrize(
    ("strength", "hardness", "fahrenheit", "verdict"),
    [(200, 500, 75, "enough"), (200, 500, 74, "too cold"), (200, 501, 75, "too hard"), (199, 500, 75, "too weak")],
)
def test_quat(strength: float, hardness: float, fahrenheit: float, verdict: str) -> None:
    """4-501.114(C): at least 75 °F (24 °C), label's strength (here 200), hardness 500 mg/L or less."""
    assert quat_verdict(strength, 200, hardness, _kelvin(fahrenheit)) == verdict


@pytest.mark.parametrize(
    ("kind", "strength", "ph", "fahrenheit", "seconds"),
    [
        ("chlorine", 50, 10, 100, 7), ("chlorine", 50, 8, 75, 7), ("chlorine", 50, 9, 99, 10),
        ("chlorine", 50, 8, 74, 10), ("chlorine", 49, 8, 120, 10), ("chlorine", 25, 10, 120, 10),
        ("chlorine", 100, 10, 60, 10), ("other", 200, 7, 75, 30), ("other", 12.5, 5, 68, 30),
    ],
)  # fmt: skip
def test_contact_time(kind: str, strength: float, ph: float, fahrenheit: float, seconds: float) -> None:
    """4-703.11(C)."""
    assert contact_time_least(kind, strength, ph, _kelvin(fahrenheit)) == seconds


@pytest.mark.parametrize(
    ("kind", "degrees", "outcome"),
    [
        ("single_tank_electric_208", 159.0, "low"),  # 4-501.110(A)(3)
        ("single_tank_electric_208", 160.0, "ok"),
        ("two_tank_electric_208", 149.0, "low"),  # 4-501.110(A)(4)
        ("two_tank_electric_208", 150.0, "ok"),
        ("single_tank_chemical_208", 119.0, "low"),  # 4-501.110(B)
        ("single_tank_chemical_208", 120.0, "ok"),
    ],
)
def test_wash_minimum_to_the_degree(kind: str, degrees: float, outcome: str) -> None:
    limit = "tank_temperature_chemical" if "chemical" in kind else "tank_temperature"
    unit = parse_quantity("1 °F", "temperature").unit
    least = limit_end(SHIPPED, Machine("m", SHIPPED.machines[kind]), limit, "low", unit).value
    assert ("low" if degrees < least else "ok") == outcome


@pytest.mark.parametrize(("seen", "outcome"), [("119 F", "low"), ("120 F", "good"), ("49 C", "good"), ("48 C", "low")])
def test_chemical_rinse_at_the_manifold(seen: str, outcome: str) -> None:
    """4-501.114(A), first row: 120 °F (49 °C) where the strength is not known to be more."""
    chemical = Machine("m", SHIPPED.machines["single_tank_chemical_208"])
    name = "rinse_thermometer.reference_reading_chemical"
    assert run(chemical, (name, seen), book=SHIPPED).findings[0].outcome == outcome
