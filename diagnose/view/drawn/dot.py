"""The tree in the DOT language: a directed graph, columns by depth, the checks as notes."""

from __future__ import annotations

from collections.abc import Iterator

from diagnose.view.drawn.chart import Chart, Folding
from diagnose.view.drawn.picture import Box, boxes, heading
from diagnose.view.layout import wrap

__all__ = ["dot_lines", "dot_text"]

COLUMNS = 34  # of text in a box
_SHAPE = {
    "complaint": 'shape=box, style="bold,filled", fillcolor="#dde7f3"',
    "event": "shape=box",
    "cause": 'shape=box, style="rounded"',
    "unlisted": 'shape=box, style="rounded,dashed"',
}


def dot_lines(chart: Chart, folding: Folding) -> list[str]:
    """The graph, one statement a line. A branch under several parents is drawn once, with an edge from each."""
    rows = chart.rows(folding)
    drawn = [box for box in boxes(chart, rows) if box.row.again is None]
    once = list({box.row.node: box for box in reversed(drawn)}.values())[::-1]
    title, description = heading(chart)
    lines = [
        f"digraph {dot_text(chart.complaint)} {{",
        f"  label={dot_text(title)}; tooltip={dot_text(description)}; labelloc=t;",
        '  rankdir=LR; node [fontname="sans-serif", fontsize=11]; edge [arrowhead=none];',
    ]
    for box in once:
        lines.append(f"  {dot_text(box.row.node)} [{_SHAPE[box.kind]}, label={_label(box)}];")
    at = {row.number: row.node for row in rows}
    for pair in dict.fromkeys((at[row.parent], row.node) for row in rows if row.depth):
        lines.append(f"  {dot_text(pair[0])} -> {dot_text(pair[1])};")
    lines += _ranks(once)
    for box in once:
        lines += _notes(box)
    return [*lines, "}"]


def _ranks(drawn: list[Box]) -> Iterator[str]:
    """Boxes of one depth stand in one column."""
    for depth in sorted({box.row.depth for box in drawn}):
        names = " ".join(f"{dot_text(box.row.node)};" for box in drawn if box.row.depth == depth)
        yield f"  {{ rank=same; {names} }}"


def _notes(box: Box) -> Iterator[str]:
    if box.notes:
        name, text = dot_text(f"checks at {box.row.node}"), "\n".join("\n".join(wrap(n, COLUMNS)) for n in box.notes)
        yield f'  {name} [shape=note, fontsize=9, color="#777777", label={dot_text(text)}];'
        yield f"  {dot_text(box.row.node)} -> {name} [style=dotted];"


def _label(box: Box) -> str:
    return dot_text("\n".join([*wrap(box.label, COLUMNS), *(wrap(box.small, COLUMNS) if box.small else [])]))


def dot_text(text: str) -> str:
    """A quoted string of DOT; lines of it are set to the left.

    >>> dot_text('a "b" \\\\ c')
    '"a \\\\"b\\\\" \\\\\\\\ c"'
    """
    quoted = text.replace("\\", "\\\\").replace('"', '\\"')
    return '"' + quoted.replace("\n", "\\l") + ('\\l"' if "\n" in text else '"')
