"""Turn what was typed for a check into values or a chosen outcome."""

from __future__ import annotations

import re
from collections.abc import Mapping

from diagnose.model.entities import Check, ReadingSpec
from diagnose.units import Quantity, UnitError, parse_quantity

__all__ = ["parse_answer", "parse_places", "parse_values", "show_values"]

_NUMBER_THEN_REST = re.compile(r"^([+-]?(?:\d+(?:[.,]\d+)?|[.,]\d+))(.*)$")


def parse_answer(check: Check, text: str) -> tuple[dict[str, Quantity], str | None]:
    """Values by place, and None; or no values and the id of the chosen outcome.

    An outcome may be given by id, by its number on the screen (from 1), or by its whole title.
    Raises UnitError with the remedy.
    """
    if check.reading is not None:
        return parse_values(check, text), None
    wanted = text.strip()
    ids = list(check.outcomes)
    if wanted in check.outcomes:
        return {}, wanted
    if wanted.isascii() and wanted.isdigit() and 1 <= int(wanted[:6]) <= len(ids):
        return {}, ids[int(wanted) - 1]
    for name, outcome in check.outcomes.items():
        if wanted.casefold() == outcome.title.casefold():
            return {}, name
    raise UnitError(f"{wanted[:40]!r} is no answer here; type a number from 1 to {len(ids)}")


def parse_values(check: Check, text: str) -> dict[str, Quantity]:
    """The values of a measuring check, one for each place in order: `48 48 83`, `48/48/83 A`.

    A unit after the last value holds for all that name none.
    """
    spec = check.reading
    if spec is None:
        raise UnitError(f"{check.id} is answered by choosing, not by a number")
    return parse_places(text, spec)


def parse_places(text: str, spec: ReadingSpec) -> dict[str, Quantity]:
    """Values by place, as the reading wants them. Raises UnitError with the remedy."""
    places = spec.each or [""]
    pieces = _split(text)
    if len(pieces) != len(places):
        wanted = f"{len(places)} values ({', '.join(places)})" if spec.each else "one value"
        example = f", like {spec.example}" if spec.example else ""
        raise UnitError(f"this wants {wanted}{example}; {len(pieces)} came")
    last_unit = pieces[-1][1]
    values: dict[str, Quantity] = {}
    for place, (number, unit) in zip(places, pieces, strict=True):
        quantity = parse_quantity(f"{number} {unit or last_unit}", spec.quantity, spec.unit)
        _within(spec, quantity)
        values[place] = quantity
    return values


def show_values(values: Mapping[str, Quantity]) -> str:
    """Print values the way they are typed: `48 48 83 A`."""
    if not values:
        return ""
    units = {q.unit.symbol for q in values.values()}
    if len(units) == 1:
        quantities = list(values.values())
        return " ".join([*(str(q).rsplit(" ", 1)[0] for q in quantities[:-1]), str(quantities[-1])])
    return " ".join(str(q).replace(" ", "") for q in values.values())


def _within(spec: ReadingSpec, quantity: Quantity) -> None:
    least = parse_quantity(spec.least, spec.quantity, spec.unit) if spec.least else None
    most = parse_quantity(spec.most, spec.quantity, spec.unit) if spec.most else None
    if (least and quantity.si < least.si - 1e-9) or (most and quantity.si > most.si + 1e-9):
        ends = f"{least or 'anything'} to {most or 'anything'}"
        raise UnitError(f"{quantity} is out of range here ({ends}); read it again, or mind the unit")


def _split(text: str) -> list[tuple[str, str]]:
    """Cut `48 A, 48 A / 83` into pairs of number and unit word."""
    # A comma between digits is a decimal comma unless a blank follows it; a stroke before a letter belongs
    # to a unit, as in BTU/h and L/min.
    words = re.split(r"[\s;]+|/(?![A-Za-z])|,(?=\s)|,$", text.strip())
    pieces: list[tuple[str, str]] = []
    for word in (w for w in words if w):
        match = _NUMBER_THEN_REST.match(word)
        if match:
            pieces.append((match[1], match[2]))
        elif pieces:
            number, unit = pieces[-1]
            pieces[-1] = (number, f"{unit} {word}".strip())
        else:
            raise UnitError(f"{text.strip()[:40]!r} is no number; type digits, and the unit if you like")
    return pieces
