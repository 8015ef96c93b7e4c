"""The fault tree of one machine: which causes can bring about which complaint, and what each check shows."""

from __future__ import annotations

from collections.abc import Collection, Iterable, Iterator, Mapping
from dataclasses import dataclass, field, replace
from functools import cached_property
from math import prod
from typing import TYPE_CHECKING, Literal

import numpy as np
from numpy.typing import NDArray

from diagnose.inference.kept import Kept
from diagnose.inference.ordering import in_order
from diagnose.model import Book, Cause, Check, Complaint, Event, Machine, fits
from diagnose.model.truth import likelihood_row

if TYPE_CHECKING:
    import networkx as nx

__all__ = ["UNLISTED", "FaultTree", "Node", "TreeCheck", "build_tree", "so_in", "unlisted"]

UNLISTED = "unlisted."
_TREES = 64  # kept of one book
_CHECKS = 8192

Array = NDArray[np.float64]
Kind = Literal["complaint", "event", "cause", "unlisted"]


def unlisted(gate: str) -> str:
    """The pseudo cause "something not listed here" of a complaint, or of an event that causes bring about.

    >>> unlisted("rinse_cold")
    'unlisted.rinse_cold'
    """
    return UNLISTED + gate


@dataclass(frozen=True)
class Node:
    """A complaint, event or cause. A gate is true when at least `need` of its `inputs` are; a leaf has a `prior`.

    `shifts` are the context questions whose answer has moved the prior, each with what it did to the odds.
    """

    id: str
    kind: Kind
    inputs: tuple[str, ...] = ()
    need: int = 1
    prior: float = 0.0
    shifts: tuple[tuple[str, float], ...] = ()

    @property
    def leaf(self) -> bool:
        return self.kind in ("cause", "unlisted")


@dataclass(frozen=True)
class TreeCheck:
    """A check as it applies to this machine.

    `shows[i, o]` is how likely outcome o is when `looks_at[i]` is the first true node; the last row stands for
    "none of them is true". Rows sum to 1; columns follow `outcomes`, which keeps the order of the screen.
    """

    id: str
    looks_at: tuple[str, ...]
    outcomes: tuple[str, ...]
    shows: Array
    computed: bool = False
    asked_for: tuple[str, ...] = ()  # complaints its question presupposes, one of them; none: any

    def row(self, so: Collection[str]) -> int:
        """The row that holds where these nodes are so: of the first it looks at, else the last."""
        return next((nth for nth, node in enumerate(self.looks_at) if node in so), len(self.looks_at))

    def likelihoods(self, weights: Mapping[str, float]) -> Array:
        """How likely a finding with `weights` over the outcomes is, row by row."""
        unknown = set(weights) - set(self.outcomes)
        if unknown:
            raise ValueError(f"check {self.id} has no outcome {', '.join(sorted(unknown))}")
        row = np.array([weights.get(outcome, 0.0) for outcome in self.outcomes])
        return np.asarray(self.shows @ row)


@dataclass(frozen=True, eq=False)
class FaultTree:
    """What is made of what, and what each check shows of it."""

    nodes: Mapping[str, Node]
    checks: Mapping[str, TreeCheck] = field(default_factory=dict)
    like: FaultTree | None = None  # a tree with the same nodes and inputs: what follows from its shape is shared

    @cached_property
    def graph(self) -> nx.DiGraph[str]:
        """The tree as a directed graph, an edge from each gate to each of its inputs."""
        import networkx as nx  # a quarter of what a command's start takes, and jobs do without

        if self.like is not None:
            return self.like.graph
        graph: nx.DiGraph[str] = nx.DiGraph()
        graph.add_nodes_from(self.nodes)
        graph.add_edges_from((node.id, each) for node in self.nodes.values() for each in node.inputs)
        return graph

    @cached_property
    def leaves(self) -> tuple[str, ...]:
        """Every cause and every `unlisted.*`, in the order of the book."""
        if self.like is not None:
            return self.like.leaves
        return tuple(n.id for n in self.nodes.values() if n.leaf)

    @cached_property
    def gates(self) -> tuple[str, ...]:
        """Every complaint and event, inputs before the gates they feed."""
        if self.like is not None:
            return self.like.gates
        order = in_order(self.nodes, lambda n: self.nodes[n].inputs)
        return tuple(n for n in reversed(order) if not self.nodes[n].leaf)

    @cached_property
    def _below(self) -> dict[str, frozenset[str]]:
        if self.like is not None:
            return self.like._below
        below: dict[str, frozenset[str]] = {leaf: frozenset((leaf,)) for leaf in self.leaves}
        for gate in self.gates:
            inputs = self.nodes[gate].inputs
            below[gate] = frozenset((gate,)).union(*(below[i] for i in inputs))
        return below

    def below(self, node: str) -> frozenset[str]:
        """The node itself and everything it is made of, at any depth."""
        return self._below[node]

    def causes_under(self, node: str) -> tuple[str, ...]:
        """The causes (and `unlisted.*`) that can make the node true, in the order of the book."""
        below = self._below[node]
        return tuple(leaf for leaf in self.leaves if leaf in below)

    def paths(self, top: str, bottom: str) -> Iterator[list[str]]:
        """Every way from a complaint or event down to one of its causes."""
        import networkx as nx

        return iter(nx.all_simple_paths(self.graph, top, bottom))


