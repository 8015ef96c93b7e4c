"""A machine's history in the conversation: a block at the beginning, a line at a check, a sentence after the answer."""

from __future__ import annotations

from pathlib import Path

import pytest

from diagnose.dialogue import run_job
from diagnose.job import events as ev
from diagnose.job.history import History, read_history
from diagnose.job.journal import Journal
from diagnose.job.machines import SavedMachine, save_machine
from diagnose.model import Book
from diagnose.terminal.scripted import ScriptedFront
from diagnose.view.layout import text_width
from diagnose.view.past import history_pages
from tests.small_job import STORY, small_book

OPENED = ev.Opened(machine="Bay 2", type="plain")
BEGUN = ["Bay 2", "0", "no water at the end", "", "2"]  # up to the ranking


@pytest.fixture(scope="module")
def book(tmp_path_factory: pytest.TempPathFactory) -> Book:
    return small_book(tmp_path_factory.mktemp("knowledge"))


class Shop:
    """A journal with a clock that is set, and a saved machine: all invented."""

    def __init__(self, folder: Path, book: Book) -> None:
        self.folder, self.book, self.day = folder, book, "2026-01-01"
        self.journal = Journal(folder / "j.sqlite3", clock=lambda: f"{self.day}T08:00:00+00:00")
        save_machine(folder / "machines", SavedMachine(name="Bay 2", type="plain", site="Pier Canteen, invented"))
        self.searched: list[str] = []
        search = self.journal.of_machine
        self.journal.of_machine = lambda name: (self.searched.append(name), search(name))[1]  # type: ignore[method-assign]

    def past(self, day: str, *events: ev.Event) -> None:
        self.day = day
        for event in events:
            self.journal.append(f"job-{day}", event)

    def talk(self, answers: list[str], columns: int = 80, job: str | None = None) -> str:
        self.day = "2026-09-01"
        front = ScriptedFront(answers, columns)
        run_job(self.book, self.journal, self.folder / "machines", front, job, new_name="job-now")
        assert all(text_width(line) <= columns for line in front.printed if not line.startswith("> "))
        return front.text

    def history(self) -> History:
        return read_history(self.journal, self.book, "Bay 2")


@pytest.fixture
def shop(tmp_path: Path, book: Book) -> Shop:
    return Shop(tmp_path, book)


def psi(value: float) -> ev.ReadingTaken:
    return ev.ReadingTaken("arm.pressure", {"": f"{value} psi"})


def flat(text: str) -> str:
    return " ".join(text.split())


def with_history(shop: Shop) -> Shop:
    handed = (psi(21), ev.ReadingTaken("box.where", outcome="nowhere"), ev.Closed("handed over"))
    shop.past("2020-03-02", ev.Opened(machine="Bay 2", type="plain", purpose="handover"), *handed)
    for year, value in ((2022, 19.0), (2023, 17.0), (2024, 15.0), (2025, 12.0)):
        end = [ev.Repaired("box.fuse", "as expected"), ev.Closed("repaired")] if year < 2024 else []
        shop.past(f"{year}-03-02", OPENED, ev.ComplaintSaid("steam_out"), psi(value), *end)
    return shop


def test_without_history_nothing_is_said_and_all_is_as_on_a_bare_type(shop: Shop) -> None:
    text = shop.talk([*BEGUN, "c pressure", "12"])
    assert "This machine" not in text
    assert "Was " not in text
    assert shop.searched == ["Bay 2"]


def test_a_bare_type_is_never_searched_for(shop: Shop) -> None:
    shop.talk(["2", "1", *STORY[2:]])
    assert shop.searched == []


@pytest.mark.parametrize("columns", [45, 80])
def test_a_job_begins_with_what_is_known_of_the_machine(shop: Shop, columns: int) -> None:
    text = with_history(shop).talk(BEGUN, columns)
    told = flat(text)
    assert "This machine: 4 jobs since its handover on 2020-03-02." in told
    assert "Came back: The fuse is blown, twice since 2022-03." in told
    assert "Drifts: Rinse pressure: falls about 2 psi a year: 21 psi at handover, 12 psi now." in told
    assert text.count("This machine") == 1
    assert text.index("This machine") < text.index("Before anything else")
    assert shop.searched == ["Bay 2"]


