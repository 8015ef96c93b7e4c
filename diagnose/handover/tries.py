"""What was set and what was read with it, put together from the events of a handover."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from diagnose.handover.sheet import Sheet
from diagnose.job.events import Adjusted
from diagnose.model import Reading
from diagnose.units import UnitError, parse_quantity

__all__ = ["Tried", "newest_set", "tried", "value_of"]


@dataclass(frozen=True)
class Tried:
    """A setting, and the newest reading of each check taken while it stood so."""

    event: Adjusted
    readings: dict[str, Reading]


def tried(sheet: Sheet, adjustment: str, checks: tuple[str, ...]) -> tuple[Tried, ...]:
    """The settings of one adjustment in order, each with its readings; without readings of all checks it is left out.

    How it stood when it was found counts from the first reading on.
    """
    return tuple(t for t in _all(sheet, adjustment, checks) if all(check in t.readings for check in checks))


def _all(sheet: Sheet, adjustment: str, checks: tuple[str, ...]) -> Iterator[Tried]:
    events = [(number, e) for number, e in sheet.state.adjusted if e.adjustment == adjustment]
    for nth, (number, event) in enumerate(events):
        begins = 0 if nth == 0 and event.found else number
        changes = (later for later, e in events[nth + 1 :] if not e.found)
        ends = next(changes, None)
        readings = {
            r.check: r
            for r in sheet.state.readings
            if r.check in checks and begins <= int(r.id) and (ends is None or int(r.id) < ends)
        }
        if event.found and nth > 0:
            continue  # said again how it stands: the setting before goes on
        yield Tried(event, readings)


def newest_set(sheet: Sheet, adjustment: str) -> Adjusted | None:
    """What was said or set last of an adjustment."""
    return next((e for _, e in reversed(sheet.state.adjusted) if e.adjustment == adjustment), None)


def value_of(event: Adjusted, place: str, quantity: str, unit: str) -> float | None:
    """A setting in SI; None where it was not told, or can't be read."""
    text = event.settings.get(place)
    try:
        return parse_quantity(text, quantity, unit).si if text is not None else None
    except UnitError:
        return None
