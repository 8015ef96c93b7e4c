"""Starts an hour that an overload bears, beside the band of starts."""

from __future__ import annotations

import pytest

from diagnose.model import Machine, Reading, load_book
from diagnose.rules import expected
from diagnose.units import parse_quantity

BOOK = load_book()
STARTS = "motor_overload.starts_count"


def told(amps: str, **plate: str) -> tuple[str, ...]:
    here = Machine("under test", BOOK.machines["two_tank_electric_208"], {"wash_motor_amps": "6.8 A"} | plate)
    values = {f"L{n}": parse_quantity(f"{a} A", "current") for n, a in enumerate(amps.split(), 1)}
    read = [Reading("amps", "pump_motor.line_amps", values)] if values else []
    shown = expected(BOOK, here, read, STARTS)
    assert shown is not None
    return (*shown.lines, *shown.working)


@pytest.mark.parametrize(
    ("amps", "plate", "borne"),
    [
        ("6.0 6.0 6.0", "6.8 A", "49"),  # (7.616² − 6²) × 3600 / (40.8² − 6²)
        ("6.8 6.8 6.8", "6.8 A", "26"),
        ("6.0 6.0 6.0", "5.6 A", "11"),  # the same current on a smaller plate leaves no margin
    ],
)
def test_starts_borne(amps: str, plate: str, borne: str) -> None:
    lines = told(amps, wash_motor_amps=plate)
    assert any(f"bears about {borne} an hour" in line for line in lines)


@pytest.mark.parametrize("amps", ["", "8 8 8"])
def test_nothing_without_currents_or_without_margin(amps: str) -> None:
    assert not any("bears about" in line for line in told(amps))
