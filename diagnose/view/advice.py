"""Why something would be done next, in a sentence: its minutes, what it saves, where its answers lead."""

from __future__ import annotations

from collections.abc import Iterator

from diagnose.job.telling import Choice
from diagnose.model import Book
from diagnose.view import words
from diagnose.view.layout import percent

__all__ = ["choice_why"]

_WORTH_NAMING = 1.0  # minutes; less saved than this is not worth a word
_NAMED = 2  # causes named that the answers may lead to
_LIKELY = 0.05  # an answer less probable than this leads nowhere worth naming


def choice_why(choice: Choice, book: Book) -> str:
    """`1 minute, nothing to open; saves about 9 minutes; may lead to: jets are limed, or supply too cold`."""
    if choice.what == "help":
        return words.HELP_WHY
    return "; ".join(_repair(choice) if choice.what == "repair" else _check(choice, book))


def _repair(choice: Choice) -> Iterator[str]:
    if choice.option.probability is not None:
        yield f"{percent(choice.option.probability).strip()} probable"
    yield f"about {words.minutes(round(choice.minutes))} to a proven repair"


def _check(choice: Choice, book: Book) -> Iterator[str]:
    option = choice.option
    more = "nothing to open" if not option.opening else f"{words.minutes(round(option.opening))} of it to open"
    yield f"{words.minutes(round(option.minutes, 1))}, {more}"
    if choice.saves >= _WORTH_NAMING:
        yield f"saves about {words.minutes(round(choice.saves))}"
    leads = list(_leads(choice, book))
    if leads:
        yield f"may lead to: {', or '.join(leads)}"


def _leads(choice: Choice, book: Book) -> Iterator[str]:
    outcomes, then = choice.option.outcomes, choice.option.then
    if outcomes is None or then is None:
        return
    likely = sorted((o for o, chance in outcomes.items() if chance >= _LIKELY), key=lambda o: -round(outcomes[o], 9))
    firsts = dict.fromkeys(then[o] for o in likely)
    named = [f for f in firsts if f in book.causes]
    if len(firsts) > 1:
        yield from (_lower(book.title(f)) for f in named[:_NAMED])


def _lower(title: str) -> str:
    return title[:1].lower() + title[1:] if title[1:2].islower() or title[1:2] == " " else title
