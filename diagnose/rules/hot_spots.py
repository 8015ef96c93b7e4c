"""Watts in one joint of the feed: the volts lost in it times the amps through it."""

from __future__ import annotations

import math
from dataclasses import dataclass

from diagnose.formulas import said
from diagnose.model import Finding, Reading
from diagnose.physics.motor_supply import feeder_loss
from diagnose.rules.bands import normal_share
from diagnose.rules.breaker_earth_leakage import CHECK as FEED
from diagnose.rules.breaker_earth_leakage import loads_of, sum_of_loads
from diagnose.rules.facts import Expected, Facts, Silent
from diagnose.rules.instruments import spread
from diagnose.rules.told import reading_told
from diagnose.units import Quantity, show_number

__all__ = ["CHECK", "expected_drop", "joint_watts"]

CHECK = "hot_spots.joint_drop"
COOL, BURNS = 5.0, 15.0  # W a sound screw bears, and at which it burns; judgement
PLATES = 0.2  # how far the current may stand off the sum of the plates where it was not clamped; judgement


@dataclass(frozen=True)
class Load:
    """Amps through the joint, how far they may be off as a share, and the reading they come from (none: plates)."""

    amps: float
    error: float
    read: Reading | None


def joint_watts(facts: Facts) -> Finding | Silent | None:
    """Judge the volts lost in one joint by the heat they make there.

    Purpose: the same tenths of a volt are nothing on a machine of 14 A and a fire on one of 200 A.
    Formula: P = U × I, with I the fullest line as clamped, or the sum of the machine's plates; under 5 W a screw
    stays cool, from 15 W it burns.
    Source: DOE tip sheet 8, worked example (P = drop × amps); 5 and 15 W are judgement.
    Fires: two_tank_electric_208: breaker_earth_leakage.feed_amps = 180 A; hot_spots.joint_drop = 0.3 V -> burns
    Fires: two_tank_steam_208: breaker_earth_leakage.feed_amps = 13 A; hot_spots.joint_drop = 0.3 V -> cool
    Silent: two_tank_steam_208 (volts = 0 V): hot_spots.joint_drop = 0.3 V
    """
    reading, check, load = facts.fresh(CHECK), facts.check(CHECK), _load(facts)
    if reading is None or check is None:
        return None
    if load is None:
        return Silent(f"{check.title}: needs the amps through the joint, clamped or by the plates")
    drop = reading.value.si
    watts = feeder_loss(drop, load.amps)
    sigma = math.hypot(
        spread(check, reading.value, reading) * reading.value.unit.factor * load.amps, watts * load.error
    )
    sigma = max(sigma, 0.05)
    cool, burns = normal_share((COOL - watts) / sigma), normal_share((watts - BURNS) / sigma)
    weights = {"cool": cool, "warm": max(1 - cool - burns, 0.0), "burns": burns}
    outcome = max(weights, key=lambda o: weights[o])
    working = [
        *_where_from(facts, load),
        *said("feeder-loss", "us", drop=drop, current=load.amps),
        f"Under {COOL:g} W a screw stays cool, from {BURNS:g} W it burns (judgement).",
    ]
    return facts.conclude(CHECK, weights, CHECK, [reading], [load.read], working, _SAYS[outcome])


def _load(facts: Facts) -> Load | None:
    read, check = facts.known(FEED), facts.check(FEED)
    if read is not None and check is not None and read.value.si > 0:
        error = spread(check, read.value, read) * read.value.unit.factor / read.value.si
        return Load(read.value.si, error, read)
    total = sum(amps for _, amps in loads_of(facts))
    return Load(total, PLATES, None) if total > 0 else None


def _where_from(facts: Facts, load: Load) -> tuple[str, ...]:
    if load.read is not None:
        return reading_told(facts, load.read)
    told = sum_of_loads(facts)
    return () if told is None else (f"Amps not clamped; {told[0]}.", *told[1])


def expected_drop(facts: Facts, check: str) -> Expected | None:
    """The most a sound joint may lose on this machine."""
    load = _load(facts)
    if load is None:
        return None
    most = Quantity.of_si(COOL / load.amps, "voltage", "V")
    line = f"under {show_number(most.value, 2)} V in each joint at {show_number(load.amps, 3)} A"
    working = (
        *_where_from(facts, load),
        f"{COOL:g} W ÷ {show_number(load.amps, 3)} A = {show_number(COOL / load.amps, 2)} V",
    )
    return Expected((line,), None, most, (), "DOE tip sheet 8; watts of a screw are judgement", working)


_SAYS = {
    "cool": "The joint loses too little to get hot.",
    "warm": "The joint is warm: undo, clean and torque it at the next stop.",
    "burns": "The joint burns: off with the load until it is remade.",
}
