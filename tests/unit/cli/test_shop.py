"""A shop's folder in the user's data is laid over ours by itself, says so on every screen, and can be left aside."""

from __future__ import annotations

import sys
from collections.abc import Callable
from pathlib import Path

import pytest

Run = Callable[..., tuple[int, str, str]]

OWN = """
[[check]]
id = "flow_pressure"
title = "Pressure while it rinses, as we read it"
ask = "Read the rinse pressure as our shop does"
steps = ["Stand where the gauge is seen.", "Read it while water flows."]
reading = { quantity = "pressure", unit = "psi" }
instrument = "panel gauge"
minutes = 2
open = ["none"]
state = "running"
who = "operator"
cautions = []
looks_at = ["pressure_regulator.set_high"]
shows = { "pressure_regulator.set_high" = { high = "nearly always" }, none = { ok = "nearly always" } }
basis = { kind = "judgement" }
[check.outcomes]
ok = { title = "in the band", good = true, high = "25 psi" }
high = { title = "above it", low = "25 psi" }
"""


@pytest.fixture
def run(tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capfd: pytest.CaptureFixture[str]) -> Run:
    from diagnose.cli import main

    home = tmp_path / "home"
    (home / "knowledge" / "assemblies").mkdir(parents=True)
    (home / "knowledge" / "assemblies" / "rinse_gauge.toml").write_text(OWN, "utf-8")
    monkeypatch.setenv("DIAGNOSE_HOME", str(home))

    def go(*words: str) -> tuple[int, str, str]:
        monkeypatch.setattr(sys, "argv", ["diagnose", *words])
        with pytest.raises(SystemExit) as end:
            main()
        out, err = capfd.readouterr()
        return int(end.value.code or 0), out, err

    return go


def test_lists_and_entries_say_whose_they_are(run: Run) -> None:
    assert "as we read it (shop's)" in " ".join(run("knowledge", "list", "checks")[1].split())
    _, out, _ = run("knowledge", "show", "rinse_gauge.flow_pressure")
    assert "from your shop's folder knowledge, in place of the entry of ours" in " ".join(out.split())
    assert "as our shop does (shop's)" in " ".join(out.split())


def test_it_can_be_left_aside(run: Run) -> None:
    _, out, _ = run("--ours-only", "knowledge", "show", "rinse_gauge.flow_pressure")
    assert "shop's" not in out


def test_a_fault_in_it_names_the_file_and_the_way_round(run: Run, tmp_path: Path) -> None:
    (tmp_path / "home" / "knowledge" / "assemblies" / "rinse_gauge.toml").write_text("[[check]]\nid = 3\n", "utf-8")
    code, out, err = run("knowledge", "list", "checks")
    assert (code, out) == (4, "")
    assert "knowledge/assemblies/rinse_gauge.toml:1" in err
    assert "--ours-only" in err
    assert run("--ours-only", "knowledge", "list", "checks")[0] == 0


def test_the_dialogue_says_so_at_the_question(run: Run, tmp_path: Path) -> None:
    from diagnose.model import load_book, shipped_knowledge
    from tests.small_job import talk

    book = load_book(shipped_knowledge(), tmp_path / "home" / "knowledge")
    answers = ["two_tank_electric_208", "1", "Pier, invented", "0", "rinse pressure too high", "", *[""] * 5]
    _, asked = talk(book, [*answers, "c pressure as we read it", "h"], tmp_path)
    assert "Read the rinse pressure as our shop does (shop's)" in " ".join(asked.text.split())
    assert "(shop's): from your own folder of knowledge, not ours: knowledge" in " ".join(asked.text.split())
