"""A document as Markdown (CommonMark with tables): what the texts hold is never read as markup."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence

from diagnose.report.document import Block, Document, Facts, Figure, Heading, Items, Paragraph, Signatures, Table

__all__ = ["escaped", "to_markdown"]

_SIGNS = re.compile(r"([\\`*_\[\]|~$])")
# At the start of a line these begin a list, a heading, a quotation, a rule or a table's underline.
_START = re.compile(r"^([#+=:-]|\d+(?=[.)]))")
# Many readers make a link of a bare address.
_ADDRESS = re.compile(r"\b(https?|ftp|mailto)(?=:)|\b(www)(?=\.)", re.IGNORECASE)
_RULE = r"\_" * 24


def escaped(text: str) -> str:
    r"""Text that comes out as it is, whatever it holds.

    >>> escaped("<b>*1* | 2_3</b>"), escaped("1. not a list"), escaped("- nor this")
    ('&lt;b&gt;\\*1\\* \\| 2\\_3&lt;/b&gt;', '1\\. not a list', '\\- nor this')
    """
    safe = text.replace("&", "&amp;").replace("<", "&lt;").replace(">", "&gt;")
    safe = _ADDRESS.sub(lambda m: f"{m[0]}\\", _SIGNS.sub(r"\\\1", safe))
    return _START.sub(lambda m: f"{m[1]}\\" if m[1].isdigit() else f"\\{m[1]}", safe)


def to_markdown(document: Document) -> str:
    """The whole document."""
    parts = [f"# {escaped(document.title)}", escaped(document.subtitle)]
    for block in document.blocks:
        parts.append("\n".join(_block(block, document)))
    return "\n\n".join(part for part in parts if part) + "\n"


def _block(block: Block, document: Document) -> Iterator[str]:
    match block:
        case Heading(text, level):
            yield f"{'#' * level} {escaped(text)}"
        case Paragraph(text, tone):
            yield _paragraph(text, tone, document.word("caution"))
        case Facts(pairs):
            yield from (f"* **{escaped(label)}**{_joined(label)} {escaped(value)}" for label, value in pairs)
        case Items(texts, ordered):
            yield from (f"{f'{n}.' if ordered else '-'} {escaped(text)}" for n, text in enumerate(texts, 1))
        case Table():
            yield from _table(block)
        case Figure():
            yield from _table(block.table)
        case Signatures(labels, date):
            yield from (f"- {escaped(label)}: {_RULE} {escaped(date)}: {_RULE[:24]}" for label in labels)


def _paragraph(text: str, tone: str, caution: str) -> str:
    said = escaped(text)
    return {"lead": f"**{said}**", "caution": f"**{escaped(caution)}:** {said}"}.get(tone, said)


def _joined(label: str) -> str:
    return "" if label.endswith("?") else ":"


def _table(block: Table) -> Iterator[str]:
    yield f"{escaped(block.caption.rstrip('.'))}:"
    yield ""
    yield _row(block.headers)
    yield _row(["---"] * len(block.headers), raw=True)
    for row in block.rows:
        yield _row(row.cells)


def _row(cells: Sequence[str], raw: bool = False) -> str:
    return f"| {' | '.join(cell if raw else escaped(cell) for cell in cells)} |"
