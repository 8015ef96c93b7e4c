"""The pipe against the gauge: the same heat is right for one pressure and a lying gauge at another."""

from __future__ import annotations

import pytest

from diagnose.model import Machine
from diagnose.rules.expected import expected
from tests.rule_examples import book
from tests.rulebook import reading, run

GAUGE, PIPE = "supply_steam.pressure_at_machine", "supply_steam.pipe_heat"


def machine() -> Machine:
    return Machine("m", book().machines["two_tank_steam_208"], {"steam_pressure": "20 psi"})


@pytest.mark.parametrize(
    ("psi", "pipe", "outcome"),
    [
        ("20 psi", "254 F", "agrees"),  # 259 °F at 20 psi
        ("5 psi", "254 F", "hotter"),  # 227 °F at 5 psi
        ("45 psi", "254 F", "cooler"),  # 292 °F at 45 psi
        ("20 psi", "140 F", "cooler"),
        ("1.4 bar", "123 C", "agrees"),  # 126 °C at 1.4 bar
    ],
)
def test_pipe_against_gauge(psi: str, pipe: str, outcome: str) -> None:
    done = run(machine(), (GAUGE, psi), (PIPE, pipe), book=book())
    found = next(f for f in done.findings if f.check == PIPE)
    assert found.outcome == outcome
    assert found.counts == (f"{PIPE} at 0",)
    assert found.consults == (f"{GAUGE} at 0",)


def test_a_shade_apart_is_no_verdict() -> None:
    """240 °F beside 20 psi: 14 F° under what is expected, as near to one side as to the other."""
    done = run(machine(), (GAUGE, "20 psi"), (PIPE, "240 F"), book=book())
    found = next(f for f in done.findings if f.check == PIPE)
    assert 0.2 < found.weights["agrees"] < 0.8


def test_expected_by_the_plate_and_by_the_gauge() -> None:
    by_plate = expected(book(), machine(), [], PIPE)
    by_gauge = expected(book(), machine(), [reading(GAUGE, "10 psi", book=book())], PIPE)
    assert by_plate is not None
    assert by_gauge is not None
    assert "254 °F" in by_plate.lines[0]
    assert "234 °F" in by_gauge.lines[0]
