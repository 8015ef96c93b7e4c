"""All loads of a machine by their plates, against its breaker."""

from __future__ import annotations

import pytest

from diagnose.model import Machine, Reading, load_book
from diagnose.rules import expected, findings
from diagnose.rules.breaker_earth_leakage import loads_of
from diagnose.rules.facts import Facts
from diagnose.units import parse_quantity

BOOK = load_book()
FEED = "breaker_earth_leakage.feed_amps"


def machine(kind: str, **plate: str) -> Machine:
    return Machine("under test", BOOK.machines[kind], plate)


@pytest.mark.parametrize(
    ("kind", "plate", "amps"),
    [
        # 30, 20 and 20 kW over 1.732 × 208 V, and the four motors
        ("two_tank_electric_208", {}, 83.27 + 2 * 55.51 + 6.8 + 3.8 + 1.2 + 2.2),
        ("two_tank_steam_208", {}, 6.8 + 3.8 + 1.2 + 2.2),
        ("single_tank_electric_240_single_phase", {}, 15000 / 240 + 10000 / 240 + 9.2 + 2.6 + 3.2),
        ("two_tank_electric_208", {"booster_power": "15 kW"}, 41.64 + 2 * 55.51 + 6.8 + 3.8 + 1.2 + 2.2),
    ],
)
def test_sum(kind: str, plate: dict[str, str], amps: float) -> None:
    loads = loads_of(Facts(BOOK, machine(kind, **plate)))
    assert sum(a for _, a in loads) == pytest.approx(amps, abs=0.1)


def test_a_remote_booster_has_a_feed_of_its_own() -> None:
    names = [name for name, _ in loads_of(Facts(BOOK, machine("single_tank_remote_booster_480")))]
    assert not any("booster" in name for name in names)


def test_expected_beside_the_band() -> None:
    shown = expected(BOOK, machine("two_tank_electric_208", breaker_amps="250 A"), [], FEED)
    assert shown is not None
    assert any("about 208 A, 83 % of the breaker" in line for line in shown.lines)
    assert any("÷ 250 A = " in line for line in shown.working)


@pytest.mark.parametrize(("breaker", "outcome"), [("300 A", "within"), ("225 A", "near"), ("175 A", "over")])
def test_the_same_line_on_another_breaker(breaker: str, outcome: str) -> None:
    read = Reading("feed", FEED, {"": parse_quantity("195 A", "current")})
    found = findings(BOOK, machine("two_tank_electric_208", breaker_amps=breaker), [read]).findings[0]
    assert found.outcome == outcome
    assert found.weights[outcome] > 0.9


def test_every_type_has_a_breaker_that_bears_its_loads() -> None:
    for kind, entry in BOOK.machines.items():
        here = Machine("under test", entry)
        breaker = here.plate("breaker_amps")
        assert breaker is not None, kind
        assert sum(a for _, a in loads_of(Facts(BOOK, here))) <= 0.8 * breaker.si, kind


@pytest.mark.parametrize(
    ("kind", "breaker", "read", "outcome"),
    [
        # Steam machine: motors only, 6.8 + 3.8 + 1.2 + 2.2 = 14.0 A by their plates.
        ("two_tank_steam_208", "20 A", "14 A", "within"),  # 70 %
        ("two_tank_steam_208", "16 A", "14 A", "near"),  # 88 % of it, and just what the plates make
        ("two_tank_steam_208", "20 A", "19 A", "beyond"),  # 95 % of it, 1.36 times the plates
        ("two_tank_steam_208", "30 A", "19 A", "within"),  # the same current, and room for it
        ("two_tank_electric_208", "200 A", "208 A", "over"),  # its own plates are over the breaker
        ("single_tank_electric_240_single_phase", "150 A", "119 A", "near"),  # 119 A by plates, 79 %: on the edge
    ],
)
def test_full_by_the_plates_or_beyond_them(kind: str, breaker: str, read: str, outcome: str) -> None:
    reading = Reading("feed", FEED, {"": parse_quantity(read, "current")})
    found = findings(BOOK, machine(kind, breaker_amps=breaker), [reading]).findings[0]
    assert found.rule == FEED
    assert found.weights.get(outcome, 0.0) > (0.3 if read == "119 A" else 0.6)
    assert found.outcome == "beyond" or found.weights.get("beyond", 0.0) < 0.1


def test_it_says_both_figures() -> None:
    reading = Reading("feed", FEED, {"": parse_quantity("19 A", "current")})
    found = findings(BOOK, machine("two_tank_steam_208", breaker_amps="20 A"), [reading]).findings[0]
    assert any("95 % of it" in line for line in found.working)
    assert any("19 ÷ 14 = 1.36" in line for line in found.working)
