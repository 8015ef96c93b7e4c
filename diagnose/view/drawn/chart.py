"""What is drawn of a complaint: its tree, how often each branch is the reason, the checks that decide at each node."""

from __future__ import annotations

from collections.abc import Callable, Collection, Mapping
from dataclasses import dataclass
from functools import cached_property

from diagnose.inference import FaultTree, Situation, build_tree, solve, unlisted
from diagnose.inference.parting import Parting, Told
from diagnose.inference.tree import UNLISTED
from diagnose.job.assess import SOMETHING_ELSE
from diagnose.model import Book, Machine, fits
from diagnose.view.layout import number_word
from diagnose.view.outline import Outline, Row, opened_to_fit
from diagnose.view.traits import restricted

__all__ = ["Chart", "Decides", "Folding", "NoSuchNodeError"]

POINTER = 0.25  # judgement: a quick look is named beside the best check when it tells this part of what that tells
ABOUT_AS_TELLING = 0.7  # judgement: a share of the best check's bits
LEAST_BITS = 0.01  # less than this decides nothing


class NoSuchNodeError(ValueError):
    """A branch was named that is not in the tree; the message offers what is."""


@dataclass(frozen=True)
class Decides:
    """A check named at a node. `shows`: what it then shows, at a cause."""

    check: str
    title: str
    minutes: float
    bits: float
    share: float  # of the doubt at this node
    shows: str = ""


@dataclass(frozen=True)
class Folding:
    """How much is opened: everything but `closed`; what is deeper than `deepest` stays shut."""

    everything: bool = False
    opened: tuple[str, ...] = ()  # ids or outline numbers
    closed: tuple[str, ...] = ()
    deepest: int | None = None


