"""Why this number? The calculation behind what a check should read here, or behind what was found last."""

from __future__ import annotations

from diagnose.dialogue import requests as rq
from diagnose.dialogue.choosing import short
from diagnose.dialogue.matcher import clear_winner, find
from diagnose.dialogue.scene import Refused, Scene
from diagnose.model import Check, Finding, fits
from diagnose.view import words
from diagnose.view.layout import Line, wrap
from diagnose.view.question import paragraphs

__all__ = ["number_lines"]


def number_lines(request: rq.Request, more: str, scene: Scene, width: int) -> list[Line]:
    """The figure of the check asked now, of the check that `more` names, or of the last finding."""
    if not scene.ranked:
        return wrap(words.NO_NUMBER, width)
    if more:
        return _of_check(_named(more, scene), scene, width)
    asked = request.check if isinstance(request, rq.AskCheck) else ""
    asked = request.before if isinstance(request, rq.AskCaution) else asked
    if asked in scene.book.checks:
        return _of_check(scene.book.checks[asked], scene, width)
    found = scene.assessment.findings
    return _of_finding(found[-1], scene, width) if found else wrap(words.NO_NUMBER, width)


def _of_check(check: Check, scene: Scene, width: int) -> list[Line]:
    """What the check should read, worked out; and what came of it, where it was read already."""
    lines = wrap(words.NUMBER_OF + check.title, width, role="heading")
    expected = scene.assessment.expected(check.id)
    if expected is None:
        lines += wrap(words.NO_FIGURE if check.reading else words.NO_MEASURE, width, "  ")
    else:
        lines += paragraphs([*expected.working] or [*expected.lines], width)
        if expected.working:
            lines += wrap(" ".join(expected.lines), width, "  " + words.EXPECTED, "    ", "good")
        lines += paragraphs([a for a in expected.assumptions if a not in expected.working], width)
        if expected.basis:
            lines += wrap(expected.basis, width, "  " + words.STANDS_ON, "    ", "dim")
    found = [f for f in scene.assessment.findings if f.check == check.id]
    return lines + (_of_finding(found[-1], scene, width) if found else [])


def _of_finding(finding: Finding, scene: Scene, width: int) -> list[Line]:
    title = scene.book.checks[finding.check].title
    return [*wrap(words.FOUND_BY + title, width, role="heading"), *paragraphs([finding.says, *finding.working], width)]


def _named(text: str, scene: Scene) -> Check:
    """The check of this machine that the words mean. Raises Refused."""
    machine = scene.state.machine
    titles = {
        c.id: [c.title, c.ask, c.id.replace(".", " ").replace("_", " ")]
        for c in scene.book.checks.values()
        if machine is not None and fits(machine, c.fits)
    }
    matches = find(text, titles, 6)
    winner = clear_winner(matches)
    if winner is not None:
        return scene.book.checks[winner]
    if not matches:
        raise Refused(f"{short(text)} is like no check of this machine; try other words, like: pressure, amps.")
    raise Refused(f"{short(text)} may mean: {'; '.join(titles[m.id][0] for m in matches)}. Say more of it.")
