"""Motor currents against the nameplate: the same rules for wash pump, conveyor drive and exhaust fan."""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import dataclass

from diagnose.formulas import said
from diagnose.model import Check, Finding, Reading
from diagnose.physics.motor_load import current_unbalance_expected
from diagnose.physics.motors import current_change_at_volts, nema_unbalance
from diagnose.rules.bands import limit_share, normal_share
from diagnose.rules.facts import Expected, Facts, Silent
from diagnose.rules.instruments import spread
from diagnose.rules.supply_power import unbalance_known
from diagnose.rules.told import plates_told
from diagnose.units import Quantity, show_number

__all__ = ["MOTORS", "Motor", "expected_amps", "line_amps", "line_amps_single", "motor_of"]


@dataclass(frozen=True)
class Motor:
    """One motor: the plate figure of its full-load amps, its name, and the least load it works at.

    `least` None: the limit `motor_load` says it.
    """

    plate: str
    name: str
    least: float | None = None


# A conveyor drive idles along on a level track, so that its current at light load is near its no-load
# current, some 40 to 60 % of the plate for a small motor (judgement): only less than that is low.
MOTORS: Mapping[str, Motor] = {
    "pump_motor": Motor("wash_motor_amps", "wash pump"),
    "drive_motor": Motor("drive_motor_amps", "conveyor drive", 0.40),
    "exhaust_fan": Motor("fan_motor_amps", "exhaust fan"),
}
# Of several pumps the readings belong to the one that was said to have tripped.
PUMPS: Mapping[str, Motor] = {
    "rinse_pump": Motor("rinse_motor_amps", "power-rinse pump"),
    "prewash_pump": Motor("prewash_motor_amps", "pre-wash pump"),
}
NAMEPLATE = 0.02  # what a nameplate figure is good for; judgement
UNBALANCE_SPREAD = 0.012  # current unbalance read by one clamp on three wires; judgement
MOST_TIMES = 12.0  # 6 to 10 times the voltage unbalance, DOE tip sheet 7; its own example comes to 11: 12 leaves room
OWN_UNBALANCE = 0.03  # what a sound motor shows on equal volts; judgement
VOLTS_SPREAD = 0.0015  # voltage unbalance read by one meter on three pairs; judgement
LOST_BELOW, LOST_SPREAD = 0.15, 0.04  # share of the mean of the other two below which a line is dead; judgement
DEAD = 0.05  # share of full load below which a motor is not running


def motor_of(facts: Facts, assembly: str) -> Motor:
    """The motor an assembly's readings belong to: of several pumps the one that was said to have tripped."""
    tripped = facts.chosen("motor_overload.which_tripped") or ""
    return PUMPS.get(tripped, MOTORS[assembly]) if assembly == "pump_motor" else MOTORS[assembly]


def line_amps(facts: Facts, assembly: str) -> Finding | Silent | None:
    """Judge the three line currents of a motor.

    Purpose: tell a lost phase, an unbalance, an overload, an idle load and a motor that is not fed apart.
    Formula: none: no line has 5 % of the nameplate; lost: one line under 15 % of the mean of the others;
    unbalance = largest deviation / mean over 10 %, and beyond the supply's over 12 times that of the volts and
    3 %; load = mean (of unequal lines: the middle one) / nameplate amps over 105 % high, under 60 % low (drive 40 %).
    Source: limits motor_load (judgement) and motor_current_unbalance (common practice); 6 to 10 times the
    voltage unbalance: DOE tip sheet 7; off-design volts: DOE tip sheet 9.
    Fires: two_tank_electric_208 (wash_motor_amps = 6.8 A): pump_motor.line_amps = 11.6 11.9 0 A -> phase_lost
    Fires: two_tank_electric_208 (wash_motor_amps = 6.8 A): supply_power.line_volts = 205 208 206 V;
      pump_motor.line_amps = 5.6 5.8 7.9 A -> beyond_supply
    Silent: two_tank_electric_208 (wash_motor_amps = 0 A): pump_motor.line_amps = 11.6 11.9 0 A
    """
    name = f"{assembly}.line_amps"
    reading, check = facts.fresh(name), facts.check(name)
    if reading is None or check is None:
        return None
    rated = _rated(facts, check, assembly)
    if isinstance(rated, Silent):
        return rated
    full, least, most = rated
    try:
        bear = limit_share(facts, "motor_current_unbalance", "high")
    except LookupError as error:
        return Silent(f"{check.title}: {error}")
    seen = [v.si for v in reading.values.values()]
    if len(seen) != 3:
        return Silent(f"{check.title}: needs three currents")
    plates = facts.assumed(motor_of(facts, assembly).plate)
    if max(seen) < DEAD * full:
        return facts.conclude(
            name, {"none": 1.0}, name, [reading], (), [*_dead_words(seen, full), *plates], _SAYS["none"]
        )
    others = (sum(seen) - min(seen)) / 2
    lost = normal_share((LOST_BELOW - min(seen) / others) / LOST_SPREAD)
    unbalance = nema_unbalance(seen)
    unequal = normal_share((unbalance - bear) / UNBALANCE_SPREAD)
    low, high, load = _level(check, reading, sum(seen) / 3, full, least, most)
    # One line far from the others shifts the mean; the middle one tells whether all of them are off level too. The
    # check has one answer, so each then takes half.
    lower, higher, _ = _level(check, reading, sorted(seen)[1], full, least, most)
    weights = {
        "healthy": (1 - lost) * (1 - unequal) * (1 - low - high),
        "high": (1 - lost) * ((1 - unequal) * high + unequal * higher / 2),
        "low": (1 - lost) * ((1 - unequal) * low + unequal * lower / 2),
        "unbalanced": (1 - lost) * unequal * (1 - (lower + higher) / 2),
        "phase_lost": lost,
    }
    _part_unbalance(weights, check, unbalance, unbalance_known(facts))
    outcome = max(weights, key=lambda o: weights[o])
    volts = facts.known("supply_power.line_volts")
    working = [
        _load_words(motor_of(facts, assembly), seen, full, load, least, most),
        f"Unbalance {unbalance * 100:.1f} %: largest deviation from the mean over the mean; {bear * 100:g} % allowed.",
        *_outcome_words(facts, outcome, seen, full, unbalance),
    ]
    return facts.conclude(name, weights, name, [reading], [volts], [*working, *plates], _SAYS[outcome])


