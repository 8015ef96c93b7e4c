"""The loader is strict, says file and line, and reports all problems at once."""

from __future__ import annotations

from pathlib import Path

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from diagnose.model import KnowledgeError, load_book
from tests.small_knowledge import SMALL, write_small


def problems(folder: Path) -> list[str]:
    with pytest.raises(KnowledgeError) as caught:
        load_book(folder)
    return [str(p) for p in caught.value.problems]


def test_the_small_book_is_read_whole(tmp_path: Path) -> None:
    book = load_book(write_small(tmp_path))
    assert set(book.causes) == {"arm.cracked", "arm.capless", "arm.choked"}
    assert book.checks["arm.pressure"].looks_at == ["arm.choked", "arm.short"]
    assert book.title("arm.short") == "Too little water leaves the arm"
    assert book.assemblies == {"arm": "Rinse arm"}
    assert book.places["arm.short"].line == 3


def test_an_unknown_key_is_refused_with_its_line(tmp_path: Path) -> None:
    write_small(tmp_path, assemblies__arm='gate = "any" => gate = "any"\ncolour = "red"')
    (problem,) = problems(tmp_path)
    assert "assemblies/arm.toml:3" in problem
    assert "colour" in problem


@pytest.mark.parametrize(
    ("change", "says"),
    [
        ('gate = "any" => gate = "some"', "some"),
        ('id = "short" => id = "cracked"', "stands twice"),
        ("minutes = 10 => minutes = 'ten'", "minutes"),
        ('basis = { kind = "judgement" } => ', "basis"),
        ('title = "Rinse arm" => title = "Rinse arm"\nweight = 3', "unknown key 'weight'"),
        ('title = "Rinse arm" => title = ', "can't be read"),
    ],
)
def test_faults_are_named(tmp_path: Path, change: str, says: str) -> None:
    write_small(tmp_path, assemblies__arm=change)
    assert any(says in p for p in problems(tmp_path))


def test_all_problems_at_once(tmp_path: Path) -> None:
    write_small(
        tmp_path,
        assemblies__arm='gate = "any" => gate = "some"',
        context="nonsense = 1",
        limits__rinse='quantity = "pressure" => quantities = "pressure"',
    )
    assert len(problems(tmp_path)) == 3


def test_a_second_folder_adds_and_replaces(tmp_path: Path) -> None:
    ours = write_small(tmp_path / "ours")
    shop = tmp_path / "shop" / "assemblies"
    shop.mkdir(parents=True)
    text = SMALL["assemblies/arm.toml"]
    start = text.index("\n[[cause]]")
    changed = text[start : text.index("\n[[check]]", start)].replace("minutes = 10", "minutes = 25")
    (shop / "arm.toml").write_text(changed)
    book = load_book(ours, tmp_path / "shop")
    assert book.causes["arm.cracked"].minutes == 25
    assert book.causes["arm.capless"].minutes == 10


def test_no_folder_is_a_sentence(tmp_path: Path) -> None:
    assert "no such folder" in problems(tmp_path / "nowhere")[0]


@settings(max_examples=60, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(st.sampled_from(sorted(SMALL)), st.integers(0, 4000), st.text(max_size=12))
def test_rubbish_anywhere_ends_in_sentences(tmp_path: Path, name: str, where: int, rubbish: str) -> None:
    write_small(tmp_path)
    text = SMALL[name]
    cut = where % (len(text) + 1)
    (tmp_path / name).write_text(text[:cut] + rubbish + text[cut:], "utf-8", errors="replace")
    try:
        load_book(tmp_path)
    except KnowledgeError as error:
        assert all(str(p) and p.remedy for p in error.problems)
