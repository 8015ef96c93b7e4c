"""A bank of three equal heating elements, in delta or wye: what it draws, gives and measures.

Lines and elements are numbered 0, 1, 2. In a delta, element k joins line k and line k + 1 (the last one
joins line 2 and line 0); in a wye, element k joins line k and the star point.
"""

from __future__ import annotations

import cmath
import math
from collections.abc import Sequence
from dataclasses import dataclass, field

from diagnose.physics.demand import positive

__all__ = [
    "CONNECTIONS",
    "BankState",
    "bank_currents",
    "bank_power",
    "bank_resistances",
    "element_resistance",
]

CONNECTIONS = ("delta", "wye", "wye with neutral")
_SQRT3 = math.sqrt(3.0)


@dataclass(frozen=True)
class BankState:
    """Which elements of a bank are open, and which supply line is lost (None: none is)."""

    open_elements: frozenset[int] = field(default_factory=frozenset)
    lost_line: int | None = None

    def __post_init__(self) -> None:
        if not self.open_elements <= {0, 1, 2} or self.lost_line not in (None, 0, 1, 2):
            raise ValueError("elements and lines are numbered 0, 1, 2")


def element_resistance(power: float, voltage: float, connection: str) -> float:
    """Resistance of one of the three equal elements of a bank.

    R = 3 V^2 / P in delta, R = V^2 / P in wye

    Parameters
    ----------
    power : float
        Power of the whole bank, [W], 100 to 2e5
    voltage : float
        Line-to-line voltage, [V], 100 to 600
    connection : str
        `delta`, `wye` or `wye with neutral`, [-]

    Returns
    -------
    float
        Resistance of one element, [ohm]

    Notes
    -----
    Cold elements read up to about 5 % lower than hot ones (common practice).

    Examples
    --------
    >>> round(element_resistance(15e3, 208.0, "delta"), 3)
    8.653

    References
    ----------
    Ohm's and Joule's laws.
    """
    positive(power=power, voltage=voltage)
    _known(connection)
    return (3.0 if connection == "delta" else 1.0) * voltage**2 / power


def bank_currents(
    power: float, voltage: float, connection: str, state: BankState = BankState()
) -> tuple[float, float, float]:
    """Line currents of a bank with any elements open and at most one line lost.

    I_line = |sum of the currents of the elements on that line|, from the node voltages

    Parameters
    ----------
    power : float
        Power of the healthy bank, [W], 100 to 2e5
    voltage : float
        Line-to-line voltage, balanced, [V], 100 to 600
    connection : str
        `delta`, `wye` or `wye with neutral`, [-]
    state : BankState
        Elements open and line lost, [-]

    Returns
    -------
    tuple of float
        Currents of lines 0, 1, 2, [A]

    Notes
    -----
    Balanced supply; a lost line floats where the elements on it put it.

    Examples
    --------
    >>> [round(i, 1) for i in bank_currents(30e3, 208.0, "delta", BankState(frozenset({0})))]
    [48.1, 48.1, 83.3]
    >>> [round(i, 1) for i in bank_currents(30e3, 208.0, "delta", BankState(lost_line=2))]
    [72.1, 72.1, 0.0]

    References
    ----------
    Ohm's and Kirchhoff's laws.
    """
    flows = _element_flows(power, voltage, connection, state)
    if connection == "delta":
        lines = [flows[k] - flows[k - 1] for k in range(3)]
    else:
        lines = list(flows)
    a, b, c = (0.0 if state.lost_line == k else abs(i) for k, i in enumerate(lines))
    return a, b, c


