"""Each call ends as a desk would end it, with the part in the van and the licence at the door."""

from __future__ import annotations

from typing import Any

import pytest

from diagnose.job.onsite import visit
from diagnose.job.telephone import MOST_QUESTIONS
from tests.cases.calls import Led, led, written_calls
from tests.cases.harness import shipped

CALLS = [(f"{nth}-{call['complaints'][0]}", call) for nth, call in enumerate(written_calls(), 1)]


@pytest.fixture(scope="module", params=[pytest.param(call, id=name) for name, call in CALLS])
def both(request: pytest.FixtureRequest) -> tuple[dict[str, Any], Led]:
    call: dict[str, Any] = request.param
    return call, led(shipped(), call)


def test_a_call_ends_as_it_should(both: tuple[dict[str, Any], Led]) -> None:
    call, done = both
    assert done.end.how == call["ends"], (call["tells"], done)
    assert done.end.why
    if "cause" in call:
        assert done.end.causes == (call["cause"],)
    if "condition" in call:
        assert done.end.condition == call["condition"]


def test_the_part_is_in_the_van_and_the_licence_is_known(both: tuple[dict[str, Any], Led]) -> None:
    call, done = both
    if "part" not in call and "licence" not in call:
        return
    assert done.seen is not None
    there = visit(done.seen)
    carried = [part.name for part in there.van.carried]
    assert call.get("part") in (None, *carried), (carried, done.path)
    if "licence" in call:
        assert dict(there.licences)[call["licence"]] > 0.5
    assert there.minutes > 0.0
    assert there.first


def test_no_call_asks_too_much(both: tuple[dict[str, Any], Led]) -> None:
    call, done = both
    asked = [name for name in done.path if name in shipped().checks]
    assert len(asked) <= MOST_QUESTIONS
    assert len(call["tells"]) > 20
    assert len(call["why"]) > 20
    assert all(shipped().checks[name].aloud for name in asked)


def test_every_answer_that_is_written_belongs_to_a_question_of_the_telephone() -> None:
    book = shipped()
    for _, call in CALLS:
        for name in call.get("answers", {}):
            assert book.checks[name].aloud, name


def test_the_calls_cover_how_calls_end() -> None:
    assert len(CALLS) >= 10
    assert {call["ends"] for _, call in CALLS} == {"solved", "stop", "visit"}
