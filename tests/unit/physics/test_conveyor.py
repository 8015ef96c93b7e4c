"""Conveyor: what is refused, and how one formula bears out another."""

from __future__ import annotations

import pytest

from diagnose.physics import conveyor, conveyor_drive, conveyor_speed

FT_MIN, INCH = 0.3048 / 60, 0.0254


def test_other_frequency_is_a_fifth() -> None:
    assert conveyor_speed.speed_at_frequency(0.03, 60.0, 50.0) == pytest.approx(0.036)
    sixty, fifty = (conveyor_speed.motor_turns(f, 4, 0.04) for f in (60.0, 50.0))
    assert sixty / fifty == pytest.approx(1.2)


def test_no_amps_below_idle() -> None:
    assert conveyor_drive.working_share(1.2, 0.7, 1.2) == pytest.approx(1.0)
    with pytest.raises(ValueError, match="idle"):
        conveyor_drive.working_share(0.6, 0.7, 1.2)


def test_gearing_comes_to_the_strokes() -> None:
    """Motor, reducer and sprockets give the strokes that the stroke turns into speed."""
    turns = conveyor_speed.motor_turns(60.0, 4, 0.04)
    geared = conveyor_speed.speed_of_gearing(turns, 100.0, 16, 24, 6 * INCH)
    assert geared == pytest.approx(conveyor_speed.speed_of_strokes(6 * INCH, turns / 100 * 16 / 24))


def test_racks_follow_from_dwell() -> None:
    """A zone as long as a rack is passed in the time between two racks without a gap."""
    speed = 5.8 * FT_MIN
    assert conveyor.dwell(20 * INCH, speed) == pytest.approx(1 / conveyor.racks_an_hour(speed, 20 * INCH, 0.0))
    assert conveyor.arm_held_time(20 * INCH, 0.0, 0.0, speed) == pytest.approx(conveyor.dwell(20 * INCH, speed))
    assert conveyor.run_on_needed(20 * INCH, speed, 0.0) == pytest.approx(conveyor.dwell(20 * INCH, speed))


def test_power_is_torque_times_turning() -> None:
    """Pull on a sprocket: torque times angular speed is pull times speed."""
    pull, radius, speed = conveyor_drive.conveyor_pull(4, 13.6, 0.3), 0.0762, 0.03
    torque = conveyor_drive.drive_torque(pull, radius, 0.5)
    assert torque * speed / radius == pytest.approx(conveyor_drive.drive_power(pull, speed, 0.5))
    assert conveyor_drive.slip_margin(pull, pull) == pytest.approx(0.0)


def test_free_racks_hardly_show_in_the_amps() -> None:
    """Four racks want some 10 W of a 187 W motor: a twentieth, which moves the current by 2 %."""
    watts = conveyor_drive.drive_power(conveyor_drive.conveyor_pull(4, 13.6, 0.3), 5.8 * FT_MIN, 0.5)
    assert watts / 187 == pytest.approx(0.05, abs=0.01)
    idle = conveyor_drive.working_share(0.85, 0.72, 1.2)
    assert conveyor_drive.working_share(0.85 * 1.025, 0.72, 1.2) - idle == pytest.approx(0.05, abs=0.02)


@pytest.mark.parametrize(
    "nonsense",
    [
        lambda: conveyor_speed.speed_of_time(1.0, 0.0),
        lambda: conveyor_speed.motor_turns(60.0, 3, 0.04),
        lambda: conveyor_drive.slip_margin(100.0, 0.0),
        lambda: conveyor_drive.drive_torque(100.0, 0.1, 1.5),
        lambda: conveyor_drive.conveyor_pull(-1.0, 10.0, 0.3),
        lambda: conveyor.dwell(1.0, 0.0),
        lambda: conveyor.racks_an_hour(0.03, 0.5, -0.1),
    ],
)
def test_nonsense_is_refused(nonsense) -> None:  # type: ignore[no-untyped-def]
    with pytest.raises(ValueError, match=r".+"):
        nonsense()
