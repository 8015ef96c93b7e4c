"""The sheet of a handover on this machine: its lines in the order one works, and what each has come to."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from functools import cached_property
from typing import Literal

from diagnose.job.events import LineLeft
from diagnose.job.state import JobState
from diagnose.model import Adjustment, Basis, Book, Check, Finding, Machine, Reading, SheetLine, fits
from diagnose.rules import RuleRun, expected, findings

__all__ = ["SURE", "Line", "Sheet", "Verdict", "failing", "sheet_of"]

# `to do`: not read yet; `again`: read, but something was set or mended since; `left`: left as it is, with a reason;
# `not read`: a line that is worked out from others, some of which are missing.
Verdict = Literal["pass", "fail", "cannot tell", "left", "again", "to do", "not read"]
_POWERED = ("running", "idle hot")  # states of the machine
AGREES = 0.7  # the same for a line worked out from several readings, each with its own error: judgement
SURE = 0.85  # weight of the good outcomes from which a reading passes; from it in the others it fails: judgement


@dataclass(frozen=True)
class Line:
    """One line: `number` counts through the sheet of this machine; `good` is how sure it is that it is as wanted."""

    number: int
    entry: SheetLine
    check: Check
    section: str
    verdict: Verdict
    reading: Reading | None = None
    finding: Finding | None = None
    good: float | None = None
    left: LineLeft | None = None
    notes: tuple[str, ...] = ()
    before: tuple[Reading, ...] = ()  # earlier readings of the same line, oldest first

    @property
    def id(self) -> str:
        return self.entry.id

    @property
    def title(self) -> str:
        return self.entry.title or self.check.title

    @property
    def decided(self) -> bool:
        """Whether nothing more is asked about it: as wanted, or left with a reason, or not to be asked at all."""
        return self.verdict in ("pass", "left", "not read")

    @property
    def comes_to(self) -> str:
        """The complaint that this failure is, as the kitchen would say it; empty where the sheet names none."""
        outcome = self.finding.outcome if self.finding else ""
        return self.entry.opens.get(outcome) or self.entry.opens.get("any", "")


@dataclass(frozen=True)
class Sheet:
    """All lines of one machine, as they stand."""

    book: Book
    machine: Machine
    state: JobState
    lines: tuple[Line, ...]
    run: RuleRun

    @cached_property
    def by_id(self) -> Mapping[str, Line]:
        return {line.id: line for line in self.lines}

    def of_check(self, check: str) -> Line | None:
        """The line that is read by this check."""
        return next((line for line in self.lines if line.check.id == check), None)

    @property
    def sections(self) -> tuple[tuple[str, tuple[Line, ...]], ...]:
        """Titles of the sections with their lines, in order."""
        found: dict[str, list[Line]] = {}
        for line in self.lines:
            found.setdefault(line.section, []).append(line)
        return tuple((title, tuple(lines)) for title, lines in found.items())

    @property
    def missing(self) -> tuple[Line, ...]:
        """Lines without which the machine may not be handed over."""
        return tuple(line for line in self.lines if line.entry.must and line.verdict != "pass")

    @property
    def gates(self) -> tuple[Line, ...]:
        """Lines before which nothing is switched on."""
        return tuple(line for line in self.lines if line.entry.first and line.verdict != "pass")

    def barred(self, line: Line) -> bool:
        """Whether the line needs power that must not be on yet."""
        gates = self.gates
        return bool(gates) and line not in gates and line.check.state in _POWERED and not line.check.computed

    @property
    def remarks(self) -> tuple[Line, ...]:
        """Lines that were not as wanted, or not read, when it was handed over."""
        return tuple(line for line in self.lines if line.verdict not in ("pass", "not read"))

    def adjustments(self, line: Line) -> tuple[Adjustment, ...]:
        """What can be set on this machine where the line fails, the likeliest first."""
        known = (self.book.adjustments[name] for name in line.entry.adjust)
        return tuple(each for each in known if fits(self.machine, each.fits))

    def wanted(self, line: Line) -> tuple[str, str]:
        """The figure wanted here, or what is to be seen; and what that stands on."""
        figure = expected(self.book, self.machine, self.state.readings, line.check.id, self.state.stage)
        if figure is not None:
            return " ".join(figure.lines), figure.basis or _stands(line.check.basis)
        good = [outcome.title for outcome in line.check.outcomes.values() if outcome.good]
        return line.entry.wanted or "; or ".join(good), _stands(line.entry.basis)


def failing(sheet: Sheet) -> tuple[str, ...]:
    """Complaints whose cause is being looked for: those there now, but for those of lines left as they are."""
    aside = {line.comes_to for line in sheet.lines if line.verdict == "left"}
    return tuple(complaint for complaint in sheet.state.present if complaint not in aside)


# A state is never changed, and one question asks for its sheet several times: the last one made is kept.
_kept: list[Sheet] = []


def sheet_of(book: Book, state: JobState) -> Sheet:
    """The sheet of the job's machine as it stands. ValueError while the machine is not known."""
    if not _kept or _kept[0].state is not state or _kept[0].book is not book:
        _kept[:] = [_made(book, state)]
    return _kept[0]


