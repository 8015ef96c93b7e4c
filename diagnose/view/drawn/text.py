"""The tree as text: numbered rows that fold, under each the checks that decide there."""

from __future__ import annotations

from collections.abc import Sequence

from diagnose.view.drawn.chart import Chart, Decides, Folding
from diagnose.view.layout import Line, labelled, percent, text_width, wrap
from diagnose.view.outline import Row
from diagnose.view.words import minutes

__all__ = ["ANY_MACHINE", "decided", "tree_lines"]

NARROW = 45  # columns; below, branches are set in by one column instead of two
ANY_MACHINE = "any machine: entries say where they belong to some only"
HEAD = "Percent: how often it is the reason, or one of them, before anything is read."


def tree_lines(chart: Chart, folding: Folding, width: int, screen: int) -> list[Line]:
    """The whole page. By itself as much opens as fits on `screen` lines; the first branches are always shown."""
    head, foot = _head(chart, width), 3
    rows = chart.rows(folding, screen, lambda grown: len(head) + len(_rows(chart, grown, width)) + foot)
    return head + _rows(chart, rows, width) + _foot(rows, width)


def _head(chart: Chart, width: int) -> list[Line]:
    title = f"{chart.title(chart.complaint)} ({chart.complaint})"
    where = chart.machine.type.title if chart.machine else ANY_MACHINE
    named = f"{chart.machine.name}: " if chart.machine and chart.machine.name != chart.machine.type.id else ""
    lines = wrap(title, width, role="heading")
    lines += wrap(f"{chart.causes()} causes; {named}{where}", width, "  ", role="dim")
    return [*lines, *wrap(HEAD, width, "  ", role="dim")]


def _rows(chart: Chart, rows: Sequence[Row], width: int) -> list[Line]:
    step = 2 if width >= NARROW else 1
    column = min(max((len(r.number) for r in rows), default=0), 9 if width >= NARROW else 5)
    at = {row.number: row.node for row in rows}
    lines: list[Line] = []
    for row in rows:
        if row.depth:
            lead = f"{row.number:<{column}} {percent(chart.share.get(row.node, 0.0))} {' ' * step * row.depth}"
            lead = lead if text_width(lead) < width - 12 else f"{row.number} "
            lines += wrap(_titled(chart, row, at[row.parent]), width, lead, " " * min(len(lead) + 1, width // 2))
        if not row.folded:
            lines += _decides(chart, row, width, " " * (column + 6 + step * (row.depth + 1) if row.depth else step))
            lines += [] if row.depth else [Line()]
    return lines


def _titled(chart: Chart, row: Row, parent: str) -> str:
    title = chart.title(row.node)
    remarks = chart.remarks(row.node, parent)
    if remarks:
        title += f" ({', '.join(remarks)})"
    if row.again is not None:
        return f"{title} [as at {row.again}]"
    if row.folded:
        return f"{title} [+{row.folded}]"
    return title


def _decides(chart: Chart, row: Row, width: int, indent: str) -> list[Line]:
    lead = indent if len(indent) <= width // 3 else " " * (width // 3)
    named = chart.decides(row.node)
    if not named:
        return []
    single = bool(named[0].shows)
    text = decided(named[0])
    lines = wrap(f"{'shown by' if single else 'decides'}: {text}", width, lead, lead + "  ", role="dim")
    for more in named[1:]:
        lines += wrap(f"quicker: {decided(more)}", width, lead, lead + "  ", role="dim")
    return lines


def decided(each: Decides) -> str:
    """A check in a line: what it then shows, or how much of the doubt it settles in how many minutes."""
    if each.shows:
        return labelled(each.title, each.shows)
    return f"{each.title} (settles {round(each.share * 100)} %, {minutes(each.minutes)})"


def _foot(rows: Sequence[Row], width: int) -> list[Line]:
    shut = next((r for r in rows if r.folded and r.again is None), None)
    if shut is None:
        return []
    said = f"[+{shut.folded}]: so many causes folded. --unfold {shut.number} opens a branch, --all everything."
    return [Line(), *wrap(said, width, role="dim")]
