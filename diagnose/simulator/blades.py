"""Blades of dampers: what a handle opens, each kind with its own curve."""

from __future__ import annotations

import math
from dataclasses import dataclass

__all__ = ["KINDS", "Blade"]

KINDS = ("butterfly", "pair", "slide")
# Loss of a blade in line with the air, over the velocity pressure, and how fast it grows as the blade is turned, over
# a butterfly's: a pair of blades blocks a little more when open and shuts more gently. Memory of handbooks' tables.
_LOSSES = {"butterfly": (0.2, 1.0), "pair": (0.5, 0.85)}
_CONTRACTED = 0.8  # of the free way that the air uses behind a slide's edge: judgement


@dataclass(frozen=True)
class Blade:
    """A blade in its box: `wide` is what it opens with the handle wide open, over the opening that would be right.

    `body` is the loss of slot, adapter and box without the blade, over the velocity pressure. `steep` says how fast the
    loss of a blade on a spindle grows with each degree it is turned: handbooks' butterflies in round ducts lie at
    0.09 to 0.11 (memory). `leak` is what the shut blade lets by, over `wide`.
    """

    kind: str
    wide: float
    body: float = 2.0
    steep: float = 0.1
    leak: float = 0.02

    def opening(self, handle: float) -> float:
        """Opening over the right one, with the handle at 0 (shut) to 1 (wide open).

        >>> blade = Blade("butterfly", 2.0)
        >>> [round(blade.opening(handle), 2) for handle in (0.0, 0.33, 0.67, 1.0)]
        [0.07, 0.32, 1.22, 2.0]
        """
        free = max(self.leak, math.sqrt((self.body + self._loss(1.0)) / (self.body + self._loss(handle))))
        return self.wide * free

    def _loss(self, handle: float) -> float:
        if self.kind == "slide":
            return math.pow(1.0 / (_CONTRACTED * max(handle, 1e-3)) - 1.0, 2.0)
        open_loss, gentle = _LOSSES[self.kind]
        return open_loss * math.exp(gentle * self.steep * 90.0 * (1.0 - handle))
