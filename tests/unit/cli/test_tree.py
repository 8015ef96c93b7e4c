"""`diagnose tree`: complaints by id and in words, machines, every format, a file, and every refusal in one sentence."""

from __future__ import annotations

import json
import sys
from pathlib import Path
from typing import Any

import pytest

from diagnose.model import load_book


@pytest.fixture
def run(tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capfd: pytest.CaptureFixture[str]):  # type: ignore[no-untyped-def]
    """Run the program in this process: (exit code, stdout, stderr)."""
    from diagnose.cli import main

    monkeypatch.setenv("DIAGNOSE_HOME", str(tmp_path / "home"))
    monkeypatch.setenv("COLUMNS", "80")
    monkeypatch.setenv("LINES", "24")

    def go(*words: str) -> tuple[int, str, str]:
        monkeypatch.setattr(sys, "argv", ["diagnose", *words])
        with pytest.raises(SystemExit) as end:
            main()
        out, err = capfd.readouterr()
        return int(end.value.code or 0), out, err

    return go


def test_by_id_and_in_a_kitchens_words(run: Any) -> None:
    code, by_id, err = run("tree", "rinse_cold")
    assert (code, err) == (0, "")
    assert by_id.startswith("Final rinse too cold (rinse_cold)")
    said = load_book().complaints["rinse_cold"].kitchen[0]
    assert run("tree", *said.split())[1] == by_id
    assert run("tree", said)[1] == by_id


def test_folds_to_a_screen_and_opens_on_request(run: Any, monkeypatch: pytest.MonkeyPatch) -> None:
    for columns in ("80", "45", "30"):
        monkeypatch.setenv("COLUMNS", columns)
        out = run("tree", "rinse_cold", "--machine", "two_tank_electric_208")[1]
        assert max(map(len, out.splitlines())) <= int(columns)
        assert "[+" in out
        assert "--unfold" in out
    monkeypatch.setenv("COLUMNS", "80")
    folded = run("tree", "rinse_cold")[1]
    whole = run("tree", "rinse_cold", "--all")[1]
    assert whole.count("\n") > 5 * folded.count("\n")
    assert "[+" not in whole
    one = run("tree", "rinse_cold", "--depth", "1")[1]
    assert not any(line.startswith("1.1 ") for line in one.splitlines())
    two = run("tree", "rinse_cold", "--depth", "2", "--fold", "1")[1].splitlines()
    assert any(line.startswith("2.1 ") for line in two)
    assert not any(line.startswith("1.1 ") for line in two)
    opened = run("tree", "rinse_cold", "--depth", "1", "--unfold", "3")[1].splitlines()
    assert any(line.startswith("3.1 ") for line in opened)


def test_a_taller_screen_shows_more(run: Any, monkeypatch: pytest.MonkeyPatch) -> None:
    low = run("tree", "rinse_cold")[1]
    monkeypatch.setenv("LINES", "60")
    high = run("tree", "rinse_cold")[1]
    assert low.count("\n") < high.count("\n") <= 60


def test_a_machine_leaves_out_what_it_has_not(run: Any) -> None:
    whole = run("tree", "rinse_cold", "--all")[1]
    electric = run("tree", "rinse_cold", "--all", "--machine", "two_tank_electric_208")[1]
    assert "(steam booster)" in whole
    assert "steam booster" not in electric.lower()


@pytest.mark.parametrize("form", ["json", "dot", "mermaid", "svg", "open-psa"])
def test_formats_go_to_a_file_whole(run: Any, tmp_path: Path, form: str) -> None:
    file = tmp_path / "tree.out"
    code, out, err = run("tree", "wash_weak", "--format", form, "--out", str(file))
    assert (code, out) == (0, "")
    assert err == f"Written to {file}.\n"
    assert file.read_text("utf-8") == run("tree", "wash_weak", "--format", form)[1]
    assert [p.name for p in tmp_path.iterdir() if p.is_file()] == ["tree.out"]
    if form == "json":
        assert json.loads(file.read_text("utf-8"))["complaint"] == "wash_weak"


def test_ways_to_a_cause(run: Any) -> None:
    code, out, _ = run("tree", "--cause", "supply_power.fuse_open")
    assert code == 0
    assert "because:" in out
    assert "check:" in out
    answer = json.loads(run("tree", "--cause", "supply_power.fuse_open", "--format", "json")[1])
    assert len({p["complaint"] for p in answer["paths"]}) > 3
    out = run("tree", "--cause", "booster_electric.element_open", "--machine", "two_tank_steam_208")[1]
    assert "No complaint leads to it here." in out


@pytest.mark.parametrize(
    ("words", "code", "says"),
    [
        ((), 2, "say which complaint"),
        (("rinse_cld",), 1, "did you mean rinse_cold"),
        (("qqqq",), 1, "`diagnose knowledge list complaints` names them"),
        (("rinse_cold", "--cause", "supply_power.fuse_open"), 2, "not both"),
        (("--cause", "supply_power.fuse_opn"), 1, "did you mean supply_power.fuse_open"),
        (("--cause", "rinse_cold"), 1, "rinse_cold is no cause"),
        (("--cause", "supply_power.fuse_open", "--format", "svg"), 2, "text or json"),
        (("--cause", "supply_power.fuse_open", "--all"), 2, "shown whole"),
        (("rinse_cold", "--format", "open-psa", "--fold", "1"), 2, "whole"),
        (("rinse_cold", "--unfold", "77"), 1, "nothing in this tree is called '77'"),
        (("rinse_cold", "--machine", "two_tank_electrc_208"), 4, "did you mean two_tank_electric_208?"),
        (("rinse_cold", "--machine", "Pier"), 4, "no machine 'Pier' is saved"),
        (("rinse_cold", "--format", "png"), 2, "is not one of"),
        (("rinse_cold", "--depth", "0"), 2, "Invalid value"),
        (("rinse_cold", "--out", "/nowhere/at/all/x.txt"), 4, "can't be written"),
    ],
)
def test_every_refusal_is_one_sentence_and_a_code(run: Any, words: tuple[str, ...], code: int, says: str) -> None:
    got, out, err = run("tree", *words)
    assert (got, out) == (code, "")
    assert says in err
    assert err.count("\n") == 1


def test_what_a_machine_can_not_have_is_said(run: Any, tmp_path: Path) -> None:
    from tests.small_knowledge import SMALL

    shop = tmp_path / "shop" / "complaints"
    shop.mkdir(parents=True)
    entry = (
        SMALL["complaints/rinse.toml"]
        .replace("arm.short", "rinse_arms.too_little_water")
        .replace("arm.pressure", "rinse_gauge.panel_reading")
    )
    (shop / "own.toml").write_text(entry + 'fits = { booster = ["none"] }\n', "utf-8")
    code, out, err = run("--knowledge", str(tmp_path / "shop"), "tree", "no_rinse", "--machine", "two_tank_steam_208")
    assert (code, out) == (1, "")
    assert "can't be complained of on this machine" in err
    out = run("--knowledge", str(tmp_path / "shop"), "tree", "no_rinse", "--depth", "1", "--format", "json")[1]
    assert json.loads(out)["nodes"][0]["shop"] is True
