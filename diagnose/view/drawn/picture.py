"""What every picture of the tree has: boxes with their lines of text, the edges between them, notes for the checks."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from diagnose.view.drawn.chart import Chart
from diagnose.view.drawn.text import decided
from diagnose.view.layout import percent
from diagnose.view.outline import Row

__all__ = ["Box", "boxes", "edges", "heading"]


@dataclass(frozen=True)
class Box:
    """One row as a box: what it is, its texts, and the checks that decide there."""

    row: Row
    kind: str  # complaint | event | cause | unlisted
    title: str
    gate: str  # "any of", "all of", ...; empty for a cause, and where it is folded or drawn elsewhere
    remarks: tuple[str, ...]
    share: float
    notes: tuple[str, ...] = ()

    @property
    def small(self) -> str:
        """The line under the title: how often, the gate, how much is folded."""
        said = [percent(self.share).strip()] if self.row.depth else []
        said += [self.gate] if self.gate else []
        said += self.remarks
        if self.row.again is not None:
            said.append(f"as at {self.row.again}")
        elif self.row.folded:
            said.append(f"+{self.row.folded} folded")
        return ", ".join(said)

    @property
    def label(self) -> str:
        """The title with its outline number."""
        return f"{self.row.number}  {self.title}" if self.row.number else self.title


def boxes(chart: Chart, rows: Sequence[Row]) -> list[Box]:
    """A box for every row, in the order of the rows."""
    at = {row.number: row.node for row in rows}
    found = []
    for row in rows:
        gate = "" if row.folded else chart.asks(row.node)
        remarks = tuple(r for r in chart.remarks(row.node, at[row.parent]) if r != gate)
        notes = [] if row.folded else [_note(n, decided(each)) for n, each in enumerate(chart.decides(row.node))]
        share = chart.share.get(row.node, 0.0)
        kind = chart.tree.nodes[row.node].kind
        found.append(Box(row, kind, chart.title(row.node), gate, remarks, share, tuple(notes)))
    return found


def _note(nth: int, text: str) -> str:
    return f"quicker: {text}" if nth else f"check: {text}"


def edges(rows: Sequence[Row]) -> list[tuple[str, str]]:
    """From each row's number to those below it."""
    return [(row.parent, row.number) for row in rows if row.depth]


def heading(chart: Chart) -> tuple[str, str]:
    """Title and description of a picture."""
    where = chart.machine.type.title if chart.machine else "any machine"
    return (
        f"{chart.title(chart.complaint)}: what can be the reason",
        f"Fault tree of the complaint {chart.complaint}, {where}. Percent says how often a branch is the reason "
        "before anything is read. A branch is so when any one right of it is, unless all of or at least stands in it.",
    )
