"""What can be read of tanks that lose water, and of water on the floor."""

from __future__ import annotations

from diagnose.simulator.bench import Bench
from diagnose.simulator.registry import look
from diagnose.simulator.senses import Answer
from diagnose.simulator.spilling import lost_outside, nightly, wet_places, worst_wet
from diagnose.simulator.tank_state import fill_short, lost_at_rest

__all__: list[str] = []

_RACKS = ("pawl bar", "chain")
_TWO = (2,)
_DEPTH, _WIDE = 0.22, 0.56  # m of water over the tank's floor, and its width: judgement, usual of rack machines
_TEN = 600.0  # s
_SEES = 0.003  # m that a level seen by torch has to move: judgement


def _area(bench: Bench) -> float:
    return bench.plant.tanks["wash"].volume / _DEPTH


@look("tank_body.levels_pumping", tanks=_TWO)
def levels_pumping(bench: Bench) -> Answer:
    """Both levels over five minutes of pumping."""
    moved = bench.plant.tanks["rinse"].thrown * _TEN / 2.0 / _area(bench)
    crosses = moved > _SEES and bench.restarted.standing.pumps["rinse"].share > 0.3
    return bench.seen("one_to_other" if crosses else "both_hold", "both_hold", sure=0.97)


@look("tank_body.baffle_look", tanks=_TWO)
def baffle_look(bench: Bench) -> Answer:
    """The plate between the tanks."""
    return bench.noticed("baffle out", "out", "in_place", sure=0.98)


@look("tank_body.loses_when")
def loses_when(bench: Bench) -> Answer:
    """The night asked after; then the level at rest, pumping, and with racks."""
    plant = bench.plant
    rest, quarter = lost_at_rest(bench) * _TEN / 2.0 / _area(bench), 0.0008
    if rest > quarter:
        return bench.seen("at_rest", "by_night", sure=0.95)
    if max(bench.sign("water drawn back"), nightly(bench)) > 0.15:
        return bench.seen("by_night", "holds", sure=0.93)
    pumped = sum(p.joint_leak for p in plant.pumps.values()) + sum(t.thrown for t in plant.tanks.values())
    if pumped > 1e-6 or bench.sign("inner curtain gone") > 0.15:
        return bench.seen("pump_on", "holds", sure=0.94)
    carried = max(bench.sign("water carried out"), bench.sign("rinse goes past the tank"))
    if carried > 0.15:
        return bench.seen("with_racks", "holds", sure=0.94)
    return bench.seen("with_racks" if fill_short(bench) else "holds", "holds", "with_racks", sure=0.94)


@look("tank_body.level_drop")
def level_drop(bench: Bench) -> Answer:
    """Length and width at the water line, and how far it falls in ten minutes, all shut off."""
    area = _area(bench)
    length = bench.senses.measure("tape", area / _WIDE)
    fall = min(lost_at_rest(bench) * _TEN / area, _DEPTH)
    width = bench.senses.measure("tape", _WIDE)
    return Answer({"length": length, "width": width, "fall": max(0.0, bench.senses.measure("level mark", fall))})


@look("tank_body.under_look")
def under_look(bench: Bench) -> Answer:
    """Welds, flanges, drain and pump wiped dry and pressed with paper."""
    found = {
        "weld": bench.sign("weld wet"),
        "flange": bench.sign("flange wet"),
        "drain": bench.sign("drain joint wet"),
        "pump": bench.sign("pump seal drips at rest"),
    }
    return bench.worst(found, "all_dry", sure=0.95)


@look("tank_body.under_running")
def under_running(bench: Bench) -> Answer:
    """Between pump and manifold with the pump on."""
    sprays = sum(p.joint_leak for p in bench.plant.pumps.values()) > 1e-6
    return bench.seen("sprays" if sprays else "dry", "dry", sure=0.98)


@look("tank_body.ware_look")
def ware_look(bench: Bench) -> Answer:
    """Pieces that hold water at the clean end."""
    return bench.seen("full" if bench.plant.conveyor.carries > 0.2 else "upturned", "upturned", sure=0.96)


@look("tank_body.where_wet")
def where_wet(bench: Bench) -> Answer:
    """Where a mopped floor is wet first."""
    found = worst_wet(bench)
    if found is None:
        return bench.seen("nowhere", "working_place", sure=0.97)
    return bench.seen(found.place, "underneath", "along_doors", sure=0.94)


@look("tank_body.wet_when")
def wet_when(bench: Bench) -> Answer:
    """With what the water comes."""
    found = worst_wet(bench)
    if found is None:
        return bench.seen("never", "with_work", sure=0.97)
    return bench.seen(found.when, "with_rinse", "with_pump", sure=0.94)


@look("tank_body.water_kind")
def water_kind(bench: Bench) -> Answer:
    """Some of it taken up with a white cloth."""
    found = worst_wet(bench)
    if found is None:
        return bench.seen("no_water", "clear", sure=0.97)
    return bench.seen(found.kind, "clear", "soapy", sure=0.94)


@look("tank_body.waste_end")
def waste_end(bench: Bench) -> Answer:
    """The end of the waste pipe while a tank drains."""
    return bench.noticed("waste splashes", "beside", "inside", sure=0.98)


@look("tank_body.pipes_look")
def pipes_look(bench: Bench) -> Answer:
    """Unions, stems and hoses with paper round them; the breaker watched over two racks."""
    found = {"joint_wet": bench.sign("pipe drips"), "mushroom_spits": bench.sign("rinse breaker spits")}
    return bench.worst(found, "dry", sure=0.96)


@look("tank_body.table_jug", conveyor=_RACKS)
def table_jug(bench: Bench) -> Answer:
    """A jug poured on each table."""
    found = {"through": bench.sign("table seam open below"), "away": bench.sign("table falls away")}
    return bench.worst(found, "home", sure=0.97)


@look("tank_body.papers")
def papers(bench: Bench) -> Answer:
    """Papers under machine, doors, ends and table joints after a quarter of an hour of work."""
    found = wet_places(bench)
    by_hand = bench.sign("floor wetted by hand") > 0.15
    seen = [w for w in found if w.place != "working_place" and w.when != "never"]
    if seen and (max(w.loud for w in seen) > 0.5 or lost_outside(bench) > 0.0):
        return bench.seen("papers_wet", "all_dry", sure=0.96)
    return bench.seen("floor_only" if by_hand else "all_dry", "all_dry", sure=0.95)
