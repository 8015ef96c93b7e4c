"""What each choice is worth at a point of a job without a machine: minutes, bits, and what it could settle."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from functools import cached_property

from diagnose.inference import (
    Circumstances,
    Economy,
    FaultTree,
    Situation,
    Solution,
    bearing_checks,
    build_tree,
    predict,
    solve,
)
from diagnose.inference.advice import advise
from diagnose.inference.options import Option
from diagnose.inference.repairs import open_bits
from diagnose.inference.situation import Prediction
from diagnose.job.crew import WHO
from diagnose.model import Book, Finding, Machine, MachineType, fits

__all__ = ["Lead", "Study", "Worth", "usual_type"]


@dataclass(frozen=True)
class Lead:
    """One answer of a check: how likely it is, and the cause that leads after it with its probability."""

    outcome: str
    chance: float
    cause: str
    after: float


@dataclass(frozen=True)
class Worth:
    """A check as a choice. `expected`: minutes from now to a verified repair when it is done next."""

    check: str
    rank: int  # among all that could be done, 1 the best
    minutes: float
    opening: float
    expected: float
    bits: float
    leads: Sequence[Lead]


@dataclass(frozen=True, eq=False)
class Study:
    """A complaint on a machine, with what was supposed to be read so far: (check, outcome)."""

    book: Book
    machine: Machine
    complaint: str
    supposed: tuple[tuple[str, str], ...] = ()

    def further(self, check: str, outcome: str) -> Study:
        """The same with one answer more."""
        return Study(self.book, self.machine, self.complaint, (*self.supposed, (check, outcome)))

    @cached_property
    def tree(self) -> FaultTree:
        return build_tree(self.book, self.machine)

    @cached_property
    def situation(self) -> Situation:
        found = (Finding(check, {outcome: 1.0}, "supposed", (check,)) for check, outcome in self.supposed)
        return Situation(((self.complaint, 0, True),), tuple(found))

    @cached_property
    def solution(self) -> Solution:
        """Raises ImpossibleSituationError, TooWideError."""
        return solve(self.tree, self.situation)

    @cached_property
    def predictions(self) -> Mapping[str, Prediction]:
        done = {check for check, _ in self.supposed}
        return predict(
            self.tree, self.situation, [c for c in bearing_checks(self.tree, self.situation) if c not in done]
        )

    @cached_property
    def options(self) -> tuple[Option, ...]:
        """All that could be done next, the fewest expected minutes first."""
        now, economy = self._now(), Economy.of(self.book)
        return advise(self.book, self.tree, self.situation, self.solution, self.predictions, economy, now).options

    def _now(self) -> Circumstances:
        work = [self.book.checks[check] for check, _ in self.supposed]
        opened = frozenset(access for each in work for access in each.open) - {"none"}
        return Circumstances(open=opened, state=work[-1].state if work else "running", who=frozenset(WHO))

    @property
    def checks(self) -> list[str]:
        """The checks that can be chosen, in the order of the book."""
        offered = {o.id for o in self.options if o.kind == "check"}
        return [check for check in self.book.checks if check in offered]

    @property
    def ranking(self) -> list[tuple[str, float]]:
        """The causes of the complaint, most probable first; what is not listed is among them."""
        below = set(self.tree.causes_under(self.complaint))
        return [(name, p) for name, p in self.solution.ranking if name in below]

    def worth(self, check: str) -> Worth:
        """What this check is worth. KeyError where it can't be chosen."""
        for rank, option in enumerate(self.options, 1):
            if option.kind == "check" and option.id == check:
                foretold = self.predictions[check]
                return Worth(
                    check, rank, option.minutes, option.opening, option.expected, bits_of(foretold), _leads(foretold)
                )
        raise KeyError(check)


def bits_of(foretold: Prediction) -> float:
    """Bits of doubt about the causes that a check is expected to close."""
    chances = list(foretold.outcomes.values())
    mean = sum(p * row for p, row in zip(chances, foretold.after, strict=True))
    left = sum(p * float(b) for p, b in zip(chances, open_bits(foretold.after), strict=True))
    return max(float(open_bits(mean[None, :])[0]) - left, 0.0)


def _leads(foretold: Prediction) -> list[Lead]:
    leads = []
    for (outcome, chance), row in zip(foretold.outcomes.items(), foretold.after, strict=True):
        best = int(row.round(9).argmax())  # equals stand in the order of the book
        leads.append(Lead(outcome, float(chance), foretold.causes[best], float(row[best])))
    return sorted(leads, key=lambda lead: -round(lead.chance, 9))


def usual_type(book: Book, complaint: str) -> MachineType:
    """The most ordinary type that can be complained of so: the one whose traits most other types share.

    LookupError where there is none.
    """
    able = [t for t in book.machines.values() if fits(Machine("", t), book.complaints[complaint].fits)]
    if not able:
        raise LookupError(f"no type of machine can be complained of so: {complaint}")

    def shared(kind: MachineType) -> int:
        return sum(
            other.traits.get(name) == value for name, value in kind.traits.items() for other in book.machines.values()
        )

    return max(able, key=shared)
