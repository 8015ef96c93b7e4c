"""The calculator: figures from the line, the plate or a question; forward and back; clear refusals."""

from __future__ import annotations

import contextlib
import json
import math
import random
from collections.abc import Iterator

import pytest

from diagnose.calculator import FigureError, as_json, as_lines, gather_figures, matching, reckon
from diagnose.calculator.parse import read_value
from diagnose.formulas import Argument, Formula, all_formulas, find_formula
from diagnose.model import Book, Machine, load_book
from diagnose.units import UnitError, find_unit

RISE = find_formula("booster-rise")


@pytest.fixture(scope="module")
def book() -> Book:
    return load_book()


def east(book: Book, **own: str) -> Machine:
    return Machine("east", book.machines["two_tank_electric_208"], own)


def result(book: Book, formula: Formula = RISE, machine: Machine | None = None, find: str = "", **named: str) -> float:
    wanted = gather_figures(formula, named, machine=machine, find=find)
    worked = reckon(wanted, book, machine).worked
    value = worked.given[worked.solved].value if worked.solved else worked.result
    assert isinstance(value, float)
    return value


def test_the_trade_rule(book: Book) -> None:
    # kW x 3412 / (500 x gpm): 30 kW into 4.2 gpm are 48.7 F°
    assert math.isclose(result(book, power="30kW", flow="4.2gpm") * 1.8, 30 * 3412.14 / (500 * 4.2), rel_tol=1e-4)


def test_figures_without_names_go_where_their_units_belong(book: Book) -> None:
    wanted = gather_figures(RISE, {}, ["4.2gpm", "30kW"])
    assert reckon(wanted, book).worked.lines == ("30 kW × 3412 ÷ (500 × 4.2 gpm) = 48.74 F°",)


def test_plain_numbers_go_in_order_behind_those_with_units(book: Book) -> None:
    wanted = gather_figures(RISE, {}, ["30", "15.9 L/min"])
    assert wanted.system == "si"
    assert reckon(wanted, book).worked.lines == ("30 kW × 14.35 ÷ 15.9 L/min = 27.08 C°",)


def test_solved_back_for_what_is_left_open(book: Book) -> None:
    power = result(book, rise="40F", flow="4.2gpm")
    assert math.isclose(result(book, power=f"{power} W", flow="4.2 gpm") * 1.8, 40, rel_tol=1e-9)


def test_the_plate_fills_in_and_find_says_what_to_look_for(book: Book) -> None:
    machine = east(book, booster_power="30 kW", rinse_flow="4.2 gpm")
    assert math.isclose(result(book, machine=machine) * 1.8, 48.74, rel_tol=1e-3)
    flow = result(book, machine=machine, find="flow", rise="70F")
    assert math.isclose(flow / (3.785411784e-3 / 60), 30 * 3412.14 / (500 * 70), rel_tol=1e-3)
    with pytest.raises(FigureError, match="say what to look for: --find"):
        gather_figures(RISE, {"rise": "70F"}, machine=machine)


def test_what_is_assumed_is_said(book: Book) -> None:
    machine = east(book, booster_power="30 kW")
    lines = "\n".join(as_lines(reckon(gather_figures(RISE, {}, machine=machine), book, machine), 80))
    assert "Heater power: 30 kW (plate of east)" in lines
    assert "(type's figure, assumed)" in lines
    assert "data plate governs" in " ".join(lines.split())


def test_units_asked_for_hold_whatever_was_typed(book: Book) -> None:
    wanted = gather_figures(RISE, {"power": "30kW", "flow": "4.2gpm"}, system="si")
    assert "L/min" in "\n".join(as_lines(reckon(wanted, book), 80))


def test_what_is_missing_is_asked_for_until_it_can_be_read(book: Book) -> None:
    answers: Iterator[str] = iter(["", "warm", "20 psi", "30"])
    said: list[str] = []
    wanted = gather_figures(RISE, {"flow": "4.2gpm"}, ask=lambda prompt: next(answers), tell=said.append)
    assert wanted.given["power"].value == 30e3
    assert len(said) == 3
    assert "psi is a unit of pressure" in said[2]


