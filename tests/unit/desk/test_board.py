"""The board on the terminal: pages, letters, words; one keystroke follows; nothing that is typed is lost."""

from __future__ import annotations

import json
import sys
from collections.abc import Callable, Iterator, Sequence
from pathlib import Path
from typing import Any

import pytest
from prompt_toolkit.input import create_pipe_input
from prompt_toolkit.output import DummyOutput

from diagnose.desk.board import PAGE, Board, board_once
from diagnose.desk.board_filters import Wanted
from diagnose.desk.board_json import board_json
from diagnose.desk.board_leading import Lead, Leading
from diagnose.desk.board_lines import Place, board_lines, head_line, help_lines, keys_lines
from diagnose.desk.open_jobs import OpenJob, OpenJobs
from diagnose.job import events as ev
from diagnose.job.journal import Journal
from diagnose.model import Book
from diagnose.terminal import Paused, PlainFront, ScriptedFront
from diagnose.terminal.live import LiveFront
from diagnose.view import board_words as words
from diagnose.view.layout import text_width
from tests.desk_jobs import NOW, fill, opened, write
from tests.report_job import HOSTILE
from tests.small_job import small_book


@pytest.fixture(scope="module")
def book(tmp_path_factory: pytest.TempPathFactory) -> Book:
    return small_book(tmp_path_factory.mktemp("small"))


@pytest.fixture
def path(tmp_path: Path) -> Path:
    return fill(tmp_path / "journal.sqlite3")


@pytest.fixture
def pipe() -> Iterator[Any]:
    with create_pipe_input() as made:
        yield made


def many(path: Path, count: int) -> Path:
    for nth in range(count):
        write(path, f"job-{3001 + nth}", (opened(f"Site {nth}, invented"),), 200 - nth)
    return path


def play(
    book: Book, path: Path, answers: Sequence[str], columns: int = 80, follow: Callable[[str], None] = lambda _: None
) -> ScriptedFront:
    front = ScriptedFront(answers, columns)
    Board(book, Journal(path, "desk-1"), Leading(book), front, follow, clock=lambda: NOW).run()
    return front


def rows_of(path: Path, book: Book) -> list[tuple[OpenJob, Lead]]:
    jobs = OpenJobs(Journal(path, "desk-1"), book)
    return board_once(jobs, Leading(book), Wanted(), "touched", lambda: NOW)[0]


def test_the_board_whole(path: Path, book: Book) -> None:
    rows = rows_of(path, book)
    lines = [str(line) for line in board_lines(rows, NOW, 80)]
    assert lines[:5] == [
        "     begun  idle   job       where                      waits for",
        "  1  30 h   29 h   job-1001  Quay Street, invented      technician at work",
        "     Steam comes out: 92 % The fuse is blown",
        "  2  9 h    9 h    job-1009  machine not known yet      can't be read",
        "     machine type 'no such type' is not in this knowledge; use the knowledge it",
    ]
    assert "  6  4 h    3 h    job-1004  Quay Street, invented      on the telephone: Maria" in lines


@pytest.mark.parametrize("columns", [20, 30, 45, 59, 60, 72, 80])
def test_nothing_is_wider_than_the_screen(path: Path, book: Book, columns: int) -> None:
    write(path, "job-" + "9" * 60, (opened("A very long name of a site, " * 5, "W" * 80), ev.Present("N" * 80)))
    for nth, text in enumerate(HOSTILE):
        write(path, f"job-h{nth}", (opened(text, text), ev.SafetyAnswered(), ev.HandedOn("parts", text)))
    rows = rows_of(path, book)
    lines = [*head_line(Place(1, len(rows), len(rows), words="x" * 300), len(rows), columns)]
    lines += [*board_lines(rows, NOW, columns), *keys_lines(columns), *help_lines(columns)]
    assert max(text_width(line) for line in lines) <= columns
    assert all(sign.isprintable() for line in lines for sign in line)


def test_narrow_screens_get_a_record_for_each_job(path: Path, book: Book) -> None:
    text = "\n".join(board_lines(rows_of(path, book), NOW, 45))
    assert (
        "7 job-1003; begun 3 h, idle 2 h\n"
        "site: Town Hall, invented\n"
        "machine: Pier\n"
        "Steam comes out\n"
        "leads: 47 % The fuse is blown\n"
        "waits for: parts: fuse on order"
    ) in text


def test_a_clock_that_is_ahead_is_said(tmp_path: Path, book: Book) -> None:
    write(tmp_path / "j", "job-1", (opened(),), -3)
    assert f"1  {words.AHEAD} {words.AHEAD} job-1" in str(board_lines(rows_of(tmp_path / "j", book), NOW, 80)[1])


