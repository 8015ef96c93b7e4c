"""The command line: data on stdout, one sentence on stderr, an exit code for every end, valid JSON by its schema."""

from __future__ import annotations

import json
import subprocess
import sys
from pathlib import Path
from typing import Any

import jsonschema
import pytest

from tests.small_knowledge import SMALL, write_small

CASE = """
machine = "two_tank_electric_208"
complaints = ["rinse_cold"]
plate = { booster_power = "30 kW" }
[readings]
"rinse_thermometer.panel_reading" = "172 F"
"booster_electric.line_amps" = "48 48 83 A"
"""


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


@pytest.fixture
def case(tmp_path: Path) -> str:
    path = tmp_path / "case.toml"
    path.write_text(CASE)
    return str(path)


def test_rank_puts_the_cause_first(run: Any, case: str) -> None:
    code, out, err = run("rank", case)
    assert (code, err) == (0, "")
    first = out[out.index("Ranking") :].splitlines()[1]
    assert "One heating element is open" in first
    assert all(len(line) <= 80 for line in out.splitlines())


def test_rank_as_json_keeps_its_schema(run: Any, case: str) -> None:
    code, out, _ = run("rank", case, "--json")
    answer = json.loads(out)
    _, schema, _ = run("rank", "--schema", "answer")
    jsonschema.validate(answer, json.loads(schema))
    assert code == 0
    assert answer["schema"] == 1
    assert answer["ranking"][0]["id"] == "booster_electric.element_open"
    assert answer["ranking"][0]["reasons"]
    assert "booster_power" not in answer["assumed"]


def test_the_case_schema_takes_a_case_and_refuses_another(run: Any) -> None:
    import tomllib

    _, out, _ = run("rank", "--schema", "case")
    schema = json.loads(out)
    jsonschema.validate(tomllib.loads(CASE), schema)
    with pytest.raises(jsonschema.ValidationError):
        jsonschema.validate({**tomllib.loads(CASE), "colour": "red"}, schema)


@pytest.mark.parametrize(
    ("words", "code", "says"),
    [
        (("knowlege",), 2, "did you mean knowledge?"),
        (("rank",), 2, "name a case file"),
        (("rank", "--jsno"), 2, "No such option"),
        (("rank", "no-such-file.toml"), 4, "mend the file"),
        (("knowledge", "list", "colours"), 2, "is not one of"),
        (("knowledge", "show", "booster_electric.element_opn"), 1, "did you mean booster_electric.element_open?"),
        (("jobs", "job-1"), 5, "no job 'job-1'"),
        (("resume", "job-1"), 5, "no job"),
        (("machine", "show", "Pier"), 4, "no machine 'Pier' is saved"),
        (("--knowledge", "/nowhere/at/all", "knowledge", "stats"), 4, "no such folder"),
        (("--who", "plumber"), 2, "say one of operator, technician, licensed electrician"),
        (("--keep-closed", "fridge"), 2, "say one of none, front panel, control box"),
        (("help", "dance"), 2, "no command 'dance'"),
    ],
)
def test_every_failure_is_one_sentence_and_a_code(run: Any, words: tuple[str, ...], code: int, says: str) -> None:
    got, out, err = run(*words)
    assert (got, out) == (code, "")
    assert says in err
    assert err.count("\n") == 1
    assert "Traceback" not in err


@pytest.mark.parametrize("kind", ["complaints", "events", "causes", "checks", "machines", "limits", "sources", "words"])
def test_lists_in_words_and_in_json(run: Any, kind: str) -> None:
    code, out, _ = run("knowledge", "list", kind)
    assert code == 0
    assert all(len(line) <= 80 for line in out.splitlines())
    code, out, _ = run("knowledge", "list", kind, "--json")
    data = json.loads(out)
    assert data["schema"] == 1
    assert data[kind]


def test_every_entry_can_be_shown(run: Any) -> None:
    from diagnose.batch.shelf import show_entry
    from diagnose.model import load_book

    book = load_book()
    for table in (book.complaints, book.events, book.causes, book.checks, book.machines, book.limits, book.sources):
        for name in table:
            for width in (45, 80):
                lines = show_entry(book, name, False, width)
                assert lines
                assert max(map(len, lines)) <= width
    assert run("knowledge", "show", "rinse_cold", "--json")[0] == 0


def test_lint(run: Any, tmp_path: Path) -> None:
    assert run("knowledge", "lint")[:2] == (0, "No problems.\n")
    write_small(tmp_path / "shop", assemblies__arm='gate = "any" => gate = "some"')
    code, out, _ = run("knowledge", "lint", str(tmp_path / "shop"))
    assert code == 1
    assert "assemblies/arm.toml:3" in out
    code, out, _ = run("knowledge", "lint", str(tmp_path / "shop"), "--json")
    assert json.loads(out)["problems"][0]["line"] == 3


def test_stats_count_and_measure_each_complaint(run: Any) -> None:
    stats = json.loads(run("knowledge", "stats", "--jobs", "0", "--json")[1])
    assert stats["counts"]["causes"] >= 260
    assert all(c["inseparable"] == [] and c["minutes"] is None for c in stats["complaints"])
    code, out, err = run("knowledge", "stats", "--jobs", "0")
    assert (code, err) == (0, "")
    (row,) = [line.split() for line in out.splitlines() if line.endswith(" rinse_cold")]
    assert int(row[0]) > 60
    assert row[1:] == ["0", "rinse_cold"]
    assert max(len(line) for line in out.splitlines()) <= 80


def test_a_folder_of_ones_own_adds_to_the_knowledge(run: Any, tmp_path: Path) -> None:
    shop = tmp_path / "shop" / "limits"
    shop.mkdir(parents=True)
    (shop / "rinse.toml").write_text(SMALL["limits/rinse.toml"].replace('id = "pressure"', 'id = "shop_pressure"'))
    code, out, _ = run("--knowledge", str(tmp_path / "shop"), "knowledge", "list", "limits")
    assert code == 0
    assert "shop_pressure" in out
    assert "rinse_temperature" in out


def test_help_of_every_command_is_narrow_and_on_stdout(run: Any) -> None:
    for words in ((), ("resume",), ("jobs",), ("rank",), ("knowledge",), ("knowledge", "list"), ("machine", "show")):
        code, out, err = run("help", *words)
        assert (code, err) == (0, "")
        assert all(len(line) <= 80 for line in out.splitlines())
        assert run(*words, "-h")[1] == out


def test_an_inner_fault_is_one_line_and_goes_to_the_log(run: Any, case: str, monkeypatch: Any, tmp_path: Path) -> None:
    import diagnose.batch.rank as room

    def broken(*_: object) -> None:
        raise RuntimeError("a bug, for the test")

    monkeypatch.setattr(room, "assess", broken)
    code, out, err = run("rank", case)
    assert (code, out) == (7, "")
    assert "RuntimeError" in err
    assert "answers are saved" in err
    assert "a bug, for the test" in (tmp_path / "home" / "diagnose.log").read_text()


def test_a_closed_pipe_is_no_fault(tmp_path: Path) -> None:
    line = f"{sys.executable} -m diagnose knowledge list causes | head -n 1"
    done = subprocess.run(line, shell=True, capture_output=True, text=True)
    assert done.stderr == ""
    assert done.stdout.startswith("id")
