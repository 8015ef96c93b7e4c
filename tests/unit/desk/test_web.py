"""The pages as they are served: nothing without a session, what anybody wrote is text, changes arrive by themselves."""

from __future__ import annotations

import html
import re
import time
from collections.abc import Iterator
from pathlib import Path
from urllib.parse import quote

import pytest

from diagnose.desk.web.gate import Gate
from diagnose.desk.web.pages import STATIC, job_path
from diagnose.desk.web.shield import HEADERS
from diagnose.job import events as ev
from diagnose.job.journal import Journal
from diagnose.model import Book
from diagnose.view import board_words as words
from tests.desk_jobs import fill, opened, write
from tests.desk_server import TOKEN, Site, served
from tests.report_job import HOSTILE, hostile_job
from tests.small_job import small_book
from tests.unit.report.test_html import Page

INSIDE = ("/", "/?words=x&sort=site", "/job/job-1001", "/job/none", "/part/board", "/part/job/job-1001", "/events")
STRANGE = "job/../<b>&\"'%2f?#\u202e \x07"


@pytest.fixture(scope="module")
def book(tmp_path_factory: pytest.TempPathFactory) -> Book:
    return small_book(tmp_path_factory.mktemp("small"))


@pytest.fixture(scope="module")
def journal(tmp_path_factory: pytest.TempPathFactory) -> Path:
    path = fill(tmp_path_factory.mktemp("jobs") / "journal.sqlite3")
    for nth, text in enumerate((*HOSTILE, "w" * 100_000)):  # by the journal itself, so that nothing is cut short
        write(path, f"job-h{nth}", hostile_job(text)[:-1], 1, None)
    write(path, STRANGE, (opened("Odd Street, invented"), ev.NoteAdded("a strange name")), 1)
    return path


@pytest.fixture(scope="module")
def shared(book: Book, journal: Path) -> Iterator[Site]:
    with served(book, journal) as site:
        yield site


@pytest.fixture
def site(shared: Site) -> Iterator[Site]:
    shared.log_in()
    yield shared
    shared.cookie = ""


@pytest.fixture
def stranger(shared: Site) -> Site:
    shared.cookie = ""
    return shared


class TestWithoutASession:
    @pytest.mark.parametrize("path", INSIDE)
    @pytest.mark.parametrize("cookie", ["", "desk-{port}=guess", "other=1", "desk-{port}="])
    def test_nothing_is_shown(self, stranger: Site, path: str, cookie: str) -> None:
        told = {"Cookie": cookie.format(port=stranger.port)} if cookie else {}
        answer = stranger.ask(path, **told)
        page = path.startswith(("/job/", "/?")) or path == "/"
        assert answer.status == (303 if page else 401)
        assert "Quay" not in answer.text
        assert answer.cookies() == []
        if page:
            assert answer.headers["location"].startswith("/login")

    def test_the_way_back_after_the_login_is_a_page_of_ours(self, stranger: Site) -> None:
        assert stranger.ask("/job/job-1001").headers["location"] == "/login?to=%2Fjob%2Fjob-1001"
        good = stranger.ask("/login", {"token": TOKEN, "to": "/job/job-1001"})
        assert good.headers["location"] == "/job/job-1001"
        for bad in (
            "//elsewhere.invalid",
            "https://elsewhere.invalid",
            "/\\elsewhere",
            "/job/\\x",
            "/events",
            "/job/\r\nx",
        ):
            assert stranger.ask("/login", {"token": TOKEN, "to": bad}).headers["location"] == "/"
            assert "elsewhere" not in stranger.ask(f"/login?to={quote(bad)}").text

    def test_login_page_and_its_files_are_all_there_is(self, stranger: Site) -> None:
        page = stranger.ask("/login")
        assert page.status == 200
        assert page.cookies() == []
        for name, (content, kind) in STATIC.items():
            answer = stranger.ask(f"/static/{name}")
            assert answer.text == content.decode()
            assert answer.headers["content-type"].startswith(kind)
        for odd in (
            "/static/../app.py",
            "/static/%2e%2e/app.py",
            "/static/app.py",
            "/static/",
            "/docs",
            "/openapi.json",
        ):
            assert stranger.ask(odd).status == 404


