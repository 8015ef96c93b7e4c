"""A formula worked with figures: answers, the lines that lead to them, and what they stand on."""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

from diagnose.formulas.catalog import find_formula
from diagnose.formulas.formula import Answer, Argument, Formula
from diagnose.units import Quantity, Unit, show_number

__all__ = ["Given", "Worked", "render", "said", "system_of", "work"]

_FIELD = re.compile(r"\{(\w+)(:n)?\}")


@dataclass(frozen=True)
class Given:
    """One value in SI (a list of them, or a word), and where it comes from, in words."""

    value: float | tuple[float, ...] | str
    origin: str = ""
    assumed: bool = False


@dataclass(frozen=True)
class Worked:
    """A formula with figures in it.

    `results` are SI values (or words) by name of answer; `lines` the working in the system asked for;
    `outside` the names of arguments that lie outside the range the formula is meant for.
    """

    formula: Formula
    system: str
    given: Mapping[str, Given]
    results: Mapping[str, float | str]
    lines: tuple[str, ...]
    outside: tuple[str, ...] = ()
    solved: str = ""  # the argument that was solved for; "" = the formula was worked forward

    @property
    def result(self) -> float | str:
        """The first answer."""
        return next(iter(self.results.values()))


def system_of(unit: Unit) -> str:
    """The system of units that someone who writes `unit` works in."""
    return "si" if unit.system == "si" else "us"


def said(formula: str, system: str, **values: Any) -> tuple[str, ...]:
    """The lines of working of a formula for SI values by argument name: what a rule or a document shows.

    >>> said("booster-rise", "us", power=30e3, flow=4.2 * 3.785411784e-3 / 60)
    ('30 kW × 3412 ÷ (500 × 4.2 gpm) = 48.74 F°',)
    """
    return work(find_formula(formula), {n: Given(v) for n, v in values.items()}, system).lines


def work(formula: Formula, given: Mapping[str, Given], system: str = "us") -> Worked:
    """Work a formula forward. Raises ValueError where the physics refuses a value."""
    values = {name: each.value for name, each in given.items()}
    result = formula.run(**values)
    results = dict(
        zip((a.name for a in formula.gives), result if isinstance(result, tuple) else (result,), strict=True)
    )
    lines = render(formula, values, results, system)
    return Worked(formula, system, given, results, lines, _outside(formula, values))


def render(
    formula: Formula, values: Mapping[str, Any], results: Mapping[str, Any], system: str, digits: int = 4
) -> tuple[str, ...]:
    """The lines of working with the figures in them."""
    told: dict[str, tuple[str, str]] = {}
    for argument in formula.takes:
        if argument.name in values:
            told[argument.name] = _told(argument, values[argument.name], system, digits)
    for answer in formula.gives:
        told[answer.name] = _told(answer, results[answer.name], system, digits)
    for name, (value, quantity, us, si) in (formula.steps(**values) if formula.steps else {}).items():
        told[name] = _told(Answer(name, name, quantity, us, si), value, system, digits)
    return tuple(_FIELD.sub(lambda m: told[m[1]][1 if m[2] else 0], line) for line in formula.lines(system))


def _told(entry: Argument | Answer, value: Any, system: str, digits: int) -> tuple[str, str]:
    """A value with its unit, and its number alone."""
    if isinstance(value, str):
        return value, value
    if isinstance(value, tuple | list):
        each = [_told(entry, v, system, digits) for v in value]
        unit = each[0][0].removeprefix(each[0][1]) if each else ""
        numbers = ", ".join(n for _, n in each)
        return numbers + unit, numbers
    if entry.quantity in ("number", "words"):
        text = show_number(float(value), digits)
        return text, text
    quantity = Quantity.of_si(float(value), entry.quantity, entry.unit(system))
    number = show_number(quantity.value, digits)
    symbol = quantity.unit.symbol
    return f"{number}{'' if symbol == '%' else ' '}{symbol}", number


def _outside(formula: Formula, values: Mapping[str, Any]) -> tuple[str, ...]:
    found = []
    for name, value in values.items():
        parameter = formula.manual.parameters.get(name)
        if parameter is None or parameter.low is None or parameter.high is None or isinstance(value, str):
            continue
        each = value if isinstance(value, tuple | list) else (value,)
        if any(not parameter.low <= v <= parameter.high for v in each):
            found.append(name)
    return tuple(found)
