"""A formula solved back: which argument gives this answer?"""

from __future__ import annotations

import math
from collections.abc import Callable, Mapping
from typing import Any

from diagnose.formulas.formula import Formula
from diagnose.physics.manual import manual_of

__all__ = ["solve_back", "solve_function"]

_STEPS = 200  # halvings: more than a double has bits
_LOOKS = 64  # places at which a change of sign is looked for


def solve_back(formula: Formula, values: Mapping[str, Any], answer: float, name: str) -> float:
    """The SI value of argument `name` for which the first answer is `answer`, the other arguments as given.

    Raises ValueError when the docstring says that the formula can't be solved back for it, or when no
    value in the range the formula is meant for gives that answer.
    """
    argument = formula.argument(name)
    if argument.many != 1 or argument.quantity == "words":
        raise ValueError(f"{formula.title}: can't be solved back for {argument.ask.lower()}")

    def first(**given: Any) -> float:
        result = formula.run(**given)
        return float(result[0] if isinstance(result, tuple) else result)

    if name in manual_of(formula.run).one_way:
        raise ValueError(f"{formula.title}: can't be solved back for {argument.ask.lower()}")
    parameter = manual_of(formula.run).parameters[name]
    if parameter.low is None or parameter.high is None:
        raise ValueError(f"{formula.title}: can't be solved back for {argument.ask.lower()}")
    try:
        return solve_function(first, values, answer, name, parameter.low, parameter.high)
    except ValueError:
        raise ValueError(f"{formula.title}: no {argument.ask.lower()} in its usual range gives that") from None


def solve_function(
    run: Callable[..., float], values: Mapping[str, Any], answer: float, name: str, low: float, high: float
) -> float:
    """Bisection for `run(..., name=x) == answer` with x between `low` and `high`.

    Places where the physics refuses its arguments are stepped over. Raises ValueError when none fits.
    """

    def off(x: float) -> float | None:
        try:
            return run(**{**values, name: x}) - answer
        except (ValueError, ZeroDivisionError, OverflowError):
            return None

    before: tuple[float, float] | None = None
    for nth in range(_LOOKS + 1):
        x = low + (high - low) * nth / _LOOKS
        at = off(x)
        if at is None:
            before = None
            continue
        if at == 0:
            return x
        if before is not None and (before[1] < 0) != (at < 0):
            return _halve(off, before[0], x, before[1] < 0)
        before = (x, at)
    raise ValueError(f"no {name} between {low} and {high} gives {answer}")


def _halve(off: Callable[[float], float | None], low: float, high: float, rising: bool) -> float:
    for _ in range(_STEPS):
        middle = (low + high) / 2
        if middle in (low, high):
            break
        at = off(middle)
        if at is None or not math.isfinite(at):
            raise ValueError("the formula refuses values between")
        if (at < 0) == rising:
            low = middle
        else:
            high = middle
    return (low + high) / 2
