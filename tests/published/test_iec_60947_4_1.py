"""IEC 60947-4-1, overload relays: trip classes (secondary) and behaviour near the setting (from memory, high)."""

from __future__ import annotations

import pytest

from diagnose.physics.demand import RefusedError
from diagnose.physics.protection import TRIP_WINDOWS, class_of_trip_time, trip_time, trip_time_constant, trip_window


@pytest.mark.parametrize(
    ("kind", "least", "most"), [("10A", 2.0, 10.0), ("10", 4.0, 10.0), ("20", 6.0, 20.0), ("30", 9.0, 30.0)]
)
def test_windows_at_7_2_times_the_setting(kind: str, least: float, most: float) -> None:
    assert trip_window(kind) == (least, most)


def test_15_s_is_inside_class_20_and_25_s_is_not() -> None:
    least, most = trip_window("20")
    assert least <= 15.0 <= most
    assert not least <= 25.0 <= most


@pytest.mark.parametrize("trip_class", [10.0, 20.0, 30.0])
def test_the_replica_trips_in_its_class_at_7_2_times(trip_class: float) -> None:
    assert trip_time(7.2, 1.0, trip_class) == pytest.approx(trip_class)
    assert class_of_trip_time(7.2, 1.0, trip_class) == pytest.approx(trip_class)


@pytest.mark.parametrize(("trip_class", "tau"), [(10.0, 513.4), (20.0, 1026.8), (30.0, 1540.2)])
def test_time_constant_of_the_bare_form(trip_class: float, tau: float) -> None:
    """DERIVED: C / ln(7.2² / (7.2² - 1)) = 51.32 C, the IEC 60255-149 form with nothing borne above the setting."""
    assert trip_time_constant(trip_class, 1.0) == pytest.approx(tau, abs=0.1)


def test_twice_the_setting_from_cold() -> None:
    """DERIVED: class 10 of the bare form, 147.7 s."""
    assert trip_time(2.0, 1.0, 10.0, pickup=1.0) == pytest.approx(147.7, abs=0.1)


def test_near_the_setting() -> None:
    """No trip at 1.05 times; within two hours at 1.2 after running at 1.05 (taken as 1.0, the cooler start)."""
    for kind in ("10", "20", "30"):
        with pytest.raises(RefusedError):
            trip_time(1.05, 1.0, float(kind))
        assert trip_time(1.2, 1.0, float(kind), before=1.0) < 7200.0


@pytest.mark.parametrize(("trip_class", "minutes"), [(10.0, 4.0), (20.0, 8.0), (30.0, 12.0)])
def test_one_and_a_half_times_from_warm(trip_class: float, minutes: float) -> None:
    assert trip_time(1.5, 1.0, trip_class, before=1.0) < minutes * 60.0


def test_the_american_class_counts_at_six_times() -> None:
    """NEMA ICS 2: class 20 trips within 20 s at 600 %. At 7.2 times 20 s makes more than that at six times."""
    assert trip_time(6.0, 1.0, 20.0) > 20.0
    assert set(TRIP_WINDOWS) == {"10A", "10", "20", "30"}


@pytest.mark.parametrize("trip_class", [10.0, 20.0, 30.0])
def test_two_poles_after_a_phase_loss(trip_class: float) -> None:
    """Not sensitive to a lost phase: within two hours at 1.32 times in two poles (from memory, confidence medium)."""
    assert trip_time(1.32, 1.0, trip_class, before=1.0) < 7200.0
