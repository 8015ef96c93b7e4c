"""Whole programs without a terminal: answers piped in, plain text out, every way to leave, every character set."""

from __future__ import annotations

import os
import signal
import subprocess
import sys
import time
from pathlib import Path

import pytest

from diagnose.job.folding import fold
from diagnose.job.journal import Journal
from diagnose.model import load_book
from diagnose.view.exits import Exit
from tests.home import furnish
from tests.replay import JOB, parts_of

ROOT = Path(__file__).resolve().parents[2]
STORY = ROOT / "transcripts_demo" / "rinse_cold_one_element.txt"
BEGIN = ["two_tank_electric_208", "1", "Pier Canteen, invented", "0"]


def environment(home: Path, furnished: bool = True, **more: str) -> dict[str, str]:
    if furnished:
        furnish(home)
    kept = {k: v for k, v in os.environ.items() if k not in ("NO_COLOR", "FORCE_COLOR", "ACCESSIBLE", "TERM")}
    return {**kept, "DIAGNOSE_HOME": str(home), "PYTHONPATH": str(ROOT), "TERM": "xterm", **more}


def run(
    home: Path, answers: list[str], *words: str, furnished: bool = True, **more: str
) -> subprocess.CompletedProcess[bytes]:
    return subprocess.run(
        [sys.executable, "-m", "diagnose", *words],
        input="".join(a + "\n" for a in answers).encode(),
        capture_output=True,
        env=environment(home, furnished, **more),
        cwd=ROOT,
        timeout=120,
    )


def only_job(home: Path) -> str:
    journal = Journal(home / "journal.sqlite3")
    try:
        (entry,) = journal.jobs()
        return entry.job
    finally:
        journal.close()


def test_a_whole_job_runs_from_a_pipe_without_one_escape_byte(tmp_path: Path) -> None:
    text = STORY.read_text("utf-8")
    ((_, answers),) = parts_of(text)
    done = run(tmp_path, answers, furnished=False)
    assert done.returncode == Exit.OK
    assert done.stderr == b""
    assert len(list((tmp_path / "cache").glob("*.book"))) == 1  # compiled here, for the next start
    assert b"\x1b" not in done.stdout
    printed = done.stdout.decode().replace(only_job(tmp_path), JOB).splitlines()
    assert printed == [line for line in text.splitlines() if not line.startswith(("#", "$"))]


@pytest.mark.parametrize("charset", ["ascii", "cp437", "cp1252"])
def test_poor_character_sets_are_written_to(tmp_path: Path, charset: str) -> None:
    done = run(tmp_path, ["all", *BEGIN, "final rinse too cold", "", "", "", "", "", "", "r"], PYTHONIOENCODING=charset)
    assert done.returncode == Exit.PAUSED
    assert done.stderr == b""
    text = done.stdout.decode(charset)
    assert "Final rinse too cold" in text
    assert ("110 F water" if charset == "ascii" else "110 °F water") in " ".join(text.split())


def test_end_of_input_pauses_and_says_how_to_go_on(tmp_path: Path) -> None:
    done = run(tmp_path, BEGIN)
    assert done.returncode == Exit.PAUSED
    job = only_job(tmp_path)
    assert done.stdout.decode().endswith(f"Paused, saved. Resume with: diagnose resume {job}\n")
    again = run(tmp_path, [], "resume", job)
    assert "What does the kitchen complain of?" in again.stdout.decode()
    assert "Smell of gas?" in again.stdout.decode()


def test_nothing_is_kept_before_the_first_answer(tmp_path: Path) -> None:
    done = run(tmp_path, [])
    assert done.returncode == Exit.PAUSED
    assert "nothing is kept" in done.stdout.decode()


def test_resume_of_nothing_is_a_clear_sentence(tmp_path: Path) -> None:
    assert run(tmp_path, [], "resume").returncode == Exit.NO_SUCH_JOB
    done = run(tmp_path, [], "resume", "job-0000")
    assert done.returncode == Exit.NO_SUCH_JOB
    assert b"Traceback" not in done.stderr


