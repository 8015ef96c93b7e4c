"""What the writer writes, the standard library reads back; files keep every line that was there."""

from __future__ import annotations

import tomllib
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from diagnose.writing.folder import CantWriteError, add_entry, has_entry, new_file, replace_entry
from diagnose.writing.toml import toml_entry, toml_value

TEXT = st.text(st.characters(exclude_categories=["Cs"]), max_size=60)
PLAIN = TEXT | st.booleans() | st.integers(-(2**63), 2**63 - 1) | st.floats(allow_nan=False)
VALUES = st.recursive(PLAIN, lambda v: st.lists(v, max_size=5) | st.dictionaries(TEXT, v, max_size=5), max_leaves=20)
ENTRIES = st.dictionaries(TEXT, VALUES, max_size=8)

FILE = """# Our own remarks.
title = "Arms"

[[cause]]
id = "one"   # said by two people
repair = [
  "Look.",
]

# About the check.
[[check]]
id = "look"
looks_at = ["one"]
[check.shows]
one = { gone = 0.9 }
none = { whole = "always" }

# About the last one.
[[cause]]
id = "two"
repair = []
"""


@given(VALUES)
def test_a_value_comes_back(value: object) -> None:
    assert tomllib.loads(f"x = {toml_value(value)}")["x"] == value


@given(ENTRIES, ENTRIES)
def test_entries_come_back_one_behind_the_other(first: dict[str, object], second: dict[str, object]) -> None:
    text = toml_entry("cause", first) + "\n" + toml_entry("a b", second)
    assert tomllib.loads(text) == {"cause": [first], "a b": [second]}


@given(ENTRIES)
def test_a_value_stays_on_its_line(entry: dict[str, object]) -> None:
    """So that a header at the start of a line is always one."""
    lines = toml_entry("cause", entry).split("\n")
    assert sum(line.startswith("[[") for line in lines) == 1


def test_what_has_no_place_is_refused() -> None:
    with pytest.raises(TypeError, match="NoneType"):
        toml_value({"x": None})


def test_an_entry_is_added_and_all_else_stays(tmp_path: Path) -> None:
    path = tmp_path / "arms.toml"
    path.write_text(FILE, "utf-8")
    add_entry(path, "cause", {"id": "three", "repair": ["x"], "outcomes": {"a": {"title": "t"}}}, "not used")
    assert path.read_text("utf-8").startswith(FILE)
    assert [c["id"] for c in tomllib.loads(path.read_text("utf-8"))["cause"]] == ["one", "two", "three"]
    assert [p.name for p in tmp_path.iterdir()] == ["arms.toml"]


def test_a_new_file_begins_with_its_title(tmp_path: Path) -> None:
    path = tmp_path / "deep" / "arms.toml"
    add_entry(path, "cause", {"id": "one"}, 'The "arms"')
    assert tomllib.loads(path.read_text("utf-8")) == {"title": 'The "arms"', "cause": [{"id": "one"}]}
    with pytest.raises(CantWriteError, match="there already"):
        new_file(path, "again")


def test_an_entry_is_replaced_and_all_else_stays(tmp_path: Path) -> None:
    path = tmp_path / "arms.toml"
    path.write_text(FILE, "utf-8")
    before = FILE.splitlines()
    fresh = {"id": "look", "looks_at": ["one", "two"], "shows": {"one": {"gone": 0.9}, "two": {"gone": 0.5}}}
    assert has_entry(path, "check", "look")
    replace_entry(path, "check", fresh)
    after = path.read_text("utf-8")
    assert tomllib.loads(after)["check"] == [fresh]
    assert after.startswith("\n".join(before[: before.index("[[check]]")]))
    assert after.endswith("\n".join(before[before.index("# About the last one.") :]) + "\n")


def test_remarks_inside_an_entry_are_never_lost(tmp_path: Path) -> None:
    path = tmp_path / "arms.toml"
    path.write_text(FILE, "utf-8")
    with pytest.raises(CantWriteError, match="remarks"):
        replace_entry(path, "cause", {"id": "one", "repair": []})
    assert path.read_text("utf-8") == FILE


@pytest.mark.parametrize("text", ["x = [1,", "\x00", 'cause = "no list"\n[cause.x]\n'])
def test_a_file_that_is_no_toml_is_left_alone(tmp_path: Path, text: str) -> None:
    path = tmp_path / "arms.toml"
    path.write_text(text, "utf-8")
    with pytest.raises(CantWriteError, match="mend it"):
        add_entry(path, "cause", {"id": "one"})
    assert path.read_text("utf-8") == text


def test_an_entry_that_would_land_in_another_table_is_refused(tmp_path: Path) -> None:
    path = tmp_path / "arms.toml"
    path.write_text("cause = []\n", "utf-8")
    with pytest.raises(CantWriteError, match="mend"):
        add_entry(path, "cause", {"id": "one"})
