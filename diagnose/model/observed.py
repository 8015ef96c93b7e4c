"""What was seen at the machine, and what it means: readings and findings."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field

from diagnose.model.instruments import Instrument
from diagnose.units import Quantity

__all__ = ["Finding", "Reading"]


@dataclass(frozen=True)
class Reading:
    """One answered check.

    Either `values` (one per place of the check's reading, in order; label "" when there is one
    place only) or `outcome` (a chosen outcome's id). `stage` counts the repairs made before it.
    """

    id: str
    check: str
    values: Mapping[str, Quantity] = field(default_factory=dict)
    outcome: str | None = None
    instrument: str | None = None
    stage: int = 0
    accuracy: Instrument | None = None  # what it was taken with; None: as the check's instrument says

    @property
    def value(self) -> Quantity:
        """The only value; raises LookupError when there are several or none."""
        if len(self.values) != 1:
            raise LookupError(f"reading {self.id} of {self.check} has {len(self.values)} values")
        return next(iter(self.values.values()))


@dataclass(frozen=True)
class Finding:
    """What readings mean: weights over the outcomes of one check, with the working.

    `weights` is the probability that each outcome is what is really so, given the instrument
    (sum 1). `counts` are the readings spent on this finding: each is spent once over all
    findings. `consults` are readings only used to work out what was to be expected.
    """

    check: str
    weights: Mapping[str, float]
    rule: str
    counts: tuple[str, ...]
    consults: tuple[str, ...] = ()
    working: tuple[str, ...] = ()  # lines a reader can follow
    says: str = ""  # one sentence
    stage: int = 0

    @property
    def outcome(self) -> str:
        """The heaviest outcome."""
        return max(self.weights, key=lambda o: self.weights[o])
