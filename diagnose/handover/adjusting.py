"""What is set where a line fails: what to ask of how it stands, and which way and how far to set it."""

from __future__ import annotations

import math
from collections.abc import Callable, Mapping

from diagnose.handover import howfar
from diagnose.handover.aims import aim_of, system_of_sheet, temperatures
from diagnose.handover.dampers import DamperAim, next_dampers
from diagnose.handover.ends import Flowmeter, Pair, Trial
from diagnose.handover.howfar import HowFar
from diagnose.handover.knobs import KNOBS, Suggestion, told
from diagnose.handover.sheet import Line, Sheet
from diagnose.handover.stepping import Try
from diagnose.handover.tries import newest_set, tried, value_of
from diagnose.model import Adjustment, ReadingSpec
from diagnose.rules.instruments import instrument_of
from diagnose.units import parse_quantity

__all__ = ["FLOWS", "asks_first", "found_spec", "set_spec", "settles", "suggest"]

FLOWS = ("vent_dampers.flow_entrance", "vent_dampers.flow_exit")
_TURNS = "turns"


def asks_first(sheet: Sheet, line: Line, adjustment: Adjustment) -> str:
    """The question of how it stands now, where that must be told first; empty where it need not, or is known."""
    knob = KNOBS.get(adjustment.working or "")
    if knob is None or not knob.ask:
        return ""
    last = newest_set(sheet, adjustment.id)
    same = last is not None and (last.line == line.id or adjustment.working == "dampers")  # one pair for all its lines
    known = last is not None and same and (last.found or not knob.each_time)
    return "" if known else knob.ask


def found_spec(adjustment: Adjustment) -> ReadingSpec:
    """What the question of how it stands is answered in. KeyError where nothing is asked."""
    spec = KNOBS[adjustment.working or ""].found
    assert spec is not None
    return spec


def set_spec(adjustment: Adjustment) -> ReadingSpec | None:
    """What a setting of one's own is told in; None where it is set by eye."""
    knob = KNOBS.get(adjustment.working or "")
    return knob.set if knob is not None else None


def suggest(sheet: Sheet, line: Line, adjustment: Adjustment) -> Suggestion | None:
    """How far to set it after all that was read and set so far; None where it is set by eye or too little is known."""
    work = _WORKS.get(adjustment.working or "")
    try:
        return work(sheet, line, adjustment) if work is not None else None
    except ValueError:  # a formula refuses one of the figures: it is set by eye
        return None


def settles(sheet: Sheet, line: Line, adjustment: Adjustment, settings: Mapping[str, str]) -> dict[str, str]:
    """What is kept of a setting told by hand: turns count on from where the screw stood at first."""
    if adjustment.working != "pressure":
        return dict(settings)
    last = newest_set(sheet, adjustment.id)
    before = value_of(last, _TURNS, "count", "x") if last is not None else None
    turns = parse_quantity(settings[_TURNS], "count", "x").si
    return {_TURNS: told((before or 0.0) + turns, "count", "x")}


def _thermostat(sheet: Sheet, line: Line, adjustment: Adjustment) -> Suggestion | None:
    event, ends = newest_set(sheet, adjustment.id), temperatures(sheet, line)
    if event is None or ends is None:
        return None
    dial, out, in_ = (value_of(event, place, "temperature", "°F") for place in ("dial", "goes off at", "comes on at"))
    if dial is None or out is None or in_ is None:
        return None
    system = system_of_sheet(sheet, line)
    return _as_suggestion(howfar.thermostat(dial, out, in_, *ends, system, _DIAL), "dial", "temperature", system)


def _pressure(sheet: Sheet, line: Line, adjustment: Adjustment) -> Suggestion | None:
    aim = aim_of(sheet, line)
    if aim is None or line.reading is None:
        return None
    past = tried(sheet, adjustment.id, (line.check.id,))
    first = line.before[0] if line.before else line.reading
    tries = [Try(0.0, first.value.si)]
    for each in past:
        turns = value_of(each.event, _TURNS, "count", "x")
        if turns is not None and not each.event.found:
            tries.append(Try(turns, each.readings[line.check.id].value.si))
    flow = sheet.of_check("rinse_arms.flow_measured")
    measured = flow.reading if flow is not None and flow.verdict not in ("again", "to do") else None
    rated = [figure.si for name in ("rinse_flow", "rinse_pressure") if (figure := sheet.machine.plate(name))]
    sound = (rated[0], rated[1]) if len(rated) == 2 else None
    system = system_of_sheet(sheet, line)
    done = howfar.regulator(tries, aim.band, system, measured.value.si if measured else None, sound)
    return _as_suggestion(done, _TURNS, "count", "")


def _marks(how: Callable[..., HowFar], quantity: str, place: str, *more: object) -> Callable[..., Suggestion | None]:
    """A knob with marks: its tries are what it stood at and what was read so."""

    def work(sheet: Sheet, line: Line, adjustment: Adjustment) -> Suggestion | None:
        aim = aim_of(sheet, line)
        if aim is None:
            return None
        unit = "Hz" if quantity == "frequency" else "x"
        tries = [
            Try(mark, each.readings[line.check.id].value.si)
            for each in tried(sheet, adjustment.id, (line.check.id,))
            if (mark := value_of(each.event, place, quantity, unit)) is not None
        ]
        if not tries:
            return None
        most = max(_MOST_MARK, *(2.0 * each.setting for each in tries))
        ends = _HERTZ if quantity == "frequency" else (0.0, most)
        return _as_suggestion(how(tries, aim.band, ends, *more), place, quantity, "")

    return work


