"""Study mode: choices are worth what the advice says, reasons are held against the tables, rubbish is refused."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from diagnose.inference import Prediction
from diagnose.model import Book, Machine, fits, load_book
from diagnose.practice.walk import Walk
from diagnose.practice.worth import Study, bits_of, usual_type
from diagnose.terminal import ScriptedFront
from diagnose.view.layout import text_width

PRESSURE = "rinse_gauge.flow_pressure"


@pytest.fixture(scope="module")
def book() -> Book:
    return load_book()


@pytest.fixture(scope="module")
def machine(book: Book) -> Machine:
    kind = usual_type(book, "rinse_cold")
    return Machine(kind.id, kind)


def walked(book: Book, machine: Machine, answers: list[str], columns: int = 80, complaint: str = "rinse_cold") -> str:
    front = ScriptedFront(answers, columns)
    Walk(book, machine, complaint, front).run()
    assert max(text_width(line) for line in front.printed) <= columns
    return front.text


def flat(text: str) -> str:
    return " ".join(text.split())


def test_a_choice_is_answered_with_its_worth_and_the_best(book: Book, machine: Machine) -> None:
    study = Study(book, machine, "rinse_cold")
    best = study.options[0]
    mine = next(o for o in reversed(study.options) if o.kind == "check")
    worth, text = study.worth(mine.id), flat(walked(book, machine, [book.title(mine.id), ""]))
    assert worth.rank == study.options.index(mine) + 1
    assert f"then about {mine.expected:.0f} minutes in all to a verified repair" in text
    assert f"{worth.bits:.1f} bits" in text
    assert f"Best: {book.title(best.id)}" in text
    assert text.count("(yours)") == 1


def test_the_best_is_praised(book: Book, machine: Machine) -> None:
    best = Study(book, machine, "rinse_cold").options[0]
    assert "That is the best choice here." in flat(walked(book, machine, [book.title(best.id), ""]))


def test_leads_are_the_predictions(book: Book, machine: Machine) -> None:
    study = Study(book, machine, "rinse_cold")
    leads = study.worth(PRESSURE).leads
    assert sum(lead.chance for lead in leads) == pytest.approx(1.0)
    for lead in leads:
        after = dict(study.further(PRESSURE, lead.outcome).ranking)
        assert max(after.values()) == pytest.approx(lead.after, abs=1e-9)
        assert after[lead.cause] == pytest.approx(lead.after, abs=1e-9)


@pytest.mark.parametrize(
    ("after", "bits"),
    [
        # Four causes, one of them so: halving them is one bit, naming it two, saying nothing none.
        ([[0.5, 0.5, 0.0, 0.0], [0.0, 0.0, 0.5, 0.5]], 1.0),
        ([[1.0, 0, 0, 0], [0, 1.0, 0, 0], [0, 0, 1.0, 0], [0, 0, 0, 1.0]], 2.0),
        ([[0.25] * 4] * 2, 0.0),
    ],
)
def test_bits_are_the_doubt_closed_on_average(after: list[list[float]], bits: float) -> None:
    chances = {f"o{n}": 1.0 / len(after) for n in range(len(after))}
    foretold = Prediction("k", chances, ("a", "b", "c", "d"), np.array(after))
    assert bits_of(foretold) == pytest.approx(bits, abs=1e-6)


def test_a_reason_is_held_against_what_the_check_tells(book: Book, machine: Machine) -> None:
    title = book.title(PRESSURE)
    sees = flat(walked(book, machine, [title, "the regulator is set too high"]))
    assert "You think of Regulator is set too high:" in sees
    assert 'after "' in sees
    blind = flat(walked(book, machine, [title, "one heating element is open"]))
    assert "this check hardly tells of it" in blind
    assert "names no cause" in flat(walked(book, machine, [title, "my uncle told me so"]))


def test_one_walks_down_and_back(book: Book, machine: Machine) -> None:
    title = book.title(PRESSURE)
    text = flat(walked(book, machine, [title, "", "2", "b", "b", "e"]))
    assert f"Supposed: {title}:" in text
    assert "Question 2" in text
    assert "This is the beginning." in text
    assert "Nothing was chosen." in text
    down = flat(walked(book, machine, [title, "", "", "e"]))
    assert "Your way" in down
    assert "It leads to:" in down


def test_a_supposed_check_is_not_offered_again_and_its_covers_stay_open(book: Book, machine: Machine) -> None:
    study = Study(book, machine, "rinse_cold")
    check = next(c for c in study.checks if "control box" in book.checks[c].open)
    outcome = next(iter(study.predictions[check].outcomes))
    further = study.further(check, outcome)
    assert check not in further.checks
    assert all(further.worth(c).opening == 0 for c in further.checks if book.checks[c].open == ["control box"])


def test_the_usual_type_can_be_complained_of_so(book: Book) -> None:
    for name, complaint in book.complaints.items():
        kind = usual_type(book, name)
        assert fits(Machine("", kind), complaint.fits)


@pytest.mark.parametrize("columns", [45, 80])
@pytest.mark.parametrize("complaint", ["noise", "rinse_cold", "wash_cold"])
def test_the_beginning_leaves_room_for_the_question(book: Book, complaint: str, columns: int) -> None:
    kind = usual_type(book, complaint)
    text = walked(book, Machine(kind.id, kind), ["t", "t all", "r", "h", "list", "e"], columns, complaint)
    assert "Question 1" in text


@settings(max_examples=12, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(
    st.lists(
        st.one_of(
            st.sampled_from(["", "1", "2", "99999", "b", "e ", "u", "list", "10-20", "why", "rinse pressure", "t all"]),
            st.text(max_size=60),
        ),
        max_size=10,
    )
)
def test_rubbish_is_refused_and_never_ends_it(book: Book, machine: Machine, typed: list[str]) -> None:
    assert "Study:" in walked(book, machine, typed)
