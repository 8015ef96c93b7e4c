"""Whatever is read, in whatever order and stage: a reading is counted once, and weights are shares."""

from __future__ import annotations

import math

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from diagnose.model import Book, Machine, Reading, fits, load_book
from diagnose.rules import expected, findings
from diagnose.units import Quantity, find_unit
from tests.rulebook import BOOK, machine

SHIPPED = load_book()
# From nothing to far too much, in the unit a check is asked in.
VALUES = st.one_of(st.just(0.0), st.floats(-5, 400, allow_nan=False), st.floats(0, 1e9, allow_nan=False))

_USUAL = {"temperature": 150.0, "voltage": 210.0, "current": 20.0}


@st.composite
def taken(draw: st.DrawFn, book: Book) -> list[Reading]:
    checks = draw(st.lists(st.sampled_from(sorted(book.checks)), max_size=14))
    readings = []
    for nth, name in enumerate(checks):
        check, stage = book.checks[name], draw(st.integers(0, 2))
        if check.reading is None or draw(st.integers(0, 9)) == 0:
            readings.append(
                Reading(f"r{nth}", name, outcome=draw(st.sampled_from(sorted(check.outcomes))), stage=stage)
            )
            continue
        unit = find_unit(check.reading.unit, check.reading.quantity)
        assert unit is not None
        values = {label: Quantity(draw(VALUES), unit) for label in check.reading.each or [""]}
        readings.append(Reading(f"r{nth}", name, values, stage=stage))
    return readings


def _holds(book: Book, readings: list[Reading], machine_: Machine) -> None:
    done = findings(book, machine_, readings)
    spent = [r for f in done.findings for r in f.counts]
    assert len(spent) == len(set(spent))
    assert not set(spent) & {u.reading.id for u in done.unanswered}
    newest = {(r.stage, r.check): r.id for r in readings}
    assert set(spent) | {u.reading.id for u in done.unanswered} == set(newest.values())
    assert len({(f.stage, f.check) for f in done.findings}) == len(done.findings)
    for found in done.findings:
        assert math.isclose(sum(found.weights.values()), 1.0)
        assert set(found.weights) <= set(book.checks[found.check].outcomes)
        assert not set(found.counts) & set(found.consults)
        assert found.says
        assert all(r.stage <= found.stage for r in readings if r.id in found.consults)
        assert fits(machine_, book.checks[found.check].fits)


@settings(max_examples=600, deadline=None)
@given(taken(BOOK), st.sampled_from(["delta", "wye", "single", "steam", "gas", "chemical"]))
def test_small_book(readings: list[Reading], kind: str) -> None:
    _holds(BOOK, readings, machine(kind))


@settings(max_examples=400, deadline=None)
@given(taken(SHIPPED), st.sampled_from(sorted(SHIPPED.machines)), st.sampled_from(sorted(SHIPPED.checks)))
def test_shipped_book(readings: list[Reading], kind: str, check: str) -> None:
    own = Machine("m", SHIPPED.machines[kind])
    _holds(SHIPPED, readings, own)
    shown = expected(SHIPPED, own, readings, check)
    assert shown is None or all(line.strip() for line in shown.lines)


@pytest.mark.parametrize("kind", sorted(SHIPPED.machines))
@pytest.mark.parametrize("factor", [0.5, 1.0, 1.5])
def test_everything_that_can_be_measured_was(kind: str, factor: float) -> None:
    """Rules that read the same thing in two ways must not both count it, nor say the same twice."""
    own = Machine("m", SHIPPED.machines[kind])
    measured = [c for c in SHIPPED.checks.values() if c.reading is not None and fits(own, c.fits)]
    assert len(measured) > 50
    readings = []
    for nth, check in enumerate(measured):
        assert check.reading is not None
        unit = find_unit(check.reading.unit, check.reading.quantity)
        assert unit is not None
        values = {
            place: Quantity(_USUAL.get(check.reading.quantity, 20.0) * factor, unit)
            for place in check.reading.each or [""]
        }
        readings.append(Reading(f"r{nth}", check.id, values))
    _holds(SHIPPED, readings, own)
