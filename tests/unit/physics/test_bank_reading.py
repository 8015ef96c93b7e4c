"""A bank of any size is read back from three currents or three resistances with an instrument 3 % off."""

from __future__ import annotations

import math
import random
from collections.abc import Callable

import pytest

from diagnose.physics.bank_legs import LegState, leg_currents, leg_power, leg_resistances, leg_states
from diagnose.physics.bank_reading import BankReading, name_of_state, read_currents, read_resistances
from diagnose.physics.element_bank import BankState, bank_currents, bank_power, bank_resistances

ERROR = 0.03  # one standard deviation: harsher than an instrument that is good for 3 % at most
APART = 5.5  # standard deviations between two patterns from which chance hardly ever mixes them up
CONFUSED = 9.0  # no two patterns further apart than this may be called alike
TRIALS = 100
SIZES = [(c, n, 1) for c in ("delta", "wye", "wye with neutral") for n in (1, 2, 3, 4)] + [("wye", 1, 2), ("wye", 2, 2)]


def _element(power: float, volts: float, connection: str, per_leg: int, groups: int) -> float:
    return (3.0 if connection == "delta" else 1.0) * volts**2 / power * per_leg * groups


def _distance(a: tuple[float, ...], b: tuple[float, ...]) -> float:
    """Standard deviations between two patterns, by the larger width; reckoned apart from the code under test."""
    total = 0.0
    for x, y in zip(a, b, strict=True):
        if math.isinf(x) or math.isinf(y):
            total += 0.0 if x == y else 1e6
        elif max(x, y) > 0.0:
            total += ((x - y) / (ERROR * max(x, y))) ** 2
    return math.sqrt(total)


def _judge(
    state: LegState,
    patterns: dict[LegState, tuple[float, ...]],
    read: Callable[[list[float]], BankReading],
    dice: random.Random,
) -> None:
    """99 of 100 readings of one state must come back to it, and none may be mistaken for a state far off."""
    own = patterns[state]
    others = {s: _distance(own, p) for s, p in patterns.items()}
    alone = min((d for d in others.values() if d > 1e-3), default=1e9) >= APART
    kept = hit = 0
    for _ in range(TRIALS):
        found = read([v * dice.gauss(1.0, ERROR) if math.isfinite(v) else math.inf for v in own])
        kept += state in found.possible
        hit += state in found.same
        assert all(others[s] <= CONFUSED for s in found.near)
        assert all(others[s] < 1e-3 for s in found.same if state in found.same)
    assert kept >= 99
    if alone:
        assert hit >= 99


@pytest.mark.parametrize(("connection", "per_leg", "groups"), SIZES)
def test_currents_are_read_back(connection: str, per_leg: int, groups: int) -> None:
    dice = random.Random(f"amps {connection} {per_leg} {groups}")
    states = leg_states(connection, per_leg, groups)
    for state in dice.sample(states, 10):
        power, volts = dice.uniform(3e3, 60e3), dice.choice([208.0, 240.0, 400.0, 480.0])
        element = _element(power, volts, connection, per_leg, groups)
        patterns = {s: leg_currents(element, volts, connection, s) for s in states}
        patterns = {s: tuple(0.0 if i < 1e-9 else i for i in p) for s, p in patterns.items()}
        _judge(
            state,
            patterns,
            lambda seen, e=element, v=volts: read_currents(seen, e, v, connection, per_leg, groups, ERROR),  # type: ignore[misc]
            dice,
        )


@pytest.mark.parametrize(("connection", "per_leg", "groups"), SIZES)
def test_resistances_are_read_back(connection: str, per_leg: int, groups: int) -> None:
    dice = random.Random(f"ohms {connection} {per_leg} {groups}")
    states = leg_states(connection, per_leg, groups, lost_lines=False)
    for state in dice.sample(states, min(10, len(states))):
        element = _element(dice.uniform(3e3, 60e3), dice.choice([208.0, 240.0, 480.0]), connection, per_leg, groups)
        patterns = {s: leg_resistances(element, connection, s) for s in states}
        _judge(
            state,
            patterns,
            lambda seen, e=element: read_resistances(seen, e, connection, per_leg, groups, ERROR),  # type: ignore[misc]
            dice,
        )


