"""Forward chaining: salience, spending, stages, and what is left over."""

from __future__ import annotations

import pytest

from diagnose.model import Finding, Reading
from diagnose.rules import RULES, Facts, Rule, Silent, findings
from diagnose.rules.engine import run as run_rules
from tests.rulebook import BOOK, machine, reading, run

PANEL, INLET, AMPS = "rinse_thermometer.panel_reading", "supply_water.inlet_temperature", "booster_electric.line_amps"


def test_a_higher_rule_takes_the_reading_from_the_plain_band() -> None:
    done = run(machine(), (PANEL, "159"), (INLET, "110"))
    assert {f.check for f in done.findings} == {INLET, "booster_electric.heat_balance"}


def test_findings_serve_other_rules_whatever_the_order_typed() -> None:
    one = run(machine(), (PANEL, "172"), (INLET, "140"), (AMPS, "48 48 83")).findings
    other = run(machine(), (AMPS, "48 48 83"), (INLET, "140"), (PANEL, "172")).findings
    assert {f.check: dict(f.weights) for f in one} == {f.check: dict(f.weights) for f in other}


def test_newest_reading_of_a_check_wins_at_each_stage() -> None:
    typed = [reading(PANEL, t, s, name=n) for t, s, n in (("150", 0, "a"), ("185", 0, "b"), ("170", 1, "c"))]
    done = findings(BOOK, machine(), typed)
    assert [(f.counts, f.outcome, f.stage) for f in done.findings] == [(("b",), "good", 0), (("c",), "low", 1)]
    assert done.unanswered == ()


def test_why_can_be_answered_to_the_last_reading() -> None:
    done = run(machine(), (PANEL, "172"), (INLET, "140"), (AMPS, "48 48 83"))
    firing = done.by_reading(f"{PANEL} at 0")
    assert firing is not None
    assert firing.rule == "booster_electric.heat_balance"
    assert set(firing.consults) == {f"{INLET} at 0", f"{AMPS} at 0"}
    assert done.by_reading("never taken") is None


def test_unanswered_readings_say_why() -> None:
    stray = [
        Reading("a", "no.check", outcome="x"),
        reading(AMPS, "48 48 83", name="b"),
        Reading("c", "pump.look", outcome="sings"),
    ]
    why = {u.reading.id: u.why for u in findings(BOOK, machine("steam"), stray).unanswered}
    assert why["a"] == "no check no.check is known"
    assert "does not belong to this machine" in why["b"]
    assert "no outcome sings" in why["c"]


def test_chosen_outcome_has_weight_one() -> None:
    found = run(machine(), ("pump.look", "turns_backwards")).findings[0]
    assert found.weights == {"turns_backwards": 1.0}
    assert found.rule == "chosen_outcome"


def test_measured_check_may_be_answered_by_an_outcome() -> None:
    assert run(machine(), (AMPS, "one_line_out")).findings[0].weights == {"one_line_out": 1.0}


def test_nonsense_ends_in_a_sentence() -> None:
    done = run(machine(), (AMPS, "-5 48 83"), ("pump_motor.line_amps", "-6.8 6 9"))
    assert done.findings == ()
    assert all(len(u.why) > 20 for u in done.unanswered)


def test_two_readings_of_one_id_are_refused() -> None:
    with pytest.raises(ValueError, match="same id"):
        findings(BOOK, machine(), [reading(PANEL, "170", name="a"), reading(INLET, "140", name="a")])


def test_a_rule_that_counts_nothing_is_a_mistake_in_itself() -> None:
    def greedy(facts: Facts) -> Finding | Silent | None:
        return Finding(PANEL, {"low": 1.0}, "greedy", counts=())

    with pytest.raises(RuntimeError, match="greedy"):
        run_rules(BOOK, machine(), [reading(PANEL, "170")], [Rule("greedy", 1, greedy)])


def test_every_rule_has_a_manual_page() -> None:
    for rule in RULES:
        for part in ("Purpose:", "Formula:", "Fires:", "Silent:"):
            assert part in rule.manual, f"{rule.name} lacks {part}"
    assert len({r.name for r in RULES}) == len(RULES)
    assert min(RULES, key=lambda r: r.salience).name in ("plain_band", "chosen_outcome")
