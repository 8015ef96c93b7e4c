"""Tap water scalds, CPSC document 5098 (a copy; attribution from memory): seconds of water to a deep burn of an adult.

150 °F two seconds, 140 °F six, 130 °F thirty, 120 °F five minutes.
"""

from __future__ import annotations

import pytest

from diagnose.model import load_book

SECONDS = {150.0: 2.0, 140.0: 6.0, 130.0: 30.0, 120.0: 300.0}
BOOK = load_book()


def test_hotter_burns_sooner() -> None:
    falling = sorted(SECONDS)
    assert [SECONDS[t] for t in falling] == sorted(SECONDS.values(), reverse=True)


def test_the_caution_says_what_the_table_says() -> None:
    (text,) = [t for t in BOOK.cautions["scald"].text if "seconds" in t]
    assert "150 °F burns within two seconds" in text
    assert SECONDS[150.0] == 2.0


@pytest.mark.parametrize("limit", ["rinse_temperature", "tank_temperature"])
def test_tank_and_rinse_water_is_as_hot_as_that(limit: str) -> None:
    from diagnose.units import parse_quantity

    low = parse_quantity(BOOK.limits[limit].low[0], "temperature", "°F")
    assert low.to("°F") >= 150.0


def test_work_on_hot_water_carries_it() -> None:
    hot = [c for c in BOOK.causes.values() if c.state == "idle hot" and "tank" in c.id]
    assert hot
    assert all({"scald", "steam"} & set(c.cautions) for c in hot)
