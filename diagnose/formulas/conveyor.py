"""Conveyor: speed, dwell, timers, force: as the trade asks it."""

from __future__ import annotations

from diagnose.formulas.formula import Formula

__all__ = ["FORMULAS"]

FORMULAS: tuple[Formula, ...] = ()
