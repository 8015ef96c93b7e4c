"""What is to be expected, for every measured check of every machine type shipped."""

from __future__ import annotations

import pytest

from diagnose.model import Machine, fits, load_book
from diagnose.rules import expected, findings
from diagnose.rules.expected import EXPECTATIONS
from tests.rulebook import BOOK, reading

SHIPPED = load_book()


def test_every_expectation_is_of_a_check_with_a_reading() -> None:
    known = {**SHIPPED.checks, **BOOK.checks}
    assert all(known[name].reading is not None for name in EXPECTATIONS)


@pytest.mark.parametrize("kind", sorted(SHIPPED.machines))
def test_shipped_checks_answered_at_what_is_expected_are_good(kind: str) -> None:
    """A reading in the middle of what stands beside the prompt must be the good outcome."""
    own = Machine("m", SHIPPED.machines[kind])
    for check in SHIPPED.checks.values():
        shown = expected(SHIPPED, own, [], check.id)
        if shown is None or check.reading is None or not fits(own, check.fits):
            continue
        low, high = shown.low, shown.high
        if low is None or high is None:
            continue
        # A shade below the middle: the plate's amps are both the overload's figure and its lower end.
        middle = type(low)(low.value + (high.as_unit(low.unit).value - low.value) * 0.4, low.unit)
        typed = " ".join([str(middle).replace(" ", "")] * max(len(check.reading.each), 1))
        run = findings(SHIPPED, own, [reading(check.id, typed, book=SHIPPED)])
        if check.id == "supply_steam.pipe_heat":
            assert run.findings == ()  # it judges the gauge, and there is none read yet
            continue
        (found,) = run.findings
        assert check.outcomes[found.outcome].good, f"{check.id} at {middle}: {found.weights}"