@pytest.mark.parametrize(
    ("named", "says"),
    [
        ({"power": "30psi", "flow": "4"}, r"Heater power \(--power\): psi is a unit of pressure; this wants kW"),
        ({"power": "lots"}, "is no number"),
        ({"power": "30"}, "Rinse flow is missing; give it: --flow in gpm"),
        ({}, "Heater power is missing"),
    ],
)
def test_refused_with_the_remedy(named: dict[str, str], says: str) -> None:
    with pytest.raises(FigureError, match=says):
        gather_figures(RISE, named)


@pytest.mark.parametrize(
    ("named", "says"),
    [
        ({"power": "-3kW", "flow": "4gpm"}, r"Heater power \(--power\): -3 kW won't do; it must be above nought"),
        ({"power": "3kW", "flow": "0gpm"}, r"Rinse flow \(--flow\): 0 gpm won't do; it must be above nought"),
        ({"rise": "4000F", "flow": "4gpm"}, "no heater power in its usual range gives that"),
    ],
)
def test_nonsense_is_refused_in_the_words_and_units_of_the_trade(book: Book, named: dict[str, str], says: str) -> None:
    with pytest.raises(FigureError, match=says):
        reckon(gather_figures(RISE, named), book)


def test_a_figure_far_outside_is_pointed_out(book: Book) -> None:
    lines = as_lines(reckon(gather_figures(RISE, {}, ["30000", "4.2"]), book), 80)
    assert any("Heater power is outside 0 to 200 kW" in line for line in lines)


@pytest.mark.parametrize("text", ["462 463 455", "462, 463, 455 V", "462,463,455", "462V 463V 455V", "0.462e3 463 455"])
def test_lists_as_technicians_type_them(text: str) -> None:
    volts = Argument("volts", "Line volts", "voltage", "V", many=3)
    assert read_value(volts, text, "us") == (462.0, 463.0, 455.0)


@pytest.mark.parametrize(
    ("text", "says"), [("462 463", "3 values in V .*; 2 came"), ("", "type numbers"), ("a b c", "1 came")]
)
def test_lists_that_are_none(text: str, says: str) -> None:
    with pytest.raises(UnitError, match=says):
        read_value(Argument("volts", "Line volts", "voltage", "V", many=3), text, "us")


def test_a_word_is_taken_by_number_or_part() -> None:
    kind = Argument("kind", "Connection", "words", words=("delta", "wye"))
    assert read_value(kind, "2", "us") == read_value(kind, "WYE", "us") == read_value(kind, "w", "us") == "wye"
    with pytest.raises(UnitError, match="say one of delta, wye"):
        read_value(kind, "star", "us")


def test_formulas_are_found_by_the_words_of_the_trade() -> None:
    assert matching("booster-rise") == ["booster-rise"]
    assert "booster-rise" in matching("booster degrees")
    assert matching("boster-rise")[0] == "booster-rise"
    assert matching("boster-rise", near=False) == []


@pytest.mark.parametrize("name", all_formulas())
def test_every_formula_answers_in_both_systems_and_as_json(book: Book, name: str) -> None:
    """Figures drawn from the ranges that the docstring gives, until some can stand together."""
    formula, dice = all_formulas()[name], random.Random(name)
    for system in ("us", "si"):
        done = None
        for _ in range(200):
            named = {a.name: _drawn(formula, a, dice) for a in formula.takes}
            with contextlib.suppress(FigureError):
                done = reckon(gather_figures(formula, named, system=system), book)
                break
        assert done is not None, "no figures from its own ranges can be worked"
        assert all(len(line) <= 45 for line in as_lines(done, 45))
        document = json.loads(as_json(done))
        assert document["answers"][0]["name"] == formula.gives[0].name
        assert document["source"]


def _drawn(formula: Formula, argument: Argument, dice: random.Random) -> str:
    if argument.quantity == "words":
        return dice.choice(argument.words)
    parameter = formula.manual.parameters[argument.name]
    values = [dice.uniform(parameter.low or 0.0, parameter.high or 1.0) for _ in range(argument.many or 3)]
    if parameter.kind.startswith("int"):
        values = [float(round(v)) for v in values]
    if argument.quantity == "number":
        return " ".join(f"{v!r}" for v in values)
    unit = find_unit(argument.us, argument.quantity)
    assert unit is not None
    return " ".join(f"{unit.from_si(v)!r}" for v in values) + f" {unit.symbol}"
