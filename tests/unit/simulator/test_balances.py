"""Water and heat: what crossed the border is what changed inside, in service and while filling, sound and faulty.

The balance is worked out from the state alone (masses, heats, the booster's shell) and held against the booked flows.
"""

from __future__ import annotations

import pytest

from diagnose.simulator import FAULTS
from diagnose.simulator.plant import Plant
from diagnose.simulator.service import Service, serve, warm_up
from diagnose.simulator.state import CP, DENSITY, State, start_state
from tests.unit.simulator.plates import TYPES, plate

CLOSES = 0.005  # of all that was moved
SOME = sorted(FAULTS)[::20]


def stored(plant: Plant, state: State) -> tuple[float, float]:
    """Heat, [J from 0 °C], and water, [kg], inside."""
    heat = sum(v for name, v in state.flowing.items() if name.startswith("heat "))
    if plant.booster.heater.kind != "none":
        heat += state.flowing["booster"] * plant.booster.volume * DENSITY * CP
    return heat, sum(v for name, v in state.flowing.items() if name.startswith("mass "))


def assert_closed(plant: Plant, run: Service, hot: bool) -> None:
    before, after = stored(plant, start_state(plant, hot)), stored(plant, run.state)
    for nth, book in enumerate((run.ledger.heat, run.ledger.water)):
        moved = sum(abs(v) for v in book.values())
        assert abs(after[nth] - before[nth] - sum(book.values())) <= CLOSES * max(moved, 1.0)


@pytest.mark.parametrize("kind", TYPES)
def test_a_sound_machine_balances(kind: str) -> None:
    plant = Plant.built(plate(kind))
    assert_closed(plant, serve(plant, minutes=10.0), hot=True)
    assert_closed(plant, warm_up(plant, minutes=20.0), hot=False)


@pytest.mark.parametrize("name", SOME)
def test_a_faulty_machine_balances(name: str) -> None:
    kind = next(k for k in TYPES if FAULTS[name].fits(plate(k)))
    plant = Plant.built(plate(kind))
    FAULTS[name].apply(plant, 0.8)
    assert_closed(plant, serve(plant, minutes=10.0), hot=True)
    assert_closed(plant, warm_up(plant, minutes=20.0), hot=False)


@pytest.mark.parametrize("kind", ["two_tank_electric_208", "single_tank_steam_208", "flight_prewash_electric_480"])
def test_half_the_step_changes_little(kind: str) -> None:
    """The error of the scheme: temperatures after ten minutes of service differ by less than a fifth of a kelvin."""
    plant = Plant.built(plate(kind))
    plant.rinse.actuator = "held"  # no switching that a finer step would place elsewhere
    for control in (plant.booster.thermostat, *(t.thermostat for t in plant.tanks.values())):
        control.stuck = True
    coarse, fine = serve(plant, minutes=10.0, step=2.0), serve(plant, minutes=10.0, step=1.0)
    for tank in plant.tanks:
        assert coarse.state.temperature(tank) == pytest.approx(fine.state.temperature(tank), abs=0.2)
    assert coarse.state.flowing["booster"] == pytest.approx(fine.state.flowing["booster"], abs=0.2)
