"""A worked formula on the screen: figures with their origin, the working, the limit, the source."""

from __future__ import annotations

from diagnose.formulas import Answer, Argument, Worked
from diagnose.formulas.formula import Formula
from diagnose.units import Quantity, show_number
from diagnose.view.layout import Line, wrap

__all__ = ["answer_text", "figure_text", "worked_block"]


def worked_block(worked: Worked, width: int) -> list[Line]:
    """Title, figures, working line by line, and the answer."""
    formula = worked.formula
    lines = wrap(formula.title, width, role="heading")
    for argument in formula.takes:
        if argument.name in worked.given:
            lines += wrap(_figure(argument, worked), width, "  ", "    ")
    lines += wrap(formula.manual.formula, width, "  ", "    ", "dim")
    for line in worked.lines:
        lines += wrap(line, width, "  ", "    ")
    for entry in _answers(formula, worked):
        lines += wrap(answer_text(entry, worked), width, role="good")
    return lines


def _answers(formula: Formula, worked: Worked) -> list[Argument | Answer]:
    return [formula.argument(worked.solved)] if worked.solved else list(formula.gives)


def _figure(argument: Argument, worked: Worked) -> str:
    given = worked.given[argument.name]
    origin = f" ({given.origin})" if given.origin else ""
    return f"{argument.ask}: {figure_text(argument, given.value, worked.system)}{origin}"


def answer_text(entry: Argument | Answer, worked: Worked) -> str:
    """`Rise: 48.7 F°`."""
    if isinstance(entry, Argument):
        return f"{entry.ask}: {figure_text(entry, worked.given[entry.name].value, worked.system)}"
    return f"{entry.title}: {figure_text(entry, worked.results[entry.name], worked.system)}"


def figure_text(entry: Argument | Answer, value: float | str | tuple[float, ...], system: str) -> str:
    """A value, or several, with the unit of the system."""
    if isinstance(value, str):
        return value
    if isinstance(value, tuple):
        each = [figure_text(entry, v, system) for v in value]
        unit = entry.unit(system)
        return ", ".join(e.removesuffix(f" {unit}") for e in each[:-1]) + (", " if each[1:] else "") + each[-1]
    if entry.quantity in ("number", "words"):
        return show_number(float(value))
    return str(Quantity.of_si(float(value), entry.quantity, entry.unit(system)))
