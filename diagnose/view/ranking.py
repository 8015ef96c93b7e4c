"""The ranking on the screen: rank, percent, title; what is not listed is always a row, and the tail has one."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Protocol

from diagnose.view import words
from diagnose.view.layout import Line, flow, number_word, percent, wrap

__all__ = ["RankRow", "ranking_block"]

SHOWN = 5
_BAR_COLUMNS = 10
_BAR_FROM = 80  # columns; bars are left out on a narrower screen


class RankRow(Protocol):
    """One row: a cause, or what is not listed."""

    @property
    def id(self) -> str: ...
    @property
    def title(self) -> str: ...
    @property
    def probability(self) -> float: ...
    @property
    def kind(self) -> str: ...


def ranking_block(
    rows: Sequence[RankRow],
    width: int,
    shown: int | None = SHOWN,
    bars: bool = False,
    before: Mapping[str, float] | None = None,
) -> list[Line]:
    """The first rows, every row of what is not listed, and one for the tail; None shows all.

    With the probabilities `before`, a row that moved says where from. The number before each row is its rank in the
    whole ranking, so that `w 7` means the same everywhere.
    """
    lines = [Line(words.RANKING, "heading")]
    hidden = 0
    most = 0.0
    for rank, row in enumerate(rows, 1):
        if shown is None or rank <= shown or row.kind == "unlisted":
            lines += _row(rank, row, width, bars, _moved(row, before or {}))
        else:
            hidden += 1
            most = max(most, row.probability)
    if hidden:
        each = f"{number_word(hidden)} more, each at most this" if hidden > 1 else "one more"
        lines += wrap(each, width, f"     {percent(most)}  ", role="dim")
    return lines + flow(words.RANKING_KEYS.split("   "), width, role="keys")


def _moved(row: RankRow, before: Mapping[str, float]) -> str:
    was = percent(before[row.id]).strip() if row.id in before else ""
    return f" ({words.WAS} {was})" if was and was != percent(row.probability).strip() else ""


def _row(rank: int, row: RankRow, width: int, bars: bool, moved: str = "") -> list[Line]:
    lead = f" {rank:>3} {percent(row.probability)}  "
    note = f" ({words.NO_FAULT.casefold()})" if row.kind == "no fault" else ""
    if bars and width >= _BAR_FROM:
        lead += f"{'=' * round(row.probability * _BAR_COLUMNS):<{_BAR_COLUMNS}}  "
    return wrap(row.title + note + moved, width, lead, " " * len(lead))