class TestLogin:
    def test_a_right_token_opens_a_session_in_a_cookie_that_scripts_cant_read(self, stranger: Site) -> None:
        answer = stranger.ask("/login", {"token": TOKEN})
        assert (answer.status, answer.headers["location"]) == (303, "/")
        (cookie,) = answer.cookies()
        name, value = cookie.partition(";")[0].split("=", 1)
        assert name == f"desk-{stranger.port}"
        assert len(value) >= 40
        assert TOKEN not in cookie
        assert {part.strip().casefold() for part in cookie.split(";")[1:]} == {"httponly", "path=/", "samesite=strict"}
        assert stranger.ask("/", Cookie=f"{name}={value}").status == 200

    def test_with_a_certificate_the_cookie_never_travels_without(self, book: Book, journal: Path) -> None:
        with served(book, journal, secure=True) as site:
            assert "; Secure" in site.ask("/login", {"token": TOKEN}).cookies()[0]

    def test_a_wrong_token_is_refused_and_slowed_down(self, book: Book, journal: Path) -> None:
        now = [100.0]
        with served(book, journal, Gate(TOKEN, lambda: now[0])) as site:
            for _ in range(3):
                answer = site.ask("/login", {"token": "wrong"})
                assert (answer.status, answer.cookies()) == (403, [])
                assert words.LOGIN_WRONG in html.unescape(answer.text)
            answer = site.ask("/login", {"token": TOKEN})
            assert (answer.status, answer.headers["retry-after"], answer.cookies()) == (429, "1", [])
            now[0] += 1.0
            assert site.ask("/login", {"token": TOKEN}).status == 303

    def test_a_form_of_another_page_is_refused_and_counts_for_nothing(self, stranger: Site) -> None:
        for told in (
            {"Origin": "http://elsewhere.invalid"},
            {"Sec-Fetch-Site": "cross-site"},
            {"Sec-Fetch-Site": "same-site"},
        ):
            for _ in range(4):
                assert stranger.ask("/login", {"token": "wrong"}, **told).status == 403
        assert stranger.gate.wait() == 0.0
        for told in (
            {"Origin": stranger.address},
            {"Origin": "null"},
            {"Origin": "null", "Sec-Fetch-Site": "same-origin"},
        ):
            assert stranger.ask("/login", {"token": TOKEN}, **told).status == 303

    @pytest.mark.parametrize(
        "body", [b"token=" + b"x" * 10_000, b"&&&=", b"\xff\xfe", b"a=1&" * 200 + b"a=1", b"token"]
    )
    def test_what_is_no_form_is_refused(self, stranger: Site, body: bytes) -> None:
        assert stranger.ask("/login", body).status in (400, 413)

    def test_logging_out_ends_the_session_here_and_in_the_browser(self, site: Site) -> None:
        assert site.ask("/logout").status == 405
        assert site.ask("/logout", {}, Origin="http://elsewhere.invalid").status == 403
        assert site.ask("/").status == 200
        answer = site.ask("/logout", {})
        assert answer.status == 303
        assert "max-age=0" in answer.cookies()[0].casefold()
        assert site.ask("/").status == 303
        assert words.LOGGED_OUT in site.ask("/login?out").text


class TestEveryAnswer:
    @pytest.mark.parametrize("path", [*INSIDE[:-1], "/login", "/static/desk.js", "/nowhere", "/logout"])
    def test_its_headers_shut_everything_else_out(self, site: Site, path: str) -> None:
        answer = site.ask(path)
        for name, value in HEADERS.items():
            assert answer.headers.get_all(name) == [value]
        assert "server" not in answer.headers
        policy = answer.headers["content-security-policy"]
        assert policy.startswith("default-src 'none'; script-src 'self'; style-src 'self'; connect-src 'self'; ")
        assert "unsafe" not in policy

    @pytest.mark.parametrize(
        "host", ["elsewhere.invalid", "elsewhere.invalid:{port}", "127.0.0.1.invalid", "", "localhost:x"]
    )
    def test_it_answers_to_its_own_names_only(self, site: Site, host: str) -> None:
        answer = site.ask("/", Host=host.format(port=site.port))
        assert answer.status in (400, 421)
        assert "Quay" not in answer.text

    @pytest.mark.parametrize("host", ["localhost:{port}", "[::1]:{port}", "127.0.0.1"])
    def test_loopback_names_are_its_own(self, site: Site, host: str) -> None:
        assert site.ask("/", Host=host.format(port=site.port)).status == 200

    @pytest.mark.parametrize("path", ["/", "/job/job-1001", "/part/board", "/events", "/static/desk.css"])
    @pytest.mark.parametrize("method", ["POST", "PUT", "DELETE", "PATCH", "OPTIONS"])
    def test_nothing_can_be_changed(self, site: Site, path: str, method: str) -> None:
        assert site.ask(path, method=method).status == 405

    @pytest.mark.parametrize(
        "path",
        [
            "/job/",
            "/job/none",
            "/job/..",
            "/job/%00",
            "/job/%ff",
            "/job/" + "x" * 3000,
            "/part/job/none",
            "//",
            "/JOB/job-1001",
        ],
    )
    def test_what_is_not_there_is_a_page_that_says_so(self, site: Site, path: str) -> None:
        answer = site.ask(path)
        assert answer.status == 404
        assert words.NOT_FOUND in answer.text
        Page(answer.text)


