"""Suction before the fan together with the flow: the same suction, other flows and plates."""

from __future__ import annotations

import pytest

from diagnose.model import Machine
from diagnose.rules.expected import expected
from tests.rule_examples import book
from tests.rulebook import reading, run

IN, OUT, SUCTION = "vent_dampers.flow_entrance", "vent_dampers.flow_exit", "exhaust_fan.suction"


def made(entrance: str = "200 cfm", exit_: str = "400 cfm") -> Machine:
    own = {"vent_entrance": entrance, "vent_exit": exit_}
    return Machine("m", book().machines["two_tank_electric_208"], own)


def outcome(machine: Machine, entrance: str, exit_: str, suction: str) -> str:
    done = run(machine, (IN, entrance), (OUT, exit_), (SUCTION, suction), book=book())
    return next(f for f in done.findings if f.check == SUCTION).outcome


@pytest.mark.parametrize(
    ("entrance", "exit_", "suction", "wanted"),
    [
        ("200", "400", "0.4", "usual"),
        ("110", "230", "0.6", "strong"),
        ("110", "230", "0.1", "weak"),
        ("200", "400", "0.08", "weak"),
        ("200", "400", "1.2", "strong"),
    ],
)
def test_suction_by_flow(entrance: str, exit_: str, suction: str, wanted: str) -> None:
    assert outcome(made(), entrance, exit_, suction) == wanted


def test_same_readings_other_plate() -> None:
    """340 cfm are all that is wanted on the smaller machine, and a half of it on the larger."""
    assert outcome(made("110 cfm", "230 cfm"), "110", "230", "0.5") == "usual"
    assert outcome(made(), "110", "230", "0.5") == "strong"


def test_without_the_flows_the_plain_band_answers() -> None:
    done = run(made(), (SUCTION, "0.6"), book=book())
    assert [(f.check, f.outcome, f.rule) for f in done.findings] == [(SUCTION, "usual", "plain_band")]


def test_flows_are_consulted_only() -> None:
    done = run(made(), (IN, "110"), (OUT, "230"), (SUCTION, "0.6"), book=book())
    found = next(f for f in done.findings if f.check == SUCTION)
    assert found.counts == (f"{SUCTION} at 0",)
    assert set(found.consults) == {f"{IN} at 0", f"{OUT} at 0"}


def test_near_the_edge_both_are_open() -> None:
    done = run(made(), (IN, "160"), (OUT, "320"), (SUCTION, "0.5"), book=book())
    found = next(f for f in done.findings if f.check == SUCTION)
    assert 0.1 < found.weights["strong"] < 0.9


def test_what_is_expected_follows_the_flow() -> None:
    taken = [reading(IN, "100", book=book()), reading(OUT, "200", book=book())]
    shown = expected(book(), made(), taken, SUCTION)
    assert shown is not None
    assert shown.lines[0].startswith("0.05 to 0.2 inWG at the flow read")
    assert shown.working[-1] == "0.8 inWG × (300 ÷ 600)² = 0.2 inWG"
    plain = expected(book(), made(), [], SUCTION)
    assert plain is not None
    assert plain.lines == ("0.2 to 0.8 inWG at the flow wanted",)
