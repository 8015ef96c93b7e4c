"""The visit that a call ends in: what is carried, which instruments, who must come, and how long it will take there."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass, replace

from diagnose.inference import who_for
from diagnose.job.assess import Assessment, assess
from diagnose.job.crew import WHO
from diagnose.job.telling import Choice
from diagnose.job.van import MOST_PARTS, VanList, van_list

__all__ = ["Brought", "Visit", "on_the_spot", "visit"]

_CHECKS = 5  # that the advice puts first on the spot: their instruments are brought
_PROVED = 0.1  # causes as likely as this are proved there: so are those of their proofs
_SENSES = {
    *("", "none", "eye", "eyes", "ear", "ears", "hand", "hands", "nose"),
    *("questions", "bills", "arithmetic", "reckoned", "watch", "paper"),
}
_PIECES = re.compile(r",\s*|\s+and\s+")

_LICENCES = WHO[2:]


@dataclass(frozen=True)
class Brought:
    """An instrument to bring, and the checks it is for."""

    instrument: str
    checks: tuple[str, ...]


@dataclass(frozen=True)
class Visit:
    """`licences`: how likely somebody with each is needed. `minutes` there, expected, with every part at hand."""

    van: VanList
    instruments: tuple[Brought, ...]
    licences: tuple[tuple[str, float], ...]
    first: tuple[Choice, ...]
    minutes: float


def on_the_spot(seen: Assessment) -> Assessment:
    """The job as whoever comes will have it: all may be opened, and what the kitchen could not tell is asked again."""
    state = replace(seen.state, call=None, skipped={}, allowed=frozenset(WHO), keep_closed=frozenset())
    return assess(seen.book, state)


def visit(seen: Assessment, most: int = MOST_PARTS) -> Visit:
    """All that whoever comes must know before they leave. It weighs every check: a second or two."""
    there = on_the_spot(seen)
    options = there.options
    checks = tuple(each for each in options if each.what == "check")[:_CHECKS]
    return Visit(
        van_list(seen, most),
        tuple(_instruments(seen, checks)),
        tuple(_licences(seen)),
        options[:_CHECKS],
        options[0].minutes,
    )


def _instruments(seen: Assessment, checks: tuple[Choice, ...]) -> Iterator[Brought]:
    names = [each.id for each in checks]
    causes = (seen.book.causes[r.id] for r in seen.rows if r.id in seen.book.causes and r.probability >= _PROVED)
    names += [proof for cause in causes for proof in cause.prove_by]
    names += [proof for name in seen.state.present for proof in seen.book.complaints[name].prove_by]
    found: dict[str, list[str]] = {}
    for name in dict.fromkeys(names):
        instrument = seen.book.checks[name].instrument if name in seen.tree.checks else ""
        if not _SENSES.issuperset(_PIECES.split(instrument)):
            found.setdefault(instrument, []).append(name)
    yield from (Brought(instrument, tuple(for_checks)) for instrument, for_checks in found.items())


def _licences(seen: Assessment) -> Iterator[tuple[str, float]]:
    """How likely a cause is there that only this licence may mend, the likeliest first."""
    found = who_for(seen.book, seen.tree, seen.situation, seen.solution)
    ranked = sorted(found.items(), key=lambda pair: -pair[1])
    yield from ((who, chance) for who, chance in ranked if who in _LICENCES and chance >= 0.01)
