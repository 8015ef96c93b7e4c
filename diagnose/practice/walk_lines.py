"""Study mode as printed: the tree, the question, and what a choice was worth beside the best."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from diagnose.inference.options import Option
from diagnose.inference.tree import UNLISTED
from diagnose.model import Book
from diagnose.practice.worth import Study, Worth
from diagnose.view.drawn.chart import Chart, Folding
from diagnose.view.drawn.text import tree_lines
from diagnose.view.layout import RECORDS_BELOW, Line, percent, table, wrap
from diagnose.view.question import choices, heading, keys
from diagnose.view.words import minutes

__all__ = [
    "begin_lines",
    "end_lines",
    "help_lines",
    "outcome_lines",
    "question_lines",
    "ranking_lines",
    "tree_again",
    "worth_lines",
]

INTRO = "Study: no machine and no fault; nothing is kept. You choose, and see what each choice is worth."
ASK = "What would you check first?"
ASK_NEXT = "What would you check next?"
HINT = "In your own words, or list. e ends."
WHY = "And why? What do you expect it to tell? In a few words; Enter alone: go on."
SUPPOSE = "Suppose it shows one of these. Which? Enter alone: the likeliest."
KEYS = "list all checks   t tree   r ranking   b back   h help   e end"
LETTERS = (
    ("t", "tree from the complaint to its causes; t all opens everything"),
    ("r", "ranking of the causes, as far as was supposed"),
    ("b", "back by one answer"),
    ("e", "end, as do p and Ctrl-D"),
    ("h", "this list, as does ?"),
)
TREE_ROWS = 13  # lines of the tree at the beginning: the question still fits below on 24 rows
BEST_SHOWN = 4
LEADS_SHOWN = 4
LIKELY = 0.02  # an answer less probable than this is not worth a line


@dataclass(frozen=True)
class Reason:
    """A reason that was given: causes it names, by id."""

    text: str
    causes: Sequence[str]


def begin_lines(study: Study, width: int) -> list[Line]:
    """What this is, and the tree as far as it fits."""
    lines = tree_again(study, width, Folding(), TREE_ROWS)
    # A flat tree is longer than a screen even when all is folded: its first rows are the likeliest.
    starts = [n for n, line in enumerate(lines) if line[:1].isdigit()]
    cut = next((n for n in starts[1:] if n > TREE_ROWS), None)
    if cut is not None:
        left = sum(n >= cut for n in starts)
        more = "1 row more; t shows it." if left == 1 else f"{left} rows more; t shows them."
        lines = [*lines[:cut], *wrap(f"and {more}", width, role="dim")]
    return [*wrap(INTRO, width, role="dim"), Line(), *lines]


def tree_again(study: Study, width: int, folding: Folding, screen: int) -> list[Line]:
    """The tree; how a branch is opened on the command line does not hold here."""
    lines = tree_lines(Chart(study.book, study.complaint, study.machine, study.tree), folding, width, screen)
    last = max((n for n, line in enumerate(lines) if not line), default=len(lines))
    folded = not folding.everything and any("[+" in line for line in lines)
    return [
        *lines[:last],
        *(wrap("[+5]: so many causes folded; t all opens everything.", width, role="dim") if folded else []),
    ]


def question_lines(study: Study, number: int, width: int) -> list[Line]:
    """The question, after what was supposed so far."""
    lines: list[Line] = []
    if study.supposed:
        check, outcome = study.supposed[-1]
        said = study.book.checks[check].outcomes[outcome].title
        lines += wrap(f"Supposed: {study.book.title(check)}: {said}.", width, role="good")
        lines += ranking_lines(study, width, 3)
    lines += [*heading(number, width, [f"{len(study.checks)} checks"])]
    lines += wrap(ASK_NEXT if study.supposed else ASK, width) + wrap(HINT, width, "  ", role="dim")
    return lines + keys(KEYS, width)


def ranking_lines(study: Study, width: int, most: int = 9) -> list[Line]:
    """The causes, most probable first."""
    lines: list[Line] = []
    for name, p in study.ranking[:most]:
        lines += wrap(cause_title(study.book, name), width, f"{percent(p)}  ", "       ")
    return lines


def outcome_lines(study: Study, check: str, width: int) -> list[Line]:
    """The answers to choose from, in the order of the check, each with its chance."""
    chance = study.predictions[check].outcomes
    options = [f"{o.title} ({percent(chance[n]).strip()})" for n, o in study.book.checks[check].outcomes.items()]
    return wrap(SUPPOSE, width) + choices(options, width)


def worth_lines(study: Study, worth: Worth, reason: Reason, width: int) -> list[Line]:
    """The choice, what the reason given comes to, the best choices, and why the best is best."""
    best = study.options[0]
    lines = wrap(f"Yours: {study.book.title(worth.check)}", width, role="heading")
    lines += wrap(_price(worth), width, "  ", "    ")
    lines += _led(study, worth, width)
    lines += _reason(study, worth, reason, width)
    if best.id == worth.check:
        lines += wrap("That is the best choice here. " + _why(study, best), width, role="good")
    else:
        more = worth.expected - best.expected
        told = f"about {minutes(round(more))} less" if more >= 1 else "hardly less"
        lines += wrap(f"Best: {_named(study.book, best)}, {told} to a verified repair.", width, role="good")
        lines += wrap(_why(study, best), width, "  ")
    return lines + _beside(study, worth, width)


def _price(worth: Worth) -> str:
    opening = f", {minutes(round(worth.opening))} of it to open" if worth.opening else ", nothing to open"
    return (
        f"{minutes(round(worth.minutes, 1))}{opening}; {worth.bits:.1f} bits of doubt closed on average; "
        f"then about {minutes(round(worth.expected))} in all to a verified repair; number {worth.rank} of all choices."
    )


def _led(study: Study, worth: Worth, width: int) -> list[Line]:
    """What the answers could settle: each with its chance, and the cause that then leads."""
    titles = study.book.checks[worth.check].outcomes
    lines: list[Line] = []
    for lead in [each for each in worth.leads if each.chance >= LIKELY][:LEADS_SHOWN]:
        leads = f"{cause_title(study.book, lead.cause)}, {percent(lead.after).strip()}"
        lines += wrap(
            f"{titles[lead.outcome].title}; then leads: {leads}", width, f"  {percent(lead.chance)}  ", " " * 9
        )
    return lines


def _reason(study: Study, worth: Worth, reason: Reason, width: int) -> list[Line]:
    """What the check would do for the causes that the reason names."""
    if not reason.text:
        return []
    now = dict(study.ranking)
    named = [c for c in reason.causes if c in now]
    if not named:
        return wrap("Your reason names no cause that I know here; hold it against what follows.", width, "  ")
    lines: list[Line] = []
    after = study.predictions[worth.check].posterior
    for cause in named:
        outcome, most = max(((o, row[cause]) for o, row in after.items()), key=lambda each: each[1])
        before, at_most = percent(now[cause]).strip(), percent(most).strip()
        shown = study.book.checks[worth.check].outcomes[outcome].title
        moved = f'{before} now, {at_most} after "{shown}"'
        if most < 1.5 * now[cause] + 0.005:
            moved = f"this check hardly tells of it ({before} now, {at_most} at most)"
        lines += wrap(f"You think of {cause_title(study.book, cause)}: {moved}.", width, "  ", "    ")
    return lines


def _why(study: Study, best: Option) -> str:
    """Why the best is best, in a sentence or two."""
    if best.kind == "help":
        return "What is left is dearer to find out than a call for help."
    if best.kind == "repair":
        likely = percent(best.probability or 0.0).strip()
        return f"It is {likely} probable, and another look would cost more than it spares."
    worth = study.worth(best.id)
    rivals = [o for o in study.options[1:] if o.kind == "check"]
    quick = all(worth.minutes <= o.minutes for o in rivals[:BEST_SHOWN])
    telling = all(worth.bits >= study.worth(o.id).bits for o in rivals[:BEST_SHOWN])
    each = f"It closes {worth.bits:.1f} bits in {minutes(round(worth.minutes, 1))}"
    if quick and telling:
        return f"{each}: none of the next ones tells more, and none is quicker."
    if telling:
        return f"{each}: none of the next ones tells more."
    if quick:
        return f"{each}: others tell more, but none of the next ones is quicker, and they can follow it."
    return f"{each}: the best bargain of what it tells, what it takes, and what is then to be repaired."


def _beside(study: Study, worth: Worth, width: int) -> list[Line]:
    """The best few and the learner's own, with their figures."""
    shown = list(study.options[:BEST_SHOWN])
    shown += [o for o in study.options if o.id == worth.check and o not in shown]
    rows = []
    for option in shown:
        bits = f"{study.worth(option.id).bits:.1f}" if option.kind == "check" else ""
        mark = " (yours)" if option.id == worth.check else ""
        rows.append((f"{option.expected:.0f}", bits, f"{option.minutes:.0f}", _named(study.book, option) + mark))
    if width >= RECORDS_BELOW:
        return table(("in all", "bits", "minutes", "choice"), rows, width)
    lines: list[Line] = []
    for expected, bits, takes, name in rows:
        told = f"{expected} min in all, {takes} now" + (f", {bits} bits" if bits else "")
        lines += wrap(f"{name}: {told}", width, "  ", "    ")
    return lines


