"""An exercise with its steps: how it stands follows from playing them on the machine again."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from diagnose.model import Book, Cause, Check
from diagnose.practice.care import due, nothing_to_read, wrong
from diagnose.practice.exercise import Exercise, Result
from diagnose.practice.kept import Looked, Noted, Said, Step, Turned, Worked
from diagnose.practice.machine import Practice, Shown
from diagnose.practice.port import World

__all__ = ["Course"]


class Course:
    """One trainee on one machine."""

    def __init__(self, book: Book, world: World, exercise: Exercise, steps: Iterable[Step] = ()) -> None:
        self.book, self.world, self.exercise = book, world, exercise
        self.practice = Practice(book, world, exercise)
        self.turned = Turned()
        self.said: list[str] = []
        self.unsafe: list[str] = []
        self.hurt: list[Check | Cause] = []  # the work that was unsafe
        self.looked: list[str] = []
        self.notes: list[str] = []
        self.idle = 0.0  # minutes in which the machine was made dead for nothing
        self.asked = 0  # questions answered
        self.closed = False
        self._isolated = False
        for step in steps:
            self.take(step)

    def take(self, step: Step) -> Sequence[Shown]:
        """Go one step on; returns what was read and found by it."""
        match step:
            case Turned():
                self.turned = step
            case Looked(what):
                self.looked.append(what)
            case Noted(text):
                self.notes.append(text)
            case Said(cause):
                self._say(cause)
            case Worked():
                return self._work(step)
        return ()

    def _say(self, cause: str) -> None:
        if cause:
            self.said.append(cause)
        else:
            self.closed = True

    def entry(self, what: str, name: str) -> Check | Cause:
        """The check or cause meant."""
        return self.book.checks[name] if what == "check" else self.book.causes[name]

    def choice_due(self, what: str, name: str) -> bool:
        """Whether it must be said what is done first."""
        return due(self.entry(what, name), self.book, self.practice.now().state, self._isolated)

    def _work(self, step: Worked) -> Sequence[Shown]:
        self.turned = Turned()
        self.asked += 1
        entry = self.entry(step.what, step.id)
        why = wrong(entry, step.first)
        if why:
            self.unsafe.append(f"{entry.title}: {why}")
            self.hurt.append(entry)
        if nothing_to_read(entry, step.first):
            self.idle += self.practice.move_to("isolated")
            self._isolated = True
            return ()
        if step.what == "check" and not self.practice.can_read(step.id):
            return ()
        dead = entry.state in ("isolated", "cold and drained")
        if step.first == "dead" and not dead:
            self.practice.move_to("isolated")  # more than was asked for, and paid for
        self._isolated = dead and not why and (step.first == "dead" or self._isolated)
        if step.what == "check":
            return [self.practice.read(step.id)]
        shown = self.practice.repair(step.id)
        self._isolated = self._isolated and len(shown) == 1
        if self.practice.solved:
            self.said = [each.id for each in self.practice.done if each.found]
            self.closed = True
        return shown

    @property
    def path(self) -> tuple[Shown, ...]:
        return tuple(self.practice.done)

    @property
    def wrong_repairs(self) -> int:
        """Repairs of parts that were sound."""
        return sum(each.what == "repair" and not each.found for each in self.path)

    @property
    def found(self) -> bool:
        """Whether all that was hidden was repaired and proved, or named and nothing else."""
        hidden = {name for name, _ in self.exercise.faults}
        repaired = {each.id for each in self.path if each.found}
        return self.practice.solved or hidden == repaired | set(self.said)

    def result(self, at: str, trainee: str, expected: float, best: float) -> Result:
        """What came of it."""
        return Result(
            exercise=self.exercise,
            at=at,
            trainee=trainee,
            minutes=round(self.practice.minutes, 1),
            expected=round(expected, 1),
            best=round(best, 1),
            said=list(self.said),
            solved=self.found,
            unsafe=list(self.unsafe),
            wrong_repairs=self.wrong_repairs,
            checks=[each.id for each in self.path if each.what == "check"],
        )
