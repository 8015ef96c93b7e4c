"""Hardness: classes of the U.S. Geological Survey; beside them the trade's table (secondary), textbook identities."""

from __future__ import annotations

import math

import pytest

from diagnose.physics.scale import softener_volume
from diagnose.physics.water import hardness_from_ions, hardness_scales, trade_class, usgs_class
from diagnose.units import parse_quantity


@pytest.mark.parametrize(
    ("hardness", "word"),
    [
        (0, "soft"), (60, "soft"), (61, "moderately hard"), (120, "moderately hard"), (121, "hard"), (180, "hard"),
        (181, "very hard"),
    ],
)  # fmt: skip
def test_survey_classes(hardness: float, word: str) -> None:
    assert usgs_class(hardness) == word


@pytest.mark.parametrize(
    ("grains", "word"),
    [
        (0.9, "soft"), (1.0, "slightly hard"), (3.5, "slightly hard"), (3.6, "moderately hard"),
        (7.0, "moderately hard"), (7.1, "hard"), (10.5, "hard"), (10.6, "very hard"),
    ],
)  # fmt: skip
def test_trade_classes(grains: float, word: str) -> None:
    """Water-treatment trade, as tabulated in a secondary copy."""
    assert trade_class(grains * 17.118) == word


def test_one_word_is_two_things() -> None:
    """The survey's "soft" spans two classes of the trade, and 120 mg/L is hard to the one only."""
    assert usgs_class(10) == usgs_class(50) == "soft"
    assert (trade_class(10), trade_class(50)) == ("soft", "slightly hard")
    assert (usgs_class(120), trade_class(120)) == ("moderately hard", "hard")


def test_grains() -> None:
    assert math.isclose(hardness_scales(120)[0], 7.01, abs_tol=0.005)
    assert math.isclose(hardness_scales(17.118)[0], 1.0)
    assert math.isclose(17.118, 64.79891 / 3.785411784, rel_tol=1e-5)  # a grain in a US gallon


def test_scales_are_those_of_the_units() -> None:
    for value, unit in zip(hardness_scales(200), ("gpg", "mg/L", "°dH", "°f", "°e", "mmol/L"), strict=True):
        assert math.isclose(parse_quantity(f"{value} {unit}", "hardness").si, 200, rel_tol=1e-9)


def test_hardness_from_ions() -> None:
    """2.497 Ca + 4.118 Mg: 80 and 20 mg/L are 282.1; the factors are ratios of molar masses (100.09, 40.08, 24.305)."""
    assert math.isclose(hardness_from_ions(80, 20), 282.1, abs_tol=0.05)
    assert math.isclose(hardness_from_ions(1, 0), 100.087 / 40.078, rel_tol=1e-3)
    assert math.isclose(hardness_from_ions(0, 1), 100.087 / 24.305, rel_tol=1e-3)


def test_grains_over_gpg_are_gallons() -> None:
    gallons = softener_volume(24000 * 6.479891e-5, 12 * 17.118) / 3.785411784e-3
    assert math.isclose(gallons, 2000, rel_tol=1e-4)
