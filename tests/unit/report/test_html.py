"""The HTML: one file that asks for nothing, in order for every reader, with colours that can be read."""

from __future__ import annotations

import re
from base64 import b64encode
from hashlib import sha256
from html.parser import HTMLParser
from itertools import pairwise

import pytest

from diagnose.model import Book
from diagnose.report.document import texts_of
from diagnose.report.parts import parts_list
from diagnose.report.service import service_report
from diagnose.report.to_html import TEMPLATES, to_html
from tests.report_job import CLOSED, HOSTILE, OPEN, dossier_of, hostile_job
from tests.small_job import small_book

VOID = {"meta", "link", "br", "hr", "img", "input"}
# Elements the template uses; anything else came in through a text.
KNOWN = {
    *("html", "head", "meta", "title", "style", "body", "main", "header", "h1", "h2", "h3", "p", "strong", "span"),
    *(
        "dl",
        "div",
        "dt",
        "dd",
        "ul",
        "li",
        "table",
        "caption",
        "thead",
        "tbody",
        "tr",
        "th",
        "td",
        "details",
        "summary",
    ),
    *("figure", "figcaption", "svg", "desc", "rect", "path", "circle", "polygon", "text"),
}


class Page(HTMLParser):
    """What a page is made of; complains where an element is not closed in turn."""

    def __init__(self, source: str) -> None:
        super().__init__()
        self.elements: list[tuple[str, dict[str, str | None]]] = []
        self.open: list[str] = []
        self.said: list[str] = []
        self.feed(source)
        self.close()
        assert not self.open

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.elements.append((tag, dict(attrs)))
        if tag not in VOID:
            self.open.append(tag)

    def handle_startendtag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.elements.append((tag, dict(attrs)))

    def handle_endtag(self, tag: str) -> None:
        assert self.open.pop() == tag

    def handle_data(self, data: str) -> None:
        if "style" not in self.open:
            self.said.append(data)

    def tags(self, *names: str) -> list[str]:
        return [tag for tag, _ in self.elements if tag in names]

    @property
    def text(self) -> str:
        return " ".join(" ".join(self.said).split())


@pytest.fixture(scope="module")
def book(tmp_path_factory: pytest.TempPathFactory) -> Book:
    return small_book(tmp_path_factory.mktemp("book"))


@pytest.fixture(scope="module")
def pages(book: Book) -> list[str]:
    jobs = [dossier_of(book, events) for events in (OPEN, CLOSED)]
    return [to_html(document) for job in jobs for document in (service_report(job), parts_list(job))]


def test_headings_are_in_order_under_one_title(pages: list[str]) -> None:
    for source in pages:
        levels = [int(tag[1]) for tag in Page(source).tags("h1", "h2", "h3", "h4")]
        assert levels.count(1) == 1
        assert levels[0] == 1
        assert all(b - a <= 1 for a, b in pairwise(levels))


def test_it_asks_for_nothing_and_runs_nothing(pages: list[str]) -> None:
    for source in pages:
        page = Page(source)
        assert not page.tags("script", "link", "img", "iframe", "object", "base", "form", "a", "use", "image")
        for _, attributes in page.elements:
            assert not {a for a in attributes if a.startswith("on") or a in ("src", "href", "style", "xlink:href")}
        assert not re.search(r"https?:|//|@import|url\(|@font-face", re.sub(r"<!DOCTYPE[^>]*>", "", source))


def test_the_policy_allows_the_style_and_nothing_else(pages: list[str]) -> None:
    for source in pages:
        policy = re.search(r'Content-Security-Policy" content="([^"]*)"', source)
        style = re.search(r"<style>(.*?)</style>", source, re.S)
        assert policy is not None
        assert style is not None
        digest = b64encode(sha256(style[1].encode()).digest()).decode()
        wanted = f"default-src 'none'; style-src 'sha256-{digest}'; base-uri 'none'; form-action 'none'"
        assert policy[1] == wanted


def test_tables_and_charts_tell_every_reader(pages: list[str]) -> None:
    for source in pages:
        page = Page(source)
        assert page.elements[0] == ("html", {"lang": "en"})
        tables = len(page.tags("table"))
        assert tables == len(page.tags("caption")) == len(page.tags("thead"))
        scopes = [attributes.get("scope") for tag, attributes in page.elements if tag == "th"]
        assert set(scopes) <= {"col", "row"}
        assert scopes.count("col") >= 2 * tables
        drawings = [attributes for tag, attributes in page.elements if tag == "svg"]
        assert all(a["role"] == "img" for a in drawings)
        ids = [str(a["id"]) for _, a in page.elements if "id" in a]
        assert len(ids) == len(set(ids))
        assert {i for a in drawings for i in str(a["aria-labelledby"]).split()} == set(ids)


def test_the_whole_text_is_there(book: Book) -> None:
    document = service_report(dossier_of(book, CLOSED))
    text = Page(to_html(document)).text
    for said in texts_of(document):
        assert said in text


@pytest.mark.parametrize("text", HOSTILE, ids=range(len(HOSTILE)))
def test_no_text_gets_through_as_markup(book: Book, text: str) -> None:
    document = service_report(dossier_of(book, hostile_job(text)))
    source = to_html(document)
    page = Page(source)
    assert set(page.tags(*{tag for tag, _ in page.elements})) <= KNOWN
    assert {name for _, attributes in page.elements for name in attributes if name.startswith("on")} == set()
    for said in texts_of(document):
        assert said in page.text
    assert "@import" not in source


_DECLARED = re.compile(r"--([\w-]+):\s*(#[0-9a-f]{6})")
# (letters, ground, least ratio): text 4.5, large marks and lines 3 (WCAG 2.2, 1.4.3 and 1.4.11).
_PAIRS = (
    *((ink, ground, 4.5) for ink in ("ink", "quiet", "accent") for ground in ("paper",)),
    ("quiet", "fill", 4.5),
    ("ink", "doubt-fill", 4.5),
    ("good", "good-fill", 4.5),
    ("bad", "bad-fill", 4.5),
    ("doubt", "doubt-fill", 4.5),
    ("accent", "band", 3.0),
    ("before", "band", 3.0),
    ("before", "paper", 3.0),
)


def luminance(colour: str) -> float:
    """Relative luminance as WCAG 2.2 defines it."""
    parts = [int(colour[n : n + 2], 16) / 255 for n in (1, 3, 5)]
    linear = [p / 12.92 if p <= 0.04045 else ((p + 0.055) / 1.055) ** 2.4 for p in parts]
    return 0.2126 * linear[0] + 0.7152 * linear[1] + 0.0722 * linear[2]


def test_colours_can_be_read_light_dark_and_printed() -> None:
    style = (TEMPLATES / "report.css").read_text("utf-8")
    schemes = [dict(_DECLARED.findall(block)) for block in re.findall(r":root \{(.*?)\}", style, re.S)]
    assert len(schemes) == 3
    assert schemes[0]["paper"] == schemes[2]["paper"] == "#ffffff"
    for scheme in schemes:
        for ink, ground, least in _PAIRS:
            light, dark = sorted((luminance(scheme[ink]), luminance(scheme[ground])), reverse=True)
            assert (light + 0.05) / (dark + 0.05) >= least, (ink, ground, scheme[ink])


def test_the_style_is_made_for_screen_phone_and_paper() -> None:
    style = (TEMPLATES / "report.css").read_text("utf-8")
    for rule in ("prefers-color-scheme: dark", "@media print", "@page", "break-inside: avoid", "max-width: 44rem"):
        assert rule in style