@pytest.mark.parametrize("connection", ["delta", "wye", "wye with neutral"])
def test_one_element_to_a_leg_is_the_bank_of_three(connection: str) -> None:
    """The bank of any size comes out as the bank of three elements, which was reckoned by itself."""
    element = _element(15e3, 208.0, connection, 1, 1)
    for state in leg_states(connection, 1):
        three = BankState(frozenset(k for k in range(3) if not state.groups[0][k]), state.lost_line)
        assert leg_currents(element, 208.0, connection, state) == pytest.approx(
            bank_currents(15e3, 208.0, connection, three), abs=1e-9
        )
        assert leg_power(element, 208.0, connection, state) == pytest.approx(
            bank_power(15e3, 208.0, connection, three), abs=1e-6
        )
        assert leg_resistances(element, connection, state) == pytest.approx(
            bank_resistances(element, connection, three.open_elements)
        )


@pytest.mark.parametrize("per_leg", [1, 2, 3, 4])
def test_power_agrees_with_the_healthy_plate(per_leg: int) -> None:
    for connection in ("delta", "wye", "wye with neutral"):
        healthy = leg_states(connection, per_leg)[0]
        element = _element(24e3, 240.0, connection, per_leg, 1)
        assert leg_power(element, 240.0, connection, healthy) == pytest.approx(24e3)
        assert leg_currents(element, 240.0, connection, healthy) == pytest.approx((24e3 / 240.0 / math.sqrt(3.0),) * 3)


def test_what_physics_cannot_tell_apart_is_named_together() -> None:
    """Wye without neutral: an open element and the lost line of the same terminal."""
    element = _element(27e3, 400.0, "wye", 1, 1)
    seen = leg_currents(element, 400.0, "wye", LegState(((1, 1, 0),)))
    found = read_currents(seen, element, 400.0, "wye")
    names = {name_of_state(s, "wye", 1) for s in found.same}
    assert names == {"leg T3: open", "line L3 lost", "leg T3: open; line L3 lost"}
    assert found.near == ()


def test_two_open_in_delta_is_like_a_line_lost_behind_an_open_element() -> None:
    element = _element(30e3, 208.0, "delta", 1, 1)
    seen = leg_currents(element, 208.0, "delta", LegState(((1, 0, 0),)))
    names = {name_of_state(s, "delta", 1) for s in read_currents(seen, element, 208.0, "delta").same}
    assert "T2-T3: open; T3-T1: open" in names
    assert "T2-T3: open; line L3 lost" in names
    assert not any(name == "line L3 lost" for name in names)


def test_separate_stars_differ_from_one_star() -> None:
    """Two groups with one leg open each, not the same one: a joint star would draw otherwise."""
    apart = leg_currents(10.0, 400.0, "wye", LegState(((0, 1, 1), (1, 0, 1))))
    joint = leg_currents(10.0, 400.0, "wye", LegState(((1, 1, 2),)))
    assert apart != pytest.approx(joint, rel=0.02)


def test_readings_of_no_state_fit_none() -> None:
    assert not read_currents([60.0, 40.0, 95.0], 4.3264, 208.0, "delta").fits
    assert not read_resistances([1.0, 50.0, 7.0], 4.3264, "delta").fits


@pytest.mark.parametrize("seen", [[1.0, 2.0], [-1.0, 2.0, 3.0], [math.nan, 1.0, 1.0]])
def test_nonsense_is_refused(seen: list[float]) -> None:
    with pytest.raises(ValueError, match="three"):
        read_currents(seen, 4.0, 208.0, "delta")
    with pytest.raises(ValueError, match="three"):
        read_resistances(seen, 4.0, "delta")
    with pytest.raises(ValueError, match="groups of three legs"):
        LegState(((1, -1, 1),))
    with pytest.raises(ValueError, match="connection"):
        leg_states("star", 1)
