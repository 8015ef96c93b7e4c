"""Tell a story anew: a machine with known faults answers whatever the program asks, and the dialogue is printed.

The demonstration transcripts were begun so. When knowledge has changed which checks are asked,
`python -m tests.golden.stories` tells them again; read the difference before keeping it.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from pathlib import Path

from diagnose.dialogue import requests as rq
from diagnose.dialogue.begin import machine_options
from diagnose.dialogue.conversation import Conversation
from diagnose.dialogue.flow import next_request
from diagnose.dialogue.scene import Scene
from diagnose.job.journal import Journal
from diagnose.job.session import Session
from diagnose.model import Book, Check
from diagnose.model.truth import row_of, so_nodes
from diagnose.terminal.front import Paused
from diagnose.terminal.scripted import ScriptedFront
from diagnose.units import Quantity, show_number
from diagnose.view.layout import wrap
from tests.replay import CLOCK, COMMAND, JOB

__all__ = ["Story", "Teller", "heading_of", "tell"]

MOST_ANSWERS = 90


@dataclass(frozen=True)
class Story:
    """A machine, what is wrong with it, and what its instruments show where a healthy one would show something else."""

    name: str
    header: Sequence[str]
    machine: str
    site: str
    faults: Sequence[str]
    complaints: str  # as the technician types them
    context: Mapping[str, str] = field(default_factory=dict)
    # Measured check -> value, for each set of faults that is left: names joined by " + ", "" when none is.
    shows: Mapping[str, Mapping[str, str]] = field(default_factory=dict)
    asides: Mapping[str, Sequence[str]] = field(default_factory=dict)  # before the answer to a check: letters
    pause_before: str = ""  # a check before which the job is paused and resumed


class Teller(ScriptedFront):
    """Answers as the machine of the story would make a technician answer."""

    def __init__(self, story: Story, scene: Scene, paused: bool) -> None:
        super().__init__([])
        self._story = story
        self._scene = scene
        self._paused = paused
        self._told: set[str] = set()
        self._queue: list[str] = []
        self.count = 0

    def ask(self, default: str = "", edit: str = "", **more: object) -> str:
        self.count += 1
        assert self.count < MOST_ANSWERS, f"{self._story.name} does not end"
        answer = self._queue.pop(0) if self._queue else self._next()
        self.printed.append(f"> {answer}".rstrip())
        return answer or default

    def _next(self) -> str:
        scene = self._scene
        request = self.request()
        if isinstance(request, rq.AskCheck):
            if request.check == self._story.pause_before and not self._paused:
                return "p"
            asides = self._story.asides.get(request.check, ())
            if asides and request.check not in self._told:
                self._told.add(request.check)
                self._queue = [*asides[1:], self._read(scene.book.checks[request.check])]
                return asides[0]
            return self._read(scene.book.checks[request.check])
        return self._say(request)

    def request(self) -> rq.Wanted:
        """What is asked now."""
        return next_request(self._scene.book, self._scene.state, self._scene.options)

    def _say(self, request: rq.Wanted) -> str:
        match request:
            case rq.AskMachine():
                return str([m.name for m in machine_options(self._scene)].index(self._story.machine) + 1)
            case rq.OfferPlate() | rq.AskClose() | rq.AskHint():
                return "1"
            case rq.Describe():
                return self._story.site
            case rq.AskSafety():
                return "0"
            case rq.AskComplaint(_, said):
                return "" if said else self._story.complaints
            case rq.AskContext(_, question):
                return self._context(question)
            case rq.AskCaution(words=words):
                return " ".join(words)
            case rq.Decide(_, options):
                return str(next(n for n, o in enumerate(options, 1) if o.what != "help"))
            case rq.AskRepair(_, cause):
                return "1" if cause in self._left() else "2"
            case rq.AskGone(_, complaint):
                return "2" if complaint in self._so() else "1"
        raise AssertionError(f"no answer to {request}")

    def _context(self, question: str) -> str:
        answer = self._story.context.get(question)
        return str(self._scene.book.context[question].answers.index(answer) + 1) if answer else ""

    def _left(self) -> list[str]:
        repaired = {r.cause for r in self._scene.state.repairs if r.found != "sound"}
        return [f for f in self._story.faults if f not in repaired]

    def _so(self) -> frozenset[str]:
        return so_nodes(self._scene.book, self._left(), self._scene.state.machine)

    def _read(self, check: Check) -> str:
        left = " + ".join(fault.split(".")[1] for fault in self._left())
        shown = self._story.shows.get(left, {}).get(check.id)
        if shown is not None:
            return shown
        row = row_of(check, self._so())
        if check.reading is not None:
            assert row == "none", f"{self._story.name}: say what {check.id} shows while {row} is so"
            return self._healthy(check)
        good = next((o for o, outcome in check.outcomes.items() if outcome.good), next(iter(check.outcomes)))
        words = check.shows[row]
        likely = max(words, key=lambda o: self._scene.book.likelihood(words[o])) if words else good
        return str(list(check.outcomes).index(likely if row != "none" else good) + 1)

    def _healthy(self, check: Check) -> str:
        spec = check.reading
        assert spec is not None
        expected = self._scene.assessment.expected(check.id)
        assert expected is not None, f"{self._story.name}: say what {check.id} shows on a healthy machine"
        if expected.low is None and expected.high is None:
            return "?"  # no figure can be told for this machine, so the technician does not know
        value = _middle(expected.low, expected.high)
        return " ".join([value] * max(1, len(spec.each)))


def _middle(low: Quantity | None, high: Quantity | None) -> str:
    if low is not None and high is not None:
        return show_number((low.value + high.as_unit(low.unit).value) / 2, 3)
    end = low or high
    assert end is not None
    return show_number(end.value * (1.5 if low is not None else 0.5), 2)


def heading_of(texts: Sequence[str]) -> list[str]:
    """The lines at the top of a transcript."""
    return [str(line) for text in texts for line in wrap(text, 80, "# ", "# ")]


def tell(story: Story, book: Book, folder: Path) -> str:
    """The whole transcript of a story."""
    lines = heading_of(story.header)
    journal = Journal(folder / f"{story.name}.sqlite3", clock=lambda: CLOCK)
    paused = False
    try:
        while True:
            scene = Scene(Session(book, journal, JOB), folder / "machines")
            front = Teller(story, scene, paused)
            try:
                Conversation(scene, front).run()
                again = False
            except Paused:
                front.printed.append(f"Paused, saved. Resume with: diagnose resume {JOB}")
                again = True
            lines += [f"{COMMAND} resume {JOB}" if paused else COMMAND, *front.printed]
            paused = True
            if not again:
                return "\n".join(lines) + "\n"
    finally:
        journal.close()