def test_the_json_keeps_its_keys(path: Path, book: Book) -> None:
    told = json.loads(board_json(rows_of(path, book), NOW))
    assert list(told) == ["schema", "jobs"]
    assert told["schema"] == 1
    by_name = {job["job"]: job for job in told["jobs"]}
    first = by_name["job-1003"]
    probability = first["leading"].pop("probability")
    assert 0.0 < probability < 1.0
    assert first == {
        "job": "job-1003",
        "purpose": "repair",
        "begun": "2026-03-04T09:00:00+00:00",
        "touched": "2026-03-04T09:04:00+00:00",
        "age_minutes": 180.0,
        "idle_minutes": 176.0,
        "site": "Town Hall, invented",
        "machine": "Pier",
        "type": first["type"],
        "complaints": [{"id": "steam_out", "title": "Steam comes out"}],
        "leading": {"id": first["leading"]["id"], "title": first["leading"]["title"], "kind": first["leading"]["kind"]},
        "waiting": {"on": "parts", "why": "handed on", "who": "", "text": "fuse on order"},
        "trouble": "",
    }
    assert by_name["job-1006"]["leading"] is None
    assert "no such type" in by_name["job-1009"]["trouble"]


class TestTyped:
    def test_a_digit_follows_the_job_with_that_number(self, path: Path, book: Book) -> None:
        followed: list[str] = []
        front = play(book, path, ["3", "1", "p"], follow=followed.append)
        assert followed == ["job-1008", "job-1001"]
        assert front.text.count("Open jobs 1-8 of 8") == 3

    def test_pages_of_nine(self, tmp_path: Path, book: Book) -> None:
        followed: list[str] = []
        front = play(
            book,
            many(tmp_path / "j", 20),
            ["0", "9", "0", "3", "2", "0", "b", "0", "b", "b", "p"],
            follow=followed.append,
        )
        heads = [line.split(";")[0] for line in front.printed if line.startswith("Open jobs")]
        assert PAGE == 9
        assert heads == [
            f"Open jobs {part} of 20" for part in ("1-9", "10-18", "10-18", "19-20", "19-20", "1-9", "10-18", "1-9")
        ]
        assert followed == ["job-3018", "job-3020"]
        assert words.NO_NUMBER.format(last=2) in front.printed
        assert words.NO_BEFORE in front.printed

    @pytest.mark.parametrize("rows", [12, 16, 24])
    def test_a_page_is_no_higher_than_the_screen(self, tmp_path: Path, book: Book, rows: int) -> None:
        followed: list[str] = []
        front = ScriptedFront(["0", "1", "p"])
        front.height = rows
        journal = Journal(many(tmp_path / "j", 20), "desk-1")
        Board(book, journal, Leading(book), front, followed.append, clock=lambda: NOW).run()
        pages = "\n".join(front.printed).split("\n>")[:-1]
        assert all(page.count("\n") < rows for page in pages)
        shown = int(next(line for line in front.printed if line.startswith("Open jobs 1-")).split("-")[1].split()[0])
        assert shown == {12: 3, 16: 5, 24: 9}[rows]
        assert followed == [f"job-{3001 + shown}"]

    def test_words_look_for_jobs_and_back_shows_all(self, path: Path, book: Book) -> None:
        front = play(book, path, ["maria", "b", "/1003", "/", "nowhere", "p"])
        heads = [line for line in front.printed if line.startswith("Open jobs") or line == words.NONE_FIT]
        assert [head.split(";")[0] for head in heads] == [
            "Open jobs 1-8 of 8",
            "Open jobs 1 of 1",
            "Open jobs 1-8 of 8",
            "Open jobs 1 of 1",
            "Open jobs 1-8 of 8",
            words.NONE_FIT,
        ]
        assert 'with "maria"; 8 open' in front.text

    def test_letters_mean_what_they_mean_everywhere(self, path: Path, book: Book) -> None:
        front = play(book, path, ["h", "?", "quit", "never asked"])
        assert front.text.count("this list") == 2
        assert play(book, path, ["s", "w", "p"]).text.count("That does not apply") == 2
        assert play(book, path, []).text  # the end of input leaves too

    def test_enter_shows_what_came_meanwhile(self, path: Path, book: Book) -> None:
        class Meanwhile(ScriptedFront):
            def ask(self, *given: Any, **more: Any) -> str:
                write(path, "job-1002", (ev.HandedOn("kitchen", "calls back"),))
                return super().ask()

        front = Meanwhile(["", "p"])
        Board(book, Journal(path, "desk-1"), Leading(book), front, lambda _: None, clock=lambda: NOW).run()
        before, after = front.text.split("Open jobs")[1:]
        assert "kitchen: calls back" not in before
        assert "kitchen: calls back" in after

    def test_an_empty_journal(self, tmp_path: Path, book: Book) -> None:
        front = play(book, tmp_path / "j", ["1", "p"])
        assert front.printed.count(words.NO_JOBS) == 2


