"""One earlier answer in a line, for lists to choose from."""

from __future__ import annotations

from diagnose.job import events as ev
from diagnose.model import PLATE_FIGURES, Book
from diagnose.model.answers import show_values
from diagnose.units import UnitError, parse_quantity
from diagnose.view import words
from diagnose.view.layout import labelled

__all__ = ["answer_text"]


def answer_text(event: ev.AnyEvent, book: Book) -> str:
    """What was answered, in words; entries this knowledge lacks are named by their id."""
    match event:
        case ev.Opened():
            kind = book.machines.get(event.type)
            return f"Machine: {event.machine if event.machine != event.type or not kind else kind.title}"
        case ev.PlateWanted(wanted):
            return f"Plate: {words.PLATE_READ if wanted else words.PLATE_USUAL}"
        case ev.MachineDescribed(what, text):
            return f"{what.capitalize()}: {text or 'not given'}"
        case ev.PlateRead(figure, text):
            return f"{PLATE_FIGURES[figure].ask if figure in PLATE_FIGURES else figure}: {text or 'not on the plate'}"
        case ev.SafetyAnswered(stop):
            return f"Danger: {book.stops[stop].ask if stop and stop in book.stops else stop or words.SAFETY_NONE}"
        case ev.ComplaintSaid(complaint, present, _):
            return f"{_title(book, complaint)}: {'complained of' if present else words.GONE_YES}"
        case ev.TypeTold(question, answer):
            asked = book.tell_apart[question].aloud if question in book.tell_apart else question
            return f"{asked} {answer or 'not known'}"
        case ev.StepDone(step):
            return "No more complaints" if step == "complaints" else "The rest is not on the plate"
        case ev.ContextGiven(question, answer):
            return f"{book.context[question].ask if question in book.context else question} {answer or 'not known'}"
    return _found(event, book)


def _found(event: ev.AnyEvent, book: Book) -> str:
    match event:
        case ev.ReadingTaken():
            return labelled(_title(book, event.check), _reading(event, book))
        case ev.Skipped(check, why):
            return labelled(_title(book, check), why)
        case ev.RuledOut(node):
            return f"Ruled out: {_title(book, node)}"
        case ev.Repaired(cause, found):
            return f"Repair: {_title(book, cause)}: {words.FOUND[found]}"
        case ev.Adjusted(adjustment, _, settings, found):
            title = book.adjustments[adjustment].title if adjustment in book.adjustments else adjustment
            told = ", ".join(f"{place} {text}".strip() for place, text in settings.items())
            return f"{title}: {words.FOUND_STANDING if found else words.SET_TO} {told}".strip()
        case ev.LineLeft(line, why, text):
            named = book.lines[line].title if line in book.lines else None
            return f"{words.LINE_LEFT}{named or line}: {why}{'. ' if text else ''}{text}"
        case ev.Closed(how, text):
            return f"Closed: {words.CLOSED[how]}{'. ' if text else ''}{text}"
        case ev.TurnedTo(what, target):
            return f"Turned to {what} {_title(book, target) if target else ''}".rstrip()
    return type(event).__name__


def _reading(event: ev.ReadingTaken, book: Book) -> str:
    check = book.checks.get(event.check)
    if event.outcome is not None:
        known = check is not None and event.outcome in check.outcomes
        return check.outcomes[event.outcome].title if check and known else event.outcome
    spec = check.reading if check else None
    if spec is None:
        return " ".join(event.values.values())
    try:
        return show_values({p: parse_quantity(t, spec.quantity, spec.unit) for p, t in event.values.items()})
    except UnitError:
        return " ".join(event.values.values())


def _title(book: Book, node: str) -> str:
    try:
        return book.title(node)
    except KeyError:
        return node