class TestPages:
    def test_the_board_has_every_open_job(self, site: Site) -> None:
        page = site.ask("/").text
        for job in ("job-1001", "job-1002", "job-1003", "job-1004", "job-1005", "job-1006", "job-1008", "job-1009"):
            assert f'href="/job/{job}"' in page
        assert "job-1007" not in page
        assert "parts: fuse on order" in page
        assert "no such type" in page

    def test_words_and_order_work_without_scripts(self, site: Site) -> None:
        page = site.ask("/?words=MARIA+steam&sort=site").text
        assert re.findall(r'href="/job/([^"]+)"', page) == ["job-1004"]
        assert 'value="MARIA steam"' in page
        assert '<option value="site" selected>' in page
        assert words.NONE_FIT in site.ask("/?words=%3Cscript%3E%22nowhere&sort=%22%3E").text

    def test_a_job_from_head_to_course(self, site: Site) -> None:
        page = site.ask("/job/job-1001").text
        sections = re.findall(r'<section id="(\w+)"', page)
        assert sections == ["now", "next", "ranking", "known", "course"]
        for told in ("Quay Street, invented", "Steam comes out", "The fuse is blown", "20 V with my meter", "A 17"):
            assert told in page
        assert "The fuse holder is brown." in page
        assert "could be reached" not in page
        assert "Cautions read and typed (LIVE PARTS) before: Volts at the fuse" in html.unescape(page)

    def test_what_is_next_has_its_caution_before_it(self, site: Site, book: Book, journal: Path) -> None:
        told = (opened(), ev.SafetyAnswered(), ev.ComplaintSaid("steam_out"), ev.StepDone("complaints"))
        told = (*told, ev.MachineDescribed("site"), ev.ContextGiven("age"), ev.TurnedTo("check", "box.volts"))
        write(journal, "job-1010", told, 1)
        page = html.unescape(site.ask("/job/job-1010").text)
        caution, asked = page.index("LIVE PARTS. One hand."), page.index("Question 8: Volts at the fuse")
        assert caution < asked < page.index("types LIVE")

    def test_danger_calls_and_hints(self, site: Site) -> None:
        assert "Smell of gas? Everybody out." in site.ask("/job/job-1006").text
        assert "on the telephone: Maria" in site.ask("/job/job-1004").text
        hint = site.ask("/job/job-1005").text
        assert "Where it steams. look behind it" in hint
        assert '<span class="state">waits</span>' in hint

    def test_answers_given_twice_are_beside_each_other(self, site: Site, journal: Path) -> None:
        write(journal, "job-1011", (opened(), ev.SafetyAnswered(), ev.ComplaintSaid("steam_out")), 2)
        write(
            journal, "job-1011", (ev.Present("Carla", "desk"), ev.ReadingTaken("box.volts", {"": "20 V"})), 1, "desk-7"
        )
        write(journal, "job-1011", (ev.ReadingTaken("box.volts", {"": "208 V"}),), 0.5)
        page = site.ask("/job/job-1011").text
        assert "Carla told: Volts at the fuse: 20 V. The one at the machine counts: 208 V." in page
        assert "Carla, at the desk" in page

    def test_a_closed_job_is_shown_and_one_that_cant_be_read_says_why(self, site: Site) -> None:
        assert "Closed: given up." in site.ask("/job/job-1007").text
        page = html.unescape(site.ask("/job/job-1009").text)
        assert words.UNREADABLE in page
        assert "no such type" in page

    def test_a_part_that_is_the_same_is_not_sent_again(self, site: Site) -> None:
        page = site.ask("/job/job-1001").text
        (tag,) = re.findall(r'data-tag="(\w+)"', page)
        assert site.ask("/part/job/job-1001", If_None_Match=f'"{tag}"').status == 304
        answer = site.ask("/part/job/job-1001", If_None_Match='"other"')
        assert (answer.status, answer.headers["etag"]) == (200, f'"{tag}"')
        assert answer.text.strip() in page

    def test_every_page_is_well_formed_and_asks_for_nothing_elsewhere(self, site: Site) -> None:
        for path in ("/", "/job/job-1001", "/job/job-1005", "/job/job-1009", "/nowhere", job_path(STRANGE)):
            page = Page(site.ask(path).text)
            for tag, told in page.elements:
                address = told.get("src") or told.get("href") or told.get("action") or "/"
                assert address.startswith(("/", "#")), (tag, told)
                assert not address.startswith("//")
                assert not {name for name in told if name.startswith("on") or name == "style"}

    def test_a_job_with_a_strange_name_has_its_page(self, site: Site) -> None:
        board = site.ask("/").text
        assert f'href="{html.escape(job_path(STRANGE))}"' in board
        page = site.ask(job_path(STRANGE))
        assert page.status == 200
        assert "a strange name" in page.text


