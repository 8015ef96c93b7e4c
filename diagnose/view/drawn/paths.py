"""Every way from a complaint to one cause, in words, with the checks on the way."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from diagnose.inference import build_tree
from diagnose.model import Book, Machine, fits
from diagnose.view.drawn.chart import Chart, Decides
from diagnose.view.drawn.text import ANY_MACHINE, decided
from diagnose.view.layout import Line, number_word, percent, wrap

__all__ = ["Path", "Step", "path_lines", "paths_to"]

SHARE = "Percent: how often it is a reason of that complaint, before anything is read."


@dataclass(frozen=True)
class Step:
    """A node on the way. `asks` is what its gate asks; `beside` must then be so as well; `check` tells it is this."""

    node: str
    title: str
    asks: str
    remarks: tuple[str, ...]
    beside: tuple[str, ...]
    check: Decides | None


@dataclass(frozen=True)
class Path:
    """One way down, the complaint first. `share`: how often the cause is a reason of this complaint."""

    complaint: str
    share: float
    steps: tuple[Step, ...]


def paths_to(book: Book, cause: str, machine: Machine | None) -> list[Path]:
    """Every way to the cause from every complaint that can be made of this machine, by complaint."""
    tree = build_tree(book, machine)
    found: list[Path] = []
    for name, complaint in book.complaints.items():
        there = cause in tree.below(name) and (machine is None or fits(machine, complaint.fits))
        if there:
            chart = Chart(book, name, machine, tree)
            ways = sorted(tree.paths(name, cause), key=lambda way: (len(way), way))
            found += [Path(name, chart.share.get(cause, 0.0), tuple(_steps(chart, way))) for way in ways]
    return found


def _steps(chart: Chart, way: Sequence[str]) -> Iterator[Step]:
    for above, node in zip([None, *way], way, strict=False):
        gate = chart.tree.nodes[above] if above else None
        beside = tuple(chart.title(n) for n in gate.inputs if n != node) if gate and gate.need > 1 else ()
        told = chart.parting.shown(node) if gate is None or gate.need > 1 else chart.parting.among(gate.id, node)
        useful = chart.at_home(chart.useful(told), (node,))[:1] if gate else []
        check = chart.decide(useful[0], node) if useful else None
        parent = above if above else None
        remarks = tuple(r for r in chart.remarks(node, parent) if r != chart.asks(node))
        yield Step(node, chart.title(node), chart.asks(node), remarks, beside, check)


def path_lines(book: Book, cause: str, machine: Machine | None, paths: Sequence[Path], width: int) -> list[Line]:
    """The page: the cause, then each complaint with its ways."""
    where = machine.type.title if machine else ANY_MACHINE
    lines = wrap(f"{book.title(cause)} ({cause})", width, role="heading")
    lines += wrap(where, width, "  ", role="dim")
    complaints = list(dict.fromkeys(p.complaint for p in paths))
    if not paths:
        return [*lines, Line(), *wrap("No complaint leads to it here.", width)]
    ways = f"{number_word(len(paths)).capitalize()} way{'s' if len(paths) != 1 else ''}"
    said = f"{ways} from {number_word(len(complaints))} complaint{'s' if len(complaints) != 1 else ''}. {SHARE}"
    lines += wrap(said, width, "  ", role="dim")
    for complaint in complaints:
        of_it = [p for p in paths if p.complaint == complaint]
        lines += [Line(), *wrap(_head(of_it[0]), width, role="heading")]
        for nth, path in enumerate(of_it, 1):
            if len(of_it) > 1:
                lines += wrap(f"way {nth} of {len(of_it)}", width, "  ", role="dim")
            lines += _way(path, width)
    return lines


def _head(path: Path) -> str:
    first = path.steps[0]
    remarks = f" ({', '.join(first.remarks)})" if first.remarks else ""
    return f"{first.title} ({path.complaint}): {percent(path.share).strip()}{remarks}"


def _way(path: Path, width: int) -> list[Line]:
    lines: list[Line] = []
    for step in path.steps[1:]:
        remarks = f" ({', '.join(step.remarks)})" if step.remarks else ""
        lines += wrap(f"{step.title}{remarks}", width, "  because: ", "    ")
        if step.beside:
            lines += wrap(f"{'; '.join(step.beside)}", width, "    together with: ", "      ")
        if step.check:
            lines += wrap(decided(step.check), width, "    check: ", "      ", role="dim")
    return lines
