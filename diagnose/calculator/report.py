"""The answer as lines for people, or as one JSON document."""

from __future__ import annotations

import json
import math

from diagnose.calculator.answer import Held, Reckoned
from diagnose.formulas import Answer, Argument, Worked
from diagnose.units import Quantity, find_unit, show_number
from diagnose.view import Line, wrap
from diagnose.view.working import worked_block

__all__ = ["SCHEMA", "as_json", "as_lines"]

SCHEMA = 1  # raised when a key changes its meaning or goes


def as_lines(reckoned: Reckoned, width: int) -> list[str]:
    """Figures, working, answer, limit, what to mind, source."""
    worked, manual = reckoned.worked, reckoned.worked.formula.manual
    lines: list[Line] = worked_block(worked, width)
    if reckoned.held is not None:
        lines += wrap(_held_words(reckoned.held), width, "  ", "    ")
    for name in worked.outside:
        lines += wrap(_outside_words(worked, name), width, "  ", "    ", "caution")
    if manual.notes:
        lines += wrap(manual.notes, width, "  Mind: ", "    ", "dim")
    lines += wrap(manual.references, width, "  Source: ", "    ", "dim")
    if any(g.assumed for g in worked.given.values()):
        lines += wrap("Figures marked assumed or usual are not this machine's: its data plate governs.", width, "  ")
    return [*lines]


def _held_words(held: Held) -> str:
    ends = [e for e in (held.low, held.high) if e is not None]
    stands = "; ".join(dict.fromkeys(e.stands for e in ends if e.stands))
    if held.low and held.high:
        band = f"{show_number(held.low.value)} to {held.high}"
    else:
        band = f"{held.low} or more" if held.low else f"{held.high} or less"
    verdict = {"inside": "in order", "below": "too little", "above": "too much"}[held.verdict]
    return f"Held against: {held.title}: {band} ({stands}): {verdict}." if stands else f"{band}: {verdict}."


def _outside_words(worked: Worked, name: str) -> str:
    argument, parameter = worked.formula.argument(name), worked.formula.manual.parameters[name]
    if argument.quantity == "number":
        band = f"{parameter.low:g} to {parameter.high:g}"
    else:
        low, high = (
            Quantity.of_si(float(end or 0.0), argument.quantity, argument.unit(worked.system))
            for end in (parameter.low, parameter.high)
        )
        band = f"{show_number(low.value)} to {high}"
    return f"{argument.ask} is outside {band}, where this is meant to be used: check the figure and its unit."


def as_json(reckoned: Reckoned) -> str:
    """One document: formula, figures with their origin, working, answers, limit, source."""
    worked, formula = reckoned.worked, reckoned.worked.formula
    held = reckoned.held
    document = {
        "schema": SCHEMA,
        "formula": formula.id,
        "title": formula.title,
        "units": worked.system,
        "figures": [
            {
                **_value(a, worked.given[a.name].value, worked.system),
                "origin": worked.given[a.name].origin,
                "assumed": worked.given[a.name].assumed,
            }
            for a in formula.takes
            if a.name in worked.given
        ],
        "working": [formula.manual.formula, *worked.lines],
        "answers": [_value(a, worked.results[a.name], worked.system) for a in formula.gives],
        "solved_for": worked.solved or None,
        "limit": None
        if held is None
        else {
            "id": formula.limit,
            "title": held.title,
            "low": str(held.low) if held.low else None,
            "high": str(held.high) if held.high else None,
            "stands": "; ".join(dict.fromkeys(e.stands for e in (held.low, held.high) if e and e.stands)),
            "verdict": held.verdict,
        },
        "outside_usual_range": list(worked.outside),
        "notes": formula.manual.notes,
        "source": formula.manual.references,
    }
    return json.dumps(document, indent=2, ensure_ascii=False)


def _value(entry: Argument | Answer, value: object, system: str) -> dict[str, object]:
    shown: object = value
    unit = ""
    if entry.quantity not in ("number", "words"):
        unit = entry.unit(system)
        kind = find_unit(unit, entry.quantity)
        assert kind is not None
        shown = [kind.from_si(v) for v in value] if isinstance(value, tuple) else kind.from_si(float(value))  # type: ignore[arg-type]
    if isinstance(shown, float) and not math.isfinite(shown):
        shown = None  # JSON knows no endless figure; the lines of working say "endless"
    return {
        "name": entry.name,
        "title": entry.ask if isinstance(entry, Argument) else entry.title,
        "value": shown,
        "unit": unit,
    }
