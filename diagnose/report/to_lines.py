"""A document on the terminal: plain lines wrapped at its width; a chart is told by its table."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from diagnose.report.document import Block, Document, Facts, Figure, Heading, Items, Paragraph, Signatures, Table
from diagnose.view.layout import RECORDS_BELOW, Line, labelled, text_width, wrap

__all__ = ["to_lines"]

_RULE = "_" * 16
_INDENT, _GAP = 2, 2
_SHORT, _LEAST, _LONGEST = 14, 16, 160  # columns: never wrapped; too narrow to wrap at; better told as a record


def to_lines(document: Document, width: int) -> list[Line]:
    """The whole document, no line wider than `width`."""
    lines = wrap(document.title, width, role="heading")
    lines += wrap(document.subtitle, width)
    for block in document.blocks:
        if not (isinstance(block, Items | Facts) and lines[-1].role == "heading"):
            lines.append(Line())
        lines += _block(block, document, width)
    return lines


def _block(block: Block, document: Document, width: int) -> Iterator[Line]:
    match block:
        case Heading(text, level):
            yield from wrap(text, width, "" if level == 2 else "  ", role="heading")
        case Paragraph(text, tone):
            first = f"{document.word('caution')}: " if tone == "caution" else ""
            yield from wrap(first + text, width, "" if tone in ("lead", "caution") else "  ", role=_ROLES[tone])
        case Facts(pairs):
            for label, value in pairs:
                yield from wrap(labelled(label, value), width, "  ", "    ")
        case Items(texts, ordered):
            for nth, text in enumerate(texts, 1):
                yield from wrap(text, width, f"  {nth}. " if ordered else "  - ")
        case Table():
            yield from _table(block, width)
        case Figure():
            yield from _table(block.table, width)
        case Signatures(labels, date):
            for label in labels:
                yield from wrap(f"{label}: {_RULE}   {date}: {_RULE[:10]}", width, "  ", "    ")


def _table(block: Table, width: int) -> Iterator[Line]:
    yield from wrap(f"{block.caption.rstrip('.')}:", width, "  ", role="dim")
    rows = [row.cells for row in block.rows]
    columns = _columns(block.headers, rows, width)
    if not columns:
        yield from _records(block.headers, rows, width)
        return
    yield from _grid(block.headers, columns, "dim")
    for row in rows:
        yield from _grid(row, columns, "")


def _records(headers: Sequence[str], rows: Sequence[Sequence[str]], width: int) -> Iterator[Line]:
    """A row as its first cell, and under it `header: cell` line by line."""
    for row in rows:
        yield from wrap(row[0], width, "  ", "  ")
        for header, cell in zip(headers[1:], row[1:], strict=True):
            if cell and cell != "-":
                yield from wrap(f"{header}: {cell}", width, "    ", "      ")


def _columns(headers: Sequence[str], rows: Sequence[Sequence[str]], width: int) -> list[int]:
    """How wide each column is when its cells are wrapped; empty where records are easier to read."""
    wanted = [max(text_width(cell) for cell in column) for column in zip(headers, *rows, strict=True)]
    room = width - _INDENT - _GAP * (len(wanted) - 1)
    if sum(wanted) <= room:
        return wanted
    small = [w if w <= _SHORT else 0 for w in wanted]
    wide = [w for w in wanted if w > _SHORT]
    each = (room - sum(small)) // max(len(wide), 1)
    if width < RECORDS_BELOW or each < _LEAST or max(wide, default=0) > _LONGEST:
        return []
    return [w or each for w in small]


def _grid(cells: Sequence[str], columns: Sequence[int], role: str) -> Iterator[Line]:
    wrapped = [wrap(cell, width) for cell, width in zip(cells, columns, strict=True)]
    for nth in range(max(len(lines) for lines in wrapped)):
        parts = [lines[nth] if nth < len(lines) else "" for lines in wrapped]
        padded = (part + " " * (w - text_width(part)) for part, w in zip(parts, columns, strict=True))
        yield Line(" " * _INDENT + (" " * _GAP).join(padded).rstrip(), role)


_ROLES = {"": "", "lead": "heading", "caution": "caution", "note": "dim"}
