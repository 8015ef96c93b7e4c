"""How fast everything that flows changes: water and heat of booster and tanks, motors warming, sensors following."""

from __future__ import annotations

from collections.abc import Callable, Mapping

from diagnose.physics.moist_air import humidity_ratio, moist_enthalpy
from diagnose.physics.protection import trip_time_constant
from diagnose.simulator.dosing import detergent_fed
from diagnose.simulator.moment import Moment
from diagnose.simulator.parts import Thermostat
from diagnose.simulator.plant import Plant
from diagnose.simulator.state import CP, DENSITY, LATENT, ZERO, Ledger

__all__ = ["DETERGENT", "RACK_HEAT", "SOIL", "Racks", "changes"]

Rates = dict[str, float]
Booked = Callable[[str, str, float], None]

RACK_HEAT = 3.5e3  # J/K of a rack as it comes at a rush, half full: 2 kg of ware in 1 kg of rack; judgement
_CARRIED = 0.15  # kg of water a rack carries out: judgement
_ZONE = 0.6  # share of the difference to a tank's water that a rack takes up in it: judgement
_TANK_AIR = 0.01  # share of the exhaust that meets each tank's water, and once more, to leave saturated: judgement
_SPRAYED = 0.12  # of its difference to the room that the final rinse loses on its way into the tank: judgement
_OVERFLOW = 10.0  # s in which an overflow takes what stands above it: judgement
_WINDING = 900.0  # s, a small motor's warming: judgement
_MANIFOLD = 8.0  # s in which the manifold follows the water, and
_MANIFOLD_REST = 300.0  # s in which it cools without flow: judgement
_BOILS = 372.5
DETERGENT = 0.002  # kg per kg of wash water, common practice 1 to 3 g/L
SOIL = 0.005  # kg a rack: judgement
_THROWS = 0.3  # share of a pump's work over which it sprays: judgement
_HELD_BACK = 0.7  # of the soil, by a pre-wash that works: judgement


class Racks:
    """Racks a second that move through, and how warm they come."""

    def __init__(self, rate: float, temperature: float) -> None:
        self.rate, self.temperature = rate, temperature


def changes(
    plant: Plant, at: Mapping[str, float], now: Moment, racks: Racks, ledger: Ledger | None, share: float
) -> dict[str, float]:
    """Rates of change of `State.flowing`, a second; what crosses the border is booked for `share` seconds."""
    out = dict.fromkeys(at, 0.0)
    book = ledger.add if ledger is not None else _unbooked
    falling, heat_left = _booster(plant, at, now, out, book, share)
    rack = racks.temperature
    inflow: dict[str, tuple[float, float]] = {}
    for name in plant.tanks:
        warmth = RACK_HEAT * plant.conveyor.ware * _ZONE * (_temperature(at, name) - rack) * racks.rate
        rack += _ZONE * (_temperature(at, name) - rack)
        out[f"heat {name}"] -= warmth
        book("heat", "racks", -warmth * share)
    rinse = now.standing.rinse.flow * DENSITY
    if rinse > 0.0 and racks.rate > 0.0:  # the final rinse warms the racks with what it brings
        warmth = min(RACK_HEAT * plant.conveyor.ware * _ZONE * (falling - rack) * racks.rate, 0.9 * heat_left)
        heat_left -= warmth
        book("heat", "racks", -warmth * share)
    cooled = min(_SPRAYED * rinse * CP * max(0.0, falling - plant.air.room), heat_left)
    book("heat", "air", -cooled * share)
    past = plant.rinse.past
    book("water", "out", -rinse * past * share)
    book("heat", "water out", -(heat_left - cooled) * past * share)
    inflow[list(plant.tanks)[-1]] = (rinse * (1.0 - past), (heat_left - cooled) * (1.0 - past))
    for name in reversed(list(plant.tanks)):
        _tank(plant, at, now, out, name, inflow, racks, book, share)
    _follow(plant, at, now, out)
    _motors(plant, at, now, out)
    return out


def _unbooked(of: str, name: str, amount: float) -> None:
    """Take no account."""


def _temperature(at: Mapping[str, float], tank: str) -> float:
    return ZERO + at[f"heat {tank}"] / (max(at[f"mass {tank}"], 0.01) * CP)


