"""What the calculator knows, by subject, and what a word may mean."""

from __future__ import annotations

import re
from difflib import get_close_matches

from diagnose.formulas import SUBJECTS, Formula, all_formulas
from diagnose.view import Line, wrap

__all__ = ["list_formulas", "list_some", "list_subjects", "matching"]


def list_subjects(width: int) -> list[str]:
    """Every subject with its formulas."""
    lines: list[str] = ["Subjects; `diagnose work SUBJECT` tells what each formula answers."]
    for subject, title in SUBJECTS.items():
        here = [f.id for f in all_formulas().values() if f.subject == subject]
        lines += ["", *wrap(f"{subject}: {title}", width, role="heading"), *wrap(", ".join(here), width, "  ")]
    lines += ["", *wrap("Like: diagnose work booster-rise --power 30kW --flow 4.2gpm", width)]
    return lines


def list_formulas(subject: str, width: int) -> list[str]:
    """The formulas of one subject: name, what it answers, and what it takes."""
    lines: list[str] = [*wrap(SUBJECTS[subject], width, role="heading")]
    for formula in all_formulas().values():
        if formula.subject == subject:
            lines += _formula(formula, width)
    return lines


def list_some(words: str, names: list[str], width: int) -> list[str]:
    """The formulas that some words may mean, to choose from."""
    lines: list[str] = [*wrap(f"{words}: which of these {len(names)}?", width, role="heading")]
    for name in names:
        lines += _formula(all_formulas()[name], width)
    return lines


def _formula(formula: Formula, width: int) -> list[Line]:
    options = " ".join(f"--{a.name.replace('_', '-')}" for a in formula.takes)
    return [
        Line(),
        *wrap(formula.id, width, "  ", role="question"),
        *wrap(formula.asks, width, "    "),
        *wrap(options, width, "    ", role="dim"),
    ]


def matching(word: str, near: bool = True) -> list[str]:
    """Formulas a word or two may mean: by their names, titles and search words, else (if `near`) by likeness."""
    wanted = word.casefold().strip().replace("_", "-").replace(" ", "-")
    every = all_formulas()
    if wanted in every:
        return [wanted]
    parts = re.findall(r"\w+", wanted)
    found = [name for name, f in every.items() if parts and all(p in _words(f) for p in parts)]
    if found or not near:
        return found
    return get_close_matches(wanted, list(every), 4, 0.5)


def _words(formula: Formula) -> str:
    return " ".join((formula.id, formula.title, formula.asks, *formula.also)).casefold()
