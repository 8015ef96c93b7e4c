"""The conversation of an exercise: ask what is done, keep it, show what the machine shows."""

from __future__ import annotations

from collections.abc import Callable

from diagnose.practice import show, words
from diagnose.practice.care import ways
from diagnose.practice.course import Course
from diagnose.practice.finding import Listing, causes_of, checks_of
from diagnose.practice.kept import Looked, Noted, Said, Step, Turned, Worked
from diagnose.practice.telling import why_lines
from diagnose.terminal.choosing import number_from
from diagnose.terminal.front import Front, Paused
from diagnose.terminal.letters import Letter, letter_in
from diagnose.terminal.refusals import Refused, Told
from diagnose.view.layout import Line, wrap
from diagnose.view.ranking import ranking_block

__all__ = ["Room"]


class Room:
    """One trainee at one exercise; `keep` puts a step on disk before it is played."""

    def __init__(self, course: Course, front: Front, keep: Callable[[Step], None]) -> None:
        self._course, self._front, self._keep = course, front, keep
        self._checks: Listing = checks_of(course.practice)
        self._causes: Listing = causes_of(course.book, course.practice.machine)

    def run(self) -> None:
        """Talk until the cause is repaired or said. Raises Paused."""
        self._front.say(show.begin_lines(self._course, self._width))
        if self._course.asked or self._course.turned.what:
            self._front.say(wrap(words.RESUMED, self._width))
            self._front.say(show.so_far_lines(self._course, self._width))
        while not self._course.closed:
            self._front.say([Line(), *self._question()])
            self._exchange()

    @property
    def _width(self) -> int:
        return self._front.width

    def _question(self) -> list[Line]:
        turned = self._course.turned
        if turned.what == "end":
            return show.end_lines(self._course, self._width)
        if turned.what in ("check", "repair") and turned.id:
            return show.choice_lines(self._course, turned.what, turned.id, self._width)
        if turned.what == "repair":
            return wrap(words.REPAIR_ASK, self._width)
        return show.question_lines(self._course, self._width)

    def _exchange(self) -> None:
        """Ask until something is done."""
        edit, going = "", True
        while going:
            text = self._front.ask("", edit)
            edit = ""
            try:
                going = not self._answered(text)
            except Told as told:
                self._front.say(told.lines)
            except Refused as refused:
                edit = refused.kept
                self._front.say(wrap(str(refused), self._width, role="refused"))

    def _answered(self, text: str) -> bool:
        """Whether the answer led on; else the question stands. Raises Refused and Told."""
        turned = self._course.turned
        letter = letter_in(text, free=bool(turned.what))
        if letter is not None and (not letter.more or letter.letter in "cgwn"):
            return self._letter(letter)
        if turned.what == "end":
            return self._said(text)
        if turned.what and turned.id:
            return self._first(turned, text)
        if turned.what == "repair":
            return self._take(Turned()) if not text else self._begin("repair", self._causes.meant(text, self._width))
        if not text:
            raise Refused(f"Enter alone is no answer here. {words.WHAT_HINT}")
        return self._check(text)

    def _check(self, text: str) -> bool:
        name = self._checks.meant(text, self._width)
        if not self._course.practice.can_read(name):
            raise Refused(f"{self._course.book.title(name)}: {words.NOT_HERE}")
        return self._begin("check", name)

    def _begin(self, what: str, name: str) -> bool:
        """Do it, or ask first what is done before."""
        self._checks.forget()
        self._causes.forget()
        if self._course.choice_due(what, name):
            return self._take(Turned(what, name))
        return self._take(Worked(what, name))

    def _first(self, turned: Turned, text: str) -> bool:
        offered = ways(self._course.entry(turned.what, turned.id), self._course.book, self._course.exercise.seed)
        way = offered[number_from(text, len(offered)) - 1].id
        return self._take(Turned()) if way == "leave" else self._take(Worked(turned.what, turned.id, way))

    def _said(self, text: str) -> bool:
        if not text and not self._course.said:
            return self._take(Turned())
        given_up = text.casefold() in ("give up", "i give up")
        name = self._causes.meant(text, self._width) if text and not given_up else ""
        if name in self._course.said:
            raise Refused("That one is said already. Another, or Enter alone: that is all.")
        return self._take(Said(name))

    def _take(self, step: Step) -> bool:
        """Keep the step, play it, and show what came of it."""
        self._keep(step)
        idle = self._course.idle
        shown = self._course.take(step)
        self._front.say(show.done_lines(self._course, shown, self._width))
        if self._course.idle > idle:
            self._front.say(wrap(words.NOTHING_TO_READ, self._width, role="refused"))
        return True

    def _letter(self, letter: Letter) -> bool:
        match letter.letter:
            case "p":
                raise Paused
            case "h" | "?":
                raise Told(show.help_lines(self._width))
            case "i":
                raise Told(show.info_lines(self._course, self._width))
            case "w":
                self._why(letter.more)
            case "r":
                self._look("ranking")
                rows = self._course.practice.judged().rows
                block = ranking_block(rows, self._width, 9, self._front.bars)
                raise Told([line for line in block if line.role != "keys"])
            case "n":
                self._note(letter.more)
            case "b" | "s" | "u":
                if not self._course.turned.what:
                    raise Refused(words.NO_UNDO)
                return self._take(Turned())
            case "e":
                return self._take(Turned("end"))
            case "g":
                return self._repair(letter.more)
            case "c":
                if not letter.more:
                    raise Refused(words.WHAT_HINT)
                return self._check(letter.more)
        raise Refused(f"{letter.letter} is no letter of practice; h lists them.")

    def _repair(self, more: str) -> bool:
        """Go to a repair; where the words may mean several, the next question is which."""
        if not more:
            return self._take(Turned("repair"))
        try:
            name = self._causes.meant(more, self._width)
        except Told as told:
            self._front.say(told.lines)
            return self._take(Turned("repair"))
        return self._begin("repair", name)

    def _why(self, more: str) -> None:
        read = [each.id for each in self._course.path if each.what != "repair"]
        if not more and not read:
            raise Refused("Nothing was read yet.")
        name = self._checks.meant(more, self._width) if more else read[-1]
        self._look(f"why {name}")
        raise Told(why_lines(self._course, name, self._width))

    def _note(self, text: str) -> None:
        if not text:
            raise Refused("Write the note behind the letter: n L3 alone is right.")
        self._take(Noted(text))
        raise Told(wrap("Noted.", self._width))

    def _look(self, what: str) -> None:
        self._keep(Looked(what))
        self._course.take(Looked(what))
