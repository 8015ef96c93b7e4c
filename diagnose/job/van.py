"""The van list: which few parts to carry to a visit, how likely each is needed, and the chance that one visit does."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from diagnose.inference import IF_NEEDED, advise_van, kept, parts_of
from diagnose.job.assess import Assessment, Row
from diagnose.model import Part

__all__ = ["MOST_PARTS", "PartNeeded", "VanList", "van_list"]

MOST_PARTS = 4
_NAMED = 0.01  # what is less likely needed is not named


@dataclass(frozen=True)
class PartNeeded:
    """A part, how likely it is needed, what must match, and for which causes, each with its probability."""

    name: str
    probability: float
    match: tuple[str, ...]
    causes: tuple[tuple[str, float], ...]


@dataclass(frozen=True)
class VanList:
    """What to carry, the part most likely needed first, and what is left behind.

    `chance`: that the visit can be finished with it; `without`: with nothing carried but what every van has. `at_hand`
    are small things every van has, or the kitchen; `to_order` is sized or built after a first visit.
    """

    carried: tuple[PartNeeded, ...]
    left: tuple[PartNeeded, ...]
    chance: float
    without: float
    at_hand: tuple[PartNeeded, ...]
    to_order: tuple[PartNeeded, ...]


def van_list(seen: Assessment, most: int = MOST_PARTS) -> VanList:
    """The parts to carry to a visit as things stand, at most so many."""
    advice = advise_van(seen.book, seen.tree, seen.situation, seen.solution, most)
    named = _named(seen, advice.needed)
    rest = [part for part in named if part.name not in advice.carried and part.probability >= _NAMED]
    where = {part.name: kept(seen.book, part.name) for part in rest}
    return VanList(
        tuple(part for part in named if part.name in advice.carried),
        tuple(part for part in rest if where[part.name] == "store"),
        advice.chance,
        advice.without,
        tuple(part for part in rest if where[part.name] in ("van", "house")),
        tuple(part for part in rest if where[part.name] == "order"),
    )


def _named(seen: Assessment, chances: Mapping[str, float]) -> list[PartNeeded]:
    """Every part of every cause once, the most likely needed first; what needs no loading by the sum of its causes."""
    found: dict[str, list[tuple[Part, Row]]] = {}
    for row in seen.rows:  # the most probable first
        for part in parts_of(seen.book, row.id):
            found.setdefault(part.name, []).append((part, row))
    made = []
    for name, uses in found.items():
        likely = [(part, row) for part, row in uses if row.probability >= _NAMED]
        chance = min(sum(row.probability * (IF_NEEDED if part.only else 1.0) for part, row in uses), 1.0)
        match = tuple(dict.fromkeys(part.match for part, _ in likely if part.match))
        causes = tuple(dict.fromkeys((row.id, row.probability) for _, row in likely))
        made.append(PartNeeded(name, chances.get(name, chance), match, causes))
    return sorted(made, key=lambda part: (-round(part.probability, 12), part.name))