def _named(book: Book, option: Option) -> str:
    if option.kind == "help":
        return "Call for help"
    return f"Repair: {book.title(option.id)}" if option.kind == "repair" else book.title(option.id)


def end_lines(study: Study, width: int) -> list[Line]:
    """The way that was walked, and where it ends."""
    if not study.supposed:
        return wrap("Nothing was chosen. diagnose practice puts a fault behind it.", width)
    lines = wrap("Your way", width, role="heading")
    for nth, (check, outcome) in enumerate(study.supposed, 1):
        said = study.book.checks[check].outcomes[outcome].title
        lines += wrap(f"{study.book.title(check)}: {said}", width, f"  {nth}  ", "     ")
    name, p = study.ranking[0]
    lines += wrap(f"It leads to: {cause_title(study.book, name)}, {percent(p).strip()}.", width, role="good")
    return lines + wrap(f"With a fault behind it: diagnose practice --complaint {study.complaint}", width, role="dim")


def help_lines(width: int) -> list[Line]:
    """The letters."""
    lines: list[Line] = []
    for letter, meaning in LETTERS:
        lines += wrap(meaning, width, f"  {letter}  ")
    return lines + wrap("list shows all checks by part of the machine; 12-20 opens a part, a number takes one.", width)


def cause_title(book: Book, name: str) -> str:
    """A cause by its title; what is not listed says so."""
    return "Something not listed here" if name.startswith(UNLISTED) else book.title(name)
