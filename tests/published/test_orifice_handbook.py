"""Q = 29.84 C_d d² √P (gpm, in, psi), the form of hydraulics handbooks, from memory; one value worked with it."""

from __future__ import annotations

import pytest

from diagnose.formulas import said
from diagnose.physics.jets import flow_at_exponent, orifice_flow

GPM, INCH, PSI = 3.785411784e-3 / 60, 0.0254, 6894.757293168


@pytest.mark.parametrize("diameter", [0.0625, 0.125, 0.25])
@pytest.mark.parametrize("pressure", [5.0, 20.0, 60.0])
def test_handbook_form(diameter: float, pressure: float) -> None:
    handbook = 29.84 * 0.8 * diameter**2 * pressure**0.5
    assert orifice_flow(diameter * INCH, pressure * PSI) / GPM == pytest.approx(handbook, rel=1e-3)


def test_eighth_of_an_inch() -> None:
    assert orifice_flow(0.125 * INCH, 20 * PSI) / GPM == pytest.approx(1.668, abs=1e-3)
    lines = said("orifice-flow", "us", diameter=0.125 * INCH, pressure=20 * PSI, coefficient=0.8)
    assert lines == ("29.84 × 0.8 × 0.125² × √(20 psi) = 1.668 gpm",)


@pytest.mark.parametrize(("exponent", "share"), [(0.5, 0.707), (0.47, 0.722), (0.44, 0.737)])
def test_exponents_of_a_spray_table(exponent: float, share: float) -> None:
    """Swirl 0.5, full cone 0.44 to 0.47 (secondary copy): from 20 to 10 psi the square root is out by 4 % at most."""
    assert flow_at_exponent(1.0, 20.0, 10.0, exponent) == pytest.approx(share, abs=5e-4)
    assert share / 0.7071 < 1.045
