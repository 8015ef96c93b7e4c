"""What is said on the sheet: a line that failed, what is set and how far, why one is left, who was shown, the end."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Literal

from diagnose.dialogue import requests as rq
from diagnose.dialogue.measure import cautions_due, flags, shown_just_now
from diagnose.dialogue.scene import Scene
from diagnose.handover.adjusting import asks_first, found_spec, set_spec, settles, suggest
from diagnose.handover.sheet import Line as SheetLine
from diagnose.handover.tries import newest_set
from diagnose.job import events as ev
from diagnose.model import ReadingSpec, fits
from diagnose.model.answers import parse_places
from diagnose.terminal.choosing import number_from, refuse_empty
from diagnose.terminal.front import Front
from diagnose.terminal.refusals import Refused
from diagnose.units import UnitError
from diagnose.view import sheet_words, together_words, words
from diagnose.view.layout import Line, wrap
from diagnose.view.question import access, choices, heading, paragraphs, steps
from diagnose.view.sheet import at_line, counts_text, sheet_block, verdict_block

__all__ = ["OnSheet", "answer", "go_to", "show"]

OnSheet = rq.AskFailed | rq.AskFound | rq.AskSet | rq.AskLeave | rq.AskWho | rq.AskHandover
Why = Literal["not now", "waits for another trade", "no instrument here", "not at this site", "remark"]
_WHYS: tuple[Why, ...] = ("not now", "waits for another trade", "no instrument here", "not at this site", "remark")


@dataclass(frozen=True)
class _Way:
    """Something that can be done about a line that failed: in words, and as events."""

    text: str
    events: tuple[ev.Event, ...]


def show(request: OnSheet, scene: Scene, width: int, resumed: bool = False) -> list[Line]:
    """The question as printed."""
    lines = heading(request.number, width)
    if isinstance(request, rq.AskHandover):
        return lines + _handover(scene, width)
    line = scene.sheet.by_id[request.line]
    match request:
        case rq.AskFailed():
            lines += at_line(line, scene.sheet, width)
            lines += [] if _just_read(line, scene) and not resumed else verdict_block(line, scene.sheet, width)
            return lines + wrap(sheet_words.FAILED, width) + choices([way.text for way in _ways(line, scene)], width)
        case rq.AskFound(_, _, name):
            adjustment = scene.book.adjustments[name]
            lines += cautions_due(adjustment, scene, width, resumed)
            lines += wrap(f"{sheet_words.TO_SET}{adjustment.title}", width, role="heading")
            lines += wrap(asks_first(scene.sheet, line, adjustment), width)
            return lines + wrap(spec_hint(found_spec(adjustment)), width, "  ", role="dim")
        case rq.AskSet(_, _, name):
            return _set(request, line, name, scene, width, resumed)
        case rq.AskLeave():
            lines += [*at_line(line, scene.sheet, width), *wrap(f"{sheet_words.LEAVE} {line.title}", width)]
            lines += choices([sheet_words.LEFT[why] for why in _WHYS], width)
            return lines + wrap(sheet_words.LEAVE_HINT, width, "  ", role="dim")
        case rq.AskWho():
            return lines + wrap(f"{line.title}: {sheet_words.WHO_SHOWN}", width)


def _just_read(line: SheetLine, scene: Scene) -> bool:
    """Whether what it came to stands on the screen already."""
    last = scene.session.records[-1].event
    return isinstance(last, ev.ReadingTaken) and last.check == line.check.id


def _set(request: rq.AskSet, line: SheetLine, name: str, scene: Scene, width: int, resumed: bool) -> list[Line]:
    adjustment = scene.book.adjustments[name]
    brief = shown_just_now(adjustment, scene, resumed)
    lines = heading(request.number, width, () if brief else access(adjustment), flags(scene, adjustment.cautions))
    lines += cautions_due(adjustment, scene, width, resumed)
    lines += wrap(f"{sheet_words.TO_SET}{adjustment.title}", width, role="heading")
    lines += steps(adjustment.how, width)
    advice = suggest(scene.sheet, line, adjustment)
    if advice is not None:
        lines += wrap(advice.says, width, sheet_words.SET_SO, "  ", role="good" if advice.possible else "caution")
        lines += paragraphs(advice.working, width, "    ")
    lines += wrap(sheet_words.SET_DONE, width)
    lines += choices([text for _, text in _set_ways(line, name, scene)], width)
    spec = set_spec(adjustment)
    return lines + (wrap(sheet_words.SET_OTHER + spec_hint(spec), width, "  ", role="dim") if spec else [])


def _handover(scene: Scene, width: int) -> list[Line]:
    sheet = scene.sheet
    lines = wrap(f"{sheet_words.SHEET}{counts_text(sheet)}.", width, role="heading")
    lines += sheet_block(sheet, width, [line for line in sheet.remarks if line.verdict != "to do"])
    if sheet.gates:
        lines += wrap(f"{sheet_words.NO_POWER}{_named(sheet.gates)}.", width, role="caution")
    if sheet.missing:
        lines += wrap(f"{sheet_words.MISSING}{_named(sheet.missing)}.", width, role="caution")
    lines += wrap(sheet_words.HAND_OVER, width)
    return lines + choices([way.text for way in _ends(scene)], width)


def _named(lines: Sequence[SheetLine]) -> str:
    return "; ".join(f"{line.number} {line.title}" for line in lines)


def answer(request: OnSheet, text: str, scene: Scene) -> Sequence[ev.Event]:
    """What the answer means, as events. Raises Refused."""
    if isinstance(request, rq.AskHandover):
        ways = _ends(scene)
        return ways[number_from(text, len(ways)) - 1].events
    line = scene.sheet.by_id[request.line]
    match request:
        case rq.AskFailed():
            ways = _ways(line, scene)
            return ways[number_from(text, len(ways)) - 1].events
        case rq.AskFound(_, _, name):
            refuse_empty(text, sheet_words.SAY_FIGURE)
            return [ev.Adjusted(name, line.id, _parsed(text, found_spec(scene.book.adjustments[name])), found=True)]
        case rq.AskSet(_, _, name):
            return _was_set(text, name, line, scene)
        case rq.AskLeave():
            return [_left(text, line)]
        case rq.AskWho():
            refuse_empty(text, sheet_words.WHO_HINT)
            return [ev.NoteAdded(text, line.id)]


def go_to(more: str, scene: Scene, front: Front) -> Sequence[ev.Event]:
    """The whole sheet, or a turn to one of its lines by number. Raises Refused."""
    if scene.state.purpose != "handover" or scene.state.machine is None:
        raise Refused(sheet_words.NO_SHEET)
    sheet = scene.sheet
    if not more:
        front.say(sheet_block(sheet, front.width))
        front.say(wrap(f"{sheet_words.SHEET}{counts_text(sheet)}. {sheet_words.SHEET_HINT}", front.width, role="dim"))
        return []
    line = sheet.lines[number_from(more, len(sheet.lines)) - 1]
    if line.check.computed:
        raise Refused(f"Line {line.number} is worked out from other readings; measure those.")
    if not scene.on_sheet:
        raise Refused(sheet_words.LOOKING)
    if sheet.barred(line):
        raise Refused(f"{sheet_words.NO_POWER}{_named(sheet.gates)}. Line {line.number} needs it.")
    return [ev.TurnedTo("check", line.check.id)]


def _ways(line: SheetLine, scene: Scene) -> list[_Way]:
    """What can be done about a line that failed, the likeliest first."""
    sheet = scene.sheet
    ways = [
        _Way(sheet_words.SET + a.title[0].lower() + a.title[1:], (ev.TurnedTo("adjust", a.id, line.id),))
        for a in sheet.adjustments(line)
    ]
    again = _Way(sheet_words.AGAIN, (ev.TurnedTo("check", line.check.id),))
    if not line.check.computed:
        ways = [again, *ways] if line.verdict == "cannot tell" else [*ways, again]
    complaint = line.comes_to
    if (
        complaint
        and complaint not in scene.state.present
        and fits(sheet.machine, scene.book.complaints[complaint].fits)
    ):
        ways.append(_Way(f"{sheet_words.LOOK_INTO}{scene.book.title(complaint)}", (ev.ComplaintSaid(complaint),)))
    return [*ways, _Way(sheet_words.LEAVE_IT, (ev.TurnedTo("leave", line=line.id),))]


def _ends(scene: Scene) -> list[_Way]:
    """How a sheet can end, or go on."""
    sheet = scene.sheet
    ways = []
    if not sheet.missing:
        remarks = len(sheet.remarks)
        told = f"with {remarks} {'remark' if remarks == 1 else 'remarks'}" if remarks else "without a remark"
        ways.append(_Way(f"{sheet_words.SIGN} {told}", (ev.Closed("handed over"),)))
    left = [(number, each) for number, each in scene.state.left.values() if each.why != "not at this site"]
    if left:
        withdrawn = tuple(scene.session.withdrawal(number) for number, _ in left)
        ways.append(_Way(sheet_words.TAKE_UP, (*withdrawn, ev.TurnedTo("advice"))))
    elif sheet.missing:
        ways.append(_Way(sheet_words.TAKE_UP_MISSING, (ev.TurnedTo("check", sheet.missing[0].check.id),)))
    if scene.state.turned.what == "end":
        ways.append(_Way(words.END_BACK, (ev.TurnedTo("advice"),)))
    ways.append(_Way(sheet_words.NOT_HANDED_OVER, (ev.Closed("given up"),)))
    return [*ways, _Way(together_words.HAND_ON, (ev.TurnedTo("hand on"),))]


def _set_ways(line: SheetLine, name: str, scene: Scene) -> list[tuple[str, str]]:
    advice = suggest(scene.sheet, line, scene.book.adjustments[name])
    if advice is not None and not advice.possible:
        return [("can't", sheet_words.CANNOT_SET)]
    ways = [("done", sheet_words.SET_AS_SAID if advice is not None and advice.settings else sheet_words.SET_BY_EYE)]
    if line.verdict == "pass":
        return [*ways, ("enough", sheet_words.NEAR_ENOUGH)]
    return [*ways, ("can't", sheet_words.CANNOT_SET)]


def _was_set(text: str, name: str, line: SheetLine, scene: Scene) -> Sequence[ev.Event]:
    ways = [way for way, _ in _set_ways(line, name, scene)]
    advice = suggest(scene.sheet, line, scene.book.adjustments[name])
    first, _, more = text.partition(" ")
    adjustment = scene.book.adjustments[name]
    spec = set_spec(adjustment)
    if more and spec is not None and first.rstrip(".)") == "1" and ways[0] == "done":
        return [ev.Adjusted(name, line.id, settles(scene.sheet, line, adjustment, _parsed(more, spec)))]
    match ways[number_from(text, len(ways)) - 1]:
        case "can't":
            return [ev.TurnedTo("advice")]
        case "enough":
            last = newest_set(scene.sheet, name)
            return [ev.Adjusted(name, line.id, dict(last.settings) if last else {}, found=True), ev.TurnedTo("advice")]
    return [ev.Adjusted(name, line.id, dict(advice.settings) if advice is not None else {})]


def _parsed(text: str, spec: ReadingSpec) -> dict[str, str]:
    try:
        return {place: q.exact for place, q in parse_places(text, spec).items()}
    except UnitError as error:
        raise Refused(f"{words.NOT_TAKEN}{error}.", text) from None


def _left(text: str, line: SheetLine) -> ev.Event:
    first, _, more = text.partition(" ")
    chosen = _WHYS[number_from(first, len(_WHYS), sheet_words.LEAVE_HINT) - 1]
    if chosen == "remark" and not more.strip():
        raise Refused(sheet_words.REMARK_WANTED, text)
    return ev.LineLeft(line.id, chosen, more.strip())


def spec_hint(spec: ReadingSpec) -> str:
    """Which figures are wanted, in which unit, and how they may look."""
    unit = "" if spec.unit == "x" else f" in {spec.unit}"
    example = f", like {spec.example}" if spec.example else ""
    return f"Answer{unit} for {', '.join(spec.each)}{example}."
