"""NSF/ANSI 3, chemical minima as quoted in a weak secondary copy: chlorine 50 ppm at 120 °F, iodine 12.5 to 25 ppm at
75 °F, quat 150 to 400 ppm at 75 °F. They weigh less than Food Code 4-501.114, and must not go against it."""

from __future__ import annotations

import pytest

from diagnose.model import load_book
from diagnose.physics.chlorine import chlorine_least_temperature, chlorine_verdict, iodine_verdict, quat_verdict

HEAT_75, HEAT_120 = (75 + 459.67) / 1.8, (120 + 459.67) / 1.8


@pytest.mark.parametrize("ph", [6.0, 8.0, 10.0])
def test_the_quoted_chlorine_is_on_the_safe_side_of_the_code(ph: float) -> None:
    assert chlorine_verdict(50, ph, HEAT_120) == "enough"
    assert chlorine_least_temperature(50, ph) < HEAT_120


@pytest.mark.parametrize("strength", [12.5, 25.0])
def test_the_quoted_iodine_passes_the_code(strength: float) -> None:
    assert iodine_verdict(strength, 5.0, HEAT_75) == "enough"


def test_the_quoted_quat_passes_the_code() -> None:
    assert quat_verdict(150, 150, 500, HEAT_75) == "enough"


def test_where_they_differ_the_code_decides() -> None:
    """50 ppm at 90 °F and pH 8 is under the quoted 120 °F, and enough by the code."""
    assert chlorine_verdict(50, 8, (90 + 459.67) / 1.8) == "enough"


def test_the_figure_kept_here_says_how_weak_its_source_is() -> None:
    basis = load_book().limits["sanitiser_strength"].basis
    assert basis.kind != "published"
    assert "secondary" in (basis.note or "")
