"""The pages of the desk in a real browser: they bring themselves up to date, ask nobody else, and bar nobody."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

import pytest

from diagnose.desk.web.gate import Gate
from diagnose.job import events as ev
from diagnose.model import Book
from diagnose.view import board_words as words
from tests.browser import Browser, Page, chromium
from tests.desk_jobs import fill, opened, write
from tests.desk_server import TOKEN, Site, served
from tests.report_job import HOSTILE, hostile_job
from tests.small_job import small_book

pytestmark = pytest.mark.skipif(chromium() is None, reason="no chromium is installed on this computer")

ATTACK = f"{HOSTILE[0]}<img src=x onerror=alert(2)><svg onload=alert(3)> {' '.join(HOSTILE[1:])}"


@pytest.fixture(scope="module")
def book(tmp_path_factory: pytest.TempPathFactory) -> Book:
    return small_book(tmp_path_factory.mktemp("small"))


@pytest.fixture(scope="module")
def journal(tmp_path_factory: pytest.TempPathFactory) -> Path:
    path = fill(tmp_path_factory.mktemp("jobs") / "journal.sqlite3")
    write(path, "job-1900", hostile_job(ATTACK)[:-1], 1, None)
    for nth in range(20):
        write(path, f"job-{1100 + nth}", (opened(f"Site {nth}, invented"),), 100 + nth)
    return path


@pytest.fixture(scope="module")
def site(book: Book, journal: Path) -> Iterator[Site]:
    with served(book, journal, Gate(TOKEN)) as served_here:
        yield served_here


@pytest.fixture(scope="module")
def browser(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Browser]:
    with Browser(chromium() or "", tmp_path_factory.mktemp("profile")) as started:
        yield started


@pytest.fixture
def page(browser: Browser, site: Site) -> Iterator[Page]:
    """A page that is logged in; in the end it must have asked nobody but this server, and found nothing wrong."""
    page = browser.page()
    log_in(page, site)
    yield page
    elsewhere = [address for address in page.requests if not address.startswith(f"{site.address}/")]
    assert elsewhere == []
    assert page.complaints == []
    page.close()


def log_in(page: Page, site: Site) -> None:
    page.go(f"{site.address}/")
    page.run("document.getElementById('token').focus()")
    page.type(TOKEN, enter=True)
    assert page.run("location.pathname") == "/"


def test_a_wrong_token_is_refused_and_the_right_one_opens(browser: Browser, site: Site) -> None:
    page = browser.page(390)
    page.go(f"{site.address}/job/job-1001")
    assert page.run("location.pathname") == "/login"
    assert page.barred() == []
    page.run("document.getElementById('token').focus()")
    page.type("wrong", enter=True)
    assert words.LOGIN_WRONG in page.run("document.body.textContent")
    assert page.run("document.cookie") == ""
    assert page.barred() == []
    page.run("document.getElementById('token').focus()")
    page.type(TOKEN, enter=True)
    assert page.run("location.pathname") == "/job/job-1001"
    assert page.run("document.cookie") == ""  # it is there, but no script can read it
    assert TOKEN not in " ".join(page.requests)
    page.close()


def test_the_board_brings_itself_up_to_date(page: Page, journal: Path) -> None:
    """Without a new load: what is typed, the focus and the place on the page stay."""
    page.until("document.getElementById('live').textContent.includes('up to date')")
    page.run("window.before = 'still the same page'")
    page.run("document.getElementById('words').focus()")
    page.type("invented")
    write(journal, "job-1002", (ev.HandedOn("kitchen", "they call back at four"),))
    page.until("document.getElementById('part').textContent.includes('they call back at four')")
    assert page.run("window.before") == "still the same page"
    assert page.run("document.activeElement.id") == "words"
    assert page.run("document.activeElement.value") == "invented"
    rows = "[...document.querySelectorAll('tr[data-said]')]"
    assert page.run(f"{rows}.every((row) => row.hidden !== row.dataset.said.includes('invented'))")
    assert page.run(f"{rows}.some((row) => row.hidden)")

    link = "document.querySelector('a[href=\"/job/job-1003\"]')"
    page.run(f"{link}.focus()")
    page.run("window.scrollTo(0, document.body.scrollHeight)")
    top = page.run(f"{link}.getBoundingClientRect().top")
    write(journal, "job-1200", (opened("A new site, invented"),), 500)  # a row above all others
    page.until("document.getElementById('part').textContent.includes('A new site')")
    assert page.run(f"document.activeElement === {link}")
    assert abs(page.run(f"{link}.getBoundingClientRect().top") - top) < 2


def test_words_hide_rows_and_the_count_says_so(page: Page) -> None:
    page.run("document.getElementById('words').focus()")
    page.type("maria")
    shown = "[...document.querySelectorAll('tr[data-said]')].filter((row) => !row.hidden).map((row) => row.id).length"
    assert page.run(shown) == 1
    page.until("/^1 of \\d+ open jobs shown$/.test(document.getElementById('news').textContent)")
    assert page.run("location.search") == "?words=maria"
    page.go(page.run("location.href"))
    page.until("document.querySelectorAll('tr[data-said]').length > 1")
    assert page.run(shown) == 1


def test_a_job_brings_itself_up_to_date_and_says_so_once(page: Page, site: Site, journal: Path) -> None:
    page.go(f"{site.address}/job/job-1001")
    page.until("document.getElementById('live').textContent.includes('up to date')")
    page.run("document.querySelector('#known').marked = true")
    write(journal, "job-1001", (ev.NoteAdded("The neutral was loose."),))
    page.until("document.getElementById('known').textContent.includes('The neutral was loose.')")
    assert page.run("document.querySelector('#known').marked") is True
    assert page.run("document.getElementById('news').textContent") == "This page changed."


def test_what_people_wrote_is_shown_and_never_run(page: Page, site: Site) -> None:
    for path in ("/", "/job/job-1900"):
        page.resize(390)
        page.go(f"{site.address}{path}")
        page.run("document.querySelectorAll('details').forEach((each) => { each.open = true; })")
        assert page.too_wide == 0
        assert page.run("document.querySelectorAll('main img, main svg, main b, main script').length") == 0
    assert "<script>alert(1)</script><b>bold</b>" in page.run("document.body.textContent")


@pytest.mark.parametrize("dark", [False, True], ids=["light", "dark"])
@pytest.mark.parametrize("width", [320, 390, 1280])
def test_nobody_is_barred_and_nothing_is_too_wide(page: Page, site: Site, width: int, dark: bool) -> None:
    page.resize(width)
    page.colours(dark)
    for path in ("/", "/job/job-1001", "/job/job-1900"):
        page.go(f"{site.address}{path}")
        assert page.too_wide == 0, path
        if width != 320:
            assert page.barred() == [], path


def test_a_page_that_is_not_there_bars_nobody_either(browser: Browser, site: Site) -> None:
    page = browser.page(390)
    log_in(page, site)
    page.go(f"{site.address}/nowhere")
    assert (page.too_wide, page.barred()) == (0, [])
    page.close()


def test_without_scripts_all_is_there(page: Page, site: Site) -> None:
    page.scripts(False)
    page.go(f"{site.address}/?words=maria")
    assert page.html().count('<tr role="row" id=') == 1
    assert words.RELOAD in page.html()
    page.go(f"{site.address}/job/job-1001")
    assert "The fuse is blown" in page.html()
    page.scripts(True)


def test_on_paper(page: Page, site: Site) -> None:
    page.resize(700)
    page.colours(True, "print")
    page.go(f"{site.address}/")
    assert page.too_wide == 0
    assert page.run("getComputedStyle(document.querySelector('.filter')).display") == "none"
    assert page.run("getComputedStyle(document.body).backgroundColor") == "rgb(255, 255, 255)"


def test_logged_out_elsewhere_the_page_goes_by_itself(browser: Browser, site: Site) -> None:
    page = browser.page()
    log_in(page, site)
    page.until("document.getElementById('live').textContent.includes('up to date')")
    page.run("void fetch('/logout', { method: 'POST', redirect: 'manual' })")
    page.until("location.pathname === '/login'")
    assert page.run("document.querySelectorAll('tr').length") == 0
    page.close()
