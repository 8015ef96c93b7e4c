"""The best path: the tool's own advice played on the same machine until the repair is proved."""

from __future__ import annotations

from dataclasses import dataclass
from math import log2

from diagnose.inference.repairs import open_bits
from diagnose.job.assess import Assessment
from diagnose.model import Book
from diagnose.practice.exercise import Exercise
from diagnose.practice.machine import Practice, Shown
from diagnose.practice.port import World

__all__ = ["Best", "Told", "best_path", "settling", "told"]

_MOST_STEPS = 60
_AT_A_LOSS = 5  # so many steps running that the call for help would have been better: it leads nowhere
_LOOKED_AT = 10  # checks tried for what they alone would have told: those foretold to tell most


@dataclass(frozen=True)
class Best:
    """The path, its minutes, what was expected at the start, and whether it ended in a proved repair.

    `helped`: somewhere on the way the advice would rather have called for help, which nobody in practice can.
    `known`: how many of the last steps are those of one who knows the fault, the advice being at a loss.
    """

    path: tuple[Shown, ...]
    minutes: float
    expected: float
    solved: bool
    helped: bool = False
    known: int = 0


@dataclass(frozen=True)
class Told:
    """What one reading did: belief in what was really wrong before and after it, 0 to 1, and that in bits.

    Of several faults, belief is that in the one it moved most; the bits are those of all.
    """

    check: str
    before: float
    after: float
    bits: float
    minutes: float


def best_path(book: Book, world: World, exercise: Exercise, most: int = _MOST_STEPS) -> Best:
    """Follow the advice among what can be read, blind to the fault, with the same seed; never calling for help.

    Where the advice is at a loss, it goes on as one would who knows what is wrong: by what shows it, to its repair.
    """
    practice = Practice(book, world, exercise)
    expected, helped, lost = 0.0, False, 0
    for _ in range(most):
        practice.leave_unreadable()
        options = practice.judged().options
        expected = expected or min((choice.option.expected for choice in options), default=0.0)
        lost = lost + 1 if options and options[0].what == "help" else 0
        helped = helped or lost > 0
        step = next((c for c in options if c.what != "help"), None)
        if step is None or lost > _AT_A_LOSS:
            break
        if step.what == "check":
            practice.read(step.id)
        else:
            practice.repair(step.id)
        if practice.solved:
            break
    own = len(practice.done)
    if not practice.solved:
        _as_one_who_knows(practice)
    return Best(
        tuple(practice.done), practice.minutes, expected, practice.solved, helped, known=len(practice.done) - own
    )


def _as_one_who_knows(practice: Practice) -> None:
    """For each fault the quickest check not read yet that looks at it by name, where there is one; and its repair."""
    read = {shown.id for shown in practice.done if shown.what == "check"}
    for fault in practice.sim.present:
        shows = [c for c in practice.book.checks.values() if fault in c.looks_at and practice.can_read(c.id)]
        fresh = [c for c in shows if c.id not in read and not c.computed]
        if fresh:
            practice.read(min(fresh, key=lambda c: (practice.cost(c), c.id)).id)
        practice.repair(fault)
        if practice.solved:
            return


def told(book: Book, world: World, exercise: Exercise, path: tuple[Shown, ...]) -> list[Told]:
    """What each reading of a path told of the faults that were there then, in order; proofs are left out."""
    practice = Practice(book, world, exercise)
    found: list[Told] = []
    belief = _belief(practice.judged(), practice.sim.present)
    for shown in path:
        there = practice.sim.present
        if shown.what == "repair":
            practice.repair(shown.id)
            belief = _belief(practice.judged(), practice.sim.present)
        elif shown.what == "check":
            practice.read(shown.id)
            after = _belief(practice.judged(), there)
            found.append(_told(shown.id, belief, after, shown.minutes))
            belief = after
    return found


def settling(book: Book, world: World, exercise: Exercise, most: int = 3) -> list[Told]:
    """The checks that alone would have moved belief most towards what was wrong, of those foretold to tell most."""
    start = Practice(book, world, exercise)
    judged = start.judged()
    before = _belief(judged, start.sim.present)
    foretold = sorted(
        ((_foretold(judged, check), check) for check in judged.predictions if start.can_read(check)), reverse=True
    )
    found = []
    for _, check in foretold[:_LOOKED_AT]:
        fresh = Practice(book, world, exercise)
        shown = fresh.read(check)
        after = _belief(fresh.judged(), start.sim.present)
        found.append(_told(check, before, after, shown.minutes))
    return [each for each in sorted(found, key=lambda t: (-t.bits, t.check))[:most] if each.bits > 0.5]


def _belief(judged: Assessment, faults: tuple[str, ...]) -> tuple[float, ...]:
    """How probable each thing that is really wrong is held."""
    return tuple(min(max(judged.solution.posterior.get(f, 1e-6), 1e-6), 1.0 - 1e-6) for f in faults)


def _told(check: str, before: tuple[float, ...], after: tuple[float, ...], minutes: float) -> Told:
    moves = [log2(b / (1.0 - b)) - log2(a / (1.0 - a)) for a, b in zip(before, after, strict=True)]
    most = max(range(len(moves)), key=lambda n: abs(moves[n]), default=None)
    if most is None:
        return Told(check, 0.0, 0.0, 0.0, minutes)
    return Told(check, before[most], after[most], sum(moves), minutes)


def _foretold(judged: Assessment, check: str) -> float:
    """Bits of doubt a check is foretold to close."""
    foretold = judged.predictions[check]
    chances = list(foretold.outcomes.values())
    mean = sum(p * row for p, row in zip(chances, foretold.after, strict=True))
    left = sum(p * float(bits) for p, bits in zip(chances, open_bits(foretold.after), strict=True))
    return float(open_bits(mean[None, :])[0]) - left
