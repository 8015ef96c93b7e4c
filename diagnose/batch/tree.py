"""`diagnose tree`: the fault tree of a complaint in several forms, and every way to one cause."""

from __future__ import annotations

import os
from pathlib import Path as File

from diagnose.batch.tree_json import chart_json, paths_json
from diagnose.job.machines import MachineError
from diagnose.model import Book, Machine
from diagnose.view.drawn.chart import Chart, Folding
from diagnose.view.drawn.paths import path_lines, paths_to

__all__ = ["FORMATS", "NotThereError", "draw_tree", "trace_cause", "write_lines"]

FORMATS = ("text", "json", "dot", "mermaid", "svg", "open-psa")


class NotThereError(ValueError):
    """What was asked for is not known, or does not arise on this machine."""


def draw_tree(
    book: Book, complaint: str, machine: Machine | None, form: str, folding: Folding, width: int, screen: int
) -> list[str]:
    """The tree of a complaint as lines of one of FORMATS. Raises NotThereError, NoSuchNodeError."""
    chart = Chart(book, complaint, machine)
    if not chart.possible:
        assert machine is not None
        raise NotThereError(f"{chart.title(complaint)!r} can't be complained of on this machine: {machine.type.title}")
    if form == "json":
        return [chart_json(chart, folding)]
    if form == "dot":
        from diagnose.view.drawn.dot import dot_lines

        return dot_lines(chart, folding)
    if form == "mermaid":
        from diagnose.view.drawn.mermaid import mermaid_lines

        return mermaid_lines(chart, folding)
    if form == "svg":
        from diagnose.view.drawn.svg import svg_lines

        return svg_lines(chart, folding)
    if form == "open-psa":
        from diagnose.view.drawn.open_psa import open_psa_lines

        return open_psa_lines(chart)
    from diagnose.view.drawn.text import tree_lines

    return [*tree_lines(chart, folding, width, screen)]


def trace_cause(book: Book, cause: str, machine: Machine | None, as_json: bool, width: int) -> list[str]:
    """Every way from every complaint to a cause."""
    paths = paths_to(book, cause, machine)
    if as_json:
        return [paths_json(book, cause, machine, paths)]
    return [*path_lines(book, cause, machine, paths, width)]


def write_lines(lines: list[str], file: File) -> str:
    """Write a file whole or not at all; returns what to say of it. Raises MachineError where it can't be written."""
    fresh = file.with_name(f"{file.name}.new")
    try:
        with open(fresh, "w", encoding="utf-8", newline="\n") as out:
            out.write("\n".join(lines) + "\n")
            out.flush()
            os.fsync(out.fileno())
        fresh.replace(file)
    except OSError as error:
        raise MachineError(f"{file} can't be written: {error.strerror}; name another file with --out") from None
    return f"Written to {file}."
