"""The questions of a call as the desk reads them: what to say aloud first, then what may be answered."""

from __future__ import annotations

from collections.abc import Sequence

from diagnose.desk import call_requests as cr
from diagnose.desk.voice import Voice
from diagnose.dialogue import complain
from diagnose.dialogue import requests as rq
from diagnose.dialogue.begin import machine_options
from diagnose.dialogue.care import work_named
from diagnose.dialogue.measure import cautions_due
from diagnose.dialogue.scene import Scene
from diagnose.job.machines import SavedMachine
from diagnose.job.telephone import last_ending
from diagnose.model import Check
from diagnose.model.telephone import meanwhile
from diagnose.terminal.grouped import listed
from diagnose.view import call_words, words
from diagnose.view.layout import Line, flow, wrap
from diagnose.view.question import answer_hint, caution_block, choices, heading, short_choices
from diagnose.view.ranking import ranking_block

__all__ = ["again", "end_ways", "saved", "show", "stop_block", "until_block"]


def show(request: rq.Wanted, scene: Scene, voice: Voice, width: int) -> list[Line] | None:
    """The question as printed; None for one that is the same as in any job."""
    number = getattr(request, "number", 0)
    head = heading(number, width)
    match request:
        case cr.AskCaller():
            lines = wrap(call_words.WHO_CALLS, width) + choices(call_words.CALLERS, width)
            return head + lines + wrap(call_words.CALLER_HINT, width, "  ", role="dim")
        case rq.AskSafety():
            return head + _dangers(scene, voice, width)
        case cr.AskWhere(_, stop):
            return head + stop_block(stop, scene, voice, width) + wrap(call_words.WHERE, width)
        case cr.AskSaved():
            lines = voice.own("machine", width) + choices(_saved(scene), width)
            return head + lines + wrap(call_words.SAVED_HINT, width, "  ", role="dim")
        case cr.AskType(_, question, left):
            return head + _type(question, left, scene, voice, width)
        case cr.AskSolved():
            return head + voice.own("thanks", width) + choices(call_words.SOLVED, width)
        case cr.AskCallEnd():
            return head + _end(request, scene, width)
    return head + shown if (shown := _to_kitchen(request, scene, voice, width)) is not None else None


def _to_kitchen(request: rq.Wanted, scene: Scene, voice: Voice, width: int) -> list[Line] | None:
    if not scene.state.by_kitchen:
        return None
    book = scene.book
    match request:
        case rq.Describe(_, "site"):
            return voice.own("site", width) + wrap(words.DESCRIBE_HINT["site"], width, "  ", role="dim")
        case rq.AskComplaint(_, said):
            return _complaint(said, scene, voice, width)
        case rq.AskContext(_, question):
            asked = book.context[question]
            lines = voice.known([asked.aloud or asked.ask], width) + short_choices(asked.answers, width)
            return lines + wrap(words.CONTEXT_HINT, width, "  ", role="dim")
        case rq.AskCheck(_, name, _, options):
            return _check(book.checks[name], options, scene, voice, width)
        case rq.AskCaution():
            return _caution(request, scene, voice, width)
        case cr.LetMend(_, cause, why):
            return _mend(cause, why, scene, voice, width)
        case rq.AskGone(_, complaint):
            lines = voice.own("gone", width) + wrap(f"{words.GONE} {book.title(complaint)}", width)
            return lines + choices([words.GONE_YES, words.GONE_NO], width)
    return None


def _dangers(scene: Scene, voice: Voice, width: int) -> list[Line]:
    lines = wrap(call_words.STOP_FIRST, width, role="caution")
    lines += voice.known([stop.aloud or stop.ask for stop in scene.book.stops.values()], width)
    lines += choices([words.SAFETY_NONE], width, 0)
    return lines + choices([stop.ask for stop in scene.book.stops.values()], width)


def stop_block(stop: str, scene: Scene, voice: Voice, width: int) -> list[Line]:
    """What the kitchen is told to do at once, in danger."""
    known = scene.book.stops.get(stop)
    if known is None:
        return wrap(words.STOP_UNKNOWN, width, role="caution")
    return [*wrap(known.ask, width, role="caution"), *voice.known(known.aloud_then or known.instruction, width)]


def _saved(scene: Scene) -> list[str]:
    return [" ".join(filter(None, (f"{m.name}:", m.site, scene.book.machines[m.type].title))) for m in saved(scene)]


def saved(scene: Scene) -> list[SavedMachine]:
    """The machines saved under a name."""
    return [each for each in machine_options(scene) if each.name != each.type]


def _type(question: str, left: int, scene: Scene, voice: Voice, width: int) -> list[Line]:
    asked = scene.book.tell_apart[question]
    lines = voice.known([asked.aloud], width) + choices([each.answer for each in asked.answers], width)
    return lines + wrap(call_words.TYPE_LEFT.format(count=left), width, "  ", role="dim")


