"""What comes next on the sheet of a handover: a pure function of the sheet, as `flow` is one of the job."""

from __future__ import annotations

from collections.abc import Iterator

from diagnose.dialogue import requests as rq
from diagnose.dialogue.care import caution_before
from diagnose.handover.adjusting import FLOWS, asks_first, suggest
from diagnose.handover.sheet import Line, Sheet

__all__ = ["next_on_sheet"]


def next_on_sheet(sheet: Sheet, number: int) -> rq.Request:
    """The next question of the sheet, or what to do about a line that was turned to."""
    asked = _turned(sheet, number)
    if asked is not None:
        return asked
    nearer = _nearer(sheet, number)
    for line in _in_turn(sheet):
        if line.verdict in ("to do", "again") and sheet.barred(line):
            continue
        if nearer is not None and line.verdict != "again":
            return nearer
        if line.verdict in ("to do", "again"):
            return _read(sheet, line, number)
        if line.verdict in ("fail", "cannot tell") and not _waits(sheet, line):
            return rq.AskFailed(number, line.id)
        if _who_is_open(line):
            return rq.AskWho(number, line.id)
    return rq.AskHandover(number)


def _turned(sheet: Sheet, number: int) -> rq.Request | None:
    state, book = sheet.state, sheet.book
    turned = state.turned
    match turned.what:
        case "end":
            return rq.AskHandover(number)
        case "check" if turned.id in book.checks:
            return caution_before(book, state, number, turned.id) or rq.AskCheck(number, turned.id, "sheet")
        case "leave" if turned.line in sheet.by_id:
            return rq.AskLeave(number, turned.line)
        case "adjust" if turned.line in sheet.by_id and turned.id in book.adjustments:
            care = caution_before(book, state, number, turned.id)  # to see how it stands a cover may have to come off
            if care is not None:
                return care
            asks = asks_first(sheet, sheet.by_id[turned.line], book.adjustments[turned.id])
            return (rq.AskFound if asks else rq.AskSet)(number, turned.line, turned.id)
    return None


def _waits(sheet: Sheet, line: Line) -> bool:
    """Both ends of the air are read before either is decided: one damper moves the other end."""
    others = [sheet.of_check(check) for check in FLOWS if check != line.check.id]
    open_ = any(other is not None and other.verdict in ("to do", "again") for other in others)
    return line.check.id in FLOWS and open_


def _nearer(sheet: Sheet, number: int) -> rq.Request | None:
    """A setting that could be nearer still, where one is worked towards it in steps: the step after the last one."""
    if not sheet.state.adjusted:
        return None
    event = sheet.state.adjusted[-1][1]
    line, adjustment = sheet.by_id.get(event.line), sheet.book.adjustments.get(event.adjustment)
    if event.found or line is None or adjustment is None or adjustment.working != "dampers":
        return None
    here = [each for each in sheet.lines if adjustment.id in each.entry.adjust]
    just_read = sheet.state.readings and sheet.state.readings[-1].check in {each.check.id for each in here}
    if not just_read or any(each.verdict == "again" for each in here):
        return None
    advice = suggest(sheet, line, adjustment)
    if advice is None or not advice.settings or not advice.possible:
        return None
    return caution_before(sheet.book, sheet.state, number, adjustment.id) or rq.AskSet(number, line.id, adjustment.id)


def _in_turn(sheet: Sheet) -> Iterator[Line]:
    """Lines as they come up: what was just read is decided, what was just set is read again, then on in order.

    What else was upset by setting comes at the end, all together.
    """
    newest = sheet.state.readings[-1].check if sheet.state.readings else ""
    yield from (line for line in sheet.lines if line.check.id == newest and line.verdict != "again")
    last = sheet.state.adjusted[-1][1].adjustment if sheet.state.adjusted else ""
    yield from (line for line in sheet.lines if line.verdict == "again" and last in line.entry.adjust)
    yield from (line for line in sheet.lines if line.verdict != "again")
    yield from (line for line in sheet.lines if line.verdict == "again")


def _read(sheet: Sheet, line: Line, number: int) -> rq.Request:
    check = line.check.id
    return caution_before(sheet.book, sheet.state, number, check) or rq.AskCheck(number, check, "sheet")


def _who_is_open(line: Line) -> bool:
    return line.entry.who and line.verdict in ("pass", "fail") and not line.notes
