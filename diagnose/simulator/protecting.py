"""What opens the feed: the breaker by current and heat, the earth-leakage device by what leaks to earth."""

from __future__ import annotations

import math

from diagnose.simulator.bench import Bench
from diagnose.simulator.control import starts
from diagnose.simulator.parts import Power
from diagnose.simulator.plant import Plant

__all__ = [
    "OPENS",
    "bears",
    "dark",
    "feed_amps",
    "leak_paths",
    "leakage",
    "light_amps",
    "megohms",
    "opens",
    "runs",
    "stays_open",
]

OPENS = 0.75  # share of its rating at which a sound device opens; between half and all of it by common practice
_AT_WORK = 20.0  # how much more leaks hot, wet and at line volts than in the insulation test: judgement
_NATURAL = 0.0025  # A that leaks over the insulation of wires, windings and heaters of a sound machine: judgement
_SEEN = 0.3  # A: a path to earth drives no more through the clamp for as long as a device takes to open
_BREAKER_OPENS = 5.0  # times its rating at which a breaker opens at once: common practice
_ILL = 1e6  # ohm under which one branch alone explains a leak: common practice for wet places
_WARM = 313.15  # K for which a breaker is rated: 40 degC, from memory, common practice
_PER_KELVIN = 0.012  # of its trip heat that a warmer panel gives, for each K over that: judgement


def leak_paths(plant: Plant) -> dict[str, float]:
    """Ohms to earth by branch: booster, tank_heater, pump, conveyor, valve, box, wiring."""
    heaters = [t.heater.earth_ohms for t in plant.tanks.values() if t.heater.kind == "electric"]
    pumps = [plant.motors[name].earth_ohms for name in plant.pumps]
    paths = {
        "pump": min(pumps),
        "conveyor": plant.motors["drive"].earth_ohms,
        "valve": plant.power.coil_leak_ohms,
        "box": plant.power.leak_ohms,
        "wiring": plant.power.wire_ohms,
    }
    if plant.booster.heater.kind == "electric":
        paths["booster"] = plant.booster.heater.earth_ohms
    if heaters:
        paths["tank_heater"] = min(heaters)
    return paths


def megohms(plant: Plant) -> float:
    """All the machine's lines to earth, [ohm]."""
    return 1.0 / sum(1.0 / max(ohms, 1.0) for ohms in leak_paths(plant).values())


def leakage(plant: Plant, dampest: bool = True) -> float:
    """What a clamp round all lines shows with everything on, [A]: line to earth volts over what leaks.

    `dampest`: as at the time when most leaks. What flows back by the earth instead of the neutral counts as well.
    """
    earth = _to_earth(plant.power)
    back = 0.25 if plant.power.neutral_ohms < 10.0 else 0.0  # return current that takes the earth: judgement
    damp = plant.power.damp if dampest else 1.0
    return min(_SEEN, _AT_WORK * damp * earth / megohms(plant) + _NATURAL * earth / 120.0 + back)


def _to_earth(power: Power) -> float:
    return power.volts / (math.sqrt(3) if power.phases == 3 else 2.0)


def bears(power: Power) -> float:
    """Current the breaker bears for hours, over its rating: its bimetal adds every heat to that of the current.

    The current's heat goes with its square, so what is left of the trip heat leaves its root of the current.
    """
    given = power.screw_heat + _PER_KELVIN * max(0.0, power.panel_air - _WARM)
    return power.breaker_share * math.sqrt(max(0.0, 1.0 - given))


def feed_amps(bench: Bench) -> float:
    """The greatest line current at the breaker with all heaters and motors on, [A]."""
    now, plant = bench.heating.standing, bench.plant
    apart = plant.plate.traits["booster_place"] == "remote" and "booster" in now.banks  # a feed of its own
    own = [amps - (now.banks["booster"].amps[n] if apart else 0.0) for n, amps in enumerate(now.amps)]
    return max(own) + plant.power.others


def light_amps(bench: Bench) -> float:
    """The same with all heaters switched off, [A]."""
    motors = bench.restarted.standing.motors
    return max(sum(m.amps[n] for m in motors.values()) for n in range(3)) + bench.plant.power.others


def opens(bench: Bench) -> tuple[str, str]:
    """What stands open when all went dark (`breaker`, `leakage_device`, "" for nothing), and at which moment.

    The moments: at_reset, heat_on, motor_on, rinse_on, after_wet, under_load, once.
    """
    plant, power = bench.plant, bench.plant.power
    rating = plant.plate["breaker_amps"]
    if power.touching:
        return "breaker", "at_reset"
    if power.wire_ohms < 1e4:
        bolted = _to_earth(power) / (power.wire_ohms + 2 * power.source_ohms) > _BREAKER_OPENS * rating
        return "breaker" if bolted else "leakage_device", "at_reset" if power.wire_ohms < 1e3 else "motor_on"
    if leakage(plant) > OPENS * power.device * power.device_share:
        return "leakage_device", _leaks_when(plant)
    if power.peak_share < 1.0:
        return "breaker", "motor_on"
    if feed_amps(bench) > bears(power) * rating and bench.service.state.running:
        return "breaker", "under_load"
    if bench.sign("opened once in a storm") > 0.0:
        return "leakage_device", "once"
    return "", ""


def _leaks_when(plant: Plant) -> str:
    """The moment at which what leaks most is switched on or wet."""
    power, paths = plant.power, leak_paths(plant)
    if power.damp > 1.5:
        return "after_wet"
    worst = min(paths, key=lambda name: paths[name])
    if paths[worst] > _ILL:  # nothing leaks by itself: the first heating tips a weak or fine device, or a lost neutral
        return "heat_on"
    return {"booster": "heat_on", "tank_heater": "heat_on", "valve": "rinse_on"}.get(worst, "motor_on")


def dark(bench: Bench) -> bool:
    """Whether the machine is found without power: switched off, or its breaker or device has opened and stays so."""
    links = bench.plant.control.links
    return not (links["feed"] and links["breaker"]) or stays_open(bench)


def stays_open(bench: Bench) -> bool:
    """Whether what opened is found open: a peak or a surge is over in a blink, the crew resets and it holds."""
    what, moment = opens(bench)
    return bool(what) and moment != "once" and not (moment == "motor_on" and bench.plant.power.peak_share < 1.0)


def runs(bench: Bench) -> bool:
    """Whether it is found running when called."""
    return starts(bench.plant) and not dark(bench)
