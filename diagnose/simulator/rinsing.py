"""What gauge, arms and relief valve of the final rinse do at rest and while it flows."""

from __future__ import annotations

from diagnose.simulator.bench import Bench
from diagnose.simulator.waterway import held_pressure, rinse_flow

__all__ = [
    "blade_pulled",
    "commanded",
    "flashes",
    "gauge_at_rest",
    "gauge_flowing",
    "plate_trace",
    "relief_state",
    "rest_flow",
    "rest_pressure",
    "run_over",
]

# A plate between wash and rinse cools by some kelvin; a thin film follows it: judgement.
_FELL = 3.0  # K
_FILM = 2.0  # K that the film lies under the manifold
_PLATE_LAG = 2.5  # s at rated flow


def gauge_flowing(bench: Bench) -> float:
    """What the panel's gauge shows while it rinses, [Pa]."""
    true = bench.rinsing.standing.rinse.jets
    line = bench.plant.rinse
    if line.gauge_stuck is not None:
        return line.gauge_stuck
    if bench.sign("gauge ahead of the valve") > 0.0:
        true = gauge_at_rest(bench)  # tapped where it does not flow, and read at rest
    if bench.sign("gauge read between racks") > 0.0:
        true = 0.0
    return max(0.0, true * line.gauge_factor + line.gauge_offset)


def rest_pressure(bench: Bench) -> float:
    """Pressure behind the regulator with the rinse shut for minutes, [Pa]: its set pressure, or what creeps past it."""
    line, water = bench.plant.rinse, bench.plant.water
    if line.regulator_wide:
        return water.static
    return min(water.static, max(regulator_set(bench), line.creeps * water.static))


def regulator_set(bench: Bench) -> float:
    """What the regulator holds at rest, [Pa]."""
    return held_pressure(bench.plant.water, bench.plant.rinse)


def gauge_at_rest(bench: Bench) -> float:
    """What a gauge behind the regulator shows between racks: a gauge behind the valve shows nothing, [Pa]."""
    return rest_pressure(bench)


def rest_flow(bench: Bench) -> float:
    """Flow from the rinse arms while no rack is there, [m3/s]."""
    line = bench.plant.rinse
    held = line.actuator == "held" or line.tops_up
    opened = 1.0 if held and line.valve_opens > 0.0 else line.valve_leak
    return rinse_flow(bench.plant.water, line, opened).flow


def run_over(bench: Bench) -> float:
    """How long the spray goes on after the rack has left, [s]."""
    return bench.plant.rinse.run_over


def commanded(bench: Bench, rack: bool) -> bool:
    """Whether the rinse valve has its command, with or without a rack in the rinse."""
    line = bench.plant.rinse
    held = line.actuator == "held" or line.tops_up
    return line.commanded and (held or (rack and line.actuator == "works"))


def blade_pulled(bench: Bench) -> bool:
    """Whether the valve's coil pulls while a rack holds the rinse on."""
    return commanded(bench, rack=True) and bench.plant.rinse.coil_sound


def flashes(bench: Bench) -> bool:
    """Whether the booster boils in ten minutes without a rack, so that the first rack after them has steam."""
    booster = bench.plant.booster
    goes_on = booster.thermostat.stuck is True or booster.heater.welded or booster.heater.steam.valve_leaks > 0.0
    return booster.heater.kind != "none" and goes_on and bench.rested.flowing["booster"] > 378.0


def relief_state(bench: Bench) -> str:
    """What the relief pipe does: dry, always, pauses, rinse end, night, steam.

    The valve opens at its stamp times what its spring is worth; heated water that is shut in climbs to it.
    """
    plant = bench.plant
    if bench.sign("relief seat dirty") > 0.0 or bench.sign("joint above relief drips") > 0.0:
        return "always"
    opens = plant.plate.get("relief_pressure", 862e3) * plant.rinse.relief_share
    if bench.service.state.flowing["booster"] > 378.0 and plant.booster.heater.power > 0.0:
        return "steam"
    if flashes(bench):
        return "steam"
    standing = plant.water.static
    if standing >= 0.97 * opens:
        return "night"
    if plant.rinse.shut_in:
        return "pauses"
    if bench.sign("rinse valve hammers") > 0.3 and standing > 0.5 * opens:
        return "rinse end"
    return "dry"


def plate_trace(bench: Bench) -> list[float]:
    """The twelve hottest seconds of a plate in the final rinse, [K], a second apart.

    The plate comes out of the last tank and follows the film of rinse water on it with a time constant that thins with
    the flow; film is a little colder than the manifold. Jets that miss it leave it to the tank's warmth.
    """
    plant = bench.plant
    last = list(plant.tanks)[-1]
    share = bench.rinsing.standing.rinse.flow / plant.rinse.rated_flow
    share *= 1.0 - 0.8 * max(bench.sign("rinse jets askew"), 0.7 * bench.sign("rinse arm dead beyond a plug"))
    plate = bench.temperature(last) - _FELL
    film = bench.manifold - _FILM
    speed = max(plant.conveyor.speed * plant.conveyor.pace, 1e-3)
    seconds = plant.plate["rinse_zone"] / speed
    lag = _PLATE_LAG / max(min(share, 1.2), 0.02)
    trace = []
    for nth in range(40):
        plate += (film - plate) / lag if nth < seconds else -_FELL / 6.0
        trace.append(plate)
    peak = max(range(len(trace)), key=trace.__getitem__)
    start = max(0, min(peak - 8, len(trace) - 12))
    return trace[start : start + 12]
