"""What can be read of the conveyor's motor."""

from __future__ import annotations

from diagnose.simulator.bench import Bench
from diagnose.simulator.control import stalls
from diagnose.simulator.looks.pump_motor import amps_by_line, capacitor, insulation_of
from diagnose.simulator.motoring import case_temperature
from diagnose.simulator.registry import look
from diagnose.simulator.senses import Answer

__all__: list[str] = []

_THREE, _ONE = (3,), (1,)
_EMPTY = 0.93  # share of the current that is left without racks: judgement


@look("drive_motor.line_amps", phases=_THREE)
def line_amps(bench: Bench) -> Answer:
    """The conveyor motor's three lines."""
    return amps_by_line(bench, "drive")


@look("drive_motor.line_amps_single", phases=_ONE)
def line_amps_single(bench: Bench) -> Answer:
    """One of its lines."""
    return bench.value("small current clamp", bench.running_amps("drive")[0])


@look("drive_motor.case_temperature")
def case(bench: Bench) -> Answer:
    """As the guard comes off."""
    return bench.value("infrared thermometer", case_temperature(bench, "drive"))


@look("drive_motor.insulation")
def insulation(bench: Bench) -> Answer:
    """Winding to frame."""
    return insulation_of(bench, "drive")


@look("drive_motor.winding_ohms")
def winding_ohms(bench: Bench) -> Answer:
    """Pairs of leads."""
    if bench.sign("drive motor growls") > 0.0:
        return bench.seen("uneven", "even", sure=0.93)
    return bench.noticed("drive leads joined wrong", "other_joining", "even", sure=0.96)


@look("drive_motor.nameplate_look")
def nameplate_look(bench: Bench) -> Answer:
    """Power, rpm and joined leads."""
    return bench.strongest(
        "fits",
        0.97,
        drive_leads_joined_wrong="joined_wrong",
        drive_motor_smaller_or_faster="smaller_faster",
        drive_motor_other_rpm="smaller_faster",
    )


@look("drive_motor.idle_stroke")
def idle_stroke(bench: Bench) -> Answer:
    """The conveyor run empty."""
    if not bench.restarted.moving or stalls(bench.plant, "drive"):
        return bench.seen("stops", sure=0.97)
    return bench.strongest(
        "smooth",
        0.94,
        track_groans_at_one_place="jerks",
        reducer_whines="whines",
        drive_bearing_rumbles="whines",
        drive_chain_tight_and_rumbles="whines",
    )


@look("drive_motor.turn_by_hand")
def turn_by_hand(bench: Bench) -> Answer:
    """What is heavy, part by part."""
    return bench.strongest(
        "all_light",
        0.96,
        track_groans_at_one_place="bar_heavy",
        reducer_whines="reducer_heavy",
        drive_bearing_rumbles="motor_heavy",
        drive_chain_tight_and_rumbles="chain_heavy",
        drive_brake_holds="brake_holds",
    )


@look("drive_motor.brake_lever")
def brake_lever(bench: Bench) -> Answer:
    """The brake, if there is one."""
    return bench.noticed("drive brake holds", "holds", "frees", sure=0.97)


@look("drive_motor.chain_slack")
def chain_slack(bench: Bench) -> Answer:
    """The slack strand."""
    return bench.strongest("right", 0.96, drive_chain_tight_and_rumbles="too_tight", drive_chain_slack="too_slack")


@look("drive_motor.capacitor_share", phases=_ONE)
def capacitor_share(bench: Bench) -> Answer:
    """The conveyor motor's capacitor."""
    return capacitor(bench, "drive capacitor weak")


@look("drive_motor.motor_hertz")
def motor_hertz(bench: Bench) -> Answer:
    """Frequency at its terminals: a controller that is turned makes its own."""
    share = 1.0
    if bench.sign("speed dial low") > 0.0 or bench.sign("speed dial high") > 0.0:
        share = bench.plant.conveyor.pace
    return bench.value("counter", bench.plant.power.frequency * share)


@look("drive_motor.speed_setting")
def speed_setting(bench: Bench) -> Answer:
    """The dial against its mark."""
    return bench.strongest("none_or_at_mark", 0.97, speed_dial_low="below", speed_dial_high="above")


def _worst(bench: Bench) -> float:
    return max(bench.running_amps("drive"))


@look("drive_motor.amps_empty")
def amps_empty(bench: Bench) -> Answer:
    """Without a rack in the machine."""
    return bench.value("small current clamp", _EMPTY * _worst(bench))


@look("drive_motor.amps_loaded")
def amps_loaded(bench: Bench) -> Answer:
    """Full of loaded racks."""
    return bench.value("small current clamp", _worst(bench) * 1.03)
