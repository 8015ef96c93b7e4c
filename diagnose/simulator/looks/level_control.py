"""What can be read of the tank's filling."""

from __future__ import annotations

from diagnose.simulator.bench import Bench
from diagnose.simulator.registry import look
from diagnose.simulator.senses import Answer
from diagnose.simulator.tank_state import fill_minutes, lost_at_rest, runs_in

__all__: list[str] = []


def _share(bench: Bench) -> float:
    """Stream of the fill over the sound one, tank low."""
    tank = bench.plant.tanks["wash"]
    pressure = max(0.0, bench.plant.water.static - 0.3 * bench.plant.water.static) / bench.plant.plate["fill_pressure"]
    opened = 0.0 if tank.fill_dead else tank.fill_open
    narrow = min(1.0, 8.0 * min(bench.plant.water.stop_open, bench.plant.water.strainer_open))
    return float(opened * narrow * min(1.0, pressure**0.5))


def _runs(bench: Bench) -> bool:
    return runs_in(bench) - lost_at_rest(bench) > 0.02 * bench.plant.rinse.rated_flow


@look("level_control.fill_stream")
def fill_stream(bench: Bench) -> Answer:
    """How the water comes in, tank low."""
    share = _share(bench)
    if share < 0.02:
        return bench.seen("dry", sure=1.0)
    if share < 0.6:
        return bench.seen("thin", "full_and_climbs", sure=0.95)
    lost = lost_at_rest(bench) > 0.3 * bench.plant.tanks["wash"].fill_flow
    return bench.seen("full_no_climb" if lost else "full_and_climbs", "thin", sure=0.96)


@look("level_control.fill_time")
def fill_time(bench: Bench) -> Answer:
    """Minutes from empty to the mark."""
    return bench.value("watch", 60.0 * fill_minutes(bench))


@look("level_control.fill_pressure")
def fill_pressure(bench: Bench) -> Answer:
    """Ahead of the fill's stop: at rest, then while it fills."""
    water, flow = bench.plant.water, bench.plant.tanks["wash"].fill_flow * _share(bench)
    narrow = 8.0 * bench.plant.rinse.jets * min(water.stop_open, water.strainer_open)
    lost = (flow / water.factor) ** 2 + (flow / max(narrow, 1e-9)) ** 2
    return bench.values("test gauge", {"at rest": water.static, "filling": max(0.0, water.static - lost)})


@look("level_control.stop_look")
def stop_look(bench: Bench) -> Answer:
    """The fill's own stop and hand valve."""
    return bench.strongest("open_full", 0.97, fill_stop_not_open="not_open", hand_fill_open="hand_open")


@look("level_control.coil_volts")
def coil_volts(bench: Bench) -> Answer:
    """Volts at the fill coil, tank low."""
    absent = bench.sign("fill not called") > 0.0 or bench.plant.power.control_share < 0.6
    return bench.seen("absent" if absent else "there", sure=0.98)


@look("level_control.coil_ohms")
def coil_ohms(bench: Bench) -> Answer:
    """Ohms of the fill coil: some hundreds, by its volts; or endless."""
    volts = bench.plant.plate["control_volts"]
    return bench.value("ohmmeter", 1e6 if bench.sign("fill coil open") > 0.0 else volts**2 / 18.0)


@look("level_control.imitate_low")
def imitate_low(bench: Bench) -> Answer:
    """The control told that the tank is low."""
    if bench.sign("level relay dead") > 0.0:
        return bench.seen("silent", sure=0.98)
    if bench.sign("fill coil open") > 0.0:
        return bench.seen("silent", sure=0.97)
    return bench.seen("clicks_dry" if bench.plant.tanks["wash"].fill_open < 0.1 else "opens", "opens", sure=0.96)


@look("level_control.valve_inside")
def valve_inside(bench: Bench) -> Answer:
    """Screen, diaphragm and seat of the fill valve."""
    return bench.strongest(
        "clean", 0.95, fill_screen_full="screen_full", fill_valve_limed="limed", grit_at_fill_seat="seat_cut"
    )


@look("level_control.sender_look")
def sender_look(bench: Bench) -> Answer:
    """How float or probes stand."""
    return bench.strongest(
        "free_and_clean",
        0.95,
        float_hangs_high="hangs_up",
        float_lies_low="lies_low",
        level_probe_bridged="film",
        crust_on_the_level_probe="crust",
        level_set_above_the_lip="above_lip",
    )


@look("level_control.level_seen")
def level_seen(bench: Bench) -> Answer:
    """Where the water stands after ten minutes at rest."""
    if _runs(bench):
        return bench.seen("running_over", "at_mark", sure=0.97)
    tank = bench.plant.tanks["wash"]
    low = tank.fill_dead or lost_at_rest(bench) > 0.05 * bench.plant.rinse.rated_flow
    return bench.seen("under_mark" if low else "at_mark", "at_mark", sure=0.96)


@look("level_control.cut_out_test")
def cut_out_test(bench: Bench) -> Answer:
    """Whether the cut-out releases the heat, tank at its mark."""
    return bench.noticed("cut-out says low", "holds_off", "releases", sure=0.98)


@look("level_control.imitate_full")
def imitate_full(bench: Bench) -> Answer:
    """The control told that the tank is full."""
    if not _runs(bench):
        return bench.seen("was_shut", sure=0.97)
    sender = max(
        bench.sign("crust on the level probe"), bench.sign("float lies low"), bench.sign("level set above the lip")
    )
    return bench.seen("stops" if sender > 0.15 else "runs_on", "runs_on", sure=0.97)


@look("level_control.coil_volts_full")
def coil_volts_full(bench: Bench) -> Answer:
    """Volts at the fill coil with the tank at the lip."""
    return bench.noticed("fill called for", "fed", "none_there", sure=0.98)


@look("level_control.arrow_seen")
def arrow_seen(bench: Bench) -> Answer:
    """The arrow on the fill valve."""
    return bench.noticed("fill arrow against the flow", "against", "with_flow", sure=0.97)


@look("level_control.cut_out_drawn")
def cut_out_drawn(bench: Bench) -> Answer:
    """The level drawn under the cut-out with the heat calling."""
    tank = bench.plant.tanks["wash"]
    return bench.seen("drops" if tank.low_cutout and not tank.heater.welded else "stays_on", "drops", sure=0.98)


@look("level_control.breaker_look")
def breaker_look(bench: Bench) -> Answer:
    """Air gap or vacuum breaker of the fill."""
    return bench.noticed("fill breaker stuck", "unprotected", "protected", sure=0.97)
