"""`diagnose machine`: saved machines, what stands on their plates, and what happened on them."""

from __future__ import annotations

from pathlib import Path

from diagnose.batch.output import SCHEMA, to_json
from diagnose.batch.past import history_record
from diagnose.job.history import read_history
from diagnose.job.journal import Journal
from diagnose.job.machines import list_machines, load_machine
from diagnose.model import PLATE_FIGURES, Book
from diagnose.view import table, wrap
from diagnose.view.past import history_pages

__all__ = ["list_saved", "show_saved"]


def list_saved(folder: Path, as_json: bool, width: int) -> list[str]:
    """Every saved machine: name, type, site, serial."""
    saved = list_machines(folder)
    if as_json:
        return [to_json({"schema": SCHEMA, "machines": list(saved)})]
    if not saved:
        return ["No machines saved yet. `diagnose` saves one when you answer its plate."]
    rows = [(m.name, m.type, m.serial or "-", m.site or "-") for m in saved]
    return [*table(("name", "type", "serial", "site"), rows, width, indent="")]


def show_saved(book: Book, folder: Path, journal: Journal, name: str, as_json: bool, width: int) -> list[str]:
    """One machine: each plate figure, read from its plate or assumed from its type; then its history."""
    saved = load_machine(folder, name)
    machine = saved.machine(book)
    figures = [
        (PLATE_FIGURES[f].ask, str(machine.plate(f)), "type's figure, assumed" if machine.assumed(f) else "read")
        for f in PLATE_FIGURES
        if machine.plate(f) is not None
    ]
    history = read_history(journal, book, saved.name)
    if as_json:
        rows = [{"figure": a, "value": v, "stands": s} for a, v, s in figures]
        past = history_record(history, book)
        return [to_json({"schema": SCHEMA, "machine": saved, "plate": rows, "history": past})]
    lines: list[str] = [*wrap(f"{saved.name}: {machine.type.title}", width)]
    lines += [str(x) for x in wrap(f"serial {saved.serial or '-'}, site {saved.site or '-'}", width)]
    lines += table(("figure", "value", "stands"), figures, width)
    return [*lines, "", *history_pages(history, book, width)]