def test_a_closed_job_stays_closed_unless_opened_on_purpose(tmp_path: Path) -> None:
    run(tmp_path, [*BEGIN[:3], "1"])
    job = only_job(tmp_path)
    done = run(tmp_path, ["1"], "resume", job)
    assert "is closed: stopped for safety" in done.stdout.decode()
    assert done.returncode == Exit.OK
    opened = run(tmp_path, ["2"], "resume", job)
    assert "Before anything else: is one of these so?" in opened.stdout.decode()


@pytest.mark.parametrize("name", ["SIGHUP", "SIGTERM", "SIGINT"])
def test_signals_pause(tmp_path: Path, name: str) -> None:
    process = _begun(tmp_path)
    process.send_signal(getattr(signal, name))
    out, err = process.communicate(timeout=30)
    assert process.returncode == Exit.PAUSED
    assert "Paused, saved." in out
    assert err == ""


def test_the_hold_ends_with_a_killed_process_and_its_answers_stand(tmp_path: Path) -> None:
    process = _begun(tmp_path)
    job = only_job(tmp_path)
    second = run(tmp_path, [], "resume", job)
    assert second.returncode == Exit.HELD
    assert str(process.pid).encode() in second.stderr
    process.kill()
    process.communicate(timeout=30)
    third = run(tmp_path, [], "resume", job)
    assert third.returncode == Exit.PAUSED
    assert "What does the kitchen complain of?" in third.stdout.decode()


def _begun(home: Path) -> subprocess.Popen[str]:
    process = subprocess.Popen(
        [sys.executable, "-m", "diagnose"],
        stdin=subprocess.PIPE,
        stdout=subprocess.PIPE,
        stderr=subprocess.PIPE,
        env=environment(home),
        cwd=ROOT,
        text=True,
    )
    assert process.stdin is not None
    assert process.stdout is not None
    process.stdin.write("".join(a + "\n" for a in BEGIN))
    process.stdin.flush()
    for line in process.stdout:
        if "What does the kitchen" in line:
            break
    time.sleep(0.3)  # until it waits for the answer
    return process


def test_kill_after_each_answer_goes_on_at_the_same_question(tmp_path: Path) -> None:
    """A whole transcript, killed for good after each answer: the journal alone leads to the same questions and end."""
    book = load_book()
    ((_, answers),) = parts_of((ROOT / "transcripts_demo" / "steam_out_exit_damper.txt").read_text("utf-8"))
    unbroken, broken = tmp_path / "unbroken", tmp_path / "broken"
    asked = _questions(run(unbroken, answers).stdout.decode())
    seen: list[str] = []
    for nth, answer in enumerate(answers):
        seen += _until_killed(broken, answer, ["resume"] if nth else [])
    assert list(dict.fromkeys(seen)) == list(dict.fromkeys(asked))
    assert _state(broken, book) == _state(unbroken, book)


def _until_killed(home: Path, answer: str, words: list[str]) -> list[str]:
    """Answer one question, kill the process when the answer is on disk, and return the question."""
    process = subprocess.Popen(
        [sys.executable, "-m", "diagnose", *words],
        stdin=subprocess.PIPE,
        stdout=subprocess.PIPE,
        env=environment(home),
        cwd=ROOT,
        text=True,
    )
    assert process.stdin is not None
    assert process.stdout is not None
    process.stdin.write(answer + "\n")
    process.stdin.flush()
    lines = []
    while True:
        line = process.stdout.readline()
        lines.append(line.rstrip("\n"))
        if line.startswith("> " if answer else ">"):
            break
    # The next question comes only when the answer is on disk: kill as soon as any of it is there.
    process.stdout.readline()
    process.stdout.readline()
    process.kill()
    process.communicate()
    return _questions("\n".join(lines))[-1:]


def _questions(text: str) -> list[str]:
    lines = [line for line in text.splitlines() if line.startswith("Question ") and " again: " not in line]
    return [line.split("   ")[0] for line in lines]


def _state(home: Path, book: object) -> object:
    journal = Journal(home / "journal.sqlite3")
    try:
        (entry,) = journal.jobs()
        return fold(journal.records(entry.job), book)  # type: ignore[arg-type]
    finally:
        journal.close()
