"""The state of a bank from its readings: every state is found from its own pattern, and chance decides nothing."""

from __future__ import annotations

import math
import random

import pytest

from diagnose.physics.bank_states import (
    CURRENT_STATES,
    RESISTANCE_STATES,
    current_likelihoods,
    resistance_likelihoods,
)
from diagnose.physics.element_bank import bank_currents, bank_resistances

ALIKE = {("wye", "one element open"), ("wye", "line lost"), ("wye", "two elements open")}


@pytest.mark.parametrize("connection", ["delta", "wye"])
@pytest.mark.parametrize("name", CURRENT_STATES)
def test_currents_of_every_state(connection: str, name: str) -> None:
    rng = random.Random(name + connection)
    full = 1.0 / math.sqrt(3.0)
    for state in CURRENT_STATES[name]:
        for _ in range(5):
            seen = [i * rng.gauss(1.0, 0.02) for i in bank_currents(1.0, 1.0, connection, state)]
            likely = current_likelihoods([abs(i) for i in seen], full, connection, 0.03, 0.05)
            if (connection, name) in ALIKE:
                best = sorted(likely.values())[-2:]
                assert likely[name] in best or name == "two elements open"
            else:
                assert max(likely, key=lambda o: likely[o]) == name


@pytest.mark.parametrize("connection", ["delta", "wye"])
@pytest.mark.parametrize("name", RESISTANCE_STATES)
def test_resistances_of_every_state(connection: str, name: str) -> None:
    healthy = bank_resistances(10.0, connection)[0]
    for state in RESISTANCE_STATES[name]:
        seen = [min(r, 1e7) for r in bank_resistances(10.0, connection, state.open_elements)]
        likely = resistance_likelihoods(seen, healthy, connection, 0.03, 0.05)
        if connection == "wye" and name in ("two elements open", "all open"):
            assert likely["two elements open"] == pytest.approx(likely["all open"])
        else:
            assert max(likely, key=lambda o: likely[o]) == name


def test_readings_of_no_state_fall_to_unlike() -> None:
    likely = current_likelihoods([60.0, 40.0, 95.0], 83.3, "delta", 0.03, 0.05)
    assert likely["unlike"] / sum(likely.values()) > 0.9


def test_even_but_low_is_low() -> None:
    likely = current_likelihoods([50.0, 50.0, 50.0], 83.3, "delta", 0.03, 0.05)
    assert max(likely, key=lambda o: likely[o]) == "low"


@pytest.mark.parametrize("seen", [[1.0, 2.0], [-1.0, 2.0, 3.0], [math.nan, 1.0, 1.0]])
def test_nonsense_is_refused(seen: list[float]) -> None:
    with pytest.raises(ValueError, match="three"):
        current_likelihoods(seen, 1.0, "delta", 0.03, 0.05)
    with pytest.raises(ValueError, match="three"):
        resistance_likelihoods(seen, 1.0, "delta", 0.03, 0.05)
