"""A whole transcript with a new process after every answer: same questions, same end."""

from __future__ import annotations

from pathlib import Path

from diagnose.dialogue import run_job
from diagnose.job.folding import fold
from diagnose.job.journal import Journal
from diagnose.model import load_book
from diagnose.terminal import ScriptedFront
from tests.replay import CLOCK, JOB, parts_of

STORY = Path(__file__).resolve().parents[2] / "transcripts_demo" / "rinse_cold_one_element.txt"


def questions(lines: list[str]) -> list[str]:
    return [line.split("   ")[0] for line in lines if line.startswith("Question ") and " again: " not in line]


def test_a_job_dropped_after_every_answer_goes_on_at_the_same_question(tmp_path: Path) -> None:
    book = load_book()
    text = STORY.read_text("utf-8")
    ((_, answers),) = parts_of(text)
    asked = questions(text.splitlines())
    seen: list[str] = []
    for answer in answers:
        # Nothing is closed or said farewell: the journal is opened anew, as after a kill.
        journal = Journal(tmp_path / "journal.sqlite3", clock=lambda: CLOCK)
        front = ScriptedFront([answer])
        run_job(book, journal, tmp_path / "machines", front, JOB if seen else None, new_name=JOB)
        seen.append(questions(front.printed)[0])
        state = fold(journal.records(JOB), book)
        journal.close()
    # A letter that only shows something asks the same question again in a new process.
    assert [q for q, before in zip(seen, ["", *seen], strict=False) if q != before] == list(dict.fromkeys(asked))
    assert state.closed is not None
    assert state.closed.how == "repaired"
