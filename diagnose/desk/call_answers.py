"""What an answer in a call means, as events."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Literal

from diagnose.desk import call_requests as cr
from diagnose.desk.call_show import end_ways, saved
from diagnose.dialogue import requests as rq
from diagnose.dialogue.scene import Scene
from diagnose.job import events as ev
from diagnose.model.telephone import next_question, types_left
from diagnose.terminal.choosing import number_from
from diagnose.terminal.matcher import clear_winner, find
from diagnose.terminal.refusals import Refused
from diagnose.view import call_words, words

__all__ = ["answered_in_call", "left_out_in_call"]

_FOUND: tuple[Literal["as expected", "sound", "can't tell"], ...] = ("as expected", "sound", "can't tell")
_CALLERS: tuple[Literal["kitchen", "technician"], ...] = ("kitchen", "technician")


def answered_in_call(
    request: rq.Wanted, text: str, scene: Scene, person: str, language: str
) -> Sequence[ev.Event] | None:
    """The events of an answer; None for a question that is the same as in any job. Raises Refused."""
    match request:
        case cr.AskCaller():
            return _caller(text, scene, person, language)
        case cr.AskWhere(_, stop):
            asked = scene.book.stops[stop].ask if stop in scene.book.stops else stop
            return [ev.CallEnded("stop", f"{asked} {text}".strip())]
        case cr.AskSaved():
            return _saved(text, scene)
        case cr.AskType(_, question, _):
            return _type(question, text, scene)
        case cr.LetMend(_, cause, _):
            return [ev.Repaired(cause, _FOUND[number_from(text, len(_FOUND)) - 1])]
        case cr.AskSolved():
            return _solved(_mended(scene)) if number_from(text, 2) == 1 else [ev.TurnedTo("complaint")]
        case cr.AskCallEnd():
            return _ended(request, text, scene)
    return None


def left_out_in_call(request: rq.Wanted, letter: str, scene: Scene) -> Sequence[ev.Event] | None:
    """What leaving a question of a call out comes to; None for one that is the same as in any job. Raises Refused."""
    match request:
        case cr.AskSaved():
            return _saved("", scene)
        case cr.AskType(_, question, _):
            return _type(question, "", scene)
        case cr.LetMend(_, cause, _):
            return [ev.Skipped(cause, "can't reach"), ev.TurnedTo("advice")]
        case rq.AskCaution(_, cause) if scene.state.by_kitchen:
            return [ev.Skipped(cause, "can't reach"), ev.TurnedTo("advice")]
        case cr.AskWhere():
            return answered_in_call(request, "", scene, "", "")
        case cr.AskCallEnd(_, True):
            return [ev.TurnedTo("advice")]
        case cr.AskCaller() | cr.AskSolved() | cr.AskCallEnd():
            raise Refused(words.GO_NO_SKIP)
    return None


def _caller(text: str, scene: Scene, person: str, language: str) -> Sequence[ev.Event]:
    first, _, name = text.partition(" ")
    caller = _CALLERS[number_from(first, len(_CALLERS), call_words.CALLER_HINT) - 1]
    known = scene.state.presences.get(scene.session.writer)
    here = [ev.Present(person, "desk")] if person and (known is None or known.name != person) else []
    return [*here, ev.CallBegun(caller, name.strip(), language)]


def _saved(text: str, scene: Scene) -> Sequence[ev.Event]:
    """The machine meant by number or words of its name and site; Enter alone: none of them."""
    if not text:
        return [ev.TypeTold("")]
    known = saved(scene)
    if not text.rstrip(".)").isdigit():
        winner = clear_winner(find(text, {str(nth): [m.name, m.site] for nth, m in enumerate(known)}))
        text = str(int(winner) + 1) if winner is not None else text
    chosen = known[number_from(text, len(known), call_words.SAVED_HINT) - 1]
    return [
        ev.Opened(
            machine=chosen.name,
            type=chosen.type,
            own=chosen.own,
            serial=chosen.serial,
            site=chosen.site,
            knowledge=scene.book.fingerprint,
        )
    ]


def _type(question: str, text: str, scene: Scene) -> Sequence[ev.Event]:
    """The answer; and the machine, as soon as nothing more parts the types that are left."""
    asked = scene.book.tell_apart[question]
    answers = [each.answer for each in asked.answers]
    chosen = ""
    if text and not text.rstrip(".)").isdigit():
        chosen = clear_winner(find(text, {each: [each] for each in answers})) or ""
    if text and not chosen:
        chosen = answers[number_from(text, len(answers), call_words.TYPE_LEFT.format(count=len(answers))) - 1]
    given = {**scene.state.types_told, question: chosen}
    told: list[ev.Event] = [ev.TypeTold(question, chosen)]
    if next_question(scene.book, given) is None:
        kind = types_left(scene.book, given)[0].id
        told.append(ev.Opened(machine=kind, type=kind, knowledge=scene.book.fingerprint))
    return told


def _mended(scene: Scene) -> str:
    """What the kitchen put right, by title."""
    causes = [r.cause for r in scene.state.repairs if r.found != "sound" and r.cause in scene.book.causes]
    return "; ".join(scene.book.title(cause) for cause in dict.fromkeys(causes))


def _solved(what: str) -> Sequence[ev.Event]:
    return [ev.CallEnded("solved", what), ev.Closed("solved on the telephone", what)]


def _ended(request: cr.AskCallEnd, text: str, scene: Scene) -> Sequence[ev.Event]:
    ways = end_ways(request, scene)
    first, _, more = text.partition(" ")
    way = ways[number_from(first, len(ways)) - 1]
    match way:
        case "back":
            return [ev.TurnedTo("advice")]
        case "solved":
            return _solved(more.strip() or _mended(scene))
        case "visit" | "stop" | "goes on":
            return [ev.TurnedTo("advice"), ev.CallEnded(way, more.strip())]
    raise Refused(words.STANDS)
