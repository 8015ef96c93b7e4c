"""The next question of a call, its end, the list of the van and the visit."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import pytest

from diagnose.job import events as ev
from diagnose.job import fold
from diagnose.job.assess import Assessment, assess
from diagnose.job.crew import WHO
from diagnose.job.onsite import on_the_spot, visit
from diagnose.job.state import JobState
from diagnose.job.telephone import MOST_QUESTIONS, asked_so_far, ending, last_ending, next_step
from diagnose.job.van import MOST_PARTS, van_list
from diagnose.model import Book, load_book

ELECTRIC = "two_tank_electric_208"


@pytest.fixture(scope="module")
def book() -> Book:
    return load_book()


def state_of(book: Book, *events: ev.Event, caller: Any = "kitchen", kind: str = ELECTRIC) -> JobState:
    opened = ev.Opened(machine="made up", type=kind)
    every = (opened, ev.CallBegun(caller), ev.SafetyAnswered(), *events)
    at = "2026-03-02T08:00:00+00:00"
    return fold([ev.Record(number=n, at=at, writer="desk", event=e) for n, e in enumerate(every, 1)], book)


def seen_of(book: Book, *events: ev.Event, **more: Any) -> Assessment:
    return assess(book, state_of(book, *events, **more))


def test_only_questions_for_the_telephone_are_asked_and_foretold(book: Book) -> None:
    seen = seen_of(book, ev.ComplaintSaid("rinse_cold"))
    step = next_step(seen)
    assert step.what == "ask"
    assert book.checks[step.id].aloud
    assert step.spares > step.minutes > 0.0
    assert step.why
    assert all(book.checks[name].aloud for name in seen.predictions)
    assert step.id == step.asked[0].check
    assert [q.saves > 0 for q in step.asked] == sorted((q.saves > 0 for q in step.asked), reverse=True)


def test_a_machine_that_stays_off_is_asked_about_by_the_few_questions_of_its_complaint(book: Book) -> None:
    seen = seen_of(book, ev.ComplaintSaid("burning_smell"))
    (until,) = book.complaints["burning_smell"].until
    assert set(seen.predictions) <= set(until.ask_only)
    assert last_ending(seen).how == "stop"


def test_what_was_answered_or_is_not_known_is_not_asked_again(book: Book) -> None:
    first = next_step(seen_of(book, ev.ComplaintSaid("racks_jam"))).id
    skipped = seen_of(book, ev.ComplaintSaid("racks_jam"), ev.Skipped(first, "don't know"))
    assert first not in {q.check for q in next_step(skipped).asked}
    assert asked_so_far(skipped.state, book) == 1


def test_a_kitchen_is_asked_so_much_and_no_more(book: Book) -> None:
    seen = seen_of(book, ev.ComplaintSaid("rinse_cold"))
    assert next_step(seen, MOST_QUESTIONS - 1).what == "ask"
    step = next_step(seen, MOST_QUESTIONS)
    assert step.what == "end"
    assert str(MOST_QUESTIONS) in step.why[0]


def test_what_is_as_good_as_known_is_put_right_and_once_more_where_it_is_still_seen(book: Book) -> None:
    said = ev.ComplaintSaid("steam_out")
    where = ev.ReadingTaken("curtains.where_steam", outcome="entrance")
    gone = ev.ReadingTaken("curtains.entrance_look", outcome="missing")
    step = next_step(seen_of(book, said, where, gone))
    assert (step.what, step.id) == ("mend", "curtains.entrance_missing")
    assert "kitchen" in step.why[0]
    sound = next_step(seen_of(book, said, where, gone, ev.Repaired(step.id, "sound"), said, where, gone))
    assert (sound.what, sound.id) != ("mend", step.id)
    once = [said, where, gone, ev.Repaired(step.id, "can't tell"), said, where, gone]
    again = next_step(seen_of(book, *once))
    assert (again.what, again.id) == ("mend", step.id)
    twice = next_step(seen_of(book, *once, ev.Repaired(step.id, "can't tell"), said, where, gone))
    assert (twice.what, twice.id) != ("mend", step.id)


def test_a_call_is_solved_when_nothing_is_complained_of_any_more(book: Book) -> None:
    events = [
        ev.ComplaintSaid("steam_out"),
        ev.Repaired("curtains.entrance_missing", "as expected"),
        ev.ComplaintSaid("steam_out", present=False),
    ]
    state = state_of(book, *events)
    done = ending(book, state)
    assert done is not None
    assert (done.how, done.causes) == ("solved", ("curtains.entrance_missing",))
    assert "Put right" in done.why[0]
    seen = assess(book, state)
    assert next_step(seen).what == "end"
    assert last_ending(seen) == done
    assert van_list(seen).chance >= 0.0  # nothing is complained of: it must still be answered


def test_a_danger_ends_the_call_at_once(book: Book) -> None:
    state = state_of(book, ev.ComplaintSaid("heat_up_slow"), ev.SafetyAnswered("gas_smell"), kind="two_tank_gas_208")
    done = ending(book, state)
    assert done is not None
    assert (done.how, done.condition, done.use) == ("stop", "gas_smell", "stop")
    assert next_step(assess(book, state)).what == "end"


def test_nothing_has_ended_while_something_is_complained_of(book: Book) -> None:
    assert ending(book, state_of(book)) is None
    assert ending(book, state_of(book, ev.ComplaintSaid("rinse_cold"))) is None


@pytest.mark.parametrize(
    ("complaint", "use"), [("rinse_cold", "stop"), ("film_spots", "as usual"), ("racks_jam", "with care")]
)
def test_a_visit_says_how_far_the_machine_is_used_until_then(book: Book, complaint: str, use: str) -> None:
    done = last_ending(seen_of(book, ev.ComplaintSaid("film_spots"), ev.ComplaintSaid(complaint)), ("Enough.",))
    assert (done.how, done.use, done.why) == ("visit", use, ("Enough.",))


def test_for_a_technician_who_calls_the_advice_holds(book: Book) -> None:
    seen = seen_of(book, ev.ComplaintSaid("rinse_cold"), caller="technician")
    step, best = next_step(seen), seen.options[0]
    assert best.what == "check"
    assert (step.what, step.id) == ("ask", best.id)
    assert len(seen.predictions) > 40
    operator = replace(seen.state, allowed=frozenset(), skipped=dict.fromkeys(book.checks, "not now"))
    nothing = next_step(assess(book, operator))
    assert nothing.what == "end"
    assert nothing.why


def test_the_van_list_says_for_which_cause_and_what_must_match(book: Book) -> None:
    amps = ev.ReadingTaken("booster_electric.line_amps", {"L1": "48 A", "L2": "48 A", "L3": "83 A"})
    found = van_list(seen_of(book, ev.ComplaintSaid("rinse_cold"), amps))
    first = found.carried[0]
    assert first.name == "booster heating element"
    assert first.causes[0][0] == "booster_electric.element_open"
    assert any("same volts and watts" in match for match in first.match)
    assert len(found.carried) <= MOST_PARTS
    assert first.probability >= max(part.probability for part in found.left)
    assert found.chance > found.without
    assert "terminal links" in {part.name for part in found.at_hand}
    names = [part.name for group in (found.carried, found.left, found.at_hand, found.to_order) for part in group]
    assert len(names) == len(set(names))


def test_fewer_parts_are_carried_where_fewer_may_be(book: Book) -> None:
    seen = seen_of(book, ev.ComplaintSaid("rinse_cold"))
    chances = [van_list(seen, most).chance for most in (0, 1, 2, 4, 8)]
    assert chances == sorted(chances)
    assert [len(van_list(seen, most).carried) for most in (0, 1, 2)] == [0, 1, 2]


def test_a_part_in_no_stock_is_loaded_and_one_to_order_can_not_be(book: Book) -> None:
    seen = seen_of(book, ev.ComplaintSaid("rinse_cold"))
    bare = replace(seen, book=replace(book, stocks={}))
    assert van_list(bare).at_hand == ()
    assert van_list(bare).chance < van_list(seen).chance
    assert "return line" in {part.name for part in van_list(seen).to_order}


def test_knowledge_that_does_not_say_what_a_visit_costs_is_refused(book: Book) -> None:
    seen = seen_of(book, ev.ComplaintSaid("rinse_cold"))
    with pytest.raises(ValueError, match=r"what a visit costs .* in access\.toml"):
        van_list(replace(seen, book=replace(book, visits={})))


def test_a_visit_brings_instruments_and_says_who_must_come(book: Book) -> None:
    said = [ev.ComplaintSaid("rinse_cold"), ev.Skipped("rinse_gauge.flow_pressure", "don't know")]
    seen = seen_of(book, *said)
    there = visit(seen)
    assert there.van == van_list(seen)
    assert any("clamp meter" in each.instrument for each in there.instruments)
    assert all(name in book.checks for each in there.instruments for name in each.checks)
    assert "eyes" not in {each.instrument for each in there.instruments}
    chances = [chance for _, chance in there.licences]
    assert chances == sorted(chances, reverse=True)
    assert {who for who, _ in there.licences} <= set(WHO[2:])
    assert 0.0 < there.minutes < 240.0
    spot = on_the_spot(seen)
    assert (spot.state.call, spot.state.skipped) == (None, {})
    assert [first.id for first in there.first] == [choice.id for choice in spot.options[: len(there.first)]]
