"""All rules, in a plain tuple: whoever writes one adds a line here."""

from __future__ import annotations

from functools import partial

from diagnose.rules import (
    bank_amps,
    bank_ohms,
    booster_gas,
    booster_steam,
    breaker_earth_leakage,
    contactor,
    control_circuit,
    conveyor_bar_pawls,
    detergent_balance,
    detergent_feed,
    drain_overflow,
    drive_motor,
    exhaust_fan,
    hot_spots,
    insulation,
    level_control,
    motor_overload,
    motor_trip,
    pressure_regulator,
    pump,
    pump_motor,
    relief_valve,
    rinse_actuator,
    rinse_aid_feed,
    rinse_arms,
    rinse_compared,
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
    supply_gas,
    supply_power,
    supply_steam,
    supply_water,
    table_limit_switch,
    tank_balance,
    tank_body,
    tank_heat_up,
    tank_heater_steam,
    vent_dampers,
    water_quality,
    water_use,
)
from diagnose.rules.bands import plain_band
from diagnose.rules.bank_supply import BANKS
from diagnose.rules.chosen import chosen_outcome
from diagnose.rules.engine import Rule

__all__ = ["RULES"]

_PAIR = 110  # takes readings of several checks together that rules would else take one by one
_PATTERN = 100  # says more than a band about the readings of one check
_COMPUTED = 80  # answers a check that is never asked, with readings and findings of others
_PLAIN = 10  # what is left

