"""Conveyor motor without and with racks: the same amps on other nameplates."""

from __future__ import annotations

import pytest

from diagnose.model import Machine
from diagnose.rules.expected import expected
from tests.rule_examples import book
from tests.rulebook import run

EMPTY, LOADED = "drive_motor.amps_empty", "drive_motor.amps_loaded"


def made(amps: str) -> Machine:
    return Machine("m", book().machines["two_tank_electric_208"], {"drive_motor_amps": amps})


@pytest.mark.parametrize(
    ("empty", "loaded", "plate", "outcome"),
    [
        ("0.85", "0.9", "1.2 A", "in_order"),
        ("0.85", "1.4", "1.2 A", "racks_drag"),
        ("1.25", "1.3", "1.2 A", "drags_empty"),
        ("1.25", "1.3", "1.7 A", "in_order"),
        ("1.25", "1.9", "1.7 A", "racks_drag"),
        ("0.75", "1.15", "1.2 A", "racks_drag"),
    ],
)
def test_racks_work(empty: str, loaded: str, plate: str, outcome: str) -> None:
    (found,) = run(made(plate), (EMPTY, empty), (LOADED, loaded), book=book()).findings
    assert (found.check, found.outcome) == ("drive_motor.racks_work", outcome)
    assert set(found.counts) == {f"{EMPTY} at 0", f"{LOADED} at 0"}


def test_one_of_the_two_goes_by_its_band() -> None:
    done = run(made("1.2 A"), (EMPTY, "1.3"), book=book())
    assert [(f.check, f.outcome, f.rule) for f in done.findings] == [(EMPTY, "high", "plain_band")]


def test_near_the_edge_both_are_open() -> None:
    (found,) = run(made("1.2 A"), (EMPTY, "1.10"), (LOADED, "1.15"), book=book()).findings
    assert 0.2 < found.weights["drags_empty"] < 0.8


def test_less_with_racks_than_without_is_refused() -> None:
    done = run(made("1.2 A"), (EMPTY, "1.1"), (LOADED, "0.4"), book=book())
    assert "drive_motor.racks_work" not in {f.check for f in done.findings}
    assert any("same wire" in f.silent for f in done.firings)


def test_what_is_expected() -> None:
    empty = expected(book(), made("1.2 A"), [], EMPTY)
    assert empty is not None
    assert empty.lines == ("0.72 to 1.1 A (1.2 A nameplate)",)
    assert empty.working[0] == "Nameplate 1.2 A (nameplate)."
