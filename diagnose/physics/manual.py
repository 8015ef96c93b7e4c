"""What a formula's docstring says of it, read once: calculator, rules and tests all go by the same text."""

from __future__ import annotations

import inspect
import re
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from functools import cache
from itertools import takewhile

__all__ = ["Manual", "Parameter", "manual_of"]

_SECTIONS = ("Parameters", "Returns", "Notes", "Examples", "References")
_NUMBER = r"-?(?:\d+\.?\d*|\.\d+)(?:e[+-]?\d+)?"
_RANGE = re.compile(rf"\[([^\]]*)\](?:, ({_NUMBER}) to ({_NUMBER}))?")
_ONE_WAY = re.compile(r"Not solved back for ((?:\w+)(?:(?:, | and )\w+)*)")
# The sentence that carries it, up to a full stop that ends a sentence: it is for solving back, not for the reader.
_SAID_ONCE = re.compile(r"Not solved back for .*?\.(?:\s+(?=[A-Z])|$)")


@dataclass(frozen=True)
class Parameter:
    """One argument: what it is, its SI unit, and from where to where the formula is meant."""

    name: str
    kind: str
    text: str
    unit: str
    low: float | None = None
    high: float | None = None


@dataclass(frozen=True)
class Manual:
    """A docstring in its parts."""

    sentence: str
    formula: str
    parameters: Mapping[str, Parameter]
    returns: str
    notes: str
    examples: str
    references: str
    one_way: tuple[str, ...] = ()  # arguments it can't be solved back for, as the notes say


@cache
def manual_of(function: Callable[..., object]) -> Manual:
    """The manual of a formula. Raises ValueError when a part is missing."""
    doc = inspect.getdoc(function) or ""
    name = getattr(function, "__name__", "function")
    parts = _parts(doc)
    missing = [section for section in _SECTIONS if section not in parts]
    if missing:
        raise ValueError(f"{name}: the docstring lacks {', '.join(missing)}")
    sentence, _, rest = parts[""].strip().partition("\n\n")
    if not rest.strip():
        raise ValueError(f"{name}: the docstring lacks its formula, a paragraph after the first sentence")
    one_way = _ONE_WAY.search(" ".join(parts["Notes"].split()))
    parameters = {p.name: p for p in _parameters(parts["Parameters"])}
    named = re.split(r", | and ", one_way[1]) if one_way else []
    return Manual(
        " ".join(sentence.split()),
        " ".join(rest.split()),
        parameters,
        " ".join(parts["Returns"].split()),
        _SAID_ONCE.sub("", " ".join(parts["Notes"].split())).strip(),
        parts["Examples"],
        " ".join(parts["References"].split()),
        tuple(takewhile(parameters.__contains__, named)),  # the sentence may go on behind the names
    )


def _parts(doc: str) -> dict[str, str]:
    """Text by section; what stands before the first section under ""."""
    parts: dict[str, list[str]] = {"": []}
    current = ""
    lines = doc.splitlines()
    for nth, line in enumerate(lines):
        below = lines[nth + 1] if nth + 1 < len(lines) else ""
        if line in _SECTIONS and set(below) == {"-"}:
            current = line
            parts[current] = []
        elif set(line) != {"-"} or not line:
            parts[current].append(line)
    return {name: "\n".join(text).strip("\n") for name, text in parts.items()}


def _parameters(text: str) -> list[Parameter]:
    found: list[Parameter] = []
    for block in re.split(r"\n(?=\S)", text):
        head, _, rest = block.partition("\n")
        name, _, kind = head.partition(" : ")
        told = " ".join(rest.split())
        unit = _RANGE.search(told)
        low, high = (float(unit[2]), float(unit[3])) if unit and unit[2] else (None, None)
        found.append(Parameter(name.strip(), kind.strip(), told, unit[1] if unit else "", low, high))
    return found
