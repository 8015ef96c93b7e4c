"""`diagnose work` as a newcomer types it: one sentence for every mistake, an answer for everything else."""

from __future__ import annotations

import io
import json
import sys
from pathlib import Path
from typing import Any

import pytest

from diagnose.formulas import SUBJECTS, all_formulas
from diagnose.job.machines import SavedMachine, save_machine
from diagnose.job.places import own_places


@pytest.fixture
def run(tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capfd: pytest.CaptureFixture[str]):  # type: ignore[no-untyped-def]
    """Run the program in this process: (exit code, stdout, stderr)."""
    from diagnose.cli import main

    monkeypatch.setenv("DIAGNOSE_HOME", str(tmp_path / "home"))

    def go(*words: str, typed: str = "") -> tuple[int, str, str]:
        monkeypatch.setattr(sys, "argv", ["diagnose", "work", *words])
        monkeypatch.setattr(sys, "stdin", io.StringIO(typed))
        with pytest.raises(SystemExit) as end:
            main()
        out, err = capfd.readouterr()
        return int(end.value.code or 0), out, err

    return go


def test_lists_every_subject_and_formula(run: Any) -> None:
    code, out, err = run()
    assert (code, err) == (0, "")
    for title in SUBJECTS.values():
        assert title.split(":")[0] in out
    for name in all_formulas():
        assert name in out.replace("\n  ", " ")
    for subject in SUBJECTS:
        code, out, _ = run(subject)
        assert code == 0
        assert all(f.id in out for f in all_formulas().values() if f.subject == subject)


def test_answers_in_one_line(run: Any) -> None:
    assert "Rise: 48.74 F°" in run("booster-rise", "30kW", "4.2gpm")[1]
    assert "Rise: 48.74 F°" in run("booster", "rise", "--power", "30", "--flow", "4.2")[1]
    assert "Rise: 27.08 C°" in run("booster-rise", "30kW", "15.9 L/min")[1]
    assert "Rise: 27.08 C°" in run("booster-rise", "30kW", "4.2gpm", "--units", "si")[1]
    assert "Heater power: 24.62 kW" in run("booster-rise", "--rise", "40F", "--flow", "4.2gpm")[1]


def test_a_word_that_many_answer_to_lists_them(run: Any) -> None:
    code, out, err = run("tank", "loss")
    assert (code, err) == (0, "")
    assert out.startswith("tank loss: which of these")
    assert "  heat-up-loss\n" in out


def test_takes_figures_of_a_saved_machine_and_says_which_are_assumed(run: Any) -> None:
    save_machine(
        own_places().machines, SavedMachine(name="east", type="two_tank_electric_208", own={"booster_power": "27 kW"})
    )
    code, out, _ = run("booster-rise", "--machine", "east")
    assert code == 0
    assert "27 kW (plate of east)" in out
    assert "(type's figure, assumed)" in out
    assert "data plate governs" in " ".join(out.split())
    assert run("booster-rise", "--machine", "west")[0] != 0


def test_asks_for_what_is_missing_on_the_side(run: Any) -> None:
    code, out, err = run("booster-rise", typed="thirty\n20 psi\n30\n4.2\n")
    assert code == 0
    assert out.startswith("Rise a booster gives")
    assert err.count("Not taken:") == 2


@pytest.mark.parametrize(
    ("words", "says"),
    [
        (["booster-rise", "--power", "30psi", "--flow", "4"], "psi is a unit of pressure; this wants kW"),
        (["booster-rise", "--power", "30"], "Rinse flow is missing; give it: --flow in gpm"),
        (["booster-rise", "--power", "-3", "--flow", "4"], "-3 kW won't do; it must be above nought"),
        (["booster-rise", "--power", "30", "--flow", "0"], "0 gpm won't do; it must be above nought"),
        (["booster-rise", "30kW", "20psi"], "'20psi' fits nothing here; still open: rinse flow in gpm"),
        (["booster-rise", "--powr", "3"], "Did you mean"),
        (["boster-rise"], "it may mean booster-rise"),
        (["qqqqqq"], "`diagnose work` lists what there is"),
        (["booster-rise", "--rise", "40F", "--power", "30", "--flow", "4", "--find", "nothing"], "nothing this takes"),
    ],
)
def test_one_sentence_for_every_mistake(run: Any, words: list[str], says: str) -> None:
    code, out, err = run(*words)
    assert code == 2
    assert out == ""
    assert says in err
    assert err.strip().splitlines()[-1].startswith("diagnose: ")


def test_json_never_asks(run: Any) -> None:
    code, out, err = run("booster-rise", "--json", "--power", "30", typed="4.2\n")
    assert (code, out) == (2, "")
    assert "missing" in err
    code, out, _ = run("booster-rise", "--json", "30kW", "4.2gpm")
    answer = json.loads(out)
    assert answer["answers"][0]["unit"] == "F°"
    assert answer["working"][-1] == "30 kW × 3412 ÷ (500 × 4.2 gpm) = 48.74 F°"
