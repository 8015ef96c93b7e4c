"""A question as it stands on the screen: number, time and access, cautions, steps, what to expect, why."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from diagnose.model import Adjustment, Cause, Caution, Check
from diagnose.view import words
from diagnose.view.layout import Line, flow, wrap

__all__ = [
    "CheckTexts",
    "access",
    "answer_hint",
    "caution_block",
    "check_block",
    "choices",
    "heading",
    "keys",
    "paragraphs",
    "repair_block",
    "short_choices",
    "steps",
]

_INDENT = "  "


@dataclass(frozen=True)
class CheckTexts:
    """What is said beside a check: what to expect, why it is asked, and cautions due before its steps."""

    expected: str = ""
    why: str = ""
    cautions: Sequence[Line] = ()
    instrument: str = ""  # one's own; empty: as the check says
    before: str = ""  # what it read earlier on this machine


def heading(number: int, width: int, facts: Iterable[str] = (), flags: Iterable[str] = ()) -> list[Line]:
    """`Question 4   3 minutes; open: control box; machine running   LIVE PARTS`."""
    told = "; ".join(facts)
    items = [f"Question {number}", *([told] if told else []), *([", ".join(flags)] if flags else [])]
    return flow(items, width, indent="", role="question")


def access(entry: Check | Cause | Adjustment) -> list[str]:
    """Minutes, what to open, state of the machine, and who: in words."""
    opened = [a for a in entry.open if a != "none"]
    covers = [a for a in opened if a != "tank drained"]
    facts = [words.minutes(entry.minutes)]
    facts.append(f"open: {', '.join(covers)}" if covers else words.ACCESS["none"])
    if "tank drained" in opened:
        facts.append(words.ACCESS["tank drained"])
    facts.append(words.STATE[entry.state])
    if entry.who not in ("operator", "technician"):
        facts.append(f"for: {words.WHO[entry.who]}")
    return facts


def check_block(
    check: Check, number: int, flags: Sequence[str], texts: CheckTexts, width: int, brief: bool = False
) -> list[Line]:
    """A check ready to be answered. `brief` leaves time and access out, when they were just on the screen."""
    lines = [*heading(number, width, () if brief else access(check), flags), *texts.cautions]
    lines += wrap(check.ask, width)
    lines += steps(check.steps, width)
    if texts.instrument or check.instrument.casefold() not in words.NO_INSTRUMENT:
        lines += wrap(f"With: {texts.instrument or check.instrument}", width, _INDENT)
    if texts.expected:
        lines += wrap(texts.expected, width, _INDENT + words.EXPECTED, _INDENT * 2, "good")
    if texts.before:
        lines += wrap(texts.before, width, _INDENT, _INDENT * 2)
    if texts.why:
        lines += wrap(texts.why, width, _INDENT + words.WHY_THIS, _INDENT * 2)
    if check.reading is None:
        lines += choices([outcome.title for outcome in check.outcomes.values()], width)
    lines += wrap(answer_hint(check), width, _INDENT, role="dim")
    return lines


def answer_hint(check: Check) -> str:
    """Which kind of answer is wanted, with its unit."""
    spec = check.reading
    if spec is None:
        return "Answer with a number from the list."
    places = f" for {', '.join(spec.each)}" if spec.each else ""
    example = f", like {spec.example}" if spec.example else ""
    return f"Answer in {spec.unit}{places}{example}."


def steps(texts: Sequence[str], width: int, indent: str = _INDENT) -> list[Line]:
    """Numbered steps, in brackets, since bare digits are answers."""
    lines: list[Line] = []
    for nth, text in enumerate(texts, 1):
        lines += wrap(text, width, f"{indent}({nth}) ")
    return lines


def choices(options: Sequence[str], width: int, start: int = 1) -> list[Line]:
    """Options with their digits."""
    last = len(str(start + len(options) - 1))
    lines: list[Line] = []
    for nth, option in enumerate(options, start):
        lines += wrap(option, width, f"{_INDENT}{nth:>{last}}  ")
    return lines


def short_choices(options: Sequence[str], width: int) -> list[Line]:
    """Short options with their digits, several on a line."""
    return flow([f"{nth} {option}" for nth, option in enumerate(options, 1)], width)


def caution_block(cautions: Sequence[Caution], word: str, width: int) -> list[Line]:
    """Cautions before what they belong to; with a `word`, how to go on."""
    lines: list[Line] = []
    for caution in cautions:
        lines += wrap(f"{words.CAUTION}: {caution.title}", width, role="caution")
        for text in caution.text:
            lines += wrap(text, width, _INDENT)
    if lines and not any(words.DEFER_SAID in text for caution in cautions for text in caution.text):
        lines += wrap(words.DEFER, width)
    if word:
        lines += wrap(f"Type {word} and Enter to go on; s skips this, b goes back.", width, role="caution")
    return lines


def repair_block(
    cause: Cause, number: int, flags: Sequence[str], width: int, brief: bool = False, cautions: Sequence[Line] = ()
) -> list[Line]:
    """A repair: how long, what is open, cautions due, what shows it, steps, parts."""
    lines = [*heading(number, width, () if brief else access(cause), flags), *cautions]
    lines += wrap(f"{words.NO_FAULT if cause.no_fault else 'Repair'}: {cause.title}", width, role="heading")
    lines += wrap(cause.shows, width, f"{_INDENT}Shows: ", _INDENT * 2)
    lines += wrap(cause.why, width, f"{_INDENT}Why it happens: ", _INDENT * 2)
    if cause.told_apart:
        lines += wrap(cause.told_apart, width, f"{_INDENT}Told apart: ", _INDENT * 2)
    lines += steps(cause.repair, width)
    if cause.parts:
        lines += wrap("; ".join(cause.parts), width, f"{_INDENT}Parts: ", _INDENT * 2)
    return lines


def paragraphs(texts: Iterable[str], width: int, indent: str = _INDENT, role: str = "") -> list[Line]:
    """Each text as its own paragraph."""
    return [line for text in texts for line in wrap(text, width, indent, role=role)]


def keys(line: str, width: int) -> list[Line]:
    """The line of letters under a question; a letter stays with its meaning."""
    return flow([part.strip() for part in line.split("   ") if part.strip()], width, role="keys")
