"""Sentences and working of what can be set: the figures in them worked by hand."""

from __future__ import annotations

import math

import pytest

from diagnose.handover.howfar import (
    Band,
    conveyor_speed,
    dose,
    overload,
    regulator,
    run_on,
    table_pitch,
    thermostat,
)
from diagnose.handover.stepping import Try

PSI, GPM, FT_MIN, INCH, FOOT = 6894.757293168, 3.785411784e-3 / 60, 0.3048 / 60, 0.0254, 0.3048
PRESSURE = Band(20 * PSI, 18 * PSI, 22 * PSI, 0.5 * PSI)


def kelvin(degrees: float) -> float:
    return degrees + 273.15


def test_thermostat_too_coarse_for_its_room() -> None:
    found = thermostat(
        kelvin(70), kelvin(74), kelvin(62), kelvin(66), kelvin(75), "si", (kelvin(30), kelvin(90))
    )  # switches over 12, room 9
    assert found.ended == "not this"
    assert math.isnan(found.to)
    assert found.says == (
        "No setting will do: it switches over 12 C° and there is room for 9 C°; another thermostat is wanted."
    )


def test_thermostat_past_its_dial() -> None:
    """Out 64, in 60, wanted 70 to 78: 12 up, 82 on a dial that ends at 80."""
    found = thermostat(kelvin(70), kelvin(64), kelvin(60), kelvin(70), kelvin(78), "si", (kelvin(30), kelvin(80)))
    assert found.ended == "end"
    assert "82 °C, past its end" in found.says


def test_thermostat_that_is_right_is_left() -> None:
    assert thermostat(343.0, 345.0, 341.0, 340.0, 350.0, "si", (300.0, 360.0)).ended == "reached"


def test_regulator_learns_its_turn() -> None:
    first = regulator([Try(0.0, 14 * PSI)], PRESSURE, "us")
    assert first.lines == ("(20 psi − 14 psi) ÷ 7.977 psi = 0.7522",)
    then = regulator([Try(0.0, 14 * PSI), Try(0.75, 16.9 * PSI)], PRESSURE, "us")
    assert then.says.startswith("Turn the screw in by 3/4 of a turn")  # 3.1 / 3.87 = 0.80
    assert regulator([Try(0.0, 20.5 * PSI)], PRESSURE, "us").ended == "reached"
    assert regulator([Try(0.0, 26 * PSI)], PRESSURE, "us").says.startswith("Turn the screw out by 3/4")


def test_flow_that_disagrees_is_the_jets() -> None:
    """Sound: 4.2 gpm at 20 psi, so 4.2 x root(14 / 20) = 3.514 at 14; 5 gpm is 42 % more, 3.5 is as it should be."""
    rated = (4.2 * GPM, 20 * PSI)
    worn = regulator([Try(0.0, 14 * PSI)], PRESSURE, "us", 5.0 * GPM, rated)
    assert (
        worn.says
        == "5 gpm is 42 % more than sound jets pass at 14 psi: look for worn or missing jets, not at the regulator."
    )
    assert worn.lines == ("4.2 gpm × √(14 psi ÷ 20 psi) = 3.514 gpm",)
    assert regulator([Try(0.0, 14 * PSI)], PRESSURE, "us", 3.5 * GPM, rated).ended == "set"
    limed = regulator([Try(0.0, 20 * PSI)], PRESSURE, "us", 3.0 * GPM, rated)
    assert "29 % less" in limed.says  # 1 - 3 / 4.2
    assert "limed" in limed.says


def test_timer_and_feeder_by_their_marks() -> None:
    """20 gave 16 s: 30 / 0.8 = 37.5. Then 38 gave 44: 28 / 18 = 1.556 a mark, so 20 + 14 / 1.556 = 29."""
    band = Band(30.0, 27.0, 35.0, 0.5)
    assert run_on([Try(20.0, 16.0)], band, (0.0, 60.0)).to == 38.0
    second = run_on([Try(20.0, 16.0), Try(38.0, 44.0)], band, (0.0, 60.0))
    assert second.to == pytest.approx(29.0)
    assert second.says == "Set the timer from mark 38 down to mark 29, then time it again."
    assert dose([Try(40.0, 0.0)], Band(50.0, 45.0, 75.0, 5.0), (0.0, 100.0)).ended == "not this"
    at_end = dose([Try(100.0, 30.0)], Band(50.0, 45.0, 75.0, 2.0), (0.0, 100.0))
    assert at_end.ended == "end"


def test_overload_by_the_nameplate() -> None:
    found = overload(6.8, 8.5, 1.0, 1.15, "us")  # 1.15 x 6.8 = 7.82
    assert found.says == "Set the overload down from 8.5 A to 6.8 A, the amps of the nameplate."
    assert found.lines[-1] == "6.8 A × 115 ÷ 100 = 7.82 A"
    assert overload(6.8, 7.5, 1.0, 1.15, "us").ended == "reached"


def test_table_and_drive() -> None:
    wanted = Band(0.2 / 12, 0.125 / 12, 0.25 / 12, 0.0005)
    low = table_pitch(0.35 / 12, wanted, 4 * FOOT, "us")
    assert low.says == "Lower the foot by 0.6 in, then lay the level on again."  # 0.15 x 4
    assert table_pitch(0.2 / 12, wanted, 4 * FOOT, "us").ended == "reached"
    speed = Band(5.8 * FT_MIN, 5.6 * FT_MIN, 6.0 * FT_MIN, 1e-4)
    slow = conveyor_speed([Try(60.0, 5.0 * FT_MIN)], speed, (30.0, 66.0), "us")
    assert slow.to == 66.0  # 69.6 Hz is past what the drive may
    assert conveyor_speed([Try(66.0, 5.4 * FT_MIN)], speed, (30.0, 66.0), "us").ended == "end"
    assert conveyor_speed([Try(60.0, 0.0)], speed, (30.0, 66.0), "us").ended == "not this"
