"""A type of machine is found by questions a kitchen can answer; what it does meanwhile follows its traits."""

from __future__ import annotations

from dataclasses import replace

import msgspec
import pytest

from diagnose.model import Basis, Book, Machine, MachineType, Meanwhile, load_book
from diagnose.model.machine import fits
from diagnose.model.telephone import asked_aloud, meanwhile, next_question, types_left

BOOK = load_book()


def answers_for(book: Book, kind: MachineType) -> dict[str, str]:
    """What a kitchen with this machine says, asked until nothing more parts the types."""
    given: dict[str, str] = {}
    while (asked := next_question(book, given)) is not None:
        true = [
            each.answer
            for each in asked.answers
            if fits(Machine("", kind), each.fits) and all(kind.plate.get(f) in v for f, v in each.plate.items())
        ]
        assert len(true) == 1, f"{kind.id}, {asked.id}: {true}"
        given[asked.id] = true[0]
    return given


@pytest.mark.parametrize("kind", BOOK.machines.values(), ids=lambda kind: kind.id)
def test_true_answers_find_every_type_in_few_questions(kind: MachineType) -> None:
    given = answers_for(BOOK, kind)
    assert types_left(BOOK, given) == (kind,)
    assert len(given) <= 7


def test_nothing_said_leaves_all_and_not_knowing_tells_nothing() -> None:
    every = tuple(BOOK.machines.values())
    assert types_left(BOOK, {}) == every
    assert types_left(BOOK, {"carries": "don't know", "no such question": "in racks"}) == every
    asked = next_question(BOOK, {"carries": "don't know"})
    assert asked is not None
    assert asked.id != "carries"


def test_an_answer_leaves_the_types_that_agree() -> None:
    left = types_left(BOOK, {"carries": "straight onto a belt"})
    assert {kind.id for kind in left} == {name for name in BOOK.machines if name.startswith("flight")}
    left = types_left(BOOK, {"volts": "400"})
    assert {kind.plate["volts"] for kind in left} == {"400 V"}


def test_one_answer_misheard_does_not_end_the_search() -> None:
    given = {"carries": "straight onto a belt", "sanitises": "warm, with sanitiser from a jug", "tanks": "one tank"}
    left = {kind.id for kind in types_left(BOOK, given)}
    assert left == {"single_tank_chemical_208", "single_tank_chemical_208_single_phase"}


def test_without_questions_or_machines_there_is_nothing_to_ask() -> None:
    assert next_question(replace(BOOK, tell_apart={}), {}) is None
    assert types_left(Book(), {}) == ()
    assert next_question(replace(BOOK, machines={}), {}) is None


def test_the_first_that_fits_the_machine_is_said() -> None:
    kinds = BOOK.machines
    hot, weak = Machine("", kinds["single_tank_electric_208"]), Machine("", kinds["single_tank_chemical_208"])
    basis = Basis(kind="judgement")
    told = [
        Meanwhile(use="stop", say=["Sanitise in the sink."], fits={"sanitising": ["chemical"]}, basis=basis),
        Meanwhile(use="with care", say=["Wash again."], basis=basis),
    ]
    complaint = msgspec.structs.replace(BOOK.complaints["rinse_cold"], until=told)
    assert meanwhile(complaint, hot) == told[1]
    assert meanwhile(complaint, weak) == told[0]
    assert meanwhile(msgspec.structs.replace(complaint, until=told[:1]), hot) is None


def test_where_the_machine_stays_off_only_what_needs_no_running_is_asked() -> None:
    machine = Machine("", BOOK.machines["single_tank_electric_208"])
    smell = asked_aloud(BOOK, machine, ["burning_smell"])
    assert "hot_spots.smell_where" in smell
    assert "control_circuit.start_press" not in smell
    any_time = asked_aloud(BOOK, machine, ["no_start"])
    assert "control_circuit.start_press" in any_time
    assert all(BOOK.checks[name].aloud for name in any_time)
    assert asked_aloud(BOOK, machine, ["no_start", "burning_smell"]) == smell & any_time
    assert asked_aloud(BOOK, machine, []) == any_time
    assert "flight_conveyor.belt_run" not in any_time
