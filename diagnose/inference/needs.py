"""What the knowledge says the causes need: parts to be loaded for a visit, and people with a licence."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from diagnose.inference.advice import counted_as
from diagnose.inference.posterior import concerned
from diagnose.inference.situation import Situation, Solution
from diagnose.inference.tree import FaultTree
from diagnose.inference.van import Needs, best_load
from diagnose.model import Book, Part, part_of

__all__ = ["IF_NEEDED", "VanAdvice", "advise_van", "belief_of", "kept", "minutes_of", "needs_of", "parts_of", "who_for"]

# How often a part is needed that a cause names with an "if": judgement, "sometimes" of the scale of words.
IF_NEEDED = 0.3

Array = NDArray[np.float64]


@dataclass(frozen=True)
class VanAdvice:
    """The parts to carry by name, the chance to finish the visit with them, and `without` them.

    `needed` has every part that is loaded for a visit, with how likely it is needed.
    """

    carried: tuple[str, ...]
    chance: float
    without: float
    needed: Mapping[str, float]


def belief_of(tree: FaultTree, situation: Situation, solution: Solution) -> tuple[tuple[str, ...], Array, Array]:
    """The causes concerned; (all leaves concerned, causes) how each counts among them; and what is believed now."""
    complaints = situation.still_there or tuple(n.id for n in tree.nodes.values() if n.kind == "complaint")
    leaves = concerned(tree, situation)
    under = frozenset[str]().union(*(tree.below(complaint) for complaint in complaints))
    called = dict(
        zip(own := [leaf for leaf in leaves if leaf in under], counted_as(tree, complaints, own), strict=True)
    )
    causes = tuple(dict.fromkeys(called.values()))
    sums = np.array([[called.get(leaf) == cause for cause in causes] for leaf in leaves], dtype=float)
    belief = np.minimum(np.array([solution.posterior[leaf] for leaf in leaves]) @ sums, 1.0)
    return causes, sums, belief


def kept(book: Book, name: str) -> str:
    """Where a part is kept, by its name: what is not listed is loaded for a visit."""
    return next((each.kept for each in reversed(list(book.stocks.values())) if name in each.names), "store")


def minutes_of(book: Book, what: str) -> float:
    """What a visit, or a thing about it, is counted with (access.toml). ValueError where it is not said."""
    if what not in book.visits:
        raise ValueError(f"the knowledge does not say what a visit costs ({what} in access.toml)")
    return float(book.visits[what].minutes)


def parts_of(book: Book, cause: str) -> list[Part]:
    """The parts of a cause; none of what is not listed."""
    return [part_of(text) for text in book.causes[cause].parts] if cause in book.causes else []


def needs_of(book: Book, causes: Sequence[str], belief: Array) -> tuple[tuple[str, ...], Needs]:
    """The parts to be loaded that these causes need, by name, and how likely each cause needs each.

    One visit can't finish what is not listed, nor what waits for a part that is ordered or built after it.
    """
    parts = [parts_of(book, cause) for cause in causes]
    wanted = [[part for part in each if kept(book, part.name) == "store"] for each in parts]
    names = tuple(dict.fromkeys(part.name for each in wanted for part in each))
    column = {name: nth for nth, name in enumerate(names)}
    table = np.zeros((len(causes), len(names)))
    for row, each in enumerate(wanted):
        for part in each:
            table[row, column[part.name]] = max(IF_NEEDED if part.only else 1.0, table[row, column[part.name]])
    waits = [any(kept(book, part.name) == "order" and not part.only for part in each) for each in parts]
    possible = [cause in book.causes and not wait for cause, wait in zip(causes, waits, strict=True)]
    return names, Needs(belief, table, np.array(possible, dtype=bool))


def advise_van(book: Book, tree: FaultTree, situation: Situation, solution: Solution, most: int) -> VanAdvice:
    """At most so many parts to carry to a visit as things stand."""
    causes, _, belief = belief_of(tree, situation, solution)
    names, needs = needs_of(book, causes, belief)
    load = best_load(needs, np.full(len(names), minutes_of(book, "part")), minutes_of(book, "second"), most)
    without = float(needs.finished(np.zeros((1, len(names)), dtype=bool))[0])
    needed = dict(zip(names, needs.needed().tolist(), strict=True))
    return VanAdvice(tuple(names[nth] for nth in load.parts), load.chance, without, needed)


def who_for(book: Book, tree: FaultTree, situation: Situation, solution: Solution) -> dict[str, float]:
    """For each of those who may do repairs, how likely a cause is there that is theirs to repair."""
    causes, _, belief = belief_of(tree, situation, solution)
    each = [book.causes[cause].who if cause in book.causes else "" for cause in causes]
    names = [name for name in dict.fromkeys(each) if name]
    table = np.array([[who == name for name in names] for who in each], dtype=float).reshape(len(causes), len(names))
    chances = Needs(belief, table, np.ones(len(causes), dtype=bool)).needed()
    return dict(zip(names, chances.tolist(), strict=True))
