"""The tree of an invented machine as text, at three widths; `--accept` writes it anew on purpose."""

from __future__ import annotations

from pathlib import Path

import pytest

from diagnose.view.drawn.chart import Chart, Folding
from diagnose.view.drawn.paths import path_lines, paths_to
from diagnose.view.drawn.text import tree_lines
from diagnose.view.layout import text_width
from tests.small_tree import BOOK, MACHINE

FOLDER = Path(__file__).resolve().parent / "tree"
WIDTHS = (80, 45, 30)


def pages(width: int) -> dict[str, list[str]]:
    def tree(machine, folding: Folding, screen: int) -> list[str]:  # type: ignore[no-untyped-def]
        return [*tree_lines(Chart(BOOK, "no_spray", machine), folding, width, screen)]

    return {
        "folded to a short screen, made-up electric machine": tree(MACHINE, Folding(), 16),
        "one branch opened": tree(MACHINE, Folding(opened=("3",)), 16),
        "the whole book, everything opened": tree(None, Folding(everything=True), 16),
        "every way to one cause": [
            *path_lines(BOOK, "feed.valve_shut", None, paths_to(BOOK, "feed.valve_shut", None), width)
        ],
    }


@pytest.mark.parametrize("width", WIDTHS)
def test_the_pages_are_as_accepted(width: int, request: pytest.FixtureRequest) -> None:
    path = FOLDER / f"no_spray_{width}.txt"
    told = pages(width)
    printed = "".join(f"## {name}\n\n" + "\n".join(lines) + "\n\n" for name, lines in told.items())
    assert all(text_width(line) <= width for lines in told.values() for line in lines)
    if request.config.getoption("--accept"):
        path.parent.mkdir(exist_ok=True)
        path.write_text(printed, "utf-8")
    else:
        assert printed == path.read_text("utf-8")
