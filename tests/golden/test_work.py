"""The calculator's transcript says exactly what the commands print; `--accept` writes it anew on purpose."""

from __future__ import annotations

import contextlib
import io
import re
import shlex
import sys
from pathlib import Path

import pytest

from diagnose.cli import main
from diagnose.view.layout import text_width
from tests.replay import header_of

TRANSCRIPTS = sorted((Path(__file__).resolve().parents[2] / "transcripts_demo").glob("work_*.txt"))
_COMMAND = re.compile(r"^\$ (?:printf '(.*)' \| )?diagnose (.*)$")


def told(line: str, monkeypatch: pytest.MonkeyPatch) -> list[str]:
    """What a command line prints on a terminal: answer, questions and refusals as they come."""
    match = _COMMAND.match(line)
    assert match, line
    typed = (match[1] or "").replace("\\n", "\n")
    monkeypatch.setattr(sys, "argv", ["diagnose", *shlex.split(match[2])])
    monkeypatch.setattr(sys, "stdin", io.StringIO(typed))
    raw = io.BytesIO()
    printed = io.TextIOWrapper(raw, encoding="utf-8", write_through=True)
    with contextlib.redirect_stdout(printed), contextlib.redirect_stderr(printed), pytest.raises(SystemExit):
        main()
    return raw.getvalue().decode().rstrip("\n").split("\n")


def replay(text: str, monkeypatch: pytest.MonkeyPatch) -> str:
    """The transcript with every command run again."""
    lines = header_of(text)
    for line in text.splitlines():
        if line.startswith("## "):
            lines += ["", line]
        if line.startswith("$ "):
            lines += ["", line, *told(line, monkeypatch)]
    return "\n".join(lines) + "\n"


@pytest.mark.parametrize("path", TRANSCRIPTS, ids=lambda p: p.stem)
def test_the_whole_text_is_what_is_printed(
    path: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch, request: pytest.FixtureRequest
) -> None:
    monkeypatch.setenv("DIAGNOSE_HOME", str(tmp_path / "home"))
    monkeypatch.setenv("COLUMNS", "80")
    written = path.read_text("utf-8")
    printed = replay(written, monkeypatch)
    if request.config.getoption("--accept"):
        path.write_text(printed, "utf-8")
    else:
        assert printed == written
    assert "invented" in " ".join(header_of(printed))
    # A command is as long as it is, a refusal is one sentence on one line, and JSON is for machines.
    free = ("$ ", "diagnose: ", "Not taken", '"')
    assert all(text_width(line) <= 80 for line in printed.splitlines() if not line.lstrip().startswith(free))


def test_there_is_one() -> None:
    assert TRANSCRIPTS
