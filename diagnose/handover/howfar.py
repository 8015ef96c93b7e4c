"""How far to set what fails, apart from the dampers: the sentence to do it by, and the working it rests on.

All figures in SI and as shares; `system` is "us" or "si" and says how they are told. What was learnt from the tries so
far goes before what is believed at first.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

from diagnose.formulas import said
from diagnose.handover.stepping import Ended, Knob, Step, Try, next_setting
from diagnose.physics.flow import flow_at_pressure
from diagnose.physics.setting import overload_dial, thermostat_dial
from diagnose.physics.setting_feeds import foot_rise, foot_turns
from diagnose.units import Quantity, show_number

__all__ = ["Band", "HowFar", "conveyor_speed", "dose", "overload", "regulator", "run_on", "table_pitch", "thermostat"]

_PER_TURN = 55e3  # Pa of the first turn of a regulator, rather much, so that the first turn is a small one: judgement
_TURNS = 4.0  # of its screw either way from where it stood, at the most; judgement
_QUARTER = 0.25  # of a turn, the finest that is told
_JETS = 0.1  # by which the flow may differ from that of sound jets before it is they; judgement
_PLAIN = {
    "temperature": ("°F", "°C"),
    "pressure": ("psi", "bar"),
    "flow": ("gpm", "L/min"),
    "speed": ("ft/min", "m/min"),
    "length": ("in", "mm"),
    "slope": ("in/ft", "mm/m"),
    "current": ("A", "A"),
    "frequency": ("Hz", "Hz"),
    "time": ("s", "s"),
}


@dataclass(frozen=True)
class Band:
    """What is wanted of a reading, SI: from `low` to `high`, `aim` in between; `error` is the instrument's largest."""

    aim: float
    low: float
    high: float
    error: float


@dataclass(frozen=True)
class HowFar:
    """What to do: `to` is the new setting (a foot's way, a screw's turns), SI; NaN where none will do."""

    ended: Ended
    to: float
    says: str
    lines: tuple[str, ...] = ()


def thermostat(
    dial: float, cut_out: float, cut_in: float, least: float, most: float, system: str, ends: tuple[float, float]
) -> HowFar:
    """The dial of a thermostat that was seen to cut out and in; `ends` are the lowest and highest mark of its dial.

    >>> f = lambda x: (x + 459.67) * 5 / 9
    >>> thermostat(f(160), f(158), f(148), f(150), f(165), "us", (f(100), f(190))).says
    'Set the dial up from 160 °F to 164.5 °F, then watch it cut out and in again.'
    """
    if cut_in >= least and cut_out <= most:
        return HowFar("reached", dial, "It cuts in and out as wanted.")
    if cut_out - cut_in > most - least:
        width, room = (_degrees(each, system) for each in (cut_out - cut_in, most - least))
        wide = (
            f"No setting will do: it switches over {width} and there is room for {room}; another thermostat is wanted."
        )
        return HowFar("not this", math.nan, wide)
    to = thermostat_dial(dial, cut_out, cut_in, least, most)
    lines = said("set-thermostat", system, dial=dial, cut_out=cut_out, cut_in=cut_in, least=least, most=most)
    low, high = ends
    if not low <= to <= high:
        short = f"The dial would have to stand at {_told(to, 'temperature', system)}, past its end: look at its sensor."
        return HowFar("end", math.nan, short, lines)
    way = "up" if to > dial else "down"
    from_to = f"from {_told(dial, 'temperature', system)} to {_told(to, 'temperature', system)}"
    return HowFar("set", to, f"Set the dial {way} {from_to}, then watch it cut out and in again.", lines)


