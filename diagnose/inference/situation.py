"""What is known of a job, and what follows from it: the plain records that go in and out of the inference."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from diagnose.model import Finding

__all__ = ["ImpossibleSituationError", "Prediction", "Situation", "Solution", "TooWideError"]


class ImpossibleSituationError(ValueError):
    """What was said cannot all be so, whatever is the matter with the machine."""


class TooWideError(MemoryError):
    """The exact answer would need more memory than allowed."""


@dataclass(frozen=True)
class Situation:
    """All that is known of a job.

    Stage k is the time after k repairs. `repaired` lists the repaired causes in order: repair k (from 1) lies between
    stage k-1 and stage k. `complaints` says (complaint, stage, whether it was there then); findings carry their stage;
    `ruled_out` nodes are known to be false at the last stage. `seen` says (cause, stage, whether it was so then): what
    was found with the part in hand.
    """

    complaints: tuple[tuple[str, int, bool], ...] = ()
    findings: tuple[Finding, ...] = ()
    repaired: tuple[str, ...] = ()
    ruled_out: tuple[str, ...] = ()
    seen: tuple[tuple[str, int, bool], ...] = ()

    @property
    def stage(self) -> int:
        """The last stage: now."""
        return len(self.repaired)

    @property
    def still_there(self) -> tuple[str, ...]:
        """Complaints that were there when last spoken of, in the order they came up.

        >>> Situation((("rinse_cold", 0, True), ("steam_out", 0, True), ("steam_out", 1, False))).still_there
        ('rinse_cold',)
        """
        return self.there_at(max((stage for _, stage, _ in self.complaints), default=0))

    def there_at(self, stage: int) -> tuple[str, ...]:
        """Complaints that were there when last spoken of up to a stage, in the order they came up."""
        last: dict[str, tuple[int, bool]] = {}
        for complaint, said, present in self.complaints:
            if last.get(complaint, (0, True))[0] <= said <= stage:
                last[complaint] = (said, present)
        return tuple(complaint for complaint, (_, present) in last.items() if present)


@dataclass(frozen=True)
class Solution:
    """`posterior`: how probable each cause, `unlisted.*`, event and stated complaint is now (last stage).

    It has all nodes made of causes below what was complained of, ruled out, seen or repaired; where nothing is
    complained of, every node. `causes` are its leaves, in the order of the tree.

    `log_evidence` is the natural logarithm of the probability of all that was said and found.
    """

    posterior: Mapping[str, float]
    log_evidence: float
    causes: tuple[str, ...] = ()

    @property
    def ranking(self) -> list[tuple[str, float]]:
        """Causes and `unlisted.*`, the most probable first."""
        return sorted(((c, self.posterior[c]) for c in self.causes), key=lambda pair: (-round(pair[1], 12), pair[0]))


@dataclass(frozen=True, eq=False)
class Prediction:
    """What an open check may answer now: the probability of each outcome, and what would then be believed.

    `after[o, c]` is the probability of cause c (of `causes`, those concerned) once outcome o is seen.
    """

    check: str
    outcomes: Mapping[str, float]
    causes: tuple[str, ...]
    after: NDArray[np.float64]

    @property
    def posterior(self) -> dict[str, dict[str, float]]:
        """Outcome -> cause -> probability after it."""
        rows = zip(self.outcomes, self.after.tolist(), strict=True)
        return {outcome: dict(zip(self.causes, row, strict=True)) for outcome, row in rows}
