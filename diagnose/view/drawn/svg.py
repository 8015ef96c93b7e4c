"""The tree as a picture: boxes from left to right, light or dark as the reader's screen is, nothing fetched."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from xml.sax.saxutils import escape, quoteattr

from diagnose.inference.layered import layered
from diagnose.view.drawn.chart import Chart, Folding
from diagnose.view.drawn.measure import SMALL, TEXT, TITLE, broken, line_height
from diagnose.view.drawn.picture import Box, boxes, edges, heading

__all__ = ["svg_lines"]

WIDE = 262.0  # a box
PAD = 8.0
ACROSS = 36.0
BETWEEN = 8.0
MARGIN = 20.0

_STYLE = """
  svg { background: #ffffff; font-family: system-ui, "DejaVu Sans", Arial, sans-serif }
  text { fill: #1b1f24 } .title { font-weight: bold }
  .small, .note { fill: #4a5560 } .note { font-style: italic }
  rect { fill: #ffffff; stroke: #5b6875; stroke-width: 1 }
  .complaint rect { fill: #dfe9f5; stroke: #2f5d8a; stroke-width: 2 } .event rect { fill: #eef2f6 }
  .cause rect { stroke: #8a6d1f; fill: #fdf8ea } .unlisted rect { stroke-dasharray: 4 3 }
  .again rect { stroke-dasharray: 2 2 } .edge { fill: none; stroke: #8793a0; stroke-width: 1 }
  @media (prefers-color-scheme: dark) {
    svg { background: #15191e } text { fill: #e6e9ed }
    .small, .note { fill: #aab4bf } rect { fill: #15191e; stroke: #8793a0 }
    .complaint rect { fill: #1d3450; stroke: #7fb0e0 } .event rect { fill: #20262d }
    .cause rect { fill: #2b2616; stroke: #c9a84a } .edge { stroke: #67727e }
  }
"""


@dataclass(frozen=True)
class _Set:
    """A box with its text broken into lines: (class, size, text)."""

    box: Box
    lines: tuple[tuple[str, float, str], ...]

    @property
    def height(self) -> float:
        return sum(line_height(size) for _, size, _ in self.lines) + 2 * PAD


def svg_lines(chart: Chart, folding: Folding) -> list[str]:
    """The document. What stands under several parents is drawn in full once, and named again by its number."""
    rows = chart.rows(folding)
    drawn = {_key(box.row.number): _set(box) for box in boxes(chart, rows)}
    joined = [(_key(a), _key(b)) for a, b in edges(rows)]
    sizes = {key: (WIDE, each.height) for key, each in drawn.items()}
    at = layered(joined, _key(""), sizes, ACROSS, BETWEEN)
    title, description = heading(chart)
    wide = max(x for x, _ in at.values()) + WIDE + 2 * MARGIN
    head = [("title", TITLE, line) for line in broken(title, wide - 2 * MARGIN, TITLE, True)]
    head += [("small", TEXT, line) for line in broken(description, wide - 2 * MARGIN, TEXT)]
    top = MARGIN + sum(line_height(size) for _, size, _ in head) + MARGIN
    high = top + max(at[key][1] + sizes[key][1] for key in at) + MARGIN
    lines = [
        '<?xml version="1.0" encoding="UTF-8"?>',
        f'<svg xmlns="http://www.w3.org/2000/svg" width="{wide:g}" height="{high:g}" '
        f'viewBox="0 0 {wide:g} {high:g}" role="img" aria-labelledby="title desc">',
        f'<title id="title">{escape(title)}</title>',
        f'<desc id="desc">{escape(description)}</desc>',
        f"<style>{_STYLE}</style>",
        *_texts(head, MARGIN, MARGIN),
        f'<g transform="translate({MARGIN:g} {top:g})">',
    ]
    lines += _edges(joined, at, sizes)
    for key, each in drawn.items():
        lines += _box(key, each, *at[key])
    return [*lines, "</g>", "</svg>"]


def _key(number: str) -> str:
    return f"b{number.replace('.', '-')}" if number else "top"


def _set(box: Box) -> _Set:
    room = WIDE - 2 * PAD
    bold = box.kind != "cause"
    lines = [("title" if bold else "text", TEXT, line) for line in broken(box.label, room, TEXT, bold)]
    lines += [("small", SMALL, line) for line in broken(box.small, room, SMALL)]
    lines += [("note", SMALL, line) for note in box.notes for line in broken(note, room, SMALL)]
    return _Set(box, tuple(lines))


def _box(key: str, each: _Set, x: float, y: float) -> Iterator[str]:
    again = " again" if each.box.row.again is not None else ""
    corner = 0 if each.box.kind in ("complaint", "event") else 9
    yield f'<g id={quoteattr(key)} class="{each.box.kind}{again}">'
    yield f'<rect x="{x:g}" y="{y:g}" width="{WIDE:g}" height="{each.height:g}" rx="{corner}"/>'
    yield from _texts(each.lines, x + PAD, y + PAD)
    yield "</g>"


def _texts(lines: Sequence[tuple[str, float, str]], x: float, y: float) -> Iterator[str]:
    for kind, size, text in lines:
        y += line_height(size)
        yield f'<text class="{kind}" x="{x:g}" y="{y - 0.3 * size:g}" font-size="{size:g}">{escape(text)}</text>'


def _edges(
    joined: Sequence[tuple[str, str]], at: dict[str, tuple[float, float]], sizes: dict[str, tuple[float, float]]
) -> Iterator[str]:
    """From a box's right side, down the gap between columns, to the next one's left, at the height of first lines."""
    for a, b in joined:
        start, end = at[a][0] + sizes[a][0], at[b][0]
        from_y, to_y = (at[n][1] + PAD + line_height(TEXT) / 2 for n in (a, b))
        yield f'<path class="edge" d="M{start:g} {from_y:g}H{(start + end) / 2:g}V{to_y:g}H{end:g}"/>'
