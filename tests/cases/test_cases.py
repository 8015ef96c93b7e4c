"""Each technician's case puts the right cause first, and says why."""

from __future__ import annotations

import pytest

from diagnose.batch.cases import uncovered
from tests.cases.harness import TechnicianCase, all_cases, assessment, shipped

CASES = [pytest.param(case, id=case.name) for case in all_cases()]


@pytest.mark.parametrize("case", CASES)
def test_the_right_cause_comes_first(case: TechnicianCase) -> None:
    rows = assessment(case.name).rows
    top = [row.id for row in rows[:3]]
    shown = "\n".join(f"{row.probability:6.1%} {row.id}" for row in rows[:6])
    if case.first:
        assert top[0] == case.first, f"{case.data.get('tells')}\n{shown}"
    if case.first_two:
        assert top[0] in case.first_two, f"{case.data.get('tells')}\n{shown}"
        assert set(top[:2]) & set(case.first_two), shown
    for cause in case.first_three:
        assert cause in top, f"{case.data.get('tells')}\n{shown}"


@pytest.mark.parametrize("case", CASES)
def test_a_case_says_one_thing_and_why(case: TechnicianCase) -> None:
    said = [bool(case.first), bool(case.first_two), bool(case.first_three)]
    assert sum(said) == 1
    assert len(case.why) > 20
    assert case.data.get("tells")
    known = {*shipped().causes, *(f"unlisted.{c}" for c in shipped().complaints)}
    assert {case.first or "", *case.first_two, *case.first_three} - {""} <= known


@pytest.mark.parametrize("case", CASES)
def test_every_reading_of_a_case_is_used(case: TechnicianCase) -> None:
    """A case whose readings no rule answers would pass for the wrong reason."""
    run = assessment(case.name).run
    assert [u.why for u in run.unanswered] == []


def test_every_cause_comes_first_in_some_case_and_every_complaint_has_one() -> None:
    assert [str(p) for p in uncovered(shipped(), all_cases())] == []


def test_there_are_enough_and_every_complaint_has_its_share() -> None:
    cases = all_cases()
    assert len(cases) >= 260
    for complaint in shipped().complaints:
        assert sum(complaint in case.data["complaints"] for case in cases) >= 8
    assert sum(bool(case.first_three) for case in cases) >= 4  # two faults together
    no_fault = [c for c in cases if c.first and c.first in shipped().causes and shipped().causes[c.first].no_fault]
    assert len(no_fault) >= 3
