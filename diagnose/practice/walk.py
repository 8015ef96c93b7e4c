"""Study mode: what would you check first, and why? A choice is answered with its worth; then a reading is supposed."""

from __future__ import annotations

from diagnose.inference import ImpossibleSituationError, TooWideError
from diagnose.model import Book, Machine
from diagnose.practice import walk_lines as lines
from diagnose.practice.finding import Listing
from diagnose.practice.worth import Study
from diagnose.terminal.choosing import number_from
from diagnose.terminal.front import Front, Paused
from diagnose.terminal.letters import Letter, letter_in
from diagnose.terminal.matcher import find
from diagnose.terminal.refusals import Refused, Told
from diagnose.view.drawn.chart import Folding
from diagnose.view.layout import Line, wrap

__all__ = ["Walk"]

_REASONS = 2  # causes looked for in a reason
_LIKE = 0.6  # how alike words of a reason must be to a cause's, of 1


class _Ended(Exception):
    """The learner has enough."""


class Walk:
    """One learner and one complaint. Nothing is kept."""

    def __init__(self, book: Book, machine: Machine, complaint: str, front: Front) -> None:
        self._front = front
        self._ways = [Study(book, machine, complaint)]  # the way so far, back to the beginning
        self._choice = ""  # the check chosen, while more is asked about it
        self._reasoned = False
        self._listing: Listing | None = None  # of the checks now open

    def run(self) -> None:
        """Talk until nothing is left to check, or the learner ends it."""
        front = self._front
        front.say(lines.begin_lines(self._study, front.width))
        try:
            while self._study.checks:
                front.say([Line(), *self._question()])
                self._exchange()
        except (Paused, _Ended):
            pass
        front.say([Line(), *lines.end_lines(self._study, front.width)])

    @property
    def _study(self) -> Study:
        return self._ways[-1]

    def _question(self) -> list[Line]:
        width = self._front.width
        if not self._choice:
            return lines.question_lines(self._study, len(self._ways), width)
        if not self._reasoned:
            return wrap(lines.WHY, width)
        return lines.outcome_lines(self._study, self._choice, width)

    def _exchange(self) -> None:
        """Ask until something leads on."""
        edit = ""
        while True:
            text = self._front.ask("", edit)
            edit = ""
            try:
                self._answered(text)
                return
            except Told as told:
                self._front.say(told.lines)
            except Refused as refused:
                edit = refused.kept
                self._front.say(wrap(str(refused), self._front.width, role="refused"))

    def _answered(self, text: str) -> None:
        """Raises Refused and Told where the question stands."""
        letter = letter_in(text, free=True)
        if text.casefold() in ("t all", "tree all"):
            letter = Letter("t", "all")
        if letter is not None:
            self._letter(letter)
        elif not self._choice:
            self._choice = self._check(text)
        elif not self._reasoned:
            self._reasoned = True
            reason = lines.Reason(text, self._causes_in(text))
            worth = self._study.worth(self._choice)
            self._front.say(lines.worth_lines(self._study, worth, reason, self._front.width))
        else:
            self._suppose(text)

    def _check(self, text: str) -> str:
        if not text:
            raise Refused(f"Enter alone is no answer here. {lines.HINT}")
        book, checks = self._study.book, self._study.checks
        if self._listing is None or set(self._listing.ids) != set(checks):
            names = {c: c.replace(".", " ").replace("_", " ") for c in checks}
            texts = {c: [book.checks[c].title, book.checks[c].ask, names[c]] for c in checks}
            self._listing = Listing(book, checks, texts, "check")
        return self._listing.meant(text, self._front.width)

    def _causes_in(self, text: str) -> list[str]:
        """The causes that a reason names, as far as its words tell."""
        if not text:
            return []
        book = self._study.book
        names = {name: [book.causes[name].title] for name, _ in self._study.ranking if name in book.causes}
        return [m.id for m in find(text, names, _REASONS) if m.score >= _LIKE]

    def _suppose(self, text: str) -> None:
        """Go on with an answer."""
        chance = self._study.predictions[self._choice].outcomes
        outcomes = list(self._study.book.checks[self._choice].outcomes)
        if text:
            outcome = outcomes[number_from(text, len(outcomes), "Enter alone: the likeliest.") - 1]
        else:
            outcome = max(outcomes, key=lambda o: chance[o])
        further = self._study.further(self._choice, outcome)
        try:
            assert further.solution
        except (ImpossibleSituationError, TooWideError):
            raise Refused("That can't be supposed after the answers before; take another.") from None
        self._ways.append(further)
        self._choice, self._reasoned = "", False

    def _letter(self, letter: Letter) -> None:
        width = self._front.width
        match letter.letter:
            case "e" | "p":
                raise _Ended
            case "h" | "?":
                raise Told(lines.help_lines(width))
            case "t":
                raise Told(lines.tree_again(self._study, width, Folding(everything=bool(letter.more)), 40))
            case "r":
                raise Told(lines.ranking_lines(self._study, width))
            case "b" | "u":
                self._back()
                return
        raise Refused(f"{letter.letter} is no letter of study mode; h lists them.")

    def _back(self) -> None:
        if self._choice:
            self._choice, self._reasoned = "", False
        elif len(self._ways) > 1:
            self._ways.pop()
        else:
            raise Refused("This is the beginning.")
