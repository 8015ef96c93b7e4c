"""What every part does at one moment: switches, volts, amps, flows, pressures, heats. No step in time here."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from diagnose.simulator.airway import AirFlow, Draw, drawn_off, fan_load, with_steam
from diagnose.simulator.conveying import bar_share, drive_load, stands_open
from diagnose.simulator.electrics import BankFlow, MotorFlow, bank_flow, line_volts, motor_flow
from diagnose.simulator.heating import fuel_heat, heaters, heats
from diagnose.simulator.parts import RinseLine, Tank
from diagnose.simulator.plant import Plant
from diagnose.simulator.pumping import PumpFlow, drawn_in, pump_flow, pump_load
from diagnose.simulator.state import State
from diagnose.simulator.steam_flow import SteamFlow, lives_on_steam, steam_flow
from diagnose.simulator.steaming import fog, steam_rates
from diagnose.simulator.waterway import RinseFlow, rinse_flow, supply_pressure

__all__ = ["Moment", "Standing", "moment_of", "rinse_opening"]


@dataclass(frozen=True)
class Standing:
    """What follows from the switches alone, whatever the temperatures. Banks, motors and pumps by name."""

    rinse: RinseFlow
    fills: Mapping[str, float]  # m3/s into each tank
    banks: Mapping[str, BankFlow]
    motors: Mapping[str, MotorFlow]
    pumps: Mapping[str, PumpFlow]
    volts: tuple[float, ...]  # line to line at the machine
    amps: tuple[float, float, float]  # of the whole machine
    speed: float  # m/s of the racks
    air: Draw


@dataclass(frozen=True)
class Moment:
    """One moment of the machine, all in SI."""

    standing: Standing
    rinsing: bool
    heat: Mapping[str, float]  # W into booster and tanks
    air: AirFlow
    temperatures: Mapping[str, float]  # K of booster, manifold and tanks
    let_in: Mapping[str, float]  # kg/s of steam that turns to water in a tank

    @property
    def moving(self) -> bool:
        return self.standing.speed > 0.0


def moment_of(plant: Plant, state: State, rack_in_rinse: bool, known: dict[object, Standing] | None = None) -> Moment:
    """Work everything out from parts and switches; `rack_in_rinse`: a rack holds the rinse actuator.

    `known` keeps what follows from the switches alone, for as long as the parts stay as they are.
    """
    opened = rinse_opening(plant, state, rack_in_rinse)
    heating = list(heaters(plant))
    on = {name: heats(plant, state, name) for name, _ in heating}
    key = (
        opened,
        tuple(on.values()),
        tuple(state.filling.values()),
        tuple(m for m in plant.motors if _switched(plant, state, m)),
        frozenset(state.stalled),
        state.jammed,
        tuple(drawn_in(plant, state, name) for name in plant.tanks),
    )
    standing = known.get(key) if known is not None else None
    if standing is None:
        standing = _standing(plant, state, opened, on)
        if known is not None:
            known[key] = standing
    temperatures = {name: state.temperature(name) for name in plant.tanks}
    temperatures["booster"] = state.flowing["booster"]
    temperatures["manifold"] = state.flowing["manifold"]
    steam = steam_flow(plant, state, on) if lives_on_steam(plant) else None
    heat = {name: heater.duty * _heat(plant, name, standing, steam, state, on) for name, heater in heating}
    steaming = steam_rates(plant, temperatures, standing.rinse, state.running)
    if steam is not None:
        thumps = fog(sum(steam.bursts.values()))
        steaming = {end: rising + thumps / 2 for end, rising in steaming.items()}
    air = with_steam(standing.air, steaming)
    return Moment(standing, standing.rinse.flow > 0.0, heat, air, temperatures, steam.stays if steam else {})


def _heat(
    plant: Plant, name: str, standing: Standing, steam: SteamFlow | None, state: State, on: Mapping[str, bool]
) -> float:
    if name in standing.banks:
        return standing.banks[name].power
    return steam.heat[name] if steam is not None and name in steam.heat else fuel_heat(plant, name, state, on)


def _standing(plant: Plant, state: State, opened: float, on: Mapping[str, bool]) -> Standing:
    wanted = {name: _fill_opening(tank, state.filling[name]) for name, tank in plant.tanks.items()}
    draw = sum(_fill(plant, plant.tanks[n], share, plant.water.static) for n, share in wanted.items())
    rinse = rinse_flow(plant.water, plant.rinse, opened, draw)
    offered = supply_pressure(plant.water, draw + rinse.flow + rinse.robbed)
    fills = {n: _fill(plant, plant.tanks[n], share, offered) for n, share in wanted.items()}
    banks = {n: bank_flow(plant.power, h, on[n]) for n, h in heaters(plant) if h.kind == "electric"}
    motors = {name: _motor(plant, state, name) for name in plant.motors}
    pumps = {name: pump_flow(plant, name, motors[name].turns, drawn_in(plant, state, name)) for name in plant.tanks}
    amps = [sum(b.amps[n] for b in banks.values()) + sum(m.amps[n] for m in motors.values()) for n in range(3)]
    belt = plant.conveyor
    moving = motors["drive"].turns and not state.jammed
    return Standing(
        rinse=rinse,
        fills=fills,
        banks=banks,
        motors=motors,
        pumps=pumps,
        volts=line_volts(plant.power, amps),
        amps=(amps[0], amps[1], amps[2]),
        speed=belt.speed * bar_share(belt) * belt.drive.stroke if moving else 0.0,
        air=drawn_off(plant.air, motors["fan"].turns),
    )


def rinse_opening(plant: Plant, state: State, rack_in_rinse: bool) -> float:
    """Share of the final-rinse valve's passage that is open: 1 when it is energised."""
    line: RinseLine = plant.rinse
    held = line.actuator == "held" or (rack_in_rinse and line.actuator != "dead")
    return 1.0 if held and state.running and line.valve_opens > 0.0 else line.valve_leak


def _fill_opening(tank: Tank, called: bool) -> float:
    return tank.fill_open if tank.fill_held or (called and not tank.fill_dead) else 0.0


def _fill(plant: Plant, tank: Tank, opened: float, pressure: float) -> float:
    """Flow into a tank, [m3/s], by the root of the pressure offered."""
    return float(tank.fill_flow * opened * (pressure / plant.plate["fill_pressure"]) ** 0.5 + tank.fill_leak)


def _switched(plant: Plant, state: State, name: str) -> bool:
    motor = plant.motors[name]
    called = state.running and motor.coil_works and (name != "drive" or not stands_open(plant.conveyor))
    return name not in state.tripped and (motor.welded or called)


def _motor(plant: Plant, state: State, name: str) -> MotorFlow:
    motor = plant.motors[name]
    if not _switched(plant, state, name):
        return MotorFlow((0.0, 0.0, 0.0), 0.0, False)
    if name in plant.pumps:
        load = pump_load(plant, name, drawn_in(plant, state, name))
    elif name == "drive":
        load = motor.load * drive_load(plant.conveyor) + motor.drag
    else:
        load = motor.load * fan_load(plant.air) + motor.drag
    rated = plant.plate["volts"] * motor.volts_share
    return motor_flow(plant.power, motor, load, rated, running=motor.starts and name not in state.stalled)
