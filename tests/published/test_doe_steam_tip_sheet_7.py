"""Steam Tip Sheet 7, Clean Firetube Boiler Waterside Heat Transfer Surfaces, U.S. Department of Energy, January 2006.

Its table is after NIST Handbook 115, supplement 1; read in a secondary copy.
"""

from __future__ import annotations

import pytest

from diagnose.model import load_book
from diagnose.physics.scale_loss import DEPOSITS, fuel_lost_to_scale

INCH = 0.0254
ROWS = [  # inches, per cent lost: normal, high iron, iron and silica
    (1 / 64, 1.0, 1.6, 3.5),
    (1 / 32, 2.0, 3.1, 7.0),
    (3 / 64, 3.0, 4.7, None),
    (1 / 16, 3.9, 6.2, None),
]


@pytest.mark.parametrize("row", ROWS)
def test_table(row: tuple[float, float, float, float | None]) -> None:
    for deposit, per_cent in zip(DEPOSITS, row[1:], strict=True):
        if per_cent is None:
            with pytest.raises(ValueError, match="outside"):
                fuel_lost_to_scale(row[0] * INCH, deposit)
        else:
            assert 100 * fuel_lost_to_scale(row[0] * INCH, deposit) == pytest.approx(per_cent)


def test_worked_example() -> None:
    """450,000 MBtu a year at $3.00 with 2 % lost is $27,000."""
    assert 450_000 * 3.00 * fuel_lost_to_scale(INCH / 32) == pytest.approx(27_000)


def test_between_the_rows() -> None:
    assert fuel_lost_to_scale(0.0) == 0.0
    assert 0.01 < fuel_lost_to_scale(1.5 / 64 * INCH) < 0.02


def test_not_for_an_element_in_the_water() -> None:
    """All its heat still enters the water: the table must not be applied to it, in figures or in knowledge."""
    with pytest.raises(ValueError, match="all its heat still goes into the water"):
        fuel_lost_to_scale(INCH / 32, surface="immersion element")
    book = load_book()
    uses = [c.id for c in book.causes.values() if c.basis.source == "doe_steam7"]
    assert uses
    assert not [name for name in uses if "electric" in name]
