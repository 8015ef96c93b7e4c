"""Control volts along the chain of contacts: where they end names the open one."""

from __future__ import annotations

import math
from dataclasses import dataclass

from diagnose.formulas import said
from diagnose.model import Finding, Reading
from diagnose.rules.bands import limit_share, normal_share
from diagnose.rules.facts import Expected, Facts, Silent
from diagnose.rules.instruments import spread
from diagnose.rules.told import plates_told
from diagnose.units import Quantity, show_number

__all__ = ["chain_volts", "expected_chain"]

CHAIN = "control_circuit.chain_volts"
STRAY = 0.30  # of what the transformer gives: below it only stray volts of a cable are left; judgement
SOUND = 0.90  # of what stands before it, behind a closed contact that is sound; judgement
NOISE = 0.01  # how far two readings of the same wire differ through the minute; judgement
# The place behind which the volts are gone -> the part between it and the place before.
LOST = {
    "fuse": "lost_at_fuse",
    "switch": "lost_at_switch",
    "stops": "lost_at_stops",
    "doors": "lost_at_doors",
    "overloads": "lost_at_overloads",
    "permits": "lost_at_permits",
    "coil": "lost_at_start",
}


@dataclass(frozen=True)
class _Step:
    """A place of the chain: the share of the transformer's volts there, and of those at the place before."""

    place: str
    share: float
    kept: float


def chain_volts(facts: Facts) -> Finding | Silent | None:
    """Judge control volts read against the return, from the transformer to the master relay's coil.

    Purpose: the first place behind which the volts are gone names the open contact; a place behind which they
    are merely lower is a poor one, and a transformer that is weak from the start is neither.
    Formula: share = V / V_transformer; under 0.3 gone (stray volts), V / V_before under 0.9 poor; at the
    transformer V / V_plate under 0.85 weak, under 0.3 none.
    Source: a closed contact has no volts across it (Ohm's law); TM 5-683, chapter 5 (85 %); 0.3 and 0.9 are
    judgement.
    Fires: two_tank_electric_208 (control_volts = 120 V): control_circuit.chain_volts = 119 119 119 119 6 0 0 0 V
      -> lost_at_doors
    Fires: two_tank_electric_208 (control_volts = 24 V): control_circuit.chain_volts = 24 24 24 24 24 24 24 24 V
      -> all_through
    Silent: two_tank_electric_208 (control_volts = 120 V): control_circuit.chain_volts = 119 0 0 0 0 0 119 119 V
    """
    reading, check, plate = facts.fresh(CHAIN), facts.check(CHAIN), facts.plate("control_volts")
    if reading is None or check is None:
        return None
    if plate is None or plate.si <= 0:
        return Silent(f"{check.title}: needs the control circuit's volts")
    try:
        least = limit_share(facts, "coil_volts", "low")
    except LookupError as error:
        return Silent(f"{check.title}: {error}")
    first = reading.values["transformer"]
    own = spread(check, first, reading) * first.unit.factor
    given = first.si / plate.si
    none = normal_share((STRAY - given) / (own / plate.si + NOISE))
    if none > 0.5:
        words = [*_at_transformer(first, plate), *facts.assumed("control_volts")]
        weights = {"none_at_transformer": none, "weak_from_start": 1 - none}
        return facts.conclude(CHAIN, weights, CHAIN, [reading], (), words, _SAYS["none_at_transformer"])
    steps = _steps(reading)
    back = next((s for s in steps if s.kept > 1.1 and s.share > STRAY), None)
    if back is not None:
        return Silent(f"{check.title}: more volts at {back.place} than before it cannot be: read those two again")
    weights = _weights(steps, math.hypot(own / first.si, NOISE))
    weak = normal_share((least - given) / (own / plate.si))
    through = weights.pop("all_through")
    weights |= {"all_through": through * (1 - weak), "weak_from_start": through * weak, "none_at_transformer": none}
    outcome = max(weights, key=lambda o: weights[o])
    working = [*_at_transformer(first, plate), *_told(steps, reading), *facts.assumed("control_volts")]
    return facts.conclude(CHAIN, weights, CHAIN, [reading], (), working, _SAYS[outcome])