def _complaint(said: tuple[str, ...], scene: Scene, voice: Voice, width: int) -> list[Line]:
    lines: list[Line] = []
    if said:
        taken = "; ".join(scene.book.title(c) for c in said if c in scene.book.complaints)
        lines += wrap(f"{words.TAKEN}{taken}.", width, role="good")
    lines += voice.own("anything" if said else "complaint", width)
    lines += listed(complain.complaint_groups(scene), width)
    return lines + wrap(words.ANYTHING_HINT if said else words.COMPLAINT_HINT, width, "  ", role="dim")


def _check(check: Check, options: Sequence[rq.Option], scene: Scene, voice: Voice, width: int) -> list[Line]:
    """Cautions for the desk to keep in mind, then what is said, what to expect, and the answers."""
    lines = wrap(check.title, width)
    cautions = [scene.book.cautions[c] for c in check.cautions if c in scene.book.cautions]
    if cautions:
        lines += wrap(f"{words.CAUTION}: {', '.join(c.title for c in cautions)}", width, role="caution")
        lines += voice.own("hazard", width)
    lines += voice.known([check.aloud or check.ask], width)
    expected = scene.expected(check.id)
    if expected:
        lines += wrap(" ".join(expected.lines), width, f"  {words.EXPECTED}", "    ", "good")
    if options and options[0].why:
        lines += wrap(options[0].why, width, f"  {call_words.WOULD_TELL}", "    ", role="dim")
    if check.reading is None:
        lines += choices([outcome.title for outcome in check.outcomes.values()], width)
    return lines + wrap(answer_hint(check), width, "  ", role="dim")


def _caution(request: rq.AskCaution, scene: Scene, voice: Voice, width: int) -> list[Line]:
    """What the kitchen takes care of before it puts something right: read out, and only then is the word typed."""
    book = scene.book
    lines = wrap(call_words.MENDS.format(title=work_named(book, request.before).title), width, role="heading")
    lines += voice.own("hazard", width) + wrap(call_words.CARE_FIRST, width)
    cautions = [book.cautions[c] for c in request.cautions if c in book.cautions]
    return lines + caution_block(cautions, " ".join(request.words), width)


def _mend(cause: str, why: str, scene: Scene, voice: Voice, width: int) -> list[Line]:
    entry = scene.book.causes[cause]
    lines = wrap(call_words.MENDS.format(title=entry.title), width, role="heading")
    lines += wrap(why, width, "  ") if why else []
    lines += cautions_due(entry, scene, width, False)
    lines += voice.known(entry.aloud, width) + choices(call_words.MENDED, width)
    return lines + wrap(call_words.MENDED_HINT, width, "  ", role="dim")


def until_block(scene: Scene, voice: Voice | None, width: int) -> list[Line]:
    """What the kitchen does until the machine is right; without a voice only how far it may be used."""
    machine = scene.state.machine
    lines: list[Line] = []
    if machine is None:
        return lines
    told = [meanwhile(scene.book.complaints[c], machine) for c in scene.state.present if c in scene.book.complaints]
    found = [each for each in told if each is not None]
    for use, sentence in (("stop", call_words.UNTIL_STOP), ("with care", call_words.UNTIL_CARE)):
        if any(each.use == use for each in found):
            lines += wrap(sentence, width, role="caution")
            break
    sentences = list(dict.fromkeys(text for each in found for text in each.say))
    return lines + (voice.known(sentences, width) if sentences and voice is not None else [])


def end_ways(request: cr.AskCallEnd, scene: Scene) -> list[str]:
    """The ways the call can end, the one that is due first; "back" where there is more to ask."""
    if not scene.state.by_kitchen:
        return ["goes on", "visit", "solved", "back"]
    stop = scene.ranked and last_ending(scene.assessment).how == "stop"
    ways = ["stop", "visit", "solved"] if stop else ["visit", "stop", "solved"]
    return [*ways, "back"] if request.asked_for else ways


def _end(request: cr.AskCallEnd, scene: Scene, width: int) -> list[Line]:
    lines = [] if request.asked_for else wrap(call_words.NOTHING_LEFT, width)
    if scene.ranked:
        lines += ranking_block(scene.rows, width)
    lines += until_block(scene, None, width) + wrap(call_words.END, width)
    ways = end_ways(request, scene)
    texts = {**call_words.END_WAYS, "back": call_words.END_BACK}
    return lines + choices([texts[way].format(nth=nth) for nth, way in enumerate(ways, 1)], width)


def again(request: rq.Wanted, scene: Scene, voice: Voice, width: int) -> list[Line]:
    """A question of a call once more; empty for one that is the same as in any job."""
    shown = show(request, scene, voice, width)
    if shown is None:
        return []
    return [Line(), *flow([f"Question {getattr(request, 'number', 0)} again:"], width, "", role="question"), *shown[1:]]
