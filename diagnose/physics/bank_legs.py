"""A heater bank of any size: three legs of several elements each, in one delta or in one or more stars.

Lines and legs are numbered 0, 1, 2 as in `element_bank`. Elements are equal; a leg holds several of them
side by side. Sub-banks in delta act as one delta with more elements to a leg; sub-banks in wye keep their
own star points, so a bank is written as groups, each with the elements alive in its three legs.
"""

from __future__ import annotations

import cmath
import math
from collections.abc import Sequence
from dataclasses import dataclass
from itertools import combinations_with_replacement, product

from diagnose.physics.demand import positive
from diagnose.physics.element_bank import CONNECTIONS

__all__ = ["LegState", "leg_currents", "leg_power", "leg_resistances", "leg_states"]

_SQRT3 = math.sqrt(3.0)


@dataclass(frozen=True)
class LegState:
    """Elements alive in the legs of each group, and the supply line that is lost (None: none is)."""

    groups: tuple[tuple[int, int, int], ...]
    lost_line: int | None = None

    def __post_init__(self) -> None:
        if not self.groups or any(n < 0 for g in self.groups for n in g) or self.lost_line not in (None, 0, 1, 2):
            raise ValueError("a bank has groups of three legs, no count below nought, and lines 0, 1, 2")


def leg_states(connection: str, per_leg: int, groups: int = 1, lost_lines: bool = True) -> list[LegState]:
    """Every state a bank can be in: any elements open, with or without a line lost.

    alive_k = 0 to per_leg for each leg of each group; groups are alike, so their order does not count

    Parameters
    ----------
    connection : str
        `delta`, `wye` or `wye with neutral`, [-]
    per_leg : int
        Elements side by side in a leg, [-], 1 to 4
    groups : int
        Sub-banks with a star point of their own, [-], 1 to 4
    lost_lines : bool
        Whether states with a lost line are wanted too, [-]

    Returns
    -------
    list
        The states, the healthy one first, [-]

    Notes
    -----
    Which element of a leg is open does not count: those side by side are alike to any meter outside.

    Examples
    --------
    >>> len(leg_states("delta", 2)), len(leg_states("wye", 1, groups=2, lost_lines=False))
    (108, 36)

    References
    ----------
    Counting of combinations.
    """
    _known(connection)
    positive(per_leg=per_leg, groups=groups)
    counts = range(per_leg, -1, -1)
    each = [(a, b, c) for a, b, c in product(counts, counts, counts)]
    chosen = list(combinations_with_replacement(each, groups))
    lines: list[int | None] = [None, 0, 1, 2] if lost_lines else [None]
    return [LegState(g, line) for line in lines for g in chosen]


def leg_currents(element: float, voltage: float, connection: str, state: LegState) -> tuple[float, float, float]:
    """Line currents of a bank of any size in any state.

    I_line = |sum over the groups of the currents of the legs on that line|, from the node voltages

    Parameters
    ----------
    element : float
        Resistance of one element, [ohm], 0.5 to 500
    voltage : float
        Line-to-line voltage, balanced, [V], 100 to 600
    connection : str
        `delta`, `wye` or `wye with neutral`, [-]
    state : LegState
        Elements alive and line lost, [-]

    Returns
    -------
    tuple of float
        Currents of lines 0, 1, 2, [A]

    Notes
    -----
    Balanced supply; a lost line floats where the legs on it put it, alike for all groups.

    Examples
    --------
    >>> [round(i, 1) for i in leg_currents(8.653, 208.0, "delta", LegState(((1, 2, 2),)))]
    [63.6, 63.6, 83.3]

    References
    ----------
    Ohm's and Kirchhoff's laws.
    """
    lines = [0j, 0j, 0j]
    for currents in _flows(element, voltage, connection, state):
        for k in range(3):
            lines[k] += currents[k] - currents[k - 1] if connection == "delta" else currents[k]
    a, b, c = (0.0 if state.lost_line == k else abs(i) for k, i in enumerate(lines))
    return a, b, c


