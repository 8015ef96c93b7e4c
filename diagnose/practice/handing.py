"""Results handed in: a file for each exercise done, and a class's files as a table."""

from __future__ import annotations

import os
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from pathlib import Path

import msgspec

from diagnose.model import Book
from diagnose.practice.exercise import Result
from diagnose.practice.progress import Standing
from diagnose.view.layout import Line, table, wrap

__all__ = ["Handed", "class_json", "class_lines", "progress_json", "progress_lines", "read_class", "write_result"]

_SCHEMA = 1
NOTHING = "No results here. A trainee hands one in with: diagnose practice --result FILE"
NONE_YET = "Nothing was practised yet. Begin with: diagnose practice"


@dataclass(frozen=True)
class Handed:
    """What a folder holds: results with their files' names, and a sentence for each file that is none."""

    results: Sequence[tuple[str, Result]]
    refused: Sequence[str]


def write_result(path: Path, result: Result) -> None:
    """Write a result whole or not at all, never over another file. Raises OSError."""
    body = msgspec.json.format(msgspec.json.encode(result), indent=2) + b"\n"
    with open(path, "xb") as out:
        out.write(body)
        out.flush()
        os.fsync(out.fileno())


def read_class(folder: Path) -> Handed:
    """All results in a folder's .json files. Raises OSError where the folder can't be read."""
    results: list[tuple[str, Result]] = []
    refused: list[str] = []
    for path in sorted(p for p in folder.iterdir() if p.suffix == ".json"):
        try:
            results.append((path.name, msgspec.json.decode(path.read_bytes(), type=Result)))
        except OSError as error:
            refused.append(f"{path.name} can't be read ({error.strerror}); mend its rights or take it away")
        except (msgspec.MsgspecError, UnicodeDecodeError, RecursionError) as error:
            refused.append(f"{path.name} is no result ({error}); have it handed in again")
    return Handed(results, refused)


def class_lines(book: Book, results: Iterable[tuple[str, Result]], width: int) -> list[Line]:
    """A row for each exercise, by trainee, and a row for each trainee over all."""
    every = [result for _, result in results]
    if not every:
        return wrap(NOTHING, width)
    every.sort(key=lambda r: (_who(r).casefold(), r.at))
    # Short, so that a class fits on 80 columns: "best" are the best path's minutes, "wrong" repairs of sound parts.
    headers = ("trainee", "level", "found", "unsafe", "minutes", "best", "wrong", "complaint")
    rows = [
        (
            _who(r),
            str(r.exercise.level or "-"),
            "yes" if r.solved else "no",
            str(len(r.unsafe)),
            f"{r.minutes:.0f}",
            f"{r.best:.0f}",
            str(r.wrong_repairs),
            _title(book, r.exercise.complaint),
        )
        for r in every
    ]
    lines = [*wrap("Exercises", width, role="heading"), *table(headers, rows, width)]
    lines += [Line(), *wrap("Trainees", width, role="heading")]
    total = ("trainee", "exercises", "found", "unsafe", "wrong", "times the best path's minutes")
    return lines + table(total, [_over_all(who, every) for who in dict.fromkeys(_who(r) for r in every)], width)


def _over_all(who: str, every: Sequence[Result]) -> tuple[str, ...]:
    own = [r for r in every if _who(r) == who]
    found = [r for r in own if r.solved]
    best = sum(r.best for r in found)
    return (
        who,
        str(len(own)),
        str(len(found)),
        str(sum(bool(r.unsafe) for r in own)),
        str(sum(r.wrong_repairs for r in own)),
        f"{sum(r.minutes for r in found) / best:.2f}" if best > 0 else "-",
    )


def class_json(handed: Handed) -> str:
    """The same for machines: every result with its file's name, and what was refused."""
    told = [{"file": name, "result": msgspec.to_builtins(result)} for name, result in handed.results]
    return _json({"schema": _SCHEMA, "results": told, "refused": list(handed.refused)})


def progress_lines(book: Book, ranked: Sequence[Standing], width: int) -> list[Line]:
    """The complaints that were tried, the weakest first, how many were not, and what comes next."""
    tried = [s for s in ranked if s.tried]
    if not tried:
        return wrap(NONE_YET, width)
    headers = ("exercises", "found safely", "box", "strength", "again in", "complaint")
    rows = [
        (
            str(s.tried),
            str(s.found),
            str(s.box),
            f"{s.strength * 100:.0f} %",
            "now" if s.due <= 0 else _days(s.due),
            _title(book, s.complaint),
        )
        for s in tried
    ]
    lines = table(headers, rows, width)
    lines += [Line(), *wrap(f"Not tried yet: {len(ranked) - len(tried)} complaints.", width)]
    return lines + wrap(f"Next: {_title(book, ranked[0].complaint)}, level {ranked[0].level}.", width)


def progress_json(ranked: Sequence[Standing]) -> str:
    """The same for machines."""
    told = [
        {"complaint": s.complaint, "exercises": s.tried, "found": s.found, "box": s.box}
        | {"strength": round(s.strength, 4), "due_days": round(s.due, 2), "level": s.level}
        for s in ranked
    ]
    return _json({"schema": _SCHEMA, "complaints": told})


def _days(count: float) -> str:
    whole = max(1, round(count))
    return "1 day" if whole == 1 else f"{whole} days"


def _who(result: Result) -> str:
    return result.trainee.strip() or "nobody named"


def _title(book: Book, complaint: str) -> str:
    return book.complaints[complaint].title if complaint in book.complaints else complaint


def _json(told: object) -> str:
    return msgspec.json.format(msgspec.json.encode(told), indent=2).decode()