def test_it_is_said_once_and_i_says_it_again(shop: Shop) -> None:
    with_history(shop).talk(BEGUN)
    resumed = shop.talk(["i"], job="job-now")
    assert resumed.count("This machine") == 1
    assert resumed.index("Going on") < resumed.index("This machine")


def test_a_check_shows_the_baseline_and_its_answer_what_changed(shop: Shop) -> None:
    told = flat(with_history(shop).talk([*BEGUN, "c pressure", "12", "c where", "2"]))
    assert "At handover on 2020-03-02: 21 psi." in told
    assert "Was 21 psi at handover, is 12 psi now." in told
    assert "At handover on 2020-03-02: nowhere." in told
    assert 'Was "nowhere" at handover, is "at the ends" now.' in told
    assert told.count("Was ") == 2


def test_within_the_instruments_errors_nothing_has_changed(shop: Shop) -> None:
    told = flat(with_history(shop).talk([*BEGUN, "c pressure", "19"]))
    assert "At handover on 2020-03-02: 21 psi." in told
    assert "Was " not in told


def test_without_a_baseline_an_earlier_job_is_named(shop: Shop) -> None:
    shop.past("2025-05-01", OPENED, psi(21), ev.Closed("given up"))
    told = flat(shop.talk([*BEGUN, "c pressure", "12"]))
    assert "This machine: 1 job since 2025-05-01, no handover kept." in told
    assert "On 2025-05-01: 21 psi." in told
    assert "Was 21 psi on 2025-05-01, is 12 psi now." in told


def test_what_a_repair_has_changed_since_is_shown_as_such_and_not_compared(shop: Shop) -> None:
    shop.past("2025-05-01", OPENED, psi(8), ev.Repaired("arm.cracked", "as expected"), ev.Closed("repaired"))
    told = flat(shop.talk([*BEGUN, "c pressure", "20"]))
    assert "On 2025-05-01, before a repair: 8 psi." in told
    assert "Was " not in told


def test_history_moves_no_belief(shop: Shop, tmp_path: Path, book: Book) -> None:
    other = Shop(tmp_path / "other", book)
    answers = [*BEGUN, "c pressure", "12", "r"]

    def ranking(text: str) -> str:
        return text[text.rindex("Ranking") :].split("Question")[0]

    assert ranking(with_history(shop).talk(answers)) == ranking(other.talk(answers))


def test_the_job_in_hand_is_no_history_of_itself(shop: Shop) -> None:
    text = shop.talk(["2", "2", "Bay 9", "", "Pier Canteen, invented", "rest", "0", "no water at the end", "", "2"])
    assert "This machine" not in text
    assert "This machine" not in shop.talk(["c pressure", "12", "i"], job="job-now")


def test_a_name_given_late_brings_its_history(shop: Shop) -> None:
    told = flat(with_history(shop).talk(["2", "2", "bay 2", "b"]))
    assert "This machine: 4 jobs" in told


@pytest.mark.parametrize("width", [30, 45, 80])
def test_the_page_of_a_machine(shop: Shop, book: Book, width: int) -> None:
    shop.past("2019-05-01", OPENED, ev.ReadingTaken("old.check", outcome="x"), ev.Closed("given up"))
    lines = history_pages(with_history(shop).history(), book, width)
    assert all(text_width(line) <= width for line in lines)
    told = "".join("".join(lines).split())
    for part in (
        "Baseline: handed over on 2020-03-02 (job-2020-03-02), 2 checks read.",
        "2022-03-02 Steam comes out. Repaired: The fuse is blown. Repaired and proved (job-2022-03-02).",
        "2025-03-02 Steam comes out. Still open (job-2025-03-02).",
        "Rinse pressure: 21 psi at handover, 12 psi on 2025-03-02; 5 readings ^^-._",
        "Drifts: falls about 2 psi a year: 21 psi at handover, 12 psi now",
        "Looked at in one job only, which its report tells: 1.",
        "The fuse is blown: twice since 2022-03; look for why it comes back. It was overloaded.",
        "job-2019-05-01: old.check: this knowledge has no such check",
    ):
        assert "".join(part.split()) in told


def test_an_empty_page_says_so(book: Book) -> None:
    assert "No history yet" in history_pages(History("Bay 2"), book, 80)[0]
