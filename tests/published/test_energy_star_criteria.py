"""ENERGY STAR key product criteria, commercial dishwashers, effective 11 October 2007, and its racks a day.

The criteria are limits of what a machine may use: our tanks and rinses must come out at figures like them.
"""

from __future__ import annotations

import pytest

from diagnose.formulas import find_formula
from diagnose.model import Machine, load_book
from diagnose.physics.racks import annual_water
from diagnose.physics.tanks import heat_up_time_with_loss, power_to_hold, steady_temperature
from diagnose.units import parse_quantity

GALLON = 3.785411784e-3
# Hot water, rack conveyor: idle kW (tank heater alone, door closed), gallons per rack, racks a day of the calculator.
ONE_TANK, MANY_TANKS = (2.0, 0.700, 400), (2.6, 0.540, 600)


def _si(text: str, quantity: str) -> float:
    return parse_quantity(text, quantity).si


ROOM, HOT = _si("75 °F", "temperature"), _si("160 °F", "temperature")


@pytest.mark.parametrize(("limit", "gallons"), [(ONE_TANK, 280), (MANY_TANKS, 324)])
def test_water_in_a_day(limit: tuple[float, float, int], gallons: float) -> None:
    assert annual_water(limit[1] * GALLON, limit[2], 1) / GALLON == pytest.approx(gallons)


def test_usual_loss_of_the_calculator_is_that_of_a_machine_within_the_criteria() -> None:
    usual = find_formula("heat-up-loss").argument("loss").usual
    idle = power_to_hold(HOT, ROOM, _si(usual, "heat loss"), 0.0, ROOM) / 1e3
    assert 0.5 * ONE_TANK[0] < idle < ONE_TANK[0]


@pytest.mark.parametrize(("limit", "tanks"), [(ONE_TANK, 1), (MANY_TANKS, 2)])
def test_every_electric_tank_of_ours_outdoes_the_idle_it_may_have(limit: tuple[float, float, int], tanks: int) -> None:
    """The heater of each type brings its tank to heat against the idle limit, in the 20 to 45 minutes of the trade."""
    seen = 0
    for kind in load_book().machines.values():
        machine = Machine("x", kind)
        power, volume = machine.plate("tank_power"), machine.plate("wash_tank_volume")
        if machine.trait("tanks") != tanks or power is None or volume is None:
            continue
        loss = limit[0] * 1e3 / (HOT - ROOM)
        assert power.si >= 3 * limit[0] * 1e3
        assert steady_temperature(power.si, loss, ROOM, 0.0, ROOM) > HOT + 50
        minutes = heat_up_time_with_loss(volume.si, _si("60 °F", "temperature"), HOT, power.si, loss, ROOM) / 60
        assert 15 < minutes < 60
        seen += 1
    assert seen


def test_rinse_of_our_types_is_of_a_size_that_is_found() -> None:
    """ASHRAE Applications 2013, service water heating, table 15 (secondary): racks 0.7 to 6 gpm."""
    racks = (kind for kind in load_book().machines.values() if kind.traits["conveyor"] != "flight")
    for kind in racks:
        flow = Machine("x", kind).plate("rinse_flow")
        assert flow is not None
        assert 0.7 <= flow.si / GALLON * 60 <= 6.0
