"""What stands on the screen during an exercise, as lines."""

from __future__ import annotations

from collections.abc import Sequence

from diagnose.model import PLATE_FIGURES, Cause, Check
from diagnose.practice import words
from diagnose.practice.care import ways
from diagnose.practice.course import Course
from diagnose.practice.machine import Shown
from diagnose.units import show_number
from diagnose.view.history import answer_text
from diagnose.view.layout import Line, flow, labelled, wrap
from diagnose.view.question import access, choices, heading, keys, paragraphs
from diagnose.view.words import minutes

__all__ = [
    "begin_lines",
    "choice_lines",
    "done_lines",
    "end_lines",
    "help_lines",
    "info_lines",
    "minutes_text",
    "question_lines",
    "so_far_lines",
]

# The figures of a plate that are told at once; the letter i shows all.
_FIRST = ("volts", "booster_power", "rinse_flow", "rinse_pressure", "rinse_temperature", "wash_temperature")
_SHORT = {
    "volts": "supply",
    "booster_power": "booster",
    "rinse_flow": "final rinse",
    "rinse_pressure": "at",
    "rinse_temperature": "rinse at least",
    "wash_temperature": "wash at least",
}


def begin_lines(course: Course, width: int) -> list[Line]:
    """That it is practice, the story, and the first figures of the plate."""
    exercise = course.exercise
    lines = wrap(words.INVENTED, width, role="dim")
    level = f"Level {exercise.level}. " if exercise.level else ""
    lines += [Line(), *wrap(f"{level}{exercise.title}", width, role="heading")]
    for sentence in exercise.story:
        lines += wrap(sentence, width)
    plate = course.practice.machine
    told = [f"{_SHORT[name]} {figure}" for name in _FIRST if (figure := plate.plate(name)) is not None]
    return lines + wrap(f"Plate: {', '.join(told)} (i: all of it).", width)


def question_lines(course: Course, width: int) -> list[Line]:
    """The question of every turn."""
    spent = f"{minutes_text(course.practice.minutes)} so far"
    lines = heading(course.asked + 1, width, [spent])
    lines += wrap(words.WHAT_NEXT, width)
    if not course.asked:
        lines += wrap(words.WHAT_HINT, width, "  ", role="dim")
    return lines + keys(words.KEYS, width)


def choice_lines(course: Course, what: str, name: str, width: int) -> list[Line]:
    """What to do first, before work that can hurt."""
    entry = course.entry(what, name)
    kind = "Check" if what == "check" else "Repair"
    lines = heading(course.asked + 1, width, access_here(course, entry))
    lines += wrap(f"{kind}: {entry.title}", width) + wrap(words.FIRST, width, role="caution")
    lines += choices([way.text for way in ways(entry, course.book, course.exercise.seed)], width)
    return lines + keys(words.KEYS_SUB, width)


def access_here(course: Course, entry: Check | Cause) -> list[str]:
    """Minutes and covers; the machine's state is the trainee's to say."""
    own, *opened = access(entry)
    covers = [each for each in opened if each.startswith(("open:", "tank", "nothing"))]
    return [own, *covers]


def end_lines(course: Course, width: int) -> list[Line]:
    """The question for the cause."""
    lines = heading(course.asked + 1, width)
    if course.said:
        said = "; ".join(course.book.title(name) for name in course.said)
        lines += wrap(f"Said: {said}.", width, role="good")
        return lines + wrap(words.CAUSE_MORE, width) + wrap(words.CAUSE_HINT, width, "  ", role="dim")
    lines += wrap(words.CAUSE_ASK, width)
    lines += wrap("In your own words, or list.", width, "  ", role="dim")
    return lines + wrap(words.GIVE_UP, width, "  ", role="dim") + keys(words.KEYS_SUB, width)


def done_lines(course: Course, shown: Sequence[Shown], width: int) -> list[Line]:
    """What a piece of work showed, and what the kitchen says after a repair."""
    lines: list[Line] = []
    for each in shown:
        if each.what == "repair":
            lines += wrap(labelled(course.book.title(each.id), words.FAULTY if each.found else words.SOUND), width)
        else:
            lines += wrap(answer_text(each.event, course.book), width, role="good")
        lines += wrap(minutes_text(each.minutes), width, "  ", role="dim")
    if shown and shown[0].found:
        present = course.practice.state.present
        still = "; ".join(course.book.title(c) for c in present)
        lines += wrap(
            f"{words.STILL_SO}{still}." if present else words.PROVED, width, role="refused" if still else "good"
        )
    return lines


def info_lines(course: Course, width: int) -> list[Line]:
    """The story, the plate and the readings."""
    lines = wrap(course.exercise.title, width, role="heading")
    for sentence in course.exercise.story:
        lines += wrap(sentence, width, "  ")
    lines += [Line("Plate", "heading")]
    machine = course.practice.machine
    figures = [(PLATE_FIGURES[name].ask, machine.plate(name)) for name in PLATE_FIGURES]
    lines += flow([f"{ask}: {figure}" for ask, figure in figures if figure is not None], width)
    return lines + so_far_lines(course, width)


def so_far_lines(course: Course, width: int) -> list[Line]:
    """What was read and done, and noted."""
    lines = [Line("Done so far", "heading")] if course.path or course.notes else []
    for each in course.path:
        lines += wrap(path_text(course, each), width, "  ", "    ")
    for note in course.notes:
        lines += wrap(f"Note: {note}", width, "  ", "    ")
    return lines


def path_text(course: Course, shown: Shown) -> str:
    """One piece of work in a line."""
    if shown.what == "repair":
        return f"Repair: {course.book.title(shown.id)}: {'faulty' if shown.found else 'sound'}"
    return answer_text(shown.event, course.book)


def help_lines(width: int) -> list[Line]:
    """All letters of practice, and how to go about."""
    lines: list[Line] = []
    for letter, meaning in words.LETTERS:
        lines += wrap(meaning, width, f"  {letter}  ")
    return lines + paragraphs(words.HELP, width)


def minutes_text(amount: float) -> str:
    """Minutes in words, without a tail of digits."""
    return minutes(float(show_number(amount, 3)))
