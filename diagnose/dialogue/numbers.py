"""Why this number? The calculation behind what a check should read here, or behind what was found last."""

from __future__ import annotations

from diagnose.dialogue import requests as rq
from diagnose.dialogue.scene import Scene
from diagnose.model import Check, Finding, fits
from diagnose.terminal.choosing import short
from diagnose.terminal.matcher import find
from diagnose.terminal.refusals import Refused
from diagnose.view import words
from diagnose.view.layout import Line, wrap
from diagnose.view.question import paragraphs

__all__ = ["number_lines"]


def number_lines(request: rq.Wanted, more: str, scene: Scene, width: int) -> list[Line]:
    """The figure of the check asked now, of the check that `more` names, or of the last finding."""
    if not scene.ranked:
        return wrap(words.NO_NUMBER, width)
    if more:
        check, others = _named(more, scene)
        also = wrap(words.ALSO_LIKE + "; ".join(others), width, "  ", role="dim") if others else []
        return _of_check(check, scene, width) + also
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
        lines += paragraphs([*expected.working], width)
        lines += wrap(" ".join(expected.lines), width, "  " + words.EXPECTED, "    ", "good")
        said = " ".join((*expected.working, *expected.lines))
        lines += paragraphs([a for a in expected.assumptions if a not in said], width)
        if expected.basis and expected.basis not in said:
            lines += wrap(expected.basis, width, "  " + words.STANDS_ON, "    ", "dim")
    found = [f for f in scene.assessment.findings if f.check == check.id]
    return lines + (_of_finding(found[-1], scene, width) if found else [])


def _of_finding(finding: Finding, scene: Scene, width: int) -> list[Line]:
    title = scene.book.checks[finding.check].title
    return [*wrap(words.FOUND_BY + title, width, role="heading"), *paragraphs([finding.says, *finding.working], width)]


def _named(text: str, scene: Scene) -> tuple[Check, list[str]]:
    """The check of this machine that the words mean best, and the titles of others like it. Raises Refused."""
    machine = scene.state.machine
    titles = {
        c.id: [c.title, c.ask, c.id.replace(".", " ").replace("_", " ")]
        for c in scene.book.checks.values()
        if machine is not None and fits(machine, c.fits)
    }
    names = [m.id for m in find(text, titles, 6)]
    if not names:
        raise Refused(f"{short(text)} is like no check of this machine; try other words, like: pressure, amps.")
    # Whoever asks for a number means something that is measured.
    names.sort(key=lambda n: scene.book.checks[n].reading is None and not scene.book.checks[n].computed)
    return scene.book.checks[names[0]], [titles[n][0] for n in names[1:4]]
