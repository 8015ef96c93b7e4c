"""Which state a bank of three elements is in, from its line currents or its isolated resistances.

Each state is given its likelihood: how densely readings fall where they fell, were the bank so. What
fits no state falls to `unlike`, for which every set of readings is taken as equally likely.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from functools import cache
from itertools import combinations

from diagnose.physics.bank_legs import LegState, leg_currents, leg_resistances
from diagnose.physics.demand import positive
from diagnose.physics.element_bank import BankState, bank_currents, bank_resistances

__all__ = ["CURRENT_STATES", "RESISTANCE_STATES", "SIZES", "current_likelihoods", "resistance_likelihoods"]

_ONE_OPEN = [BankState(frozenset({k})) for k in range(3)]
_TWO_OPEN = [BankState(frozenset(pair)) for pair in combinations(range(3), 2)]
_LINE_LOST = [BankState(lost_line=k) for k in range(3)]
CURRENT_STATES: dict[str, list[BankState]] = {
    "healthy": [BankState()],
    "one element open": _ONE_OPEN,
    "two elements open": _TWO_OPEN,
    "line lost": _LINE_LOST,
}
RESISTANCE_STATES: dict[str, list[BankState]] = {
    "healthy": [BankState()],
    "one element open": _ONE_OPEN,
    "two elements open": _TWO_OPEN,
    "all open": [BankState(frozenset({0, 1, 2}))],
}
# How often a bank has so many elements side by side in a leg, against one; judgement.
SIZES = {2: 0.1, 3: 0.04, 4: 0.02}
_STEPS = 41  # points over which a common factor is averaged
_REACH = 3.0  # standard deviations covered on either side
_LEAST = 0.02  # share of full current below which a line counts as dead: stray reading of a clamp
_OPEN_FROM = 20.0  # times the healthy resistance from which a pair counts as open
_THIRD = (1 / 3, 1 / 3, 1 / 3)
_HIGH = [1.2 * (5.0 / 1.2) ** (k / 40.0) for k in range(41)]  # elements for higher volts than the plate says
_NARROW = 0.02
_DECADES = 5.0  # what "open" may read: up to 100,000 times the healthy resistance


def current_likelihoods(
    currents: Sequence[float], full: float, connection: str, each: float, common: float
) -> dict[str, float]:
    """Likelihood of the states of a bank from its three line currents.

    p(I_1, I_2, I_3 | state) = average over f of the product of N(I_k; f e_k, each f e_k), f ~ N(1, common)

    Parameters
    ----------
    currents : sequence of float
        Currents of the three lines, [A], 0 to 400
    full : float
        Current of a healthy line, [A], 1 to 400
    connection : str
        `delta`, `wye` or `wye with neutral`, [-]
    each : float
        Relative error (one standard deviation) of each line by itself: clamp, elements, [-],
        0.005 to 0.1
    common : float
        Relative error that all three lines share: supply volts, rating of the elements, [-], 0.005 to 0.2

    Returns
    -------
    dict
        Likelihood of each of `CURRENT_STATES`, of `low` (all alike, 15 to 90 % of full), of `third` (all
        alike at a third: a delta linked as a star), of `none`
        and of `unlike`; densities in units of 1 / full^3, [-]

    Notes
    -----
    Three equal legs; besides one element to a leg, two to four side by side are tried with the weights of
    `SIZES` (judgement), so that a leg short of one of its elements is known for what it is.

    Examples
    --------
    >>> likely = current_likelihoods([48.0, 48.0, 83.0], 83.3, "delta", 0.03, 0.05)
    >>> max(likely, key=likely.get)
    'one element open'

    References
    ----------
    Bayes' rule with normal errors; patterns from Ohm's law.
    """
    positive(full=full, each=each, common=common)
    seen = _three(currents)
    shares = [i / full for i in seen]
    factors = _normal_points(common)
    likely: dict[str, float] = {}
    for name, states in CURRENT_STATES.items():
        patterns = [bank_currents(_UNIT_POWER, 1.0, connection, state) for state in states]
        likely[name] = _mean([_alike_by(shares, p, each, factors) for p in patterns])
        larger = [(w, _mean([_alike_by(shares, p, each, factors) for p in _partial(n, connection)[name]]))
                  for n, w in SIZES.items() if name in _partial(n, connection)]  # fmt: skip
        likely[name] += sum(weight * density for weight, density in larger)
    flat = [(0.15 + 0.75 * (k + 0.5) / _STEPS, 1.0 / _STEPS) for k in range(_STEPS)]
    likely["low"] = _alike_by(shares, (1.0, 1.0, 1.0), each, flat)
    likely["third"] = _alike_by(shares, _THIRD, each, factors) if connection == "delta" else 0.0
    likely["none"] = math.prod(_density(s, 0.0, _LEAST / 2) for s in shares)
    likely["unlike"] = 1.0 / 1.5**3 if max(shares) <= 1.5 else 1e-3
    return likely


def resistance_likelihoods(
    resistances: Sequence[float], healthy: float, connection: str, each: float, common: float
) -> dict[str, float]:
    """Likelihood of the states of an isolated bank from its three terminal-to-terminal resistances.

    as for currents, on the logarithm of R / R_healthy; an open pair reads anything from 20 times upward

    Parameters
    ----------
    resistances : sequence of float
        Resistances of the pairs 0-1, 1-2, 2-0; infinite for an overflow, [ohm], 0 to 1e6
    healthy : float
        Resistance between two terminals of the healthy bank, [ohm], 0.5 to 500
    connection : str
        `delta`, `wye` or `wye with neutral`, [-]
    each : float
        Relative error (one standard deviation) of each pair by itself, [-], 0.005 to 0.1
    common : float
        Relative error that all pairs share: cold wire, rating of the elements, [-], 0.005 to 0.2

    Returns
    -------
    dict
        Likelihood of each of `RESISTANCE_STATES`, of `high` (all alike, 1.2 to 5 times the figure), of
        `triple` (all alike at three times: a delta linked as a star) and of `unlike`, [-]

    Notes
    -----
    Three equal legs with their links on, of one element or, by the weights of `SIZES`, two to four side by
    side. In wye two open elements of three can't be told from three.

    Examples
    --------
    >>> likely = resistance_likelihoods([12.9, 6.5, 6.5], 4.33, "delta", 0.03, 0.05)
    >>> max(likely, key=likely.get)
    'one element open'

    References
    ----------
    Bayes' rule with normal errors; patterns from Ohm's law.
    """
    positive(healthy=healthy, each=each, common=common)
    seen = [min(r / healthy, _OPEN_FROM * 10**_DECADES) for r in resistances]
    if len(seen) != 3 or not all(r >= 0 for r in seen):
        raise ValueError("three resistances are wanted, none below nought")
    unit = 2.0 / 3.0 if connection == "delta" else 2.0  # a healthy pair over one element
    likely: dict[str, float] = {}
    for name, states in RESISTANCE_STATES.items():
        patterns = [bank_resistances(1.0 / unit, connection, state.open_elements) for state in states]
        likely[name] = _mean([_log_alike(seen, p, each, common) for p in patterns])
        for n, weight in SIZES.items():
            larger = [leg_resistances(n / unit, connection, s) for s in _short_of(n).get(name, ())]
            likely[name] += weight * _mean([_log_alike(seen, p, each, common) for p in larger]) if larger else 0.0
    likely["triple"] = _log_alike(seen, (3.0, 3.0, 3.0), each, common) if connection == "delta" else 0.0
    likely["high"] = _mean([_log_alike(seen, (f, f, f), each, _NARROW) for f in _HIGH])
    span = math.log(10.0) * (_DECADES + 2.0) + math.log(_OPEN_FROM)
    likely["unlike"] = 0.1 / span**3  # taken as one in ten: a bank is in some state or other
    return likely


_UNIT_POWER = math.sqrt(3.0)  # at one volt this draws one ampere in each line


@cache
def _short_of(per_leg: int) -> dict[str, list[LegState]]:
    """Larger banks short of one element or two."""
    whole, short, bare = per_leg, per_leg - 1, per_leg - 2
    one = [_with(leg, short, whole) for leg in range(3)]
    two = [_with(leg, whole, short) for leg in range(3)]
    # Both out of one leg of two leave it dead: to a meter that is one element of a bank of three.
    two += [] if per_leg == 2 else [_with(leg, bare, whole) for leg in range(3)]
    return {"one element open": one, "two elements open": two}


def _with(leg: int, own: int, others: int) -> LegState:
    a, b, c = (own if k == leg else others for k in range(3))
    return LegState(((a, b, c),))


@cache
def _partial(per_leg: int, connection: str) -> dict[str, list[tuple[float, float, float]]]:
    """Line currents, as shares of full, of larger banks short of one element or two."""
    full = math.sqrt(3.0) if connection == "delta" else 1.0 / math.sqrt(3.0)
    found: dict[str, list[tuple[float, float, float]]] = {}
    for name, states in _short_of(per_leg).items():
        drawn = [leg_currents(float(per_leg), 1.0, connection, s) for s in states]
        found[name] = [(a / full, b / full, c / full) for a, b, c in drawn]
    return found


def _alike_by(
    shares: Sequence[float], pattern: Sequence[float], each: float, factors: Sequence[tuple[float, float]]
) -> float:
    """Density of the shares under a pattern scaled by a factor known only as weighted points."""
    total = 0.0
    for factor, weight in factors:
        density = weight
        for share, part in zip(shares, pattern, strict=True):
            middle = part * factor
            density *= _density(share, middle, math.hypot(each * middle, _LEAST / 2))
        total += density
    return total


def _log_alike(seen: Sequence[float], pattern: Sequence[float], each: float, common: float) -> float:
    total = 0.0
    for factor, weight in _normal_points(common):
        density = weight
        for ratio, expected in zip(seen, pattern, strict=True):
            if math.isinf(expected):
                density *= 1.0 / (math.log(10.0) * _DECADES) if ratio >= _OPEN_FROM else 0.0
            else:
                density *= _density(math.log(max(ratio, 1e-3)), math.log(expected * factor), each)
        total += density
    return total


def _normal_points(spread: float) -> list[tuple[float, float]]:
    """Factors around one with the weights of a normal distribution."""
    steps = [_REACH * (2.0 * k / (_STEPS - 1) - 1.0) for k in range(_STEPS)]
    heights = [math.exp(-0.5 * z * z) for z in steps]
    return [(max(1.0 + spread * z, 1e-3), h / sum(heights)) for z, h in zip(steps, heights, strict=True)]


def _density(value: float, middle: float, spread: float) -> float:
    return math.exp(-0.5 * ((value - middle) / spread) ** 2) / (spread * math.sqrt(2.0 * math.pi))


def _mean(values: Sequence[float]) -> float:
    return sum(values) / len(values)


def _three(values: Sequence[float]) -> list[float]:
    if len(values) != 3 or not all(math.isfinite(v) and v >= 0 for v in values):
        raise ValueError("three currents are wanted, none below nought")
    return list(values)
