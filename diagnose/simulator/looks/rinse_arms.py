"""What can be read at the final-rinse arms."""

from __future__ import annotations

from diagnose.simulator.bench import Bench
from diagnose.simulator.registry import look
from diagnose.simulator.senses import Answer

__all__: list[str] = []

_PSI = 6894.757


@look("rinse_arms.flow_measured")
def flow_measured(bench: Bench) -> Answer:
    """What the rinse passes, with bucket and watch."""
    return Answer({"": max(0.0, bench.senses.measure("bucket and watch", bench.rinsing.standing.rinse.flow))})


@look("rinse_arms.spray_pattern")
def spray_pattern(bench: Bench) -> Answer:
    """How the sprays stand."""
    rinse = bench.rinsing.standing.rinse
    wanted = bench.plant.plate["rinse_pressure"]
    gush = {
        "rinse arm off": "pours_from_stub",
        "rinse end cap off": "gush_at_end",
        "rinse jet missing": "one_rope",
        "rinse arm dead beyond a plug": "stretch_dead",
        "rinse jets limed": "fans_missing",
        "rinse jets askew": "slanted",
    }
    marked = max(gush, key=bench.sign)
    if bench.sign(marked) > 0.15 and rinse.flow > 0.0:
        return Answer(outcome=bench.senses.notice(bench.sign(marked), gush[marked], "straight", 0.95))
    if rinse.jets < 0.02 * wanted:
        return bench.seen("nothing", "short", sure=0.97)
    if rinse.jets < 0.5 * wanted:
        return bench.seen("short", "straight", sure=0.93)
    if rinse.jets > 1.6 * wanted:
        return bench.seen("fog", "straight", sure=0.88)
    if bench.plant.rinse.jets_wear > 1.2:
        return bench.seen("fat_streams", "straight", sure=0.8)
    return bench.seen("straight", "slanted", "fans_missing", sure=0.96)


@look("rinse_arms.arms_looked_at")
def arms_looked_at(bench: Bench) -> Answer:
    """The arms looked at with the machine off."""
    return bench.strongest(
        "complete",
        0.95,
        rinse_arm_off="arm_down",
        rinse_end_cap_off="part_missing",
        rinse_jet_missing="part_missing",
        rinse_jets_limed="white_holes",
        rinse_jets_askew="turned",
    )


@look("rinse_arms.jet_holes")
def jet_holes(bench: Bench) -> Answer:
    """Holes measured with drill shanks."""
    if bench.plant.rinse.jets_wear > 1.12:
        return bench.seen("oversize", "true_size", sure=0.95)
    if bench.sign("rinse jets limed") > 0.15:
        return bench.seen("narrowed", "true_size", sure=0.95)
    return bench.seen("true_size", "oversize", "narrowed", sure=0.96)


@look("rinse_arms.arm_flushed")
def arm_flushed(bench: Bench) -> Answer:
    """What comes out with the caps off."""
    return bench.noticed("rinse arm dead beyond a plug", "flakes", "clear", sure=0.96)


@look("rinse_arms.outlet_to_manifold", booster_place=("remote",))
def outlet_to_manifold(bench: Bench) -> Answer:
    """What the water loses from the booster's outlet to the manifold."""
    flow = bench.rinsing.standing.rinse.flow * 985.0 * 4186.0
    shell = bench.service.state.flowing["booster"]
    lost = bench.plant.rinse.pipe_loss * (shell - bench.plant.air.room) / flow if flow > 0.0 else 0.0
    return bench.value("two thermometers", lost)


@look("rinse_arms.water_hardness")
def water_hardness(bench: Bench) -> Answer:
    """Hardness of the water that comes to the rinse."""
    return bench.value("titration kit", 1000.0 * bench.plant.water.hardness)  # mg/L
