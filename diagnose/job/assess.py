"""The one place where a state becomes an assessment: rules, then the fault tree, then advice."""

from __future__ import annotations

from collections.abc import Hashable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from functools import cached_property

from diagnose.inference import (
    Economy,
    FaultTree,
    ImpossibleSituationError,
    Prediction,
    Situation,
    Solution,
    TooWideError,
    advise,
    bearing_checks,
    build_tree,
    conflicts,
    counted_as,
    explain,
    foretold_roughly,
    nothing_listed_fits,
    predict,
    solve,
    unlisted,
)
from diagnose.inference.kept import Kept
from diagnose.inference.tree import UNLISTED
from diagnose.job.circumstances import circumstances
from diagnose.job.state import JobState
from diagnose.job.telling import Choice, Reason, conflict_sentence, item_sentence, told
from diagnose.job.usable import usable_situation
from diagnose.model import Book, Finding, Machine
from diagnose.rules import Expected, RuleRun, expected, findings

__all__ = ["SOMETHING_ELSE", "Assessment", "Row", "assess"]

SOMETHING_ELSE = "something not listed here"
# Situations of a tree whose answer is kept: who goes back, resumes, or is shown a job again waits for nothing.
_SOLVED, _FORETOLD = 64, 8


@dataclass(frozen=True)
class Row:
    """One line of the ranking."""

    id: str
    title: str
    probability: float
    kind: str  # cause | no fault | unlisted


@dataclass(frozen=True)
class Assessment:
    """What follows from a state: nothing here is stored, all of it is worked out again when asked."""

    book: Book
    state: JobState
    machine: Machine
    tree: FaultTree
    run: RuleRun
    situation: Situation
    solution: Solution
    left_aside: tuple[str, ...] = ()  # a sentence for each piece of evidence that could not be used

    @property
    def findings(self) -> tuple[Finding, ...]:
        return self.run.findings

    @cached_property
    def rows(self) -> tuple[Row, ...]:
        """Causes that can bring about what is complained of, and "something not listed here", most probable first."""
        said = tuple(dict.fromkeys(c for c, _, _ in self.state.complaints if c in self.tree.nodes))
        complaints = said or tuple(c for c in self.book.complaints if c in self.tree.nodes)
        under = frozenset(leaf for c in complaints for leaf in self.tree.causes_under(c))
        leaves = [leaf for leaf in self.solution.causes if leaf in under]
        sums = dict.fromkeys(counted_as(self.tree, complaints, leaves), 0.0)
        for name, leaf in zip(counted_as(self.tree, complaints, leaves), leaves, strict=True):
            sums[name] += self.solution.posterior[leaf]
        ranked = sorted(sums, key=lambda name: (-round(sums[name], 12), name))
        return tuple(Row(name, self._title(name), min(sums[name], 1.0), self._kind(name)) for name in ranked)

    def _title(self, node: str) -> str:
        if node in self.book.causes:
            return self.book.causes[node].title
        said = dict.fromkeys(c for c, _, _ in self.state.complaints)
        of = next((c for c in said if unlisted(c) == node), None)
        return f"{SOMETHING_ELSE} ({self.book.title(of)})" if of is not None and len(said) > 1 else SOMETHING_ELSE

    def _kind(self, node: str) -> str:
        if node not in self.book.causes:
            return "unlisted"
        return "no fault" if self.book.causes[node].no_fault else "cause"

    @cached_property
    def predictions(self) -> Mapping[str, Prediction]:
        """What each open check would answer, and what would then be believed; told roughly while a kitchen waits."""
        return self.promising if self.state.by_kitchen else self.foretold(self._open_checks())

    def foretold(self, checks: Sequence[str]) -> Mapping[str, Prediction]:
        """The same of some checks, exactly."""
        known: Kept[Mapping[str, Prediction]] = Kept.of(self.tree, "foretold", _FORETOLD)
        return known.get_or((_key(self.situation), *checks), lambda: predict(self.tree, self.situation, checks))

    @cached_property
    def promising(self) -> Mapping[str, Prediction]:
        """The same of every open check, at once and roughly: which are worth foretelling."""
        return foretold_roughly(self.tree, self.situation, self.solution, self._open_checks())

    def _open_checks(self) -> list[str]:
        """Checks that bear on what is complained of, not answered since the last repair, and possible here and now."""
        done = {*self.state.readings_now(), *circumstances(self.book, self.state).unavailable}
        return [check for check in bearing_checks(self.tree, self.situation) if check not in done]

    @cached_property
    def options(self) -> tuple[Choice, ...]:
        """What can be done next within what is allowed here, the fewest expected minutes first."""
        economy, now = Economy.of(self.book), circumstances(self.book, self.state)
        advice = advise(self.book, self.tree, self.situation, self.solution, self.predictions, economy, now)
        return tuple(told(self.book, option) for option in advice.options)

    @cached_property
    def conflicts(self) -> tuple[str, ...]:
        """What was left aside, then readings that can hardly both be right, a sentence a pair, the worst first."""
        return self.left_aside + tuple(
            conflict_sentence(self.book, self.state, self.situation, each)
            for each in conflicts(self.tree, self.situation)
        )

    @cached_property
    def nothing_fits(self) -> tuple[str, ...]:
        """Complaints that nothing listed explains well: "something not listed here" leads."""
        return nothing_listed_fits(self.tree, self.situation, self.solution)

    @cached_property
    def unlisted_behind(self) -> tuple[str, ...]:
        """Where nothing listed fits: titles of the events that what is not listed would most likely bring about."""
        rows = {row.id: row.probability for row in self.rows}
        found = [(unlisted(complaint), self._most_probable(unlisted(complaint))) for complaint in self.nothing_fits]
        return tuple(
            self.book.title(leaf.removeprefix(UNLISTED))
            for row, leaf in found
            if leaf != row and self.solution.posterior[leaf] > rows.get(row, 1.0) / 2
        )

    def _most_probable(self, node: str) -> str:
        """Of what is not listed for a complaint, the most probable leaf; any other node is itself."""
        complaint = node.removeprefix(UNLISTED)
        if node == complaint or complaint not in self.book.complaints:
            return node
        leaves = [leaf for leaf in self.tree.causes_under(complaint) if self.tree.nodes[leaf].kind == "unlisted"]
        return max(leaves, key=lambda leaf: self.solution.posterior[leaf])

    def reasons(self, node: str) -> tuple[Reason, ...]:
        """What speaks for and against a cause or event, the weightiest first."""
        why = explain(self.tree, self.situation, self._most_probable(node))
        both = sorted((*why.speaks_for, *why.speaks_against), key=lambda r: -round(abs(r.bits), 9))
        return tuple(Reason(item_sentence(self.book, self.state, self.situation, r.item), r.bits, r.sole) for r in both)

    def expected(self, check: str) -> Expected | None:
        """What the check should read on this machine, with the other readings as they are."""
        return expected(self.book, self.machine, self.state.readings, check, self.state.stage)


