"""Evidence that cannot all be used: leave aside as little as need be, and say what.

Findings never contradict outright, as every reading can be a misreading. But a complaint said to be gone while a part
that brings it about was seen faulty, or everything ruled out, leaves nothing that could be so. And very many readings
over several repairs can be more than the exact arithmetic carries; then the oldest are left aside.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from diagnose.inference import (
    FaultTree,
    ImpossibleSituationError,
    Situation,
    Solution,
    TooWideError,
    solve,
    weighable,
)
from diagnose.model import Book

__all__ = ["usable_situation"]


def usable_situation(book: Book, tree: FaultTree, situation: Situation) -> tuple[Situation, Solution, tuple[str, ...]]:
    """The situation with as little left aside as makes it possible and small enough, solved.

    With a sentence for each thing left. Raises TooWideError where even without a reading there is too much.
    """
    situation, old = _small_enough(book, tree, situation)
    situation, solution, said = _possible(book, tree, situation)
    return situation, solution, (*(f"What was said cannot all be so; left aside is {each}." for each in said), *old)


def _small_enough(book: Book, tree: FaultTree, situation: Situation) -> tuple[Situation, tuple[str, ...]]:
    """Without the oldest findings (the first ones of the earliest stage), as few as need be.

    Their number is doubled until it does, then halved in on, all that roughly; and then taken back one by one.
    """
    oldest = sorted(situation.findings, key=lambda f: f.stage)

    def without(count: int) -> Situation:
        left = {id(f) for f in oldest[:count]}
        return replace(situation, findings=tuple(f for f in situation.findings if id(f) not in left))

    enough = 0
    while not weighable(tree, without(enough), roughly=enough > 0):
        if enough == len(oldest):
            raise TooWideError("even without a reading there is too much to weigh at once")
        enough = min(max(1, 2 * enough), len(oldest))
    few = enough // 2
    while enough - few > 1:
        middle = (few + enough) // 2
        few, enough = (few, middle) if weighable(tree, without(middle), True) else (middle, enough)
    while enough > 1 and weighable(tree, without(enough - 1)):
        enough -= 1
    says = "Too many readings to weigh at once; left aside is an old one: "
    return without(enough), tuple(f"{says}{book.title(f.check)}." for f in oldest[:enough])


def _possible(book: Book, tree: FaultTree, situation: Situation) -> tuple[Situation, Solution, tuple[str, ...]]:
    solution = _solved(tree, situation)
    if solution is not None:
        return situation, solution, ()
    for fewer, says in _without_one(book, situation):
        solution = _solved(tree, fewer)
        if solution is not None:
            return fewer, solution, (says,)
    there = tuple(said for said in situation.complaints if said[2])
    bare = replace(situation, complaints=there, ruled_out=(), seen=())
    return bare, solve(tree, bare), tuple(says for _, says in _without_one(book, situation))


def _solved(tree: FaultTree, situation: Situation) -> Solution | None:
    try:
        return solve(tree, situation)
    except ImpossibleSituationError:
        return None


def _without_one(book: Book, situation: Situation) -> Iterator[tuple[Situation, str]]:
    """One statement less each: first complaints said to be gone, then what was ruled out, then what was seen."""
    for said in situation.complaints:
        if not said[2]:
            rest = tuple(s for s in situation.complaints if s is not said)
            yield replace(situation, complaints=rest), f"that the complaint was gone: {book.title(said[0])}"
    for node in situation.ruled_out:
        rest_out = tuple(n for n in situation.ruled_out if n != node)
        title = book.title(node) if node in book.causes or node in book.events else "something not listed here"
        yield replace(situation, ruled_out=rest_out), f"that this was ruled out: {title}"
    for part in situation.seen:
        rest_seen = tuple(p for p in situation.seen if p is not part)
        stood = "faulty" if part[2] else "sound"
        yield replace(situation, seen=rest_seen), f"that this was seen {stood}: {book.title(part[0])}"
