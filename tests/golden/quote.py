"""What the README quotes of a demonstration transcript; run as a module to put it there anew."""

from __future__ import annotations

import re
from pathlib import Path

__all__ = ["README", "quote", "quoted"]

ROOT = Path(__file__).resolve().parents[2]
README = ROOT / "README.md"
_BLOCK = re.compile(r"```text\n(Question .*?)```", re.S)
# From where to where in the transcript of one open element; what lies between is left out.
_PARTS = (
    ("Question 12 ", "\nRanking\n"),
    ("Question 14   3 minutes", "\nQuestion 14   LIVE"),
    ("Question 14 again", "\nQuestion 15"),
)


def quote() -> str:
    """The parts worth showing, as they are printed, with [...] between them."""
    text = (ROOT / "transcripts_demo" / "rinse_cold_one_element.txt").read_text("utf-8")
    parts = []
    for begin, end in _PARTS:
        start = text.index(begin)
        parts.append(text[start : text.index(end, start)].strip("\n") + "\n")
    return "[...]\n".join(parts)


def quoted() -> str:
    """What the README has now."""
    match = _BLOCK.search(README.read_text("utf-8"))
    assert match is not None, "the README quotes no dialogue"
    return match[1]


def put() -> None:
    """Write the quotation into the README."""
    README.write_text(README.read_text("utf-8").replace(quoted(), quote()), "utf-8")


if __name__ == "__main__":
    put()
