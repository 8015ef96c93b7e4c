"""The panel's rinse thermometer against a second one in the same rinse: which of the two lies, and by how much."""

from __future__ import annotations

import math

from diagnose.formulas import system_of
from diagnose.model import Finding, Reading
from diagnose.rules.bands import normal_share
from diagnose.rules.facts import Facts, Silent
from diagnose.rules.instruments import instrument_of, spread

__all__ = ["compared"]

COMPARED = "rinse_thermometer.compared"
PAIRS = (
    ("rinse_thermometer.panel_reading", "rinse_thermometer.reference_reading"),
    ("rinse_thermometer.panel_reading_chemical", "rinse_thermometer.reference_reading_chemical"),
)
AWAY = 30.0  # K, a thermometer that disagrees may be off by anything up to this; judgement


def compared(facts: Facts) -> Finding | Silent | None:
    """Set the panel's rinse figure against the second thermometer's, read in the same rinse.

    Purpose: a cold or a flashing rinse shows on both thermometers; only one that lies differs from the other.
    The second thermometer's own figure stays to be judged by its band.
    Formula: panel less reference against the errors of both together, √(a² + b²); a thermometer that is off may
    be off by up to 30 C°.
    Source: Food Code 4-203.12 (3 °F for a panel thermometer); errors of instruments; 30 C° is judgement.
    Fires: two_tank_electric_208: rinse_thermometer.panel_reading = 165 F;
      rinse_thermometer.reference_reading = 184 F -> panel_low
    Fires: two_tank_electric_208: rinse_thermometer.panel_reading = 205 F;
      rinse_thermometer.reference_reading = 186 F -> panel_high
    Fires: two_tank_electric_208: rinse_thermometer.panel_reading = 181 F;
      rinse_thermometer.reference_reading = 179 F -> agree
    Fires: single_tank_chemical_208: rinse_thermometer.panel_reading_chemical = 112 F;
      rinse_thermometer.reference_reading_chemical = 129 F -> panel_low
    Silent: two_tank_electric_208: rinse_thermometer.panel_reading = 165 F
    """
    check = facts.check(COMPARED)
    panel = next((r for r in (facts.fresh(mine) for mine, _ in PAIRS) if r is not None), None)
    if check is None or panel is None:
        return None
    second = facts.now(dict(PAIRS)[panel.check])
    if second is None:
        return Silent(f"{check.title}: a second thermometer was not read")
    errors = [_error(facts, reading) for reading in (panel, second)]
    error, off = math.hypot(*errors), panel.value.si - second.value.si
    agree = math.exp(-0.5 * (off / error) ** 2) / (error * math.sqrt(2 * math.pi))
    low, high = normal_share(-off / error - 1) / AWAY, normal_share(off / error - 1) / AWAY
    total = agree + low + high
    weights = {"agree": agree / total, "panel_low": low / total, "panel_high": high / total}
    outcome = max(weights, key=lambda o: weights[o])
    working = _words(facts, panel, second, off)
    return facts.conclude(COMPARED, weights, COMPARED, [panel], [second], working, _SAYS[outcome])


def _error(facts: Facts, reading: Reading) -> float:
    """Standard error of a reading in K."""
    check = facts.check(reading.check)
    assert check is not None  # a reading is of a check of this book
    return spread(check, reading.value, reading) * reading.value.unit.factor


def _words(facts: Facts, panel: Reading, second: Reading, off: float) -> list[str]:
    """Both figures, their difference, and what the two instruments may differ by at most."""
    us = system_of(panel.value.unit) == "us"
    scale, unit = (1.8, "F°") if us else (1.0, "C°")
    widest = 0.0
    for reading in (panel, second):
        check = facts.check(reading.check)
        if check is not None:
            widest += instrument_of(check, reading).accuracy(reading.value) * reading.value.unit.factor
    return [
        f"Panel {panel.value}, second thermometer {second.value}: {off * scale:+.1f} {unit}.",
        f"Sound instruments of these kinds may differ by up to {widest * scale:.1f} {unit}.",
    ]


_SAYS = {
    "agree": "Both thermometers say the same: what they show is the rinse.",
    "panel_low": "The panel reads lower than the rinse is.",
    "panel_high": "The panel reads higher than the rinse is.",
}
