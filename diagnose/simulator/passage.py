"""How racks or ware get through in late service: what stands, what stops them at the rush, what holds them."""

from __future__ import annotations

from dataclasses import dataclass

from diagnose.simulator.bench import Bench
from diagnose.simulator.control import stalls, starts
from diagnose.simulator.conveying import (
    ARM,
    DROPS_OUT,
    bar_share,
    creeps,
    held_hard,
    jam_open,
    jumps,
    pull,
    slips,
    stands_open,
)
from diagnose.simulator.conveyor_parts import TableSwitch
from diagnose.simulator.parts import Conveyor
from diagnose.simulator.plant import Plant

__all__ = ["AT_TABLE", "NEEDED", "REACH", "Passage", "happens", "overrun", "passage", "sinking"]

# Places at the tables where racks hang, by the sign of what is wrong there.
AT_TABLE = {
    "entrance": ("step at the entrance",),
    "exit": ("step at the exit",),
    "table": ("table seam stands up", "table turn drags", "table leans across"),
}
_OWN = ("racks broken", "racks of two sizes", "ware overhangs", "racks wrong side first")
_HANDS = ("racks fed askew", "racks pushed or pulled")
_BUMP = 0.005  # m that a passing rack moves the table's flap; judgement
REACH = 0.032  # m that the last rack can push it; judgement
_ROW_GIVES = 0.0762  # m that a row gives after the click before a rack lifts, 3 in; judgement
NEEDED = 0.82  # of the plate's run-on: what the last rack's way takes at the plate's speed; judgement
_PULL_PEAK = 1.15  # greatest pull of a stroke over its mean; judgement


@dataclass(frozen=True)
class Passage:
    """The conveyor at a rush. Shares are of strokes, of racks, of time at rush."""

    stands: str  # "" | contact | motor | parted | slips: why nothing is carried at all
    contact: str  # jam | table | timer where a contact of the stop circuit holds it off for good
    stops: dict[str, float]  # contact -> share of the rush for which it stops the conveyor now and then
    slip: float
    creep: float
    jump: float
    bar: float  # speed over the plate's, machine full
    bar_empty: float
    racks: float  # of a rack that is taken along, over the plate's speed
    left: dict[str, float]  # racks left behind by what should push them, by how
    held: dict[str, tuple[float, float]]  # racks held in the machine, by what: share and pull it bears
    tables: dict[str, float]  # racks that hang at the tables, by where
    own: float  # racks that hang for their own or their ware's sake
    hands: float  # racks that hang as they are fed or taken
    turned: float

    @property
    def misses(self) -> float:
        """Share of racks left behind."""
        return sum(self.left.values())

    @property
    def holds(self) -> float:
        """Share of racks held in the machine."""
        return sum(share for share, _ in self.held.values())


def passage(bench: Bench) -> Passage:
    """Work it out once for a bench."""
    known = bench.kept.get("passage")
    if not isinstance(known, Passage):
        known = bench.kept["passage"] = _passage(bench)
    return known


def _passage(bench: Bench) -> Passage:
    plant = bench.plant
    belt = plant.conveyor
    contact = stands_open(belt)
    turns = bench.restarted.standing.motors["drive"].turns and not stalls(plant, "drive")
    stands = ""
    if contact and not plant.motors["drive"].welded:
        stands = "contact"
    elif not turns and starts(plant):
        stands = "motor"
    elif belt.drive.parted:
        stands = "parted"
    elif bar_share(belt) <= 0.0:
        stands = "slips"
    tables, own, hands = _hung(bench, belt)
    return Passage(
        stands=stands,
        contact=contact,
        stops=_stops(plant),
        slip=slips(belt),
        creep=creeps(belt),
        jump=jumps(belt),
        bar=bar_share(belt) if stands in ("", "slips", "parted") else 0.0,
        bar_empty=bar_share(belt, full=False) if stands in ("", "slips", "parted") else 0.0,
        racks=bar_share(belt) * belt.drive.stroke * (1.0 - _lost_at_pin(plant)) if stands == "" else 0.0,
        left=dict(belt.track.left),
        held=dict(belt.track.held),
        tables=tables,
        own=own,
        hands=hands,
        turned=belt.track.turned,
    )


