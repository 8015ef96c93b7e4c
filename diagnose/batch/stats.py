"""`diagnose knowledge stats`: how much is known, where it stands, and how far it carries, complaint by complaint."""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Mapping, Sequence

import msgspec

from diagnose.batch.output import SCHEMA, to_json
from diagnose.batch.shelf import KINDS
from diagnose.inference import FaultTree, build_tree
from diagnose.inference.played import likely_causes, play
from diagnose.inference.separation import inseparable
from diagnose.model import Book, Machine, fits
from diagnose.model.lint.basis import all_bases
from diagnose.view import Line, percent, table, wrap

__all__ = ["Measured", "measure", "show_stats"]

_MEANING = (
    "Each complaint on the type of machine with most causes for it. Pairs: causes that no check tells apart. Minutes: "
    "to a verified repair, over jobs played from the tables themselves, the advice deciding. Idle: share of the "
    "minutes of looking that went to checks no answer of which could change the repair or the leading cause. This "
    "measures whether the knowledge finds what it knows, not whether it is right."
)


class Measured(msgspec.Struct, frozen=True, kw_only=True):
    """How far the knowledge carries for one complaint; the figures of played jobs are None where none was played."""

    complaint: str
    machine: str
    causes: int
    inseparable: list[tuple[str, str]]
    minutes: float | None = None
    checks: float | None = None
    idle: float | None = None
    wrong_repairs: float | None = None
    helped: float | None = None


def measure(book: Book, complaint: str, jobs: int, trees: Mapping[str, FaultTree] | None = None) -> Measured:
    """Measure one complaint over so many played jobs; `trees` of all types of machine, where they are made already."""
    machine, tree = _fullest(book, complaint, trees if trees is not None else _trees(book))
    causes = sum(tree.nodes[c].kind == "cause" for c in tree.causes_under(complaint))
    bare = Measured(complaint=complaint, machine=machine, causes=causes, inseparable=inseparable(tree, complaint))
    plays = [play(book, tree, complaint, cause, nth) for nth, cause in enumerate(likely_causes(tree, complaint, jobs))]
    if not plays:
        return bare
    looking = sum(p.looking for p in plays)
    return msgspec.structs.replace(
        bare,
        minutes=sum(p.minutes for p in plays) / len(plays),
        checks=sum(p.checks for p in plays) / len(plays),
        idle=sum(p.idle for p in plays) / looking if looking else 0.0,
        wrong_repairs=sum(p.wrong_repairs for p in plays) / len(plays),
        helped=sum(p.helped for p in plays) / len(plays),
    )


def _trees(book: Book) -> dict[str, FaultTree]:
    return {kind.id: build_tree(book, Machine(kind.id, kind)) for kind in book.machines.values()}


def _fullest(book: Book, complaint: str, trees: Mapping[str, FaultTree]) -> tuple[str, FaultTree]:
    """The type of machine on which most can bring the complaint about, and its tree."""
    wanted = book.complaints[complaint].fits
    here = {name: tree for name, tree in trees.items() if fits(Machine(name, book.machines[name]), wanted)}
    if not here:
        raise ValueError(f"no type of machine has the complaint {complaint}")
    return max(here.items(), key=lambda each: len(each[1].causes_under(complaint)))


def show_stats(
    book: Book, jobs: int, as_json: bool, width: int, progress: Callable[[str], None] = lambda _: None
) -> list[str]:
    """Counts by kind, gate and basis, and every complaint measured; `progress` is told which one is being played."""
    counts = {kind: len(getattr(book, kind)) for kind in KINDS[:-1]}
    gates = Counter(event.gate for event in book.events.values())
    bases = Counter(basis.kind for _, basis in all_bases(book))
    shops = Counter(place.shop for place in book.places.values() if place.shop)
    trees = _trees(book)
    measured = []
    for nth, complaint in enumerate(book.complaints, 1):
        progress(f"{nth} of {len(book.complaints)}: {complaint}")
        measured.append(measure(book, complaint, jobs, trees))
    if as_json:
        data = {"counts": counts, "gates": dict(gates), "basis": dict(bases), "shops": dict(shops)}
        return [to_json({"schema": SCHEMA, **data, "complaints": measured})]
    lines: list[str] = [f"{count:5} {kind}" for kind, count in counts.items()]
    lines += [f"{count:5} entries from your shop's folder {name}" for name, count in shops.items()]
    lines += ["", "events by gate:", *(f"{count:5} {gate}" for gate, count in sorted(gates.items()))]
    lines += ["", "where entries stand:", *(f"{count:5} {kind}" for kind, count in sorted(bases.items()))]
    return [*lines, "", *_measured(measured, width)]


def _measured(measured: Sequence[Measured], width: int) -> list[Line]:
    headers = ("causes", "pairs", "minutes", "checks", "idle", "wrong", "helped", "complaint")
    rows = [
        (
            str(m.causes),
            str(len(m.inseparable)),
            _number(m.minutes, "{:.0f}"),
            _number(m.checks, "{:.1f}"),
            "" if m.idle is None else percent(m.idle).strip(),
            _number(m.wrong_repairs, "{:.2f}"),
            "" if m.helped is None else percent(m.helped).strip(),
            m.complaint,
        )
        for m in measured
    ]
    lines = [*wrap(_MEANING, width), Line(), *table(headers, rows, width, indent="")]
    for m in measured:
        lines += [line for a, b in m.inseparable for line in wrap(f"{m.complaint}: {a} and {b} look alike", width)]
    return lines


def _number(value: float | None, form: str) -> str:
    return "" if value is None else form.format(value)
