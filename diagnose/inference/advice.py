"""What to do next on this job: the knowledge's checks and repairs as work, within what may be done here."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import replace

import numpy as np

from diagnose.inference.economy import Circumstances, Economy, Task
from diagnose.inference.options import Advice, weigh_options
from diagnose.inference.posterior import concerned
from diagnose.inference.repairs import Repairs
from diagnose.inference.situation import Prediction, Situation, Solution
from diagnose.inference.tree import FaultTree, unlisted
from diagnose.model import Book, Cause, Check

__all__ = ["WASTED_PART", "WASTED_WORK", "advise", "counted_as"]

# What a repair that was not the one costs besides its own minutes, in minutes: a part bought and fitted for nothing and
# the kitchen's trust; or a setting moved that was right, which is set back. A second one weighs twice that, a third
# three times: whoever was wrong already had better ask. Judgement.
WASTED_PART = 30.0
WASTED_WORK = 10.0


def advise(
    book: Book,
    tree: FaultTree,
    situation: Situation,
    solution: Solution,
    predictions: Mapping[str, Prediction],
    economy: Economy,
    now: Circumstances,
) -> Advice:
    """Rank the open checks (those in `predictions`), repairing at once, and calling for help.

    `solution` and `predictions` come from `solve_and_predict` for the same situation. A repair that this person may
    not do, or that lies behind something not to be opened, counts as one that only help can do; such a check is left
    out.
    """
    complaints = situation.still_there or tuple(n.id for n in tree.nodes.values() if n.kind == "complaint")
    leaves = concerned(tree, situation)
    called = counted_as(tree, complaints, leaves)
    causes = tuple(dict.fromkeys(called))
    groups, rest = _groups(tree, complaints, causes)
    nth = 1 + sum(not so for _, _, so in situation.seen)
    repairs = Repairs(
        [_repair(book.causes.get(cause), now, nth) for cause in causes],
        groups,
        _proof(book, tree, complaints, now),
        economy,
        rest,
    )
    sums = np.array([[name == cause for cause in causes] for name in called], dtype=float)
    offered = [
        replace(p, causes=causes, after=np.minimum(p.after @ sums, 1.0))
        for p in predictions.values()
        if _offered(book.checks[p.check], now)
    ]
    tasks = {p.check: _task(book.checks[p.check]) for p in offered}
    belief = np.minimum(np.array([solution.posterior[leaf] for leaf in leaves]) @ sums, 1.0)
    return weigh_options(causes, belief, offered, tasks, repairs, now)


def counted_as(tree: FaultTree, complaints: Sequence[str], leaves: Iterable[str]) -> list[str]:
    """What each leaf counts as: a cause as itself, all that is not listed as that of its first complaint.

    What is not listed can't be told apart nor mended here, whatever event it is behind. Two such things at once are so
    rare that their probabilities are added.
    """
    first = {leaf: complaint for complaint in reversed(complaints) for leaf in tree.causes_under(complaint)}
    return [unlisted(first[leaf]) if tree.nodes[leaf].kind == "unlisted" else leaf for leaf in leaves]


def _task(entry: Cause | Check) -> Task:
    return Task(entry.minutes, _opens(entry), entry.state)


def _opens(entry: Cause | Check) -> frozenset[str]:
    return frozenset(entry.open) - {"none"}


def _repair(cause: Cause | None, now: Circumstances, nth: int) -> Task | None:
    """None for "something not listed", and for what these people may not do here; wrong, it would be the `nth` one."""
    if cause is None or cause.id in now.unavailable or not now.allows(cause.who, _opens(cause)):
        return None
    return replace(_task(cause), wasted=nth * (WASTED_PART if cause.parts else WASTED_WORK))


def _offered(check: Check, now: Circumstances) -> bool:
    return not check.computed and check.id not in now.unavailable and now.allows(check.who, _opens(check))


def _groups(tree: FaultTree, complaints: tuple[str, ...], causes: tuple[str, ...]) -> tuple[list[list[int]], set[int]]:
    """Columns of causes per complaint; what stands under two of them counts with the first.

    Besides, the columns that are only the rest of a complaint's causes.
    """
    taken: set[str] = set()
    groups, rest = [], set[int]()
    for complaint in complaints:
        under = set(tree.causes_under(complaint))
        columns = [column for column, cause in enumerate(causes) if cause in under - taken]
        if under & taken:
            rest |= set(columns)
        taken |= under
        groups.append(columns)
    return groups, rest


def _proof(book: Book, tree: FaultTree, complaints: tuple[str, ...], now: Circumstances) -> Task:
    """The look whether the complaints are gone: for each the quickest of its checks that can be done here."""
    looks: dict[str, Check] = {}
    for complaint in complaints:
        known = [book.checks[c] for c in book.complaints[complaint].prove_by if c in tree.checks]
        possible = [c for c in known if now.allows(c.who, _opens(c))] or known
        if possible:
            quickest = min(possible, key=lambda c: (c.minutes, c.id))
            looks[quickest.id] = quickest
    minutes = sum(look.minutes for look in looks.values())
    opens = frozenset[str]().union(*(_opens(look) for look in looks.values()))
    states = {look.state for look in looks.values()}
    return Task(minutes, opens, states.pop() if len(states) == 1 else "running")
