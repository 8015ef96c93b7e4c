"""`diagnose report`: formats, files, languages and every refusal in one sentence."""

from __future__ import annotations

import json
import sys
from pathlib import Path
from typing import Any

import pytest

from diagnose.job.journal import Journal
from tests.report_job import TRACE

JOB = "job-1001"


@pytest.fixture
def run(tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capfd: pytest.CaptureFixture[str]):  # type: ignore[no-untyped-def]
    """Run the program in this process on a journal with a job: (exit code, stdout, stderr)."""
    from diagnose.cli import main

    monkeypatch.setenv("DIAGNOSE_HOME", str(tmp_path / "home"))
    monkeypatch.setenv("COLUMNS", "80")
    monkeypatch.chdir(tmp_path)
    journal = Journal(tmp_path / "home" / "journal.sqlite3", clock=lambda: "2026-03-02T12:00:00+00:00")
    for event in TRACE[:4]:
        journal.append(JOB, event)
    journal.close()

    def go(*words: str) -> tuple[int, str, str]:
        monkeypatch.setattr(sys, "argv", ["diagnose", *words])
        with pytest.raises(SystemExit) as end:
            main()
        out, err = capfd.readouterr()
        return int(end.value.code or 0), out, err

    return go


def test_on_the_screen_within_its_width(run: Any, monkeypatch: pytest.MonkeyPatch) -> None:
    code, out, err = run("report", JOB)
    assert (code, err) == (0, "")
    assert out.startswith("Service report\n")
    assert "This job is still open." in out
    monkeypatch.setenv("COLUMNS", "40")
    code, narrow, _ = run("--plain", "report", JOB, "--what", "parts")
    assert narrow.startswith("Parts list\n")
    assert max(map(len, narrow.splitlines())) <= 40


def test_to_a_file_once_and_over_it_only_when_told(run: Any, tmp_path: Path) -> None:
    file = tmp_path / "report.html"
    assert run("report", JOB, "--what", "parts", "--format", "html", "--out", "report.html") == (
        0,
        "",
        "Written to report.html.\n",
    )
    assert file.read_text("utf-8").startswith("<!DOCTYPE html>")
    code, _, err = run("report", JOB, "--format", "pdf", "--out", "report.html")
    assert code == 4
    assert "report.html is there already; name another file, or --force to write over it" in err
    assert file.read_text("utf-8").startswith("<!DOCTYPE html>")
    assert run("report", JOB, "--what", "parts", "--format", "pdf", "--out", "report.html", "--force")[0] == 0
    assert file.read_bytes().startswith(b"%PDF-")
    assert sorted(p.name for p in tmp_path.iterdir()) == ["home", "report.html"]


def test_markdown_in_spanish_and_in_other_units(run: Any) -> None:
    out = run("report", JOB, "--format", "md", "--lang", "es", "--units", "both")[1]
    assert out.startswith("# Informe de servicio\n")
    assert "172 °F (78 °C)" in out
    assert "Esta traducción todavía debe ser revisada por un hablante nativo del oficio." in out


def test_the_office_copy_and_its_schema(run: Any) -> None:
    copy = json.loads(run("report", JOB, "--what", "office", "--units", "si")[1])
    assert (copy["job"], copy["open"], copy["readings"][0]["values"][0]["unit"]) == (JOB, True, "°C")
    schema = json.loads(run("report", "--schema", "office")[1])
    assert set(schema["$defs"]["Office"]["properties"]) == set(copy)
    blocks = json.loads(run("report", JOB, "--what", "parts", "--format", "json")[1])["blocks"]
    assert blocks[0]["kind"] == "paragraph"


def test_a_pdf_without_its_library_names_the_remedy(run: Any, monkeypatch: pytest.MonkeyPatch) -> None:
    for module in [m for m in sys.modules if m.partition(".")[0] == "fpdf" or m.startswith("diagnose.report.")]:
        monkeypatch.delitem(sys.modules, module)
    monkeypatch.setitem(sys.modules, "fpdf", None)
    code, _, err = run("report", JOB, "--format", "pdf", "--out", "a.pdf")
    assert code == 4
    assert "PDF needs the library fpdf2" in err
    assert "--format html" in err


@pytest.mark.parametrize(
    ("words", "code", "says"),
    [
        ((), 2, "name a job; `diagnose jobs` lists them"),
        (("job-9",), 5, "no job 'job-9'; `diagnose jobs` lists them"),
        ((JOB, "--format", "pdf"), 2, "a PDF goes to a file; name it with --out"),
        ((JOB, "--what", "office", "--format", "md"), 2, "the office copy is JSON"),
        ((JOB, "--lang", "xx"), 2, "there are no texts in 'xx'; there are some in en, es"),
        ((JOB, "--what", "poem"), 2, "is not one of"),
        ((JOB, "--what", "parts", "--out", "nowhere/at/all/x.txt"), 4, "can't be written"),
    ],
)
def test_every_refusal_is_one_sentence_and_a_code(run: Any, words: tuple[str, ...], code: int, says: str) -> None:
    got, out, err = run("report", *words)
    assert (got, out) == (code, "")
    assert says in err
    assert err.count("\n") == 1


def test_what_is_offered_is_what_can_be_made() -> None:
    from diagnose.cli.report import report
    from diagnose.report import DOCUMENTS, FORMATS

    choices = {p.name: p.type.choices for p in report.params if hasattr(p.type, "choices")}
    assert set(choices["what"]) == {*DOCUMENTS, "office"}
    assert tuple(choices["form"]) == FORMATS
