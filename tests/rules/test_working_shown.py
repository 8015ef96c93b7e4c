"""Why this number: whatever is expected by computation shows its working, and says which figures are assumed."""

from __future__ import annotations

import pytest

from diagnose.model import Machine, load_book
from diagnose.rules import expected
from diagnose.rules.expected import EXPECTATIONS
from tests.rule_examples import EXAMPLES, read_example

BOOK = load_book()


@pytest.mark.parametrize("kind", sorted(BOOK.machines))
def test_of_a_machine_nothing_was_read_of(kind: str) -> None:
    machine = Machine("m", BOOK.machines[kind])
    shown = {check: expected(BOOK, machine, (), check) for check in EXPECTATIONS}
    told = {check: e for check, e in shown.items() if e is not None}
    assert len(told) >= 5
    silent = [check for check, e in told.items() if not e.working]
    assert not silent, f"no working behind what is expected of {', '.join(silent)}"
    for check, e in ((c, e) for c, e in told.items() if e.low or e.high):  # a sentence says what is needed instead
        text = " ".join((*e.lines, *e.working, *e.assumptions, e.basis))
        assert any(w in text for w in ("assumed", "ype's figure", "governs", "common practice", "judgement", "(")), (
            check
        )


@pytest.mark.parametrize("name", EXAMPLES)
def test_with_the_readings_of_the_rules_examples(name: str) -> None:
    for line in EXAMPLES[name][1]:
        example = read_example(line)
        for check in {r.check for r in example.readings} & set(EXPECTATIONS):
            others = [r for r in example.readings if r.check != check]
            shown = expected(BOOK, example.machine, others, check)
            assert shown is None or shown.working, f"no working behind what is expected of {check}"
