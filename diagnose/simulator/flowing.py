"""How fast everything that flows changes: water and heat of booster and tanks, motors warming, sensors following.

What follows from parts and switches alone is worked out once (`Flows`): a run comes back to the same few hundreds of
times, and takes its steps by what then still depends on the temperatures.
"""

from __future__ import annotations

from collections.abc import Mapping
from functools import lru_cache

from diagnose.physics.moist_air import humidity_ratio, moist_enthalpy
from diagnose.physics.protection import trip_time_constant
from diagnose.simulator.dosing import detergent_fed
from diagnose.simulator.moment import Moment, Standing
from diagnose.simulator.plant import Plant
from diagnose.simulator.state import CP, DENSITY, LATENT, ZERO, Ledger

__all__ = ["DETERGENT", "RACK_HEAT", "SOIL", "Flows"]

Rates = dict[str, float]

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


@lru_cache(maxsize=64)
def _room(temperature: float, humidity: float) -> tuple[float, float]:
    """Water in the room's air, [kg/kg], and its heat, [J/kg]."""
    ratio = humidity_ratio(temperature, humidity)
    return ratio, moist_enthalpy(temperature, ratio)


@lru_cache(maxsize=64)
def _bimetal(trip_class: float) -> float:
    return trip_time_constant(trip_class)


class _Basin:
    """A tank with its pump while nothing is switched: names of what flows in it, and what does not hang on that."""

    def __init__(self, plant: Plant, standing: Standing, name: str, racks: float) -> None:
        tank, pump, names = plant.tanks[name], standing.pumps[name], list(plant.tanks)
        self.name, self.lag = name, max(tank.thermostat.lag, 4.0)
        self.mass, self.heat, self.sensor = f"mass {name}", f"heat {name}", f"sensor {name}"
        self.detergent, self.soil = f"detergent {name}", f"soil {name}"
        nth = names.index(name)
        self.before = names[nth - 1] if nth > 0 else ""
        self.loss, self.full = tank.loss, tank.volume * DENSITY
        self.fill = standing.fills[name] * DENSITY
        self.filled = self.fill * CP * (plant.water.temperature - ZERO)
        self.pumped = plant.motors[name].power * 0.7 * pump.load if pump.share > 0.0 else 0.0
        works = pump.share > _THROWS
        self.thrown = tank.thrown if works else 0.0
        jets = plant.pumps[name].joint_leak if works else 0.0
        self.leaks = tank.drain_leak + tank.shell_leak + plant.pumps[name].seal_leak + jets
        self.lip, self.overflow_open = self.full * tank.lip, tank.overflow_open
        a_rack = _CARRIED + plant.conveyor.carries if name == names[-1] else 0.0
        self.carried = a_rack * racks
        prewash = standing.pumps.get("prewash")
        held = _HELD_BACK if prewash and prewash.share > 0.3 else 0.0
        self.soiled = SOIL * plant.chemistry.soil * racks * {"wash": 1.0 - held, "prewash": held}.get(name, 0.0)


