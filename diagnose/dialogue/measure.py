"""Checks: cautions first, then the question, then what was read."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import replace

from diagnose.dialogue import requests as rq
from diagnose.dialogue.care import work_named
from diagnose.dialogue.flow import proving
from diagnose.dialogue.scene import Scene
from diagnose.job import events as ev
from diagnose.job.instruments import read_with
from diagnose.model import Adjustment, Cause, Check
from diagnose.model.answers import parse_answer
from diagnose.terminal.choosing import short
from diagnose.terminal.refusals import Refused
from diagnose.units import UnitError
from diagnose.view import words
from diagnose.view.layout import Line, labelled, wrap
from diagnose.view.past import before_line
from diagnose.view.question import CheckTexts, access, caution_block, check_block, heading
from diagnose.view.sheet import at_line, wanted_text

__all__ = ["answer", "cautions_due", "flags", "option_text", "show", "shown_just_now"]

Measure = rq.AskCaution | rq.AskCheck


def show(request: Measure, scene: Scene, width: int, resumed: bool = False) -> list[Line]:
    """Cautions and how to go on, or the check with its cautions that need no word."""
    if isinstance(request, rq.AskCaution):
        return _caution(request, scene, width)
    check = scene.book.checks[request.check]
    # What else could be done was said before the word was typed.
    brief = shown_just_now(check, scene, resumed)
    lines = [] if brief else _others(request.options, scene, width)
    texts = replace(_texts(request, scene), cautions=cautions_due(check, scene, width, resumed))
    line = scene.sheet.of_check(check.id) if request.by == "sheet" else None
    lines += at_line(line, scene.sheet, width) if line is not None and not brief else []
    return lines + check_block(check, request.number, flags(scene, check.cautions), texts, width, brief)


def shown_just_now(entry: Check | Cause | Adjustment, scene: Scene, resumed: bool) -> bool:
    """Whether cautions, time and access stand on the screen already: their word was just typed."""
    return entry.id in scene.state.acknowledged and not resumed


def cautions_due(entry: Check | Cause | Adjustment, scene: Scene, width: int, resumed: bool) -> list[Line]:
    """The cautions before a check or repair. Those with a word were shown just before, unless one comes back to it."""
    known = [scene.book.cautions[c] for c in entry.cautions if c in scene.book.cautions]
    return [] if shown_just_now(entry, scene, resumed) else caution_block(known, "", width)


def flags(scene: Scene, cautions: Sequence[str]) -> list[str]:
    """The titles of the cautions, to stand beside the number of the question."""
    return [scene.book.cautions[c].title for c in cautions if c in scene.book.cautions]


def _caution(request: rq.AskCaution, scene: Scene, width: int) -> list[Line]:
    book = scene.book
    entry = work_named(book, request.before)
    lines = _others(request.options, scene, width)
    line = scene.sheet.of_check(request.before) if scene.on_sheet else None
    lines += at_line(line, scene.sheet, width) if line is not None else []
    lines += heading(request.number, width, access(entry), flags(scene, request.cautions))
    kind = words.REPAIR if request.before in book.causes else words.SETTING
    if request.before in book.checks:
        kind = words.PROOF if not scene.on_sheet and proving(book, scene.state) else words.NEXT_CHECK
    lines += wrap(entry.title if line is not None else f"{kind}: {entry.title}", width)
    if request.options:
        lines += wrap(request.options[0].why, width, f"  {words.WHY_THIS}", "    ")
    if request.licence:
        lines += wrap(f"Only a {words.WHO[request.licence]} may do this; nobody here was said to be one.", width)
    cautions = [book.cautions[c] for c in request.cautions if c in book.cautions]
    return lines + caution_block(cautions, " ".join(request.words), width)


def _others(options: Sequence[rq.Option], scene: Scene, width: int) -> list[Line]:
    others = options[1:]
    if not others:
        return []
    lines = wrap(words.INSTEAD, width, role="heading")
    for nth, option in enumerate(others, 2):
        lines += wrap(option_text(option, scene), width, f"  c {nth}  ")
    return [*lines, Line()]


def option_text(option: rq.Option, scene: Scene) -> str:
    """One thing the advice would do, with its reason."""
    title = option.title(scene.book)
    return labelled(title, option.why) if option.why else title


def _texts(request: rq.AskCheck, scene: Scene) -> CheckTexts:
    expected = scene.expected(request.check)
    why = {"choice": "", "proof": words.BY_PROOF, "advice": "", "sheet": ""}[request.by]
    if request.options and request.check not in scene.state.acknowledged:
        why = request.options[0].why
    shown = " ".join(expected.lines) if expected else ""
    line = scene.sheet.of_check(request.check) if request.by == "sheet" else None
    if line is not None:
        shown = wanted_text(line, scene.sheet)
    before = before_line(scene.past, request.check, scene.book)
    return CheckTexts(shown, why, instrument=with_line(scene.book.checks[request.check], scene), before=before)


def with_line(check: Check, scene: Scene) -> str:
    """What a check is read with, where instruments of one's own could take it; else empty."""
    taken, could = scene.instrument(check), scene.fitting(check)
    if taken is not None:
        return f"{taken} (m: another)"
    return f"{check.instrument} (m: one of yours)" if could else ""


def answer(request: Measure, text: str, scene: Scene) -> Sequence[ev.Event]:
    """What was typed as an event. Raises Refused."""
    if isinstance(request, rq.AskCaution):
        return [_acknowledged(request, text)]
    check = scene.book.checks[request.check]
    if not text:
        raise Refused(f"Enter alone is no answer here. {_wanted(check)}")
    try:
        values, outcome = parse_answer(check, text)
    except UnitError as error:
        raise Refused(_refusal(str(error), check), text) from None
    taken = ev.ReadingTaken(check.id, {place: q.exact for place, q in values.items()}, outcome)
    return [read_with(taken, scene.instrument(check))]


def _refusal(problem: str, check: Check) -> str:
    """What is wrong, with the allowed range beside it where the problem does not name it already."""
    sentence = f"{words.NOT_TAKEN}{problem}."
    spec = check.reading
    told = spec is None or (spec.least is not None and spec.least.split()[0] in problem and "range" in problem)
    return sentence if told else f"{sentence} {_wanted(check)}"


def _wanted(check: Check) -> str:
    spec = check.reading
    if spec is None:
        return f"Type a number from 1 to {len(check.outcomes)}, ? or s."
    ends = f" from {spec.least} to {spec.most}" if spec.least and spec.most else ""
    return f"Type {'values' if spec.each else 'a value'} in {spec.unit}{ends}, ? or s."


def _acknowledged(request: rq.AskCaution, text: str) -> ev.Event:
    typed = {word.casefold() for word in re.split(r"[\s,;]+", text) if word}
    missing = [word for word in request.words if word.casefold() not in typed]
    if missing or len(typed) > len(request.words):
        wanted = " ".join(request.words)
        given = short(text) if text else "Enter alone"
        raise Refused(f"{given} is not {wanted}. Type {wanted} and Enter to go on, or s to skip.")
    return ev.Acknowledged(list(request.cautions), request.before)
