"""Seconds per answer, ours beside a junction tree from elsewhere, and ours on the shipped knowledge.

Run: python -m tests.bench.inference. a = all causes; b = a and the outcomes of every open check; c = a, b and all
causes under every outcome of every open check, which choosing the next check needs. The junction tree is asked b and
c for some checks only, and the figures scaled up to all. Take the ratios: machines differ.
"""

from __future__ import annotations

import time
from collections.abc import Callable
from statistics import median

from diagnose.inference import (
    Circumstances,
    Economy,
    FaultTree,
    Situation,
    advise,
    bearing_checks,
    build_tree,
    conflicts,
    explain,
    solve,
    solve_and_predict,
)
from diagnose.model import Machine, load_book
from tests.bench.trees import answered, bench_tree
from tests.books import finding
from tests.junction_tree import LazyPropagation, answer, network_of

__all__ = ["main"]

ANSWERS = 8
SOME = 10  # checks asked of the junction tree for c


def seconds(work: Callable[[], object], times: int) -> float:
    taken = []
    for _ in range(times):
        start = time.perf_counter()
        work()
        taken.append(time.perf_counter() - start)
    return median(taken)


def judged(tree: FaultTree, situation: Situation, asked: list[str]) -> tuple[float, float, float]:
    """The same questions to the junction tree, in the way that suits it best: networks are built beforehand, with one
    open check at a time, and an outcome is changed in place."""
    bare, evidence = network_of(tree, situation, [])
    some = asked[:: max(len(asked) // SOME, 1)]
    nets = {check: network_of(tree, situation, [tree.checks[check]])[0] for check in some}
    scale = len(asked) / len(some)
    a = seconds(lambda: _causes(answer(bare, evidence), tree), 3)
    b = seconds(lambda: [answer(net, evidence).posterior(check) for check, net in nets.items()], 3) * scale
    c = seconds(lambda: [_outcomes(answer(net, evidence), tree, check) for check, net in nets.items()], 1) * scale
    return a, a + b, a + b + c


def _causes(judge: LazyPropagation, tree: FaultTree) -> None:
    for leaf in tree.leaves:
        judge.posterior(leaf)


def _outcomes(judge: LazyPropagation, tree: FaultTree, check: str) -> None:
    judge.addEvidence(check, 0)
    for nth in range(len(tree.checks[check].outcomes)):
        judge.chgEvidence(check, nth)
        judge.makeInference()
        _causes(judge, tree)


def made_up_trees() -> None:
    print(f"{'N':>5}  {'ours a':>8} {'ours c':>8}   {'junction tree a':>15} {'b':>8} {'c':>8}")
    for causes in (50, 200):
        tree = bench_tree(causes)
        situation, asked = answered(tree, ANSWERS)
        a = seconds(lambda t=tree, s=situation: solve(t, s), 5)  # type: ignore[misc]
        c = seconds(lambda t=tree, s=situation, o=asked: solve_and_predict(t, s, o), 5)  # type: ignore[misc]
        theirs = judged(tree, situation, asked)
        print(f"{causes:>5}  {a:8.4f} {c:8.4f}   {theirs[0]:15.4f} {theirs[1]:8.4f} {theirs[2]:8.2f}", flush=True)


def shipped_knowledge() -> None:
    """One answer: ranking, predictions of every check that bears on the complaint, advice."""
    book = load_book()
    economy = Economy.of(book)
    print(f"\nshipped knowledge: {len(book.causes)} causes, {len(book.checks)} checks; seconds")
    heads = ("tree", "sweep", "advice", "why", "conflicts")
    print(f"{'complaint':<12} {'answers':>7} {'checks':>6}  " + " ".join(f"{head:>9}" for head in heads))
    machine = Machine("bench", book.machines["two_tank_electric_208"])
    for complaint in book.complaints:
        tree = build_tree(book, machine)
        for answers in (0, 4, 8):
            _one(book, machine, tree, economy, complaint, answers)


def _one(book, machine, tree, economy, complaint, answers) -> None:  # type: ignore[no-untyped-def]
    bare = Situation(((complaint, 0, True),))
    asked = list(bearing_checks(tree, bare))
    found = (
        tuple(_likely(tree, bare, check) for check in asked[:: max(len(asked) // answers, 1)][:answers])
        if answers
        else ()
    )
    situation = Situation(bare.complaints, found)
    left = [check for check in asked if check not in {f.check for f in found}]
    solution, foreseen = solve_and_predict(tree, situation, left)
    top = solution.ranking[0][0]
    row = (
        seconds(lambda: build_tree(book, machine), 3),
        seconds(lambda: solve_and_predict(tree, situation, left), 5),
        seconds(lambda: advise(book, tree, situation, solution, foreseen, economy, Circumstances()), 5),
        seconds(lambda: explain(tree, situation, top), 3),
        seconds(lambda: conflicts(tree, situation), 3),
    )
    print(f"{complaint:<12} {answers:>7} {len(left):>6}  " + " ".join(f"{each:9.4f}" for each in row))


def _likely(tree: FaultTree, situation: Situation, check: str):  # type: ignore[no-untyped-def]
    """The second most probable answer: surprising, but not absurd."""
    outcomes = solve_and_predict(tree, situation, [check])[1][check].outcomes
    return finding(check, {sorted(outcomes, key=lambda o: -outcomes[o])[1]: 1.0})


def main() -> None:
    made_up_trees()
    shipped_knowledge()


if __name__ == "__main__":
    main()
