"""The examples in the manual pages of the rules, read and run."""

from __future__ import annotations

import re
from collections import defaultdict
from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache

from diagnose.model import Book, Machine, Reading, load_book
from diagnose.model.answers import parse_answer
from diagnose.rules.engine import Rule, RuleRun, run
from diagnose.rules.registry import RULES

__all__ = ["EXAMPLES", "NAMES", "Example", "book", "read_example", "run_example"]

_LINE = re.compile(r"^(Fires|Silent): (\w+)(?: \(([^)]*)\))?: (.*?)(?: -> (\w+))?$")


@dataclass(frozen=True)
class Example:
    """One line: whether the rule fires, on which machine, with which readings, and what it then says."""

    fires: bool
    machine: Machine
    readings: tuple[Reading, ...]
    outcome: str | None


@cache
def book() -> Book:
    return load_book()


def function_of(rule: Rule) -> str:
    """Module and name of the function that runs."""
    function = getattr(rule.run, "func", rule.run)
    return f"{function.__module__.rpartition('.')[2]}.{function.__name__}"


def _lines(rule: Rule) -> list[str]:
    """The example lines of the manual page; continued ones, indented deeper, made one."""
    text = re.sub(r"\n\s{6,}", " ", rule.manual)
    return [line.strip() for line in text.splitlines() if re.match(r"\s*(Fires|Silent):", line)]


EXAMPLES: Mapping[str, tuple[Rule, list[str]]] = {function_of(r): (r, _lines(r)) for r in reversed(RULES)}
NAMES: Mapping[str, set[str]] = defaultdict(set)
for _rule in RULES:
    NAMES[function_of(_rule)].add(_rule.name)


def read_example(line: str) -> Example:
    """`Fires: machine (figure = value, ...): check = answer; ... -> outcome`; AssertionError when it is none."""
    match = _LINE.match(line)
    assert match, f"not `Fires: machine (figure = value, ...): check = answer; ... -> outcome`: {line}"
    word, machine, figures, readings, outcome = match.groups()
    own = dict(re.split(r"\s*=\s*", part, maxsplit=1) for part in figures.split(", ")) if figures else {}
    taken = tuple(_reading(nth, part) for nth, part in enumerate(readings.split("; ")))
    return Example(word == "Fires", Machine("example", book().machines[machine], own), taken, outcome)


def _reading(nth: int, text: str) -> Reading:
    name, _, answer = text.partition(" = ")
    check = book().checks[name.strip()]
    values, outcome = parse_answer(check, answer.strip())
    return Reading(f"r{nth}", check.id, values, outcome)


def run_example(example: Example, rules: tuple[Rule, ...] = RULES) -> RuleRun:
    return run(book(), example.machine, example.readings, rules)
