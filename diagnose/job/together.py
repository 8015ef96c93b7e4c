"""The fold where several people work on one job: who is where, calls, hints, and whose answer counts.

One writer per fact: nobody changes what another one wrote. Two who answer the same question both stay visible, and the
one at the machine counts.
"""

from __future__ import annotations

from dataclasses import replace

from diagnose.job import events as ev
from diagnose.job.state import Beside, Hint, JobState, Presence

__all__ = ["outweighed", "together"]


def together(state: JobState, record: ev.Record) -> JobState:
    """The state after an event of people working together; any other event leaves it as it is."""
    event = record.event
    match event:
        case ev.Present():
            return _arrived(state, record.writer, event)
        case ev.CallBegun():
            known = state.presences.get(record.writer, Presence())
            here = {**state.presences, record.writer: Presence(known.name, "desk")}
            # The stop conditions come first in every call.
            return replace(state, presences=here, call=event, safety_asked=False, stop=None, waits=None)
        case ev.TypeTold(question, answer):
            return replace(state, types_told={**state.types_told, question: answer})
        case ev.CallEnded(how, text):
            waits = ev.HandedOn("technician", text) if how in ("stop", "visit") else state.waits
            return replace(state, call=None, call_ended=event, waits=waits)
        case ev.Hinted():
            return replace(state, hints=(*state.hints, Hint(*record.key, event)))
        case ev.HintAnswered(number, of, taken):
            return _hint_answered(state, number, of, taken)
        case ev.HandedOn():
            return replace(state, waits=event, turned=ev.TurnedTo("advice"))
    return state


def _arrived(state: JobState, writer: str, event: ev.Present) -> JobState:
    """Who comes to the machine looks for danger with their own eyes, and can reach what the telephone could not."""
    state = replace(state, presences={**state.presences, writer: Presence(event.name, event.place)})
    if event.place != "machine":
        return state
    if event.allowed:
        state = replace(state, allowed=frozenset(event.allowed), keep_closed=frozenset(event.keep_closed))
    moved = state.waits is not None or state.call is not None or state.call_ended is not None
    if moved:
        state = replace(state, call=None, waits=None, safety_asked=False, stop=None, skipped={})
        state = replace(state, acknowledged=frozenset(), typed=frozenset(), turned=ev.TurnedTo("advice"))
    return state


def _hint_answered(state: JobState, number: int, of: str, taken: bool) -> JobState:
    hints = tuple(replace(h, taken=taken) if (h.writer, h.seq) == (of, number) else h for h in state.hints)
    check = next((h.given.check for h in hints if (h.writer, h.seq) == (of, number)), "")
    turned = ev.TurnedTo("check", check) if taken and check else state.turned
    return replace(state, hints=hints, turned=turned)


def outweighed(state: JobState, record: ev.Record) -> tuple[JobState, bool]:
    """The state that knows of this answer, and whether it counts beside one of another writer to the same question."""
    question = _question(record.event, state)
    if question is None:
        return state, True
    before = state.answered.get(question)
    if before is None or before.writer == record.writer or _same(before.event, record.event):
        return replace(state, answered={**state.answered, question: record}), True
    here = [state.presence(each.writer).place == "machine" for each in (before, record)]
    if here == [True, False]:
        return replace(state, beside=(*state.beside, Beside(record, before))), False
    both = (*state.beside, Beside(before, record))
    return replace(state, answered={**state.answered, question: record}, beside=both), True


def _same(one: object, other: object) -> bool:
    """Whether two answers say the same."""
    match one, other:
        case ev.ComplaintSaid(_, first), ev.ComplaintSaid(_, second):
            return first == second
        case ev.ReadingTaken(), ev.ReadingTaken():
            return (one.values, one.outcome) == (other.values, other.outcome)
    return one == other


def _question(event: object, state: JobState) -> tuple[str, ...] | None:
    """What an event answers, where two may answer it each for themselves."""
    match event:
        case ev.Opened():
            return ("machine",)
        case ev.MachineDescribed(what):
            return "described", what
        case ev.PlateRead(figure):
            return "plate", figure
        case ev.ContextGiven(question, answer) if answer is not None:
            return "context", question
        case ev.ReadingTaken(check):
            return "reading", check, str(state.stage)
        case ev.ComplaintSaid(complaint):
            return "complaint", complaint, str(state.stage)
    return None
