"""How the conveyor is pulled, where its drive gives way, and which contact of its stop circuit stands open.

Pulls are counted over the sound one of a full machine, which is some 25 lbf at the racks.
"""

from __future__ import annotations

from diagnose.simulator.conveyor_parts import JamSwitch, TableSwitch
from diagnose.simulator.parts import Conveyor

__all__ = [
    "ARM",
    "DROPS_OUT",
    "PULL",
    "bar_share",
    "creeps",
    "drive_load",
    "held_hard",
    "jam_open",
    "jumps",
    "pull",
    "slips",
    "stands_open",
    "table_open",
]

PULL = 111.0  # N, 25 lbf: four loaded racks on a wet track; judgement
ARM = 1.05e-3  # m that the torque arm gives for each unit of pull; judgement
DROPS_OUT = 300.0  # ohm in series at which a contactor's coil lets go; judgement, small coils of 120 V
_PEAK, _LEAST = 1.15, 0.75  # greatest and least pull of a stroke over its mean; judgement
_EMPTY = 0.45  # pull without racks; judgement
_FRICTION = 0.27  # of a sound track
_SLIDES = 0.6  # of its travel that a belt loses for each unit of pull over its grip; judgement
_HELD_DRIVE_SAG, _HELD_SAG = 0.045, 0.046  # m/m of sag up to which teeth hold a chain; judgement, over the limits
_WORN = 0.022  # wear from which links ride up the teeth; common practice says 2 %


def pull(belt: Conveyor, full: bool = True) -> float:
    """Mean pull on the drive, the machine full of racks or empty."""
    if not full:
        return _EMPTY + belt.stiff
    heavy = max(0.0, belt.flights.load - 1.0) * 3.0  # a belt loaded over its plate; judgement
    return _EMPTY + (1.0 - _EMPTY) * belt.track.friction / _FRICTION + belt.drag + heavy


def slips(belt: Conveyor, full: bool = True) -> float:
    """Share of its travel that the clutch loses: 1 where it can't even hold the least pull of a stroke."""
    mean = pull(belt, full)
    most, least = _PEAK * mean, _LEAST * mean
    return min(1.0, max(0.0, (most - belt.slips_at) / (most - least)))


def creeps(belt: Conveyor, full: bool = True) -> float:
    """Share of its travel that a sliding belt of the drive loses."""
    return min(0.5, max(0.0, _PEAK * pull(belt, full) - belt.drive.grips) * _SLIDES)


def jumps(belt: Conveyor, full: bool = True) -> float:
    """Share of its travel that chains lose by jumping teeth."""
    chains, drive = belt.chains, belt.drive
    loose = 6.0 * max(0.0, drive.sag - _HELD_DRIVE_SAG) + 5.0 * max(0.0, chains.sag - _HELD_SAG)
    worn = 8.0 * max(0.0, min(chains.wear) - _WORN) + 0.25 * chains.hooked
    return min(0.6, (loose + worn) * pull(belt, full))


def bar_share(belt: Conveyor, full: bool = True) -> float:
    """Speed of bar, chain or belt over the plate's, as long as the motor turns and nothing holds it off."""
    if belt.drive.parted:
        return 0.0
    lost = 1.0 - (1.0 - slips(belt, full)) * (1.0 - creeps(belt, full)) * (1.0 - jumps(belt, full))
    return belt.pace * (1.0 - lost) if lost < 0.97 else 0.0


def drive_load(belt: Conveyor) -> float:
    """What the motor has to pull, the machine full."""
    if belt.drive.parted:
        return 0.15 if belt.drive.parted == "coupling" else 0.3  # the reducer alone; judgement
    return min(pull(belt), belt.slips_at)


def held_hard(belt: Conveyor, bears: float) -> str:
    """What gives way where a rack is held by what bears so much pull: jam, clutch, drive, or rack."""
    most = pull(belt) + bears
    trips = belt.jam.gap / ARM
    if not belt.jam.bridged and most > trips and trips < belt.slips_at:
        return "jam"
    if most > belt.slips_at:
        return "clutch"
    return "drive" if most > 4.0 else "rack"  # a pull that stalls the motor; judgement


def jam_open(switch: JamSwitch) -> bool:
    """Whether the jam switch holds the conveyor off for good."""
    return (switch.stays or switch.holds) and not switch.bridged


def table_open(switch: TableSwitch) -> bool:
    """Whether the table's switch holds the conveyor off for good."""
    if switch.contact == "bridged" or switch.jumped:
        return False
    return (switch.pressed != "") != (switch.contact == "reversed")


def stands_open(belt: Conveyor) -> str:
    """The contact of the stop circuit that holds the conveyor off for good: jam, table, timer, "" for none."""
    if jam_open(belt.jam):
        return "jam"
    if table_open(belt.table):
        return "table"
    return "timer" if belt.timer.dead else ""
