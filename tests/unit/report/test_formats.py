"""Every format says what the document says, and no text moves a cursor, breaks a table or becomes markup."""

from __future__ import annotations

import json
import re
import unicodedata
from io import BytesIO
from itertools import pairwise

import pytest
from markdown_it import MarkdownIt
from pypdf import PdfReader

from diagnose.language import ENGLISH
from diagnose.model import Book
from diagnose.report import DOCUMENTS, render
from diagnose.report.document import Document, Figure, Heading, Items, Paragraph, Row, Signatures, Table, texts_of
from diagnose.report.office import office_json
from diagnose.report.service import service_report
from diagnose.report.to_lines import to_lines
from diagnose.report.to_markdown import to_markdown
from diagnose.report.to_pdf import in_letters, to_pdf
from diagnose.report.words import renderer_words
from diagnose.view.layout import text_width
from tests.report_job import CLOSED, HOSTILE, OPEN, dossier_of, hostile_job
from tests.small_job import small_book

UNSEEN = {"Cc", "Cf", "Cs", "Co", "Cn", "Zl", "Zp"}
TABLE = ("thead", "tbody", "tr", "th", "td")
hostile = pytest.mark.parametrize("text", HOSTILE, ids=range(len(HOSTILE)))


@pytest.fixture(scope="module")
def book(tmp_path_factory: pytest.TempPathFactory) -> Book:
    return small_book(tmp_path_factory.mktemp("book"))


def bare(text: str) -> str:
    return re.sub(r"\s+", "", text)


def seen(text: str) -> bool:
    return all(unicodedata.category(c) not in UNSEEN for c in text.replace("\n", ""))


@hostile
def test_a_document_holds_no_control_sign(book: Book, text: str) -> None:
    document = service_report(dossier_of(book, hostile_job(text)))
    assert all(seen(said) and "\n" not in said for said in texts_of(document))
    kept = "".join(c for c in text if unicodedata.category(c) not in UNSEEN)
    assert bare(kept) in bare(" ".join(texts_of(document))), "nothing that can be read is lost"


@pytest.mark.parametrize("width", [80, 45, 30])
def test_lines_keep_to_the_width_and_say_it_all(book: Book, width: int) -> None:
    for build in DOCUMENTS.values():
        for events in (OPEN, CLOSED):
            document = build(dossier_of(book, events))
            lines = to_lines(document, width)
            assert all(text_width(line) <= width for line in lines)
            for block in document.blocks:
                if isinstance(block, Paragraph):
                    assert bare(block.text) in bare("".join(lines))


@hostile
def test_hostile_texts_on_the_terminal(book: Book, text: str) -> None:
    lines = to_lines(service_report(dossier_of(book, hostile_job(text))), 80)
    assert all(seen(line) and text_width(line) <= 80 for line in lines)


@hostile
def test_hostile_texts_in_markdown_come_out_as_text(book: Book, text: str) -> None:
    """Judged by a CommonMark reader of its own: only our blocks, and in them the text as it is."""
    document = service_report(dossier_of(book, hostile_job(text)))
    tokens = MarkdownIt("commonmark", {"linkify": False}).enable("table").parse(to_markdown(document))
    kinds = {token.type.removesuffix("_open").removesuffix("_close") for token in tokens}
    assert kinds <= {"heading", "paragraph", "inline", "bullet_list", "list_item", "table", *TABLE}
    inner = {child.type for token in tokens for child in token.children or ()}
    assert inner <= {"text", "strong_open", "strong_close", "text_special"}
    assert sum(token.type == "table_open" for token in tokens) == sum(
        isinstance(block, Table | Figure) for block in document.blocks
    )
    told = bare("".join(c.content for token in tokens for c in token.children or ()))
    for said in texts_of(document):
        assert bare(said) in told or any(isinstance(b, Figure) and b.chart.title == said for b in document.blocks)


