"""Every text of the knowledge on every width: no line too wide, no word lost, nothing by colour alone."""

from __future__ import annotations

from dataclasses import dataclass

import pytest

from diagnose.job.telling import Reason
from diagnose.model import Book, Finding, Machine, load_book
from diagnose.view import words
from diagnose.view.layout import Line, text_width
from diagnose.view.question import CheckTexts, caution_block, check_block, choices, repair_block
from diagnose.view.ranking import ranking_block
from diagnose.view.reasons import conflict_block, finding_block, why_block
from diagnose.view.theme import STYLES
from diagnose.view.tree import branches, tree_block

WIDTHS = (30, 45, 80, 132)


@dataclass
class Row:
    id: str
    title: str
    probability: float
    kind: str = "cause"


@pytest.fixture(scope="module")
def book() -> Book:
    return load_book()


def holds(lines: list[Line], width: int, *texts: str) -> None:
    assert all(text_width(line) <= width for line in lines)
    assert all(line.role in STYLES for line in lines)
    # Joined without blanks: a word too long for the screen may be cut, but no sign of it is lost.
    whole = "".join("".join(lines).split())
    for text in texts:
        assert "".join(text.split()) in whole


@pytest.mark.parametrize("width", WIDTHS)
def test_checks_and_repairs_keep_every_word(book: Book, width: int) -> None:
    texts = CheckTexts("83.3 A each (30 kW, delta, 208 V)", "no cover; saves 9 minutes")
    for check in book.checks.values():
        lines = check_block(check, 12, ["LIVE PARTS"], texts, width)
        outcomes = [o.title for o in check.outcomes.values()] if check.reading is None else []
        holds(lines, width, check.ask, *check.steps, *outcomes, texts.expected, texts.why, "LIVE PARTS")
    for cause in book.causes.values():
        holds(repair_block(cause, 12, [], width), width, cause.title, cause.shows, cause.why, *cause.repair)


@pytest.mark.parametrize("width", WIDTHS)
def test_cautions_and_dangers_keep_every_word(book: Book, width: int) -> None:
    for caution in book.cautions.values():
        lines = caution_block([caution], caution.word or "", width)
        holds(lines, width, caution.title, *caution.text, *([f"Type {caution.word}"] if caution.word else []))
        assert str(lines[0]).startswith("Caution")
    holds(choices([stop.ask for stop in book.stops.values()], width), width, *(s.ask for s in book.stops.values()))


@pytest.mark.parametrize("width", WIDTHS)
def test_ranking_has_number_percent_title_and_the_unlisted_always(width: int) -> None:
    rows = [Row(f"a.c{n}", f"Cause number {n} with a long name that wraps", 0.4 / (n + 1)) for n in range(30)]
    rows.append(Row("unlisted.x", "something not listed here", 0.001, "unlisted"))
    lines = ranking_block(rows, width)
    holds(lines, width, rows[0].title, rows[30].title, "25 more, each at most this")
    starts = [line for line in lines if line[:4].strip().isdigit()]
    assert [int(line[:4]) for line in starts] == [1, 2, 3, 4, 5, 31]
    assert len({line.index("%") for line in starts}) == 1
    assert rows[29].title.split()[2] not in " ".join(line[:4] for line in lines)


def test_bars_stand_after_the_number() -> None:
    lines = ranking_block([Row("a.b", "Title", 0.5)], 80, bars=True)
    assert "50 %  =====" in lines[1]


@pytest.mark.parametrize("width", WIDTHS)
def test_tree_folds_and_unfolds(book: Book, width: int) -> None:
    machine = Machine("m", book.machines["two_tank_electric_208"])
    folded = branches(book, machine, ["rinse_cold"], {"rinse_cold": 1.0})
    whole = branches(book, machine, ["rinse_cold"], {"rinse_cold": 1.0}, everything=True)
    assert len(folded) < len(whole)
    shut = next(row for row in folded if row.folded)
    opened = branches(book, machine, ["rinse_cold"], {"rinse_cold": 1.0}, {shut.node})
    assert any(row.node == shut.node and not row.folded for row in opened)
    holds(tree_block(whole, book, width), width, *(book.title(row.node) for row in whole))
    holds(tree_block(folded, book, width), width, f"t {shut.number}]")


@pytest.mark.parametrize("width", WIDTHS)
def test_reasons_say_bits_in_words_and_number(book: Book, width: int) -> None:
    reasons = [Reason("Line currents: one out", 5.0), Reason("Pressure: good", -1.2), Reason("Ruled out", -9.0, True)]
    lines = why_block("One element is open: 90 %", "Two lines carry 58 %.", reasons, width)
    holds(
        lines, width, "Speaks for it", "Speaks against it", "decisively, odds x 32, +5.0 bits", "-1.2 bits", words.SOLE
    )
    assert words.NOTHING_YET in " ".join(" ".join(why_block("x", "", [], width)).split())


@pytest.mark.parametrize("width", WIDTHS)
def test_findings_show_their_working(book: Book, width: int) -> None:
    finding = Finding(
        "booster_electric.line_amps", {"one_element_out": 1.0}, "rule", ("1",), working=("83.3 A × 0.58 = 48 A",)
    )
    title = book.checks[finding.check].outcomes["one_element_out"].title
    holds(finding_block(finding, book, width), width, title, "83.3 A × 0.58 = 48 A")
    holds(conflict_block(["This against that."], width), width, "can't well all be right", "This against that.")
    assert conflict_block([], width) == []