class TestOneKeystroke:
    def live(self, pipe: Any, guard: float = 0.0) -> LiveFront:
        return LiveFront(False, guard, pipe, DummyOutput(), lambda: 0.0)

    def test_a_digit_answers_at_once(self, pipe: Any) -> None:
        pipe.send_text("3")
        assert self.live(pipe).ask(at_once="123") == "3"

    @pytest.mark.parametrize(("typed", "answer"), [("4\r", "4"), ("quay 3\r", "quay 3"), ("/3\r", "/3"), ("\r", "")])
    def test_anything_else_needs_enter(self, pipe: Any, typed: str, answer: str) -> None:
        pipe.send_text(typed)
        assert self.live(pipe).ask(at_once="123") == answer

    def test_an_emptied_line_is_empty_again(self, pipe: Any) -> None:
        pipe.send_text("ab\x7f\x7f2")
        assert self.live(pipe).ask(at_once="123") == "2"

    def test_the_next_question_takes_no_digit_at_once(self, pipe: Any) -> None:
        front = self.live(pipe)
        pipe.send_text("1")
        assert front.ask(at_once="123") == "1"
        pipe.send_text("12\r")
        assert front.ask() == "12"

    def test_a_shaking_hand_follows_once(self, pipe: Any) -> None:
        front = self.live(pipe, guard=0.3)
        pipe.send_text("1")
        assert front.ask(at_once="123") == "1"
        pipe.send_text("1\x04")
        with pytest.raises(Paused):
            front.ask(at_once="123")

    def test_a_notice_is_shown_beside_what_is_typed(self, pipe: Any) -> None:
        asked: list[bool] = []

        def notice() -> str:
            asked.append(True)
            return words.CHANGED

        pipe.send_text("quay\r")
        assert self.live(pipe).ask(notice=notice) == "quay"
        assert asked

    def test_other_fronts_take_a_line(self) -> None:
        import io

        assert PlainFront(80, io.StringIO("3\n"), io.StringIO()).ask(at_once="123") == "3"
        assert ScriptedFront(["3"]).ask(at_once="123") == "3"


class TestCommand:
    @pytest.fixture
    def run(self, path: Path, monkeypatch: pytest.MonkeyPatch, capfd: pytest.CaptureFixture[str], book: Book) -> Any:
        from diagnose.cli import main
        from diagnose.cli.kit import Setup

        monkeypatch.setenv("DIAGNOSE_HOME", str(path.parent))
        monkeypatch.setattr(Setup, "book", lambda self: book)

        def go(*said: str) -> tuple[int, str, str]:
            monkeypatch.setattr(sys, "argv", ["diagnose", "desk", "board", *said])
            with pytest.raises(SystemExit) as end:
                main()
            out, err = capfd.readouterr()
            return int(end.value.code or 0), out, err

        return go

    def test_through_a_pipe_it_is_printed_once(self, run: Any) -> None:
        code, out, err = run()
        assert (code, err) == (0, "")
        assert out.startswith("Open jobs 1-8 of 8; touched longest ago first\n")
        assert max(len(line) for line in out.splitlines()) <= 80
        assert "\x1b" not in out
        assert run()[1] == out  # what leads is kept by now

    def test_filters_and_json(self, run: Any) -> None:
        jobs = json.loads(run("--json", "--waiting", "parts")[1])["jobs"]
        assert [job["job"] for job in jobs] == ["job-1003"]
        assert "job-1002" in run("--site", "mill")[1]
        assert run("--complaint", "like a sauna", "--older", "1h")[0] == 0
        assert run("--site", "nowhere")[1] == f"{words.NONE_FIT}\n"

    @pytest.mark.parametrize(
        ("said", "code", "sentence"),
        [
            (("--older", "soon"), 2, "'soon' is no length of time; say it like 30min, 2h or 3d"),
            (("--complaint", "qqq"), 1, "no one complaint is 'qqq'"),
            (("--waiting", "godot"), 2, "is not one of"),
            (("--sort", "colour"), 2, "is not one of"),
        ],
    )
    def test_what_cant_be_meant_is_refused(self, run: Any, said: tuple[str, ...], code: int, sentence: str) -> None:
        got, out, err = run(*said)
        assert (got, out) == (code, "")
        assert sentence in err
