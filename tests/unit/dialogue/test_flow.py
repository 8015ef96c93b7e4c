"""What comes next is decided by the state alone."""

from __future__ import annotations

from collections.abc import Sequence

import pytest

from diagnose.dialogue import requests as rq
from diagnose.dialogue.flow import next_request
from diagnose.job import events as ev
from diagnose.job.folding import fold
from diagnose.job.state import JobState
from diagnose.model import Book
from tests.small_job import small_book

OPENED = ev.Opened(machine="plain", type="plain")
TOLD: tuple[ev.Event, ...] = (
    OPENED,
    ev.PlateWanted(False),
    ev.MachineDescribed("site", ""),
    ev.SafetyAnswered(),
    ev.ComplaintSaid("steam_out"),
    ev.StepDone("complaints"),
    ev.ContextGiven("age"),
)
FUSE = ev.Repaired("box.fuse", "as expected")
PROVED = (ev.ReadingTaken("box.volts", {"": "208 V"}), ev.ReadingTaken("box.where", {}, "nowhere"))
CHECK = rq.Option("check", "box.where")


@pytest.fixture(scope="module")
def book(tmp_path_factory: pytest.TempPathFactory) -> Book:
    return small_book(tmp_path_factory.mktemp("knowledge"))


def state_after(book: Book, events: Sequence[ev.Event]) -> JobState:
    return fold([ev.Record(number=n, at="", writer="", event=e) for n, e in enumerate(events, 1)], book)


def no_advice() -> Sequence[rq.Option]:
    raise AssertionError("the advice must not be asked for here")


@pytest.mark.parametrize(
    ("events", "wanted"),
    [
        ((), rq.AskMachine(1)),
        (TOLD[:1], rq.OfferPlate(2)),
        (TOLD[:2], rq.Describe(3, "site")),
        ((OPENED, ev.PlateWanted(True)), rq.Describe(3, "name")),
        (TOLD[:3], rq.AskSafety(4)),
        ((*TOLD[:3], ev.SafetyAnswered("gas")), rq.Stopped("gas")),
        (TOLD[:4], rq.AskComplaint(5)),
        (TOLD[:5], rq.AskComplaint(6, ("steam_out",))),
        (TOLD[:6], rq.AskContext(7, "age")),
        ((*TOLD, ev.TurnedTo("check", "box.where")), rq.AskCheck(9, "box.where", "choice")),
        ((*TOLD, ev.TurnedTo("check", "box.volts")), rq.AskCaution(9, "box.volts", ("live",), ("LIVE",))),
        (
            (*TOLD, ev.TurnedTo("check", "box.volts"), ev.Acknowledged(["live"], "box.volts")),
            rq.AskCheck(9, "box.volts", "choice"),
        ),
        ((*TOLD, ev.TurnedTo("repair", "box.fuse")), rq.AskCaution(9, "box.fuse", ("isolate",), ("LOCKED",))),
        (
            (*TOLD, ev.TurnedTo("repair", "box.fuse"), ev.Acknowledged(["isolate"], "box.fuse")),
            rq.AskRepair(9, "box.fuse"),
        ),
        ((*TOLD, ev.TurnedTo("end")), rq.AskEnd(9)),
        ((*TOLD, FUSE), rq.AskCaution(9, "box.volts", ("live",), ("LIVE",))),
        ((*TOLD, FUSE, PROVED[0]), rq.AskCheck(10, "box.where", "proof")),
        ((*TOLD, FUSE, *PROVED), rq.AskGone(11, "steam_out")),
        ((*TOLD, FUSE, ev.Skipped("box.volts", "don't know"), PROVED[1]), rq.AskGone(11, "steam_out")),
        ((*TOLD, FUSE, *PROVED, ev.ComplaintSaid("steam_out", False)), rq.AskClose(12, "repaired")),
        ((*TOLD, ev.Closed("given up")), rq.Ended()),
    ],
    ids=lambda value: type(value).__name__ if isinstance(value, rq.Request) else f"{len(value)} events",
)
def test_next_request(book: Book, events: Sequence[ev.Event], wanted: rq.Request) -> None:
    assert next_request(book, state_after(book, events), no_advice) == wanted


@pytest.mark.parametrize(
    "events",
    [
        TOLD,
        (*TOLD, FUSE, *PROVED, ev.ComplaintSaid("steam_out", True)),
        (*TOLD, ev.Repaired("box.fuse", "sound")),
        (*TOLD, ev.TurnedTo("check", "box.where"), PROVED[1]),
        (*TOLD, ev.TurnedTo("check", "no.such_check")),
    ],
)
def test_where_nothing_else_is_due_the_advice_decides(book: Book, events: Sequence[ev.Event]) -> None:
    state = state_after(book, events)
    number = len(state.answers) + 1
    assert next_request(book, state, lambda: [CHECK]) == rq.AskCheck(number, "box.where", "advice", (CHECK,))
    fix = rq.Option("repair", "box.fuse")
    assert next_request(book, state, lambda: [fix, CHECK]) == rq.Decide(number, (fix, CHECK))
    assert next_request(book, state, lambda: []) == rq.Decide(number, ())


def test_a_tempting_repair_is_named_beside_better_checks(book: Book) -> None:
    fix = rq.Option("repair", "box.fuse", likely=0.6)
    asked = next_request(book, state_after(book, TOLD), lambda: [CHECK, CHECK, CHECK, CHECK, fix])
    assert isinstance(asked, rq.AskCheck)
    assert asked.options == (CHECK, CHECK, CHECK, fix)
