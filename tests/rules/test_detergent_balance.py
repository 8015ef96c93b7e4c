"""Detergent fed, found in the tank, and washed out by an overflow at rest."""

from __future__ import annotations

import pytest

from diagnose.model import Finding, Machine, load_book
from tests.rulebook import reading
from tests.rulebook import run as run_book

BOOK = load_book()
TANK, FED, OVERFLOW = "detergent_feed.tank_strength", "detergent_feed.fed_per_rack", "drain_overflow.overflow_rate"
BALANCE = "detergent_feed.balance"


def balance(found: str, fed: str, overflow: str, **own: str) -> Finding | None:
    machine = Machine("m", BOOK.machines["two_tank_electric_208"], own)
    typed = [(TANK, found), (FED, fed), (OVERFLOW, overflow)]
    return next((f for f in run_book(machine, *typed, book=BOOK).findings if f.check == BALANCE), None)


@pytest.mark.parametrize(
    ("found", "fed", "overflow", "outcome"),
    [
        ("1400 ppm", "5 mL", "0.02 gpm", "holds"),  # 5 × 1300 ÷ 4.586 L = 1417 ppm
        ("650 ppm", "5 mL", "4 gpm", "washed"),  # 4 gpm over 208 racks an hour is 4.37 L more: 726 ppm
        ("350 ppm", "1.3 mL", "0.02 gpm", "fed_short"),  # 1.3 mL hold 369 ppm
        ("200 ppm", "5 mL", "0.02 gpm", "lost"),  # 1417 are fed and a seventh is there
        ("200 ppm", "5 mL", "0.3 gpm", "lost"),  # 0.33 L more make 1322: the overflow does not explain it
        ("5000 ppm", "18 mL", "0.02 gpm", "strong"),
    ],
)
def test_the_three_together_name_what_is_short(found: str, fed: str, overflow: str, outcome: str) -> None:
    said = balance(found, fed, overflow)
    assert said is not None
    assert said.outcome == outcome


def test_the_same_readings_on_a_machine_with_fewer_racks() -> None:
    """At 40 racks an hour 0.5 gpm is 2.84 L a rack, at 208 it is 0.55 L: only the one explains a thin tank."""
    slow = balance("500 ppm", "3 mL", "0.5 gpm", racks_per_hour="40 per hour", rinse_per_rack="1.1 gal")
    quick = balance("500 ppm", "3 mL", "0.5 gpm", rinse_per_rack="1.1 gal")
    assert slow is not None
    assert quick is not None
    assert slow.outcome == "washed"
    assert slow.weights["washed"] > quick.weights.get("washed", 0.0) + 0.2


def test_the_overflow_is_consulted_and_can_still_be_counted() -> None:
    said = balance("650 ppm", "5 mL", "4 gpm")
    assert said is not None
    assert len(said.counts) == 2
    assert len(said.consults) == 1


def test_silent_without_the_overflow() -> None:
    machine = Machine("m", BOOK.machines["two_tank_electric_208"])
    done = run_book(machine, (TANK, "650 ppm"), (FED, "5 mL"), book=BOOK)
    assert [f for f in done.findings if f.check == BALANCE] == []
    assert {f.check for f in done.findings} == {TANK, FED}  # the plain bands take them


def test_near_the_edge() -> None:
    said = balance("800 ppm", "2.5 mL", "0.02 gpm")
    assert said is not None
    assert 0.3 < said.weights["holds"] < 0.7
    assert reading(TANK, "800 ppm", book=BOOK).value.value == 800