def _lost_at_pin(plant: Plant) -> float:
    """Share of each stroke that play at the drive arm takes, at both ends, of bars only."""
    if plant.plate.traits["conveyor"] != "pawl bar":
        return 0.0
    return min(0.5, 2.0 * max(0.0, plant.conveyor.drive.arm_play - 0.001) / plant.plate["conveyor_stroke"])


def _hung(bench: Bench, belt: Conveyor) -> tuple[dict[str, float], float, float]:
    """Racks that hang at tables, for their own sake and by hands, as their signs share the whole."""
    marks = {place: max(bench.sign(name) for name in names) for place, names in AT_TABLE.items()}
    own, hands = max(bench.sign(name) for name in _OWN), max(bench.sign(name) for name in _HANDS)
    whole = sum(marks.values()) + own + hands
    if whole <= 0.0:
        return {}, 0.0, 0.0
    each = belt.jams / whole
    return {place: each * mark for place, mark in marks.items() if mark > 0.0}, each * own, each * hands


def _stops(plant: Plant) -> dict[str, float]:
    belt = plant.conveyor
    found = {"jam": 0.0, "table": 0.0, "timer": 0.0}
    jam, timer = belt.jam, belt.timer
    if not jam.bridged and not jam_open(jam):
        reached = ARM * min(_PULL_PEAK * pull(belt), belt.slips_at)
        if reached > jam.gap:
            found["jam"] = min(0.7, 0.2 + 0.6 * (reached - jam.gap) / jam.gap)
        if jam.damp > DROPS_OUT:
            found["jam"] = max(found["jam"], min(0.6, 0.2 + jam.damp / 1e4))
    full = plant.signs.get("clean table fills again", 0.0)
    found["table"] = max(0.55 * full, _touchy(belt.table))
    needed = NEEDED * plant.plate["run_on"] / max(belt.pace, 0.3)
    if timer.run_on < needed:
        found["timer"] = 0.3 + 0.4 * (needed - timer.run_on) / needed
    elif timer.run_on - timer.spread < needed:
        found["timer"] = 0.25
    found["timer"] = max(found["timer"], 0.8 * timer.misses)
    return {contact: share for contact, share in found.items() if share > 0.0}


def _touchy(table: TableSwitch) -> float:
    if table.contact == "bridged":
        return 0.0
    share = 0.25 + 0.5 * (1.0 - table.travel / _BUMP) if table.travel < _BUMP else 0.0
    if table.damp > DROPS_OUT:
        share = max(share, min(0.6, 0.25 + table.damp / 1e4))
    return share


def sinking(bench: Bench) -> str:
    """What a rack that is held does to the drive: jam, clutch, drive or rack; "" where none is held."""
    found = passage(bench).held
    if not found:
        return ""
    return held_hard(bench.plant.conveyor, max(found.values())[1])


def overrun(bench: Bench) -> float:
    """How badly the conveyor pushes on though the clean table is full: 0 not at all, 1 as if there were no switch."""
    plant, table = bench.plant, bench.plant.conveyor.table
    if plant.plate.traits["conveyor"] == "flight":
        return 0.0
    if plant.motors["drive"].welded or table.jumped or table.contact in ("bridged", "reversed"):
        return 1.0
    over = max(0.0, table.delay * plant.conveyor.speed * plant.conveyor.pace - _ROW_GIVES) / _ROW_GIVES
    late = min(1.0, 0.35 + 0.4 * over) if over > 0.0 else 0.0
    beyond = 0.9 if table.travel > REACH else 0.0
    leaky = 0.35 if table.damp > 0.0 else 0.0  # water that carries the coil's current keeps it in, for a while
    return max(late, beyond, leaky, table.lever_slips, 0.25 * (bench.sign("table leans across") > 0.4))


def happens(bench: Bench, share: float, tries: int) -> int:
    """How many of so many racks meet with what so large a share of racks meets with."""
    return sum(bench.senses.chance.random() < share for _ in range(tries))
