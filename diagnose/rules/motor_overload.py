"""Overload settings against the motor's nameplate."""

from __future__ import annotations

from collections.abc import Mapping

from diagnose.formulas import said
from diagnose.model import Finding
from diagnose.physics.motors import overload_trip
from diagnose.rules.bands import limit_share, normal_share
from diagnose.rules.facts import Expected, Facts, Silent
from diagnose.rules.instruments import spread
from diagnose.rules.pump_motor import motor_of
from diagnose.rules.told import plates_told
from diagnose.units import Quantity, show_number

__all__ = ["SETTINGS", "expected_setting", "setting"]

SETTINGS: Mapping[str, str] = {
    "motor_overload.pump_setting": "pump_motor",
    "motor_overload.drive_setting": "drive_motor",
    "motor_overload.fan_setting": "exhaust_fan",
}
DIAL = 0.05  # a dial is drawn in steps of about 5 %: that much under the nameplate is still the nameplate; judgement


def setting(facts: Facts, check_id: str) -> Finding | Silent | None:
    """Judge the setting of an overload relay by the full-load amps on the motor's nameplate.

    Purpose: set below, it trips with normal current; set above, it lets the motor burn.
    Formula: share = setting / nameplate amps; from 95 to 115 % as nameplate.
    Source: NEC 430.32(A)(1): 115 %, or 125 % with service factor 1.15 or a rise of 40 °C (secondary);
    the lower end is common practice.
    Fires: two_tank_electric_208 (wash_motor_amps = 6.8 A): motor_overload.pump_setting = 5.0 A -> below
    Silent: two_tank_electric_208 (wash_motor_amps = 0 A): motor_overload.pump_setting = 5.0 A
    """
    reading, check = facts.fresh(check_id), facts.check(check_id)
    if reading is None or check is None:
        return None
    plate = facts.plate(_plate_of(facts, check_id))
    if plate is None or plate.si <= 0:
        return Silent(f"{check.title}: needs the full-load amps of the motor")
    try:
        least = limit_share(facts, "overload_setting_115", "low") - DIAL
        most = limit_share(facts, "overload_setting_115", "high")
    except LookupError as error:
        return Silent(f"{check.title}: {error}")
    share = reading.value.si / plate.si
    sigma = max(spread(check, reading.value, reading) * reading.value.unit.factor / plate.si, 0.005)
    below, above = normal_share((least - share) / sigma), normal_share((share - most) / sigma)
    weights = {"as_nameplate": max(1 - below - above, 0.0), "below": below, "above": above}
    working = [
        f"Set to {reading.value} = {share * 100:.0f} % of the {plate} nameplate.",
        *_sizing(plate.si),
        *facts.assumed(_plate_of(facts, check_id)),
    ]
    says = _SAYS[max(weights, key=lambda o: weights[o])]
    return facts.conclude(check_id, weights, "motor_overload.setting", [reading], (), working, says)


def _sizing(full: float) -> list[str]:
    """The code's greatest trip currents for a motor, worked out."""
    ordinary = said("overload-size", "us", full_load=full, service_factor="no", will_not_start="no")
    cool = said("overload-size", "us", full_load=full, service_factor="yes", will_not_start="no")
    return [
        f"Motors in general: {ordinary[0]} at the most.",
        f"With a service factor of 1.15 or a rise of 40 °C on the nameplate: {cool[0]}. Local codes govern.",
    ]


def _plate_of(facts: Facts, check_id: str) -> str:
    return motor_of(facts, SETTINGS[check_id]).plate


def expected_setting(facts: Facts, check: str) -> Expected | None:
    """The nameplate's full-load amps, and the most the code allows."""
    plate = facts.plate(_plate_of(facts, check))
    if plate is None or plate.si <= 0:
        return None
    high = Quantity.of_si(overload_trip(plate.si, False), "current", "A")
    line = f"{plate}, the nameplate's full-load amps; trip at most {show_number(high.value, 3)} A in general"
    working = (*plates_told(facts, _plate_of(facts, check)), *_sizing(plate.si))
    assumed = facts.assumed(_plate_of(facts, check))
    return Expected((line,), plate, high, assumed, "NEC 430.32(A)(1), secondary", working)


_SAYS = {
    "as_nameplate": "The overload is set for this motor.",
    "below": "The overload is set below the nameplate: it trips with normal current.",
    "above": "The overload is set above what the code allows in general: it does not guard the motor.",
}
