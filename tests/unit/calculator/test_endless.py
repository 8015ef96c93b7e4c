"""An endless figure: said in words, and null in JSON, which knows none."""

from __future__ import annotations

import json

from diagnose.calculator import as_json
from diagnose.calculator.answer import Reckoned
from diagnose.formulas import work
from diagnose.formulas.catalog import find_formula
from diagnose.formulas.working import Given


def test_open_pairs() -> None:
    given = {"power": 27e3, "voltage": 400.0, "connection": "wye", "state": "one element open", "per_leg": 1.0}
    worked = work(find_formula("bank-ohms"), {n: Given(v) for n, v in given.items()})
    assert worked.lines[-1] == "Between the terminals: endless ohm, 11.85 ohm, endless ohm."
    text = as_json(Reckoned(worked))
    assert "Infinity" not in text
    assert [answer["value"] is None for answer in json.loads(text)["answers"]] == [True, False, True]
