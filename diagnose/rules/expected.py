"""What a check should read on this machine, with the readings taken so far."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import replace
from functools import partial

from diagnose.model import Book, Check, Machine, Reading
from diagnose.rules import (
    bank_amps,
    bank_ohms,
    booster_gas,
    booster_steam,
    breaker_earth_leakage,
    contactor,
    control_circuit,
    conveyor_bar_pawls,
    curtains,
    detergent_feed,
    drain_overflow,
    drive_motor,
    exhaust_fan,
    gearbox_clutch,
    hot_spots,
    insulation,
    level_control,
    motor_overload,
    motor_starts,
    motor_trip,
    pressure_regulator,
    pump,
    pump_motor,
    relief_valve,
    rinse_actuator,
    rinse_aid_feed,
    rinse_arms,
    rinse_gauge,
    rinse_proof,
    rinse_thermometer,
    rinse_valve,
    room_air,
    room_dew,
    run_timer,
    sanitiser_feed,
    sanitiser_strip,
    sensors,
    side_chains,
    soil_load,
    supply_power,
    supply_steam,
    supply_water,
    table_limit_switch,
    tank_balance,
    tank_body,
    tank_heat_up,
    tank_heater_gas,
    tank_heater_steam,
    vent_dampers,
    water_use,
)
from diagnose.rules.bands import Edge, bands_of
from diagnose.rules.bank_supply import BANKS
from diagnose.rules.facts import Expected, Facts, gather
from diagnose.units import Quantity, UnitError, find_unit, show_number

__all__ = ["EXPECTATIONS", "expected"]

EXPECTATIONS: Mapping[str, Callable[[Facts, str], Expected | None]] = {
    "pump.pressure": pump.expected_pressure,
    **{f"{b}.line_amps": bank_amps.expected_amps for b in BANKS},
    **{f"{b}.line_amps_single": bank_amps.expected_amps for b in BANKS},
    **{f"{b}.terminal_ohms": bank_ohms.expected_ohms for b in BANKS},
    "booster_gas.rise": booster_gas.expected_gas_rise,
    "booster_gas.gas_clocked": booster_gas.expected_clocked,
    "supply_steam.pipe_heat": supply_steam.expected_pipe,
    "booster_steam.rise": booster_steam.expected_coil_rise,
    "booster_steam.rise_and_condensate": booster_steam.expected_condensate,
    "table_limit_switch.stop_seconds": table_limit_switch.expected_stop_seconds,
    "control_circuit.chain_volts": control_circuit.expected_chain,
    "supply_power.line_volts": supply_power.expected_volts,
    "supply_power.line_volts_single": supply_power.expected_volts,
    "supply_water.inlet_temperature": supply_water.expected_inlet,
    "rinse_gauge.static_pressure": rinse_gauge.expected_static,
    "rinse_arms.flow_measured": rinse_arms.expected_flow,
    "rinse_valve.loss_across": rinse_valve.expected_loss,
    "pressure_regulator.droop_line": pressure_regulator.expected_droop,
    "relief_valve.standing_pair": relief_valve.expected_pair,
    "relief_valve.caught": relief_valve.expected_caught,
    "level_control.fill_time": level_control.expected_fill_time,
    "level_control.fill_pressure": level_control.expected_fill_pressure,
    "drain_overflow.overflow_rate": drain_overflow.expected_rate,
    "water_use.per_rack": water_use.expected_per_rack,
    "tank_body.level_drop": tank_body.expected_drop,
    "rinse_proof.trace": rinse_proof.expected_trace,
    "sanitiser_feed.strip": sanitiser_strip.expected_strip,
    **dict.fromkeys(sanitiser_feed.DRAWN, sanitiser_feed.expected_drawn),
    "rinse_aid_feed.fed_per_rack": rinse_aid_feed.expected_aid,
    "detergent_feed.fed_per_rack": detergent_feed.expected_fed,
    **{f"{m}.line_amps": pump_motor.expected_amps for m in pump_motor.MOTORS},
    **{f"{m}.line_amps_single": pump_motor.expected_amps for m in pump_motor.MOTORS},
    **dict.fromkeys(insulation.WARMTHS, insulation.expected_insulation),
    "hot_spots.joint_drop": hot_spots.expected_drop,
    "contactor.coil_volts": contactor.expected_coil,
    **dict.fromkeys(motor_trip.STARTS, motor_trip.expected_trip_time),
    **dict.fromkeys(motor_overload.SETTINGS, motor_overload.expected_setting),
    **dict.fromkeys(sensors.SENSORS, sensors.expected_ohms),
    "conveyor_bar_pawls.zone_time": conveyor_bar_pawls.expected_zone,
    "conveyor_bar_pawls.strokes": conveyor_bar_pawls.expected_strokes,
    "drive_motor.amps_empty": drive_motor.expected_amps,
    "drive_motor.amps_loaded": drive_motor.expected_amps,
    **{f"{c}.chain_length": side_chains.expected_length for c in side_chains.CONVEYORS},
    "rinse_actuator.rinse_run": rinse_actuator.expected_run,
    "run_timer.run_on": run_timer.expected_run_on,
    "exhaust_fan.suction": exhaust_fan.expected_suction,
    "gearbox_clutch.clutch_pull": gearbox_clutch.expected_pull,
    **dict.fromkeys(curtains.VENTS, curtains.expected_gap),
    "room_air.makeup_flows": room_air.expected_makeup,
    "room_air.sweating": room_dew.expected_surface,
    **dict.fromkeys(tank_heat_up.TANKS, tank_heat_up.expected_heat_up),
    **dict.fromkeys(tank_balance.LEAST, tank_balance.expected_least),
    "tank_heater_steam.condensate": tank_heater_steam.expected_condensate,
    "tank_heater_gas.gas_clocked": tank_heater_gas.expected_clocked,
    "vent_dampers.flow_entrance": vent_dampers.expected_flow,
    "vent_dampers.flow_exit": vent_dampers.expected_flow,
}

# What computation says beside the plain band of a check: a line for the prompt, and its working.
BESIDES: Mapping[str, Callable[[Facts], tuple[str, tuple[str, ...]] | None]] = {
    "breaker_earth_leakage.feed_amps": breaker_earth_leakage.sum_of_loads,
    "motor_overload.starts_count": motor_starts.starts_borne,
    "soil_load.carried": soil_load.carried_beside,
    "rinse_thermometer.panel_reading": rinse_thermometer.reach,
    "rinse_thermometer.reference_reading": rinse_thermometer.reach,
    **{tank.settled: partial(tank_balance.holding, tank=tank) for tank in tank_heat_up.TANKS.values()},
}


def expected(
    book: Book, machine: Machine, readings: Sequence[Reading], check_id: str, stage: int | None = None
) -> Expected | None:
    """What this check should read here; None where nothing can be said in figures.

    `stage` is how many repairs were made; without it, as many as the newest reading knows of.
    """
    newest = max((r.stage for r in readings), default=0)
    facts = replace(gather(book, machine, readings), stage=newest if stage is None else stage)
    check = facts.check(check_id)
    if check is None or check.reading is None:
        return None
    try:
        if check_id in EXPECTATIONS:
            return EXPECTATIONS[check_id](facts, check_id)
    except ValueError:  # a formula refuses one of the figures: nothing can be said in figures
        return None
    shown, more = _from_bands(facts, check), _beside(facts, check_id)
    if shown is None or more is None:
        return shown
    return replace(shown, lines=(*shown.lines, more[0]), working=(*shown.working, *more[1]))


def _beside(facts: Facts, check_id: str) -> tuple[str, tuple[str, ...]] | None:
    """What is computed beside a band; the band stands alone where a formula refuses a figure."""
    try:
        return BESIDES[check_id](facts) if check_id in BESIDES else None
    except ValueError:
        return None


def _from_bands(facts: Facts, check: Check) -> Expected | None:
    """The band of the good outcome, in the unit the check is asked in."""
    spec = check.reading
    unit = find_unit(spec.unit, spec.quantity) if spec else None
    if unit is None:
        return None
    try:
        bands = bands_of(facts.book, facts.machine, check, unit)
    except (LookupError, UnitError):
        return None
    good = [b for b in bands if check.outcomes[b.outcome].good]
    if not good:
        return None
    low, high = good[0].low, good[-1].high
    ends = [e for e in (low, high) if e is not None]
    stands = "; ".join(dict.fromkeys(e.stands for e in ends if e.stands))
    assumed = tuple(e.stands for e in ends if "assumed" in e.stands)[:1]
    line = _span(low, high) + (f" ({stands})" if stands else "")
    return Expected((line,), _quantity(low), _quantity(high), assumed, stands, _ends_told(low, high))


def _ends_told(low: Edge | None, high: Edge | None) -> tuple[str, ...]:
    """Each end of the band, and where it comes from: nothing is computed here, only taken."""
    told = (("From", low), ("Up to", high))
    return tuple(f"{word} {_short(e)}: {e.stands or 'as the check states it'}." for word, e in told if e is not None)


def _span(low: Edge | None, high: Edge | None) -> str:
    if low and high:
        return f"{show_number(low.value, 3)} to {_short(high)}"
    if low:
        return f"{_short(low)} or more"
    return f"under {_short(high)}" if high else "any"


def _short(edge: Edge) -> str:
    return f"{show_number(edge.value, 3)}{'' if edge.unit.symbol == '%' else ' '}{edge.unit.symbol}"


def _quantity(edge: Edge | None) -> Quantity | None:
    return Quantity(edge.value, edge.unit) if edge else None