RULES: tuple[Rule, ...] = (
    Rule("pump.duty", _PAIR, pump.duty),
    Rule("conveyor_bar_pawls.pace", _PAIR, conveyor_bar_pawls.pace),
    Rule("conveyor_bar_pawls.zone_time", _PATTERN, conveyor_bar_pawls.zone_time),
    Rule("conveyor_bar_pawls.strokes", _PATTERN, conveyor_bar_pawls.strokes),
    *(Rule(f"{c}.chain_length", _PATTERN, partial(side_chains.lengths, assembly=c)) for c in side_chains.CONVEYORS),
    Rule("rinse_actuator.rinse_run", _PATTERN, rinse_actuator.rinse_run),
    Rule("run_timer.run_on", _PATTERN, run_timer.run_on),
    Rule("exhaust_fan.suction", _PATTERN, exhaust_fan.suction),
    Rule("room_air.makeup_flows", _PATTERN, room_air.makeup),
    Rule("room_air.sweating", _PATTERN, room_dew.sweating),
    Rule("drive_motor.racks_work", _COMPUTED, drive_motor.racks_work),
    *(Rule(f"{b}.line_amps", _PATTERN, partial(bank_amps.line_amps, assembly=b)) for b in BANKS),
    *(Rule(f"{b}.line_amps_single", _PATTERN, partial(bank_amps.line_amps_single, assembly=b)) for b in BANKS),
    *(Rule(f"{b}.terminal_ohms", _PATTERN, partial(bank_ohms.terminal_ohms, assembly=b)) for b in BANKS),
    Rule("table_limit_switch.stop_seconds", _PATTERN, table_limit_switch.stop_seconds),
    Rule("control_circuit.chain_volts", _PATTERN, control_circuit.chain_volts),
    Rule("booster_gas.rise", _PATTERN, booster_gas.rise),
    Rule("supply_gas.droop", _PAIR, supply_gas.droop),
    *(
        Rule(f"{b}.input_for_pressure", _PAIR, partial(supply_gas.input_for_pressure, burner=b))
        for b in supply_gas.BURNERS
    ),
    Rule("supply_steam.pipe_heat", _PATTERN, supply_steam.pipe_heat),
    Rule("booster_steam.rise", _PATTERN, booster_steam.rise),
    Rule("booster_steam.rise_and_condensate", _PATTERN, booster_steam.condensate),
    Rule("breaker_earth_leakage.feed_amps", _PATTERN, breaker_earth_leakage.feed_amps),
    Rule("hot_spots.joint_drop", _PATTERN, hot_spots.joint_watts),
    Rule("supply_power.line_volts", _PATTERN, supply_power.line_volts),
    Rule("supply_power.line_volts_single", _PATTERN, supply_power.line_volts_single),
    Rule("supply_water.inlet_temperature", _PATTERN, supply_water.inlet_temperature),
    Rule("rinse_gauge.flow_pressure", _PATTERN, rinse_gauge.flow_pressure),
    Rule("rinse_gauge.static_pressure", _PATTERN, rinse_gauge.static_pressure),
    Rule("rinse_arms.flow_measured", _PATTERN, rinse_arms.flow_measured),
    Rule("rinse_valve.loss_across", _PATTERN, rinse_valve.loss_across),
    Rule("pressure_regulator.droop_line", _PATTERN, pressure_regulator.droop_line),
    Rule("relief_valve.standing_pair", _PATTERN, relief_valve.standing_pair),
    Rule("relief_valve.caught", _PATTERN, relief_valve.caught),
    Rule("level_control.fill_time", _PATTERN, level_control.fill_minutes),
    Rule("level_control.fill_pressure", _PATTERN, level_control.fill_pressure),
    Rule("drain_overflow.overflow_rate", _PATTERN, drain_overflow.overflow_rate),
    Rule("water_use.per_rack", _PATTERN, water_use.per_rack),
    Rule("tank_body.level_drop", _PATTERN, tank_body.level_drop),
    *(Rule(f"{m}.line_amps", _PATTERN, partial(pump_motor.line_amps, assembly=m)) for m in pump_motor.MOTORS),
    *(
        Rule(f"{m}.line_amps_single", _PATTERN, partial(pump_motor.line_amps_single, assembly=m))
        for m in pump_motor.MOTORS
    ),
    *(Rule(c, _PATTERN, partial(insulation.insulation, check_id=c)) for c in insulation.WARMTHS),
    Rule("contactor.coil_volts", _PATTERN, contactor.coil_volts),
    *(Rule(c, _PATTERN, partial(motor_trip.trip_time, check_id=c)) for c in motor_trip.STARTS),
    *(Rule(check, _PATTERN, partial(motor_overload.setting, check_id=check)) for check in motor_overload.SETTINGS),
    *(Rule(check, _PATTERN, partial(sensors.sensor_ohms, check_id=check)) for check in sensors.SENSORS),
    *(Rule(check, _PATTERN, partial(sanitiser_feed.drawn, check_id=check)) for check in sanitiser_feed.DRAWN),
    Rule("rinse_thermometer.label_on_plate", _PATTERN, rinse_proof.label),
    Rule("rinse_proof.trace", _PATTERN, rinse_proof.trace),
    Rule("sanitiser_feed.feed_balance", _PAIR, sanitiser_feed.feed_balance),
    Rule("sanitiser_feed.strip", _PATTERN, sanitiser_strip.strip),
    Rule("rinse_aid_feed.fed_per_rack", _PATTERN, rinse_aid_feed.fed_per_rack),
    Rule("detergent_feed.balance", _PAIR, detergent_balance.balance),
    Rule("detergent_feed.fed_per_rack", _PATTERN, detergent_feed.fed_per_rack),
    Rule("soil_load.carried", _PATTERN, soil_load.carried),
    Rule("water_quality.softener", _PATTERN, water_quality.softener),
    Rule("rinse_thermometer.compared", _COMPUTED, rinse_compared.compared),
    *(
        Rule(f"booster_{k}.heat_balance", _COMPUTED, partial(rinse_thermometer.heat_balance, kind=k))
        for k in ("electric", "steam", "gas")
    ),
    Rule("vent_dampers.balance", _COMPUTED, vent_dampers.balance),
    Rule("tank_heater_steam.condensate", _PATTERN, tank_heater_steam.condensate),
    *(Rule(check, _COMPUTED, partial(tank_heat_up.heat_up, check_id=check)) for check in tank_heat_up.TANKS),
    Rule("tank_control.heat_balance", _COMPUTED, tank_balance.heat_balance),
    Rule("tank_thermometer.compared", _COMPUTED, tank_balance.compared),
    *(Rule(check, _COMPUTED, partial(tank_balance.against_least, check_id=check)) for check in tank_balance.LEAST),
    Rule("chosen_outcome", _PLAIN, chosen_outcome, many=True),
    Rule("plain_band", _PLAIN, plain_band, many=True),
)
