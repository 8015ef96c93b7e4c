"""An instructor writes an exercise: machine, faults, a lying instrument, complaint and story, tried on the machine."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from typing import TypeVar

from msgspec.structs import replace

from diagnose.model import Book, fits
from diagnose.practice.exercise import Exercise
from diagnose.practice.files import ExerciseError, check_exercise
from diagnose.practice.finding import Listing
from diagnose.practice.making import causes_under
from diagnose.practice.port import World, figures_of, machine_of, simulate
from diagnose.practice.story import tell
from diagnose.terminal.choosing import number_from, short
from diagnose.terminal.front import Front, Paused
from diagnose.terminal.letters import letter_in
from diagnose.terminal.matcher import clear_winner, find
from diagnose.terminal.refusals import Refused, Told
from diagnose.units import UnitError, parse_quantity
from diagnose.view.layout import Line, wrap
from diagnose.view.question import choices

__all__ = ["Author"]

T = TypeVar("T")

INTRO = (
    "You write an exercise: an invented machine, what is wrong with it, and its story. p leaves; nothing is kept then."
)
MACHINE = "Which type of machine? Its number, id or words; list shows all."
FAULT = "What is wrong with it? A cause in your own words; list shows those that can be simulated here."
MORE = "And what else? Enter alone: that is all."
SEVERITY = "How far gone is it, from 0 to 1? Enter alone: 0.8."
LIAR = "Is one of the technician's instruments off? Enter alone: none."
OFF_BY = "By how much, like {like}? It then reads too high; with a minus too low."
COMPLAINT = "What does the kitchen call you for? Enter alone: the first."
STORY = "The story. Enter alone: this one; or your own sentences, one a line, an empty line after the last."
TITLE = "Its title. Enter alone: {title}"
BY = "Who wrote it? Enter alone: nobody named."
AGAIN = "Other faults, or graver ones, please."
NOT_SAID = "The kitchen would complain of nothing: so slight a fault, or this one here, does not show. "
NOT_KNOWN = "The kitchen would complain of what these faults are not known to bring. "
USUAL_SEVERITY = 0.8
MOST_FAULTS = 3  # more can't be told apart on one complaint
LONGEST = 300  # signs of a sentence
MOST_SENTENCES = 12
# Instruments that can be off: kind of quantity, an example, and the most they may be off by, which is judgement.
LIARS = {
    "reference thermometer": ("temperature difference", "5 F°", 30.0),
    "test gauge": ("pressure", "5 psi", 300_000.0),
    "voltmeter": ("voltage", "15 V", 200.0),
}


class Author:
    """Asks for one exercise after the other of its parts; `seed` is that of its readings."""

    def __init__(self, book: Book, world: World, front: Front, seed: int) -> None:
        self._book, self._world, self._front, self._seed = book, world, front, seed

    def write(self) -> Exercise:
        """The exercise, tried on the machine. Raises Paused."""
        self._say(INTRO)
        machine = self._until(MACHINE, self._machine)
        self._say(f"{self._book.machines[machine].title}.", "  ", "good")
        while True:
            drawn = Exercise(
                seed=self._seed, level=0, machine=machine, faults=self._faults(machine), lies=self._lies(), complaint=""
            )
            complaints = self._complaints(drawn)
            if complaints:
                return self._told(drawn, complaints)

    def _told(self, drawn: Exercise, complaints: Sequence[str]) -> Exercise:
        """With its complaint and story."""
        titles = [self._book.title(c) for c in complaints]
        first = self._until(COMPLAINT, lambda t: complaints[number_from(t, len(titles)) - 1 if t else 0], titles)
        said = [first, *(c for c in complaints if c != first)][:3]
        sim = simulate(self._world, self._book, drawn)
        title, story = tell(self._book, self._seed, said, sim.context(), drawn.machine)
        for sentence in story:
            self._say(sentence, "  ")
        own = self._sentences()
        title = self._until(TITLE.format(title=title), self._text) or title
        by = self._until(BY, self._text)
        return replace(drawn, complaint=first, story=own or story, title=title, by=by)

    def _machine(self, text: str) -> str:
        ids = list(self._book.machines)
        if text in self._book.machines:
            return text
        titles = [self._book.machines[i].title for i in ids]
        if text.casefold() in ("list", "all"):
            raise Told(choices(titles, self._front.width))
        if text[:1].isdigit() and text.rstrip(".)").isdigit():
            return ids[number_from(text, len(ids)) - 1]
        matches = find(text, {i: [self._book.machines[i].title, i.replace("_", " ")] for i in ids}, 4)
        winner = clear_winner(matches)
        if winner is not None:
            return winner
        near = "; ".join(f"{ids.index(m.id) + 1} {m.id}" for m in matches)
        raise Refused(f"{short(text)} is no one type. {f'Perhaps: {near}.' if near else 'list shows all.'}", text)

    def _faults(self, type_id: str) -> list[tuple[str, float]]:
        machine = machine_of(self._book, type_id, {})
        figures = figures_of(machine)
        here = [
            name
            for name in self._world.faults
            if name in self._book.causes
            and fits(machine, self._book.causes[name].fits)
            and self._world.fits(name, machine.type.traits, figures)
        ]
        texts = {name: [self._book.title(name), name.replace(".", " ").replace("_", " ")] for name in here}
        listing = Listing(self._book, here, texts, "fault")
        found: dict[str, float] = {}

        def named(text: str) -> str:
            if not text and found:
                return ""
            if not text:
                raise Refused("Enter alone is no answer here; an exercise needs a fault.")
            name = listing.meant(text, self._front.width)
            if name in found:
                raise Refused("That one is there already. Another, or Enter alone: that is all.")
            return name

        while len(found) < min(MOST_FAULTS, len(here)):
            name = self._until(MORE if found else FAULT, named)
            if not name:
                break
            self._say(f"{self._book.title(name)}.", "  ", "good")
            found[name] = self._until(SEVERITY, _severity)
        return list(found.items())

    def _lies(self) -> list[tuple[str, float]]:
        names = list(LIARS)
        nth = self._until(LIAR, lambda t: number_from(t, len(names), "Enter alone: none.") if t else 0, names)
        if not nth:
            return []
        quantity, like, most = LIARS[names[nth - 1]]

        def off(text: str) -> float:
            try:
                by = parse_quantity(text, quantity, like.split(" ")[1]).si
            except UnitError as error:
                raise Refused(f"{error}.".replace("..", "."), text) from None
            if not 0.0 < abs(by) <= most:
                raise Refused("So far off no instrument is that still reads; and not at all is no lie. Less, or more.")
            return round(by, 4)

        return [(names[nth - 1], self._until(OFF_BY.format(like=like), off))]

    def _complaints(self, drawn: Exercise) -> list[str]:
        """What the kitchen would call for; none, after saying why, where these faults won't do."""
        machine = machine_of(self._book, drawn.machine, drawn.own)
        try:
            said = [c for c in simulate(self._world, self._book, drawn).complaints() if c in self._book.complaints]
            said = [c for c in said if fits(machine, self._book.complaints[c].fits)]
            known = [c for c in said if any(name in causes_under(self._book, c) for name, _ in drawn.faults)]
            if known:
                check_exercise(replace(drawn, complaint=known[0]), self._book, self._world)
        except (ExerciseError, ValueError) as error:
            self._say(f"That can't be: {error}. {AGAIN}", role="refused")
            return []
        if not known:
            self._say((NOT_KNOWN if said else NOT_SAID) + AGAIN, role="refused")
        return known

    def _sentences(self) -> list[str]:
        sentences: list[str] = []
        while len(sentences) < MOST_SENTENCES:
            sentence = self._until("" if sentences else STORY, self._text)
            if not sentence:
                break
            sentences.append(sentence)
        return sentences

    def _text(self, text: str) -> str:
        if len(text) > LONGEST:
            raise Refused(f"At most {LONGEST} signs, please.")
        return text

    def _until(self, asked: str, understood: Callable[[str], T], options: Sequence[str] = ()) -> T:
        """Ask until the answer is understood. Raises Paused."""
        width = self._front.width
        if asked:
            self._front.say([Line(), *wrap(asked, width), *choices(options, width)])
        edit = ""
        while True:
            text = self._front.ask("", edit)
            edit = ""
            letter = letter_in(text, free=True)
            if letter is not None and letter.letter == "p":
                raise Paused
            try:
                return understood(text)
            except Told as told:
                self._front.say(told.lines)
            except Refused as refused:
                edit = refused.kept
                self._say(str(refused), role="refused")

    def _say(self, text: str, indent: str = "", role: str = "") -> None:
        self._front.say(wrap(text, self._front.width, indent, role=role))


def _severity(text: str) -> float:
    if not text:
        return USUAL_SEVERITY
    try:
        severity = float(text.replace(",", "."))
    except ValueError:
        severity = -1.0
    if not 0.0 < severity <= 1.0:
        raise Refused(f"{short(text)} is no severity; type a number above 0 and up to 1, like 0.8.", text)
    return round(severity, 3)
