"""All rules, in a plain tuple: whoever writes one adds a line here."""

from __future__ import annotations

from functools import partial

from diagnose.rules import (
    booster_electric,
    motor_overload,
    pump_motor,
    rinse_arms,
    rinse_gauge,
    rinse_thermometer,
    sensors,
    supply_power,
    supply_water,
    vent_dampers,
)
from diagnose.rules.bands import plain_band
from diagnose.rules.chosen import chosen_outcome
from diagnose.rules.engine import Rule

__all__ = ["RULES"]

_PATTERN = 100  # says more than a band about the readings of one check
_COMPUTED = 80  # answers a check that is never asked, with readings and findings of others
_PLAIN = 10  # what is left

RULES: tuple[Rule, ...] = (
    Rule("booster_electric.line_amps", _PATTERN, booster_electric.line_amps),
    Rule("booster_electric.line_amps_single", _PATTERN, booster_electric.line_amps_single),
    Rule("booster_electric.terminal_ohms", _PATTERN, booster_electric.terminal_ohms),
    Rule("supply_power.line_volts", _PATTERN, supply_power.line_volts),
    Rule("supply_power.line_volts_single", _PATTERN, supply_power.line_volts_single),
    Rule("supply_water.inlet_temperature", _PATTERN, supply_water.inlet_temperature),
    Rule("rinse_gauge.flow_pressure", _PATTERN, rinse_gauge.flow_pressure),
    Rule("rinse_gauge.static_pressure", _PATTERN, rinse_gauge.static_pressure),
    Rule("rinse_arms.flow_measured", _PATTERN, rinse_arms.flow_measured),
    *(Rule(f"{m}.line_amps", _PATTERN, partial(pump_motor.line_amps, assembly=m)) for m in pump_motor.MOTORS),
    *(
        Rule(f"{m}.line_amps_single", _PATTERN, partial(pump_motor.line_amps_single, assembly=m))
        for m in pump_motor.MOTORS
    ),
    *(Rule(check, _PATTERN, partial(motor_overload.setting, check_id=check)) for check in motor_overload.SETTINGS),
    *(Rule(check, _PATTERN, partial(sensors.sensor_ohms, check_id=check)) for check in sensors.SENSORS),
    Rule("booster_electric.heat_balance", _COMPUTED, rinse_thermometer.heat_balance),
    Rule("vent_dampers.balance", _COMPUTED, vent_dampers.balance),
    Rule("chosen_outcome", _PLAIN, chosen_outcome, many=True),
    Rule("plain_band", _PLAIN, plain_band, many=True),
)
