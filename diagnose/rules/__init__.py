"""Floor 3: readings and a machine become findings, each with its working shown."""

from __future__ import annotations

from collections.abc import Sequence

from diagnose.model import Book, Machine, Reading
from diagnose.rules.engine import Firing, Rule, RuleRun, Unanswered, run
from diagnose.rules.expected import expected
from diagnose.rules.facts import Expected, Facts, Silent
from diagnose.rules.registry import RULES

__all__ = [
    "RULES",
    "Expected",
    "Facts",
    "Firing",
    "Rule",
    "RuleRun",
    "Silent",
    "Unanswered",
    "expected",
    "findings",
]


def findings(book: Book, machine: Machine, readings: Sequence[Reading]) -> RuleRun:
    """Run every rule over the readings, given in the order they were taken."""
    return run(book, machine, readings, RULES)