def leg_power(element: float, voltage: float, connection: str, state: LegState) -> float:
    """Heat given by a bank of any size in any state.

    P = sum over the legs of |I_leg|^2 R / elements alive

    Parameters
    ----------
    element : float
        Resistance of one element, [ohm], 0.5 to 500
    voltage : float
        Line-to-line voltage, balanced, [V], 100 to 600
    connection : str
        `delta`, `wye` or `wye with neutral`, [-]
    state : LegState
        Elements alive and line lost, [-]

    Returns
    -------
    float
        Power given, [W]

    Notes
    -----
    Balanced supply and equal elements.

    Examples
    --------
    >>> round(leg_power(8.6528, 208.0, "delta", LegState(((2, 2, 1),))))
    25000

    References
    ----------
    Ohm's and Kirchhoff's laws.
    """
    total = 0.0
    for group, currents in zip(state.groups, _flows(element, voltage, connection, state), strict=True):
        total += sum(abs(i) ** 2 * element / n for n, i in zip(group, currents, strict=True) if n)
    return total


def leg_resistances(element: float, connection: str, state: LegState) -> tuple[float, float, float]:
    """Resistances between the terminals of an isolated bank of any size: 0-1, 1-2, 2-0.

    1 / R_pair = sum over the groups of 1 / R_group; delta: leg k beside the two others in series;
    wye: two legs in series

    Parameters
    ----------
    element : float
        Resistance of one element, [ohm], 0.5 to 500
    connection : str
        `delta`, `wye` or `wye with neutral`, [-]
    state : LegState
        Elements alive; a lost line makes no difference to an isolated bank, [-]

    Returns
    -------
    tuple of float
        Resistances of the pairs 0-1, 1-2, 2-0; infinite where nothing joins them, [ohm]

    Notes
    -----
    Star points of groups are not joined, so a third terminal that floats ties their legs together.

    Examples
    --------
    >>> [round(r, 2) for r in leg_resistances(8.653, "delta", LegState(((1, 2, 2),)))]
    [4.33, 3.24, 3.24]

    References
    ----------
    Ohm's law; a star turned into the delta that is equal to it.
    """
    positive(element=element)
    _known(connection)
    a, b, c = _delta_of(connection, state)
    return _ohms(element, a, b, c), _ohms(element, b, c, a), _ohms(element, c, a, b)


def _ohms(element: float, own: float, second: float, third: float) -> float:
    total = own + _series(second, third)
    return element / total if total > 0.0 else math.inf


def _delta_of(connection: str, state: LegState) -> tuple[float, float, float]:
    """Conductances 0-1, 1-2, 2-0, in elements, of a delta that equals all groups together."""
    total = [0.0, 0.0, 0.0]
    for group in state.groups:
        whole = sum(group)
        for k in range(3):
            if connection == "delta":
                total[k] += group[k]
            elif whole:
                total[k] += group[k] * group[(k + 1) % 3] / whole
    return total[0], total[1], total[2]


def _series(a: float, b: float) -> float:
    return a * b / (a + b) if a + b > 0.0 else 0.0


def _flows(element: float, voltage: float, connection: str, state: LegState) -> list[list[complex]]:
    """Current of each leg, group by group."""
    positive(element=element, voltage=voltage)
    _known(connection)
    nodes = [voltage / _SQRT3 * cmath.exp(-2j * math.pi * k / 3) for k in range(3)]
    if state.lost_line is not None:
        nodes[state.lost_line] = _floating(nodes, connection, state)
    return [_group_flows(nodes, connection, group, element) for group in state.groups]


def _floating(nodes: Sequence[complex], connection: str, state: LegState) -> complex:
    """Where the terminal of a lost line settles: no current leaves it."""
    line = state.lost_line or 0
    if connection == "wye with neutral":
        return 0j  # its legs hang on the neutral alone
    mesh = _delta_of(connection, state)
    onward, back = mesh[line], mesh[line - 1]
    if onward + back == 0.0:
        return nodes[line]
    return (onward * nodes[(line + 1) % 3] + back * nodes[line - 1]) / (onward + back)


def _group_flows(
    nodes: Sequence[complex], connection: str, group: tuple[int, int, int], element: float
) -> list[complex]:
    if connection == "delta":
        return [group[k] * (nodes[k] - nodes[(k + 1) % 3]) / element for k in range(3)]
    star = 0j
    if connection == "wye" and sum(group) > 0:
        star = sum((n * v for n, v in zip(group, nodes, strict=True)), 0j) / sum(group)
    return [group[k] * (nodes[k] - star) / element for k in range(3)]


def _known(connection: str) -> None:
    if connection not in CONNECTIONS:
        raise ValueError(f"{connection!r} is no connection of three legs: use {', '.join(CONNECTIONS)}")