def _steps(reading: Reading) -> list[_Step]:
    """The places behind the transformer. What follows a dead one is judged by the dead one."""
    first = before = reading.values["transformer"].si
    steps = []
    for place in LOST:
        volts = reading.values[place].si
        steps.append(_Step(place, volts / first, volts / before if before > 0.0 else math.inf if volts > 0 else 0.0))
        before = volts
    return steps


def _weights(steps: list[_Step], sigma: float) -> dict[str, float]:
    """Walk the chain: at each place it is gone, poor, or comes on in full with what is left of certainty."""
    weights = dict.fromkeys([*LOST.values(), "poor_contact", "all_through"], 0.0)
    reach = 1.0
    for step in steps:
        gone = normal_share((STRAY - step.share) / (sigma + NOISE))
        full = normal_share((step.kept - SOUND) / (sigma * math.sqrt(2.0)))
        poor = max(1.0 - gone - full, 0.0)
        weights[LOST[step.place]] += reach * gone
        weights["poor_contact"] += reach * poor
        reach *= max(1.0 - gone - poor, 0.0)
    weights["all_through"] = reach
    return weights


def _at_transformer(first: Quantity, plate: Quantity) -> list[str]:
    if first.si <= 0.0:
        return [f"At the transformer nothing, plate {plate}."]
    return [f"At the transformer {first}, plate {plate}:", *said("coil-volts", "us", voltage=first.si, rated=plate.si)]


def _told(steps: list[_Step], reading: Reading) -> list[str]:
    """The places where something is lost, with their share."""
    lines = []
    for step in steps:
        if step.share < STRAY:
            share = show_number(step.share * 100, 2)
            lines.append(f"{step.place}: {reading.values[step.place]}, {share} %: gone (under 30 % is stray).")
            return lines
        if step.kept < SOUND:
            lost = show_number((1 - step.kept) * 100, 2)
            lines.append(f"{step.place}: {reading.values[step.place]}, {lost} % less than before it.")
    return lines or ["No place loses as much as a tenth: the chain is closed."]


def expected_chain(facts: Facts, check: str) -> Expected | None:
    """Full control volts at every place of a closed chain."""
    plate = facts.plate("control_volts")
    if plate is None or plate.si <= 0:
        return None
    try:
        shares = [limit_share(facts, "coil_volts", end) for end in ("low", "high")]
    except LookupError:
        return None
    low, high = (Quantity(share * plate.value, plate.unit) for share in shares)
    stray = show_number(STRAY * plate.value, 2)
    lines = (
        f"{show_number(low.value, 3)} to {show_number(high.value, 3)} V at all eight, chain closed",
        f"under {stray} V behind a place: that one is open",
    )
    working = (
        *plates_told(facts, "control_volts"),
        f"{shares[0]:g} × {plate} = {show_number(low.value)} V",
        f"{shares[1]:g} × {plate} = {show_number(high.value)} V",
        f"{STRAY:g} × {plate} = {show_number(STRAY * plate.value)} V: stray volts stay under it (judgement).",
    )
    return Expected(lines, low, high, facts.assumed("control_volts"), "TM 5-683, chapter 5; Ohm's law", working)


_SAYS = {
    "all_through": "Full volts reach the coil: the chain is closed, look at the relay and what it switches.",
    "none_at_transformer": "No control volts to begin with: fuses and feed of the transformer come first.",
    "lost_at_fuse": "They end at the fuse.",
    "lost_at_switch": "They end at the power switch.",
    "lost_at_stops": "They end at a stop button.",
    "lost_at_doors": "They end at a door switch.",
    "lost_at_overloads": "They end at an overload's own contact.",
    "lost_at_permits": "They end at a permit: low water, or a tank not hot.",
    "lost_at_start": "They end between the permits and the coil: start button, or its wires.",
    "poor_contact": "The chain is closed, but a contact in it makes poorly.",
    "weak_from_start": "The chain is closed, but the transformer gives too little.",
}
