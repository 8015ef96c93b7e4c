"""Whatever a kitchen may hear, on any complaint and type of machine, asks for no tool, no cover and nothing live."""

from __future__ import annotations

import re
from functools import cache

import pytest

from diagnose.model import Book, Cause, Check, Machine, fits, load_book
from diagnose.model.lint.aloud import sentences, spoken
from diagnose.model.telephone import asked_aloud, meanwhile
from diagnose.model.truth import under

# Written apart from the lint's list, so that neither alone decides.
TOOLS = r"screwdriver|spanner|wrench|pliers|hammer|multimeter|clamp|tester|probe|crowbar|hex key|ladder"
COVERS = (
    r"(open|unscrew|undo|remove|take off|lift off) (the |a |its |that |any )?(\w+ )?(cover|panel|guard|switch ?box)"
)
LIVE = r"terminals?|bare wires?|live parts?|fuses?|measure the volts|bridge"
HANDS = r"(?<!tube )reach in(to)?|climb (on|up|onto)|put (your|a) hand in"
FORBIDDEN = re.compile(rf"\b({TOOLS}|{COVERS}|{LIVE}|{HANDS})\b", re.I)
FORBIDS = re.compile(r"\b(not|never|nobody|without|no)\b", re.I)
# What a kitchen has at hand beside eyes, ears and nose.
AT_HAND = {
    *(
        "none",
        "eye",
        "eyes",
        "ear",
        "ears",
        "nose",
        "hand",
        "questions",
        "bills",
        "watch",
        "stopwatch",
        "lamp",
        "torch",
    ),
    *("panel gauge", "panel thermometer", "rinse thermometer", "gauge", "tissue", "paper tissue", "paper", "tongs"),
    *("white cup", "white cloth", "towel", "stick", "rule", "jug", "mop", "tape", "grease pencil", "wax pencil"),
    *("tissue on a stick", "crushed ice", "test strip", "test strips", "label", "labels", "160 °F labels"),
    *("digital thermometer", "kitchen scale", "watch over two minutes", "glass", "cloth", "thermometer"),
}
BOOK = load_book()
MACHINES = {name: Machine("", kind) for name, kind in BOOK.machines.items()}
# Where the machine stays off, safety leaves fewer questions.
ENOUGH, ENOUGH_OFF = 6, 3


@cache
def fit_to_say(text: str) -> tuple[str, ...]:
    """The sentences of a text that a kitchen must not be told."""
    return tuple(each for each in sentences(text) if FORBIDDEN.search(each) and not FORBIDS.search(each))


def kitchens_work(entry: Check | Cause) -> bool:
    return (
        entry.open in ([], ["none"]) and entry.who == "operator" and not {"live_parts", "isolate"} & {*entry.cautions}
    )


@cache
def nodes_under(complaint: str) -> frozenset[str]:
    return frozenset(under(BOOK, complaint))


@pytest.mark.parametrize("complaint", BOOK.complaints)
def test_nothing_said_is_beyond_a_kitchen(complaint: str) -> None:
    for machine in MACHINES.values():
        if fits(machine, BOOK.complaints[complaint].fits):
            call(complaint, machine)


def call(complaint: str, machine: Machine) -> None:
    told = meanwhile(BOOK.complaints[complaint], machine)
    assert told is not None, f"{machine.type.id}: nothing is said of what to do until it is right"
    texts = list(told.say)
    below = nodes_under(complaint)
    asked = [BOOK.checks[c] for c in asked_aloud(BOOK, machine, [complaint])]
    bearing = [c.id for c in asked if below & {*c.looks_at} and (not c.asked_for or complaint in c.asked_for)]
    for check in asked:
        assert kitchens_work(check), check.id
        texts.append(check.aloud or "")
    for cause in (BOOK.causes[c] for c in below & {*BOOK.causes}):
        if cause.aloud and fits(machine, cause.fits):
            assert kitchens_work(cause), cause.id
            texts.extend(cause.aloud)
    assert [each for text in texts for each in fit_to_say(text)] == []
    assert len(bearing) >= (ENOUGH_OFF if told.ask_only else ENOUGH), (machine.type.id, bearing)


@pytest.mark.parametrize("check", [c for c in BOOK.checks.values() if c.aloud], ids=lambda c: c.id)
def test_a_question_needs_what_a_kitchen_has_at_hand(check: Check) -> None:
    things = {each.strip() for each in re.split(r", | and ", check.instrument)}
    assert things <= AT_HAND
    assert check.aloud
    assert "?" in check.aloud or re.search(r"\b(read|tell|give|count)\b", check.aloud), "it asks nothing"


@pytest.mark.parametrize("cause", [c for c in BOOK.causes.values() if c.aloud], ids=lambda c: c.id)
def test_what_a_kitchen_puts_right_ends_with_a_look(cause: Cause) -> None:
    assert 3 <= len(cause.aloud) <= 6
    assert max(len(each.split()) for text in cause.aloud for each in sentences(text)) <= 20
    assert re.search(r"\b(should|look|read|tell me|count|shows?|stays?|comes out|fall)\b", cause.aloud[-1], re.I)
    if "moving_conveyor" in cause.cautions:
        careful = r"press stop|switch|hands?\b|finger|keep|nobody|wait|gloves|nothing is wrong|call out|doors|not"
        assert re.search(careful, " ".join(cause.aloud[:2]), re.I), "care comes first"


def test_everything_spoken_is_walked_and_dangers_come_in_the_kitchens_words() -> None:
    texts = [text for _, each in spoken(BOOK) for text in each]
    assert [each for text in texts for each in fit_to_say(text)] == []
    assert all(stop.aloud and stop.aloud_then for stop in BOOK.stops.values())
    assert all(question.aloud for question in BOOK.context.values())
    assert all(complaint.until for complaint in BOOK.complaints.values())
    assert sum(bool(cause.aloud) for cause in BOOK.causes.values()) >= 60
    assert sum(bool(check.aloud) for check in BOOK.checks.values()) >= 170


def test_the_walk_can_fail() -> None:
    assert fit_to_say("Take a screwdriver and turn it.")
    assert fit_to_say("Open the front panel, and look.")
    assert not fit_to_say("Do not open the front panel.")
    silent = Book(checks={"x": BOOK.checks["contactor.chatter_listen"]})
    assert [key for key, texts in spoken(silent) if texts] == ["x"]
