"""Chosen outcomes: taken as seen, one finding per check."""

from __future__ import annotations

from tests.rulebook import machine, run


def test_fires_on_what_was_chosen() -> None:
    found = run(machine(), ("pump.look", "turns_right")).findings[0]
    assert (found.outcome, found.says) == ("turns_right", "pump.look: turns_right.")


def test_silent_on_measured_values() -> None:
    assert run(machine(), ("wash.tank", "160")).findings[0].rule == "plain_band"
