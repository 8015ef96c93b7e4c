"""The office copy: a job as one JSON record with stable keys, for programs that file, bill or count."""

from __future__ import annotations

from typing import Any

import msgspec

from diagnose.handover.sheet import sheet_of
from diagnose.job import events as ev
from diagnose.report.document import cleaned
from diagnose.report.dossier import Dossier
from diagnose.report.evidence import likely
from diagnose.report.parts import likely_parts
from diagnose.report.readings import judged, reading_text
from diagnose.report.to_json import SCHEMA, pretty
from diagnose.units import Quantity, show_number

__all__ = ["Office", "office_copy", "office_json", "office_schema"]


class Value(msgspec.Struct, frozen=True, kw_only=True):
    """A figure with its unit; `place` is empty where there is one only."""

    place: str
    value: float
    unit: str


class Visited(msgspec.Struct, frozen=True, kw_only=True):
    """A day with its first and last record (ISO 8601), and the minutes between."""

    day: str
    first: str
    last: str
    minutes: float


class Complained(msgspec.Struct, frozen=True, kw_only=True):
    """A complaint, and whether it is there now."""

    id: str
    title: str
    present: bool


class Read(msgspec.Struct, frozen=True, kw_only=True):
    """A reading: its values or the outcome chosen, after how many repairs, how it stands, what it means."""

    check: str
    title: str
    after_repairs: int
    values: list[Value]
    outcome: str | None
    stands: str  # good | bad | doubt | "" where nothing could be said
    means: str
    low: Value | None
    high: Value | None
    limit_stands: str


class Mended(msgspec.Struct, frozen=True, kw_only=True):
    """A repair, what was found (as expected, sound, can't tell), and how probable its cause was before."""

    cause: str
    title: str
    found: str
    probability_before: float | None
    parts: list[str]


class Ranked(msgspec.Struct, frozen=True, kw_only=True):
    """A cause as the job stands."""

    id: str
    title: str
    probability: float


class LikelyParts(msgspec.Struct, frozen=True, kw_only=True):
    """Parts that may be needed, by their cause; of an open job only."""

    cause: str
    probability: float
    parts: list[str]


class Left(msgspec.Struct, frozen=True, kw_only=True):
    """A check that was asked for and not answered."""

    check: str
    title: str
    why: str


class SheetLine(msgspec.Struct, frozen=True, kw_only=True):
    """A line of a handover's sheet: what was wanted and whence, what was read, and what it came to."""

    number: int
    id: str
    section: str
    title: str
    check: str
    wanted: str
    wanted_stands: str
    read: str
    verdict: str  # pass | fail | cannot tell | left | again | to do | not read
    left_why: str
    left_words: str
    notes: list[str]


class Office(msgspec.Struct, frozen=True, kw_only=True):
    """The answer of `diagnose report JOB --what office`."""

    schema: int = SCHEMA
    job: str
    purpose: str
    open: bool
    closed: str | None  # how, as the journal has it
    closing_words: str
    machine: str
    type: str
    serial: str
    site: str
    knowledge: str  # fingerprint of the knowledge the job was begun with
    visits: list[Visited]
    who: list[str]
    complaints: list[Complained]
    context: dict[str, str]
    readings: list[Read]
    repairs: list[Mended]
    likely: list[Ranked]
    likely_parts: list[LikelyParts]
    usual_minutes_checks: float
    usual_minutes_repairs: float
    cautions_acknowledged: list[str]
    not_checked: list[Left]
    plate_assumed: list[str]
    notes: list[str]
    sheet: list[SheetLine]  # of a handover only


def office_schema() -> str:
    """JSON Schema of the office copy."""
    schema: dict[str, Any] = msgspec.json.schema(Office)
    schema["$schema"] = "https://json-schema.org/draft/2020-12/schema"
    return pretty(schema)


def office_json(dossier: Dossier) -> str:
    """The record as text; what a person gave is cleaned as in every other format."""
    plain = msgspec.to_builtins(office_copy(dossier))
    return pretty(_cleaned(plain))


def _cleaned(value: Any) -> Any:
    if isinstance(value, dict):
        return {key: _cleaned(each) for key, each in value.items()}
    if isinstance(value, list):
        return [_cleaned(each) for each in value]
    return cleaned(value)


