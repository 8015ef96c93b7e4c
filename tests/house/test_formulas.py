"""Every formula says its units, an example and its source, and comes back to each argument that gave its answer."""

from __future__ import annotations

import importlib
import inspect
import math
import random
from collections.abc import Callable
from pathlib import Path

import pytest

from diagnose.formulas import SUBJECTS, all_formulas
from diagnose.formulas.solve import solve_function
from diagnose.model import PLATE_FIGURES, load_book
from diagnose.physics.manual import manual_of
from diagnose.units import find_unit, parse_quantity

PHYSICS = Path(__file__).resolve().parents[2] / "diagnose" / "physics"
NOT_FORMULAS = {"__init__", "demand", "manual"}
NUMBERS = {"float", "int"}


def _formulas() -> dict[str, Callable[..., object]]:
    found: dict[str, Callable[..., object]] = {}
    for path in sorted(PHYSICS.glob("*.py")):
        if path.stem in NOT_FORMULAS:
            continue
        module = importlib.import_module(f"diagnose.physics.{path.stem}")
        for name in module.__all__:
            if inspect.isfunction(getattr(module, name)):
                found[f"{path.stem}.{name}"] = getattr(module, name)
    return found


ALL = _formulas()


@pytest.mark.parametrize("name", ALL)
def test_docstring_is_whole(name: str) -> None:
    run = ALL[name]
    manual = manual_of(run)
    signature = inspect.signature(run)
    assert list(manual.parameters) == list(signature.parameters), "parameters in order, all of them"
    for parameter in manual.parameters.values():
        assert parameter.kind, f"{parameter.name} has no type"
        if parameter.kind.split(",")[0] in NUMBERS or parameter.kind.startswith("sequence of float"):
            assert parameter.unit, f"{parameter.name} has no [unit]"
        if parameter.kind.split(",")[0] in NUMBERS:
            assert parameter.low is not None, f"{parameter.name} has no range `[unit], LOW to HIGH`"
            assert parameter.high is not None
            assert parameter.low < parameter.high
    assert "[" in manual.returns or signature.return_annotation in ("str", "bool"), "Returns has no [unit]"
    assert ">>>" in manual.examples
    assert manual.sentence.endswith(".")
    text = inspect.getdoc(run) or ""
    places = [text.index(f"{section}\n---") for section in ("Parameters", "Returns", "Notes", "Examples", "References")]
    assert places == sorted(places)
    assert len(manual.references) > 10


# Words that an argument may be, as the description of a formula lists them.
WORDS = {(f.run, a.name): a.words for f in all_formulas().values() for a in f.takes if a.words}


def _drawn_from(run: Callable[..., object], name: str, kind: str) -> bool:
    return kind.split(",")[0] in NUMBERS or (run, name) in WORDS


SCALAR = [
    name
    for name, run in ALL.items()
    if inspect.signature(run).return_annotation == "float"
    and any(p.kind.split(",")[0] == "float" for p in manual_of(run).parameters.values())
    and all(_drawn_from(run, p.name, p.kind) for p in manual_of(run).parameters.values())
]


@pytest.mark.parametrize("name", SCALAR)
def test_solved_back_for_each_argument(name: str) -> None:
    run = ALL[name]
    manual = manual_of(run)
    dice = random.Random(name)
    assert set(manual.one_way) <= set(manual.parameters)
    worked = 0
    for _ in range(12):
        values: dict[str, float | str] = {}
        for p in manual.parameters.values():
            if (run, p.name) in WORDS:
                values[p.name] = dice.choice(WORDS[run, p.name])
            else:
                value = dice.uniform(p.low, p.high)  # type: ignore[arg-type]
                values[p.name] = round(value) if p.kind.startswith("int") else value
        try:
            answer = float(run(**values))  # type: ignore[arg-type]
        except ValueError:
            continue  # two arguments that can't stand together
        worked += 1
        for p in manual.parameters.values():
            if p.name in manual.one_way or not p.kind.startswith("float"):
                continue
            assert p.low is not None
            assert p.high is not None
            back = solve_function(run, values, answer, p.name, p.low, p.high)  # type: ignore[arg-type]
            again = float(run(**{**values, p.name: back}))  # type: ignore[arg-type]
            assert math.isclose(again, answer, rel_tol=1e-6, abs_tol=1e-12)
            assert abs(back - float(values[p.name])) <= 1e-4 * (p.high - p.low), (
                f"{p.name}: another value gives the same"
            )
    assert worked >= 3, "the ranges of the docstring let too few arguments stand together"


@pytest.mark.parametrize("name", all_formulas())
def test_described_formula_fits_its_physics(name: str) -> None:
    formula = all_formulas()[name]
    assert formula.subject in SUBJECTS
    needed = {n for n, p in inspect.signature(formula.run).parameters.items() if p.default is inspect.Parameter.empty}
    named = [a.name for a in formula.takes]
    assert len(named) == len(set(named))
    assert needed <= set(named) <= set(inspect.signature(formula.run).parameters)
    for entry in (*formula.takes, *formula.gives):
        if entry.quantity in ("number", "words"):
            continue
        for unit in (entry.us, entry.si or entry.us):
            assert find_unit(unit, entry.quantity), f"{unit} is no unit of {entry.quantity}"
    for argument in formula.takes:
        assert not argument.plate or PLATE_FIGURES[argument.plate].quantity == argument.quantity
        assert not argument.usual or argument.stands, f"{argument.name}: say on what ground its usual figure stands"
        if argument.usual and argument.quantity not in ("number", "words"):
            parse_quantity(argument.usual, argument.quantity)
        assert (argument.quantity == "words") == bool(argument.words)
    assert not formula.limit or formula.limit in load_book().limits
    assert formula.title[0].isupper()
    assert formula.asks.endswith("?")
