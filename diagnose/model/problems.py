"""A problem in the knowledge: where, what, and the remedy."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from diagnose.model.book import Place

__all__ = ["KnowledgeError", "Problem"]


@dataclass(frozen=True)
class Problem:
    """One thing wrong with the knowledge."""

    place: Place
    what: str
    remedy: str

    def __str__(self) -> str:
        return f"{self.place}: {self.what}; {self.remedy}"


class KnowledgeError(Exception):
    """The knowledge can't be used; `problems` holds all of them at once, `hint` a way round them."""

    def __init__(self, problems: Sequence[Problem], hint: str = "") -> None:
        self.problems = tuple(problems)
        super().__init__("\n".join([*(str(p) for p in self.problems), *([hint] if hint else [])]))