def regulator(
    tries: Sequence[Try],
    band: Band,
    system: str,
    flow: float | None = None,
    rated: tuple[float, float] | None = None,
) -> HowFar:
    """The screw of a pressure regulator. Tries are turns in from where it stood at first, and the pressure, flowing.

    `flow` was measured at the last pressure; `rated` are the flow and pressure of sound jets. Where they disagree it is
    the jets, whatever the pressure.

    >>> psi = 6894.757
    >>> wanted = Band(20 * psi, 18 * psi, 22 * psi, 0.5 * psi)
    >>> regulator([Try(0.0, 14 * psi)], wanted, "us").says
    'Turn the screw in by 3/4 of a turn, then read the pressure again while the rinse flows.'
    """
    now = tries[-1]
    if flow is not None and rated is not None:
        sound = flow_at_pressure(rated[0], rated[1], now.reading)
        if abs(flow / sound - 1.0) > _JETS:
            lines = said(
                "rinse-flow-at-pressure", system, rated_flow=rated[0], rated_pressure=rated[1], pressure=now.reading
            )
            much = "more" if flow > sound else "less"
            look = "worn or missing jets" if flow > sound else "limed or blocked jets"
            jets = (
                f"{_told(flow, 'flow', system)} is {abs(flow / sound - 1.0) * 100:.0f} % {much} than sound jets pass at"
            )
            return HowFar(
                "not this",
                now.setting,
                f"{jets} {_told(now.reading, 'pressure', system)}: look for {look}, not at the regulator.",
                lines,
            )
    knob = _knob(band, -_TURNS, _TURNS, _PER_TURN, _QUARTER)
    step = next_setting(tries, knob)
    lines = said("set-regulator", system, read=now.reading, wanted=band.aim, per_turn=step.slope)
    if step.ended != "set":
        return HowFar(step.ended, step.setting, step.says, lines)
    turns = step.setting - now.setting
    way = f"Turn the screw {'in' if turns > 0 else 'out'} by {_turns(abs(turns))}"
    return HowFar("set", step.setting, f"{way}, then read the pressure again while the rinse flows.", lines)


def run_on(tries: Sequence[Try], band: Band, ends: tuple[float, float], grain: float = 1.0) -> HowFar:
    """The mark of a run-on timer. Tries are marks and the times they gave.

    >>> run_on([Try(20.0, 16.0)], Band(30.0, 27.0, 35.0, 0.5), (0.0, 60.0)).says
    'Set the timer from mark 20 up to mark 38, then time it again.'
    """
    return _by_marks(tries, band, ends, grain, "timer", "time it again")


def dose(tries: Sequence[Try], band: Band, ends: tuple[float, float], grain: float = 1.0) -> HowFar:
    """The setting of a chemical feeder. Tries are its settings and the strength (or dose) found with each.

    >>> dose([Try(40.0, 80.0)], Band(50.0, 50.0, 75.0, 5.0), (0.0, 100.0)).says
    'Set the feeder from mark 40 down to mark 25, then test it again after a few racks.'
    """
    return _by_marks(tries, band, ends, grain, "feeder", "test it again after a few racks")


def conveyor_speed(tries: Sequence[Try], band: Band, ends: tuple[float, float], system: str) -> HowFar:
    """The frequency of a conveyor's drive. Tries are hertz and speeds timed; `ends` as drive and motor allow.

    >>> speed = 0.3048 / 60
    >>> conveyor_speed([Try(60.0, 6.4 * speed)], Band(5.8 * speed, 5.6 * speed, 6 * speed, 1e-4), (30, 70), "us").says
    'Set the drive from 60 Hz down to 54.5 Hz, then time a rack again.'
    """
    now = tries[-1]
    if now.reading <= 0.0:
        return HowFar("not this", now.setting, "Nothing moved: look at drive and clutch before the speed is set.")
    step = next_setting(tries, _knob(band, *ends, now.reading / now.setting, 0.5))
    lines = said("set-drive", system, hertz=now.setting, read=now.reading, wanted=band.aim)
    if step.ended != "set":
        return HowFar(step.ended, step.setting, step.says, lines)
    way = "up" if step.setting > now.setting else "down"
    hertz = [_told(each, "frequency", system) for each in (now.setting, step.setting)]
    return HowFar(
        "set", step.setting, f"Set the drive from {hertz[0]} {way} to {hertz[1]}, then time a rack again.", lines
    )


def overload(full_load: float, dial: float, least: float, most: float, system: str) -> HowFar:
    """The dial of a motor overload, by the nameplate's amps and the shares of them that are allowed.

    >>> overload(6.8, 5.0, 1.0, 1.15, "us").says
    'Set the overload up from 5 A to 6.8 A, the amps of the nameplate.'
    """
    to, low, high = overload_dial(full_load, least, most)
    lines = said("set-overload", system, full_load=full_load, least=least, most=most)
    if low <= dial <= high:
        return HowFar("reached", dial, "The overload is set for this motor.", lines)
    way = "up" if to > dial else "down"
    amps = [_told(each, "current", system) for each in (dial, to)]
    return HowFar("set", to, f"Set the overload {way} from {amps[0]} to {amps[1]}, the amps of the nameplate.", lines)


