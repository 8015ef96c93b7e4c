"""What one who follows a job is shown: each event as it comes, how the ranking moved, what is asked now."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from diagnose.desk.now_asked import asked_now, next_of
from diagnose.dialogue.news import News
from diagnose.dialogue.requests import AskCaution, AskCheck, Ended, Stopped, Waiting
from diagnose.dialogue.scene import Scene
from diagnose.job import events as ev
from diagnose.view import desk_words, words
from diagnose.view.layout import Line, wrap
from diagnose.view.summary import job_head, summary_block
from diagnose.view.together import beside_block, event_text, who

__all__ = ["Feed", "shown_here"]

_LAST = 8  # earlier answers shown to who comes later
# What only steers the dialogue there says nothing to who looks on.
_UNSHOWN = (ev.TurnedTo, ev.InstrumentChosen, ev.Acknowledged, ev.PlateWanted)


def shown_here(record: ev.Record) -> bool:
    """Whether an event is shown to who follows."""
    return not isinstance(record.event, _UNSHOWN)


class Feed:
    """One job as it is followed, on a journal of its own. It writes nothing."""

    def __init__(self, scene: Scene) -> None:
        self.scene = scene
        self._news = News(self.scene, moved=True)

    @property
    def done(self) -> bool:
        """Whether the job is closed."""
        return self.scene.state.closed is not None

    def catch_up(self, width: int, bars: bool = False) -> Iterator[list[Line]]:
        """Where it stands now: the job, its last answers, the ranking, what is asked."""
        scene = self.scene
        lines = job_head(scene.state, scene.book, scene.session.job, width)
        records = [record for record in scene.session.records if shown_here(record)]
        if len(records) > _LAST:
            told = desk_words.EARLIER.format(count=len(records) - _LAST, job=scene.session.job)
            lines += wrap(told, width, "  ", role="dim")
        lines += self._told(records[-_LAST:], width)
        yield lines
        self._news.keep_quiet()
        if self.done:
            yield self._closed(width)
            return
        yield self._news.standing(width, bars) + beside_block(scene.state, scene.book, width)
        yield self._asked(width)

    def fresh(self, width: int, bars: bool = False) -> Iterator[list[Line]]:
        """What came since: the events at once, then what follows from them, then what is asked now."""
        came = self.scene.session.refresh()
        if not came:
            return
        yield [Line(), *self._told([r for r in came if shown_here(r)], width)]
        if self.done:
            yield self._closed(width)
            return
        yield self._news.lines(width, bars)
        yield self._asked(width)

    def _told(self, records: Sequence[ev.Record], width: int) -> list[Line]:
        """An event a line: the number of its question, the time, what was said and by whom where several write."""
        state, book = self.scene.state, self.scene.book
        questions = {number: nth for nth, number in enumerate(state.answers, 1)}
        several = len({record.writer for record in self.scene.session.records}) > 1
        lines: list[Line] = []
        for record in records:
            text = _withdrawn(record, self.scene) or event_text(record, state, book)
            answer = record.number in questions
            by = f" ({who(state, record.writer)})" if several and answer else ""
            lead = f"{questions.get(record.number, ''):>3}  {record.at[11:16]}  "
            lines += wrap(text + by, width, lead, " " * len(lead))
        return lines

    def _asked(self, width: int) -> list[Line]:
        """What is asked there now, and what else would be good."""
        request = next_of(self.scene)
        if isinstance(request, Ended | Stopped | Waiting):
            return []
        lead = desk_words.NOW_ASKED.format(number=request.number)
        lines = wrap(lead + asked_now(request, self.scene), width, "", "  ", "question")
        options = request.options[1:] if isinstance(request, AskCheck | AskCaution) else ()
        for option in options:
            lines += wrap(option.title(self.scene.book), width, f"  {desk_words.ALSO_GOOD}", "    ")
        return lines

    def _closed(self, width: int) -> list[Line]:
        scene = self.scene
        head = wrap(desk_words.NOW_CLOSED, width, role="heading")
        return [*head, *summary_block(scene.state, scene.book, scene.session.job, scene.rows, width)]


def _withdrawn(record: ev.Record, scene: Scene) -> str:
    """What was taken back, in words; empty for any other event."""
    if not isinstance(record.event, ev.Withdrawn):
        return ""
    key = (record.event.of or record.writer, record.event.number)
    before = next((r for r in scene.session.records if r.key == key), None)
    told = event_text(before, scene.state, scene.book) if before is not None else "?"
    return words.TAKEN_BACK + told
