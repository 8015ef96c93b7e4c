"""Conveyor motor without and with racks: what the drive drags, and what the racks add."""

from __future__ import annotations

import math

from diagnose.formulas import said
from diagnose.model import Finding, Reading
from diagnose.physics.conveyor_drive import working_share
from diagnose.rules.bands import normal_share
from diagnose.rules.facts import Expected, Facts, Silent
from diagnose.rules.instruments import spread
from diagnose.units import Quantity, show_number

__all__ = ["expected_amps", "racks_work"]

EMPTY, LOADED, WORK = (f"drive_motor.{n}" for n in ("amps_empty", "amps_loaded", "racks_work"))
IDLES, MOST = 0.92, 1.05  # share of the nameplate: above, empty it drags; above, loaded it is overloaded; judgement
UNCOUPLED = 0.6  # idle current of a motor of this size as a share of its nameplate; judgement
ADDED, ADDED_SPREAD = 0.35, 0.06  # share of the motor's work above which racks drag; free racks add 0.05; judgement
NAMEPLATE = 0.02  # what a nameplate figure is good for; judgement


def racks_work(facts: Facts) -> Finding | Silent | None:
    """Judge the drive's current without and with racks.

    Purpose: an overload that is there empty is motor, reducer or bar; one that comes with the racks is track,
    rails or tables.
    Formula: empty / nameplate above 0.92 drags; else loaded / nameplate above 1.05, or working share added
    above 0.35 of the motor's work, is the racks'.
    Source: circle diagram of the motor, simplified; idle current 60 % of the nameplate and edges are judgement.
    Fires: two_tank_electric_208 (drive_motor_amps = 1.2 A): drive_motor.amps_empty = 0.85 A;
      drive_motor.amps_loaded = 1.4 A -> racks_drag
    Silent: two_tank_electric_208: drive_motor.amps_empty = 0.85 A
    """
    empty, loaded, plate = facts.fresh(EMPTY), facts.fresh(LOADED), facts.plate("drive_motor_amps")
    check = facts.check(WORK)
    if check is None or (empty is None and loaded is None):
        return None
    if empty is None or loaded is None:
        if facts.now(EMPTY) and facts.now(LOADED):
            return None  # both were read and one is spent: what kept this rule silent stands
        return Silent(f"{check.title}: read it without and with racks")
    if plate is None or plate.si <= 0:
        return Silent(f"{check.title}: needs the full-load amps of the conveyor motor")
    first, second = empty.value.si / plate.si, loaded.value.si / plate.si
    error = _error(facts, EMPTY, empty, plate.si, first), _error(facts, LOADED, loaded, plate.si, second)
    if first < 0.1 or second < first - 2 * math.hypot(*error):
        return Silent(f"{check.title}: less current with racks than without, or none: read both again, same wire")
    drags = normal_share((first - IDLES) / error[0])
    added = _work(second) - _work(first)
    heavy = 1 - normal_share((MOST - second) / error[1]) * normal_share((ADDED - added) / ADDED_SPREAD)
    weights = {"in_order": (1 - drags) * (1 - heavy), "drags_empty": drags, "racks_drag": (1 - drags) * heavy}
    outcome = max(weights, key=lambda o: weights[o])
    working = [
        f"Empty {empty.value}: {first * 100:.0f} % of the {plate} nameplate; up to {IDLES * 100:.0f} % is idling.",
        f"Loaded {loaded.value}: {second * 100:.0f} %; up to {MOST * 100:.0f} % is in order.",
        *_work_words(plate.si, empty, loaded),
        f"Racks add {added * 100:.0f} % of the motor's work; up to {ADDED * 100:.0f} % is in order.",
        *facts.assumed("drive_motor_amps"),
    ]
    return facts.conclude(WORK, weights, WORK, [empty, loaded], (), working, _SAYS[outcome])


def _work(share: float) -> float:
    """Share of the motor's rated work at a share of its nameplate current; nothing at or under idling."""
    return working_share(share, UNCOUPLED, 1.0) if share > UNCOUPLED else 0.0


def _work_words(full: float, *readings: Reading) -> list[str]:
    words = [f"Idle current uncoupled taken as {UNCOUPLED * 100:.0f} % of the nameplate (judgement)."]
    for reading in readings:
        if reading.value.si > UNCOUPLED * full:
            words += said("drive-load", "us", current=reading.value.si, idle=UNCOUPLED * full, full=full)
    return words


def _error(facts: Facts, name: str, reading: Reading, full: float, share: float) -> float:
    check = facts.check(name)
    read = spread(check, reading.value, reading) * reading.value.unit.factor if check else 0.03 * reading.value.si
    return math.hypot(read / full, NAMEPLATE * share)


def expected_amps(facts: Facts, check: str) -> Expected | None:
    """What the conveyor motor draws without and with racks."""
    plate = facts.plate("drive_motor_amps")
    if plate is None or plate.si <= 0:
        return None
    least, most = (UNCOUPLED, IDLES) if check == EMPTY else (UNCOUPLED, MOST)
    low, high = (Quantity.of_si(plate.si * share, "current", "A") for share in (least, most))
    stands = "type's figure, assumed" if facts.machine.assumed("drive_motor_amps") else "nameplate"
    working = (
        f"Nameplate {plate} ({stands}).",
        f"{least:g} × {show_number(plate.si)} = {show_number(low.si, 3)} A: uncoupled and free (judgement).",
        f"{most:g} × {show_number(plate.si)} = {show_number(high.si, 3)} A: the most in order (judgement).",
    )
    line = f"{show_number(low.si, 3)} to {show_number(high.si, 3)} A ({plate} nameplate)"
    return Expected((line,), low, high, facts.assumed("drive_motor_amps"), "nameplate; the band is judgement", working)


_SAYS = {
    "in_order": "The drive idles low and the racks add little.",
    "drags_empty": "It is loaded with no rack in it: motor, reducer, chain or bar drags.",
    "racks_drag": "It idles well and the racks load it: track, rails or tables hold them.",
}
