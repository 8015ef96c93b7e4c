"""Wash water carried into the power-rinse tank, from two drop tests and the rinse water a rack."""

from __future__ import annotations

import pytest

from diagnose.model import Machine, load_book
from diagnose.rules import RuleRun
from tests.rulebook import reading, run

BOOK = load_book()
CARRIED, FLOW = "soil_load.carried", "rinse_arms.flow_measured"


def two_tanks(**own: str) -> Machine:
    return Machine("m", BOOK.machines["two_tank_electric_208"], own)


def done(machine: Machine, *typed: tuple[str, str]) -> RuleRun:
    return run(machine, *typed, book=BOOK)


@pytest.mark.parametrize(
    ("tested", "flow", "outcome"),
    [
        ("1500 150", "4.2 gpm", "little"),  # a tenth: 1.21 × 0.1 ÷ 0.9 = 0.13 gal
        ("1500 600", "4.2 gpm", "much"),  # 40 %: 1.21 × 0.4 ÷ 0.6 = 0.81 gal
        ("1500 600", "1 gpm", "thin_rinse"),  # the same 40 %: 0.29 × 0.4 ÷ 0.6 = 0.19 gal, a usual drip
        ("1500 150", "1 gpm", "little"),
        ("1500 1600", "4.2 gpm", "much"),  # as strong as the wash: the waters mix
    ],
)
def test_the_gallons_part_much_carried_from_thinly_rinsed(tested: str, flow: str, outcome: str) -> None:
    found = done(two_tanks(), (CARRIED, tested), (FLOW, flow)).findings
    assert next(f for f in found if f.check == CARRIED).outcome == outcome


def test_without_the_flow_the_two_stay_open() -> None:
    weights = done(two_tanks(), (CARRIED, "1500 600")).findings[0].weights
    assert weights["much"] > 0.3
    assert weights["thin_rinse"] > 0.3


def test_goes_by_the_racks_an_hour() -> None:
    """The same flow shared among a quarter of the racks is four times the water a rack, and what is carried with it."""
    few = done(two_tanks(racks_per_hour="52 per hour"), (CARRIED, "1500 300"), (FLOW, "4.2 gpm"))
    many = done(two_tanks(racks_per_hour="400 per hour"), (CARRIED, "1500 300"), (FLOW, "4.2 gpm"))
    outcomes = [next(f for f in r.findings if f.check == CARRIED).outcome for r in (few, many)]
    assert outcomes == ["much", "little"]


def test_near_the_edge() -> None:
    found = done(two_tanks(), (CARRIED, "1500 257"), (FLOW, "4.2 gpm")).findings
    assert 0.3 < next(f for f in found if f.check == CARRIED).weights["much"] < 0.7  # 1.21 × 0.171 ÷ 0.829 = 0.25 gal


def test_silent_without_detergent_in_the_wash() -> None:
    assert not [f for f in done(two_tanks(), (CARRIED, "0 0")).findings if f.check == CARRIED]


def test_expected_names_the_share_of_the_drip() -> None:
    from diagnose.rules.facts import gather
    from diagnose.rules.soil_load import carried_beside

    told = carried_beside(gather(BOOK, two_tanks(), []))
    assert told is not None
    assert told[0] == "the power rinse at no more than 17 % of the wash"  # 0.25 ÷ 1.46
    slow = carried_beside(gather(BOOK, two_tanks(), [reading(FLOW, "1 gpm", book=BOOK)]))
    assert slow is not None
    assert slow[0].endswith("47 % of the wash")
