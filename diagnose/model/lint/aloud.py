"""What is said to a kitchen worker on the telephone: no tool, no cover, nothing live, short and in plain words."""

from __future__ import annotations

import re
from collections.abc import Iterator

from diagnose.model.book import Book
from diagnose.model.entities import Cause, Check
from diagnose.model.machine import PLATE_FIGURES, TRAITS
from diagnose.model.problems import Problem

__all__ = ["LONGEST_SENTENCE", "check", "sentences", "spoken", "trouble_with"]

LONGEST_SENTENCE = 40  # words; what is longer is forgotten before its end
_SENTENCE = re.compile(r"(?<=[.?!])\s+")
_FORBIDS = re.compile(r"\b(not|n't|never|nobody|no|none|without|instead of|keep (?:away|off|out)|leave)\b", re.I)
# Pattern -> what is wrong with it, unless the sentence forbids it.
_BEYOND: tuple[tuple[re.Pattern[str], str], ...] = (
    (
        re.compile(
            r"\b(wrench|spanner|screwdriver|pliers|hammer|drill|saw|tools?|multimeter|ammeter|voltmeter|"
            r"(?:clamp|test) (?:meter|gauge)|manometer|ladder|unscrew\w*|undo)\b",
            re.I,
        ),
        "needs a tool",
    ),
    (
        re.compile(
            r"\b(covers?|panels?|guards?) off\b|"
            r"\b(?:open|lift|remove|unscrew|take off|take away|pull off)\w* (?:\w+ ){0,2}"
            r"(?:cover|panel|guard|box|switchboard)\b",
            re.I,
        ),
        "opens a cover",
    ),
    (
        re.compile(r"\b(?:terminals?|live parts?|wires?|wiring|fuses?|contacts?|earth lead|volts? with)\b", re.I),
        "goes near live parts",
    ),
    (
        re.compile(r"(?<!tube )\breach in(?:to)?\b|\b(?:climb on|climb up|stand on|put your hand in)\b", re.I),
        "reaches in or climbs",
    ),
    (
        re.compile(r"\b(?:pour|mix|add|fill in) (?:\w+ ){0,2}(?:acid|bleach|delimer|detergent|sanitiser)\b", re.I),
        "handles chemicals",
    ),
)
_JARGON = re.compile(
    r"\b(solenoids?|contactors?|manifolds?|relays?|overloads?|impellers?|actuators?|interlocks?|injectors?|"
    r"thermostats?|(?<!marked )boosters?|pawls?|plenums?|weirs?|transformers?|apertures?)\b",
    re.I,
)
_INSTRUMENTS = re.compile(
    r"clamp|multimeter|insulation|ammeter|manometer|anemometer|tachometer|spanner|screwdriver|flow hood|test gauge",
    re.I,
)


def check(book: Book) -> Iterator[Problem]:
    """Words for the telephone on work that is none for a kitchen; sentences too long, jargon, tools, covers."""
    said: tuple[Check | Cause, ...] = (*book.checks.values(), *book.causes.values())
    for entry in said:
        name = entry.id
        if entry.aloud:
            yield from (Problem(book.places[name], f"{name}: {what}", how) for what, how in _not_for_kitchens(entry))
    for key, texts in spoken(book):
        for text in texts:
            for what, how in trouble_with(text):
                yield Problem(book.places[key], f"{key.partition(':')[2] or key}: aloud, {what}", how)
    yield from _meanwhile(book)
    yield from _types(book)


def spoken(book: Book) -> Iterator[tuple[str, list[str]]]:
    """Everything that the kitchen hears: (key of its place, texts)."""
    yield from ((name, [each.aloud]) for name, each in book.checks.items() if each.aloud)
    yield from ((name, cause.aloud) for name, cause in book.causes.items())
    for name, complaint in book.complaints.items():
        yield name, [text for each in complaint.until for text in each.say]
    for name, stop in book.stops.items():
        yield f"stop:{name}", [*filter(None, [stop.aloud]), *stop.aloud_then]
    yield from ((f"question:{name}", [each.aloud]) for name, each in book.context.items() if each.aloud)
    for name, asked in book.tell_apart.items():
        yield f"tell_apart:{name}", [asked.aloud, *(each.answer for each in asked.answers)]


def sentences(text: str) -> list[str]:
    """A text cut after each full stop or question mark.

    >>> sentences("Stop it. Does it drip?")
    ['Stop it.', 'Does it drip?']
    """
    return [each for each in _SENTENCE.split(text.strip()) if each]


def trouble_with(text: str) -> Iterator[tuple[str, str]]:
    """What makes a text unfit to be said to a kitchen worker, each with the remedy.

    >>> list(trouble_with("Do not open any cover."))
    []
    >>> [what for what, how in trouble_with("Open the switch box and look.")]
    ["it opens a cover: 'Open the switch box'"]
    """
    for sentence in sentences(text):
        long = len(sentence.split())
        if long > LONGEST_SENTENCE:
            yield f"a sentence of {long} words", f"at most {LONGEST_SENTENCE}: cut it in two"
        if jargon := _JARGON.search(sentence):
            yield f"a word no kitchen knows: {jargon[0]!r}", "say what it looks like, and where"
        for pattern, what in _BEYOND:
            found = pattern.search(sentence)
            if found and not _FORBIDS.search(sentence):
                yield f"it {what}: {found[0]!r}", "leave it to a technician, or say it otherwise"


def _not_for_kitchens(entry: Check | Cause) -> Iterator[tuple[str, str]]:
    if entry.open not in ([], ["none"]) or entry.who != "operator":
        yield (
            f"words for the telephone, but it needs {entry.who}, open: {', '.join(entry.open)}",
            "drop aloud, or let an operator do it with nothing open",
        )
    if isinstance(entry, Check) and (tool := _INSTRUMENTS.search(entry.instrument)):
        yield f"words for the telephone, but it needs a {tool[0]}", "drop aloud: a kitchen has eyes, ears and a watch"
    if isinstance(entry, Cause) and len(entry.aloud) < 2:
        yield "one sentence puts nothing right", "say how it is made safe, what to do, what to look at afterwards"


def _meanwhile(book: Book) -> Iterator[Problem]:
    for name, complaint in book.complaints.items():
        for nth, each in enumerate(complaint.until, 1):
            for silent in (check for check in each.ask_only if not book.checks[check].aloud):
                yield Problem(book.places[name], f"{name}: {silent} is asked, but not aloud", "write its aloud")
            if not each.say:
                yield Problem(book.places[name], f"{name}: until says nothing", "say what the kitchen does meanwhile")
            if not each.fits and nth < len(complaint.until):
                yield Problem(book.places[name], f"{name}: what follows until {nth} is never said", "put it last")


def _types(book: Book) -> Iterator[Problem]:
    for name, asked in book.tell_apart.items():
        place = book.places[f"tell_apart:{name}"]
        if len({each.answer for each in asked.answers}) < 2:
            yield Problem(place, f"{name}: fewer than two answers", "give each group of types an answer")
        for each in asked.answers:
            for trait, values in each.fits.items():
                if not set(values) <= set(TRAITS.get(trait, ())):
                    yield Problem(place, f"{name}: {trait} {values} is no trait", "see TRAITS in the table of fields")
            for figure in each.plate.keys() - PLATE_FIGURES.keys():
                yield Problem(place, f"{name}: {figure} is no plate figure", f"use {', '.join(PLATE_FIGURES)}")
