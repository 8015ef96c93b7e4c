"""The gas of the simulated machine against published and hand-worked figures: orifices, the line's losses, the wall."""

from __future__ import annotations

import math

import pytest

from diagnose.simulator import FAULTS, Simulated
from diagnose.simulator.burning import along, burners, flame, inlet_pressure, taken
from diagnose.simulator.flames import burning
from diagnose.simulator.gas_parts import INCH, Burner
from diagnose.simulator.plant import Plant
from tests.unit.simulator.plates import plate

BTU = 1055.05585262 / 3600.0  # W a BTU/h
SINGLE = "single_tank_gas_208"


def _plant() -> Plant:
    return Plant.built(plate(SINGLE))


def test_heat_at_three_quarters_of_a_published_input() -> None:
    # San Joaquin County EHD 16-01 (7/5/17): 126 gph raised 80 F by gas at 75 % takes 111,955 BTU/h.
    share, _ = taken(Burner(111_955 * BTU, 0.75), 1.0, water=350.0, room=300.0)
    heat = 111_955 * share  # BTU/h into 126 gph of 8.33 lb each
    assert heat / (126 * 8.33) == pytest.approx(80.0, abs=0.1)


def test_input_goes_with_the_root_of_manifold_pressure() -> None:
    plant = _plant()
    burner = burners(plant)["booster"]
    burner.manifold = 2.5 / 3.5
    low = flame(plant, "booster", ["booster"], 350.0)
    assert low.manifold == pytest.approx(2.5 * INCH, rel=0.002)
    assert low.share == pytest.approx(math.sqrt(2.5 / 3.5), abs=1e-3)  # 0.845, by hand


def test_input_goes_with_the_jets_area() -> None:
    plant = _plant()
    burners(plant)["booster"].jets_open = 0.7
    seen = flame(plant, "booster", ["booster"], 350.0)
    assert seen.share == pytest.approx(0.7, abs=1e-3)
    assert seen.manifold == pytest.approx(plate(SINGLE)["gas_pressure"], rel=1e-3)


def test_the_line_loses_with_the_square_of_the_flow() -> None:
    plant = _plant()
    line, all_of_it = plant.fuel.gas, list(burners(plant))
    # By hand, all regulated: 10 Pa x (1 + 2)^2 in the branch, 12 Pa each in strainer and cock.
    assert inlet_pressure(plant, all_of_it) == pytest.approx(line.supply - 90.0 - 24.0, abs=0.5)
    assert inlet_pressure(plant, all_of_it, others=False) == pytest.approx(line.supply - 10.0 - 24.0, abs=0.5)
    assert inlet_pressure(plant, []) == pytest.approx(line.supply - 40.0, abs=0.5)


def test_a_choked_strainer_takes_its_own_loss_whatever_the_branch_holds() -> None:
    plant = _plant()
    plant.fuel.gas.strainer_open = 0.08
    found = along(plant, list(burners(plant)))
    assert found.strainer > 2.0 * INCH
    assert found.branch - found.inlet == pytest.approx(found.strainer + found.cock, rel=1e-6)
    # What arrives at the valve drives the jets: (share of gas)^2 x (jets and valve) = inlet, unregulated.
    seen = flame(plant, "booster", list(burners(plant)), 350.0)
    assert seen.manifold * 1.28 == pytest.approx(found.inlet, rel=1e-3)


@pytest.mark.parametrize("fouled", [Burner(30e3, 0.8, lime=0.002), Burner(30e3, 0.8, soot=0.5)])
def test_what_the_wall_does_not_take_leaves_by_the_flue(fouled: Burner) -> None:
    clean = Burner(30e3, 0.8)
    taken_clean, flue_clean = taken(clean, 1.0, 350.0, 300.0)
    taken_fouled, flue_fouled = taken(fouled, 1.0, 350.0, 300.0)
    assert taken_clean == pytest.approx(0.8, abs=1e-9)
    # Water, vapour (10 %) and flue (1 % for each 18 K) make up the input.
    for share, flue in ((taken_clean, flue_clean), (taken_fouled, flue_fouled)):
        assert share + 0.10 + (flue - 300.0) / 1800.0 == pytest.approx(1.0, abs=1e-9)
    assert flue_fouled > flue_clean + 56.0  # 100 °F


def test_less_gas_leaves_a_cooler_flue_and_a_better_share() -> None:
    full, half = (taken(Burner(30e3, 0.8), share, 350.0, 300.0) for share in (1.0, 0.5))
    assert half[1] < full[1]
    assert half[0] > full[0]


def test_a_small_line_is_short_only_with_the_others() -> None:
    sim = Simulated(plate(SINGLE), (("supply_gas.gas_line_small", 0.6),), seed=2)
    with_others, alone = burning(sim.bench, "booster"), burning(sim.bench, "booster", alone=True)
    assert with_others is not None
    assert alone is not None
    assert with_others.share < 0.9
    assert alone.share == pytest.approx(1.0, abs=1e-3)


@pytest.mark.parametrize("name", [n for n in FAULTS if n.split(".")[0] in ("supply_gas", "booster_gas")])
def test_no_gas_fault_makes_more_heat_than_gas_burns(name: str) -> None:
    sim = Simulated(plate(SINGLE), ((name, 0.9),), seed=1)
    for each, burner in burners(sim.bench.plant).items():
        seen = flame(sim.bench.plant, each, list(burners(sim.bench.plant)), 350.0)
        assert 0.0 <= seen.heat <= 0.9 * burner.input * max(seen.share, 0.0) + 1e-9
