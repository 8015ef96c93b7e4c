"""The README says what is so: its commands exist, its options exist, its example ranks, its dialogue was replayed."""

from __future__ import annotations

import re
import tomllib
from pathlib import Path

import click

from diagnose.cli import cli
from tests.golden.quote import quote, quoted

ROOT = Path(__file__).resolve().parents[2]
README = (ROOT / "README.md").read_text("utf-8")


def commands(group: click.Group, before: tuple[str, ...] = ()) -> set[tuple[str, ...]]:
    found: set[tuple[str, ...]] = set()
    for name, command in group.commands.items():
        grouped = isinstance(command, click.Group) and command.commands  # the calculator makes its own as asked
        found |= commands(command, (*before, name)) if grouped else {(*before, name)}
        if grouped and command.invoke_without_command:  # does something of its own, as practice does
            found.add((*before, name))
    return found


def blocks(language: str) -> list[str]:
    return re.findall(rf"```{language}\n(.*?)```", README, re.S)


def test_every_command_is_in_the_readme_and_none_that_is_not() -> None:
    listed = next(block for block in blocks("text") if "diagnose resume" in block)
    told = set()
    for line in listed.splitlines():
        words = line.removeprefix("diagnose").split("  ")[0].split()
        told.add(tuple(w for w in words if w.isalpha() and w.islower()))
    assert told - {()} == commands(cli) - {("help",)}


def test_every_option_named_exists() -> None:
    options = {o for p in all_params(cli) for o in p.opts}
    for option in re.findall(r"`(--[a-z-]+)", README):
        assert option in options | {"--schema"}


def all_params(group: click.Command) -> list[click.Parameter]:
    found = list(group.params)
    if isinstance(group, click.Group):
        for command in group.commands.values():
            found += all_params(command)
    return found


def test_the_job_stands_in_one_paragraph_at_the_top() -> None:
    first = README.split("\n\n")[1]
    assert first.startswith("`diagnose` helps a field service technician find out **why**")


def test_the_example_case_ranks() -> None:
    from diagnose.job.assess import assess
    from diagnose.job.case import case_of, case_state
    from diagnose.model import load_book

    book = load_book()
    data = tomllib.loads(next(block for block in blocks("toml") if "machine" in block))
    rows = assess(book, case_state(case_of(data, "README"), book)).rows
    assert rows[0].id == "booster_electric.element_open"


def test_the_dialogue_is_one_that_is_replayed() -> None:
    assert quoted() == quote(), "tell it anew: python -m tests.golden.quote"


def test_the_test_command_is_what_ci_runs() -> None:
    script = (ROOT / ".ci" / "run").read_text("utf-8")
    assert "<!-- test -->" in script
    assert "<!-- test -->" in README
