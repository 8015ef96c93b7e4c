"""A document as data: blocks of text, facts, tables, charts and lines to sign. Every format is made from the same one.

A text that a person or a file gave may hold anything. It is cleaned in one place, when a document is made: no control,
format or direction sign is left in it, and no line ends inside it.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, fields, is_dataclass, replace
from typing import Any, Literal

from diagnose.report.charts import Chart
from diagnose.view.encode import clean

__all__ = [
    "Block",
    "Document",
    "Facts",
    "Figure",
    "Heading",
    "Items",
    "Paragraph",
    "Role",
    "Row",
    "Signatures",
    "Table",
    "cleaned",
    "texts_of",
]

Role = Literal["", "good", "bad", "doubt"]


@dataclass(frozen=True)
class Heading:
    """A heading under the title: `level` 2, or 3 within a part."""

    text: str
    level: Literal[2, 3] = 2


@dataclass(frozen=True)
class Paragraph:
    """A paragraph. `tone`: "" plain, "lead" what matters first, "caution" what can hurt, "note" small print."""

    text: str
    tone: Literal["", "lead", "caution", "note"] = ""


@dataclass(frozen=True)
class Facts:
    """Labels with their values."""

    pairs: tuple[tuple[str, str], ...]


@dataclass(frozen=True)
class Row:
    """A row of a table; the role colours it, its words say the same."""

    cells: tuple[str, ...]
    role: Role = ""


@dataclass(frozen=True)
class Table:
    """A table with a caption. The first column names the row.

    `says` is the column whose word tells how a row stands: a row with a role must have one there (ValueError). Of a
    `series` of tables under the same headers all have columns of the same width.
    """

    caption: str
    headers: tuple[str, ...]
    rows: tuple[Row, ...]
    says: int | None = None
    series: bool = False

    def __post_init__(self) -> None:
        for row in self.rows:
            if len(row.cells) != len(self.headers):
                raise ValueError(f"a row of {len(row.cells)} cells under {len(self.headers)} headers")
            if row.role and (self.says is None or not row.cells[self.says].strip()):
                raise ValueError(f"a row is {row.role} by its colour alone: {row.cells}")


@dataclass(frozen=True)
class Items:
    """A list; `ordered` where the order matters."""

    texts: tuple[str, ...]
    ordered: bool = False


@dataclass(frozen=True)
class Figure:
    """A chart and the table that says the same; `folded` where a reader of the chart needs the table seldom."""

    chart: Chart
    table: Table
    folded: bool = True


@dataclass(frozen=True)
class Signatures:
    """Lines to sign on, with what each signer is; never a name."""

    labels: tuple[str, ...]
    date: str  # the label beside each for the date


Block = Heading | Paragraph | Facts | Table | Items | Figure | Signatures


@dataclass(frozen=True)
class Document:
    """What is printed. `language` is that of its own texts, `made` the time of its newest record (ISO 8601, or "")."""

    title: str
    subtitle: str
    blocks: tuple[Block, ...]
    language: str = "en"
    made: str = ""
    words: tuple[tuple[str, str], ...] = ()  # what renderers say of their own, in the language of the document

    def __post_init__(self) -> None:
        for name in ("title", "subtitle", "blocks"):
            object.__setattr__(self, name, cleaned(getattr(self, name)))

    def word(self, name: str) -> str:
        """A word that renderers need, by its name."""
        return dict(self.words)[name]


def cleaned(value: Any) -> Any:
    """The value with every text in it cleaned; blanks at the ends of a text go too."""
    if isinstance(value, str):
        return " ".join(clean(value).split())
    if isinstance(value, tuple):
        return tuple(cleaned(each) for each in value)
    if is_dataclass(value) and not isinstance(value, type):
        return replace(value, **{f.name: cleaned(getattr(value, f.name)) for f in fields(value) if f.init})
    return value


def texts_of(document: Document) -> Iterator[str]:
    """Every text of a document in the order it is read; of a chart those of its title and table."""
    yield document.title
    yield document.subtitle
    for block in document.blocks:
        yield from _texts(block)


def _texts(block: Block) -> Sequence[str]:
    match block:
        case Heading(text) | Paragraph(text):
            return (text,)
        case Facts(pairs):
            return [text for pair in pairs for text in pair]
        case Items(texts):
            return texts
        case Table():
            return [block.caption, *block.headers, *(cell for row in block.rows for cell in row.cells)]
        case Figure(chart, table):
            return [chart.title, *_texts(table)]
        case Signatures(labels, date):
            return [text for label in labels for text in (label, date)]
