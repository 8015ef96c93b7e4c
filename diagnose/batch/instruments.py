"""`diagnose instrument`: list, add and remove the technician's own instruments."""

from __future__ import annotations

from datetime import date
from pathlib import Path

from diagnose.batch.output import SCHEMA, to_json
from diagnose.job.instruments import (
    OwnInstrument,
    add_instrument,
    in_use,
    list_instruments,
    overdue_since,
    remove_instrument,
)
from diagnose.model import Book
from diagnose.view import table, wrap

__all__ = ["add_own", "list_own", "remove_own"]


def list_own(book: Book, path: Path, as_json: bool, width: int) -> list[str]:
    """Every instrument: kind, accuracy, calibration, and how it is taken today."""
    own, today = list_instruments(path), date.today()
    if as_json:
        rows = [{"instrument": o, "overdue_since": overdue_since(o, today), "taken_as": _taken(book, o)} for o in own]
        return [to_json({"schema": SCHEMA, "instruments": rows})]
    if not own:
        return ["No instruments kept yet. `diagnose instrument add` keeps one; until then usual accuracies are taken."]
    rows_ = [(o.name, o.kind, o.accuracy, o.calibrated or "never", _taken(book, o) or "kind not known") for o in own]
    return [*table(("name", "kind", "accuracy", "calibrated", "taken today as"), rows_, width, indent="")]


def add_own(
    book: Book, path: Path, name: str, kind: str, accuracy: str, calibrated: str, interval: int, width: int
) -> list[str]:
    """Keep an instrument, and say how its readings are taken. Raises InstrumentError."""
    own = OwnInstrument(name=name.strip(), kind=kind, accuracy=accuracy, calibrated=calibrated, interval=interval)
    replaced = add_instrument(path, own, book.instruments)
    kept = next(o for o in list_instruments(path) if o.name == own.name)
    told = in_use(kept, book.instruments, date.today())
    return [str(x) for x in wrap(f"{'Changed' if replaced else 'Kept'}: {told}.", width)]


def remove_own(path: Path, name: str, width: int) -> list[str]:
    """Forget an instrument. Raises InstrumentError."""
    return [str(x) for x in wrap(f"Forgotten: {remove_instrument(path, name).name}.", width)]


def _taken(book: Book, own: OwnInstrument) -> str:
    return in_use(own, book.instruments, date.today()).text if own.kind in book.instruments else ""
