"""Each technician's case puts the right cause first, and says why."""

from __future__ import annotations

from functools import cache

import pytest

from diagnose.batch.cases import uncovered
from diagnose.inference import concerned, solve
from tests.cases.exact import CAUSES, cut, enumerated
from tests.cases.harness import TechnicianCase, all_cases, assessment, shipped
from tests.each import holds_for_each


# One case after the other, so that each is worked out once.
@pytest.fixture(scope="module", params=[pytest.param(case, id=case.name) for case in all_cases()])
def case(request: pytest.FixtureRequest) -> TechnicianCase:
    found = request.param
    assert isinstance(found, TechnicianCase)
    return found


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


def test_a_case_says_one_thing_and_why() -> None:
    holds_for_each(all_cases(), says_one_thing_and_why, lambda case: case.name)


def says_one_thing_and_why(case: TechnicianCase) -> None:
    said = [bool(case.first), bool(case.first_two), bool(case.first_three)]
    assert sum(said) == 1
    assert len(case.why) > 20
    assert case.data.get("tells")
    assert {case.first or "", *case.first_two, *case.first_three} - {""} <= can_come_first()


@cache
def can_come_first() -> frozenset[str]:
    return frozenset((*shipped().causes, *(f"unlisted.{c}" for c in shipped().complaints)))


def test_every_reading_of_a_case_is_used(case: TechnicianCase) -> None:
    """A case whose readings no rule answers would pass for the wrong reason."""
    run = assessment(case.name).run
    assert [u.why for u in run.unanswered] == []


def test_posterior_is_full_enumeration(case: TechnicianCase) -> None:
    whole = assessment(case.name)
    causes = [row.id for row in whole.rows if row.kind != "unlisted"][:CAUSES]
    leaks = [row.id for row in whole.rows if row.kind == "unlisted"]
    tree = cut(whole.tree, frozenset([*causes, *leaks]))
    exact, ours = enumerated(tree, whole.situation), solve(tree, whole.situation).posterior
    assert set(concerned(tree, whole.situation)) <= set(ours)
    for node, p in ours.items():
        assert p == pytest.approx(exact[node], abs=1e-9)


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
