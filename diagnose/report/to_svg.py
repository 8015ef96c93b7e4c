"""A picture as inline SVG: shapes with classes, coloured by the page's style alone."""

from __future__ import annotations

from collections.abc import Iterator
from xml.sax.saxutils import escape

from diagnose.report.shapes import Label, Mark, Path, Picture, Rect, Shape

__all__ = ["to_svg"]


def to_svg(picture: Picture, title: str, description: str, name: str) -> str:
    """The picture; `name` makes its ids its own on a page."""
    size = f'viewBox="0 0 {picture.width:g} {picture.height:g}" width="{picture.width:g}" height="{picture.height:g}"'
    head = [
        f'<svg role="img" aria-labelledby="{name}-title {name}-desc" {size}>',
        f'<title id="{name}-title">{escape(title)}</title>',
        f'<desc id="{name}-desc">{escape(description)}</desc>',
    ]
    return "\n".join([*head, *(line for shape in picture.shapes for line in _shape(shape)), "</svg>"])


def _shape(shape: Shape) -> Iterator[str]:
    match shape:
        case Rect(x, y, width, height, kind):
            yield f'<rect class="{kind}" x="{x:.1f}" y="{y:.1f}" width="{width:.1f}" height="{height:.1f}" rx="2"/>'
        case Path(points, kind):
            way = "L".join(f"{x:.1f} {y:.1f}" for x, y in points)
            yield f'<path class="{kind}" d="M{way}"/>'
        case Mark():
            yield _mark(shape)
        case Label(x, y, text, kind, anchor, size):
            yield (
                f'<text class="{kind}" x="{x:.1f}" y="{y:.1f}" font-size="{size:g}" text-anchor="{anchor}">'
                f"{escape(text)}</text>"
            )


def _mark(mark: Mark) -> str:
    x, y, r = mark.x, mark.y, mark.size
    if mark.form == "circle":
        return f'<circle class="{mark.kind}" cx="{x:.1f}" cy="{y:.1f}" r="{r:g}"/>'
    corners = {
        "square": ((-r, -r), (r, -r), (r, r), (-r, r)),
        "diamond": ((0, -r * 1.3), (r * 1.3, 0), (0, r * 1.3), (-r * 1.3, 0)),
        "triangle": ((0, -r * 1.2), (r * 1.2, r), (-r * 1.2, r)),
    }[mark.form]
    points = " ".join(f"{x + dx:.1f},{y + dy:.1f}" for dx, dy in corners)
    return f'<polygon class="{mark.kind}" points="{points}"/>'
