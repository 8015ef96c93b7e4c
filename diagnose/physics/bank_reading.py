"""Three currents or three resistances of a bank of any size, read back to the state it is in.

What comes back is a class: the state nearest to the readings, the states physics gives the very same
readings, and those the instrument is too coarse to shut out. All are named.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from functools import cache

from diagnose.physics.bank_legs import LegState, leg_currents, leg_resistances, leg_states
from diagnose.physics.demand import positive

__all__ = ["BankReading", "name_of_state", "read_currents", "read_resistances"]

_REACH = 16.0  # squared deviations of three readings together: passed by chance once in 900 times
_FLOOR = 0.005  # of a full line: below it a clamp shows nothing that counts
_SAME = 1e-6  # relative: patterns nearer than this are one
_OPEN = 1e4  # elements: a pair that reads this many times one element is open
_SIDES = ("T1-T2", "T2-T3", "T3-T1")

Pattern = tuple[float, float, float]


@dataclass(frozen=True)
class BankReading:
    """States a set of readings leaves possible.

    `same`: the nearest state with all that physics gives the same readings. `near`: others within the
    instrument's error. `fits` is false where no state lies within it: then `same` is only the nearest.
    `distance` is the sum of squared deviations of the nearest, in standard deviations of a reading.
    """

    same: tuple[LegState, ...]
    near: tuple[LegState, ...]
    fits: bool
    distance: float

    @property
    def possible(self) -> tuple[LegState, ...]:
        """Every state left, the nearest first."""
        return (*self.same, *self.near)


def name_of_state(state: LegState, connection: str, per_leg: int) -> str:
    """A state in the words of the terminals.

    one part for each leg that is short of elements, one for a line that is lost

    Parameters
    ----------
    state : LegState
        The state, [-]
    connection : str
        `delta`, `wye` or `wye with neutral`, [-]
    per_leg : int
        Elements side by side in a leg of the whole bank, [-], 1 to 4

    Returns
    -------
    str
        What is open and what is lost, [-]

    Notes
    -----
    Legs of a delta are called by the terminals they join, legs of a wye by theirs.

    Examples
    --------
    >>> name_of_state(LegState(((1, 2, 2),), 2), "delta", 2)
    'T1-T2: 1 of 2 open; line L3 lost'
    >>> name_of_state(LegState(((1, 1, 1),)), "wye", 1)
    'whole'

    References
    ----------
    Naming of this project.
    """
    parts = []
    for nth, group in enumerate(state.groups, 1):
        where = f"group {nth}, " if len(state.groups) > 1 else ""
        for k, alive in enumerate(group):
            leg = _SIDES[k] if connection == "delta" else f"leg T{k + 1}"
            if alive < per_leg:
                parts.append(f"{where}{leg}: " + ("open" if per_leg == 1 else f"{per_leg - alive} of {per_leg} open"))
    if state.lost_line is not None:
        parts.append(f"line L{state.lost_line + 1} lost")
    return "; ".join(parts) or "whole"


def read_currents(
    currents: Sequence[float],
    element: float,
    voltage: float,
    connection: str,
    per_leg: int = 1,
    groups: int = 1,
    error: float = 0.03,
) -> BankReading:
    """The states of a bank that three line currents leave possible.

    sum over the lines of ((I - I_state) / (error I_state))^2 at most 16

    Parameters
    ----------
    currents : sequence of float
        Currents of the three lines, [A], 0 to 400
    element : float
        Resistance of one element, [ohm], 0.5 to 500
    voltage : float
        Line-to-line voltage, [V], 100 to 600
    connection : str
        `delta`, `wye` or `wye with neutral`, [-]
    per_leg : int
        Elements side by side in a leg, [-], 1 to 4
    groups : int
        Sub-banks with a star point of their own, [-], 1 to 4
    error : float
        Standard deviation of one reading, relative, [-], 0.001 to 0.1

    Returns
    -------
    BankReading
        The nearest state with its like, and the others within the error, [-]

    Notes
    -----
    A line lost leaves one figure only: what is open besides can then often not be told, and is named so.

    Examples
    --------
    >>> found = read_currents([47.5, 48.9, 82.0], 4.3264, 208.0, "delta")
    >>> [name_of_state(s, "delta", 1) for s in found.possible]
    ['T1-T2: open']

    References
    ----------
    Patterns from Ohm's and Kirchhoff's laws; chi-squared with three degrees of freedom.
    """
    positive(element=element, voltage=voltage, error=error)
    seen = _three(currents, math.isfinite)
    unit = voltage / element  # what one element across two lines draws
    floor = _FLOOR * per_leg * groups
    table = _current_table(connection, per_leg, groups)
    return _nearest([i / unit for i in seen], table, lambda seen, middle: (seen - middle) / _wide(middle, error, floor))


def read_resistances(
    resistances: Sequence[float],
    element: float,
    connection: str,
    per_leg: int = 1,
    groups: int = 1,
    error: float = 0.03,
) -> BankReading:
    """The states of an isolated bank that three resistances between its terminals leave possible.

    sum over the pairs of ((R - R_state) / (error R_state))^2 at most 16; open pairs must be open

    Parameters
    ----------
    resistances : sequence of float
        Resistances of the pairs T1-T2, T2-T3, T3-T1; infinite for an overflow, [ohm], 0 to 1e6
    element : float
        Resistance of one element, [ohm], 0.5 to 500
    connection : str
        `delta`, `wye` or `wye with neutral`, [-]
    per_leg : int
        Elements side by side in a leg, [-], 1 to 4
    groups : int
        Sub-banks with a star point of their own, [-], 1 to 4
    error : float
        Standard deviation of one reading, relative, [-], 0.001 to 0.1

    Returns
    -------
    BankReading
        The nearest state with its like, and the others within the error, [-]

    Notes
    -----
    A pair above ten thousand times one element counts as open. A lost line can't be seen isolated.

    Examples
    --------
    >>> found = read_resistances([12.9, 6.5, 6.6], 6.49, "delta")
    >>> [name_of_state(s, "delta", 1) for s in found.possible]
    ['T1-T2: open']

    References
    ----------
    Patterns from Ohm's law; chi-squared with three degrees of freedom.
    """
    positive(element=element, error=error)
    seen = [min(r / element, _OPEN) for r in _three(resistances, lambda r: not math.isnan(r))]
    table = _resistance_table(connection, per_leg, groups)

    def off(ratio: float, middle: float) -> float:
        if middle >= _OPEN or ratio >= _OPEN:
            return 0.0 if middle >= _OPEN and ratio >= _OPEN else 1e3
        return (ratio - middle) / (error * middle)

    return _nearest(seen, table, off)


def _nearest(
    seen: Sequence[float],
    table: Sequence[tuple[Pattern, tuple[LegState, ...]]],
    off: Callable[[float, float], float],
) -> BankReading:
    far = [(sum(off(s, m) ** 2 for s, m in zip(seen, pattern, strict=True)), states) for pattern, states in table]
    far.sort(key=lambda f: f[0])
    best = far[0]
    near = tuple(s for distance, states in far[1:] if distance <= _REACH for s in states)
    return BankReading(best[1], near, best[0] <= _REACH, best[0])


def _wide(middle: float, error: float, floor: float) -> float:
    return math.hypot(error * middle, floor)


@cache
def _current_table(connection: str, per_leg: int, groups: int) -> tuple[tuple[Pattern, tuple[LegState, ...]], ...]:
    """States by what they draw at one volt and one ohm; those physics can't tell apart together."""
    states = leg_states(connection, per_leg, groups)
    return _classes([(leg_currents(1.0, 1.0, connection, s), s) for s in states])


@cache
def _resistance_table(connection: str, per_leg: int, groups: int) -> tuple[tuple[Pattern, tuple[LegState, ...]], ...]:
    states = leg_states(connection, per_leg, groups, lost_lines=False)
    found = [(leg_resistances(1.0, connection, s), s) for s in states]
    return _classes([((min(a, _OPEN), min(b, _OPEN), min(c, _OPEN)), s) for (a, b, c), s in found])


def _classes(found: Sequence[tuple[Pattern, LegState]]) -> tuple[tuple[Pattern, tuple[LegState, ...]], ...]:
    classes: dict[tuple[int, int, int], tuple[Pattern, list[LegState]]] = {}
    for pattern, state in found:
        a, b, c = (round(p / _SAME) for p in pattern)
        classes.setdefault((a, b, c), (pattern, []))[1].append(state)
    return tuple((pattern, tuple(states)) for pattern, states in classes.values())


def _three(values: Sequence[float], sound: Callable[[float], bool]) -> list[float]:
    if len(values) != 3 or not all(sound(v) and v >= 0 for v in values):
        raise ValueError("three readings are wanted, none below nought")
    return list(values)
