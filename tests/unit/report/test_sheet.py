"""The handover sheet as a document: every line, what was set, what stays, in every format and in Spanish."""

from __future__ import annotations

import json
import re
import unicodedata
from io import BytesIO

import pytest
from pypdf import PdfReader

from diagnose.language import load_texts
from diagnose.model import Book, load_book
from diagnose.report import render
from diagnose.report.document import Document, Facts, Figure, Heading, Paragraph, Signatures, Table, texts_of
from diagnose.report.sheet import handover_sheet
from diagnose.view.layout import text_width
from tests.report_job import HOSTILE, TRACE, dossier_of, handover_of


@pytest.fixture(scope="module")
def book() -> Book:
    return load_book()


@pytest.fixture(scope="module")
def document(book: Book) -> Document:
    return handover_sheet(handover_of(book))


def rows_of(document: Document) -> dict[str, tuple[str, ...]]:
    """The lines of all sections by their title, without the number."""
    found = {}
    for block in document.blocks:
        if isinstance(block, Table) and len(block.headers) == 4 and block.says == 3:
            found |= {row.cells[0].partition(" ")[2]: (*row.cells[1:], row.role) for row in block.rows}
    return found


def test_every_line_stands_with_what_is_wanted_what_was_read_and_its_verdict(document: Document) -> None:
    rows = rows_of(document)
    assert len(rows) > 60
    wanted, read, word, role = rows["Rinse pressure while flowing"]
    assert "15 to 25 psi" in wanted
    assert "data plate" in wanted
    assert (read, word, role) == ("20.5 psi", "pass", "good")
    assert rows["Panel thermometer while rinsing"][2:] == ("can't tell", "doubt")
    assert rows["A thermometer for each tank and for the rinse"][2:] == ("left", "doubt")
    assert rows["Pressure at the wash manifold"][1:] == ("-", "not done yet", "")


def test_what_was_set_stands_before_and_after(document: Document) -> None:
    table = next(b for b in document.blocks if isinstance(b, Table) and b.caption == "What was set")
    assert next(row.cells[2:] for row in table.rows) == ("12 psi", "20.5 psi")
    figure = next(b for b in document.blocks if isinstance(b, Figure) and "bands" in b.chart.title)
    drawn = {row.label: (row.before, row.after) for row in figure.chart.rows}  # type: ignore[union-attr]
    assert drawn["Rinse pressure while flowing"] == ((12.0,), (20.5,))


def test_remarks_and_who_was_shown_come_in_words(document: Document) -> None:
    text = " ".join(texts_of(document))
    assert "waits for another trade" in text
    shown = next(
        b
        for b, head in zip(document.blocks[1:], document.blocks, strict=False)
        if head == Heading("Who was shown what")
    )
    assert isinstance(shown, Facts)
    assert shown.pairs[0][1] == "on Friday"
    assert "Not to be handed over without" in text  # a sheet that was closed too early says so
    assert isinstance(document.blocks[-2], Signatures)


def test_it_is_to_be_signed_and_names_nobody(document: Document) -> None:
    signatures = [b for b in document.blocks if isinstance(b, Signatures)]
    assert [s.labels for s in signatures] == [("Technician", "For the kitchen")]


@pytest.mark.parametrize("width", [80, 45])
def test_on_a_screen_nothing_is_wider_than_it(book: Book, width: int) -> None:
    printed = str(render(handover_of(book), "handover", "terminal", width))
    assert max(map(text_width, printed.splitlines())) <= width
    assert "Rinse pressure while flowing" in " ".join(printed.split())


@pytest.mark.parametrize("text", HOSTILE, ids=range(len(HOSTILE)))
def test_hostile_words_are_words_in_every_format(book: Book, text: str) -> None:
    dossier = handover_of(book, text=text)
    for said in texts_of(handover_sheet(dossier)):
        assert not any(unicodedata.category(c) in {"Cc", "Cf", "Zl", "Zp"} for c in said)
    for form in ("terminal", "md", "html", "json"):
        made = str(render(dossier, "handover", form))
        assert not re.search(r"[\x00-\x08\x0b-\x1f\x7f\u202e\u2066-\u2069\u200f]", made), form
        assert "<script>alert" not in made or form in ("json", "terminal")
    json.loads(str(render(dossier, "handover", "json")))


def test_the_pdf_says_what_the_document_says(book: Book) -> None:
    made = render(handover_of(book), "handover", "pdf")
    assert isinstance(made, bytes)
    pages = PdfReader(BytesIO(made)).pages
    text = re.sub(r"\s+", "", "".join(page.extract_text() for page in pages))
    for wanted in ("Handover sheet", "Rinse pressure while flowing", "20.5 psi", "waits for another trade"):
        assert re.sub(r"\s+", "", wanted) in text


def test_spanish_says_all_its_own_words_in_spanish(book: Book) -> None:
    texts = load_texts("es")
    document = handover_sheet(handover_of(book, texts))
    headings = [b.text for b in document.blocks if isinstance(b, Heading)]
    assert document.title == "Hoja de entrega"
    assert "Punto por punto" in headings
    english = {b.text for b in handover_sheet(handover_of(book)).blocks if isinstance(b, Heading)}
    assert not english & set(headings)


def test_both_units_stand_on_request(book: Book) -> None:
    rows = rows_of(handover_sheet(handover_of(book, system="both")))
    assert rows["Panel thermometer while rinsing"][1] == "181 °F (83 °C)"


def test_a_job_that_was_no_handover_says_so(book: Book) -> None:
    first = handover_sheet(dossier_of(book, TRACE)).blocks[0]
    assert isinstance(first, Paragraph)
    assert "no handover" in first.text


def test_the_office_copy_has_the_sheet(book: Book) -> None:
    copy = json.loads(str(render(handover_of(book), "office", "json")))
    lines = {line["id"]: line for line in copy["sheet"]}
    assert lines["final_rinse.pressure"]["verdict"] == "pass"
    assert lines["heat.thermometers"]["left_why"] == "waits for another trade"
    assert lines["people.daily"]["notes"] == ["on Friday"]
    assert json.loads(str(render(dossier_of(book, TRACE), "office", "json")))["sheet"] == []
