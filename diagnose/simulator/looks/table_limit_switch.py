"""What can be read of the switch that stops the conveyor when the clean table is full."""

from __future__ import annotations

from diagnose.simulator.bench import Bench
from diagnose.simulator.looks.stop_circuit import contact
from diagnose.simulator.passage import REACH, happens, passage
from diagnose.simulator.registry import look
from diagnose.simulator.senses import Answer

__all__: list[str] = []

_RACKS = ("pawl bar", "chain")
_TAP = 0.0055  # m at which a tap clicks it: judgement
_NEVER = 60.0  # s that are written where it never stops


def _never_stops(bench: Bench) -> bool:
    """Whether pressing the flap by hand stops nothing this time."""
    plant = bench.plant
    table = plant.conveyor.table
    slips = table.lever_slips > 0.0 and happens(bench, table.lever_slips, 1) > 0
    return table.contact == "bridged" or table.jumped or plant.motors["drive"].welded or slips


@look("table_limit_switch.paddle_push", conveyor=_RACKS)
def paddle_push(bench: Bench) -> Answer:
    """Pressed and let go, the table empty."""
    table = bench.plant.conveyor.table
    if table.contact == "reversed":
        return bench.seen("wrong_way", sure=0.97)
    if _never_stops(bench):
        return bench.seen("never_stops", "stops_on_press", sure=0.96)
    if table.pressed in ("itself", "rim"):
        return bench.seen("stands", "touchy", sure=0.95)
    touchy = table.travel < _TAP or table.damp > 0.0
    return bench.seen("touchy" if touchy else "stops_on_press", "stops_on_press", sure=0.95)


@look("table_limit_switch.paddle_look", conveyor=_RACKS)
def paddle_look(bench: Bench) -> Answer:
    """Straight, clear, in reach, springs back."""
    table = bench.plant.conveyor.table
    if table.pressed in ("rim", "itself"):
        return bench.seen("bent_in" if table.pressed == "rim" else "no_return", "right", sure=0.96)
    return bench.seen("out_of_reach" if table.travel > REACH else "right", "right", sure=0.95)


@look("table_limit_switch.paddle_travel", conveyor=_RACKS)
def paddle_travel(bench: Bench) -> Answer:
    """From touching to the click, [m]."""
    table = bench.plant.conveyor.table
    return bench.value("tape", 0.001 if table.pressed in ("rim", "itself") else table.travel)


@look("table_limit_switch.free_ohms", conveyor=_RACKS)
def free_ohms(bench: Bench) -> Answer:
    """Flap free and held straight, [ohm]."""
    table = bench.plant.conveyor.table
    opened = table.contact == "reversed" or (table.pressed == "itself" and table.contact != "bridged")
    return contact(bench, opened, table.damp)


@look("table_limit_switch.pressed_ohms", conveyor=_RACKS)
def pressed_ohms(bench: Bench) -> Answer:
    """Flap pressed home, [ohm]."""
    table = bench.plant.conveyor.table
    slips = table.lever_slips > 0.0 and happens(bench, table.lever_slips, 1) > 0
    closed = table.contact in ("bridged", "reversed") or slips
    return contact(bench, not closed, table.damp)


@look("table_limit_switch.paddle_clear", conveyor=_RACKS)
def paddle_clear(bench: Bench) -> Answer:
    """What touches the flap."""
    by = {"cart": "leaned_on", "rack": "rack_there", "rim": "pressed_alone", "itself": "pressed_alone", "": "clear"}
    truth = by[bench.plant.conveyor.table.pressed]
    if truth == "clear" and bench.sign("clean table fills again") > 0.3:
        truth = "rack_there"
    return bench.seen(truth, "clear", sure=0.96)


@look("table_limit_switch.shaft_mark", conveyor=_RACKS)
def shaft_mark(bench: Bench) -> Answer:
    """A line across lever and shaft."""
    slips = bench.plant.conveyor.table.lever_slips > 0.0
    return bench.seen("parted" if slips else "one_line", "one_line", sure=0.97)


@look("table_limit_switch.stop_seconds", conveyor=_RACKS)
def stop_seconds(bench: Bench) -> Answer:
    """From pressing the flap to the standing bar, [s]."""
    table = bench.plant.conveyor.table
    never = _never_stops(bench) or table.contact == "reversed"
    return Answer({"": max(0.0, bench.senses.measure("watch", _NEVER if never else table.delay + 0.3))})


@look("table_limit_switch.fill_table", conveyor=_RACKS)
def fill_table(bench: Bench) -> Answer:
    """The clean table filled to its end."""
    table, found = bench.plant.conveyor.table, passage(bench)
    if table.contact == "reversed" or (found.stands == "contact" and found.contact == "table"):
        return bench.seen("before", sure=0.97)
    if max(bench.sign("table seam stands up"), bench.sign("table leans across")) > 0.4:
        return bench.seen("row_hangs", "before", sure=0.93)
    if _never_stops(bench):
        return bench.seen("not_at_all", "too_late", sure=0.95)
    if table.travel > REACH:
        return bench.seen("not_at_all" if table.travel > 0.042 else "too_late", "not_at_all", sure=0.9)
    if table.delay > 2.0:
        return bench.seen("too_late", "not_at_all", sure=0.95)
    if table.damp > 0.0:
        return bench.seen("before" if happens(bench, 0.5, 1) else "at_last", "not_at_all", sure=0.8)
    return bench.seen("before" if table.travel < _TAP else "at_last", "at_last", sure=0.94)