def line_amps_single(facts: Facts, assembly: str) -> Finding | Silent | None:
    """Judge the one current of a single-phase motor.

    Purpose: overload, idle load, or not running.
    Formula: load = current / nameplate amps over 105 % high, under 60 % low (drive 40 %), under 5 % none.
    Source: limit motor_load (judgement).
    Fires: single_tank_electric_240_single_phase (wash_motor_amps = 9.2 A): pump_motor.line_amps_single = 12 A -> high
    Silent: single_tank_electric_240_single_phase (wash_motor_amps = 0 A): pump_motor.line_amps_single = 12 A
    """
    name = f"{assembly}.line_amps_single"
    reading, check = facts.fresh(name), facts.check(name)
    if reading is None or check is None:
        return None
    rated = _rated(facts, check, assembly)
    if isinstance(rated, Silent):
        return rated
    full, least, most = rated
    low, high, load = _level(check, reading, reading.value.si, full, least, most)
    none = normal_share((DEAD - load) / 0.015)
    weights = {"healthy": 1 - low - high, "high": high, "low": low * (1 - none), "none": low * none}
    outcome = max(weights, key=lambda o: weights[o])
    volts = facts.known("supply_power.line_volts_single")
    working = [
        _load_words(motor_of(facts, assembly), [reading.value.si], full, load, least, most),
        *_volts_words(facts, outcome),
    ]
    plates = facts.assumed(motor_of(facts, assembly).plate)
    return facts.conclude(name, weights, name, [reading], [volts], [*working, *plates], _SAYS[outcome])


def _rated(facts: Facts, check: Check, assembly: str) -> tuple[float, float, float] | Silent:
    """Nameplate amps, least and greatest load; Silent where they are unknown."""
    motor = motor_of(facts, assembly)
    plate = facts.plate(motor.plate)
    if plate is None or plate.si <= 0:
        return Silent(f"{check.title}: needs the full-load amps of the {motor.name}")
    try:
        least = limit_share(facts, "motor_load", "low") if motor.least is None else motor.least
        return plate.si, least, limit_share(facts, "motor_load", "high")
    except LookupError as error:
        return Silent(f"{check.title}: {error}")


def _level(
    check: Check, reading: Reading, amps: float, full: float, least: float, most: float
) -> tuple[float, float, float]:
    """Weights of low and high, and the load as a share of the nameplate, where the motor draws so many amps."""
    load = amps / full
    sigma = math.hypot(spread(check, Quantity.of_si(amps, "current", "A"), reading) / full, NAMEPLATE * load)
    return normal_share((least - load) / sigma), normal_share((load - most) / sigma), load


def _load_words(motor: Motor, seen: list[float], full: float, load: float, least: float, most: float) -> str:
    listed = ", ".join(show_number(i) for i in seen)
    return (
        f"{motor.name.capitalize()}: {listed} A = {load * 100:.0f} % of the {show_number(full)} A nameplate; "
        f"{least * 100:.0f} to {most * 100:.0f} % is in order."
    )


def _dead_words(seen: list[float], full: float) -> list[str]:
    listed = ", ".join(show_number(i) for i in seen)
    return [
        f"{listed} A: under {DEAD * 100:.0f} % of the {show_number(full)} A nameplate in every line.",
        "Has it tripped and waits for its reset, or was it not called? If so, start it and read again.",
    ]