def _made(book: Book, state: JobState) -> Sheet:
    machine = state.machine
    if machine is None:
        raise ValueError("the machine is not known yet")
    run = _run(book, machine, state.readings)
    newest, last_set = state.newest(), _last_set(book, state)
    lines: list[Line] = []
    for name in _in_order(book):
        entry = book.lines[name]
        check = book.checks[entry.check]
        if fits(machine, entry.fits) and fits(machine, check.fits):
            section = book.sections[name.partition(".")[0]][1]
            lines.append(
                _line(len(lines) + 1, entry, check, section, _Seen(book, machine, state, run, newest, last_set))
            )
    return Sheet(book, machine, state, tuple(lines), run)


def _run(book: Book, machine: Machine, readings: Sequence[Reading]) -> RuleRun:
    """What all readings mean; the last answer serves again while the readings are the same."""
    if _kept and _kept[0].book is book and _kept[0].machine == machine and _kept[0].state.readings == readings:
        return _kept[0].run
    return findings(book, machine, readings)


def _in_order(book: Book) -> list[str]:
    """Sections in their order, lines as they stand in the file."""
    places = {name: nth for nth, name in enumerate(book.lines)}
    return sorted(book.lines, key=lambda name: (book.sections[name.partition(".")[0]][0], places[name]))


def _last_set(book: Book, state: JobState) -> dict[str, int]:
    """Check -> number of the last event that set something which upsets it."""
    found: dict[str, int] = {}
    for number, event in state.adjusted:
        if not event.found and event.adjustment in book.adjustments:
            own = [book.lines[event.line].check] if event.line in book.lines else []
            found |= dict.fromkeys((*book.adjustments[event.adjustment].upsets, *own), number)
    return found


@dataclass(frozen=True)
class _Seen:
    book: Book
    machine: Machine
    state: JobState
    run: RuleRun
    newest: Mapping[str, Reading]
    last_set: Mapping[str, int]


def _line(number: int, entry: SheetLine, check: Check, section: str, seen: _Seen) -> Line:
    state = seen.state
    reading = seen.newest.get(check.id)
    finding = _worked_out(check, seen) if check.computed else _finding(check, reading, seen)
    good = None
    if finding is not None:
        good = sum(w for outcome, w in finding.weights.items() if check.outcomes[outcome].good)
    left = state.left.get(entry.id)
    notes = state.line_notes.get(entry.id, ())
    before = tuple(r for r in state.readings if r.check == check.id and r is not reading)
    told = _verdict(check, reading, good, seen)
    if told != "pass" and (left is not None or (told == "to do" and check.id in state.skipped)):
        told = "left"
    return Line(number, entry, check, section, told, reading, finding, good, left[1] if left else None, notes, before)


def _verdict(check: Check, reading: Reading | None, good: float | None, seen: _Seen) -> Verdict:
    if check.computed:
        return "not read" if good is None else _judged(good, AGREES)
    if reading is None:
        return "to do"
    if int(reading.id) < seen.last_set.get(check.id, 0):
        return "again"
    verdict = _judged(good) if good is not None else "cannot tell"
    # What failed before a repair is read again after it.
    return "again" if verdict != "pass" and reading.stage < seen.state.stage else verdict


def _judged(good: float, sure: float = SURE) -> Verdict:
    if good >= sure:
        return "pass"
    return "fail" if good <= 1.0 - sure else "cannot tell"


def _finding(check: Check, reading: Reading | None, seen: _Seen) -> Finding | None:
    """What this reading means by itself; a finding over several checks is judged on a line of its own."""
    if reading is None:
        return None
    firing = seen.run.by_reading(reading.id)
    if firing is not None and firing.finding is not None and firing.finding.check == check.id:
        return firing.finding
    alone = findings(seen.book, seen.machine, [reading]).findings
    return next((f for f in alone if f.check == check.id), None)


def _worked_out(check: Check, seen: _Seen) -> Finding | None:
    """The newest finding of a check that is worked out from others, unless one of them was upset since."""
    found = [f for f in seen.run.findings if f.check == check.id and f.stage == seen.state.stage]
    if not found:
        return None
    checks = {r.id: r.check for r in seen.state.readings}
    upset = any(int(each) < seen.last_set.get(checks[each], 0) for each in found[-1].counts)
    return None if upset else found[-1]


def _stands(basis: Basis) -> str:
    return f"{basis.kind}: {basis.note}" if basis.note else basis.kind
