"""The volts lost in a joint are judged by the watts they make with this machine's amps."""

from __future__ import annotations

import pytest

from diagnose.model import Machine, Reading, load_book
from diagnose.rules import expected, findings
from diagnose.rules.hot_spots import CHECK
from diagnose.units import parse_quantity

BOOK = load_book()
FEED = "breaker_earth_leakage.feed_amps"


def machine(kind: str, **plate: str) -> Machine:
    return Machine("under test", BOOK.machines[kind], plate)


def judged(kind: str, drop: str, amps: str | None = None, **plate: str) -> tuple[str, tuple[str, ...]]:
    readings = [] if amps is None else [Reading("feed", FEED, {"": parse_quantity(amps, "current")})]
    readings.append(Reading("drop", CHECK, {"": parse_quantity(drop, "voltage")}))
    found = [f for f in findings(BOOK, machine(kind, **plate), readings).findings if f.check == CHECK]
    return found[0].outcome, found[0].working


@pytest.mark.parametrize(
    ("kind", "drop", "amps", "outcome"),
    [
        ("two_tank_electric_208", "0.3 V", "180 A", "burns"),  # 54 W
        ("two_tank_electric_208", "0.05 V", "180 A", "warm"),  # 9 W
        ("two_tank_electric_208", "0.01 V", "180 A", "cool"),  # 1.8 W
        ("two_tank_steam_208", "0.3 V", "13 A", "cool"),  # 3.9 W: the same volts as the first
        ("two_tank_steam_208", "2 V", "13 A", "burns"),  # 26 W
    ],
)
def test_the_same_volts_by_their_amps(kind: str, drop: str, amps: str, outcome: str) -> None:
    assert judged(kind, drop, amps)[0] == outcome


def test_not_clamped_the_plates_say_how_much_flows() -> None:
    outcome, working = judged("two_tank_electric_208", "0.3 V")
    assert outcome == "burns"
    assert any("Amps not clamped" in line for line in working)


def test_working_is_the_tip_sheets_product() -> None:
    _, working = judged("two_tank_electric_208", "0.3 V", "180 A")
    assert any("0.3 V × 180 A = 54 W" in line for line in working)


def test_expected_here() -> None:
    shown = expected(
        BOOK, machine("two_tank_steam_208"), [Reading("f", FEED, {"": parse_quantity("14 A", "current")})], CHECK
    )
    assert shown is not None
    assert shown.high is not None
    assert shown.high.si == pytest.approx(5 / 14)
    assert "14 A" in shown.lines[0]
