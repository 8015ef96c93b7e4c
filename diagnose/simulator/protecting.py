"""What opens the feed: the breaker by current, the earth-leakage device by what leaks to earth."""

from __future__ import annotations

import math

from diagnose.simulator.bench import Bench
from diagnose.simulator.plant import Plant

__all__ = ["feed_amps", "leak_paths", "leakage", "megohms", "opens"]

_OPENS = 0.6  # share of its rating at which a sound device may open; half to all of it by common practice
_START = 6.0  # times full load that motors take as they start


def leak_paths(plant: Plant) -> dict[str, float]:
    """Ohms to earth by branch: booster, tank_heater, pump, conveyor, valve, box."""
    heaters = [t.heater.earth_ohms for t in plant.tanks.values() if t.heater.kind == "electric"]
    pumps = [plant.motors[name].earth_ohms for name in plant.pumps]
    paths = {
        "pump": min(pumps),
        "conveyor": plant.motors["drive"].earth_ohms,
        "valve": plant.power.coil_leak_ohms,
        "box": plant.power.leak_ohms,
    }
    if plant.booster.heater.kind == "electric":
        paths["booster"] = plant.booster.heater.earth_ohms
    if heaters:
        paths["tank_heater"] = min(heaters)
    return paths


def megohms(plant: Plant) -> float:
    """All the machine's lines to earth, [ohm]."""
    return 1.0 / sum(1.0 / max(ohms, 1.0) for ohms in leak_paths(plant).values())


def leakage(plant: Plant) -> float:
    """What a clamp round all lines shows with everything on, [A]: line to earth volts over what leaks.

    A wire or element at earth at one place drives no more than the device lets through before it opens: 0.3 A.
    """
    earth = plant.power.volts / (math.sqrt(3) if plant.power.phases == 3 else 2.0)
    back = 0.02 if plant.power.neutral_ohms < 1e3 else 0.0  # return current that takes the earth instead: judgement
    return min(0.3, earth / megohms(plant) + back)


def feed_amps(bench: Bench) -> float:
    """The greatest line current at the breaker with all heaters and motors on, [A]."""
    now, plant = bench.heating.standing, bench.plant
    apart = plant.plate.traits["booster_place"] == "remote" and "booster" in now.banks  # a feed of its own
    own = [amps - (now.banks["booster"].amps[n] if apart else 0.0) for n, amps in enumerate(now.amps)]
    return max(own) + plant.power.others


def opens(bench: Bench) -> tuple[str, str]:
    """What stands open when all went dark (`breaker`, `leakage_device`, "" for nothing), and at which moment.

    The moments: at_reset, heat_on, motor_on, rinse_on, after_wet, under_load, once.
    """
    plant, power = bench.plant, bench.plant.power
    if power.touching:
        return "breaker", "at_reset"
    leak = leakage(plant)
    if leak > _OPENS * power.device * power.device_share:
        paths = leak_paths(plant)
        worst = min(paths, key=lambda name: paths[name])
        if bench.sign("wire chafed") > 0.0 or (paths[worst] > 5e6 and power.neutral_ohms < 1e3):
            moment = "motor_on" if bench.sign("wire chafed") > 0.0 else "under_load"
        elif bench.sign("water in box") > 0.0 or bench.sign("all damp in the morning") > 0.0:
            moment = "after_wet"
        else:
            by = {"booster": "heat_on", "tank_heater": "heat_on", "pump": "motor_on", "conveyor": "motor_on"}
            moment = by.get(worst, "rinse_on") if paths[worst] < 5e5 else "once"
        return "leakage_device", moment
    if power.peak_share < 1.0:
        return "breaker", "motor_on"
    if feed_amps(bench) > power.breaker_share * plant.plate["breaker_amps"] and bench.service.state.running:
        return "breaker", "under_load"
    if bench.sign("opened once in a storm") > 0.0:
        return "leakage_device", "once"
    return "", ""
