"""A question once more in a few lines, after something else has pushed it off the screen."""

from __future__ import annotations

from diagnose.dialogue import requests as rq
from diagnose.dialogue.begin import machine_groups, plate_question
from diagnose.dialogue.care import work_named
from diagnose.dialogue.complain import complaint_groups
from diagnose.dialogue.hints import ways
from diagnose.dialogue.scene import Scene
from diagnose.terminal.grouped import listed
from diagnose.view import sheet_words, together_words, words
from diagnose.view.layout import Line, wrap
from diagnose.view.question import answer_hint, choices, short_choices
from diagnose.view.together import hint_text

__all__ = ["asked", "reminder"]


def reminder(request: rq.Wanted, scene: Scene, width: int) -> list[Line]:
    """`Question 12 again: ...`, with its options where they are few."""
    if isinstance(request, rq.Stopped | rq.Waiting | rq.Ended):
        return []
    inside = "  " if isinstance(request, rq.AskHint) else ""  # what others typed never looks like a line of ours
    told = wrap(f"Question {request.number} again: {asked(request, scene)}", width, "", inside, "question")
    return [Line(), *told, *_options(request, scene, width)]


def asked(request: rq.Wanted, scene: Scene) -> str:
    """What is asked, in a sentence."""
    book = scene.book
    match request:
        case rq.AskCheck(_, name):
            return book.checks[name].ask
        case rq.AskCaution(_, before, _, typed):
            title = work_named(book, before).title
            stop = "" if title.endswith("?") else "."
            return f"{title}{stop} Type {' '.join(typed)} and Enter to go on; s skips this, b goes back."
        case rq.AskContext(_, question):
            return book.context[question].ask
        case rq.Describe(_, what):
            return words.DESCRIBE[what]
        case rq.AskFigure(_, figure):
            return plate_question(figure)
        case rq.AskComplaint(_, said):
            return words.ANYTHING if said else words.COMPLAINT
        case rq.AskGone(_, complaint):
            return f"{words.GONE} {book.title(complaint)}"
        case rq.AskRepair(_, cause):
            return f"{book.title(cause)}. {words.WHAT_FOUND}"
        case rq.AskFailed(_, line):
            return f"{scene.sheet.by_id[line].title}. {sheet_words.FAILED}"
        case rq.AskFound(_, _, name) | rq.AskSet(_, _, name):
            return f"{sheet_words.TO_SET}{book.adjustments[name].title}."
        case rq.AskLeave(_, line):
            return f"{scene.sheet.by_id[line].title}. {sheet_words.LEAVE}"
        case rq.AskWho(_, line):
            return f"{scene.sheet.by_id[line].title}: {sheet_words.WHO_SHOWN}"
        case rq.AskHint(_, hint):
            return hint_text(hint.given, book)
        case rq.AskOn():
            return together_words.WHO_GOES_ON
    return words.ASKED[type(request).__name__]


def _options(request: rq.Wanted, scene: Scene, width: int) -> list[Line]:
    match request:
        case rq.AskCheck(_, name):
            check = scene.book.checks[name]
            if check.reading is None:
                return choices([o.title for o in check.outcomes.values()], width)
            return wrap(answer_hint(check), width, "  ", role="dim")
        case rq.AskContext(_, question):
            return short_choices(scene.book.context[question].answers, width)
        case rq.Decide(_, options):
            return choices([o.title(scene.book) for o in options], width)
        case rq.AskRepair(_, cause):
            found = words.FOUND_NO_FAULT if scene.book.causes[cause].no_fault else words.FOUND
            return choices(list(found.values()), width)
        case rq.AskGone():
            return choices([words.GONE_YES, words.GONE_NO], width)
        case rq.AskSafety():
            return choices([words.SAFETY_NONE, *(s.ask for s in scene.book.stops.values())], width, 0)
        case rq.AskComplaint():
            return listed(complaint_groups(scene), width)
        case rq.AskMachine():
            return listed(machine_groups(scene), width)
        case rq.AskHint():
            return choices(ways(request, scene), width)
    return []
