"""`diagnose instrument` as typed: one sentence for every mistake, and what is kept."""

from __future__ import annotations

import json
import sys
from pathlib import Path
from typing import Any

import pytest


@pytest.fixture
def run(tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capfd: pytest.CaptureFixture[str]):  # type: ignore[no-untyped-def]
    """Run the program in this process: (exit code, stdout, stderr)."""
    from diagnose.cli import main

    monkeypatch.setenv("DIAGNOSE_HOME", str(tmp_path / "home"))

    def go(*words: str) -> tuple[int, str, str]:
        monkeypatch.setattr(sys, "argv", ["diagnose", *words])
        with pytest.raises(SystemExit) as end:
            main()
        out, err = capfd.readouterr()
        return int(end.value.code or 0), out, err

    return go


ADD = ("instrument", "add", "probe", "--kind", "reference thermometer")


def test_added_listed_removed(run: Any) -> None:
    code, out, err = run(*ADD, "--accuracy", "0.5 F", "--calibrated", "2020-01")
    assert (code, err) == (0, "")
    assert "calibration overdue since 2021-02" in " ".join(out.split())
    rows = json.loads(run("instrument", "list", "--json")[1])["instruments"]
    assert [r["instrument"]["name"] for r in rows] == ["probe"]
    assert run("instrument", "remove", "probe")[1].strip() == "Forgotten: probe."
    assert "No instruments kept yet" in run("instrument", "list")[1]


@pytest.mark.parametrize(
    ("words", "code", "says"),
    [
        ((*ADD, "--accuracy", "1 psi"), 4, "accuracy of a reference thermometer"),
        ((*ADD, "--accuracy", "1 F", "--calibrated", "soon"), 4, "2026-03-14"),
        ((*ADD, "--accuracy", "1 F", "--interval", "0"), 4, "12 is usual"),
        ((*ADD, "--accuracy", "1 F", "--interval", "often"), 2, "often"),
        (ADD, 2, "--accuracy"),
        (("instrument", "add", "x", "--kind", "clamp metre", "--accuracy", "1 %"), 4, "did you mean 'clamp meter'"),
        (("instrument", "remove", "x"), 4, "none yet"),
        (("instrument", "lst"), 2, "did you mean list?"),
    ],
)
def test_one_sentence_for_every_mistake(run: Any, words: tuple[str, ...], code: int, says: str) -> None:
    got, out, err = run(*words)
    assert (got, out) == (code, "")
    assert says in err
    assert err.count("\n") == 1


def test_a_broken_file_is_named_and_left_alone(run: Any, tmp_path: Path) -> None:
    path = tmp_path / "home" / "instruments.json"
    path.parent.mkdir(parents=True)
    path.write_text("[{", "utf-8")
    code, _, err = run("instrument", "list")
    assert code == 4
    assert "mend or delete it" in err
    assert path.read_text("utf-8") == "[{"
