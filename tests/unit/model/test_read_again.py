"""A folder read again gives the same book as long as nothing in it changed, and is read anew when anything did."""

from __future__ import annotations

from pathlib import Path

import pytest

from diagnose.model import KnowledgeError, load_book
from tests.small_knowledge import write_small


def test_unchanged_it_is_the_same_book(tmp_path: Path) -> None:
    folder = write_small(tmp_path / "ours")
    book = load_book(folder)
    assert load_book(folder) is book
    assert load_book(write_small(tmp_path / "elsewhere" / "ours")) is book


def test_any_change_is_seen(tmp_path: Path) -> None:
    folder = write_small(tmp_path / "ours")
    book = load_book(folder)
    path = folder / "assemblies" / "arm.toml"
    text = path.read_text("utf-8")
    path.write_text(text + "# a note\n", "utf-8")
    assert load_book(folder) is not book
    path.rename(path.with_name("leg.toml"))
    assert "leg" in load_book(folder).assemblies
    path.write_text(text, "utf-8")
    path.with_name("leg.toml").unlink()
    assert load_book(folder) == book


def test_another_name_of_the_folder_is_another_book(tmp_path: Path) -> None:
    ours, theirs = write_small(tmp_path / "ours"), write_small(tmp_path / "theirs")
    one, two = load_book(ours), load_book(theirs)
    assert one is not two
    assert {p.file.split("/")[0] for p in two.places.values()} == {"theirs"}


def test_a_folder_that_is_gone_is_said(tmp_path: Path) -> None:
    folder = tmp_path / "empty"
    folder.mkdir()
    book = load_book(folder)
    folder.rmdir()
    with pytest.raises(KnowledgeError, match="no such folder"):
        load_book(folder)
    assert not book.causes