class Flows:
    """Rates of change on a plant whose switches stand so, `racks` a second coming as warm as the room."""

    def __init__(self, plant: Plant, standing: Standing, racks: float) -> None:
        self.plant, self.racks = plant, racks if standing.speed > 0.0 else 0.0
        self.basins = [_Basin(plant, standing, name, self.racks) for name in plant.tanks]
        self.warms = RACK_HEAT * plant.conveyor.ware * _ZONE
        rinse = standing.rinse
        self.supply = plant.water.temperature - plant.water.droop * min(1.0, rinse.flow / plant.rinse.rated_flow)
        self.rinsed, self.robbed = rinse.flow * DENSITY, rinse.robbed * DENSITY
        self.drawn = self.rinsed + self.robbed
        self.cold = self.drawn * CP * (self.supply - ZERO)
        self.here, self.room_heat = _room(plant.air.room, plant.air.humidity)
        self.motors = []
        for name, motor in plant.motors.items():
            flow = standing.motors[name]
            worst = max(flow.amps) / (motor.amps * motor.dial * motor.early)
            # Heat about it and a bad joint warm the bimetal as if more flowed, a tenth for each 25 K over 30 °C:
            # judgement
            around = max(0.0, motor.around - 303.15) / 250.0 if worst > 0.05 else 0.0
            aided = worst**2 * (1.0 + motor.joint_heat) + around
            lag = _bimetal(motor.trip_class)
            self.motors.append((f"winding {name}", flow.heating, f"bimetal {name}", aided, lag))

    def rates(self, at: Mapping[str, float], now: Moment, ledger: Ledger, share: float) -> Rates:
        """Changes of `State.flowing`, a second; what crosses the border is booked for `share` seconds."""
        out = dict.fromkeys(at, 0.0)
        warm = {b.name: ZERO + at[b.heat] / (max(at[b.mass], 0.01) * CP) for b in self.basins}
        falling, heat_left = self._booster(at, now, out, ledger, share)
        rack = self.plant.air.room
        for basin in self.basins:
            warmth = self.warms * (warm[basin.name] - rack) * self.racks
            rack += _ZONE * (warm[basin.name] - rack)
            out[basin.heat] -= warmth
            ledger.heat["racks"] -= warmth * share
        inflow = {self.basins[-1].name: self._falls(falling, heat_left, rack, ledger, share)}
        air = now.air.total * 1.1 * _TANK_AIR * (1 + len(self.basins)) / len(self.basins)
        for basin in reversed(self.basins):
            self._tank(basin, at, now, out, warm[basin.name], air, inflow, ledger, share)
        self._follow(at, warm, out)
        for winding, heating, bimetal, aided, lag in self.motors:
            # Windings warm with the square of current, an overload's bimetal with the line that carries most.
            out[winding] = (heating - at[winding]) / _WINDING
            out[bimetal] = (aided - at[bimetal]) / lag
        return out

    def _booster(
        self, at: Mapping[str, float], now: Moment, out: Rates, ledger: Ledger, share: float
    ) -> tuple[float, float]:
        """Water warmed on its way: temperature at the jets, and the heat (from 0 °C, a second) it brings there."""
        plant, supply, flow, room = self.plant, self.supply, self.drawn, self.plant.air.room
        ledger.water["rinse"] += flow * share
        ledger.heat["water in"] += self.cold * share
        if plant.booster.heater.kind == "none":
            leaving = supply
            out["booster"] = (supply - at["booster"]) / 20.0 if flow > 0.0 else 0.0
        else:
            heat, now_at = now.heat["booster"], at["booster"]
            lost = plant.booster.loss * (now_at - room)
            leaving = min(now_at, 420.0)
            boiled = 0.0
            if now_at > 418.0:  # what a relief valve lets go; the shell does not get hotter
                boiled = max(0.0, heat - lost - flow * CP * (leaving - supply))
            mass = plant.booster.volume * DENSITY
            out["booster"] = (heat - lost - boiled - flow * CP * (leaving - supply)) / (mass * CP)
            ledger.heat["heaters"] += heat * share
            ledger.heat["walls"] -= (lost + boiled) * share
        out["mass wash"] += self.robbed
        out["heat wash"] += self.robbed * CP * (leaving - ZERO)
        rinsed = self.rinsed
        if rinsed <= 0.0:
            return leaving, 0.0
        pipe = min(plant.rinse.pipe_loss * (leaving - room), 0.5 * rinsed * CP * (leaving - room))
        ledger.heat["walls"] -= pipe * share
        return leaving - pipe / (rinsed * CP), rinsed * CP * (leaving - ZERO) - pipe

    def _falls(
        self, falling: float, heat_left: float, rack: float, ledger: Ledger, share: float
    ) -> tuple[float, float]:
        """Water and heat of the final rinse that fall into the last tank, a second."""
        if self.rinsed > 0.0 and self.racks > 0.0:  # the final rinse warms the racks with what it brings
            warmth = min(self.warms * (falling - rack) * self.racks, 0.9 * heat_left)
            heat_left -= warmth
            ledger.heat["racks"] -= warmth * share
        cooled = min(_SPRAYED * self.rinsed * CP * max(0.0, falling - self.plant.air.room), heat_left)
        past = self.plant.rinse.past
        ledger.heat["air"] -= cooled * share
        ledger.water["out"] -= self.rinsed * past * share
        ledger.heat["water out"] -= (heat_left - cooled) * past * share
        return self.rinsed * (1.0 - past), (heat_left - cooled) * (1.0 - past)

    def _tank(
        self,
        basin: _Basin,
        at: Mapping[str, float],
        now: Moment,
        out: Rates,
        temperature: float,
        air: float,
        inflow: dict[str, tuple[float, float]],
        ledger: Ledger,
        share: float,
    ) -> None:
        name, mass, fill, booked = basin.name, at[basin.mass], basin.fill, ledger.heat
        came, brought = inflow.get(name, (0.0, 0.0))
        ledger.water["fill"] += fill * share
        booked["water in"] += basin.filled * share
        heat = now.heat.get(name, 0.0)
        walls = basin.loss * (temperature - self.plant.air.room)
        more = out[basin.mass] + (came + fill)
        hotter = out[basin.heat] + (brought + basin.filled) + (heat + basin.pumped - walls)
        booked["heaters"] += heat * share
        booked["pumps"] += basin.pumped * share
        booked["walls"] -= walls * share
        vapour, gone = self._to_air(temperature, mass, heat, air)
        more -= vapour
        hotter -= gone
        booked["air"] -= gone * share
        ledger.water["air"] -= vapour * share
        per_kg = CP * (temperature - ZERO)
        condensed = now.let_in.get(name, 0.0)  # injected steam stays as water
        if condensed:
            more += condensed
            hotter += condensed * CP * (temperature - ZERO)
            ledger.water["steam"] += condensed * share
            booked["water in"] += condensed * CP * (temperature - ZERO) * share
        full = basin.full
        wet = DENSITY * min(1.0, mass / full) if mass > 0.2 else 0.0
        passed = max(0.0, mass - basin.lip) / _OVERFLOW * basin.overflow_open + basin.thrown * wet
        spilt = max(0.0, mass - 1.15 * full) / _OVERFLOW
        leaving = passed + basin.leaks * wet + spilt + min(basin.carried, 0.5 * mass)
        out[basin.mass] = more - leaving
        out[basin.heat] = hotter - leaving * per_kg
        drained = leaving
        if basin.before and passed > 0.0:  # a tank runs over into the one before it, against the way of the ware
            inflow[basin.before] = (passed, passed * per_kg)
            drained = leaving - passed
        ledger.water["out"] -= drained * share
        booked["water out"] -= drained * per_kg * share
        self._mixed(basin, at, out, mass, leaving, passed)
        if name == "wash":
            fed = detergent_fed(self.plant, at["detergent wash"] / max(mass, 0.01), mass, DETERGENT)
            out["detergent wash"] += fed
            ledger.fed["detergent"] += fed * share
        out[basin.soil] += basin.soiled

    def _mixed(
        self, basin: _Basin, at: Mapping[str, float], out: Rates, mass: float, leaving: float, passed: float
    ) -> None:
        """Detergent and soil go with the water."""
        held = max(mass, 0.01)
        for name, of in ((basin.detergent, "detergent"), (basin.soil, "soil")):
            strength = at[name] / held
            out[name] -= strength * leaving
            if basin.before:
                out[f"{of} {basin.before}"] += strength * passed

    def _to_air(self, temperature: float, mass: float, heat: float, air: float) -> tuple[float, float]:
        """Vapour, [kg/s], and heat, [W], that go with the exhaust, which leaves saturated; boiling takes the rest."""
        if mass < 2.0:
            return 0.0, 0.0
        warm = min(max(temperature, self.plant.air.room), 363.0)
        there = humidity_ratio(warm, 1.0)
        gone = air * (moist_enthalpy(warm, there) - self.room_heat)
        vapour = air * (there - self.here)
        if temperature > _BOILS:
            boiled = max(0.0, heat - gone) / (LATENT + CP * (temperature - ZERO))
            vapour += boiled
            gone += boiled * (LATENT + CP * (temperature - ZERO))
        return vapour, gone

    def _follow(self, at: Mapping[str, float], warm: Mapping[str, float], out: Rates) -> None:
        """Sensors and thermometers lag behind."""
        line, flow, room, booster = self.plant.rinse, self.rinsed, self.plant.air.room, at["booster"]
        aim, lag = room, _MANIFOLD_REST
        if flow > 0.0:
            loss = line.pipe_loss * (booster - room)
            aim, lag = booster - min(loss / (flow * CP), 0.5 * (booster - room)), _MANIFOLD
        out["manifold"] = (aim - at["manifold"]) / lag
        out["thermometer"] = (at["manifold"] - at["thermometer"]) / max(line.thermometer_lag, 2.0)
        for basin in self.basins:
            out[basin.sensor] = (warm[basin.name] - at[basin.sensor]) / basin.lag
        out["sensor booster"] = (booster - at["sensor booster"]) / max(self.plant.booster.thermostat.lag, 4.0)
