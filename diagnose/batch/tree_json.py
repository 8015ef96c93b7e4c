"""The tree for machines.

`diagnose tree COMPLAINT --format json`, the keys of `TreeOut`:

- `schema`: raised when a key changes its meaning or goes
- `complaint`, `title`: its id and words; `machine`: id of type or name of saved machine, null for the whole book
- `causes`: how many causes are in the whole tree, shown or folded
- `nodes`: every row from the top down, each with
  `number` (outline number, empty at the top), `parent` (number of the row above, null at the top), `depth`,
  `id`, `kind` (complaint, event, cause, unlisted), `title`,
  `gate` (any, all, at_least; null for a cause) and `need` (how many members it takes),
  `fits` (traits the entry is restricted to), `shop` (whether it is from your own folder),
  `prior` (of a cause: how probable it is at any call), `probability` (once the complaint is made),
  `folded` (causes hidden under it), `again` (number of the row under which its branches stand already, or null),
  `checks`: those that decide there, each `id`, `title`, `minutes`, `bits` (expected, of the doubt at this node),
  `share` (of that doubt), `shows` (its most likely outcome at a cause, else null)

`diagnose tree --cause ID --format json`, the keys of `PathsOut`: `schema`, `cause`, `title`, `machine`, and `paths`,
each with `complaint`, `probability` (of the cause, once the complaint is made) and `steps` from the complaint down:
`id`, `title`, `gate` in words, `beside` (titles of what must be so as well), `check` or null.
"""

from __future__ import annotations

from collections.abc import Sequence

import msgspec

from diagnose.batch.output import SCHEMA, to_json
from diagnose.model import Book, Machine
from diagnose.view.drawn.chart import Chart, Decides, Folding
from diagnose.view.drawn.paths import Path
from diagnose.view.outline import Row

__all__ = ["CheckOut", "NodeOut", "PathOut", "PathsOut", "StepOut", "TreeOut", "chart_json", "paths_json"]


class CheckOut(msgspec.Struct, frozen=True, kw_only=True):
    """A check named at a node."""

    id: str
    title: str
    minutes: float
    bits: float
    share: float
    shows: str | None


class NodeOut(msgspec.Struct, frozen=True, kw_only=True):
    """A row of the tree."""

    number: str
    parent: str | None
    depth: int
    id: str
    kind: str
    title: str
    gate: str | None
    need: int
    fits: dict[str, list[str | int | bool]]
    shop: bool
    prior: float | None
    probability: float
    folded: int
    again: str | None
    checks: list[CheckOut]


class TreeOut(msgspec.Struct, frozen=True, kw_only=True):
    """The answer of `diagnose tree COMPLAINT --format json`."""

    schema: int = SCHEMA
    complaint: str
    title: str
    machine: str | None
    causes: int
    nodes: list[NodeOut]


class StepOut(msgspec.Struct, frozen=True, kw_only=True):
    """A node on the way to a cause."""

    id: str
    title: str
    gate: str
    beside: list[str]
    check: CheckOut | None


class PathOut(msgspec.Struct, frozen=True, kw_only=True):
    """One way from a complaint to the cause."""

    complaint: str
    probability: float
    steps: list[StepOut]


class PathsOut(msgspec.Struct, frozen=True, kw_only=True):
    """The answer of `diagnose tree --cause ID --format json`."""

    schema: int = SCHEMA
    cause: str
    title: str
    machine: str | None
    paths: list[PathOut]


def chart_json(chart: Chart, folding: Folding) -> str:
    """The tree as JSON."""
    return to_json(
        TreeOut(
            complaint=chart.complaint,
            title=chart.title(chart.complaint),
            machine=chart.machine.name if chart.machine else None,
            causes=chart.causes(),
            nodes=[_node(chart, row) for row in chart.rows(folding)],
        )
    )


def _node(chart: Chart, row: Row) -> NodeOut:
    node = chart.tree.nodes[row.node]
    gate = "any" if node.need == 1 else "all" if node.need == len(node.inputs) else "at_least"
    place = chart.book.places.get(row.node)
    return NodeOut(
        number=row.number,
        parent=row.parent if row.depth else None,
        depth=row.depth,
        id=row.node,
        kind=node.kind,
        title=chart.title(row.node),
        gate=None if node.leaf else gate,
        need=node.need,
        fits=dict(chart.restriction(row.node)),
        shop=place is not None and bool(place.shop),
        prior=node.prior if node.leaf else None,
        probability=1.0 if not row.depth else chart.share.get(row.node, 0.0),
        folded=row.folded,
        again=row.again,
        checks=[] if row.folded else [_check(each) for each in chart.decides(row.node)],
    )


def _check(each: Decides) -> CheckOut:
    return CheckOut(
        id=each.check,
        title=each.title,
        minutes=each.minutes,
        bits=each.bits,
        share=each.share,
        shows=each.shows or None,
    )


def paths_json(book: Book, cause: str, machine: Machine | None, paths: Sequence[Path]) -> str:
    """The ways to a cause as JSON."""
    return to_json(
        PathsOut(
            cause=cause,
            title=book.title(cause),
            machine=machine.name if machine else None,
            paths=[
                PathOut(
                    complaint=path.complaint,
                    probability=path.share,
                    steps=[
                        StepOut(
                            id=step.node,
                            title=step.title,
                            gate=step.asks,
                            beside=list(step.beside),
                            check=_check(step.check) if step.check else None,
                        )
                        for step in path.steps
                    ],
                )
                for path in paths
            ],
        )
    )
