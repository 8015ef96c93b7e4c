"""The demonstration dialogues say exactly what the program prints; `--accept` writes them anew on purpose."""

from __future__ import annotations

from pathlib import Path

import pytest

from diagnose.model import load_book
from diagnose.view.layout import text_width
from tests.replay import header_of, replay

FOLDER = Path(__file__).resolve().parents[2] / "transcripts_demo"
# Dialogues of jobs; what a command prints at once is told in work_*.txt (test_work.py), exercises in practice_*.txt.
TRANSCRIPTS = sorted(p for p in FOLDER.glob("*.txt") if not p.stem.startswith(("work_", "practice_")))


@pytest.fixture(scope="module")
def book():  # type: ignore[no-untyped-def]
    return load_book()


def test_there_are_enough() -> None:
    assert len(TRANSCRIPTS) >= 6


@pytest.mark.parametrize("path", TRANSCRIPTS, ids=lambda p: p.stem)
def test_the_whole_text_is_what_is_printed(path: Path, book, tmp_path: Path, request: pytest.FixtureRequest) -> None:  # type: ignore[no-untyped-def]
    written = path.read_text("utf-8")
    printed = replay(written, book, tmp_path)
    if request.config.getoption("--accept"):
        path.write_text(printed, "utf-8")
    else:
        assert printed == written


@pytest.mark.parametrize("path", TRANSCRIPTS, ids=lambda p: p.stem)
def test_it_says_that_its_site_is_invented_and_fits_the_page(path: Path) -> None:
    text = path.read_text("utf-8")
    assert "invented" in " ".join(header_of(text))
    assert all(text_width(line) <= 80 for line in text.splitlines())
