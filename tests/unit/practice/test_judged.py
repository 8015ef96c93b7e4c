"""The judge in small: the tool's advice works a few jobs on simulated machines that never saw a likelihood.

The whole judge, over every fault, is run by hand: `python -m tests.bench.judge`.
"""

from __future__ import annotations

import pytest

from diagnose.model import load_book
from diagnose.practice.exercise import Exercise
from tests.bench.judging.jobs import Job, complaints_of
from tests.bench.judging.played import Outcome, play

BOOK = load_book()
JOBS = [
    ("booster_electric.element_open", "two_tank_electric_208"),
    ("rinse_arms.jets_limed", "single_tank_chemical_208"),
    ("level_control.fill_valve_limed", "single_tank_electric_208"),
    ("tank_heater_gas.manifold_low", "single_tank_gas_208"),
    ("conveyor_bar_pawls.pawl_broken", "two_tank_electric_240"),
    ("operation.stacked_wet", "two_tank_electric_208"),
]


def _job(cause: str, machine: str) -> Job:
    silent = Exercise(seed=4, level=3, machine=machine, own={}, faults=[(cause, 0.7)], complaint="")
    said = complaints_of(BOOK, silent)
    return Job(Exercise(seed=4, level=3, machine=machine, own={}, faults=silent.faults, complaint=said[0]), said)


@pytest.fixture(scope="module")
def outcomes() -> list[Outcome]:
    return [play(BOOK, _job(cause, machine), "advice") for cause, machine in JOBS]


def test_the_true_cause_mostly_leads_at_the_stop_and_is_repaired(outcomes: list[Outcome]) -> None:
    missed = [(o.job.causes, o.first, o.path) for o in outcomes if not (o.top1 and o.solved)]
    assert len(missed) <= 1, missed


def test_hardly_anything_sound_is_repaired(outcomes: list[Outcome]) -> None:
    assert sum(len(o.wrong) for o in outcomes) <= 2, [(o.job.causes, o.wrong) for o in outcomes]
