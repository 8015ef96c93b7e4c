"""The letters that change where the job goes: another check, a repair, ruling out, undo, note, danger."""

from __future__ import annotations

from collections.abc import Callable, Sequence

from diagnose.dialogue import requests as rq
from diagnose.dialogue.asides import cause_meant
from diagnose.dialogue.begin import safety_lines
from diagnose.dialogue.complain import complaints_in
from diagnose.dialogue.meters import choose_meter
from diagnose.dialogue.scene import Scene
from diagnose.job import events as ev
from diagnose.model import fits
from diagnose.terminal.choosing import number_from, short
from diagnose.terminal.front import Front, Paused
from diagnose.terminal.letters import letter_in
from diagnose.terminal.matcher import clear_winner, find
from diagnose.terminal.refusals import Refused
from diagnose.view import words
from diagnose.view.history import answer_text
from diagnose.view.layout import wrap
from diagnose.view.question import choices
from diagnose.view.ranking import ranking_block

__all__ = ["turn"]


def turn(letter: str, more: str, request: rq.Wanted, scene: Scene, front: Front) -> Sequence[ev.Event] | None:
    """The events a letter leads to; none of them when nothing was chosen. None: no letter of this kind.

    Raises Refused with a clear sentence.
    """
    acts: dict[str, Callable[[], Sequence[ev.Event]]] = {
        "c": lambda: _check(more, request, scene, front),
        "g": lambda: _repair(more, scene, front),
        "x": lambda: _rule_out(more, scene, front),
        "u": lambda: _undo(more, scene, front),
        "m": lambda: choose_meter(more, request, scene, front, _ask),
        "n": lambda: _note(more, front),
        "a": lambda: _add(more, scene),
        "!": lambda: _danger(scene, front),
        "e": lambda: _end(scene),
    }
    return acts[letter]() if letter in acts else None


def _check(more: str, request: rq.Wanted, scene: Scene, front: Front) -> Sequence[ev.Event]:
    if not scene.ranked:
        raise Refused(words.NOT_YET)
    options = request.options if isinstance(request, rq.AskCheck | rq.AskCaution | rq.Decide) else ()
    if more.isascii() and more.isdigit() and 1 <= int(more[:6]) <= len(options):
        option = options[int(more) - 1]
        return [ev.TurnedTo("end") if option.what == "help" else ev.TurnedTo(option.what, option.id)]
    wanted = more or _ask(words.WHICH_CHECK, front)
    if not wanted:
        return []
    machine = scene.state.machine
    titles = {
        c.id: [c.title, c.ask, c.id.replace(".", " ").replace("_", " ")]
        for c in scene.book.checks.values()
        if not c.computed and machine is not None and fits(machine, c.fits)
    }
    matches = find(wanted, titles, 9)
    if not matches:
        raise Refused(f"{short(wanted)} is like no check of this machine; try other words, like: pressure, amps.")
    chosen = clear_winner(matches)
    if chosen is None:
        front.say(choices([titles[m.id][0] for m in matches], front.width))
        chosen = matches[_pick(words.WHICH_ONE, len(matches), front) - 1].id
    return [ev.TurnedTo("check", chosen)]


def _repair(more: str, scene: Scene, front: Front) -> Sequence[ev.Event]:
    name = _cause(more, scene, front)
    if name not in scene.book.causes:
        raise Refused(
            "What is not listed has no repair listed. Look for what nobody asked about, or e to call for help."
        )
    return [ev.TurnedTo("repair", name)]


def _rule_out(more: str, scene: Scene, front: Front) -> Sequence[ev.Event]:
    name = _cause(more, scene, front)
    if name not in scene.book.causes:
        raise Refused("What is not listed can't be ruled out.")
    return [ev.RuledOut(name)]


def _cause(more: str, scene: Scene, front: Front) -> str:
    if not scene.ranked:
        raise Refused(words.NOT_YET)
    if not more:
        front.say(ranking_block(scene.rows, front.width, 9))
        more = _ask(words.WHICH_CAUSE, front)
    if not more:
        raise Refused(words.STANDS)
    return cause_meant(more, scene)


def _undo(more: str, scene: Scene, front: Front) -> Sequence[ev.Event]:
    by_number = {r.number: r.event for r in scene.session.records}
    answers = [
        (question, number)
        for question, number in enumerate(scene.state.answers, 1)
        if not isinstance(by_number[number], ev.TurnedTo)
    ]
    if not answers:
        raise Refused(words.FIRST_QUESTION)
    if not more:
        for question, number in answers:
            front.say(wrap(answer_text(by_number[number], scene.book), front.width, f"{question:>4}  "))
        more = _ask(words.WHICH_UNDO, front)
    if not more:
        raise Refused(words.STANDS)
    chosen = dict(answers).get(int(more[:6]) if more.isascii() and more.isdigit() else 0)
    if chosen is None:
        raise Refused(f"{short(more)} is no question answered so far; u shows them.")
    front.say(wrap(words.TAKEN_BACK + answer_text(by_number[chosen], scene.book), front.width))
    scene.session.take_back(chosen)
    return []


def _note(more: str, front: Front) -> Sequence[ev.Event]:
    text = more or _ask(words.WHICH_NOTE, front)
    if not text:
        raise Refused(words.STANDS)
    front.say(wrap(words.NOTED, front.width))
    return [ev.NoteAdded(text)]


def _add(more: str, scene: Scene) -> Sequence[ev.Event]:
    if not scene.ranked:
        raise Refused(words.NO_LETTER_HERE)
    if not more:
        return [ev.TurnedTo("complaint")]
    fresh = [c for c in complaints_in(more, scene) if c not in scene.state.present]
    if not fresh:
        raise Refused(words.SAID_ALREADY)
    return [ev.ComplaintSaid(c, together=nth > 0) for nth, c in enumerate(fresh)]


def _danger(scene: Scene, front: Front) -> Sequence[ev.Event]:
    if scene.state.machine is None:
        # No job to close yet; the question comes right after the machine, and its words help at once.
        front.say(safety_lines(scene, front.width))
        for stop in scene.book.stops.values():
            front.say(wrap(f"{stop.ask} {' '.join(stop.instruction)}", front.width, "  "))
        return []
    front.say(safety_lines(scene, front.width))
    chosen = number_from(_ask(words.WHICH_DANGER, front), len(scene.book.stops), least=0)
    return [ev.SafetyAnswered(list(scene.book.stops)[chosen - 1])] if chosen else []


def _end(scene: Scene) -> Sequence[ev.Event]:
    if scene.state.machine is None:
        raise Refused("Nothing is begun yet; p leaves.")
    return [ev.TurnedTo("end")]


def _ask(question: str, front: Front) -> str:
    """One line for a question inside a question: b or Enter alone leave it, p pauses, h says how."""
    while True:
        front.say(wrap(question, front.width))
        text = front.ask()
        letter = letter_in(text, free=True)
        if letter is None:
            return text
        if letter.letter == "p":
            raise Paused
        if letter.letter in ("b", "s", "?"):
            return ""
        if letter.letter == "h":
            front.say(wrap(words.HELP_INSIDE, front.width))
        else:
            raise Refused(words.STANDS)


def _pick(question: str, most: int, front: Front) -> int:
    text = _ask(question, front)
    if not text:
        raise Refused(words.STANDS)
    return number_from(text, most)
