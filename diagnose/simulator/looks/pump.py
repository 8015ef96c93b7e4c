"""What can be read at the wash pump without taking it apart."""

from __future__ import annotations

from diagnose.simulator.bench import Bench
from diagnose.simulator.pumping import drawn_in
from diagnose.simulator.registry import look
from diagnose.simulator.senses import Answer
from diagnose.simulator.washing import ware

__all__: list[str] = []


def air_share(bench: Bench) -> float:
    """Air or vapour in the wash pump over late service, by what its flow lost to it."""
    return bench.plant.pumps["wash"].air + drawn_in(bench.plant, bench.service.state, "wash")


@look("pump.pressure")
def pressure(bench: Bench) -> Answer:
    """Wash pressure at the manifold."""
    return bench.value("wash gauge", max(0.0, bench.restarted.standing.pumps["wash"].pressure))


@look("pump.motor_plate")
def motor_plate(bench: Bench) -> Answer:
    """Turns and frequency on the plates."""
    return bench.noticed("pump turns too slowly", "slower", "agrees", sure=0.98)


@look("pump.drive_look")
def drive_look(bench: Bench) -> Answer:
    """Belt or coupling."""
    return bench.noticed("pump belt slack", "slack", "sound")


@look("pump.seal_drip")
def seal_drip(bench: Bench) -> Answer:
    """Under the seal at rest, and the water as it runs."""
    seen = max(bench.sign("pump seal drips at rest"), bench.sign("wash water milky"))
    return Answer(outcome=bench.senses.notice(seen, "drips", "dry"))


@look("pump.spray_look")
def spray_look(bench: Bench) -> Answer:
    """Sound and sight of the spray."""
    pump, running = bench.plant.pumps["wash"], bench.restarted.standing.pumps["wash"]
    if running.share < 0.03:
        return bench.seen("no_water", "weak", sure=0.97)
    if pump.jets_off > 0.75:
        return bench.seen("gush", "weak", sure=0.93)
    share = running.pressure / pump.pressure
    if share > 1.18 and pump.wheel > 1.05:
        return bench.seen("fierce", "strong", sure=0.9)
    weak = share < 0.86 or running.share < 0.86 or air_share(bench) > 0.07
    return bench.seen("weak", "strong", sure=0.94) if weak else bench.seen("strong", "weak", sure=0.96)


@look("pump.tank_look")
def tank_look(bench: Bench) -> Answer:
    """Level, foam and baskets with the pump stopped."""
    level = bench.late[-1].levels["wash"]
    foamy = max(v for k, v in ware(bench).foam.items() if k not in ("milky", "cold_only"))
    if level < 0.88:
        return bench.seen("under_mark", "in_order", sure=0.96)
    if foamy > 0.4:
        return bench.seen("foam", "in_order", sure=0.95)
    return bench.noticed("scrap baskets full", "baskets_full", "in_order", sure=0.94)


@look("pump.tank_heat_look")
def tank_heat_look(bench: Bench) -> Answer:
    """A second thermometer in the tank."""
    return bench.value("reference thermometer", bench.temperature("wash"))


@look("pump.noise")
def noise(bench: Bench) -> Answer:
    """The sound of the pump, as it starts and runs."""
    motor = bench.restarted.standing.motors["wash"]
    plant = bench.plant
    if not motor.turns and max(motor.amps) > 0.0:
        return bench.seen("hum", "usual", sure=0.9)
    if bench.sign("pump squeals") > 0.2:
        return bench.seen("squeal", "usual", sure=0.87)
    rough = (
        bench.sign("pump scrapes"),
        bench.sign("pump bearing growls"),
        bench.sign("wheel unbalanced"),
        bench.sign("wash motor loose"),
        bench.sign("pump coupling askew"),
    )
    if max(rough) > 0.2:
        return bench.seen("scrape_rattle", "usual", sure=0.87)
    if air_share(bench) > 0.07 or plant.pumps["wash"].suction_open < 0.3:
        return bench.seen("gravel", "usual", sure=0.85)
    return bench.seen("usual", "scrape_rattle", sure=0.97)


@look("pump.rotation", phases=(3,))
def rotation(bench: Bench) -> Answer:
    """Which way pump and conveyor turn."""
    if bench.plant.power.swapped:
        return bench.seen("all_back", "this_one_back", sure=0.98)
    if bench.plant.motors["wash"].reversed:
        return bench.seen("this_one_back", "with_arrow", sure=0.97)
    return bench.seen("with_arrow", "this_one_back", sure=0.995)


@look("pump.amps_swing")
def amps_swing(bench: Bench) -> Answer:
    """One line of the pump for two minutes."""
    motor = bench.plant.motors["wash"]
    amps = max(bench.running_amps("wash")) / motor.amps
    if bench.sign("object in the wheel") > 0.2 or amps > 1.3:
        return bench.seen("jumps_high", "steady", sure=0.9)
    if air_share(bench) > 0.07:
        return bench.seen("swings", "steady", sure=0.93)
    if amps < 0.74:
        return bench.seen("steady_low", "steady", sure=0.94)
    return bench.seen("steady", "jumps_high", sure=0.95)


@look("pump.arms_look")
def arms_look(bench: Bench) -> Answer:
    """Arms and end plugs."""
    return bench.noticed("wash arm open", "open_end", "complete", sure=0.98)


@look("pump.turn_by_hand")
def turn_by_hand(bench: Bench) -> Answer:
    """The shaft through two turns, isolated."""
    felt = {
        "crunch": bench.sign("lime in the pump"),
        "catches": bench.sign("object in the wheel"),
        "tight": bench.sign("pump tight all round"),
        "scrapes": bench.sign("wheel rubs"),
        "no_wheel": bench.sign("wheel loose on its shaft"),
        "rough": bench.sign("pump bearing growls"),
    }
    return bench.worst(felt, "free", sure=0.95)


@look("pump.suction_look")
def suction_look(bench: Bench) -> Answer:
    """Screen and suction pipe, drained."""
    found = {
        "blocked": bench.sign("suction felted"),
        "object_seen": 0.7 * bench.sign("object in the wheel"),
        "wheel_stands": bench.sign("wheel loose on its shaft"),
    }
    return bench.worst(found, "clear", sure=0.95)


@look("pump.pump_opened")
def pump_opened(bench: Bench) -> Answer:
    """Seal, wheel and casing with the pump open."""
    found = {
        "object": bench.sign("object in the wheel"),
        "seal_burnt": bench.sign("pump seal burnt"),
        "ring": bench.sign("wheel rubs"),
        "limed": bench.sign("lime in the pump"),
        "wrong_wheel": bench.sign("wheel too large"),
        "key_gone": bench.sign("wheel loose on its shaft"),
        "worn": bench.sign("wheel worn"),
        "nicked": bench.sign("wheel unbalanced"),
    }
    return bench.worst(found, "sound", sure=0.97)
