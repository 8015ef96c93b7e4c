"""A kept book is the book read anew, for as long as not a byte of the knowledge changes."""

from __future__ import annotations

from pathlib import Path

import pytest

from diagnose.model import KnowledgeError, cache, load_book
from diagnose.model.cache import KEPT, cached_book
from tests.small_knowledge import write_small


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    made = tmp_path / "knowledge"
    made.mkdir()
    write_small(made)
    return made


def test_the_kept_book_is_the_same_and_is_not_read_anew(
    folder: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    first = cached_book([folder], tmp_path / "cache")
    monkeypatch.setattr(cache, "load_book", lambda *_: pytest.fail("read anew"))
    assert cached_book([folder], tmp_path / "cache") == first == load_book(folder)


def test_the_shipped_knowledge_comes_back_whole(tmp_path: Path) -> None:
    from diagnose.model import shipped_knowledge

    whole = cached_book([shipped_knowledge()], tmp_path)
    assert cached_book([shipped_knowledge()], tmp_path) == whole


def test_a_changed_byte_is_read(folder: Path, tmp_path: Path) -> None:
    before = cached_book([folder], tmp_path / "cache")
    arm = folder / "assemblies" / "arm.toml"
    arm.write_text(arm.read_text("utf-8").replace("Too little water leaves", "Too little comes from"), "utf-8")
    after = cached_book([folder], tmp_path / "cache")
    assert before.title("arm.short") != after.title("arm.short") == "Too little comes from the arm"


def test_the_same_files_as_a_shops_folder_are_another_book(folder: Path, tmp_path: Path) -> None:
    alone = cached_book([folder], tmp_path / "cache")
    over = cached_book([folder, folder], tmp_path / "cache")
    assert alone != over


@pytest.mark.parametrize("harm", [b"", b"nonsense", None])
def test_what_is_damaged_is_made_again(folder: Path, tmp_path: Path, harm: bytes | None) -> None:
    kept = tmp_path / "cache"
    book = cached_book([folder], kept)
    (file,) = kept.glob("*.book")
    content = file.read_bytes()
    file.write_bytes(content[:-7] if harm is None else harm)
    assert cached_book([folder], kept) == book
    assert file.read_bytes() == content


def test_where_nothing_can_be_kept_it_is_read_all_the_same(folder: Path, tmp_path: Path) -> None:
    (tmp_path / "file").write_text("in the way")
    assert cached_book([folder], tmp_path / "file") == load_book(folder)


def test_old_books_go(folder: Path, tmp_path: Path) -> None:
    for nth in range(KEPT + 3):
        (folder / "context.toml").write_text(f"# {nth}\n", "utf-8")
        cached_book([folder], tmp_path / "cache")
    assert len(list((tmp_path / "cache").iterdir())) == KEPT


def test_problems_are_reported_every_time(folder: Path, tmp_path: Path) -> None:
    (folder / "context.toml").write_text("nonsense = 1\n", "utf-8")
    for _ in range(2):
        with pytest.raises(KnowledgeError):
            cached_book([folder], tmp_path / "cache")
