"""Food Code, read through state codes that adopt it section by section (editions 2009 to 2017)."""

from __future__ import annotations

import pytest

from diagnose.model import Machine, load_book
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