@dataclass(frozen=True, eq=False)
class Chart:
    """The tree of one complaint on one machine, or (None) in the whole book."""

    book: Book
    complaint: str
    machine: Machine | None = None
    built: FaultTree | None = None  # where the tree was built before

    @cached_property
    def tree(self) -> FaultTree:
        return self.built or build_tree(self.book, self.machine)

    @cached_property
    def parting(self) -> Parting:
        return Parting(self.tree, self.complaint)

    @cached_property
    def outline(self) -> Outline:
        return Outline(self._children)

    @property
    def possible(self) -> bool:
        """Whether this machine can be complained of so."""
        entry = self.book.complaints[self.complaint]
        return self.machine is None or fits(self.machine, entry.fits)

    @cached_property
    def share(self) -> Mapping[str, float]:
        """How probable every node is once the complaint is made and nothing is read."""
        return solve(self.tree, Situation(((self.complaint, 0, True),))).posterior

    def _children(self, node: str) -> list[str]:
        """What is not listed is drawn for the complaint alone: under every event it would only repeat itself."""
        kinds, leak = self.tree.nodes, unlisted(self.complaint)
        inputs = [n for n in kinds[node].inputs if kinds[n].kind != "unlisted" or n == leak]
        return sorted(inputs, key=lambda n: (n == leak, -round(self.share.get(n, 0.0), 12)))

    def rows(
        self, folding: Folding, screen: int | None = None, taken: Callable[[list[Row]], int] | None = None
    ) -> list[Row]:
        """The rows as folded. With `screen`, as many branches open by themselves as `taken(rows)` lines allow."""
        top = self.complaint
        closed = {self.node_at(each) for each in folding.closed}
        named = [self.node_at(each) for each in folding.opened]
        above = {n for node in named for n in self.outline.above(top, node)}
        if folding.everything or screen is None or taken is None or folding.deepest is not None:
            return self._deep(folding, closed, {*named, *above})
        opened = {top, *named, *above} - closed

        def rows_of(wanted: Collection[str]) -> list[Row]:
            return self.outline.rows([top], wanted, closed)

        return opened_to_fit(rows_of, opened, self.share, lambda grown: taken(grown) <= screen, closed)

    def _deep(self, folding: Folding, closed: set[str], opened: set[str]) -> list[Row]:
        rows = self.outline.rows([self.complaint], None, closed, folding.deepest)
        if folding.deepest is None or not opened:
            return rows
        shown = {r.node for r in rows if not r.folded}
        return self.outline.rows([self.complaint], shown | opened, closed)

    def node_at(self, named: str) -> str:
        """The node of an id or an outline number. Raises NoSuchNodeError."""
        if named in self.tree.below(self.complaint):
            return named
        found = self.outline.at(self.complaint, named)
        if found is None:
            raise NoSuchNodeError(
                f"nothing in this tree is called {named[:60]!r}; name a branch by its number, like 2 or 2.1, or its id"
            )
        return found

    def title(self, node: str) -> str:
        if self.tree.nodes[node].kind != "unlisted":
            return self.book.title(node)
        leak = node == unlisted(self.complaint)
        return SOMETHING_ELSE if leak else f"{SOMETHING_ELSE} ({self.book.title(node.removeprefix(UNLISTED))})"

    def asks(self, node: str) -> str:
        """What a gate asks of its members, in words; empty for a cause.

        On this machine, that is: an "any" of one member is that member.
        """
        entry = self.tree.nodes[node]
        if entry.leaf:
            return ""
        if entry.need == 1:
            return "any of"
        return "all of" if entry.need == len(entry.inputs) else f"at least {number_word(entry.need)} of"

    def remarks(self, node: str, parent: str | None = None) -> list[str]:
        """What is said behind a title: its gate where not any one will do, its machines, that nothing is broken.

        The machines go unsaid where they are those of the parent.
        """
        said = [self.asks(node)] if self.asks(node) not in ("", "any of") else []
        if self.machine is None and self.restriction(node) != self.restriction(parent):
            said += [each for each in [restricted(self.restriction(node))] if each]
        if node in self.book.causes and self.book.causes[node].no_fault:
            said.append("no fault of the machine")
        return said

    def restriction(self, node: str | None) -> Mapping[str, list[str | int | bool]]:
        """The traits an entry is restricted to."""
        for table in (self.book.causes, self.book.events, self.book.complaints):
            if node is not None and node in table:
                return table[node].fits
        return {}

    def decides(self, node: str) -> list[Decides]:
        """The checks named at a node: at a gate of any, which branch; else whether it is this."""
        if node not in self._named:
            self._named[node] = self._decides(node)
        return self._named[node]

    @cached_property
    def _named(self) -> dict[str, list[Decides]]:
        return {}

    def _decides(self, node: str) -> list[Decides]:
        entry = self.tree.nodes[node]
        if entry.kind == "unlisted":
            return []
        if entry.leaf or entry.need > 1:
            return self.shown_by(node)
        told = self.at_home(self.useful(self.parting.between(node)), (node, *entry.inputs))
        return [self.decide(each) for each in (told[0], *self._pointer(told))] if told else []

    def shown_by(self, node: str) -> list[Decides]:
        """The check that best shows a node; one that then finds something wrong goes before one that finds nothing."""
        told = self.at_home(self.useful(self.parting.shown(node)), (node,))

        def sound(check: str) -> bool:
            return self.book.checks[check].outcomes[self.parting.likely_outcome(check, node)].good

        first = next((each for each in told if not sound(each.check)), told[0] if told else None)
        return [self.decide(first, node)] if first else []

    def decide(self, told: Told, node: str | None = None) -> Decides:
        check = self.book.checks[told.check]
        shows = check.outcomes[self.parting.likely_outcome(check.id, node)].title if node else ""
        return Decides(check.id, check.title, check.minutes, told.bits, told.share, shows)

    def useful(self, told: list[Told]) -> list[Told]:
        """Those that tell anything worth naming."""
        return [each for each in told if each.bits >= LEAST_BITS]

    def at_home(self, told: list[Told], nodes: Collection[str]) -> list[Told]:
        """Those about as telling as the best first that belong to the same part of the machine.

        A smell or a wet floor may tell as much in figures; who stands at the part looks at the part.
        """
        parts = {node.partition(".")[0] for node in nodes}
        enough = ABOUT_AS_TELLING * max((each.bits for each in told), default=0.0)
        return sorted(told, key=lambda t: not (t.bits >= enough and t.check.partition(".")[0] in parts))

    def _pointer(self, told: list[Told]) -> list[Told]:
        """A quicker look than the best check that still tells a good part of it."""
        minutes = self.book.checks[told[0].check].minutes
        quicker = [
            t for t in told[1:] if t.bits >= POINTER * told[0].bits and self.book.checks[t.check].minutes <= minutes / 2
        ]
        return [max(quicker, key=lambda t: (t.bits / self.book.checks[t.check].minutes, t.bits))] if quicker else []

    def causes(self) -> int:
        return sum(self.tree.nodes[n].kind == "cause" for n in self.tree.below(self.complaint))
