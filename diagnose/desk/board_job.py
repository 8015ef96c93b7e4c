"""One job as a page: how it stands, what is next, hints, what does not fit, the ranking, what is known, its course."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from datetime import datetime, tzinfo

from diagnose.desk.board_course import course_blocks, said_by
from diagnose.desk.board_known import known_blocks
from diagnose.desk.board_next import next_blocks
from diagnose.desk.open_jobs import minutes_since, short, time_of, waiting_of
from diagnose.dialogue.scene import Scene
from diagnose.handover.sheet import sheet_of
from diagnose.job.journal import Journal
from diagnose.job.session import Session
from diagnose.model import Book
from diagnose.report.document import Block, Facts, Paragraph, Row, Table, cleaned
from diagnose.view import board_words as words
from diagnose.view.layout import number_word, percent
from diagnose.view.ranking import SHOWN
from diagnose.view.sheet import counts_text
from diagnose.view.together import beside_sentences, hint_text
from diagnose.view.trouble import trouble

__all__ = ["JobLook", "JobPage", "Section"]


@dataclass(frozen=True)
class Section:
    """A part of the page under its own heading; `id` is its place in the page, which stays the same."""

    id: str
    title: str
    blocks: tuple[Block, ...]


@dataclass(frozen=True)
class JobPage:
    """All that the page of a job says, cleaned."""

    job: str
    title: str
    subtitle: str
    sections: tuple[Section, ...]


class JobLook:
    """One job in view. What was worked out stays while its events are the same."""

    def __init__(self, book: Book, journal: Journal, job: str, zone: tzinfo | None = None) -> None:
        self._book = book
        self._journal = journal
        self._job = job
        self._zone = zone
        self._mark: object = None
        self._scene: Scene | None = None

    def page(self, now: datetime) -> JobPage:
        """The page as it stands now. A job that can't be read says so on its page."""
        try:
            scene = self._looked_at()
            subtitle, sections = _subtitle(scene), tuple(self._sections(scene, now))
        except Exception as error:
            sentence, _ = trouble(error)
            told = Paragraph(sentence.removeprefix("diagnose: "), "caution")
            subtitle, sections = "", (Section("trouble", words.UNREADABLE, (told,)),)
        return JobPage(self._job, *cleaned((words.JOB.format(job=short(self._job)), subtitle, sections)))

    def _looked_at(self) -> Scene:
        session = Session(self._book, self._journal, self._job)
        mark = [(record.key, record.number) for record in session.records]
        if self._scene is None or mark != self._mark:
            self._scene, self._mark = Scene(session, self._journal.path.parent / "machines"), mark
        return self._scene

    def _sections(self, scene: Scene, now: datetime) -> Iterator[Section]:
        state, book = scene.state, scene.book
        parts: tuple[tuple[str, str, Iterator[Block]], ...] = (
            ("now", words.NOW, _now(scene, now, self._zone)),
            ("next", words.NEXT, next_blocks(scene)),
            ("hints", words.HINTS, _hints(scene)),
            ("twice", words.TWICE, _twice(scene)),
            ("ranking", words.RANKING, _ranking(scene)),
            ("known", words.KNOWN, known_blocks(scene)),
            ("course", words.COURSE, course_blocks(scene.session.records, state, book, self._zone)),
        )
        for name, title, blocks in parts:
            made = tuple(blocks)
            if made:
                yield Section(name, title, made)


def _subtitle(scene: Scene) -> str:
    """Where it is, and what is complained of."""
    machine, book = scene.state.machine, scene.book
    own = machine.name if machine is not None and machine.name != machine.type.id else ""
    where = (machine.site or own or machine.type.title) if machine is not None else ""
    titles = "; ".join(book.title(c) for c in scene.state.present if c in book.complaints)
    return ": ".join(text for text in (short(where), titles) if text)


def _now(scene: Scene, now: datetime, zone: tzinfo | None) -> Iterator[Block]:
    state, machine, records = scene.state, scene.state.machine, scene.session.records
    times = [time for time in (time_of(record.at) for record in records) if time is not None]
    own = machine.name if machine is not None and machine.name != machine.type.id else ""
    writers = dict.fromkeys(record.writer for record in records)
    stop = scene.book.stops.get(state.stop or "")
    if stop is not None:
        yield Paragraph(" ".join((stop.ask, *stop.instruction)), "caution")
    facts = {
        "waits": waiting_of(state, records, scene.book).told if state.closed is None else "",
        "site": machine.site if machine else "",
        "machine": own,
        "type": machine.type.title if machine else "",
        "serial": machine.serial if machine else "",
        "purpose": words.PURPOSE[state.purpose],
        "begun": _ago(min(times, default=None), now, zone),
        "touched": _ago(max(times, default=None), now, zone),
        "here": "; ".join(said_by(state, writer, len(writers) > 1) for writer in writers),
    }
    if state.purpose == "handover" and machine is not None:
        facts["sheet"] = counts_text(sheet_of(scene.book, state))
    yield Facts(tuple((words.FACTS[name], text) for name, text in facts.items() if text))
    if times and max(times) > now and words.age(minutes_since(max(times), now)) == words.AHEAD:
        yield Paragraph(words.AHEAD_TOLD, "note")


def _ago(time: datetime | None, now: datetime, zone: tzinfo | None) -> str:
    if time is None:
        return ""
    told, age = f"{time.astimezone(zone):%Y-%m-%d %H:%M}", words.age(minutes_since(time, now))
    return told if age == words.AHEAD else words.AGO.format(time=told, age=age)


def _hints(scene: Scene) -> Iterator[Block]:
    stands = {None: words.HINT_OPEN, True: words.HINT_TAKEN, False: words.HINT_LEFT}
    rows = []
    for hint in scene.state.hints:
        cells = (said_by(scene.state, hint.writer), hint_text(hint.given, scene.book), stands[hint.taken])
        rows.append(Row(cells, "doubt" if hint.taken is None else ""))
    if rows:
        yield Table(words.HINT_CAPTION, words.HINT_HEADERS, tuple(rows), 2)


def _twice(scene: Scene) -> Iterator[Block]:
    """Answers that two people gave differently, and readings that can't well all be right."""
    for sentence in beside_sentences(scene.state, scene.book):
        yield Paragraph(sentence, "caution")
    for sentence in scene.conflicts if scene.ranked and not scene.on_sheet else ():
        yield Paragraph(sentence, "caution")


def _ranking(scene: Scene) -> Iterator[Block]:
    """The first rows, every row of what is not listed, and one for the rest, as on the terminal."""
    if scene.on_sheet or not scene.ranked:
        return
    rows, hidden, most = [], 0, 0.0
    for rank, row in enumerate(scene.rows, 1):
        if rank <= SHOWN or row.kind == "unlisted":
            rows.append(Row((str(rank), percent(row.probability).strip(), row.title)))
        else:
            hidden, most = hidden + 1, max(most, row.probability)
    if hidden:
        told = words.MORE_CAUSES.format(count=number_word(hidden)) if hidden > 1 else words.ONE_MORE
        rows.append(Row(("", percent(most).strip(), told)))
    if rows:
        yield Table(words.RANK_CAPTION, words.RANK_HEADERS, tuple(rows))