def assess(book: Book, state: JobState) -> Assessment:
    """Work out everything that follows from a state. The state must have a machine (ValueError)."""
    if state.machine is None:
        raise ValueError("the machine is not known yet")
    tree = build_tree(book, state.machine, state.context)
    run = findings(book, state.machine, state.readings)
    situation = Situation(
        complaints=tuple(said for said in state.complaints if said[0] in tree.nodes),
        findings=_as_read([f for f in run.findings if f.check in tree.checks], state),
        repaired=tuple(_repaired(state, tree)),
        ruled_out=tuple(dict.fromkeys(_ruled_out(state, tree))),
        seen=tuple(_seen(state, tree)),
    )
    known: Kept[Solution] = Kept.of(tree, "solved", _SOLVED)
    try:
        solution = known.get_or(_key(situation), lambda: solve(tree, situation))
        left_aside: tuple[str, ...] = ()
    except (ImpossibleSituationError, TooWideError):
        situation, solution, left_aside = usable_situation(book, tree, situation)
    return Assessment(book, state, state.machine, tree, run, situation, solution, left_aside)


def _key(situation: Situation) -> Hashable:
    """The same for situations of which the tree must say the same."""
    seen = tuple((f.check, f.stage, tuple(f.weights.items())) for f in situation.findings)
    return situation.complaints, seen, situation.repaired, situation.ruled_out, situation.seen


def _as_read(found: Sequence[Finding], state: JobState) -> tuple[Finding, ...]:
    """Findings in the order in which the last of their readings was taken."""
    taken = {reading.id: nth for nth, reading in enumerate(state.readings)}
    return tuple(sorted(found, key=lambda f: max((taken.get(each, 0) for each in f.counts), default=0)))


def _ruled_out(state: JobState, tree: FaultTree) -> Iterator[str]:
    """What was ruled out, as far as the tree has it; of what is not listed, all that counts as it."""
    for node in state.ruled_out:
        complaint = node.removeprefix(UNLISTED)
        if node in tree.nodes and node != complaint:
            yield from (leaf for leaf in tree.causes_under(complaint) if tree.nodes[leaf].kind == "unlisted")
        elif node in tree.nodes:
            yield node


def _repaired(state: JobState, tree: FaultTree) -> Iterator[str]:
    """What was repaired, in order; a cause that this knowledge or machine has not is one of those not listed here."""
    for repair in state.repairs:
        if repair.found != "sound":
            known = repair.cause in tree.nodes and tree.nodes[repair.cause].leaf
            yield repair.cause if known else next(n for n, node in tree.nodes.items() if node.kind == "unlisted")


def _seen(state: JobState, tree: FaultTree) -> Iterator[tuple[str, int, bool]]:
    """What the parts in hand told: faulty just before their repair, or sound all along."""
    stage = 0
    for repair in state.repairs:
        if repair.found != "can't tell" and repair.cause in tree.nodes:
            yield repair.cause, stage, repair.found == "as expected"
        stage += repair.found != "sound"
