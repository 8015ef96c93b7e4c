"""A table on a PDF page: as wide as its words need; where a cell would not fit on a page, as records."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from typing import TYPE_CHECKING

from diagnose.report.document import Row, Table
from diagnose.report.pdf_paint import BAD, DOUBT, GOOD, INK, LINE, QUIET

if TYPE_CHECKING:
    from fpdf import FPDF

__all__ = ["line_count", "put_table"]

_HIGH = 4.3  # mm, a line
_PAD = 1.1
_GAP = 3.0  # between columns
_COLOURS = {"": INK, "good": GOOD, "bad": BAD, "doubt": DOUBT}

Letters = Callable[[str], str]


def put_table(paper: FPDF, table: Table, letters: Letters) -> None:
    """Caption, headers, rows; the headers again on each new page, and no row cut by its end."""
    paper.set_font("Helvetica", "", 8.5)
    widths = _widths(paper, table, letters)
    heights = [_height(paper, row, table, widths, letters) for row in table.rows]
    head = _height(paper, Row(table.headers), table, widths, letters)
    whole = 6 + head + sum(heights)
    # A short table is not cut; of a long one the headers never stand alone.
    _fit(paper, whole if whole < paper.eph / 2 else 6 + head + sum(heights[:2]))
    paper.set_font("Helvetica", "", 8.5)
    paper.set_text_color(*QUIET)
    paper.multi_cell(paper.epw, _HIGH, letters(table.caption), align="L", new_x="LMARGIN", new_y="NEXT")
    if max(heights, default=0) > paper.eph - 30:
        _records(paper, table, letters)
        return
    paper.ln(0.8)
    _head(paper, table, widths, head, letters)
    for row, high in zip(table.rows, heights, strict=True):
        if paper.will_page_break(high):
            paper.add_page()
            _head(paper, table, widths, head, letters)
        _row(paper, row, table, widths, high, letters)
    paper.ln(3)


def _fit(paper: FPDF, high: float) -> None:
    if paper.will_page_break(high):
        paper.add_page()


def _widths(paper: FPDF, table: Table, letters: Letters) -> list[float]:
    """Each column at least as wide as its longest word, the rest shared by how much there is to read."""
    columns = [
        [letters(text) for text in column] for column in zip(table.headers, *(r.cells for r in table.rows), strict=True)
    ]
    room = paper.epw - _GAP * (len(columns) - 1)
    least = [min(max(_words(paper, text) for text in column), room / 3) + 2.2 for column in columns]
    wanted = [max(paper.get_string_width(text) for text in column) + 2.2 for column in columns]
    if sum(wanted) <= room:
        return [w + (room - sum(wanted)) * w / sum(wanted) for w in wanted]
    over = room - sum(least)
    if over < 0:
        return [room * w / sum(least) for w in least]
    more = [max(w - low, 0.0) ** 0.5 for w, low in zip(wanted, least, strict=True)]
    return [low + over * m / sum(more) for low, m in zip(least, more, strict=True)]


def _words(paper: FPDF, text: str) -> float:
    return max((float(paper.get_string_width(word)) for word in text.split()), default=0.0)


def _style(paper: FPDF, table: Table, row: Row, nth: int) -> None:
    says = nth == table.says and bool(row.role)
    paper.set_font("Helvetica", "B" if says or nth == 0 else "", 8.5)
    paper.set_text_color(*(_COLOURS[row.role] if says else INK))


def _height(paper: FPDF, row: Row, table: Table, widths: Sequence[float], letters: Letters) -> float:
    lines = 1
    for nth, (text, width) in enumerate(zip(row.cells, widths, strict=True)):
        _style(paper, table, row, nth)
        lines = max(lines, line_count(paper, letters(text), width))
    return lines * _HIGH + 2 * _PAD


def line_count(paper: FPDF, text: str, width: float) -> int:
    """How many lines a text takes in the font that is set."""
    split = paper.multi_cell(width, _HIGH, text, align="L", dry_run=True, output="LINES")
    return len(split) if isinstance(split, list) else 1


def _head(paper: FPDF, table: Table, widths: Sequence[float], high: float, letters: Letters) -> None:
    def quiet(nth: int) -> None:
        paper.set_font("Helvetica", "", 8.5)
        paper.set_text_color(*QUIET)

    _cells(paper, table.headers, widths, letters, quiet)
    _rule(paper, high, 0.4)


def _row(paper: FPDF, row: Row, table: Table, widths: Sequence[float], high: float, letters: Letters) -> None:
    _cells(paper, row.cells, widths, letters, lambda nth: _style(paper, table, row, nth))
    _rule(paper, high, 0.15)


def _cells(
    paper: FPDF, cells: Sequence[str], widths: Sequence[float], letters: Letters, style: Callable[[int], None]
) -> None:
    x, top = paper.l_margin, paper.get_y()
    for nth, (text, width) in enumerate(zip(cells, widths, strict=True)):
        style(nth)
        paper.set_xy(x, top + _PAD)
        paper.multi_cell(width, _HIGH, letters(text), align="L", new_x="RIGHT", new_y="TOP")
        x += width + _GAP
    paper.set_xy(paper.l_margin, top)


def _rule(paper: FPDF, high: float, wide: float) -> None:
    y = paper.get_y() + high
    paper.set_draw_color(*LINE)
    paper.set_line_width(wide)
    paper.line(paper.l_margin, y, paper.w - paper.r_margin, y)
    paper.set_y(y)


def _records(paper: FPDF, table: Table, letters: Letters) -> None:
    """Each row as lines of `header: cell`, which may run over pages."""
    for row in table.rows:
        for nth, (header, cell) in enumerate(zip(table.headers, row.cells, strict=True)):
            _style(paper, table, row, nth)
            paper.multi_cell(paper.epw, _HIGH, letters(f"{header}: {cell}"), align="L", new_x="LMARGIN", new_y="NEXT")
        paper.ln(2)
