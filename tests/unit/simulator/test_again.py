"""A story begun again on the same machine, and a run looked at by parts, tell what a fresh one tells."""

from __future__ import annotations

import pytest

from diagnose.simulator import FAULTS, LOOKS, Simulated
from diagnose.simulator.plant import Plant
from diagnose.simulator.service import warm_up, warming
from tests.unit.simulator.plates import plate

KIND = "two_tank_steam_208"
NAME = next(name for name in sorted(FAULTS) if FAULTS[name].fits(plate(KIND)))


def story(sim: Simulated) -> list[object]:
    """All that can be heard and read before and after the repair."""
    told: list[object] = []
    for _ in range(2):
        told += [sim.complaints(), sim.context(), sim.present]
        told += [(name, sim.read(name)) for name in LOOKS if sim.can_read(name)]
        told.append(sim.repair(NAME))
    return told


def test_again_is_like_the_first_time() -> None:
    fresh = Simulated(plate(KIND), ((NAME, 0.8),), seed=3, lies=(("reference thermometer", 2.0),))
    first = story(fresh)
    assert story(fresh.again()) == first
    assert story(fresh.again().again()) == first


def test_a_machine_in_use_is_left_alone_by_one_begun_again() -> None:
    one, other = (Simulated(plate(KIND), ((NAME, 0.8),), seed=3) for _ in range(2))
    between = one.again()
    for name in [name for name in LOOKS if one.can_read(name)][::9]:
        assert one.read(name) == other.read(name)
        between.read(name)
    assert between.repair(NAME)
    assert one.present == (NAME,)


@pytest.mark.parametrize("kind", [KIND, "single_tank_electric_208"])
def test_a_start_seen_by_parts_is_the_whole_one(kind: str) -> None:
    whole, parts = warm_up(plant(kind)).samples, warming(plant(kind))
    assert next(iter(parts)) == whole[0]
    assert [sample for sample, _ in zip(parts, range(5), strict=False)] == whole[:5]
    assert list(parts) == whole


def plant(kind: str) -> Plant:
    return Simulated(plate(kind), seed=1).bench.plant
