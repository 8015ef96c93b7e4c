"""Motor Systems Tip Sheet 6, Avoid Nuisance Tripping, U.S. Department of Energy, 2012 (DOE/GO-102012-3731)."""

from __future__ import annotations

import pytest

from diagnose.physics.motors import HORSEPOWER, locked_rotor_current


def test_locked_rotor_example() -> None:
    """100 hp, code letter C (4.0 kVA/hp), 460 V: the sheet prints 502 A."""
    assert locked_rotor_current(100.0 * HORSEPOWER, 4.0, 460.0) == pytest.approx(502.04, abs=0.01)
