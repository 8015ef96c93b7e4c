"""A machine's history in words: in short for the conversation, and at length for its own page."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace

from diagnose.job.changes import Change, changes_of, differs
from diagnose.job.history import History, PastJob, PastReading, Repeated
from diagnose.model import Book, Reading
from diagnose.model.answers import show_values
from diagnose.units import show_number
from diagnose.view import words
from diagnose.view.layout import Line, labelled, wrap
from diagnose.view.summary import reading_text

__all__ = ["before_line", "change_sentence", "history_block", "history_pages", "times", "was_and_is"]

_MOST = 3  # of a kind in the short block


def before_line(history: History, check: str, book: Book) -> str:
    """`At handover on 2026-03-02: 21 psi.`; empty where the check was never read on this machine."""
    past = history.compared(check)
    if past is None:
        return ""
    handed = words.AT_HANDOVER if _at_handover(past, history) else ""
    when = f"{handed[0].upper()}{handed[1:]} on {past.day}" if handed else f"On {past.day}"
    return f"{when}{words.BEFORE_REPAIR if past.mended else ''}: {reading_text(past.reading, book)}."


def was_and_is(history: History, reading: Reading, book: Book) -> str:
    """`Was 21 psi at handover, is 12 psi now.`; empty where it differs by no more than the instruments may be off."""
    past = history.compared(reading.check)
    if past is None or past.mended or not differs(book.checks[reading.check], past.reading, reading):
        return ""
    was, now = (_quoted(replace(r, instrument=None), book) for r in (past.reading, reading))
    return f"Was {was} {_when(past, history)}, is {now} now."


def change_sentence(change: Change, history: History) -> str:
    """`falls about 2 psi a year: 21 psi at handover, 12 psi now`, or `was 21 psi at handover, is 12 psi now`.

    What merely changed is told with all its places, so that several places of a check say the same.
    """
    when = _when(change.was, history)
    if change.trend is None:
        first, last = (show_values(r.reading.values) for r in (change.was, change.now))
        return f"was {first} {when}, is {last} now"
    was, now = (r.reading.values[change.place] for r in (change.was, change.now))
    place = f"{change.place} " if change.place else ""
    goes = "rises" if change.trend.slope > 0 else "falls"
    rate = show_number(abs(change.trend.slope) / now.unit.factor, 2)
    return f"{place}{goes} about {rate} {now.unit.symbol} a year: {was} {when}, {now} now"


def times(count: int) -> str:
    """How often, in words.

    >>> times(2), times(3)
    ('twice', '3 times')
    """
    return "twice" if count == 2 else f"{count} times"


def history_block(history: History, book: Book, width: int) -> list[Line]:
    """What is worth knowing before the first question; nothing where there is no history."""
    if not history:
        return []
    lines = wrap(f"{words.THIS_MACHINE}{_since(history)}.", width, role="heading")
    came_back = [f"{_title(book, r.cause)}, {times(r.times)} since {r.since:%Y-%m}" for r in history.repeated]
    changes = changes_of(history, book)
    told = [(c.trend is not None, labelled(book.title(c.check), change_sentence(c, history))) for c in changes]
    drifts, others = (list(dict.fromkeys(text for drift, text in told if drift is kind)) for kind in (True, False))
    for label, texts in ((words.CAME_BACK, came_back), (words.DRIFTS, drifts), (words.CHANGED, others)):
        if texts:
            more = [f"{len(texts) - _MOST} more"] if len(texts) > _MOST else []
            lines += wrap(f"{label}: {'; '.join([*texts[:_MOST], *more])}.", width, "  ", "    ")
    if history.unread:
        lines += wrap(f'{words.SOME_UNREAD}"{history.machine}"', width, "  ", "    ", "dim")
    return lines


def history_pages(history: History, book: Book, width: int) -> list[Line]:
    """Baseline, jobs, readings over time, causes that came back, and what could not be read."""
    if not history:
        return wrap(words.NO_HISTORY, width)
    base = history.baseline
    lines = wrap(_baseline(base) if base else words.NO_BASELINE, width)
    pages = (
        (words.JOBS_OF_IT, [line for job in history.jobs for line in _job(job, book, width)]),
        (words.READ_OVER_TIME, _readings(history, book, width)),
        (words.CAME_BACK, [line for each in history.repeated for line in _repeated(each, book, width)]),
        (words.UNREAD_HERE, [line for told in history.unread for line in wrap(told, width, "  - ", "    ")]),
    )
    for title, page in pages:
        if page:
            lines += [Line(), *wrap(title, width, role="heading"), *page]
    return lines


def _since(history: History) -> str:
    count = len(history.since_baseline)
    jobs = f"{count} {'job' if count == 1 else 'jobs'}" if count else "no job"
    if history.baseline is not None and history.baseline.ended is not None:
        return f"{jobs} since its handover on {history.baseline.ended.date()}"
    return f"{jobs} since {history.jobs[0].begun}, {words.NO_HANDOVER}" if history.jobs else words.NONE_READABLE


def _baseline(base: PastJob) -> str:
    count = len(base.last())
    day = base.ended.date() if base.ended else base.begun
    return f"{words.BASELINE}: handed over on {day} ({base.job}), {count} {'check' if count == 1 else 'checks'} read."


def _job(job: PastJob, book: Book, width: int) -> list[Line]:
    told = ["; ".join(_title(book, c) for c in job.complaints)] if job.complaints else []
    mended = dict.fromkeys(_title(book, m.cause) for m in job.mended)
    if mended:
        told.append(f"{words.REPAIRED}: {'; '.join(mended)}")
    elif job.how == "repaired":
        told.append(words.NOT_SEEN_FAULTY)
    how = words.CLOSED[job.how] if job.how else words.STILL_OPEN
    told.append(f"{how[0].upper()}{how[1:]} ({job.job})")
    return wrap(". ".join(told) + ".", width, f"  {job.begun}  ", "      ")


def _readings(history: History, book: Book, width: int) -> list[Line]:
    changed: dict[str, dict[str, None]] = {}
    for change in changes_of(history, book):
        text = f"{_kind(change)}: {change_sentence(change, history)}{_band(change)}."
        changed.setdefault(change.check, {})[text] = None
    lines: list[Line] = []
    looks = 0
    for name, readings in history.over_time.items():
        if not readings[-1].reading.values and len({r.job for r in readings}) == 1:
            looks += 1
            continue
        start = history.compared(name) if history.baseline else None
        first = start if start is not None and _at_handover(start, history) else readings[0]
        ends = [first] if readings[-1] is first else [first, readings[-1]]
        told = ", ".join(_dated(r, history, book) for r in ends)
        count = f"; {len(readings)} readings" if len(readings) > 2 else ""
        line = labelled(book.title(name), f"{told}{count}")
        lines += wrap(f"{line}  {_spark(readings)}".rstrip(), width, "  ", "    ")
        for text in changed.get(name, ()):
            lines += wrap(text, width, "    ", "      ")
    return lines + (wrap(words.LOOKS.format(count=looks), width, "  ", role="dim") if looks else [])


def _kind(change: Change) -> str:
    return words.DRIFTS if change.trend else words.CHANGED


def _band(change: Change) -> str:
    if change.trend is None:
        return words.BEYOND_ERRORS
    factor = change.now.reading.values[change.place].unit.factor
    ends = sorted((change.trend.low / factor, change.trend.high / factor), key=abs)
    low, high = (show_number(abs(end), 2) for end in ends)
    return f" (likely {low} to {high} a year)" if low != high and ends[0] * ends[1] > 0 else ""


def _dated(past: PastReading, history: History, book: Book) -> str:
    return f"{_quoted(past.reading, book)} {_when(past, history)}{words.BEFORE_REPAIR if past.mended else ''}"


def _repeated(each: Repeated, book: Book, width: int) -> list[Line]:
    count = f"{times(each.times)} since {each.since:%Y-%m}; {words.LOOK_WHY}"
    lines = wrap(f"{_title(book, each.cause)}: {count}", width, "  ", "    ")
    return lines + (wrap(book.causes[each.cause].why, width, "    ") if each.cause in book.causes else [])


def _spark(readings: Sequence[PastReading]) -> str:
    """Low to high as `_ . - ^`, signs every terminal has; empty for fewer than three, and for several places."""
    values = [next(iter(r.reading.values.values())).si for r in readings if len(r.reading.values) == 1]
    if len(values) < 3 or len(values) < len(readings) or max(values) == min(values):
        return ""
    return "".join(_signs(values))


def _signs(values: Sequence[float]) -> Iterator[str]:
    low, high = min(values), max(values)
    for value in values[-20:]:
        yield "_.-^"[min(int((value - low) / (high - low) * 4), 3)]


def _at_handover(past: PastReading, history: History) -> bool:
    return history.baseline is not None and past.job == history.baseline.job


def _when(past: PastReading, history: History) -> str:
    return words.AT_HANDOVER if _at_handover(past, history) else f"on {past.day}"


def _quoted(reading: Reading, book: Book) -> str:
    """A chosen answer in quotation marks, a figure as it is."""
    text = reading_text(reading, book)
    return text if reading.outcome is None else f'"{text}"'


def _title(book: Book, node: str) -> str:
    try:
        return book.title(node)
    except KeyError:
        return node
