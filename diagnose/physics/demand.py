"""What every formula demands of its arguments: an error names the one that makes no sense, and the bounds."""

from __future__ import annotations

import math

__all__ = ["RefusedError", "not_negative", "positive", "within"]


class RefusedError(ValueError):
    """An argument outside what a formula is good for: its name, its SI value, and the bounds in SI."""

    def __init__(self, says: str, name: str, value: float, low: float, high: float = math.inf) -> None:
        super().__init__(says)
        self.name, self.value, self.low, self.high = name, value, low, high


def positive(**values: float) -> None:
    """Raise RefusedError for the first value that is not a finite number above nought."""
    for name, value in values.items():
        if not (math.isfinite(value) and value > 0):
            raise RefusedError(f"{name} must be above nought, not {value}", name, value, 0.0)


def not_negative(**values: float) -> None:
    """Raise RefusedError for the first value that is negative or no finite number."""
    for name, value in values.items():
        if not (math.isfinite(value) and value >= 0):
            raise RefusedError(f"{name} can't be {value}", name, value, 0.0)


def within(low: float, high: float, **values: float) -> None:
    """Raise RefusedError for the first value outside [low, high], the range a formula is good for."""
    for name, value in values.items():
        if not low <= value <= high:
            says = f"{name} = {value} is outside {low} to {high}, where the formula holds"
            raise RefusedError(says, name, value, low, high)
