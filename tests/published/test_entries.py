"""Every entry that says it is published stands on a fact that a test here checks, and carries that fact's figures.

facts.toml lists the facts in our words. The tests they name check the facts themselves against physics and rules.
"""

from __future__ import annotations

import re
import tomllib
from collections.abc import Iterator
from functools import cache
from pathlib import Path
from typing import Any

import msgspec
import pytest

from diagnose.model import Basis, Book, Meanwhile, load_book

HERE = Path(__file__).parent
KINDS = {
    "complaint": "complaints",
    "event": "events",
    "cause": "causes",
    "check": "checks",
    "limit": "limits",
    "caution": "cautions",
    "stop": "stops",
    "instrument": "instruments",
    "machine": "machines",
    "access": "access",
    "state": "states",
    "help": "help",
}


@cache
def book() -> Book:
    return load_book()


def facts() -> list[dict[str, Any]]:
    return list(tomllib.loads((HERE / "facts.toml").read_text("utf-8"))["fact"])


def entry(name: str) -> Any:
    kind, _, ident = name.partition(" ")
    return meanwhiles()[ident] if kind == "until" else getattr(book(), KINDS[kind])[ident]


def meanwhiles() -> dict[str, Meanwhile]:
    """What the kitchen does meanwhile, by complaint and place: `rinse_cold 1` is the first."""
    return {f"{n} {k}": each for n, c in book().complaints.items() for k, each in enumerate(c.until, 1)}


def published() -> set[str]:
    """Every entry whose basis is a published source, as `kind id`."""
    found = set()
    for kind, table in KINDS.items():
        for ident, each in getattr(book(), table).items():
            basis: Basis | None = getattr(each, "basis", None)
            if basis is not None and basis.kind == "published":
                found.add(f"{kind} {ident}")
    return found | {f"until {name}" for name, each in meanwhiles().items() if each.basis.kind == "published"}


def words_of(value: Any) -> Iterator[str]:
    """All text of an entry, with the figures of the limits its bands name."""
    if isinstance(value, str):
        yield value
        if value.startswith("limit."):
            limit = book().limits[value.split(".")[1]]
            yield from (*limit.low, *limit.high)
    elif isinstance(value, dict):
        for key, each in value.items():
            yield str(key)
            yield from words_of(each)
    elif isinstance(value, list | tuple):
        for each in value:
            yield from words_of(each)
    elif value is not None:
        yield str(value)


CLAIMS = [
    pytest.param(fact, name, holds, id=f"{fact['source']} {name}")
    for fact in facts()
    for name, holds in fact["entries"].items()
]


@pytest.mark.parametrize(("fact", "name", "holds"), CLAIMS)
def test_the_entry_stands_on_the_fact_and_carries_it(fact: dict[str, Any], name: str, holds: list[str]) -> None:
    basis = entry(name).basis
    assert (basis.kind, basis.source) == ("published", fact["source"])
    text = " ".join(" ".join(words_of(msgspec.to_builtins(entry(name)))).replace("\u00a0", " ").split()).casefold()
    assert holds, "say at least one figure or word"
    assert [h for h in holds if h.casefold() not in text] == []


@pytest.mark.parametrize("fact", [pytest.param(f, id=f"{n} {f['source']}") for n, f in enumerate(facts())])
def test_the_fact_is_checked_by_a_test_that_names_its_source(fact: dict[str, Any]) -> None:
    test = (HERE / f"{fact['checked']}.py").read_text("utf-8")
    assert "def test_" in test
    title = book().sources[fact["source"]].title
    telling = {word for word in re.findall(r"[\w.-]+", title.casefold()) if len(word) > 2 or word.isdigit()}
    said = set(re.findall(r"[\w.-]+", test.casefold()))
    assert len(telling & said) >= min(2, len(telling)), f"{fact['checked']} does not say {title!r}"


def test_every_published_entry_is_listed() -> None:
    listed = {name for fact in facts() for name in fact["entries"]}
    assert sorted(published() - listed) == []


def test_there_are_many() -> None:
    assert len({name for fact in facts() for name in fact["entries"]}) >= 80
