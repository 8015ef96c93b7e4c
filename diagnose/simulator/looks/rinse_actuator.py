"""What can be read of what calls for the final rinse."""

from __future__ import annotations

from diagnose.simulator.bench import Bench
from diagnose.simulator.looks.rinse_valve import has_coil
from diagnose.simulator.registry import look
from diagnose.simulator.rinsing import commanded, rest_flow
from diagnose.simulator.senses import Answer

__all__: list[str] = []

_RACKS = ("pawl bar", "chain")


@look("rinse_actuator.rinse_end")
def rinse_end(bench: Bench) -> Answer:
    """How long the rinse goes on after the rack."""
    share = rest_flow(bench) / bench.plant.rinse.rated_flow
    if share > 0.5:
        return bench.seen("never", sure=1.0)
    if share > 0.01:
        return bench.seen("tails_off", "ends_with_rack", sure=0.95)
    if bench.plant.rinse.run_over > 4.0:
        return bench.seen("five_and_more", "ends_with_rack", sure=0.96)
    return bench.seen("ends_with_rack", "tails_off", sure=0.96)


@look("rinse_actuator.arm_swing")
def arm_swing(bench: Bench) -> Answer:
    """The rinse arm pushed over and let go."""
    return bench.strongest("springs_home", 0.95, rinse_arm_hangs="hangs", rinse_arm_flops="flops")


@look("rinse_actuator.coil_volts", has_coil)
def coil_volts(bench: Bench) -> Answer:
    """Volts across the coil without a rack, and with the switch's wire off."""
    if not commanded(bench, rack=False):
        return bench.seen("no_volts", sure=0.99)
    past = max(
        bench.sign("rinse relay stays in"), bench.sign("rinse hand switch on"), bench.sign("filling by the rinse")
    )
    return bench.seen("stays_without_switch" if past > 0.15 else "gone_with_switch", sure=1.0)


@look("rinse_actuator.switch_contact", has_coil)
def switch_contact(bench: Bench) -> Answer:
    """The rinse switch followed with a meter."""
    return bench.strongest(
        "follows_arm", 0.97, rinse_switch_stays_made="stays_made", rinse_switch_stays_open="stays_open"
    )


@look("rinse_actuator.rinse_run", conveyor=_RACKS)
def rinse_run(bench: Bench) -> Answer:
    """Seconds of spray for one rack alone."""
    line, belt = bench.plant.rinse, bench.plant.conveyor
    if line.actuator == "dead" or line.valve_opens <= 0.0:
        return bench.value("watch", 0.0)
    if line.actuator == "held":
        return bench.value("watch", 300.0)
    speed = max(belt.speed * belt.pace, 1e-3)
    return bench.value("watch", bench.plant.plate["rack_length"] / speed + line.run_over)


@look("rinse_actuator.arm_watched")
def arm_watched(bench: Bench) -> Answer:
    """Whether racks move the arm its whole way."""
    return bench.noticed("rinse arm missed by racks", "missed", "whole_way", sure=0.96)


@look("rinse_actuator.coil_volts_rack", has_coil)
def coil_volts_rack(bench: Bench) -> Answer:
    """Volts across the coil with a rack that holds the arm over."""
    plate, power = bench.plant.plate, bench.plant.power
    share = min(bench.rinsing.standing.volts) / plate["volts"] * power.control_share
    volts = plate["control_volts"] * share if commanded(bench, rack=True) else 0.4
    return Answer({"": max(0.0, bench.senses.measure("voltmeter", volts))})


@look("rinse_actuator.command_chain", has_coil)
def command_chain(bench: Bench) -> Answer:
    """Where the control volts end along the rinse's command, a rack in."""
    if commanded(bench, rack=True):
        return bench.seen("to_the_coil", sure=0.98)
    return bench.strongest(
        "at_switch",
        0.96,
        rinse_held_back="before_switch",
        rinse_arm_missed_by_racks="at_switch",
        rinse_switch_stays_open="at_switch",
        rinse_relay_does_not_make="at_relay",
        rinse_lead_broken="in_lead",
    )


@look("rinse_actuator.conditions")
def conditions(bench: Bench) -> Answer:
    """Whether the conveyor runs and every tank is ready."""
    waits = bench.sign("rinse held back") > 0.15 or not bench.rinsing.moving
    return bench.seen("waiting" if waits else "all_ready", "all_ready", sure=0.97)


@look("rinse_actuator.under_arms")
def under_arms(bench: Bench) -> Answer:
    """What keeps the rinse on: a rack, a hand switch, a filling tank."""
    return bench.strongest(
        "nothing",
        0.97,
        rack_parked_in_the_rinse="rack_there",
        rinse_hand_switch_on="hand_switch",
        filling_by_the_rinse="filling",
    )
