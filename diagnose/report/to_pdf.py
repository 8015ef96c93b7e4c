"""A document as PDF with the fonts every reader has: their letters are few, so other signs are written out.

The page fits on A4 and on Letter without being scaled: as wide as the one, as high as the other.
"""

from __future__ import annotations

from collections.abc import Sequence
from datetime import datetime
from itertools import zip_longest

from fpdf import FPDF
from fpdf.enums import XPos, YPos

from diagnose.report.document import (
    Block,
    Document,
    Facts,
    Figure,
    Heading,
    Items,
    Paragraph,
    Signatures,
    Table,
    texts_of,
)
from diagnose.report.draw import draw
from diagnose.report.pdf_paint import ACCENT, DOUBT, INK, LINE, QUIET, paint
from diagnose.report.pdf_table import line_count, put_table
from diagnose.report.shapes import Picture
from diagnose.view.encode import for_charset

__all__ = ["CHARSET", "in_letters", "to_pdf"]

CHARSET = "cp1252"
_PAGE = (210.0, 279.4)  # mm
_EDGE, _FOOT = 18.0, 18.0
_PAGES = "\x01" * 4  # stands for the count of pages until it is known; no cleaned text holds it
_PICTURE = 620.0  # units across


def in_letters(text: str) -> str:
    """The text in the letters these fonts have."""
    return for_charset(text, CHARSET)


class _Paper(FPDF):
    """A page with its number at the foot."""

    def __init__(self, document: Document) -> None:
        super().__init__(format=_PAGE)
        self._document = document
        self.core_fonts_encoding = CHARSET
        self.set_margins(_EDGE, _EDGE)
        self.set_auto_page_break(True, _FOOT)
        self.c_margin = 0
        self.alias_nb_pages(_PAGES)
        self.set_title(document.title)
        self.set_lang(document.language)
        self.set_creator("diagnose")
        if document.made:
            self.set_creation_date(datetime.fromisoformat(document.made))

    def footer(self) -> None:
        self.set_y(-_FOOT + 6)
        self.font("", 8, QUIET)
        said = self._document.word("page").format(number=self.page_no(), count=_PAGES)
        self.cell(0, 4, in_letters(said), align="R")

    def font(self, style: str, size: float, colour: tuple[int, int, int] = INK) -> None:
        self.set_font("Helvetica", style, size)
        self.set_text_color(*colour)

    def put(self, text: str, high: float, left: float = 0.0, hang: str = "") -> None:
        """A paragraph, `left` mm from the edge; `hang` stands before it."""
        self.set_x(self.l_margin + left)
        if hang:
            self.cell(6, high, hang)
        room = self.epw - left - (6 if hang else 0)
        self.multi_cell(room, high, in_letters(text), align="L", new_x=XPos.LMARGIN, new_y=YPos.NEXT)

    def keep(self, high: float) -> None:
        """Begin a new page unless so much is free on this one."""
        if self.will_page_break(high):
            self.add_page()


def to_pdf(document: Document) -> bytes:
    """The whole file."""
    paper = _Paper(document)
    paper.add_page()
    paper.font("B", 19)
    paper.put(document.title, 8.5)
    paper.font("", 10, QUIET)
    paper.put(document.subtitle, 5.5)
    paper.set_draw_color(*ACCENT)
    paper.set_line_width(0.8)
    paper.line(paper.l_margin, paper.get_y() + 1.5, paper.w - paper.r_margin, paper.get_y() + 1.5)
    paper.ln(6)
    for block, after in zip_longest(document.blocks, document.blocks[1:]):
        if isinstance(block, Heading):
            paper.keep(28 if not isinstance(after, Figure) else min(_high(paper, after)[1] + 30, paper.eph))
        _block(paper, block, document)
    if any(in_letters(text) != text for text in texts_of(document)):
        paper.ln(2)
        paper.font("", 8, QUIET)
        paper.put(document.word("signs"), 4)
    return bytes(paper.output())


def _block(paper: _Paper, block: Block, document: Document) -> None:
    match block:
        case Heading(text, level):
            paper.ln(4 if level == 2 else 2)
            paper.font("B", 12.5 if level == 2 else 10.5, ACCENT if level == 2 else INK)
            paper.put(text, 6)
            paper.ln(1)
        case Paragraph(text, tone):
            _paragraph(paper, text, tone, document.word("caution"))
        case Facts(pairs):
            _facts(paper, pairs)
        case Items(texts, ordered):
            paper.font("", 9.5)
            for nth, text in enumerate(texts, 1):
                paper.put(text, 4.8, 1, f"{nth}." if ordered else "\x95".encode("latin-1").decode(CHARSET))
            paper.ln(1.5)
        case Table():
            put_table(paper, block, in_letters)
        case Figure():
            _figure(paper, block)
        case Signatures(labels, date):
            _signatures(paper, labels, date)


def _paragraph(paper: _Paper, text: str, tone: str, caution: str) -> None:
    size, high, colour = {"lead": (11.5, 5.6, INK), "note": (8, 4, QUIET), "caution": (9.5, 4.8, DOUBT)}.get(
        tone, (9.5, 4.8, INK)
    )
    paper.font("B" if tone == "lead" else "", size, colour)
    paper.put(f"{caution}: {text}" if tone == "caution" else text, high)
    paper.ln(1.5)


def _facts(paper: _Paper, pairs: Sequence[tuple[str, str]]) -> None:
    for label, value in pairs:
        paper.keep(6)
        top, page = paper.get_y(), paper.page
        paper.font("", 9, QUIET)
        paper.multi_cell(48, 4.8, in_letters(label), align="L", new_x=XPos.RIGHT, new_y=YPos.TOP)
        label_end = paper.get_y() + 4.8 * max(1, line_count(paper, in_letters(label), 48))
        paper.set_xy(paper.l_margin + 50, top)
        paper.font("", 9.5)
        paper.multi_cell(paper.epw - 50, 4.8, in_letters(value), align="L", new_x=XPos.LMARGIN, new_y=YPos.NEXT)
        if paper.page == page:
            paper.set_y(max(paper.get_y(), label_end))
        paper.ln(0.6)
    paper.ln(1.5)


def _high(paper: _Paper, block: Figure) -> tuple[Picture, float]:
    """The picture of a chart, and how high it is on this page, mm."""
    picture = draw(block.chart, _PICTURE)
    return picture, picture.height * paper.epw / picture.width


def _figure(paper: _Paper, block: Figure) -> None:
    picture, high = _high(paper, block)
    scale = paper.epw / picture.width
    tall = high > paper.eph - 20
    paper.keep(14 if tall else high + 12)
    paper.font("B", 9.5)
    paper.put(block.chart.title, 5.5)
    if not tall:  # a chart higher than a page is told by its table alone
        paint(paper, picture, paper.l_margin, paper.get_y() + 1, scale, in_letters)
        paper.set_y(paper.get_y() + high + 4)
    put_table(paper, block.table, in_letters)


def _signatures(paper: _Paper, labels: Sequence[str], date: str) -> None:
    paper.keep(32)
    top = paper.get_y() + 18
    room = (paper.epw - 12) / max(len(labels), 1)
    paper.set_draw_color(*INK)
    paper.set_line_width(0.2)
    for nth, label in enumerate(labels):
        x = paper.l_margin + nth * (room + 12)
        paper.line(x, top, x + room, top)
        paper.font("", 8.5, QUIET)
        paper.set_xy(x, top + 1)
        paper.cell(room - 25, 4, in_letters(label))
        paper.cell(25, 4, in_letters(date))
    paper.set_xy(paper.l_margin, top + 10)
    paper.set_draw_color(*LINE)