@pytest.mark.parametrize("nth", range(len(HOSTILE) + 1))
def test_what_people_wrote_is_text_and_nothing_else(site: Site, nth: int) -> None:
    raw = site.ask(f"/job/job-h{nth}").text
    page = Page(raw)
    tags = {tag for tag, _ in page.elements}
    assert [tag for tag, told in page.elements if tag == "script"] == ["script"]
    assert tags.isdisjoint({"b", "img", "iframe", "svg", "style", "object"})
    assert all(sign.isprintable() or sign == "\n" for sign in raw)
    text = "".join(page.said)
    assert "<script>alert(1)</script>" in text or nth != 0
    assert all(sign not in raw for sign in "\u202e\u2066\u200b\ufeff\x1b\x07")
    whole = "w" * 100_000 in text
    assert whole == (nth == len(HOSTILE))
    assert max(len(told) for told in re.findall(r'<(?:h1|p class="subtitle")>(.*?)</', raw)) < 1500
    board = Page(site.ask("/").text)
    assert max(map(len, board.said)) < 1000


class TestChanges:
    def test_an_append_arrives_and_the_part_has_it(self, site: Site, journal: Path) -> None:
        with site.events() as stream:
            assert (stream.status, stream.getheader("content-type")) == (200, "text/event-stream; charset=utf-8")
            first = _count(stream)
            write(journal, "job-1002", (ev.NoteAdded("Just now: the lid was open."),))
            assert _count(stream) != first
        assert "Just now: the lid was open." in site.ask("/part/job/job-1002").text

    def test_what_leads_is_worked_out_behind_the_page(self, book: Book, journal: Path, tmp_path: Path) -> None:
        with served(book, journal, cache=tmp_path / "c") as site:
            site.log_in()
            assert words.PENDING in site.ask("/").text
            with site.events() as stream:
                while words.PENDING in site.ask("/part/board").text:
                    _count(stream)
            assert "The fuse is blown" in site.ask("/part/board").text

    def test_a_stream_ends_with_its_session(self, site: Site) -> None:
        with site.events() as stream:
            _count(stream)
            site.ask("/logout", {})
            assert b"event: out" in stream.read()

    def test_there_are_only_so_many_streams(self, book: Book, journal: Path) -> None:
        with served(book, journal, streams=2) as site:
            site.log_in()
            with site.events() as one, site.events() as two:
                _count(one), _count(two)
                assert site.ask("/events").status == 503
            while site.desk.changes.streams:
                time.sleep(0.01)
            with site.events() as again:
                assert again.status == 200

    def test_the_server_ends_though_streams_are_open(self, book: Book, journal: Path) -> None:
        with served(book, journal) as site:
            site.log_in()
            with site.events() as stream:
                _count(stream)
                site.server.should_exit = True
                stream.read()

    def test_it_only_reads(self, site: Site, journal: Path) -> None:
        before = [Journal(journal, "x").records(entry.job) for entry in Journal(journal, "x").jobs()]
        for path in INSIDE[:-1]:
            site.ask(path)
        assert [Journal(journal, "x").records(entry.job) for entry in Journal(journal, "x").jobs()] == before


def test_a_fault_inside_is_a_plain_sentence_and_goes_to_the_log(
    site: Site, monkeypatch: pytest.MonkeyPatch, tmp_path: Path
) -> None:
    def broken(*_: object) -> str:
        raise RuntimeError("a bug, for the test")

    monkeypatch.setenv("DIAGNOSE_HOME", str(tmp_path))
    monkeypatch.setattr("diagnose.desk.web.pages.Pages.board", broken)
    answer = site.ask("/")
    assert answer.status == 500
    assert answer.text == f"{words.FAULT}. {words.FAULT_TOLD}"
    assert answer.headers["content-security-policy"] == HEADERS["Content-Security-Policy"]
    log = tmp_path / "diagnose.log"
    while not (log.exists() and log.read_text().endswith("\n\n")):  # written once the answer is out
        time.sleep(0.01)
    assert "a bug, for the test" in log.read_text()
    assert site.ask("/job/job-1001").status == 200


def _count(stream: object) -> int:
    """The next count of changes that the stream tells."""
    while True:
        line = stream.readline()  # type: ignore[attr-defined]
        assert line, "the stream ended"
        if line.startswith(b"data: "):
            return int(line[6:])