def test_markdown_keeps_each_row_a_row() -> None:
    rows = tuple(Row((text, "x")) for text in HOSTILE)
    document = Document("t", "s", (Table("c", ("a", "b"), rows),), words=renderer_words(ENGLISH))
    tokens = MarkdownIt("commonmark").enable("table").parse(to_markdown(document))
    assert sum(token.type == "tr_open" for token in tokens) == len(rows) + 1
    assert sum(token.type == "td_open" for token in tokens) == 2 * len(rows)


def text_of_pdf(made: bytes) -> str:
    return "".join(page.extract_text() for page in PdfReader(BytesIO(made)).pages)


def without_feet(text: str) -> str:
    return re.sub(r"Page\d+of\d+", "", bare(text))


@pytest.mark.parametrize("what", ["service", "parts"])
def test_the_pdf_says_what_the_document_says(book: Book, what: str) -> None:
    document = DOCUMENTS[what](dossier_of(book, CLOSED))
    told = without_feet(text_of_pdf(to_pdf(document)))
    for block in document.blocks:
        said = [*texts_of(Document("", "", (block,)))]
        if isinstance(block, Paragraph | Items):
            assert all(bare(in_letters(text)) in told for text in said)
        elif not isinstance(block, Signatures):
            words = {word for text in said for word in in_letters(text).split()}
            assert {word for word in words if word not in told} == set()
    assert PdfReader(BytesIO(to_pdf(document))).metadata["/Title"] == document.title  # type: ignore[index]


def test_a_pdf_writes_out_the_signs_it_lacks_and_says_so() -> None:
    words = renderer_words(ENGLISH)
    plain = to_pdf(Document("t", "s", (Paragraph("180 °F ± 2, 4 × 5 “so” – €"),), words=words))
    assert "180 °F ± 2, 4 × 5 “so” – €" in text_of_pdf(plain)
    assert "written out" not in text_of_pdf(plain)
    lacking = text_of_pdf(to_pdf(Document("t", "s", (Paragraph("√4 ≥ 2 Ω, 中"),), words=words)))
    assert "sqrt 4 >= 2 ohm, ?" in lacking
    assert "Signs that the letters of this file lack are written out." in lacking


@hostile
def test_hostile_texts_in_a_pdf(book: Book, text: str) -> None:
    document = service_report(dossier_of(book, hostile_job(text)))
    made = to_pdf(document)
    pages = PdfReader(BytesIO(made)).pages
    told = without_feet(text_of_pdf(made))
    (note,) = (after for b, after in pairwise(document.blocks) if b == Heading("Notes"))
    assert isinstance(note, Items)
    assert bare(in_letters(note.texts[0])) in told
    assert not any("/Annots" in page for page in pages), "no address becomes a link"
    assert b"/JavaScript" not in made


def test_a_row_higher_than_a_page_runs_over_pages() -> None:
    row = Row(("x", "word " * 1200, "good"), "good")
    document = Document("t", "s", (Table("c", ("a", "b", "d"), (row,), 2),), words=renderer_words(ENGLISH))
    made = to_pdf(document)
    assert len(PdfReader(BytesIO(made)).pages) > 1
    assert text_of_pdf(made).count("word") == 1200


def test_a_pdf_is_the_same_each_time(book: Book) -> None:
    document = service_report(dossier_of(book, CLOSED))
    assert to_pdf(document) == to_pdf(document)


@hostile
def test_hostile_texts_in_json(book: Book, text: str) -> None:
    dossier = dossier_of(book, hostile_job(text))
    for made in (render(dossier, "service", "json"), office_json(dossier)):
        assert isinstance(made, str)
        assert seen(made)
        data = json.loads(made)
        assert all(seen(said) for said in _strings(data))
    assert len(data["notes"]) == 1


def _strings(value: object) -> list[str]:
    if isinstance(value, dict):
        return [s for pair in value.items() for each in pair for s in _strings(each)]
    if isinstance(value, list):
        return [s for each in value for s in _strings(each)]
    return [value] if isinstance(value, str) else []
