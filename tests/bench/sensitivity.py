"""How far the ranking hangs on the words: every likelihood moved one word up or down, over all technicians' cases.

Run: python -m tests.bench.sensitivity [EVERY]. First all likelihoods of all checks at once, then each by itself: one
row of one check that a case has answered. EVERY takes every so-manieth case only (1: all). A likelihood written as a
number, from data, stays where it is.
"""

from __future__ import annotations

import sys
from collections import defaultdict
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field, replace

import msgspec
import numpy as np

from diagnose.inference import FaultTree, TreeCheck, solve
from diagnose.job.assess import Assessment
from diagnose.model import Book, Check
from diagnose.model.truth import likelihood_row
from tests.cases.harness import all_cases, assessment, shipped

__all__ = ["main", "moved_row", "moved_word"]

SHOWN = 25
AMONG = 5  # causes at the top whose rows are moved one by one


def moved_word(scale: Mapping[str, float], said: str | float, by: int) -> str | float:
    """The word one step up (1) or down (-1) the scale; the last word and a number stay.

    >>> moved_word({"always": 0.99, "usually": 0.75, "seldom": 0.07}, "usually", 1)
    'always'
    """
    if not isinstance(said, str):
        return said
    rising = sorted(scale, key=lambda word: scale[word])
    return rising[min(max(rising.index(said) + by, 0), len(rising) - 1)]


def moved_row(book: Book, check: Check, row: str, by: int) -> list[float]:
    """The row of the check's table with every named outcome moved."""
    scale = book.scales["likelihood"].words
    named = {outcome: moved_word(scale, said, by) for outcome, said in check.shows[row].items()}
    changed = msgspec.structs.replace(check, shows={**check.shows, row: named})
    return list(likelihood_row(book, changed, row).values())


def _with(tree: FaultTree, checks: Sequence[TreeCheck]) -> FaultTree:
    return FaultTree(tree.nodes, {**tree.checks, **{c.id: c for c in checks}})


def _moved(book: Book, check: TreeCheck, rows: Sequence[int], by: int) -> TreeCheck:
    shows = np.array(check.shows)
    names = (*check.looks_at, "none")
    for nth in rows:
        shows[nth] = moved_row(book, book.checks[check.id], names[nth], by)
    return replace(check, shows=shows)


def _first(tree: FaultTree, at: Assessment) -> tuple[str, float]:
    here = {row.id for row in at.rows}
    found = solve(tree, at.situation)
    first = next(c for c, _ in found.ranking if c in here)
    return first, found.posterior[at.rows[0].id]


@dataclass
class _Entry:
    """One row of one check: the cases it was moved in, those whose first rank changed, the largest loss of belief."""

    cases: int = 0
    changed: list[str] = field(default_factory=list)
    loss: float = 0.0


def main(every: int = 1) -> None:
    """Print both reports."""
    cases = all_cases()[::every]
    at = {case.name: assessment(case.name) for case in cases}
    print(f"{len(cases)} cases of {len(all_cases())}")
    for by, said in ((1, "up"), (-1, "down")):
        _all_at_once(shipped(), at, by, said)
    _one_by_one(shipped(), at)


def _all_at_once(book: Book, at: Mapping[str, Assessment], by: int, said: str) -> None:
    changed, drop = [], []
    for name, each in at.items():
        used = [each.tree.checks[f.check] for f in each.situation.findings]
        moved = [_moved(book, c, range(len(c.looks_at) + 1), by) for c in {c.id: c for c in used}.values()]
        first, belief = _first(_with(each.tree, moved), each)
        drop.append(each.rows[0].probability - belief)
        if first != each.rows[0].id:
            changed.append(name)
    share = len(changed) / len(at)
    print(f"\nevery likelihood one word {said}: the first rank changes in {len(changed)} cases ({share:.1%});")
    print(f"  belief in what was first falls by {np.mean(drop):.3f} in the mean, {max(drop):.3f} at most")
    print("  " + " ".join(changed[:12]) + (" ..." if len(changed) > 12 else ""))


def _one_by_one(book: Book, at: Mapping[str, Assessment]) -> None:
    entries: dict[tuple[str, str], _Entry] = defaultdict(_Entry)
    tried = 0
    for name, each in at.items():
        for check, nth in _rows_that_matter(each):
            row = (*check.looks_at, "none")[nth]
            entry = entries[check.id, row]
            entry.cases += 1
            for by in (1, -1):
                tried += 1
                first, belief = _first(_with(each.tree, [_moved(book, check, [nth], by)]), each)
                entry.loss = max(entry.loss, each.rows[0].probability - belief)
                if first != each.rows[0].id and name not in entry.changed:
                    entry.changed.append(name)
    hit = {name for entry in entries.values() for name in entry.changed}
    print(f"\none row of one check one word up or down: {tried} moves over {len(entries)} entries;")
    print(f"  the first rank hangs on a single word in {len(hit)} cases ({len(hit) / len(at):.1%})")
    print(f"\nentries that matter most, of {len(entries)}:")
    print(f"{'cases':>5} {'changed':>7} {'most loss':>9}  check, row")
    order = sorted(entries.items(), key=lambda e: (-len(e[1].changed), -e[1].loss))
    for (check_id, row), entry in order[:SHOWN]:
        print(f"{entry.cases:>5} {len(entry.changed):>7} {entry.loss:>9.3f}  {check_id}, {row}")


def _rows_that_matter(at: Assessment) -> Iterator[tuple[TreeCheck, int]]:
    """The rows of answered checks that decide for one of the causes at the top, each once."""
    top = [row.id for row in at.rows[:AMONG]]
    for check_id in dict.fromkeys(f.check for f in at.situation.findings):
        check = at.tree.checks[check_id]
        rows = dict.fromkeys(_row(at.tree, check, cause) for cause in top)
        yield from ((check, nth) for nth in rows)


def _row(tree: FaultTree, check: TreeCheck, cause: str) -> int:
    """Which row is used when this cause alone is present."""
    return next((n for n, node in enumerate(check.looks_at) if cause in tree.below(node)), len(check.looks_at))


if __name__ == "__main__":
    main(int(sys.argv[1]) if len(sys.argv) > 1 else 1)
