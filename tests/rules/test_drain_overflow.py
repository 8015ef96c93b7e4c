"""Water that leaves without a rack: nothing, the rinse itself, or a leak that does or does not rob the tank."""

from __future__ import annotations

import pytest

from diagnose.model import Finding, Machine, load_book
from diagnose.rules import expected
from tests.rulebook import reading
from tests.rulebook import run as run_rules

BOOK = load_book()
RATE = "drain_overflow.overflow_rate"
PLATE = {
    "rinse_flow": "4.2 gpm",
    "rinse_pressure": "20 psi",
    "wash_temperature": "150 °F",
    "tank_power": "20 kW",
    "booster_inlet": "140 °F",
}


def _machine(kind: str = "two_tank_electric_208", **own: str) -> Machine:
    return Machine("m", BOOK.machines[kind], {**PLATE, **own})


def _found(machine: Machine, *typed: tuple[str, str]) -> Finding:
    return next(f for f in run_rules(machine, *typed, book=BOOK).findings if f.check == RATE)


@pytest.mark.parametrize(
    ("rate", "own", "outcome"),
    [
        ("0 gpm", {}, "still"),
        ("0.02 gpm", {}, "still"),
        ("0.6 gpm", {}, "trickle"),  # 10 F° colder: 0.9 kW
        ("0.6 gpm", {"booster_inlet": "55 °F"}, "robs"),  # 95 F°: 8.4 kW of 20
        ("0.6 gpm", {"booster_inlet": "110 °F", "tank_power": "60 kW"}, "trickle"),
        ("0.6 gpm", {"booster_inlet": "110 °F", "tank_power": "10 kW"}, "robs"),  # 3.5 kW of 10
        ("4.2 gpm", {}, "as_rinse"),
        ("4.2 gpm", {"rinse_flow": "2.3 gpm"}, "far_more"),
        ("2.3 gpm", {"rinse_flow": "2.3 gpm"}, "as_rinse"),
        ("9 gpm", {}, "far_more"),
        ("16 L/min", {}, "as_rinse"),
    ],
)
def test_the_same_bucket_on_other_plates(rate: str, own: dict[str, str], outcome: str) -> None:
    assert _found(_machine(**own), (RATE, rate)).outcome == outcome


def test_inlet_and_pressure_are_consulted() -> None:
    inlet, gauge = ("supply_water.inlet_temperature", "70 F"), ("rinse_gauge.flow_pressure", "20")
    found = _found(_machine(), inlet, gauge, (RATE, "0.6 gpm"))
    assert found.outcome == "robs"  # 80 F° instead of the plate's 10
    assert set(found.consults) == {f"{inlet[0]} at 0", f"{gauge[0]} at 0"}
    assert found.counts == (f"{RATE} at 0",)
    assert "500 × 0.6 gpm × (150 − 70) ÷ 3412 = 7.034 kW" in found.working


def test_without_a_heater_on_the_plate_it_goes_by_the_rinse() -> None:
    bare = {name: text for name, text in PLATE.items() if name != "tank_power"}
    bare["tank_gas_input"] = "0 BTU/h"
    assert "tank_power" not in BOOK.machines["single_tank_gas_208"].plate
    found = _found(Machine("m", BOOK.machines["single_tank_gas_208"], bare), (RATE, "1.5 gpm"))
    assert found.outcome == "robs"
    assert any("Heat not reckoned" in line for line in found.working)


def test_a_gas_tank_goes_by_what_its_burner_puts_into_the_water() -> None:
    """0.15 gpm by 50 F° take 1.1 kW: a fifth of what 25,000 BTU/h put in, a fifteenth of what 80,000 do."""
    typed = (RATE, "0.15 gpm")
    own = {"wash_temperature": "160 °F", "booster_inlet": "110 °F", "rinse_flow": "3 gpm"}
    small = Machine("m", BOOK.machines["single_tank_gas_208"], {**own, "tank_gas_input": "25000 BTU/h"})
    large = Machine("m", BOOK.machines["single_tank_gas_208"], {**own, "tank_gas_input": "80000 BTU/h"})
    assert _found(small, typed).outcome == "robs"
    assert _found(large, typed).outcome == "trickle"


def test_the_power_rinse_tank_goes_by_its_own_plate() -> None:
    cold = ("tank_control.rinse_tank_temperature", "150 °F")
    machine = _machine(rinse_tank_temperature="160 °F", rinse_tank_power="20 kW", booster_inlet="120 °F")
    weak = _machine(rinse_tank_temperature="160 °F", rinse_tank_power="5 kW", booster_inlet="120 °F")
    assert _found(machine, cold, (RATE, "0.2 gpm")).outcome == "trickle"
    assert _found(weak, cold, (RATE, "0.2 gpm")).outcome == "robs"


def test_near_the_edge_of_the_drip() -> None:
    weights = _found(_machine(), (RATE, "0.05 gpm")).weights
    assert 0.4 < weights["still"] < 0.6


def test_silent_without_a_rinse_flow() -> None:
    done = run_rules(_machine(rinse_flow="0 gpm"), (RATE, "1"), book=BOOK)
    assert done.findings == ()
    assert "rated rinse flow" in done.unanswered[0].why


def test_expected_with_its_working() -> None:
    shown = expected(BOOK, _machine(), [reading("rinse_gauge.flow_pressure", "20", book=BOOK)], RATE)
    assert shown is not None
    assert shown.lines == ("nothing, or under 0.05 gpm",)
    assert any("4.2 gpm (from the pressure)" in line for line in shown.working)
    assert any(line.startswith("Wash-tank heater, rated power: 20 kW") for line in shown.working)
