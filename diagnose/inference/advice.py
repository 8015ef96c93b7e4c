"""What to do next: the check, the repair or the call for help that leaves the fewest expected minutes.

One step ahead: a check costs its own minutes, the covers it opens and the change of the machine's state, and then what
is expected after each of its outcomes if one stopped looking and repaired. It is worth doing where that is less than
repairing at once. A cover stays open for whatever comes after, so that it is paid once.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Literal

import numpy as np
from numpy.typing import NDArray

from diagnose.inference.economy import Circumstances, Task
from diagnose.inference.repairs import HELP, Repairs
from diagnose.inference.situation import Prediction

__all__ = ["Advice", "Option", "weigh_options"]

Array = NDArray[np.float64]


@dataclass(frozen=True)
class Option:
    """Something that can be done next.

    `expected` minutes from now to a verified repair when this is done next, of which `minutes` now (`opening` of them
    for covers, `moving` for the machine's state). `saves` minutes against the best repair at once. For a check,
    `outcomes` says how likely each answer is; for a repair, `probability` that this is the cause.
    """

    kind: Literal["check", "repair", "help"]
    id: str
    expected: float
    saves: float
    minutes: float
    opening: float = 0.0
    moving: float = 0.0
    probability: float | None = None
    outcomes: Mapping[str, float] | None = None
    first_after: Mapping[str, str] | None = None  # outcome -> the repair then first, or "help"


@dataclass(frozen=True)
class Advice:
    """All options, the best first."""

    options: tuple[Option, ...]

    @property
    def best(self) -> Option:
        return self.options[0]

    def top(self, count: int = 3) -> tuple[Option, ...]:
        return self.options[:count]


def weigh_options(
    causes: Sequence[str],
    belief: Array,
    predictions: Sequence[Prediction],
    tasks: Mapping[str, Task],
    repairs: Repairs,
    now: Circumstances,
) -> Advice:
    """Rank repairing at once, every check in `predictions` (with its `tasks`), and calling for help.

    `belief` and the predictions' `after` have their columns in the order of `causes`, as have the repairs.
    """
    state = np.array([repairs.states.index(now.state)])
    plan = repairs.plan(belief[None, :], repairs.opened(now.open)[None, :], state)
    at_once = float(plan.minutes[0])
    options = [_at_once(causes, belief, int(plan.first[0]), at_once, repairs)]
    if options[0].kind != "help":
        options.append(Option("help", "help", repairs.economy.help_minutes, 0.0, repairs.economy.help_minutes))
    options += _checks(causes, predictions, tasks, repairs, now, at_once)
    return Advice(tuple(sorted(options, key=lambda o: (o.expected, o.kind, o.id))))


def _at_once(causes: Sequence[str], belief: Array, first: int, minutes: float, repairs: Repairs) -> Option:
    if first == HELP:
        return Option("help", "help", minutes, 0.0, minutes)
    return Option("repair", causes[first], minutes, 0.0, minutes, probability=float(belief[first]))


def _checks(
    causes: Sequence[str],
    predictions: Sequence[Prediction],
    tasks: Mapping[str, Task],
    repairs: Repairs,
    now: Circumstances,
    at_once: float,
) -> list[Option]:
    """All checks in one go: a row for each outcome of each."""
    if not predictions:
        return []
    counts = [len(each.outcomes) for each in predictions]
    work = [tasks[each.check] for each in predictions]
    opened = np.repeat([repairs.opened(now.open | task.open) for task in work], counts, axis=0)
    states = np.repeat([repairs.states.index(task.state) for task in work], counts)
    plan = repairs.plan(np.concatenate([each.after for each in predictions]), opened, states)
    options = []
    start = 0
    for each, task in zip(predictions, work, strict=True):
        rows = slice(start, start + len(each.outcomes))
        start = rows.stop
        opening = sum(repairs.economy.access[a] for a in task.open - now.open)
        moving = repairs.economy.move(now.state, task.state)
        minutes = task.minutes + opening + moving
        expected = minutes + float(np.dot(list(each.outcomes.values()), plan.minutes[rows]))
        firsts = ["help" if f == HELP else causes[f] for f in plan.first[rows].tolist()]
        options.append(
            Option(
                "check", each.check, expected, at_once - expected, minutes, opening, moving,
                outcomes=each.outcomes, first_after=dict(zip(each.outcomes, firsts, strict=True)),
            )
        )  # fmt: skip
    return options
