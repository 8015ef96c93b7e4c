"""A shop's own folder adds and replaces, and whatever comes from it says so."""

from __future__ import annotations

from pathlib import Path

from diagnose.model import Book, load_book
from diagnose.model.lint import lint
from diagnose.model.shop import MARK, marked, unmarked
from tests.small_knowledge import write_small

OWN_EVENT = """
[[event]]
id = "short"
title = "Too little leaves the arm, as we see it"
gate = "any"
of = ["cracked", "capless"]
basis = { kind = "judgement" }
"""


def both(tmp_path: Path, own: str = OWN_EVENT) -> Book:
    ours, shops = tmp_path / "ours", tmp_path / "quayside"
    ours.mkdir()
    write_small(ours)
    (shops / "assemblies").mkdir(parents=True)
    (shops / "assemblies" / "arm.toml").write_text(own, "utf-8")
    return load_book(ours, shops)


def test_an_entry_of_the_shops_replaces_ours_and_is_marked(tmp_path: Path) -> None:
    book = both(tmp_path)
    assert book.title("arm.short") == "Too little leaves the arm, as we see it" + MARK
    assert (book.places["arm.short"].shop, book.places["arm.short"].replaces) == ("quayside", True)


def test_entries_of_ours_are_not_marked(tmp_path: Path) -> None:
    book = both(tmp_path)
    marked = [name for name, place in book.places.items() if place.shop]
    assert marked == ["arm.short"]
    assert not any(MARK in e.title for e in book.causes.values())


def test_a_new_entry_replaces_nothing(tmp_path: Path) -> None:
    book = both(tmp_path, OWN_EVENT.replace('"short"', '"thin"'))
    assert book.places["arm.thin"].shop
    assert not book.places["arm.thin"].replaces
    assert unmarked(book.title("arm.thin")) == "Too little leaves the arm, as we see it"


def test_lint_works_over_both(tmp_path: Path) -> None:
    told = [str(p) for p in lint(both(tmp_path, OWN_EVENT.replace('"cracked"', '"craked"')))]
    assert any("craked" in line and "quayside/assemblies/arm.toml:2" in line for line in told)


def test_one_folder_alone_is_ours(tmp_path: Path) -> None:
    book = load_book(write_small(tmp_path))
    assert not any(place.shop for place in book.places.values())


def test_a_line_without_a_title_of_its_own_takes_no_mark() -> None:
    line = next(each for each in load_book().lines.values() if each.title is None)
    assert marked(line) == line
