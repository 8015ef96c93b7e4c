"""The formula worked, forward or back, and its answer held against the figure of good order."""

from __future__ import annotations

import math
from dataclasses import dataclass, replace

from diagnose.calculator.figures import FigureError, Wanted
from diagnose.calculator.parse import show_si
from diagnose.formulas import Worked, solve_back, work
from diagnose.formulas.formula import Answer
from diagnose.formulas.working import Given
from diagnose.model import Book, Machine
from diagnose.physics.demand import RefusedError
from diagnose.rules.bands import Edge, limit_end
from diagnose.units import Quantity, Unit, find_unit

__all__ = ["Held", "Reckoned", "reckon"]


@dataclass(frozen=True)
class Held:
    """An answer against a figure of good order."""

    title: str
    low: Edge | None
    high: Edge | None
    verdict: str  # inside | below | above


@dataclass(frozen=True)
class Reckoned:
    """A formula with its figures, and what its answer was held against."""

    worked: Worked
    held: Held | None = None


def reckon(wanted: Wanted, book: Book, machine: Machine | None = None) -> Reckoned:
    """Work it out. Raises FigureError where the physics refuses a figure, or nothing gives the answer."""
    formula, given = wanted.formula, dict(wanted.given)
    try:
        if wanted.find and wanted.answer is not None:
            values = {name: each.value for name, each in given.items()}
            found = solve_back(formula, values, wanted.answer, wanted.find)
            given[wanted.find] = Given(found, "worked back")
        worked = replace(work(formula, given, wanted.system), solved=wanted.find)
    except RefusedError as error:
        raise FigureError(_in_trade_words(error, wanted)) from None
    except (ValueError, ZeroDivisionError, OverflowError) as error:
        raise FigureError(f"these figures can't stand together: {error}") from None
    return Reckoned(worked, _held(wanted, worked, book, machine))


def _in_trade_words(error: RefusedError, wanted: Wanted) -> str:
    """The physics names its argument and speaks SI; whoever typed it knows it by other words and units."""
    argument = next((a for a in wanted.formula.takes if a.name == error.name), None)
    if argument is None:
        return f"these figures can't stand together: {error}"
    low, high = (show_si(end, argument, wanted.system) for end in (error.low, error.high))
    if error.value == 0 and error.low == 0:
        wants = "it must be above nought"
    elif math.isinf(error.high):
        wants = "it must be above nought" if error.low == 0 else f"it must be {low} or more"
    else:
        wants = f"the formula holds from {low} to {high}"
    shown = show_si(error.value, argument, wanted.system)
    return f"{argument.ask} (--{argument.name.replace('_', '-')}): {shown} won't do; {wants}"


def _held(wanted: Wanted, worked: Worked, book: Book, machine: Machine | None) -> Held | None:
    limit = book.limits.get(wanted.formula.limit)
    result = worked.result
    if limit is None or isinstance(result, str):
        return None
    entry = wanted.formula.gives[0]
    unit = find_unit(entry.unit(wanted.system), limit.quantity)
    if unit is None:
        return None
    low, high = (_end(book, machine, limit.id, end, unit) for end in ("low", "high"))
    if low is None and high is None:
        return None
    value = _quantity(result, entry, unit).value
    verdict = "inside"
    if low is not None and value < low.value - 1e-9:
        verdict = "below"
    elif high is not None and value > high.value + 1e-9:
        verdict = "above"
    return Held(limit.title, low, high, verdict)


def _quantity(result: float, entry: Answer, unit: Unit) -> Quantity:
    return Quantity(unit.from_si(float(result)), unit)


def _end(book: Book, machine: Machine | None, name: str, end: str, unit: Unit) -> Edge | None:
    try:
        return limit_end(book, machine, name, end, unit)
    except LookupError:
        return None
