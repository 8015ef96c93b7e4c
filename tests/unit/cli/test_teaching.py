"""From an instructor's file to the class's table, on the command line; progress and study beside it."""

from __future__ import annotations

import io
import json
import sys
from collections.abc import Callable
from pathlib import Path

import pytest

from diagnose.model import load_book
from diagnose.practice.choosing import ranked
from diagnose.practice.exercise import Exercise, Result
from diagnose.practice.kept import Kept
from diagnose.practice.port import simulator_here
from diagnose.view.exits import Exit

Run = Callable[..., tuple[int, str, str]]
TYPE, ELEMENT = "two_tank_electric_208", "booster_electric.element_open"


@pytest.fixture
def run(tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capfd: pytest.CaptureFixture[str]) -> Run:
    """Run a command with these lines typed: (exit code, stdout, stderr)."""
    from diagnose.cli import main

    monkeypatch.setenv("DIAGNOSE_HOME", str(tmp_path / "home"))
    monkeypatch.setenv("COLUMNS", "80")

    def go(typed: list[str], *words: str) -> tuple[int, str, str]:
        monkeypatch.setattr(sys, "stdin", io.StringIO("".join(f"{line}\n" for line in typed)))
        monkeypatch.setattr(sys, "argv", ["diagnose", *words])
        with pytest.raises(SystemExit) as end:
            main()
        out, err = capfd.readouterr()
        return int(end.value.code or 0), out, err

    return go


def test_from_the_instructors_file_to_the_class(run: Run, tmp_path: Path) -> None:
    file, handed = tmp_path / "weak.json", tmp_path / "handed"
    handed.mkdir()
    answers = [TYPE, ELEMENT, "0.9", "", "", "", "", "Weak booster", "Teacher"]
    assert run(answers, "practice", "new", str(file), "--seed", "4")[0] == Exit.OK
    assert run(answers, "practice", "new", str(file))[0] == Exit.BAD_DATA  # nothing is written over
    begun = ("practice", "--file", str(file), "--trainee", "Ann", "--result", str(handed / "ann.json"))
    code, out, err = run(["e", "one heating element is open", ""], *begun)
    assert (code, "Weak booster" in out, "Result written" in err) == (Exit.OK, True, True)
    assert run([], *begun)[0] == Exit.BAD_DATA
    told = json.loads((handed / "ann.json").read_text("utf-8"))
    assert (told["trainee"], told["solved"], told["exercise"]["faults"]) == ("Ann", True, [[ELEMENT, 0.9]])

    code, out, _ = run([], "practice", "class", str(handed))
    assert code == Exit.OK
    assert "Ann" in out
    (handed / "half.json").write_text("{", "utf-8")
    code, out, err = run([], "practice", "class", str(handed), "--json")
    assert code == Exit.BAD_DATA
    assert json.loads(out)["results"][0]["file"] == "ann.json"
    assert "half.json is no result" in err

    code, out, _ = run([], "practice", "progress", "--json")
    first = next(c for c in json.loads(out)["complaints"] if c["exercises"])
    assert (code, first["found"], first["complaint"]) == (Exit.OK, 1, told["exercise"]["complaint"])
    assert "Nothing was practised yet" in run([], "practice", "progress", "--trainee", "Bo")[1]


def test_what_failed_comes_next(run: Run, tmp_path: Path) -> None:
    book, kept = load_book(), Kept(tmp_path / "home" / "practice.sqlite3")
    failed = ranked(book, simulator_here(), [])[-1].complaint
    exercise = Exercise(seed=1, level=1, machine=TYPE, faults=[(ELEMENT, 0.9)], complaint=failed)
    result = Result(exercise=exercise, at=kept.clock(), minutes=50, expected=30, best=20, solved=False)
    kept.finish(kept.begin(exercise), result)
    kept.close()
    code, out, _ = run([], "practice", "progress")
    assert code == Exit.OK
    assert f"Next: {book.title(failed)}, level 1." in " ".join(out.split())


@pytest.mark.parametrize(
    ("words", "code", "told"),
    [
        (("practice", "class", "/nowhere"), Exit.BAD_DATA, "name a folder"),
        (("practice", "new", "/nowhere/at/all.json"), Exit.BAD_DATA, "no folder"),
        (("walk",), Exit.USAGE, "say which complaint"),
        (("walk", "zz", "qq"), Exit.FAILURE, "no one complaint"),
        (("walk", "rinse_cold", "--machine", "zz"), Exit.BAD_DATA, "is saved"),
    ],
)
def test_a_remedy_is_named(run: Run, words: tuple[str, ...], code: int, told: str) -> None:
    done, _, err = run([], *words)
    assert done == code
    assert told in err


def test_walk_takes_a_kitchens_words_and_keeps_nothing(run: Run, tmp_path: Path) -> None:
    code, out, err = run(["rinse pressure while flowing", "", "", "e"], "walk", "final", "rinse", "too", "cold")
    assert (code, err) == (Exit.OK, "")
    assert "Your way" in out
    kept = {p.name for p in (tmp_path / "home").rglob("*") if p.is_file()}
    assert all(name.endswith(".book") for name in kept)