def _outcome_words(facts: Facts, outcome: str, seen: list[float], full: float, unbalance: float) -> list[str]:
    if outcome == "phase_lost":
        running = sorted(seen)[1:]
        share = sum(running) / 2 / full
        return [
            f"One line is dead, the others at {share * 100:.0f} % of the nameplate. A motor that loses a phase "
            "at its nameplate draws about, or more than:",
            *said("lost-phase", "us", current=full),
        ]
    if outcome in ("unbalanced", "beyond_supply"):
        return [*_unbalance_words(facts, unbalance), *_upstream_words(seen)]
    return [*_volts_words(facts, outcome), *_upstream_words(seen)]


def _part_unbalance(
    weights: dict[str, float], check: Check, unbalance: float, volts: tuple[float, Reading] | None
) -> None:
    """Part unequal currents into those the measured volts explain and those they do not; half each if not read."""
    if "beyond_supply" not in check.outcomes:
        return
    beyond = 0.5
    if volts is not None:
        # A sound motor on even volts is a little uneven itself.
        explained = MOST_TIMES * volts[0] + OWN_UNBALANCE
        beyond = normal_share((unbalance - explained) / math.hypot(UNBALANCE_SPREAD, MOST_TIMES * VOLTS_SPREAD))
    unequal = weights["unbalanced"]
    weights["unbalanced"], weights["beyond_supply"] = unequal * (1 - beyond), unequal * beyond


def _unbalance_words(facts: Facts, unbalance: float) -> list[str]:
    known = unbalance_known(facts)
    if known is None:
        return ["Line volts not read: 6 to 10 times the voltage unbalance is what a sound motor shows."]
    volts, seen = known[0] * 100, unbalance * 100
    verdict = (
        "the supply explains it" if seen <= MOST_TIMES * volts else "more than the supply explains: look at the motor"
    )
    return [f"Voltage unbalance {volts:.2f} % makes {volts * 6:.0f} to {volts * 10:.0f} % in the currents: {verdict}."]


def _upstream_words(seen: list[float]) -> list[str]:
    """115, 115, 230 %: a line lost on the far side of a delta-wye transformer (from memory)."""
    low, middle, most = sorted(seen)
    if 1.6 < most / ((low + middle) / 2) < 2.4 and low > 0.8 * middle:
        return ["Two lines alike and one about double: so shows a line lost ahead of a transformer (from memory)."]
    return []


def _volts_words(facts: Facts, outcome: str) -> list[str]:
    read = facts.known("supply_power.line_volts") or facts.known("supply_power.line_volts_single")
    plate = facts.plate("volts")
    if outcome != "high" or read is None or plate is None or plate.si <= 0:
        return []
    share = sum(v.si for v in read.values.values()) / len(read.values) / plate.si
    if not 0.9 <= share <= 1.1:
        return [f"The supply stands at {share * 100:.0f} % of the plate: below 90 % any loaded motor draws too much."]
    low, high = current_change_at_volts(share)
    return [f"At {share * 100:.0f} % volts full load draws {low * 100:.0f} to {high * 100:.0f} % of the nameplate."]


def expected_amps(facts: Facts, check: str) -> Expected | None:
    """The band of current in order, and how alike three lines should be."""
    assembly, _, name = check.partition(".")
    motor, entry = motor_of(facts, assembly), facts.check(check)
    rated = _rated(facts, entry, assembly) if entry else Silent("")
    if isinstance(rated, Silent):
        return None
    full, least, most = rated
    low, high = (Quantity.of_si(full * share, "current", "A") for share in (least, most))
    each = "" if name.endswith("_single") else " each, within 10 % of their mean"
    line = f"{show_number(low.value, 3)} to {show_number(high.value, 3)} A{each} ({show_number(full)} A nameplate)"
    unequal = _unequal_volts(facts) if each else ()
    working = (
        *plates_told(facts, motor.plate),
        f"{least * 100:.0f} to {most * 100:.0f} % of {show_number(full)} A: "
        f"{show_number(low.value, 3)} to {show_number(high.value, 3)} A.",
        *unequal,
    )
    return Expected(
        (line, *unequal[:1]), low, high, facts.assumed(motor.plate), "nameplate; the band is judgement", working
    )


def _unequal_volts(facts: Facts) -> tuple[str, ...]:
    """What the voltage unbalance read makes of three sound currents: a line for the prompt, and its working."""
    known = unbalance_known(facts)
    if known is None or not 0.002 < known[0] <= 0.05:
        return ()
    least, most = current_unbalance_expected(known[0])
    line = f"{least * 100:.0f} to {most * 100:.0f} % between them is the supply's ({known[0] * 100:.2f} % of volts)"
    return line, *said("current-unbalance", "us", unbalance=known[0])


_SAYS = {
    "healthy": "The motor draws what it should.",
    "high": "The motor draws more than its nameplate.",
    "low": "The motor draws too little: it is not moving what it should.",
    "unbalanced": "The three currents are more unequal than a sound motor on a sound supply shows.",
    "beyond_supply": "The three currents are more unequal than these volts explain: look at the motor.",
    "phase_lost": "One phase is lost and the motor runs on the other two.",
    "none": "No current: the motor is not fed or its winding is open.",
}
