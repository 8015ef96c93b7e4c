"""Where the figures of a formula come from: what was typed, the plate, the usual figure, or a question."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass

from diagnose.calculator.parse import hint, read_value, unit_typed
from diagnose.formulas import Answer, Argument, Formula, Given, system_of
from diagnose.model import Machine
from diagnose.units import UnitError

__all__ = ["FigureError", "Wanted", "gather_figures", "system_wanted"]

Ask = Callable[[str], str | None]  # a prompt in, what was typed out; None when there is nobody to ask
Tell = Callable[[str], None]


class FigureError(ValueError):
    """A figure is missing or can't be read; the message says which, and the remedy."""


@dataclass(frozen=True)
class Wanted:
    """What is to be worked out: the figures, and which argument is looked for ("" = the formula's answer)."""

    formula: Formula
    system: str
    given: Mapping[str, Given]
    find: str = ""
    answer: float | None = None  # SI value of the first answer, where an argument is looked for


def gather_figures(
    formula: Formula,
    named: Mapping[str, str],
    bare: Sequence[str] = (),
    machine: Machine | None = None,
    system: str = "",
    find: str = "",
    ask: Ask = lambda prompt: None,
    tell: Tell = lambda sentence: None,
) -> Wanted:
    """Collect what the formula takes. Raises FigureError."""
    typed = {**_placed(formula, bare, named, system), **named}
    system = system_wanted(formula, typed, machine, system)
    answer = _answer(formula, typed, system)
    given: dict[str, Given] = {}
    for argument in formula.takes:
        if argument.name in typed:
            given[argument.name] = Given(_read(argument, typed[argument.name], system), "given")
        elif argument.name != find and (known := _known(argument, machine, system)):
            given[argument.name] = known
    missing = [a for a in formula.takes if a.name not in given]
    find = _looked_for(formula, find, answer, missing, typed)
    for argument in missing:
        if argument.name != find:
            given[argument.name] = _asked(argument, system, ask, tell)
    return Wanted(formula, system, {a.name: given[a.name] for a in formula.takes if a.name in given}, find, answer)


def system_wanted(formula: Formula, typed: Mapping[str, str], machine: Machine | None, system: str) -> str:
    """The units to answer in: those asked for, else those of the first figure typed, else of the plate, else US."""
    if system:
        return system
    entries: tuple[Argument | Answer, ...] = (*formula.takes, *formula.gives)
    for entry in entries:
        unit = unit_typed(entry, typed[entry.name]) if entry.name in typed else None
        if unit is not None and unit.system != "both":
            return system_of(unit)
    for argument in formula.takes:
        plate = machine.plate(argument.plate) if machine and argument.plate else None
        if plate is not None and plate.unit.system != "both":
            return system_of(plate.unit)
    return "us"


def _placed(formula: Formula, bare: Sequence[str], named: Mapping[str, str], system: str) -> dict[str, str]:
    """Values typed without a name, each to the first argument it fits; FigureError for one that fits none."""
    free = [a for a in formula.takes if a.name not in named]
    if len(free) == 1 and free[0].many != 1 and bare:
        return {free[0].name: " ".join(bare)}
    placed: dict[str, str] = {}
    # Values that name their unit choose first, so that plain numbers fill what is left in order.
    for text in sorted(bare, key=lambda t: not any(_names_unit(a, t) for a in free)):
        fitting = [a for a in free if a.name not in placed and _fits(a, text, system)]
        best = next((a for a in fitting if _names_unit(a, text)), fitting[0] if fitting else None)
        if best is None:
            wants = "; ".join(f"{a.ask.lower()} in {hint(a, system or 'us')}" for a in free if a.name not in placed)
            raise FigureError(f"{text!r} fits nothing here; still open: {wants or 'nothing'}")
        placed[best.name] = text
    return placed


def _names_unit(argument: Argument, text: str) -> bool:
    try:
        return unit_typed(argument, text) is not None
    except UnitError:
        return False


def _fits(argument: Argument, text: str, system: str) -> bool:
    try:
        read_value(argument, text, system or "us")
    except UnitError:
        return False
    return True


def _read(entry: Argument | Answer, text: str, system: str) -> float | tuple[float, ...] | str:
    ask = entry.ask if isinstance(entry, Argument) else entry.title
    try:
        return read_value(entry, text, system)
    except UnitError as error:
        raise FigureError(f"{ask} (--{entry.name.replace('_', '-')}): {error}") from None


def _answer(formula: Formula, typed: Mapping[str, str], system: str) -> float | None:
    first = formula.gives[0]
    if first.name not in typed or any(a.name == first.name for a in formula.takes):
        return None
    value = _read(first, typed[first.name], system)
    return value if isinstance(value, float) else None


def _known(argument: Argument, machine: Machine | None, system: str) -> Given | None:
    """From the plate, or the figure that is usual."""
    plate = machine.plate(argument.plate) if machine is not None and argument.plate else None
    if plate is not None and machine is not None:
        assumed = machine.assumed(argument.plate)
        return Given(plate.si, "type's figure, assumed" if assumed else f"plate of {machine.name}", assumed)
    if argument.usual:
        return Given(read_value(argument, argument.usual, system), f"usual: {argument.stands}", True)
    return None


def _looked_for(
    formula: Formula, find: str, answer: float | None, missing: Sequence[Argument], typed: Mapping[str, str]
) -> str:
    """Which argument the formula is to be solved for; "" to work it forward."""
    first = formula.gives[0]
    if not find and answer is None:
        return ""
    if answer is None:
        raise FigureError(f"to find {find} give the answer too: --{first.name.replace('_', '-')}")
    if find:
        if find not in {a.name for a in formula.takes}:
            raise FigureError(f"{find!r} is nothing this takes; say one of {', '.join(a.name for a in formula.takes)}")
        if find in typed:
            raise FigureError(f"{find} is given and looked for; leave out one of the two")
        return find
    if not missing:
        names = ", ".join(a.name.replace("_", "-") for a in formula.takes)
        raise FigureError(f"everything is known already; say what to look for: --find with one of {names}")
    return missing[0].name


def _asked(argument: Argument, system: str, ask: Ask, tell: Tell) -> Given:
    """Ask until the figure can be read; FigureError when there is nobody to ask."""
    while True:
        text = ask(f"{argument.ask}, {hint(argument, system)}: ")
        if text is None:
            option = argument.name.replace("_", "-")
            raise FigureError(f"{argument.ask} is missing; give it: --{option} in {hint(argument, system)}")
        if not text.strip():
            tell("A figure is wanted here; Ctrl-C stops.")
            continue
        try:
            return Given(read_value(argument, text, system), "given")
        except UnitError as error:
            tell(f"Not taken: {error}.")
