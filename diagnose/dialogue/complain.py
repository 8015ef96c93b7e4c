"""What the kitchen complains of, and the story around it."""

from __future__ import annotations

import re
from collections.abc import Sequence

from diagnose.dialogue import requests as rq
from diagnose.dialogue.scene import Scene
from diagnose.job import events as ev
from diagnose.model import Book, Complaint, fits
from diagnose.terminal.choosing import number_from, numbers_from, short
from diagnose.terminal.grouped import Group, listed, tell_range
from diagnose.terminal.matcher import Match, clear_winner, find
from diagnose.terminal.refusals import Refused
from diagnose.view import words
from diagnose.view.layout import Line, wrap
from diagnose.view.question import heading, short_choices

__all__ = ["answer", "complaint_groups", "complaints_in", "offered", "show"]

_SEVERAL = re.compile(r"[,;/&+]|\band\b|\balso\b", re.IGNORECASE)  # between two complaints said at once
Complain = rq.AskComplaint | rq.AskContext


def show(request: Complain, scene: Scene, width: int) -> list[Line]:
    """The question as printed."""
    lines = heading(request.number, width)
    if isinstance(request, rq.AskContext):
        question = scene.book.context[request.question]
        lines += wrap(question.ask, width) + short_choices(question.answers, width)
        return lines + wrap(words.CONTEXT_HINT, width, "  ", role="dim")
    groups = complaint_groups(scene)
    if request.said:
        taken = "; ".join(scene.book.title(c) for c in request.said if c in scene.book.complaints)
        lines += wrap(f"{words.TAKEN}{taken}.", width, role="good")
        lines += wrap(words.ANYTHING, width) + listed(groups, width)
        return lines + wrap(words.ANYTHING_HINT, width, "  ", role="dim")
    lines += wrap(words.COMPLAINT, width) + listed(groups, width)
    return lines + wrap(words.COMPLAINT_HINT, width, "  ", role="dim")


def answer(request: Complain, text: str, scene: Scene, width: int) -> Sequence[ev.Event]:
    """What the answer means. Raises Refused, or Told where more of the list was asked for."""
    if isinstance(request, rq.AskContext):
        return [_context(request.question, text, scene.book)]
    if not text and request.said:
        return [ev.StepDone("complaints")]
    if not text:
        raise Refused(f"Enter alone is no answer here. {words.COMPLAINT_HINT}")
    if text == "?":
        raise Refused(words.COMPLAINT_NEEDED)
    tell_range(text, complaint_groups(scene), width)
    fresh = [c for c in complaints_in(text, scene) if c not in request.said]
    if not fresh:
        raise Refused(words.SAID_ALREADY)
    return [ev.ComplaintSaid(c, together=nth > 0) for nth, c in enumerate(fresh)]


def offered(scene: Scene) -> list[Complaint]:
    """What can be complained of on this machine, in the order of the list."""
    book, machine = scene.book, scene.state.machine
    return [
        book.complaints[name]
        for _, names in book.areas()
        for name in names
        if machine is None or fits(machine, book.complaints[name].fits)
    ]


def complaint_groups(scene: Scene) -> list[Group]:
    """The same by area."""
    here = {c.id: c.title for c in offered(scene)}
    groups = [Group(title, [here[n] for n in names if n in here]) for title, names in scene.book.areas()]
    return [group for group in groups if group.options]


def complaints_in(text: str, scene: Scene) -> list[str]:
    """The complaints that numbers or words mean. Raises Refused with what they may mean."""
    book, here = scene.book, offered(scene)
    ids = [c.id for c in here]
    numbers = numbers_from(text, len(ids))
    if numbers:
        return [ids[n - 1] for n in numbers]
    candidates = {c.id: [c.title, *c.kitchen] for c in here}
    each = [clear_winner(find(part, candidates)) for part in _SEVERAL.split(text)]
    if len(each) > 1 and None not in each:
        return list(dict.fromkeys(name for name in each if name))
    matches = find(text, candidates)
    winner = clear_winner(matches)
    if winner is not None:
        return [winner]
    raise Refused(_perhaps(text, matches, ids, book), text)


def _perhaps(text: str, matches: Sequence[Match], ids: Sequence[str], book: Book) -> str:
    if not matches:
        return f"{short(text)} is like no complaint known here. {words.COMPLAINT_HINT}"
    named = "; ".join(f"{ids.index(m.id) + 1} {book.title(m.id)}" for m in matches[:4])
    return f"{short(text)} may mean: {named}. Type the number, or other words."


def _context(question: str, text: str, book: Book) -> ev.Event:
    answers = book.context[question].answers
    if text in ("", "?"):
        return ev.ContextGiven(question)
    for each in answers:
        if text.casefold() == each.casefold():
            return ev.ContextGiven(question, each)
    if not text[0].isdigit():
        matches = find(text, {each: [each] for each in answers})
        winner = clear_winner(matches)
        if winner is not None:
            return ev.ContextGiven(question, winner)
    return ev.ContextGiven(question, answers[number_from(text, len(answers), words.CONTEXT_HINT) - 1])