def office_copy(dossier: Dossier) -> Office:
    """The record of a job, open or closed."""
    state, book = dossier.state, dossier.book
    machine = state.machine
    said = dict.fromkeys(c for c, _, _ in state.complaints)
    is_open = state.closed is None
    return Office(
        job=dossier.job,
        purpose=state.purpose,
        open=is_open,
        closed=state.closed.how if state.closed else None,
        closing_words=state.closed.text if state.closed else "",
        machine=machine.name if machine else "",
        type=machine.type.id if machine else "",
        serial=machine.serial if machine else "",
        site=machine.site if machine else "",
        knowledge=state.knowledge,
        visits=[
            Visited(
                day=v.day.isoformat(), first=v.first.isoformat(), last=v.last.isoformat(), minutes=round(v.minutes, 1)
            )
            for v in dossier.visits
        ],
        who=sorted(state.allowed),
        complaints=[Complained(id=c, title=dossier.title(c), present=c in state.present) for c in said],
        context=dict(state.context),
        readings=[_read(dossier, nth) for nth in range(len(dossier.readings))],
        repairs=[_mended(dossier, nth) for nth in range(len(state.repairs))],
        likely=[
            Ranked(id=row.id, title=row.title, probability=round(row.probability, 6))
            for row in (likely(dossier) if state.present else [])
        ],
        likely_parts=[
            LikelyParts(cause=cause, probability=round(probability, 6), parts=list(parts))
            for cause, probability, parts in (likely_parts(dossier) if is_open else [])
        ],
        usual_minutes_checks=sum(book.checks[r.check].minutes for r in dossier.readings),
        usual_minutes_repairs=sum(book.causes[r.cause].minutes for r in state.repairs if r.cause in book.causes),
        cautions_acknowledged=_acknowledged(dossier),
        not_checked=_not_checked(dossier),
        plate_assumed=[name for name in machine.type.plate if machine.assumed(name)] if machine else [],
        notes=list(state.notes),
        sheet=_sheet(dossier) if state.purpose == "handover" and machine is not None else [],
    )


def _sheet(dossier: Dossier) -> list[SheetLine]:
    sheet = sheet_of(dossier.book, dossier.state)
    made = []
    for line in sheet.lines:
        wanted, stands = sheet.wanted(line)
        made.append(
            SheetLine(
                number=line.number,
                id=line.id,
                section=line.section,
                title=line.title,
                check=line.check.id,
                wanted=dossier.measures.text(wanted),
                wanted_stands=stands,
                read=reading_text(dossier, line.reading) if line.reading is not None else "",
                verdict=line.verdict,
                left_why=line.left.why if line.left is not None else "",
                left_words=line.left.text if line.left is not None else "",
                notes=list(line.notes),
            )
        )
    return made


def _value(place: str, quantity: Quantity) -> Value:
    return Value(place=place, value=float(show_number(quantity.value, 6)), unit=quantity.unit.symbol)


def _read(dossier: Dossier, nth: int) -> Read:
    reading = dossier.readings[nth]
    finding = dossier.findings.get(reading.id)
    expected = dossier.expected(reading.check)
    low, high = (expected.low, expected.high) if expected is not None else (None, None)
    return Read(
        check=reading.check,
        title=dossier.title(reading.check),
        after_repairs=reading.stage,
        values=[_value(place, dossier.measures.one(q)) for place, q in reading.values.items()],
        outcome=reading.outcome,
        stands=judged(dossier, reading)[0],
        means=dossier.measures.text(finding.says) if finding is not None else "",
        low=_value("", dossier.measures.one(low)) if low is not None else None,
        high=_value("", dossier.measures.one(high)) if high is not None else None,
        limit_stands=expected.basis if expected is not None else "",
    )


def _mended(dossier: Dossier, nth: int) -> Mended:
    repair = dossier.state.repairs[nth]
    before = dossier.before_repair(nth)
    rows = before.rows if before is not None else ()
    probability = next((round(row.probability, 6) for row in rows if row.id == repair.cause), None)
    cause = dossier.book.causes.get(repair.cause)
    parts = list(cause.parts) if cause is not None and repair.found != "sound" else []
    return Mended(
        cause=repair.cause,
        title=dossier.title(repair.cause),
        found=repair.found,
        probability_before=probability,
        parts=parts,
    )


def _acknowledged(dossier: Dossier) -> list[str]:
    named = [r.event.cautions for r in dossier.records if isinstance(r.event, ev.Acknowledged)]
    return list(dict.fromkeys(caution for cautions in named for caution in cautions))


def _not_checked(dossier: Dossier) -> list[Left]:
    read = {r.check for r in dossier.readings}
    skipped = {r.event.check: r.event.why for r in dossier.records if isinstance(r.event, ev.Skipped)}
    return [Left(check=c, title=dossier.title(c), why=why) for c, why in skipped.items() if c not in read]
