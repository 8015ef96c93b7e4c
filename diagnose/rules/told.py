"""Where a figure comes from, told in one line: plate, type, or a reading; and figures of good order in SI."""

from __future__ import annotations

from diagnose.model import PLATE_FIGURES, Reading
from diagnose.rules.bands import limit_end
from diagnose.rules.facts import Facts
from diagnose.units import Quantity, Unit, show_number

__all__ = ["limit_si", "plates_told", "reading_told", "shown"]


def plates_told(facts: Facts, *names: str) -> tuple[str, ...]:
    """`Rated final-rinse flow: 4.2 gpm (type's figure, assumed).`, one line for each figure that is known."""
    told = []
    for name in names:
        figure = facts.plate(name)
        if figure is not None:
            origin = "type's figure, assumed" if facts.machine.assumed(name) else "data plate"
            told.append(f"{PLATE_FIGURES[name].ask}: {figure} ({origin}).")
    return tuple(told)


def reading_told(facts: Facts, reading: Reading | None) -> tuple[str, ...]:
    """`Rinse pressure while flowing: 12 psi (measured).`; nothing where it was not read."""
    check = facts.check(reading.check) if reading is not None else None
    if reading is None or check is None:
        return ()
    values = ", ".join(f"{label} {value}" if label else str(value) for label, value in reading.values.items())
    return (f"{check.title}: {values} (measured).",)


def limit_si(facts: Facts, name: str, end: str, unit: Unit) -> float:
    """One end of a limit in SI, as it is rounded for those who read in `unit`. LookupError: no such limit."""
    return unit.to_si(limit_end(facts.book, facts.machine, name, end, unit).value)


def shown(si: float, quantity: str, unit: str, digits: int = 3) -> str:
    """An SI value in a unit, rounded for reading: `3.25 gpm`."""
    value = Quantity.of_si(si, quantity, unit)
    return f"{show_number(value.value, digits)} {value.unit.symbol}"
