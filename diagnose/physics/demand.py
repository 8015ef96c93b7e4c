"""What every formula demands of its arguments: a ValueError names the one that makes no sense."""

from __future__ import annotations

import math

__all__ = ["not_negative", "positive", "within"]


def positive(**values: float) -> None:
    """Raise ValueError for the first value that is not a finite number above nought."""
    for name, value in values.items():
        if not (math.isfinite(value) and value > 0):
            raise ValueError(f"{name} must be above nought, not {value}")


def not_negative(**values: float) -> None:
    """Raise ValueError for the first value that is negative or no finite number."""
    for name, value in values.items():
        if not (math.isfinite(value) and value >= 0):
            raise ValueError(f"{name} can't be {value}")


def within(low: float, high: float, **values: float) -> None:
    """Raise ValueError for the first value outside [low, high], the range a formula is good for."""
    for name, value in values.items():
        if not low <= value <= high:
            raise ValueError(f"{name} = {value} is outside {low} to {high}, where the formula holds")