def bank_power(power: float, voltage: float, connection: str, state: BankState = BankState()) -> float:
    """Heat given by a bank with any elements open and at most one line lost.

    P = R (|I_0|^2 + |I_1|^2 + |I_2|^2) over the currents of the elements

    Parameters
    ----------
    power : float
        Power of the healthy bank, [W], 100 to 2e5
    voltage : float
        Line-to-line voltage, balanced, [V], 100 to 600
    connection : str
        `delta`, `wye` or `wye with neutral`, [-]
    state : BankState
        Elements open and line lost, [-]

    Returns
    -------
    float
        Power given, [W]

    Notes
    -----
    Balanced supply and equal elements. One delta element open leaves two thirds, not three quarters.

    Examples
    --------
    >>> round(bank_power(30e3, 208.0, "delta", BankState(frozenset({1}))))
    20000
    >>> round(bank_power(30e3, 208.0, "wye", BankState(lost_line=0)))
    15000

    References
    ----------
    Ohm's and Kirchhoff's laws.
    """
    resistance = element_resistance(power, voltage, connection)
    return resistance * sum(abs(i) ** 2 for i in _element_flows(power, voltage, connection, state))


def bank_resistances(
    resistance: float, connection: str, open_elements: frozenset[int] = frozenset()
) -> tuple[float, float, float]:
    """Resistances between the terminals of an isolated bank with its links on: 0-1, 1-2, 2-0.

    delta: element k in parallel with the other two in series; wye: two elements in series

    Parameters
    ----------
    resistance : float
        Resistance of one element, [ohm], 0.5 to 500
    connection : str
        `delta`, `wye` or `wye with neutral`, [-]
    open_elements : frozenset of int
        Elements that are open, [-]

    Returns
    -------
    tuple of float
        Resistances of the pairs 0-1, 1-2, 2-0; infinite where nothing joins them, [ohm]

    Notes
    -----
    The supply must be off and disconnected: anything else on the terminals is measured with them.

    Examples
    --------
    >>> [round(r, 2) for r in bank_resistances(8.653, "delta", frozenset({0}))]
    [17.31, 8.65, 8.65]
    >>> bank_resistances(6.0, "wye", frozenset({0}))
    (inf, 12.0, inf)

    References
    ----------
    Ohm's law, series and parallel.
    """
    positive(resistance=resistance)
    _known(connection)
    each = [math.inf if k in open_elements else resistance for k in range(3)]
    if connection == "delta":
        a, b, c = (_parallel(each[k], each[(k + 1) % 3] + each[(k + 2) % 3]) for k in range(3))
    else:
        a, b, c = (each[k] + each[(k + 1) % 3] for k in range(3))
    return a, b, c


def _element_flows(power: float, voltage: float, connection: str, state: BankState) -> list[complex]:
    resistance = element_resistance(power, voltage, connection)
    closed = [0.0 if k in state.open_elements else 1.0 / resistance for k in range(3)]
    nodes = [voltage / _SQRT3 * cmath.exp(-2j * math.pi * k / 3) for k in range(3)]
    if connection == "delta":
        if state.lost_line is not None:
            nodes[state.lost_line] = _floating(nodes, closed, state.lost_line)
        return [closed[k] * (nodes[k] - nodes[(k + 1) % 3]) for k in range(3)]
    if state.lost_line is not None:
        closed[state.lost_line] = 0.0
    star = 0j
    if connection == "wye" and sum(closed) > 0.0:
        star = sum(g * v for g, v in zip(closed, nodes, strict=True)) / sum(closed)
    return [closed[k] * (nodes[k] - star) for k in range(3)]


def _floating(nodes: Sequence[complex], closed: Sequence[float], line: int) -> complex:
    """Where a lost line of a delta settles; it matters to nothing if no element is on it."""
    onward, back = closed[line], closed[line - 1]
    if onward + back == 0.0:
        return nodes[line]
    return (onward * nodes[(line + 1) % 3] + back * nodes[line - 1]) / (onward + back)


def _parallel(a: float, b: float) -> float:
    return a if math.isinf(b) else b if math.isinf(a) else a * b / (a + b)


def _known(connection: str) -> None:
    if connection not in CONNECTIONS:
        raise ValueError(f"{connection!r} is no connection of three elements: use {', '.join(CONNECTIONS)}")
