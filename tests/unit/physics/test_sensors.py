"""Sensors by numbers: both ways, faults in the direction they must take, nonsense refused."""

from __future__ import annotations

import math

import pytest

from diagnose.physics.gauges import combined_error, dial_error, error_share, grade_error, smallest_span
from diagnose.physics.ntc import (
    beta_of_two_points,
    beta_resistance,
    beta_temperature,
    ntc_resistance,
    ntc_temperature,
    wrong_curve_reading,
)
from diagnose.physics.pt100 import pt100_lead_error, pt100_resistance, pt100_temperature, pt100_tolerance
from diagnose.physics.sensor_faults import (
    contact_in_series,
    leak_across,
    ntc_with_contact,
    ntc_with_leak,
    ohms_with_leak,
    pt100_with_leak,
)
from diagnose.physics.thermocouples import (
    junction_temperature,
    reversed_reading,
    terminal_emf,
    thermocouple_emf,
    thermocouple_temperature,
    thermocouple_tolerance,
    uncompensated_reading,
)

HOT = 353.15
CURVE = (1.12924e-3, 2.34108e-4, 0.87755e-7)


@pytest.mark.parametrize("celsius", [-150, -40, -0.01, 0, 0.01, 25, 80, 250])
def test_platinum_both_ways(celsius: float) -> None:
    assert pt100_temperature(pt100_resistance(celsius + 273.15)) - 273.15 == pytest.approx(celsius, abs=1e-6)


@pytest.mark.parametrize("celsius", [-10, 0, 25, 60, 80, 100])
def test_thermistor_both_ways(celsius: float) -> None:
    kelvin = celsius + 273.15
    assert ntc_temperature(ntc_resistance(kelvin, *CURVE), *CURVE) == pytest.approx(kelvin, abs=1e-9)
    assert beta_temperature(beta_resistance(kelvin, 10e3, 3950), 10e3, 3950) == pytest.approx(kelvin, abs=1e-9)


@pytest.mark.parametrize("kind", ["J", "K", "T"])
def test_thermocouple_both_ways_rising_and_smooth_at_nought(kind: str) -> None:
    for celsius in (-170, -50, -0.5, 0, 0.5, 80, 290):
        kelvin = celsius + 273.15
        assert thermocouple_temperature(thermocouple_emf(kelvin, kind), kind) == pytest.approx(kelvin, abs=1e-6)
    emfs = [thermocouple_emf(273.15 + t / 2, kind) for t in range(-359, 600)]
    assert emfs == sorted(emfs)
    assert thermocouple_emf(273.15, kind) == pytest.approx(0, abs=1e-7)
    step = thermocouple_emf(273.16, kind) - thermocouple_emf(273.14, kind)
    assert step == pytest.approx(4.5e-5 * 0.02, rel=0.2)


def test_terminals_are_added_in_millivolts() -> None:
    read = terminal_emf(HOT, 298.15, "J")
    assert junction_temperature(read, 298.15, "J") == pytest.approx(HOT, abs=1e-6)
    by_degrees = thermocouple_temperature(read, "J") + 25.0
    assert abs(by_degrees - HOT) > 0.5  # adding degrees is wrong
    assert uncompensated_reading(HOT, 273.15, "T") == pytest.approx(HOT, abs=1e-4)


def test_reversed_pair_falls_as_the_tank_heats() -> None:
    shown = [reversed_reading(273.15 + t, 298.15, "K") for t in (25, 40, 60, 80)]
    assert shown[0] == pytest.approx(298.15, abs=1e-6)
    assert shown == sorted(shown, reverse=True)
    assert shown[-1] < 273.15


def test_series_and_leak_go_opposite_ways_on_thermistor_and_platinum() -> None:
    assert ntc_with_contact(HOT, 10e3, 3977, 300) < HOT - 5
    assert ntc_with_leak(HOT, 10e3, 3977, 5e3) > HOT + 5
    assert pt100_lead_error(HOT, 3.0) > 7
    assert pt100_with_leak(HOT, 5e3) < HOT - 8
    assert ntc_with_contact(HOT, 10e3, 3977, 0) == pytest.approx(HOT)


def test_fault_ohms_from_readings() -> None:
    assert leak_across(1254.0, ohms_with_leak(1254.0, 8e3)) == pytest.approx(8e3)
    assert contact_in_series(1254.0, 1554.0) == 300.0
    for refused in (lambda: leak_across(100.0, 100.0), lambda: contact_in_series(100.0, 99.0)):
        with pytest.raises(ValueError, match="sound sensor"):
            refused()


def test_curve_from_two_points() -> None:
    cold, hot = beta_resistance(298.15, 10e3, 3435), beta_resistance(HOT, 10e3, 3435)
    assert beta_of_two_points(cold, 298.15, hot, HOT) == pytest.approx(3435)
    with pytest.raises(ValueError, match="no thermistor"):
        beta_of_two_points(109.73, 298.15, 130.9, HOT)
    with pytest.raises(ValueError, match="higher"):
        beta_of_two_points(10e3, HOT, 1e3, 298.15)


def test_right_curve_shows_the_truth_and_room_temperature_hides_the_wrong_one() -> None:
    assert wrong_curve_reading(HOT, 10e3, 3977, 10e3, 3977) == pytest.approx(HOT)
    assert wrong_curve_reading(298.15, 10e3, 3435, 10e3, 3977) == pytest.approx(298.15)
    assert wrong_curve_reading(HOT, 10e3, 3435, 10e3, 3977) < HOT - 8


def test_gauge_classes() -> None:
    assert dial_error(60.0, 0.025) == pytest.approx(1.5)
    assert error_share(20.0, 100.0, 0.03) == pytest.approx(0.15)
    assert dial_error(smallest_span(1.2, 0.016), 0.016) == pytest.approx(1.2)
    assert [grade_error(x, 100.0, "A") for x in (10, 25, 75, 90)] == [2.0, 1.0, 1.0, 2.0]
    assert combined_error([1.0, 2.0, 2.0]) == 3.0


def test_tolerance_takes_the_larger_figure() -> None:
    assert thermocouple_tolerance(373.15, "T", "1") == 0.5
    assert thermocouple_tolerance(473.15, "T", "1") == pytest.approx(0.8)
    assert pt100_tolerance(273.15, "B") == 0.3


@pytest.mark.parametrize(
    "refused",
    [
        lambda: pt100_resistance(10.0),
        lambda: pt100_temperature(math.inf),
        lambda: pt100_temperature(0.1),
        lambda: pt100_lead_error(HOT, -1.0),
        lambda: pt100_tolerance(HOT, "C"),
        lambda: ntc_temperature(0.0, *CURVE),
        lambda: ntc_temperature(1e-12, 1e-3, 3e-4, 2e-7),
        lambda: beta_temperature(-5.0, 10e3, 3977),
        lambda: beta_temperature(1e-6, 10e3, 3000),
        lambda: beta_resistance(-1.0, 10e3, 3977),
        lambda: thermocouple_emf(HOT, "X"),
        lambda: thermocouple_emf(-1.0, "K"),
        lambda: thermocouple_tolerance(HOT, "K", "3"),
        lambda: ntc_with_contact(HOT, 10e3, 3977, -1.0),
        lambda: dial_error(0.0, 0.03),
        lambda: grade_error(120.0, 100.0, "1"),
        lambda: grade_error(50.0, 100.0, "7"),
        lambda: combined_error([]),
        lambda: combined_error([-1.0]),
    ],
)
def test_nonsense_is_refused(refused: object) -> None:
    with pytest.raises(ValueError):  # noqa: PT011 - each says something else
        refused()  # type: ignore[operator]