def _booster(
    plant: Plant, at: Mapping[str, float], now: Moment, out: Rates, book: Booked, share: float
) -> tuple[float, float]:
    """Water warmed on its way: temperature at the jets, and the heat (from 0 °C, a second) it brings there."""
    supply = plant.water.temperature - plant.water.droop * min(1.0, now.standing.rinse.flow / plant.rinse.rated_flow)
    rinsed, robbed = now.standing.rinse.flow * DENSITY, now.standing.rinse.robbed * DENSITY
    flow = rinsed + robbed
    book("water", "rinse", flow * share)
    book("heat", "water in", flow * CP * (supply - ZERO) * share)
    if plant.booster.heater.kind == "none":
        leaving = supply
        out["booster"] = (supply - at["booster"]) / 20.0 if flow > 0.0 else 0.0
    else:
        heat = now.heat["booster"]
        lost = plant.booster.loss * (at["booster"] - plant.air.room)
        leaving = min(at["booster"], 420.0)
        boiled = 0.0
        if at["booster"] > 418.0:  # what a relief valve lets go; the shell does not get hotter
            boiled = max(0.0, heat - lost - flow * CP * (leaving - supply))
        mass = plant.booster.volume * DENSITY
        out["booster"] = (heat - lost - boiled - flow * CP * (leaving - supply)) / (mass * CP)
        book("heat", "heaters", heat * share)
        book("heat", "walls", -(lost + boiled) * share)
    out["mass wash"] += robbed
    out["heat wash"] += robbed * CP * (leaving - ZERO)
    if rinsed <= 0.0:
        return leaving, 0.0
    pipe = min(plant.rinse.pipe_loss * (leaving - plant.air.room), 0.5 * rinsed * CP * (leaving - plant.air.room))
    book("heat", "walls", -pipe * share)
    return leaving - pipe / (rinsed * CP), rinsed * CP * (leaving - ZERO) - pipe


def _tank(
    plant: Plant,
    at: Mapping[str, float],
    now: Moment,
    out: Rates,
    name: str,
    inflow: dict[str, tuple[float, float]],
    racks: Racks,
    book: Booked,
    share: float,
) -> None:
    tank = plant.tanks[name]
    temperature = _temperature(at, name)
    full = tank.volume * DENSITY
    mass = at[f"mass {name}"]
    came, brought = inflow.get(name, (0.0, 0.0))
    fill = now.standing.fills[name] * DENSITY
    out[f"mass {name}"] += came + fill
    out[f"heat {name}"] += brought + fill * CP * (plant.water.temperature - ZERO)
    book("water", "fill", fill * share)
    book("heat", "water in", fill * CP * (plant.water.temperature - ZERO) * share)
    heat = now.heat.get(name, 0.0)
    pump = (
        plant.motors[name].power * 0.7 * now.standing.pumps[name].load if now.standing.pumps[name].share > 0.0 else 0.0
    )
    walls = tank.loss * (temperature - plant.air.room)
    out[f"heat {name}"] += heat + pump - walls
    book("heat", "heaters", heat * share)
    book("heat", "pumps", pump * share)
    book("heat", "walls", -walls * share)
    _to_air(plant, now, out, name, temperature, mass, heat, book, share)
    condensed = now.let_in.get(name, 0.0)  # injected steam stays as water
    if condensed:
        out[f"mass {name}"] += condensed
        out[f"heat {name}"] += condensed * CP * (temperature - ZERO)
        book("water", "steam", condensed * share)
        book("heat", "water in", condensed * CP * (temperature - ZERO) * share)
    wet = DENSITY * min(1.0, mass / full) if mass > 0.2 else 0.0
    works = now.standing.pumps[name].share > _THROWS
    jets = plant.pumps[name].joint_leak if works else 0.0
    leaks = (tank.drain_leak + tank.shell_leak + plant.pumps[name].seal_leak + jets) * wet
    over = max(0.0, mass - full * tank.lip) / _OVERFLOW
    passed = over * tank.overflow_open + (tank.thrown * wet if works else 0.0)
    spilt = max(0.0, mass - 1.15 * full) / _OVERFLOW
    a_rack = _CARRIED + plant.conveyor.carries if name == list(plant.tanks)[-1] else 0.0
    carried = min(a_rack * racks.rate, 0.5 * mass)
    leaving = passed + leaks + spilt + carried
    per_kg = CP * (temperature - ZERO)
    out[f"mass {name}"] -= leaving
    out[f"heat {name}"] -= leaving * per_kg
    names = list(plant.tanks)
    nth = names.index(name)
    if nth > 0 and passed > 0.0:  # a tank runs over into the one before it, against the way of the ware
        inflow[names[nth - 1]] = (passed, passed * per_kg)
        gone = leaving - passed
    else:
        gone = leaving
    book("water", "out", -gone * share)
    book("heat", "water out", -gone * per_kg * share)
    for of in ("detergent", "soil"):
        strength = at[f"{of} {name}"] / max(mass, 0.01)
        out[f"{of} {name}"] -= strength * leaving
        if nth > 0:
            out[f"{of} {names[nth - 1]}"] += strength * passed
    if name == "wash":
        fed = detergent_fed(plant, at["detergent wash"] / max(mass, 0.01), mass, DETERGENT)
        out["detergent wash"] += fed
        book("fed", "detergent", fed * share)
    held = _HELD_BACK if now.standing.pumps.get("prewash") and now.standing.pumps["prewash"].share > 0.3 else 0.0
    brought_in = SOIL * plant.chemistry.soil * racks.rate
    if name == "wash":
        out["soil wash"] += brought_in * (1.0 - held)
    elif name == "prewash":
        out["soil prewash"] += brought_in * held