def _overload(sheet: Sheet, line: Line, adjustment: Adjustment) -> Suggestion | None:
    aim = aim_of(sheet, line)
    if aim is None or line.reading is None:
        return None
    full, dial = aim.band.aim, line.reading.value.si
    done = howfar.overload(full, dial, aim.band.low / full, aim.band.high / full, system_of_sheet(sheet, line))
    return _as_suggestion(done, "dial", "current", "us")


def _pitch(sheet: Sheet, line: Line, adjustment: Adjustment) -> Suggestion | None:
    aim, event = aim_of(sheet, line), newest_set(sheet, adjustment.id)
    if aim is None or event is None or line.reading is None:
        return None
    away = value_of(event, "to the foot", "length", "in")
    thread = value_of(event, "thread", "length", "mm")
    if away is None or away <= 0.0:
        return None
    fall, foot = line.reading.value.si, "foot"
    if aim.flat:  # level is wanted: the low side comes up
        fall, foot = -fall, "foot of the low side"
    done = howfar.table_pitch(fall, aim.band, away, system_of_sheet(sheet, line), thread or None, foot)
    return _as_suggestion(done, "raised", "length", system_of_sheet(sheet, line))


def _dampers(sheet: Sheet, line: Line, adjustment: Adjustment) -> Suggestion | None:
    plates = [sheet.machine.plate(name) for name in ("vent_entrance", "vent_exit")]
    if plates[0] is None or plates[1] is None:
        return None
    trials = []
    for each in tried(sheet, adjustment.id, FLOWS):
        opened = [value_of(each.event, place, "share", "%") for place in ("entrance", "exit")]
        if opened[0] is not None and opened[1] is not None:
            flows = [each.readings[check].value.si for check in FLOWS]
            trials.append(Trial(Pair(opened[0], opened[1]), Pair(*flows)))
    newest = sheet.state.newest()
    if not trials or FLOWS[0] not in newest:
        return None
    reading = newest[FLOWS[0]]
    meter = instrument_of(sheet.book.checks[FLOWS[0]], reading)
    nought = reading.value.unit
    absolute = (meter.accuracy(reading.value) - meter.share * abs(reading.value.value)) * nought.factor
    aim = DamperAim(Pair(plates[0].si, plates[1].si), Flowmeter(absolute, meter.share), unit=nought.symbol)
    if _as_read(trials[-1], aim):
        return Suggestion(_BOTH_RIGHT)
    step = next_dampers(trials, aim)
    settings = {}
    if step.kind in ("set", "again"):
        settings = {place: told(at, "share", "%") for place, at in zip(("entrance", "exit"), step.open, strict=True)}
    return Suggestion(step.says, settings, step.lines, step.kind not in ("short", "leaks", "loose"))


def _as_read(trial: Trial, aim: DamperAim) -> bool:
    """Whether total and share, as read, lie within the band: no meter of the trade asks for more."""
    total, wanted = sum(trial.flow), sum(aim.wanted)
    smaller = 0 if aim.wanted[0] <= aim.wanted[1] else 1
    share = trial.flow[smaller] / total if total > 0.0 else 0.0
    wanted_share = aim.wanted[smaller] / wanted
    return abs(total / wanted - 1.0) <= aim.band and abs(share / wanted_share - 1.0) <= aim.band


def _as_suggestion(done: HowFar, place: str, quantity: str, system: str) -> Suggestion:
    settings = {}
    if done.ended == "set" and not math.isnan(done.to):
        settings = {place: told(done.to, quantity, _UNITS[quantity][system == "si"])}
    return Suggestion(done.says, settings, done.lines, done.ended in ("set", "reached", "closest"))


_BOTH_RIGHT = "Total and share lie within 5 % of what is wanted, as read: lock both handles."
_MOST_MARK = 100.0  # of a dial whose marks are not known: judgement
_HERTZ = (20.0, 70.0)  # of a controller of a standard motor: common practice
_DIAL = (283.15, 372.15)  # K, 50 to 210 °F: any dial of tank or booster ends inside of it; judgement
_UNITS = {
    "temperature": ("°F", "°C"),
    "count": ("x", "x"),
    "current": ("A", "A"),
    "length": ("in", "mm"),
    "frequency": ("Hz", "Hz"),
}
_WORKS: Mapping[str, Callable[[Sheet, Line, Adjustment], Suggestion | None]] = {
    "thermostat": _thermostat,
    "pressure": _pressure,
    "dampers": _dampers,
    "run on": _marks(howfar.run_on, "count", "mark"),
    "dose": _marks(howfar.dose, "count", "mark"),
    "overload": _overload,
    "pitch": _pitch,
    "speed": _marks(howfar.conveyor_speed, "frequency", "hertz", "us"),
}
