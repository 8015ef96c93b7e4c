"""How far to set: worked by hand, what is refused, and set so it reads as wanted."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from diagnose.formulas import said
from diagnose.physics import setting, setting_feeds
from diagnose.physics.demand import RefusedError

INCH, FOOT = 0.0254, 0.3048


def fahrenheit(degrees: float) -> float:
    return (degrees + 459.67) * 5.0 / 9.0


def test_thermostat_in_the_middle_of_its_room() -> None:
    """Out 158, in 148, wanted 150 to 165: room 15, switches over 10, 2.5 to spare at both ends; 160 + 4.5 = 164.5."""
    found = setting.thermostat_dial(*map(fahrenheit, (160.0, 158.0, 148.0, 150.0, 165.0)))
    assert found == pytest.approx(fahrenheit(164.5))
    lines = said(
        "set-thermostat",
        "us",
        **dict(
            zip(
                ("dial", "cut_out", "cut_in", "least", "most"),
                map(fahrenheit, (160.0, 158.0, 148.0, 150.0, 165.0)),
                strict=True,
            )
        ),
    )
    assert lines == (
        "It switches over 158 − 148 = 10 degrees",
        "Room for it: 165 − 150 = 15 degrees",
        "160 °F + (150 + 165 − 148 − 158) ÷ 2 = 164.5 °F",
    )


@given(st.floats(300.0, 360.0), st.floats(0.0, 20.0), st.floats(310.0, 350.0), st.floats(0.0, 30.0))
def test_a_thermostat_set_so_keeps_within(cut_in: float, width: float, least: float, room: float) -> None:
    if abs(width - room) < 1e-9:
        return
    if width > room:
        with pytest.raises(RefusedError, match="no setting will do"):
            setting.thermostat_dial(340.0, cut_in + width, cut_in, least, least + room)
        return
    moved = setting.thermostat_dial(340.0, cut_in + width, cut_in, least, least + room) - 340.0
    assert cut_in + moved >= least - 1e-9
    assert cut_in + width + moved <= least + room + 1e-9


def test_thermostat_figures_that_were_exchanged() -> None:
    with pytest.raises(RefusedError, match="exchanged"):
        setting.thermostat_dial(340.0, 338.0, 341.0, 335.0, 350.0)
    with pytest.raises(RefusedError, match="under the least"):
        setting.thermostat_dial(340.0, 341.0, 338.0, 350.0, 345.0)


def test_screw_of_a_regulator() -> None:
    """14 to 20 psi at 8 a turn: 6 / 8 = 0.75. It gave 2.9: 2.9 / 0.75 = 3.867 a turn."""
    assert setting.regulator_turns(14.0, 20.0, 8.0) == pytest.approx(0.75)
    assert setting.pressure_per_turn(14.0, 16.9, 0.75) == pytest.approx(3.8667, abs=1e-4)
    assert setting.regulator_turns(23.0, 20.0, 6.0) == pytest.approx(-0.5)
    with pytest.raises(RefusedError, match="nothing was turned"):
        setting.pressure_per_turn(14.0, 16.0, 0.0)


def test_timer_by_proportion_and_by_two_pairs() -> None:
    """20 gave 16 s: 20 x 30 / 16 = 37.5. That gave 44: 1.6 s a mark, so 37.5 - 14 / 1.6 = 28.75."""
    assert setting.timer_mark(20.0, 16.0, 30.0) == pytest.approx(37.5)
    assert setting.timer_mark_of_pairs(20.0, 16.0, 37.5, 44.0, 30.0) == pytest.approx(28.75)
    with pytest.raises(RefusedError, match="did not grow"):
        setting.timer_mark_of_pairs(20.0, 16.0, 37.5, 15.0, 30.0)


@given(st.floats(0.2, 5.0), st.floats(-10.0, 10.0), st.floats(20.0, 60.0))
def test_two_pairs_find_any_straight_dial(gives: float, begins: float, wanted: float) -> None:
    times = [begins + gives * mark for mark in (15.0, 40.0)]
    if min(times) <= 0.0:
        return
    mark = setting.timer_mark_of_pairs(15.0, times[0], 40.0, times[1], wanted)
    assert begins + gives * mark == pytest.approx(wanted, abs=1e-6)


def test_feeders_by_proportion() -> None:
    assert setting_feeds.feeder_setting(40.0, 80.0, 50.0) == pytest.approx(25.0)  # 40 x 5 / 8
    assert setting_feeds.feeder_setting_by_dose(40.0, 6e-6, 4e-6) == pytest.approx(26.667, abs=1e-3)
    with pytest.raises(RefusedError):
        setting_feeds.feeder_setting(40.0, 0.0, 50.0)


def test_foot_of_a_table() -> None:
    """From 0.1 to 0.2 in/ft at 6 ft: 0.1 x 6 = 0.6 in up; at 13 threads to the inch 0.6 x 13 = 7.8 turns."""
    rise = setting_feeds.foot_rise(0.1 / 12.0, 0.2 / 12.0, 6.0 * FOOT)
    assert rise == pytest.approx(0.6 * INCH)
    assert setting_feeds.foot_turns(rise, INCH / 13.0) == pytest.approx(7.8)
    # A table that falls away from the machine by 5 mm/m, wanted 15 towards it: 20 mm/m x 1.5 m = 30 mm.
    assert setting_feeds.foot_rise(-0.005, 0.015, 1.5) == pytest.approx(0.030)
    assert setting_feeds.foot_rise(0.03, 0.015, 1.0) == pytest.approx(-0.015)


def test_speed_by_hertz_and_by_pulley() -> None:
    assert setting_feeds.drive_hertz(60.0, 5.0, 5.8) == pytest.approx(69.6)  # 60 x 1.16
    assert setting_feeds.driving_pulley(3.0 * INCH, 6.4, 5.8) == pytest.approx(2.71875 * INCH)  # 3 x 5.8 / 6.4
