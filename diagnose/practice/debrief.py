"""The debrief: what it was and why it showed so, your path beside the best, what each check told, and care."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import takewhile, zip_longest

from diagnose.practice.best import Best, Told, best_path, settling, told
from diagnose.practice.course import Course
from diagnose.practice.machine import Shown
from diagnose.practice.show import minutes_text, path_text
from diagnose.units import Quantity, show_number
from diagnose.view.layout import RECORDS_BELOW, Line, number_word, percent, text_width, wrap
from diagnose.view.question import paragraphs

__all__ = ["LONGEST", "Debrief", "debrief_of"]

# The unit in which an instrument's error is told, by the instrument as the simulator calls it.
_UNIT = {
    "reference thermometer": ("temperature difference", "F°"),
    "test gauge": ("pressure", "psi"),
    "voltmeter": ("voltage", "V"),
}

# Steps shown of the best path: judgement. Long paths tell a trainee little, and take minutes to weigh.
LONGEST = 14


@dataclass(frozen=True)
class Debrief:
    """All that the debrief tells, worked out once."""

    course: Course
    best: Best
    yours: Sequence[Told]
    settling: Sequence[Told]

    def lines(self, width: int) -> list[Line]:
        """The debrief as printed."""
        parts = (self._verdict, self._faults, self._paths, self._minutes, self._bits, self._settled, self._care)
        lines: list[Line] = [Line(), *wrap("Debrief", width, role="heading")]
        for part in parts:
            lines += part(width)
        return lines

    def _verdict(self, width: int) -> list[Line]:
        course = self.course
        if course.unsafe:
            text = "Failed: somebody would have been hurt (see Care)."
            text += " The cause was found." if course.found else ""
            return wrap(text, width, role="caution")
        if course.practice.solved:
            return wrap("Passed: repaired and proved.", width, role="good")
        if course.found:
            return wrap("Passed: you said the cause. A repair and its proof would still be due.", width, role="good")
        if not course.said:
            return wrap("Given up.", width, role="refused")
        said = "; ".join(course.book.title(name) for name in course.said)
        return wrap(f"Not found. You said: {said}.", width, role="refused")

    def _faults(self, width: int) -> list[Line]:
        course = self.course
        lines: list[Line] = []
        for name, _ in course.exercise.faults:
            lines += wrap(f"It was: {course.book.title(name)}.", width)
            lines += wrap(" ".join(course.world.faults[name].physics), width, "  ")
        for instrument, off in course.exercise.lies:
            lines += wrap(f"And your {instrument} lied: it read {_off(instrument, off)}.", width)
        return lines

    def _paths(self, width: int) -> list[Line]:
        course = self.course
        yours = [_step(course, each) for each in course.path] or ["nothing done"]
        best = [_step(course, each) for each in self.best.path]
        title = "The best path"
        if self.best.known:
            best.insert(len(best) - self.best.known, "(the advice finds it no sooner; from here as one who knows)")
        elif self.best.helped:
            title += " (where a job would have called for help)"
        if width < RECORDS_BELOW:
            return [*_listed("Your path", yours, width), *_listed(title, best, width)]
        return _beside("Your path", yours, title, best, width)

    def _minutes(self, width: int) -> list[Line]:
        course = self.course
        text = f"Minutes: {show_number(course.practice.minutes, 3)} of yours"
        if any(each.what == "repair" for each in course.practice.done):
            text += f"; {show_number(self.best.minutes, 3)} on the best path; "
        else:
            text += f" until you said the cause; {show_number(self._looking(), 3)} on the best path until its first "
            text += f"repair, {show_number(self.best.minutes, 3)} with all that was repaired and proved; "
        text += f"{self.best.expected:.0f} expected at the start."
        if course.idle:
            text += f" {show_number(course.idle, 3)} of yours went into making the machine dead for nothing."
        wrong = course.wrong_repairs
        if wrong:
            text += f" {number_word(wrong).capitalize()} repair{'s' if wrong > 1 else ''} of a sound part."
        looks = len(course.looked)
        if looks:
            often = "once" if looks == 1 else f"{number_word(looks)} times"
            text += f" The tool's judgement was asked for {often}."
        return wrap(text, width)

    def _looking(self) -> float:
        """Minutes of the best path before its first repair."""
        before = takewhile(lambda each: each.what != "repair", self.best.path)
        return sum(each.minutes for each in before)

    def _bits(self, width: int) -> list[Line]:
        if not self.yours:
            return []
        several = "; percentages: of the fault it moved most" if len(self.course.exercise.faults) > 1 else ""
        title = f"What each check told you (one bit doubles the odds of what it was{several})"
        lines = wrap(title, width, role="heading")
        for each in self.yours:
            lines += wrap(self._told(each), width, f"  {each.bits:+5.1f} bits  ")
        return lines

    def _settled(self, width: int) -> list[Line]:
        if not self.settling:
            return []
        lines = wrap("What could have settled it, asked first", width, role="heading")
        for each in self.settling:
            lines += wrap(f"{self._told(each)}, in {minutes_text(each.minutes)}", width, f"  {each.bits:+5.1f} bits  ")
        return lines

    def _told(self, each: Told) -> str:
        title = self.course.book.title(each.check).rstrip("?")
        return f"{title}: {percent(each.before).strip()} to {percent(each.after).strip()}"

    def _care(self, width: int) -> list[Line]:
        if not self.course.unsafe:
            return wrap("Care: nothing that could have hurt anybody.", width, role="good")
        lines = wrap("Care", width, role="heading")
        for each in self.course.unsafe:
            lines += wrap(each + ".", width, "  - ", "    ", "caution")
        cautions = dict.fromkeys(
            name
            for each in self.course.hurt
            for name in each.cautions
            if name in self.course.book.cautions and self.course.book.cautions[name].word
        )
        for name in cautions:
            caution = self.course.book.cautions[name]
            lines += wrap(caution.title, width, "  ") + paragraphs(caution.text, width, "    ")
        return lines


def debrief_of(course: Course) -> Debrief:
    """Play the best path on the same machine and weigh what was read."""
    book, world, exercise = course.book, course.world, course.exercise
    return Debrief(
        course,
        best_path(book, world, exercise, LONGEST),
        told(book, world, exercise, course.path),
        settling(book, world, exercise),
    )


def _step(course: Course, shown: Shown) -> str:
    lead = "Proof: " if shown.what == "proof" else ""
    return f"{lead}{path_text(course, shown)} ({show_number(shown.minutes, 3)} min)"


def _listed(title: str, steps: Sequence[str], width: int) -> list[Line]:
    lines = wrap(title, width, role="heading")
    for nth, step in enumerate(steps, 1):
        lines += wrap(step, width, f"  {nth}. ")
    return lines


def _beside(left: str, one: Sequence[str], right: str, other: Sequence[str], width: int) -> list[Line]:
    half = (width - 2) // 2
    lines = _row(wrap(left, half), wrap(right, half), half, "heading")
    for nth, (mine, best) in enumerate(zip_longest(one, other, fillvalue=""), 1):
        cells = [wrap(text, half, f"{nth}. ") if text else [] for text in (mine, best)]
        lines += _row(cells[0], cells[1], half, "")
    return lines


def _row(left: Sequence[Line], right: Sequence[Line], half: int, role: str) -> list[Line]:
    rows = zip_longest(left, right, fillvalue=Line())
    return [Line(f"{a}{' ' * (half + 2 - text_width(a))}{b}".rstrip(), role) for a, b in rows]


def _off(instrument: str, off: float) -> str:
    way = "too high" if off > 0 else "too low"
    if instrument not in _UNIT:
        return way
    dimension, symbol = _UNIT[instrument]
    return f"{show_number(Quantity.of_si(abs(off), dimension, symbol).value, 2)} {symbol} {way}"
