"""Faults of the timer that keeps the conveyor running after the last rack."""

from __future__ import annotations

from diagnose.simulator.plant import Plant
from diagnose.simulator.registry import fault

__all__: list[str] = []

_RACKS = ("pawl bar", "chain")
_STOPPED = "Its contact stands in the conveyor's circuit, so the conveyor stands while pumps go on."
# Gaps, travels, ohms of wet contacts, times and how marked a sign is: judgement throughout.


@fault(
    "run_timer.set_short",
    (
        "The run timer is set too short.",
        "After a batch the conveyor stands before the last rack is out.",
        "The next rack starts it again and carries that one on.",
    ),
    onset="installed",
    after="electrical work",
)
def set_short(plant: Plant, severity: float) -> None:
    """Two thirds of the plate's seconds, or a third."""
    plant.conveyor.timer.run_on *= 0.72 - 0.38 * severity


@fault(
    "run_timer.timer_failing",
    (
        "The run timer no longer keeps its time.",
        "One run-on is long and the next short.",
        "So the last rack comes out one time and stays in the next.",
    ),
    onset="comes and goes",
)
def timer_failing(plant: Plant, severity: float) -> None:
    """Ten seconds and more apart."""
    timer = plant.conveyor.timer
    timer.spread = min(0.8, 0.35 + 0.4 * severity) * timer.run_on
    plant.signs["run timer wavers"] = 0.5 + 0.5 * severity


@fault(
    "run_timer.lever_misses",
    (
        "The lever that starts the run timer does not feel every rack.",
        "Under a low rack it is not lifted, and the time runs on from the rack before.",
        "The conveyor stops as if none were there.",
    ),
    onset="comes and goes",
)
def lever_misses(plant: Plant, severity: float) -> None:
    """Low racks, or those on one side."""
    plant.conveyor.timer.misses = 0.25 + 0.4 * severity
    plant.signs["timer lever bent"] = 0.6 + 0.4 * severity


@fault(
    "run_timer.waits_for_rack",
    (
        "The run timer has switched pumps and conveyor off, as it is meant to.",
        "No rack has lifted its lever for longer than its time.",
        "The next rack starts everything.",
    ),
    onset="installed",
    after="newly connected",
    conveyor=_RACKS,
)
def waits_for_rack(plant: Plant, severity: float) -> None:
    """Nothing is wrong."""
    plant.signs["waits for a rack"] = 0.7 + 0.3 * severity


@fault(
    "run_timer.start_switch_dead",
    ("The switch behind the timer's lever never closes.", "No rack ever tells the timer to run.", _STOPPED),
    after="cleaning by the crew",
    conveyor=_RACKS,
)
def start_switch_dead(plant: Plant, severity: float) -> None:
    """A crushed cable."""
    plant.conveyor.timer.dead = True
