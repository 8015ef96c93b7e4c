"""The sheet of a handover as printed: its lines by section, what each came to, how it stands as a whole."""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence

from diagnose.handover.sheet import Line as SheetLine
from diagnose.handover.sheet import Sheet
from diagnose.view import sheet_words, words
from diagnose.view.layout import Line, labelled, wrap
from diagnose.view.summary import job_head, reading_text

__all__ = ["at_line", "counts_text", "handover_block", "sheet_block", "verdict_block", "wanted_text"]


def at_line(line: SheetLine, sheet: Sheet, width: int) -> list[Line]:
    """Where on the sheet one is: `Line 62 of 119, Final rinse`."""
    return wrap(f"Line {line.number} of {len(sheet.lines)}, {line.section}", width, role="heading")


def verdict_block(line: SheetLine, sheet: Sheet, width: int) -> list[Line]:
    """What a line has come to, beside what is wanted."""
    read = reading_text(line.reading, sheet.book) if line.reading else ""
    head = f"{sheet_words.VERDICT[line.verdict]}: {labelled(line.title, read) if read else line.title}"
    lines = wrap(head, width, " ", role=_ROLES.get(line.verdict, ""))
    if line.verdict != "pass":
        lines += wrap(f"{sheet_words.WANTED}{wanted_text(line, sheet)}", width, "   ", "     ")
    if line.verdict == "cannot tell":
        lines += wrap(sheet_words.CANNOT_TELL, width, "   ")
    return lines


def wanted_text(line: SheetLine, sheet: Sheet) -> str:
    """What is wanted on this machine, and whence."""
    wanted, stands = sheet.wanted(line)
    return f"{wanted} ({stands})" if stands and stands not in wanted else wanted


def sheet_block(sheet: Sheet, width: int, only: Sequence[SheetLine] | None = None) -> list[Line]:
    """All lines, or those named, by section: number, verdict, title and reading."""
    shown = {line.id for line in (sheet.lines if only is None else only)}
    room = len(str(len(sheet.lines)))
    lines: list[Line] = []
    for title, each in sheet.sections:
        rows = [line for line in each if line.id in shown]
        if rows:
            lines += wrap(title, width, role="heading")
        for line in rows:
            lead = f"{line.number:>{room}} {sheet_words.VERDICT[line.verdict]:<{_WIDEST}} "
            lines += wrap(_told(line, sheet), width, lead, " " * (room + 1), role=_ROLES.get(line.verdict, ""))
    return lines


def handover_block(sheet: Sheet, job: str, width: int) -> list[Line]:
    """How a handover ended: counts, what was set and mended, what stayed with a remark."""
    state, book = sheet.state, sheet.book
    lines = job_head(state, book, job, width)
    lines += wrap(f"{sheet_words.SHEET}{counts_text(sheet)}.", width)
    for name in dict.fromkeys(e.adjustment for _, e in state.adjusted if not e.found):
        if name in book.adjustments:
            lines += wrap(book.adjustments[name].title, width, f"  {sheet_words.WAS_SET}", "    ")
    for line in sheet.lines:
        if line.before and line.reading is not None and line.verdict == "pass":
            first, last = reading_text(line.before[0], book), reading_text(line.reading, book)
            lines += wrap(f"{labelled(line.title, first)}, {sheet_words.NOW} {last}", width, "  ", "    ")
    for repair in state.repairs:
        if repair.found != "sound" and repair.cause in book.causes:
            lines += wrap(book.title(repair.cause), width, f"  {sheet_words.MENDED}", "    ")
    remarks = [line for line in sheet.remarks if line.verdict != "to do"]
    if remarks:
        lines += wrap(sheet_words.REMARKS, width) + sheet_block(sheet, width, remarks)
    if state.closed is not None:
        lines += wrap(f"Closed: {words.CLOSED[state.closed.how]}", width, role="heading")
    return lines + wrap(f"{sheet_words.SHEET_ON_PAPER}{job} --what handover", width, role="dim")


def _told(line: SheetLine, sheet: Sheet) -> str:
    text = line.title
    if line.reading is not None:
        text = labelled(text, reading_text(line.reading, sheet.book))
    if line.left is not None and line.verdict == "left":
        why = sheet_words.LEFT[line.left.why]
        text += f" ({why}: {line.left.text})" if line.left.text else f" ({why})"
    return "; ".join([text, *line.notes])


def counts_text(sheet: Sheet) -> str:
    """How many lines passed, failed, were left or are open: `61 pass, 2 left, 56 to do`."""
    counted: Counter[str] = Counter(line.verdict for line in sheet.lines)
    return ", ".join(f"{counted[v]} {sheet_words.VERDICT[v]}" for v in sheet_words.VERDICT if counted[v])


_ROLES = {"pass": "good", "fail": "refused", "cannot tell": "caution", "left": "caution"}
_WIDEST = max(len(word) for word in sheet_words.VERDICT.values())
