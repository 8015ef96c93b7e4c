"""The picture: boxes never meet, text stays inside, light and dark, nothing fetched, titles for those who can't see."""

from __future__ import annotations

import re
from itertools import combinations
from xml.etree import ElementTree

import pytest

from diagnose.model import Book, Machine, load_book
from diagnose.view.drawn.chart import Chart, Folding
from diagnose.view.drawn.measure import broken, wide
from diagnose.view.drawn.svg import svg_lines
from tests.small_tree import BOOK, NASTY, nasty_book

SVG = "{http://www.w3.org/2000/svg}"
# Advance of the printing ASCII signs, from blank to tilde, in thousandths of the size: plain and bold of a wide sans.
PLAIN = """
318 401 460 838 636 950 780 275 390 390 500 838 318 361 318 337 636 636 636 636 636 636 636 636 636 636 337 337
838 838 838 531 1000 684 686 698 770 632 575 775 752 295 295 656 557 863 748 787 603 787 695 635 611 732 684 989
685 611 685 390 337 390 838 500 500 613 635 550 635 615 352 635 634 278 278 579 278 974 634 612 635 635 411 521
392 634 592 818 592 592 525 636 337 636 838"""
BOLD = """
348 456 521 838 696 1002 872 306 457 457 523 838 380 415 380 365 696 696 696 696 696 696 696 696 696 696 400 400
838 838 838 580 1000 774 762 734 830 683 683 821 837 372 372 775 637 995 837 850 733 850 770 720 682 812 774
1103 771 724 725 457 365 457 838 500 500 675 716 593 716 678 435 716 712 343 343 665 343 1042 712 687 716 716
493 595 478 712 652 924 645 652 582 712 365 712 838"""


@pytest.fixture(scope="module")
def book() -> Book:
    return load_book()


def pictures(book: Book) -> list[Chart]:
    machine = Machine("m", book.machines["two_tank_steam_208"])
    return [
        Chart(BOOK, "no_spray"),
        Chart(nasty_book(), "no_spray"),
        Chart(book, "rinse_cold", machine),
        Chart(book, "motor_trips"),
    ]


def advance(text: str, size: float, bold: bool) -> float:
    table = [int(n) for n in (BOLD if bold else PLAIN).split()]
    assert len(table) == 95
    return sum(table[ord(c) - 32] if 32 <= ord(c) < 127 else 1050 for c in text) * size / 1000


def test_the_measure_is_never_too_small() -> None:
    for sign in map(chr, range(32, 127)):
        for bold in (True, False):
            assert wide(sign, 1000.0, bold) >= advance(sign, 1000.0, bold), sign


def test_broken_text_loses_nothing_and_fits() -> None:
    text = "Contactor coil reads 120 °F and 14 % after 3 minutes, " + "w" * 60
    for room in (60.0, 120.0, 300.0):
        lines = broken(text, room, 12.0)
        assert "".join("".join(lines).split()) == "".join(text.split())
        assert all(wide(line, 12.0) <= room for line in lines)


def test_boxes_never_meet_and_hold_their_text(book: Book) -> None:
    for chart in pictures(book):
        for folding in (Folding(), Folding(deepest=1)):
            root = ElementTree.fromstring("\n".join(svg_lines(chart, folding)).encode())
            frames = []
            for group in root.findall(f"{SVG}g/{SVG}g"):
                (rect,) = group.findall(f"{SVG}rect")
                x, y, w, h = (float(rect.attrib[k]) for k in ("x", "y", "width", "height"))
                frames.append((x, y, x + w, y + h))
                texts = group.findall(f"{SVG}text")
                assert texts
                for text in texts:
                    size, left, base = (float(text.attrib[k]) for k in ("font-size", "x", "y"))
                    right = left + advance(text.text or "", size, text.attrib["class"] == "title")
                    assert x < left < right <= x + w, text.text
                    assert y < base - size * 0.8 < base + size * 0.25 < y + h, text.text
            assert len(frames) == len(chart.rows(folding))
            for a, b in combinations(frames, 2):
                assert a[2] <= b[0] or b[2] <= a[0] or a[3] <= b[1] or b[3] <= a[1]
            shift = [float(n) for n in re.findall(r"[\d.]+", root.find(f"{SVG}g").attrib["transform"])]  # type: ignore[union-attr]
            assert max(f[2] for f in frames) + shift[0] <= float(root.attrib["width"])
            assert max(f[3] for f in frames) + shift[1] <= float(root.attrib["height"])


def test_edges_cross_no_box(book: Book) -> None:
    """They run through the gaps between columns, and along rows of their own branch."""
    for chart in pictures(book):
        root = ElementTree.fromstring("\n".join(svg_lines(chart, Folding())).encode())
        frames = [
            tuple(float(r.attrib[k]) for k in ("x", "y", "width", "height"))
            for r in root.findall(f"{SVG}g/{SVG}g/{SVG}rect")
        ]
        paths = [p.attrib["d"] for p in root.findall(f"{SVG}g/{SVG}path")]
        assert len(paths) == len(frames) - 1
        for path in paths:
            x0, y0, middle, y1, x1 = (float(n) for n in re.findall(r"[\d.]+", path))
            for x, y, w, h in frames:
                assert not (x < middle < x + w and min(y0, y1) < y + h and y < max(y0, y1))
                assert not any(
                    y < at < y + h and a < x + w and x < b for at, a, b in ((y0, x0, middle), (y1, middle, x1))
                )


def test_it_is_for_every_reader_and_fetches_nothing(book: Book) -> None:
    for chart in pictures(book):
        text = "\n".join(svg_lines(chart, Folding()))
        root = ElementTree.fromstring(text.encode())
        assert root.attrib["role"] == "img"
        assert [child.tag for child in root][:2] == [f"{SVG}title", f"{SVG}desc"]
        assert all((child.text or "").strip() for child in list(root)[:2])
        assert "@media (prefers-color-scheme: dark)" in text
        without_namespace = text.replace('xmlns="http://www.w3.org/2000/svg"', "")
        assert not re.search(r"https?:|href|<script|@import|url\(|@font-face", without_namespace)


def test_any_title_comes_through() -> None:
    root = ElementTree.fromstring("\n".join(svg_lines(Chart(nasty_book(), "no_spray"), Folding())).encode())
    texts = "".join("".join(t.text or "" for t in group.findall(f"{SVG}text")) for group in root.iter(f"{SVG}g"))
    assert "".join(NASTY.split()) in "".join(texts.split())
