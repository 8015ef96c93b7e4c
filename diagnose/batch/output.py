"""What the commands print for machines: records with a schema number and stable keys."""

from __future__ import annotations

import msgspec

__all__ = ["SCHEMA", "Advised", "FindingOut", "RankOut", "Ranked", "Reason", "to_json"]

SCHEMA = 1  # raised when a key changes its meaning or goes


class Ranked(msgspec.Struct, frozen=True, kw_only=True):
    """A cause, or "something not listed here", with its probability."""

    id: str
    title: str
    probability: float
    kind: str  # cause | no fault | unlisted
    reasons: list[Reason] = []  # the strongest, for the rows at the top


class Reason(msgspec.Struct, frozen=True, kw_only=True):
    """What one finding or context answer does to the odds of a cause, in bits; above zero speaks for it."""

    says: str
    bits: float


class FindingOut(msgspec.Struct, frozen=True, kw_only=True):
    """What readings mean: the rule, the heaviest outcome, the working."""

    check: str
    rule: str
    outcome: str
    weights: dict[str, float]
    says: str
    working: list[str]
    counts: list[str]
    consults: list[str]


class Advised(msgspec.Struct, frozen=True, kw_only=True):
    """One thing to do next, with the expected minutes from now to a verified repair."""

    what: str  # check | repair | help
    id: str
    title: str
    expected_minutes: float


class RankOut(msgspec.Struct, frozen=True, kw_only=True):
    """The answer of `diagnose rank --json`."""

    schema: int = SCHEMA
    machine: str
    complaints: list[str]
    ranking: list[Ranked]
    findings: list[FindingOut]
    conflicts: list[str]
    advice: list[Advised]
    assumed: list[str]  # plate figures taken from the type, not read from a plate


def to_json(value: object) -> str:
    """Indented JSON, UTF-8, keys in the order of the record."""
    return msgspec.json.format(msgspec.json.encode(value), indent=2).decode()
