"""A long list to choose from: its groups on the screen, each opened by its range of numbers, all by `all`."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass

from diagnose.terminal.refusals import Refused, Told
from diagnose.view import words
from diagnose.view.layout import Line, text_width, wrap
from diagnose.view.question import choices

__all__ = ["RANGE", "Group", "listed", "tell_range"]

FEW = 12  # so many are listed at once
RANGE = re.compile(r"(\d{1,6})\s*(?:-|\u2013|to)\s*(\d{1,6})")


@dataclass(frozen=True)
class Group:
    """Some of the options, under a title; options are numbered through all groups."""

    title: str
    options: Sequence[str]


def listed(groups: Sequence[Group], width: int) -> list[Line]:
    """All options where they are few; else a line per group with its range."""
    options = [o for group in groups for o in group.options]
    if len(options) <= FEW:
        return choices(options, width)
    lines: list[Line] = []
    last = len(options)
    room = 2 * len(str(last)) + 1
    start = 1
    for group in groups:
        end = start + len(group.options) - 1
        if len(group.options) == 1:
            lines += wrap(group.options[0], width, f"  {start:<{room}}  ")
        else:
            lead = f"  {f'{start}-{end}':<{room}}  "
            lines += wrap(group.title, width, lead, " " * text_width(lead))
        start = end + 1
    return lines + wrap(words.RANGE_HINT, width, "  ", role="dim")


def tell_range(text: str, groups: Sequence[Group], width: int) -> None:
    """Raises Told with the options asked for by `3-9` or `all`; does nothing at any other text."""
    options = [o for group in groups for o in group.options]
    if text.casefold() in ("all", "list"):
        lines: list[Line] = []
        start = 1
        for group in groups:
            lines += wrap(group.title, width, role="heading") + choices(group.options, width, start)
            start += len(group.options)
        raise Told(lines)
    found = RANGE.fullmatch(text)
    if found is None:
        return
    first, last = int(found[1]), int(found[2])
    if not 1 <= first <= last <= len(options):
        raise Refused(f"Numbers here go from 1 to {len(options)}.", text)
    raise Told(choices(options[first - 1 : last], width, first))