def _to_air(
    plant: Plant,
    now: Moment,
    out: Rates,
    name: str,
    temperature: float,
    mass: float,
    heat: float,
    book: Booked,
    share: float,
) -> None:
    """The exhaust takes warmth and vapour from the water; boiling takes the rest."""
    air = now.air.total * 1.1 * _TANK_AIR * (1 + len(plant.tanks)) / len(plant.tanks)
    warm = min(max(temperature, plant.air.room), 363.0)
    if mass < 2.0:
        return
    there = humidity_ratio(warm, 1.0)
    here = humidity_ratio(plant.air.room, plant.air.humidity)
    gone = air * (moist_enthalpy(warm, there) - moist_enthalpy(plant.air.room, here))
    vapour = air * (there - here)
    if temperature > _BOILS:
        boiled = max(0.0, heat - gone) / (LATENT + CP * (temperature - ZERO))
        vapour += boiled
        gone += boiled * (LATENT + CP * (temperature - ZERO))
    out[f"heat {name}"] -= gone
    out[f"mass {name}"] -= vapour
    book("heat", "air", -gone * share)
    book("water", "air", -vapour * share)


def _follow(plant: Plant, at: Mapping[str, float], now: Moment, out: dict[str, float]) -> None:
    """Sensors and thermometers lag behind."""
    flow = now.standing.rinse.flow * DENSITY
    aim, lag = plant.air.room, _MANIFOLD_REST
    if flow > 0.0:
        loss = plant.rinse.pipe_loss * (at["booster"] - plant.air.room)
        aim, lag = at["booster"] - min(loss / (flow * CP), 0.5 * (at["booster"] - plant.air.room)), _MANIFOLD
    out["manifold"] = (aim - at["manifold"]) / lag
    out["thermometer"] = (at["manifold"] - at["thermometer"]) / max(plant.rinse.thermometer_lag, 2.0)
    controls: dict[str, Thermostat] = {name: tank.thermostat for name, tank in plant.tanks.items()}
    for name, control in controls.items():
        out[f"sensor {name}"] = (_temperature(at, name) - at[f"sensor {name}"]) / max(control.lag, 4.0)
    out["sensor booster"] = (at["booster"] - at["sensor booster"]) / max(plant.booster.thermostat.lag, 4.0)


def _motors(plant: Plant, at: Mapping[str, float], now: Moment, out: dict[str, float]) -> None:
    """Windings warm with the square of current, an overload's bimetal with the line that carries most."""
    for name, motor in plant.motors.items():
        flow = now.standing.motors[name]
        out[f"winding {name}"] = (flow.heating - at[f"winding {name}"]) / _WINDING
        worst = max(flow.amps) / (motor.amps * motor.dial * motor.early)
        # Heat about it and a bad joint warm the bimetal as if more flowed, a tenth for each 25 K over 30 °C: judgement
        aided = worst**2 * (1.0 + motor.joint_heat) + (max(0.0, motor.around - 303.15) / 250.0 if worst > 0.05 else 0.0)
        out[f"bimetal {name}"] = (aided - at[f"bimetal {name}"]) / trip_time_constant(motor.trip_class)
