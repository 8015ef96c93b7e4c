"""Calls from the TOML file beside this one, led by the telephone's own choice of questions."""

from __future__ import annotations

import tomllib
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from diagnose.job import events as ev
from diagnose.job import fold
from diagnose.job.assess import Assessment, assess
from diagnose.job.telephone import Ending, ending, last_ending, next_step
from diagnose.model import Book

__all__ = ["Led", "led", "written_calls"]

_MOST_STEPS = 30


@dataclass(frozen=True)
class Led:
    """A call that was led to its end."""

    end: Ending
    seen: Assessment | None  # None where a danger ended it
    path: tuple[str, ...]


def written_calls() -> list[dict[str, Any]]:
    """Every call of the file."""
    calls: list[dict[str, Any]] = tomllib.loads(Path(__file__).with_name("calls.toml").read_text("utf-8"))["call"]
    return calls


def led(book: Book, call: dict[str, Any]) -> Led:
    """Lead one call: ask what is asked next, let the kitchen put right what it is told to, until the end."""
    events: list[ev.Event] = [
        ev.Opened(machine="call", type=call["machine"]),
        ev.CallBegun("kitchen"),
        ev.SafetyAnswered(call.get("stop")),
        *(ev.ComplaintSaid(complaint) for complaint in call["complaints"]),
        *(ev.ContextGiven(question, answer) for question, answer in call.get("context", {}).items()),
    ]
    path: list[str] = []
    for _ in range(_MOST_STEPS):
        state = fold([_record(nth, event) for nth, event in enumerate(events, 1)], book)
        there = ending(book, state)
        if there is not None and there.how == "stop":
            return Led(there, None, tuple(path))
        seen = assess(book, state)
        step = next_step(seen)
        if step.what == "end":
            return Led(last_ending(seen, step.why), seen, tuple(path))
        path.append(step.id)
        events += [_answer(book, call, step.id)] if step.what == "ask" else _put_right(call, step.id)
    raise AssertionError(f"no end: {path}")


def _record(number: int, event: ev.Event) -> ev.Record:
    return ev.Record(number=number, at="2026-03-02T08:00:00+00:00", writer="desk", event=event)


def _answer(book: Book, call: dict[str, Any], name: str) -> ev.Event:
    """What is written; else good order where that can be seen, and not known where it is a figure."""
    check, answer = book.checks[name], call.get("answers", {}).get(name)
    if check.reading is not None:
        return ev.Skipped(name, "don't know") if answer is None else ev.ReadingTaken(name, {"": answer})
    good = next(outcome for outcome, told in check.outcomes.items() if told.good)
    return ev.ReadingTaken(name, outcome=answer or good)


def _put_right(call: dict[str, Any], cause: str) -> list[ev.Event]:
    """The kitchen does it; whether the complaint is gone depends on whether it was that."""
    right = cause in call.get("right", ())
    gone = [ev.ComplaintSaid(complaint, not right) for complaint in call["complaints"]]
    return [ev.Repaired(cause, "as expected" if right else "sound"), *gone]