def table_pitch(
    fall: float, band: Band, distance: float, system: str, thread: float | None = None, foot: str = "foot"
) -> HowFar:
    """How far to raise or lower a foot so far from the machine; `thread` is the pitch of its thread, where it has one.

    >>> inch, foot = 0.0254, 0.3048
    >>> wanted = Band(0.2 / 12, 0.125 / 12, 0.25 / 12, 0.0005)
    >>> table_pitch(0.1 / 12, wanted, 6 * foot, "us", inch / 13).says
    'Raise the foot by 0.6 in: 7 3/4 turns, then lay the level on again.'
    """
    if band.low <= fall <= band.high:
        return HowFar("reached", 0.0, "The table falls to the machine as wanted.")
    rise = foot_rise(fall, band.aim, distance)
    lines = said("set-table-foot", system, fall=fall, wanted=band.aim, distance=distance)
    turned = ""
    if thread is not None:
        lines = (*lines, *said("turns-of-a-foot", system, rise=rise, pitch=thread))
        turned = f": {_turns(abs(foot_turns(rise, thread)))}"
    way = f"{'Raise' if rise > 0 else 'Lower'} the {foot} by {_told(abs(rise), 'length', system)}"
    return HowFar("set", rise, f"{way}{turned}, then lay the level on again.", lines)


def _by_marks(
    tries: Sequence[Try], band: Band, ends: tuple[float, float], grain: float, what: str, then: str
) -> HowFar:
    """A knob with marks of its own, first as if it began at nought."""
    now = tries[-1]
    if now.reading <= 0.0 or now.setting <= 0.0:
        return HowFar("not this", now.setting, f"Nothing was read: look whether the {what} works before it is set.")
    step = next_setting(
        tries, _knob(band, *ends, now.reading / now.setting if len(tries) == 1 else _first(tries), grain)
    )
    lines = (_line(now, band, step),)
    if step.ended != "set":
        return HowFar(step.ended, step.setting, step.says, lines)
    way = "up" if step.setting > now.setting else "down"
    marks = [show_number(each, 4) for each in (now.setting, step.setting)]
    return HowFar(
        "set", step.setting, f"Set the {what} from mark {marks[0]} {way} to mark {marks[1]}, then {then}.", lines
    )


def _first(tries: Sequence[Try]) -> float:
    """What a mark was believed to bring at the first try that read something."""
    return next(each.reading / each.setting for each in tries if each.setting > 0.0 and each.reading > 0.0)


def _line(now: Try, band: Band, step: Step) -> str:
    read, slope, mark, aim = (show_number(each, 4) for each in (now.reading, step.slope, now.setting, band.aim))
    to = show_number(now.setting + (band.aim - now.reading) / step.slope, 4)
    return f"{mark} + ({aim} − {read}) ÷ {slope} = {to}, {slope} being what one mark brings"


def _knob(band: Band, least: float, most: float, slope: float, grain: float) -> Knob:
    return Knob(band.aim, band.low, band.high, band.error, least, most, slope, grain)


def _turns(turns: float) -> str:
    """Turns to the nearest quarter, in words of the hand.

    >>> _turns(0.75), _turns(1.0), _turns(7.8), _turns(0.1)
    ('3/4 of a turn', '1 turn', '7 3/4 turns', 'a hair')
    """
    whole, quarters = divmod(round(turns / _QUARTER), 4)
    part = ("", "1/4", "1/2", "3/4")[quarters]
    if not whole:
        return f"{part} of a turn" if part else "a hair"
    return f"{whole}{' ' + part if part else ''} turn{'' if whole == 1 and not part else 's'}"


def _told(value: float, quantity: str, system: str) -> str:
    us, si = _PLAIN[quantity]
    found = Quantity.of_si(value, quantity, us if system == "us" else si)
    return f"{show_number(found.value, 4)} {found.unit.symbol}"


def _degrees(difference: float, system: str) -> str:
    found = Quantity.of_si(difference, "temperature difference", "F°" if system == "us" else "C°")
    return f"{show_number(found.value, 3)} {found.unit.symbol}"
