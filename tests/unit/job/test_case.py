"""Case files: read strictly, with every problem at once and a remedy each."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from diagnose.job.assess import assess
from diagnose.job.case import Case, CaseError, case_of, case_state, read_case
from diagnose.model import Book, load_book


@pytest.fixture(scope="module")
def book() -> Book:
    return load_book()


def problems(book: Book, **keys: Any) -> tuple[str, ...]:
    data = {"machine": "two_tank_electric_208", "complaints": ["rinse_cold"], **keys}
    with pytest.raises(CaseError) as caught:
        case_state(case_of(data, "case"), book)
    return caught.value.problems


def test_a_case_becomes_a_state(book: Book) -> None:
    state = case_state(
        Case(
            machine="two_tank_electric_208",
            plate={"booster_power": "30 kW"},
            complaints=["rinse_cold"],
            context={"hardness": "hard"},
            readings={"rinse_thermometer.panel_reading": "172 F", "booster_electric.line_amps": "48 48 83 A"},
        ),
        book,
    )
    assert state.present == ("rinse_cold",)
    assert state.context == {"hardness": "hard"}
    assert [r.check for r in state.readings] == ["rinse_thermometer.panel_reading", "booster_electric.line_amps"]
    assert state.machine is not None
    assert not state.machine.assumed("booster_power")


@pytest.mark.parametrize(
    ("keys", "says"),
    [
        ({"machine": "two_tank_electrik_208"}, "did you mean two_tank_electric_208?"),
        ({"complaints": []}, "none given"),
        ({"complaints": ["rinse_colt"]}, "did you mean rinse_cold?"),
        ({"context": {"hardnes": "hard"}}, "did you mean hardness?"),
        ({"context": {"hardness": "wet"}}, "is no answer; use soft or softened"),
        ({"plate": {"booster_power": "30 psi"}}, "psi is a unit of pressure"),
        ({"readings": {"rinse_thermometer.panel_readin": "1 F"}}, "did you mean rinse_thermometer.panel_reading?"),
        ({"readings": {"rinse_thermometer.panel_reading": "warm"}}, "is no number"),
        ({"readings": {"booster_electric.line_amps": "48 48"}}, "this wants 3 values"),
        ({"readings": {"booster_electric.line_amps_single": "48"}}, "does not belong to this type of machine"),
        ({"readings": {"booster_electric.heat_balance": "1"}}, "computed from other readings"),
        ({"ruled_out": ["nothing.at_all"]}, "ruled_out"),
        ({"who": ["plumber"]}, "did you mean licensed plumber?"),
        ({"keep_closed": ["control bax"]}, "did you mean control box?"),
    ],
)
def test_faults_are_named_with_a_remedy(book: Book, keys: dict[str, Any], says: str) -> None:
    assert any(says in p for p in problems(book, **keys))


def test_all_at_once(book: Book) -> None:
    found = problems(book, complaints=["x"], context={"age": "x"}, readings={"a.b": "1"}, plate={"volts": "?"})
    assert len(found) == 4


def test_unknown_keys_name_the_known(tmp_path: Path) -> None:
    path = tmp_path / "case.toml"
    path.write_text('machine = "x"\ncomplaints = []\ncolour = "red"\n')
    with pytest.raises(CaseError, match="a case has the keys machine, plate"):
        read_case(path)


@settings(max_examples=150, deadline=None)
@given(st.binary(max_size=60))
def test_rubbish_in_a_file_is_a_sentence(tmp_path_factory: pytest.TempPathFactory, rubbish: bytes) -> None:
    path = tmp_path_factory.mktemp("case") / "case.toml"
    path.write_bytes(rubbish)
    with pytest.raises(CaseError):
        read_case(path)


_VALUES = st.recursive(
    st.none() | st.booleans() | st.integers() | st.text(max_size=10),
    lambda inner: st.lists(inner, max_size=3) | st.dictionaries(st.text(max_size=8), inner, max_size=3),
    max_leaves=6,
)


@settings(max_examples=150, deadline=None)
@given(st.dictionaries(st.sampled_from(Case.__struct_fields__) | st.text(max_size=5), _VALUES, max_size=6))
def test_rubbish_in_every_key_is_a_sentence(book: Book, data: dict[str, Any]) -> None:
    try:
        case_state(case_of(data, "case"), book)
    except CaseError as error:
        assert all(error.problems)


def test_who_works_and_what_stays_closed_limit_the_advice(book: Book) -> None:
    def checks(**keys: Any) -> set[str]:
        case = case_of({"machine": "two_tank_electric_208", "complaints": ["rinse_cold"], **keys}, "case")
        return {o.id for o in assess(book, case_state(case, book)).options if o.what == "check"}

    everything = checks()
    operator = checks(who=["operator"])
    shut = checks(keep_closed=["control box"])
    assert "booster_electric.line_amps" in everything - operator - shut
    assert operator
    assert all(book.checks[c].who == "operator" for c in operator)
    assert shut
    assert not any("control box" in book.checks[c].open for c in shut)
