"""`diagnose desk board`: the open jobs on the terminal, looked through page by page, followed by one keystroke."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from datetime import UTC, datetime

from diagnose.desk.board_filters import Wanted, chosen, with_words
from diagnose.desk.board_leading import Lead, Leading
from diagnose.desk.board_lines import Place, board_lines, head_line, help_lines, keys_lines
from diagnose.desk.open_jobs import OpenJob, OpenJobs
from diagnose.job.journal import Journal
from diagnose.model import Book
from diagnose.terminal.front import Front, Paused
from diagnose.terminal.letters import letter_in
from diagnose.terminal.refusals import Refused
from diagnose.view import board_words
from diagnose.view import words as all_words
from diagnose.view.layout import Line, wrap

__all__ = ["PAGE", "Board", "board_once"]

PAGE = 9
_AT_ONCE = "1234567890"
_FEWEST = 3  # rows of a page, however low the screen
_MANY = 20  # jobs to be worked out; from so many on it is said, since it takes a while


def utc_now() -> datetime:
    """The time by this computer's clock."""
    return datetime.now(UTC)


def board_once(
    jobs: OpenJobs, leading: Leading, wanted: Wanted, sort: str, clock: Callable[[], datetime] = utc_now
) -> tuple[list[tuple[OpenJob, Lead]], int]:
    """All rows asked for with what leads in each, and how many jobs are open in all."""
    rows = jobs.rows()
    return [(row, leading.of(row)) for row in chosen(rows, wanted, sort, clock())], len(rows)


class Board:
    """The board with one person before it. `follow` shows one job until they come back from it."""

    def __init__(
        self,
        book: Book,
        journal: Journal,
        leading: Leading,
        front: Front,
        follow: Callable[[str], None],
        wanted: Wanted | None = None,
        sort: str = "touched",
        clock: Callable[[], datetime] = utc_now,
    ) -> None:
        self._journal = journal
        self._jobs = OpenJobs(journal, book)
        self._leading = leading
        self._front = front
        self._follow = follow
        self._wanted = wanted or Wanted()
        self._sort = sort
        self._clock = clock
        self._words = ""
        self._first = 0  # place of the first row shown
        self._shown: Sequence[OpenJob] = ()
        self._changed = False

    def run(self) -> None:
        """Show the board and do what is typed, until the person leaves."""
        try:
            while True:
                self._show()
                while not self._typed():
                    pass
        except Paused:
            return

    def _show(self) -> None:
        """One page as it stands now."""
        self._journal.changed()
        self._changed = False
        rows = self._jobs.rows()
        self._leading.forget_all_but(row.job for row in rows)
        found = chosen(rows, self._wanted, self._sort, self._clock())
        if self._words:
            self._say_long(found)
            found = with_words(found, self._words, self._leading.of)
        if self._first >= len(found):
            self._first = 0
        told = [(row, self._leading.of(row)) for row in found[self._first : self._first + PAGE]]
        width, place = self._front.width, Place(self._first + 1, len(found), len(rows), self._sort, self._words)
        room = self._front.height - 1  # the line that is typed on
        lines = self._page(told, place, width)
        while len(lines) > room and len(told) > _FEWEST:
            told.pop()
            lines = self._page(told, place, width)
        self._shown = [row for row, _ in told]
        self._front.say(lines)

    def _page(self, told: Sequence[tuple[OpenJob, Lead]], place: Place, width: int) -> list[Line]:
        head = head_line(place, len(told), width)
        return [Line(), *head, *board_lines(told, self._clock(), width), *keys_lines(width)]

    def _say_long(self, rows: Sequence[OpenJob]) -> None:
        """Words are looked for in what leads too: say so where that must be worked out first."""
        missing = len(self._leading.missing(rows))
        if missing >= _MANY:
            self._front.say(wrap(board_words.WORKING.format(count=missing), self._front.width, role="dim"))

    def _typed(self) -> bool:
        """Do what is typed; whether the board is to be shown anew."""
        text = self._front.ask(at_once=_AT_ONCE, notice=self._notice)
        try:
            return self._do(text)
        except Refused as refused:
            self._front.say(wrap(str(refused), self._front.width, role="refused"))
            return False

    def _do(self, text: str) -> bool:
        if not text:
            return True
        if text.startswith("/"):
            return self._look_for(text[1:].strip())
        if text.isascii() and text.isdigit():
            return self._number(int(text[:6]))
        letter = letter_in(text, free=True)
        if letter is None:
            return self._look_for(text)
        match letter.letter:
            case "p":
                raise Paused
            case "b":
                return self._back()
            case "h" | "?":
                self._front.say(help_lines(self._front.width))
                return False
        raise Refused(all_words.NO_LETTER_HERE)

    def _number(self, number: int) -> bool:
        """A row of this page is followed; 0 turns the page."""
        if number == 0:
            self._first += len(self._shown) or PAGE
            return True
        if number > len(self._shown):
            raise Refused(board_words.NO_NUMBER.format(last=len(self._shown)) if self._shown else board_words.NO_JOBS)
        job = self._shown[number - 1].job
        if not self._journal.has(job):
            raise Refused(board_words.NOT_OPEN.format(job=job))
        self._follow(job)
        return True

    def _back(self) -> bool:
        """The page before; from the first page all jobs again."""
        if self._first:
            self._first = max(0, self._first - PAGE)
        elif self._words:
            self._words = ""
        else:
            raise Refused(board_words.NO_BEFORE)
        return True

    def _look_for(self, text: str) -> bool:
        self._words, self._first = text, 0
        return True

    def _notice(self) -> str:
        """What stands beside the line that is typed on: whether the board is out of date."""
        self._changed = self._journal.changed() or self._changed
        return f"{board_words.CHANGED} " if self._changed else ""  # the last column of a screen is best left alone
