"""Lines of working come out by hand: their arithmetic, done by itself, gives the answer beside it."""

from __future__ import annotations

import ast
import math
import random
import re
from itertools import pairwise

import pytest

from diagnose.formulas import Formula, all_formulas
from diagnose.formulas.working import render
from diagnose.units import UNITS

_SYMBOLS = sorted({u.symbol for u in UNITS}, key=len, reverse=True)
_UNIT = re.compile(rf"(?<=\d)\s?(?:{'|'.join(map(re.escape, _SYMBOLS))})(?![\w·])")
_KNOWN = {"sqrt": math.sqrt, "ln": math.log, "exp": math.exp}
_SPELT = {"×": "*", "÷": "/", "−": "-", "²": "**2", "³": "**3", "^": "**", "√": "sqrt", "π": "3.141592653589793"}


def by_hand(text: str) -> float | None:
    """What an expression comes to; None when it is a sentence. Units after numbers do not count."""
    bare = _UNIT.sub("", text)
    for sign, spelling in _SPELT.items():
        bare = bare.replace(sign, spelling)
    if "%" in bare or not re.fullmatch(r"[\d\s.+\-*/(),a-z]+", bare):
        return None
    try:
        return _value(ast.parse(bare.strip(), mode="eval").body)
    except (SyntaxError, KeyError, TypeError):
        return None


def _value(node: ast.expr) -> float:
    if isinstance(node, ast.Constant):
        return float(node.value)  # type: ignore[arg-type]
    if isinstance(node, ast.UnaryOp):
        return -_value(node.operand)
    if isinstance(node, ast.Call) and isinstance(node.func, ast.Name):
        return _KNOWN[node.func.id](*(_value(a) for a in node.args))
    if isinstance(node, ast.BinOp):
        left, right = _value(node.left), _value(node.right)
        match node.op:
            case ast.Add():
                return left + right
            case ast.Sub():
                return left - right
            case ast.Mult():
                return left * right
            case ast.Div():
                return left / right
            case ast.Pow():
                return float(left**right)
    raise TypeError


def _drawn(formula: Formula, dice: random.Random) -> dict[str, object]:
    values: dict[str, object] = {}
    for argument in formula.takes:
        if argument.quantity == "words":
            values[argument.name] = dice.choice(argument.words)
            continue
        parameter = formula.manual.parameters[argument.name]
        low, high = (parameter.low or 0.0), (parameter.high or 1.0)
        many = argument.many or 4
        drawn = [dice.uniform(low, high) for _ in range(many)]
        whole = [float(round(d)) if parameter.kind.startswith("int") else d for d in drawn]
        values[argument.name] = whole[0] if argument.many == 1 else tuple(whole)
    return values


@pytest.mark.parametrize("system", ["us", "si"])
@pytest.mark.parametrize("name", all_formulas())
def test_lines_come_out_by_hand(name: str, system: str) -> None:
    formula = all_formulas()[name]
    dice = random.Random(name)
    tried = checked = answered = 0
    while tried < 200 and checked < 8:
        tried += 1
        values = _drawn(formula, dice)
        try:
            result = formula.run(**values)
        except ValueError:
            continue
        results = dict(
            zip((a.name for a in formula.gives), result if isinstance(result, tuple) else (result,), strict=True)
        )
        lines = render(formula, values, results, system, digits=12)
        assert lines
        assert all(line.strip() and "{" not in line for line in lines)
        checked += 1
        for line in lines:
            sides = [by_hand(side) for side in line.split(" = ")]
            numbers = [s for s in sides if s is not None]
            for left, right in pairwise(numbers):
                assert math.isclose(left, right, rel_tol=5e-3, abs_tol=1e-3), line
            answered += len(numbers) > 1
    assert checked >= 3, "draws from the docstring's ranges hardly ever stand together"
    assert formula.by_hand or answered, "no line can be worked by hand; say in by_hand why"
