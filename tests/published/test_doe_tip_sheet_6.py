"""Motor Systems Tip Sheet 6, Avoid Nuisance Tripping, U.S. Department of Energy, 2012 (DOE/GO-102012-3731)."""

from __future__ import annotations

import pytest

from diagnose.physics.motor_supply import CODE_LETTERS, code_letter_figure, locked_rotor_of_letter
from diagnose.physics.motors import HORSEPOWER, locked_rotor_current


def test_locked_rotor_example() -> None:
    """100 hp, code letter C (4.0 kVA/hp), 460 V: the sheet prints 502 A."""
    assert locked_rotor_current(100.0 * HORSEPOWER, 4.0, 460.0) == pytest.approx(502.04, abs=0.01)


@pytest.mark.parametrize(
    ("letter", "figure"),
    # Table 1, A to H.
    [("A", 3.15), ("B", 3.55), ("C", 4.0), ("D", 4.5), ("E", 5.0), ("F", 5.6), ("G", 6.3), ("H", 7.1)],
)
def test_code_letters(letter: str, figure: float) -> None:
    assert code_letter_figure(letter) == figure
    assert locked_rotor_of_letter(100.0 * HORSEPOWER, letter, 460.0) == pytest.approx(502.04 * figure / 4.0, abs=0.1)


@pytest.mark.parametrize(("letter", "printed", "true"), [("J", 9.0, 8.0), ("K", 10.0, 9.0), ("L", 11.2, 10.0)])
def test_above_h_the_sheet_is_one_letter_out(letter: str, printed: float, true: float) -> None:
    """It prints an I, which is no code letter: NEC 430.7(B) and MG-1 go from H to J (from memory, high)."""
    assert code_letter_figure(letter) == true != printed
    assert "I" not in CODE_LETTERS
    with pytest.raises(ValueError, match="is no code letter"):
        code_letter_figure("I")
