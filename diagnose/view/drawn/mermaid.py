"""The tree as a Mermaid flowchart, for pages that draw such text."""

from __future__ import annotations

from diagnose.view.drawn.chart import Chart, Folding
from diagnose.view.drawn.picture import boxes, heading

__all__ = ["mermaid_lines", "mermaid_text"]

_AROUND = {"complaint": ("[[", "]]"), "event": ("[", "]"), "cause": ("(", ")"), "unlisted": ("(", ")")}
_CLASSES = (
    "  classDef complaint font-weight:bold",
    "  classDef unlisted stroke-dasharray:4 3",
    "  classDef check font-size:80%,stroke-dasharray:2 2",
)


def mermaid_lines(chart: Chart, folding: Folding) -> list[str]:
    """The flowchart, one statement a line. A branch under several parents is drawn once, with an edge from each."""
    rows = chart.rows(folding)
    title, description = heading(chart)
    drawn = {box.row.node: box for box in reversed(boxes(chart, rows)) if box.row.again is None}
    name = {node: f"n{nth}" for nth, node in enumerate(reversed(drawn))}
    lines = ["flowchart LR", f"  accTitle: {mermaid_text(title)}", f"  accDescr: {mermaid_text(description)}"]
    for node, key in name.items():
        box = drawn[node]
        left, right = _AROUND[box.kind]
        text = mermaid_text(box.label) + (f"<br/>{mermaid_text(box.small)}" if box.small else "")
        lines.append(f'  {key}{left}"{text}"{right}')
    at = {row.number: row.node for row in rows}
    pairs = dict.fromkeys((at[row.parent], row.node) for row in rows if row.depth)
    lines += [f"  {name[a]} --- {name[b]}" for a, b in pairs]
    noted = [(name[node], drawn[node].notes) for node in name if drawn[node].notes]
    for key, notes in noted:
        lines += [f'  {key}c>"{"<br/>".join(mermaid_text(n) for n in notes)}"]', f"  {key} -.- {key}c"]
    for kind in ("complaint", "unlisted"):
        of_kind = [name[node] for node, box in drawn.items() if box.kind == kind]
        lines += [f"  class {','.join(sorted(of_kind))} {kind}"] if of_kind else []
    lines += [f"  class {','.join(f'{key}c' for key, _ in noted)} check"] if noted else []
    return [*lines, *_CLASSES]


def mermaid_text(text: str) -> str:
    """Text inside quotes of a flowchart: signs that mean something there become entities.

    >>> mermaid_text('the "cold" end; #2 <')
    'the #quot;cold#quot; end#59; #35;2 #lt;'
    """
    signs = {"#": "#35;", ";": "#59;", '"': "#quot;", "<": "#lt;", ">": "#gt;", "&": "#amp;", "`": "#96;", "\n": " "}
    return "".join(signs.get(sign, sign) for sign in text)
