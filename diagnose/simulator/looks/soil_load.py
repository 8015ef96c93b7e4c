"""What can be seen of soil, foam, wetness, and of what soils clean ware again."""

from __future__ import annotations

from diagnose.simulator.bench import Bench
from diagnose.simulator.registry import look
from diagnose.simulator.senses import Answer
from diagnose.simulator.state import DENSITY
from diagnose.simulator.washing import ware

__all__: list[str] = []

_RACKS = ("pawl bar", "chain")
_DRIPS = 0.55e-3  # m3 of wash water that drips over with a rack in order: judgement
_SEEN = 0.12  # effect from which an eye sees it: judgement


@look("soil_load.racks_in")
def racks_in(bench: Bench) -> Answer:
    """Ten racks before they go in."""
    found = {"food_on": bench.sign("food on the ware"), "hard": bench.plant.chemistry.dried}
    return bench.worst(found, "scraped", sure=0.93)


@look("soil_load.fresh_beside_dried")
def fresh_beside_dried(bench: Bench) -> Answer:
    """The same soil fresh and dried on: a wash that is only a little short takes the fresh one off."""
    found = ware(bench)
    short = max(found.feeble, 0.7 * found.lane)
    if short > 0.14:
        return bench.seen("both_left", "dried_left", sure=0.85 if short > 0.3 else 0.65)
    if found.dried > 0.15 or short > 0.06:
        return bench.seen("dried_left", "both_clean", sure=0.93)
    return bench.seen("both_clean", "dried_left", sure=0.95)


@look("soil_load.tank_water")
def tank_water(bench: Bench) -> Answer:
    """A cupful of wash water."""
    found = ware(bench)
    fouled = max(0.0, found.soil - 1.9) * 0.4
    if not found.skims and bench.late[-1].levels["wash"] > 0.88:
        fouled = max(fouled, 0.5)
    old = bench.sign("wash water hours old")
    kinds = {"old_foul": fouled if old > 0.3 else 0.0, "new_foul": fouled if old <= 0.3 else 0.0}
    return bench.worst(kinds, "clear", sure=0.93)


@look("soil_load.scum_look")
def scum_look(bench: Bench) -> Answer:
    """The tank's surface while racks are rinsed."""
    tank = bench.plant.tanks["wash"]
    level = bench.service.state.flowing["mass wash"] / (tank.volume * DENSITY)
    if level < 0.985:
        return bench.seen("under_lip", "skims", sure=0.94)
    if level > 1.06 or tank.overflow_open < 0.4:
        return bench.seen("over_lip", "skims", sure=0.92)
    return bench.seen("skims", "under_lip", sure=0.97)


@look("soil_load.prewash_watch", prewash=(True,))
def prewash_watch(bench: Bench) -> Answer:
    """Spray, basket and heat of the pre-wash."""
    idle = max(bench.sign("pre-wash idle"), 0.8 * (bench.restarted.standing.pumps["prewash"].share < 0.6))
    return bench.worst({"idle": idle}, "works", sure=0.95)


@look("soil_load.new_piece")
def new_piece(bench: Bench) -> Answer:
    """New pieces beside the others for ten passes."""
    films = ware(bench).films
    worst = max(films, key=lambda name: films[name])
    if films[worst] < _SEEN or worst in ("blue", "nothing", "grey_lines"):
        return bench.seen("new_clear", "both_film", sure=0.95)
    return bench.seen("both_film", "new_clear", sure=0.9)


@look("soil_load.foam_when")
def foam_when(bench: Bench) -> Answer:
    """Foam by when it comes after a fresh fill."""
    return bench.worst(ware(bench).foam, "flat", sure=0.93)


@look("soil_load.dry_which")
def dry_which(bench: Bench) -> Answer:
    """What is wet two minutes after the rinse."""
    wet = {name: effect for name, effect in ware(bench).wet.items() if name != "stacked"}
    return bench.worst(wet, "dry", sure=0.93)


@look("soil_load.carried", tanks=(2,), conveyor=_RACKS)
def carried(bench: Bench) -> Answer:
    """Detergent in wash and power-rinse tank: what a rack carries over against the fresh water that comes.

    A tank at rest with itself holds `carried / (carried + fresh)` of the strength it is fed with.
    """
    plant = bench.plant
    over = max(bench.sign("baffle out"), bench.sign("ware carries water out"), 0.5 * bench.sign("spray over curtain"))
    each = _DRIPS * (1.0 + 5.0 * over)
    held = (
        plant.plate["rack_length"] * plant.rinse.actuator_share / max(plant.conveyor.speed * plant.conveyor.pace, 1e-3)
    )
    fresh = bench.restarted.standing.rinse.flow * held * (1.0 - 0.85 * bench.sign("rinse water bypasses the tank"))
    wash = 1e6 * bench.service.state.flowing["detergent wash"] / max(bench.service.state.flowing["mass wash"], 0.1)
    share = each / max(each + fresh, 1e-6)
    return bench.values("titration kit", {"wash": wash, "rinse": wash * share})


@look("soil_load.where_resoiled")
def where_resoiled(bench: Bench) -> Answer:
    """Clean pieces through a working machine, looked at before a hand touches them."""
    again = {name: effect for name, effect in ware(bench).again.items() if name != "hands"}
    return bench.worst(again, "clean", sure=0.93)
