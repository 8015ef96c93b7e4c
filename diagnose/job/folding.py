"""The fold: what the events of a job come to, one after the other."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace

from diagnose.job import events as ev
from diagnose.job.state import JobState, Repair
from diagnose.job.together import outweighed, together
from diagnose.model import Book, Check, Instrument, Machine, Reading
from diagnose.model.instruments import parse_accuracy
from diagnose.units import UnitError, parse_quantity

__all__ = ["after", "fold", "standing"]


def fold(records: Iterable[ev.Record], book: Book) -> JobState:
    """The state after these records; withdrawn ones count as if they had never been."""
    state = JobState()
    for record in standing(records):
        state = after(state, record, book)
    return state


def standing(records: Iterable[ev.Record]) -> tuple[ev.Record, ...]:
    """The records that count: without the withdrawn ones, and without the withdrawals."""
    kept = list(records)
    withdrawn: set[tuple[str, int]] = set()
    for record in reversed(kept):
        # A withdrawal that was itself withdrawn does nothing.
        if isinstance(record.event, ev.Withdrawn) and record.key not in withdrawn:
            withdrawn.add((record.event.of or record.writer, record.event.number))
    return tuple(r for r in kept if r.key not in withdrawn and not isinstance(r.event, ev.Withdrawn))


_KNOWN_OF_NEW = {"since": "since it was connected"}  # of whatever fails before a machine was ever at work

# What counts as an answer to a numbered question; going elsewhere (TurnedTo) answers it too.
_ANSWERS = (
    ev.Opened,
    ev.PlateWanted,
    ev.MachineDescribed,
    ev.PlateRead,
    ev.SafetyAnswered,
    ev.ComplaintSaid,
    ev.StepDone,
    ev.ContextGiven,
    ev.TurnedTo,
    ev.ReadingTaken,
    ev.Skipped,
    ev.RuledOut,
    ev.Repaired,
    ev.Adjusted,
    ev.LineLeft,
    ev.HintAnswered,
    ev.TypeTold,
    ev.CallBegun,
)


def after(state: JobState, record: ev.Record, book: Book) -> JobState:
    """The state after one more record that is no withdrawal: the fold goes on from where it stood."""
    event = record.event
    if isinstance(event, ev.Unknown):
        return replace(state, unread=(*state.unread, f"event {record.number}: this program knows no {event.name}"))
    state, counts = outweighed(state, record)
    if not counts:
        return state
    answers = isinstance(event, _ANSWERS) or (isinstance(event, ev.NoteAdded) and bool(event.about))
    if answers and not getattr(event, "together", False):
        state = replace(state, answers=(*state.answers, record.number))
    match event:
        case ev.Opened():
            return _opened(state, event, book)
        case ev.PlateWanted(wanted):
            return replace(state, plate_wanted=wanted)
        case ev.MachineDescribed(what, text):
            return _described(state, what, text)
        case ev.PlateRead():
            return _plate(state, event)
        case ev.SafetyAnswered(stop):
            return replace(state, safety_asked=True, stop=stop)
        case ev.ComplaintSaid(complaint) if complaint not in book.complaints:
            return replace(state, unread=(*state.unread, f"{complaint}: this knowledge has no such complaint"))
        case ev.ComplaintSaid(complaint, present, _):
            # Said again at the same stage, the last word counts.
            before = tuple(c for c in state.complaints if c[:2] != (complaint, state.stage))
            return replace(state, complaints=(*before, (complaint, state.stage, present)))
        case ev.StepDone(step):
            turned = ev.TurnedTo("advice") if state.turned.what == "complaint" else state.turned
            return replace(state, steps=state.steps | {step}, turned=turned)
        case ev.ContextGiven(question, answer):
            known = {**state.context, question: answer} if answer is not None else state.context
            return replace(state, context=known, context_asked=state.context_asked | {question})
        case ev.TurnedTo():
            return replace(state, turned=event)
        case ev.ReadingTaken():
            return _reading(state, record, event, book)
        case ev.InstrumentChosen(check, name):
            return replace(state, instruments={**state.instruments, check: name})
        case ev.Skipped(check, why):
            return replace(state, skipped={**state.skipped, check: why}, turned=_back_to_advice(state, check))
        case ev.RuledOut(node):
            return replace(state, ruled_out=(*state.ruled_out, node), turned=_back_to_advice(state, node))
        case ev.Acknowledged(cautions, before):
            state = _stands(state, before, book)
            return replace(state, acknowledged=state.acknowledged | {before}, typed=state.typed | frozenset(cautions))
        case ev.Repaired(cause, found):
            if cause not in book.causes:
                state = replace(state, unread=(*state.unread, f"{cause}: this knowledge has no such cause"))
            return replace(
                state,
                repairs=(*state.repairs, Repair(cause, found)),
                skipped=state.skipped if found == "sound" else {},
                acknowledged=frozenset(),
                turned=ev.TurnedTo("prove", cause),
            )
        case ev.NoteAdded(text, about):
            if not about:
                return replace(state, notes=(*state.notes, text))
            told = (*state.line_notes.get(about, ()), text)
            return replace(state, line_notes={**state.line_notes, about: told})
        case ev.Adjusted():
            adjusted = (*state.adjusted, (record.number, event))
            if event.found:
                return replace(state, adjusted=adjusted)
            return replace(state, adjusted=adjusted, acknowledged=frozenset(), turned=ev.TurnedTo("advice"))
        case ev.LineLeft(line, _, _):
            left = {**state.left, line: (record.number, event)}
            return replace(state, left=left, turned=ev.TurnedTo("advice"))
        case ev.Closed():
            return replace(state, closed=event)
    return together(state, record)


def _stands(state: JobState, work: str, book: Book) -> JobState:
    """The machine is brought into the state that a check, repair or adjustment needs; a change asks for care anew."""
    entry = book.checks.get(work) or book.causes.get(work) or book.adjustments.get(work)
    if entry is None or entry.state == state.stands:
        return state
    kept = frozenset[str]() if state.purpose == "handover" else state.acknowledged
    return replace(state, stands=entry.state, typed=frozenset(), acknowledged=kept)


def _back_to_advice(state: JobState, done: str) -> ev.TurnedTo:
    """After what one had turned to is done, the advice decides again; a proof goes on until it is over."""
    return ev.TurnedTo("advice") if state.turned.id == done else state.turned


def _opened(state: JobState, event: ev.Opened, book: Book) -> JobState:
    saved = event.machine != event.type  # a machine of one's own has its plate and its site already
    return replace(
        state,
        machine=_machine(event, book),
        allowed=frozenset(event.allowed),
        keep_closed=frozenset(event.keep_closed),
        knowledge=event.knowledge,
        purpose=event.purpose,
        context=_KNOWN_OF_NEW if event.purpose == "handover" else state.context,
        plate_wanted=False if saved else None,
        plate_asked=frozenset(),
        described=frozenset({"name", "serial", "site"}) if saved else frozenset(),
        steps=state.steps - {"plate"},
    )


def _described(state: JobState, what: str, text: str) -> JobState:
    machine = state.machine
    if machine is not None and text:
        machine = Machine(
            text if what == "name" else machine.name,
            machine.type,
            machine.own,
            text if what == "serial" else machine.serial,
            text if what == "site" else machine.site,
        )
    return replace(state, machine=machine, described=state.described | {what})


def _plate(state: JobState, event: ev.PlateRead) -> JobState:
    machine = state.machine
    if machine is not None and event.text is not None:
        machine = replace(machine, own={**machine.own, event.figure: event.text})
    return replace(state, machine=machine, plate_asked=state.plate_asked | {event.figure})


def _machine(event: ev.Opened, book: Book) -> Machine:
    kind = book.machines.get(event.type)
    if kind is None:
        raise UnitError(f"machine type {event.type!r} is not in this knowledge; use the knowledge it was opened with")
    return Machine(event.machine, kind, event.own, event.serial, event.site)


def _taken_with(event: ev.ReadingTaken, check: Check) -> Instrument | None:
    """What the reading itself says of its instrument. Raises UnitError."""
    if not event.accuracy or check.reading is None:
        return None
    absolute, share = parse_accuracy(event.accuracy, check.reading.quantity)
    kind = event.of_kind or check.instrument
    return Instrument(kind, check.reading.quantity, absolute, share, name=event.instrument or "", note=event.taken_as)


def _reading(state: JobState, record: ev.Record, event: ev.ReadingTaken, book: Book) -> JobState:
    check = book.checks.get(event.check)
    turned = _back_to_advice(state, event.check)
    try:
        if check is None:
            raise UnitError("this knowledge has no such check")
        values, taken_with = {}, _taken_with(event, check)
        if event.values:
            if check.reading is None:
                raise UnitError("this knowledge reads no value there")
            values = {
                place: parse_quantity(text, check.reading.quantity, check.reading.unit)
                for place, text in event.values.items()
            }
            if list(values) != (check.reading.each or [""]):
                raise UnitError("this knowledge reads other places there")
        elif event.outcome not in check.outcomes:
            raise UnitError(f"this knowledge has no outcome {event.outcome!r} there")
    except UnitError as error:
        return replace(state, unread=(*state.unread, f"{event.check}: {error}"), turned=turned)
    at = state.stage
    reading = Reading(str(record.number), event.check, values, event.outcome, event.instrument, at, taken_with)
    skipped = {name: why for name, why in state.skipped.items() if name != event.check}
    read = {name for name, line in book.lines.items() if line.check == event.check}
    left = {name: each for name, each in state.left.items() if name not in read}
    state = _stands(state, event.check, book)
    return replace(state, readings=(*state.readings, reading), skipped=skipped, left=left, turned=turned)
