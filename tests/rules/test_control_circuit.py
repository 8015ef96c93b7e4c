"""Control volts along the chain: the first place behind which they are gone, and what is no place at all."""

from __future__ import annotations

import pytest

from diagnose.model import Finding, Machine, load_book
from diagnose.rules import RuleRun, expected
from diagnose.rules.engine import run as run_engine
from diagnose.rules.registry import RULES
from tests.rulebook import reading
from tests.rulebook import run as run_rules

BOOK = load_book()
CHAIN = "control_circuit.chain_volts"


def _machine(volts: str = "120 V") -> Machine:
    return Machine("m", BOOK.machines["two_tank_electric_208"], {"control_volts": volts})


def _run(text: str, volts: str = "120 V") -> RuleRun:
    return run_rules(_machine(volts), (CHAIN, text), book=BOOK)


def _found(text: str, volts: str = "120 V") -> Finding:
    return _run(text, volts).findings[0]


@pytest.mark.parametrize(
    ("volts", "outcome"),
    [
        ("120 120 119 119 119 119 119 119", "all_through"),
        ("0 0 0 0 0 0 0 0", "none_at_transformer"),
        ("121 0 0 0 0 0 0 0", "lost_at_fuse"),
        ("121 121 1 0 0 0 0 0", "lost_at_switch"),
        ("120 120 120 2 0 0 0 0", "lost_at_stops"),
        ("120 120 120 120 14 12 8 8", "lost_at_doors"),  # stray volts of a wet cable
        ("120 120 120 120 120 0 0 0", "lost_at_overloads"),
        ("120 120 120 120 119 119 0 0", "lost_at_permits"),
        ("120 120 120 120 119 119 119 0", "lost_at_start"),
        ("120 120 120 120 84 84 84 84", "poor_contact"),
        ("94 94 94 94 94 94 94 94", "weak_from_start"),  # 78 % of 120 V
        ("94 94 94 94 0 0 0 0", "lost_at_doors"),  # weak, and open all the same
    ],
)
def test_the_place_where_they_end(volts: str, outcome: str) -> None:
    found = _found(volts)
    assert found.outcome == outcome
    assert found.weights[outcome] > 0.8


def test_the_same_volts_on_another_plate() -> None:
    """24 V are all of one circuit and hardly more than stray volts of another."""
    chain = "24 24 24 24 24 24 24 24"
    assert _found(chain, "24 V").outcome == "all_through"
    assert _found(chain, "120 V").outcome == "none_at_transformer"
    assert _found("110 110 110 110 110 110 110 110", "240 V").outcome == "weak_from_start"


def test_near_an_edge_both_have_weight() -> None:
    weights = _found("120 120 120 120 108 108 108 108").weights  # a tenth lost at the doors
    assert 0.3 < weights["poor_contact"] < 0.7
    weights = _found("102 102 102 102 102 102 102 102").weights  # 85 % at the transformer
    assert 0.3 < weights["weak_from_start"] < 0.7


def test_volts_do_not_come_back() -> None:
    done = _run("120 120 0 0 0 0 120 120")
    assert done.findings == ()
    assert "before it cannot be" in done.unanswered[0].why


def test_silent_without_the_plate() -> None:
    assert _run("120 120 120 120 120 120 120 120", "0 V").findings == ()


def test_working_names_the_place() -> None:
    working = _found("120 120 120 120 6 0 0 0").working
    assert any(line.startswith("doors: 6 V, 5 %: gone") for line in working)
    assert not any(line.startswith("overloads") for line in working)


def test_expected_of_the_plate() -> None:
    shown = expected(BOOK, _machine("24 V"), [], CHAIN)
    assert shown is not None
    assert shown.lines[0].startswith("20.4 to 26.4 V")
    assert "under 7.2 V behind a place" in shown.lines[1]


def test_no_band_answers_in_its_place() -> None:
    typed = [reading(CHAIN, "120 120 120 120 0 0 0 0", book=BOOK)]
    assert run_engine(BOOK, _machine(), typed, [r for r in RULES if r.name == "plain_band"]).findings == ()
