"""What can be seen and measured of a belt of flights and what is loaded on it."""

from __future__ import annotations

from diagnose.simulator.bench import Bench
from diagnose.simulator.looks.conveyor_chain import link_lengths
from diagnose.simulator.motoring import tripped
from diagnose.simulator.passage import happens, passage
from diagnose.simulator.registry import look
from diagnose.simulator.senses import Answer

__all__: list[str] = []

_FLIGHT = ("flight",)
_PIECES = 40  # pieces that may go wrong in five minutes of ware: judgement
_SLANTS = 0.003  # m between take-ups, or between sides, from which rows are seen to slant: judgement


def _slants(bench: Bench) -> bool:
    belt = bench.plant.conveyor
    return belt.flights.askew > _SLANTS or bench.sign("flights slant") > 0.15


@look("flight_conveyor.belt_run", conveyor=_FLIGHT)
def belt_run(bench: Bench) -> Answer:
    """Five minutes of ware as it is loaded."""
    found, flights = passage(bench), bench.plant.conveyor.flights
    if found.contact == "table" and bench.plant.conveyor.table.pressed == "rack":
        return bench.seen("held_at_exit", "belt_stops", sure=0.93)
    if found.stands or "drive" in tripped(bench):
        return bench.seen("belt_stops", "jerks", sure=0.95)
    shares = {
        "goes_missing": flights.falls,
        "heaps_inside": flights.strikes + found.holds,
        "held_at_exit": flights.drawn_down,
        "belt_stops": max(found.stops.values(), default=0.0),
    }
    counts = {outcome: happens(bench, share, _PIECES) for outcome, share in shares.items()}
    most = max(counts, key=lambda outcome: counts[outcome])
    if counts[most] > 1:
        return bench.seen(most, "passes", sure=0.94)
    moves_ill = found.slip > 0.05 or found.jump > 0.04 or found.creep > 0.05 or flights.limps > 0.3 or _slants(bench)
    return bench.seen("jerks" if moves_ill else "passes", "passes", sure=0.93)


@look("flight_conveyor.belt_empty", conveyor=_FLIGHT)
def belt_empty(bench: Bench) -> Answer:
    """A whole round without ware."""
    found, belt = passage(bench), bench.plant.conveyor
    if found.stands:
        runs = found.stands in ("parted", "slips")
        return bench.seen("stands_motor_runs" if runs else "stands_silent", sure=0.97)
    if bench.sign("rows knock at one place") > 0.15:
        return bench.seen("tick_place", "labours", sure=0.93)
    if belt.flights.limps > 0.15:
        return bench.seen("tick_round", "even", sure=0.93)
    if _slants(bench):
        return bench.seen("one_side", "cracks", sure=0.93)
    if found.jump > 0.04 or bench.sign("belt climbs with a bang") > 0.15:
        return bench.seen("cracks", "even", sure=0.9)
    return bench.seen("labours" if belt.stiff > 0.3 else "even", "even", sure=0.93)


@look("flight_conveyor.loading_look", conveyor=_FLIGHT)
def loading_look(bench: Bench) -> Answer:
    """Twenty rows as they are loaded."""
    return bench.strongest(
        "right",
        0.96,
        small_ware_on_the_bare_belt="small_loose",
        ware_too_tall_on_the_belt="tall_leaning",
        light_ware_on_the_belt="light_loose",
        heavy_pans_in_layers="heaped",
    )


@look("flight_conveyor.belt_weight", conveyor=_FLIGHT)
def belt_weight(bench: Bench) -> Answer:
    """Of a foot of belt where it is heaviest, [kg]."""
    return bench.value("scale", bench.plant.plate["belt_load"] * bench.plant.conveyor.flights.load)


@look("flight_conveyor.exit_look", conveyor=_FLIGHT)
def exit_look(bench: Bench) -> Answer:
    """The exit while the belt stands or ware heaps there."""
    table, flights = bench.plant.conveyor.table, bench.plant.conveyor.flights
    if table.pressed == "rack":
        return bench.seen("starts_when_freed", "bar_over", sure=0.97)
    if table.pressed or table.contact == "reversed":
        return bench.seen("bar_over", "starts_when_freed", sure=0.96)
    return bench.seen("drawn_down" if flights.drawn_down > 0.05 else "clear", "clear", sure=0.95)


@look("flight_conveyor.comb_look", conveyor=_FLIGHT)
def comb_look(bench: Bench) -> Answer:
    """The comb at the exit."""
    return bench.noticed("comb fingers bent", "bent", "in_line", sure=0.97)


@look("flight_conveyor.flight_row", conveyor=_FLIGHT)
def flight_row(bench: Bench) -> Answer:
    """Every row of flights."""
    return bench.strongest("whole", 0.96, flight_fingers_broken="broken", flight_off_its_chain="end_free")


@look("flight_conveyor.takeups", conveyor=_FLIGHT)
def takeups(bench: Bench) -> Answer:
    """Thread at left less thread at right, [m]."""
    return bench.value("tape", bench.plant.conveyor.flights.askew)


@look("flight_conveyor.belt_sag", conveyor=_FLIGHT)
def belt_sag(bench: Bench) -> Answer:
    """Of the return strand in a free span, [m/m]."""
    return bench.value("level", bench.plant.conveyor.chains.sag)


@look("flight_conveyor.chain_length", conveyor=_FLIGHT)
def chain_length(bench: Bench) -> Answer:
    """Twenty links of each side chain."""
    return link_lengths(bench)


@look("flight_conveyor.under_look", conveyor=_FLIGHT)
def under_look(bench: Bench) -> Answer:
    """Under the belt with a lamp."""
    return bench.strongest("clear", 0.96, ware_wedged_under_the_belt="wedged", return_pan_packed="packed")


@look("flight_conveyor.strip_feel", conveyor=_FLIGHT)
def strip_feel(bench: Bench) -> Answer:
    """A rule's edge along both strips."""
    return bench.noticed("strip stands up", "catches", "flush", sure=0.97)


@look("flight_conveyor.shafts", conveyor=_FLIGHT)
def shafts(bench: Bench) -> Answer:
    """Both end shafts."""
    return bench.strongest(
        "in_order", 0.97, belt_sprocket_loose_on_the_shaft="hub_loose", end_shaft_bearing_groans="bearing_hot"
    )
