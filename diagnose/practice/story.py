"""The story told with an exercise: an invented site, rush or quiet, and what its kitchen says."""

from __future__ import annotations

import random
from collections.abc import Mapping, Sequence

from diagnose.model import Book

__all__ = ["tell"]

# Places of no town, and nobody in them.
_SITES = (
    "a school kitchen by the river",
    "a canteen above a workshop",
    "the kitchen of a small hospital",
    "a hotel kitchen in the cellar",
    "a ferry's galley, tied up at the quay",
    "a hall for weddings",
    "an old people's home",
    "a barracks kitchen",
    "a railway canteen",
    "a restaurant of sixty seats",
    "a conference house",
    "a kitchen that cooks for five schools",
)
_HOURS = (
    "It is rush: racks stand in a row and nobody wants the machine stopped.",
    "Lunch is over, and the machine is yours until the evening.",
    "It is early and quiet; breakfast has just gone through.",
    "Rush is an hour away.",
    "Dinner is in full swing, and somebody looks at the clock.",
    "It is a slow afternoon; one crew member washes trays.",
)
_LEADS = ("The kitchen says", "Whoever runs the machine says", "The head of the kitchen says")


def tell(
    book: Book, seed: int, complaints: Sequence[str], context: Mapping[str, str], machine: str
) -> tuple[str, list[str]]:
    """Title and sentences: where, when, what is complained of in a kitchen's words, and what was asked about it."""
    chance = random.Random(f"story {seed}")
    site, hour, lead = chance.choice(_SITES), chance.choice(_HOURS), chance.choice(_LEADS)
    first, *others = complaints
    sentences = [f"You are called to {site}: {book.machines[machine].title}.", hour]
    sentences.append(f'{lead}: "{_words(book, first, chance)}."')
    sentences += [f'Asked what else: "{_words(book, other, chance)}."' for other in others]
    for question, answer in context.items():
        if question in book.context:
            sentences.append(f"{book.context[question].ask} {answer[:1].upper()}{answer[1:]}.")
    return f"{book.complaints[first].title}, {site}", sentences


def _words(book: Book, complaint: str, chance: random.Random) -> str:
    said = chance.choice(book.complaints[complaint].kitchen or [book.complaints[complaint].title])
    return said[:1].upper() + said[1:].rstrip(".!")
