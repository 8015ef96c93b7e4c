"""What a line aims at when something is set: the figure, its band, and what its instrument may be off."""

from __future__ import annotations

from dataclasses import dataclass

from diagnose.formulas import system_of
from diagnose.handover.howfar import Band
from diagnose.handover.sheet import Line, Sheet
from diagnose.rules import Expected, expected
from diagnose.rules.instruments import instrument_of

__all__ = ["Aim", "aim_of", "system_of_sheet", "temperatures"]

_WIDE = 2.0  # high over low from which the middle is taken by ratio: judgement
_OPEN = 1.3  # of the low end, as the high one of a band that has none: judgement
_PLATE = {  # the plate's own figure is aimed at, not the middle of its band
    "run_timer.run_on": "run_on",
    "conveyor_bar_pawls.rack_speed": "conveyor_speed",
    "motor_overload.pump_setting": "wash_motor_amps",
    "motor_overload.drive_setting": "drive_motor_amps",
    "motor_overload.fan_setting": "fan_motor_amps",
}
_STRENGTHS = ("sanitiser_feed.strip",)  # the low end of the band is what is wanted


@dataclass(frozen=True)
class Aim:
    """The band to set to, SI; `flat` where level is wanted, and a reading has no sign."""

    band: Band
    flat: bool = False


def aim_of(sheet: Sheet, line: Line) -> Aim | None:
    """What is wanted of this line's reading; None where no figure can be told."""
    figure = _figure(sheet, line.check.id)
    if figure is None or line.reading is None or not line.reading.values:
        return None
    value = next(iter(line.reading.values.values()))
    error = instrument_of(line.check, line.reading).accuracy(value) * value.unit.factor
    low = figure.low.si if figure.low is not None else None
    high = figure.high.si if figure.high is not None else None
    plate = sheet.machine.plate(_PLATE[line.check.id]) if line.check.id in _PLATE else None
    if low is None and high is not None and line.check.reading and line.check.reading.quantity == "slope":
        return Aim(Band(0.0, -high, high, error), flat=True)
    if low is None and high is None and plate is None:
        return None
    if plate is not None:
        low = plate.si if low is None else low
        high = _OPEN * plate.si if high is None else high
        return Aim(Band(min(max(plate.si, low), high), low, high, error))
    low = 0.0 if low is None else low
    high = _OPEN * low if high is None else high
    return Aim(Band(_middle(low, high, line.check.id), low, high, error))


def _middle(low: float, high: float, check: str) -> float:
    if check in _STRENGTHS:
        return low + (high - low) / 4.0  # a little over the least, as more is smell and wear: judgement
    return (low * high) ** 0.5 if low > 0.0 and high > _WIDE * low else (low + high) / 2.0


def temperatures(sheet: Sheet, line: Line) -> tuple[float, float] | None:
    """Least at which the heat may come on and most at which it may go off, [K]; None where they can't be told."""
    least, most = _RANGES.get(line.check.id, (line.check.id, "tank_control.tank_panel"))
    low, high = _figure(sheet, least), _figure(sheet, most)
    if low is None or low.low is None:
        return None
    top = high.high.si if high is not None and high.high is not None else low.low.si + _ROOM
    return low.low.si, top


def system_of_sheet(sheet: Sheet, line: Line) -> str:
    """The units the line was read in: "us" or "si"."""
    values = line.reading.values if line.reading is not None else {}
    return next((system_of(value.unit) for value in values.values()), "us")


def _figure(sheet: Sheet, check: str) -> Expected | None:
    return expected(sheet.book, sheet.machine, sheet.state.readings, check, sheet.state.stage)


_ROOM = 10.0  # K over the least figure, where no most is known: judgement
_BOOSTER = ("rinse_thermometer.panel_reading", "booster_control.cut_out")
_RANGES = {
    "booster_control.cut_out": _BOOSTER,
    "rinse_thermometer.panel_reading": _BOOSTER,
    "rinse_thermometer.reference_reading": _BOOSTER,
}
