"""Every rule's manual page holds an example where it fires and one where it stays silent; both are run."""

from __future__ import annotations

import re
from collections import defaultdict
from functools import cache

import pytest

from diagnose.model import Book, Machine, Reading, load_book
from diagnose.model.answers import parse_answer
from diagnose.rules.engine import Rule, run
from diagnose.rules.registry import RULES

_LINE = re.compile(r"^(Fires|Silent): (\w+)(?: \(([^)]*)\))?: (.*?)(?: -> (\w+))?$")


@cache
def _book() -> Book:
    return load_book()


def _examples() -> dict[str, tuple[Rule, list[str]]]:
    """Function -> one of its rules, and the example lines of its docstring, each made one line."""
    found: dict[str, tuple[Rule, list[str]]] = {}
    for rule in RULES:
        function = getattr(rule.run, "func", rule.run)
        name = f"{function.__module__.rpartition('.')[2]}.{function.__name__}"
        text = re.sub(r"\n\s{6,}", " ", rule.manual)  # continued lines are indented deeper
        lines = [line.strip() for line in text.splitlines() if re.match(r"\s*(Fires|Silent):", line)]
        found.setdefault(name, (rule, lines))
    return found


EXAMPLES = _examples()
OF_FUNCTION = defaultdict(set)
for _rule in RULES:
    _function = getattr(_rule.run, "func", _rule.run)
    OF_FUNCTION[f"{_function.__module__.rpartition('.')[2]}.{_function.__name__}"].add(_rule.name)


@pytest.mark.parametrize("name", EXAMPLES)
def test_example_holds(name: str) -> None:
    rule, lines = EXAMPLES[name]
    said = {line.partition(":")[0] for line in lines}
    assert said == {"Fires", "Silent"}, "the docstring needs a line `Fires:` and a line `Silent:`"
    for word in ("Purpose:", "Formula:", "Source:"):
        assert word in rule.manual
    for line in lines:
        _hold(line, OF_FUNCTION[name])


def _hold(line: str, names: set[str]) -> None:
    match = _LINE.match(line)
    assert match, f"not `Fires: machine (figure = value, ...): check = answer; ... -> outcome`: {line}"
    word, machine, figures, readings, outcome = match.groups()
    own = dict(re.split(r"\s*=\s*", part, maxsplit=1) for part in figures.split(", ")) if figures else {}
    book = _book()
    taken = [_reading(book, nth, part) for nth, part in enumerate(readings.split("; "))]
    done = run(book, Machine("example", book.machines[machine], own), taken, RULES)
    fired = [f.finding for f in done.firings if f.finding is not None and f.rule in names]
    if word == "Silent":
        assert not fired, f"it fired: {line}"
        return
    assert fired, f"it did not fire: {line}"
    assert outcome in {finding.outcome for finding in fired}, f"{fired[0].outcome}, not {outcome}: {line}"
    for finding in fired:
        assert finding.working or finding.rule in ("chosen_outcome",), "a finding shows its working"


def _reading(book: Book, nth: int, text: str) -> Reading:
    name, _, answer = text.partition(" = ")
    check = book.checks[name.strip()]
    values, outcome = parse_answer(check, answer)
    return Reading(f"r{nth}", check.id, values, outcome)
