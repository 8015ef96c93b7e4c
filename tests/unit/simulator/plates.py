"""Plates for the simulator's tests, from the types of machine in the book; and machines made of them."""

from __future__ import annotations

from functools import cache
from pathlib import Path

from diagnose.model import Book, Machine
from diagnose.model.loader import load_book
from diagnose.model.machine import PLATE_FIGURES
from diagnose.simulator.plate import Plate

__all__ = ["BOOK", "TYPES", "plate"]

ROOT = Path(__file__).resolve().parents[3]
BOOK: Book = load_book(ROOT / "knowledge")
TYPES = tuple(BOOK.machines)


@cache
def plate(kind: str) -> Plate:
    """The plate of a type of machine, in SI, for the simulator."""
    machine = Machine(kind, BOOK.machines[kind])
    figures = {name: machine.plate(name) for name in PLATE_FIGURES}
    return Plate(machine.type.traits, {name: q.si for name, q in figures.items() if q is not None})