def build_tree(book: Book, machine: Machine | None, context: Mapping[str, str] | None = None) -> FaultTree:
    """The fault tree of this machine, with priors shifted by what was answered about the job (`context`).

    Without a machine it is the tree of the whole book, as if one machine could have everything.

    Entries that do not fit the machine drop out, and so does whatever can then never be true: an "any" with nothing
    left, an "all" that lost a member, an "at least k" with fewer than k left. Names the book does not know count as
    not fitting; the lint of the knowledge is the place that refuses them.
    """
    traits = None if machine is None else frozenset(machine.type.traits.items())
    said = dict(context or {})
    trees: Kept[FaultTree] = Kept.of(book, "trees", _TREES)
    plain = trees.get_or((traits, frozenset()), lambda: _plain_tree(book, machine))
    return trees.get_or((traits, frozenset(said.items())), lambda: _shifted(book, plain, said))


def _plain_tree(book: Book, machine: Machine | None) -> FaultTree:
    """The tree of this machine before anything was answered."""
    nodes: dict[str, Node] = {}
    for gate in _inputs_first(book):
        if gate in book.causes:
            if _there(machine, book.causes[gate]):
                nodes[gate] = _cause(book, book.causes[gate], {})
        elif gate in book.events:
            node = _event(book.events[gate], machine, nodes)
            if node is not None:
                nodes |= {each.id: each for each in _with_leak(node, nodes, book.unlisted_share)}
        elif gate in book.complaints:
            leak = Node(unlisted(gate), "unlisted", prior=book.frequency(book.complaints[gate].unlisted))
            nodes[leak.id] = leak
            nodes[gate] = _complaint(book.complaints[gate], nodes)
    checks = {c.id: _check(book, c, nodes) for c in book.checks.values() if c.looks_at and _there(machine, c)}
    return FaultTree(nodes, checks)


def _shifted(book: Book, plain: FaultTree, context: Mapping[str, str]) -> FaultTree:
    """The same tree with its priors shifted by what was answered."""
    causes = {n.id: _cause(book, book.causes[n.id], context) for n in plain.nodes.values() if n.kind == "cause"}
    return FaultTree({**plain.nodes, **causes}, plain.checks, plain)


def so_in(tree: FaultTree, leaves: Collection[str]) -> frozenset[str]:
    """Every node that is so when exactly these leaves are."""
    so = set(leaves)
    for gate in tree.gates:
        node = tree.nodes[gate]
        if sum(each in so for each in node.inputs) >= node.need:
            so.add(gate)
    return frozenset(so)


def _inputs_first(book: Book) -> Iterable[str]:
    names = [*book.causes, *book.events, *book.complaints]
    feeds: dict[str, dict[str, None]] = {name: {} for name in names}
    for gate in (*book.events, *book.complaints):
        for each in book.children(gate):
            feeds.setdefault(each, {})[gate] = None
    return in_order(feeds, lambda name: feeds[name])


def _cause(book: Book, cause: Cause, context: Mapping[str, str]) -> Node:
    p = book.frequency(cause.how_often)
    odds = p / (1.0 - p)
    shifts = tuple((s.when, book.shift(s.by)) for s in cause.shifts if context.get(s.when) in s.among)
    for _, by in shifts:
        odds *= by
    return Node(cause.id, "cause", prior=odds / (1.0 + odds), shifts=shifts)


def _there(machine: Machine | None, entry: Cause | Event | Check) -> bool:
    return machine is None or fits(machine, entry.fits)


def _event(event: Event, machine: Machine | None, nodes: Mapping[str, Node]) -> Node | None:
    """The gate as far as this machine has its inputs, or None where it can never be true."""
    listed = tuple(dict.fromkeys(event.of))
    inputs = tuple(each for each in listed if each in nodes)
    need = {"any": 1, "all": len(listed), "at_least": event.k or 1}[event.gate]
    if not _there(machine, event) or len(inputs) < max(need, 1):
        return None
    return Node(event.id, "event", inputs, need)


def _with_leak(event: Node, nodes: Mapping[str, Node], share: float) -> Iterator[Node]:
    """The event with what is not listed beside the causes right below it (a leak), as a `share` of these.

    Without it, an event that readings have shown would have to be one of its listed causes, however many of them are
    found sound. A gate of more than any one names what it needs, so that there nothing is left unsaid.
    """
    none = prod(1.0 - nodes[each].prior for each in event.inputs if nodes[each].kind == "cause")
    if event.need == 1 and share * (1.0 - none) > 0.0:
        leak = Node(unlisted(event.id), "unlisted", prior=share * (1.0 - none))
        yield leak
        event = replace(event, inputs=(*event.inputs, leak.id))
    yield event


def _complaint(complaint: Complaint, nodes: Mapping[str, Node]) -> Node:
    inputs = tuple(each for each in dict.fromkeys(complaint.of) if each in nodes)
    return Node(complaint.id, "complaint", (*inputs, unlisted(complaint.id)))


def _check(book: Book, check: Check, nodes: Mapping[str, Node]) -> TreeCheck:
    looks_at = tuple(each for each in dict.fromkeys(check.looks_at) if each in nodes)
    tables: Kept[TreeCheck] = Kept.of(book, "checks", _CHECKS)
    return tables.get_or((check.id, looks_at), lambda: _as_it_looks(book, check, looks_at))


def _as_it_looks(book: Book, check: Check, looks_at: tuple[str, ...]) -> TreeCheck:
    outcomes = tuple(check.outcomes)
    for row in (*looks_at, "none"):
        if row not in check.shows:
            raise ValueError(f"check {check.id} does not say what it shows for {row}")
    rows = [list(likelihood_row(book, check, row).values()) for row in (*looks_at, "none")]
    return TreeCheck(check.id, looks_at, outcomes, np.array(rows), check.computed, tuple(check.asked_for))
