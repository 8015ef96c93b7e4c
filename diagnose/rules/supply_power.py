"""Supply volts at the machine: level, unbalance, and a line that is lost."""

from __future__ import annotations

from diagnose.model import Finding, Reading
from diagnose.physics.motors import negative_sequence_factor, nema_unbalance, temperature_rise_factor
from diagnose.rules.bands import limit_share, normal_share
from diagnose.rules.facts import Expected, Facts, Silent
from diagnose.rules.instruments import spread
from diagnose.rules.told import plates_told
from diagnose.units import Quantity, show_number

__all__ = ["expected_volts", "line_volts", "line_volts_single", "unbalance_known"]

UNBALANCE_SPREAD = (
    0.0025  # one meter, read three times: its own error cancels, the swing of the supply stays; judgement
)
LOST_BELOW = 0.85  # both other pairs under this share of the greatest; a turning motor props them up higher; judgement
LOST_PAIR = 0.70  # or one pair under this share: the lost line leans on one of the others; judgement
LOST_SPREAD = 0.03
PHANTOM = 0.5  # single phase: under half the volts there is no supply, only what other loads feed back; judgement


def line_volts(facts: Facts) -> Finding | Silent | None:
    """Judge three line voltages: lost line first, then unbalance, then level.

    Purpose: unbalance by a fraction of a per cent matters, and no band on one voltage sees it.
    Formula: u = largest deviation from the mean / mean (NEMA); level = mean / plate volts.
    Source: 1 % unbalance: DOE tip sheet 7; 90 to 110 % of the plate: DOE tip sheet 9.
    Fires: two_tank_electric_208 (volts = 460 V): supply_power.line_volts = 462 463 455 V -> unbalanced
    Silent: two_tank_electric_208 (volts = 0 V): supply_power.line_volts = 208 207 208 V
    """
    name = "supply_power.line_volts"
    reading, check, plate = facts.fresh(name), facts.check(name), facts.plate("volts")
    if reading is None or check is None:
        return None
    seen = [v.si for v in reading.values.values()]
    if plate is None or plate.si <= 0 or len(seen) != 3:
        return Silent(f"{check.title}: needs the supply volts of the plate and three readings")
    if max(seen) < 0.1 * plate.si:
        return Silent(f"{check.title}: no volts at all; the supply is off, read it with the machine working")
    try:
        least, most = limit_share(facts, "volts_band", "low"), limit_share(facts, "volts_band", "high")
        bear = limit_share(facts, "volts_unbalance", "high")
    except LookupError as error:
        return Silent(f"{check.title}: {error}")
    mean, unbalance = sum(seen) / 3, nema_unbalance(seen)
    middle = Quantity.of_si(mean, "voltage", "V")
    sigma = spread(check, middle, reading) / plate.si
    least_pair, middle_pair = (v / max(seen) for v in sorted(seen)[:2])
    lost = max(
        normal_share((LOST_BELOW - middle_pair) / LOST_SPREAD), normal_share((LOST_PAIR - least_pair) / LOST_SPREAD)
    )
    unequal = normal_share((unbalance - bear) / UNBALANCE_SPREAD)
    level = mean / plate.si
    low, high = normal_share((least - level) / sigma), normal_share((level - most) / sigma)
    weights = {
        "healthy": (1 - lost) * (1 - unequal) * (1 - low - high),
        # Two things at once, unequal and off level: the check has one answer, so each takes half.
        "low": (1 - lost) * low * (1 - unequal / 2),
        "high": (1 - lost) * high * (1 - unequal / 2),
        "unbalanced": (1 - lost) * unequal * (1 - (low + high) / 2),
        "one_line_lost": lost,
    }
    says = _SAYS[max(weights, key=lambda o: weights[o])]
    working = [*_volts_words(seen, mean, unbalance, bear), _level_words(mean, plate, least, most)]
    return facts.conclude(name, weights, name, [reading], (), [*working, *facts.assumed("volts")], says)


def _volts_words(seen: list[float], mean: float, unbalance: float, bear: float) -> list[str]:
    listed = ", ".join(show_number(v) for v in seen)
    far = max(seen, key=lambda v: abs(v - mean))
    words = [
        f"{listed} V: mean {mean:.1f} V; furthest {show_number(far)} V, {abs(far - mean):.1f} V off: "
        f"{unbalance * 100:.2f} % by the NEMA rule; motors bear {bear * 100:g} %."
    ]
    try:
        words.append(
            f"Negative-sequence factor, another measure of the same: {negative_sequence_factor(seen) * 100:.2f} %."
        )
    except ValueError:
        words.append("Three such volts can't stand together in one moment: they changed while being read.")
    if bear < unbalance <= 0.05:
        words.append(f"A motor's winding warms by {(temperature_rise_factor(unbalance) - 1) * 100:.0f} % more on that.")
    return words


def _level_words(mean: float, plate: Quantity, least: float, most: float) -> str:
    return (
        f"Mean is {mean / plate.si * 100:.0f} % of {plate}; {least * 100:g} to {most * 100:g} % is allowed. "
        f"An electric booster gives {(mean / plate.si) ** 2 * 100:.0f} % of its heat there."
    )


def line_volts_single(facts: Facts) -> Finding | Silent | None:
    """Judge the one voltage of a single-phase supply.

    Purpose: low, high, or none but a phantom.
    Formula: share = volts / plate volts against 90 and 110 %.
    Source: DOE tip sheet 9; under half counts as none (judgement).
    Fires: single_tank_electric_240_single_phase (volts = 240 V): supply_power.line_volts_single = 205 V -> low
    Silent: single_tank_electric_240_single_phase (volts = 0 V): supply_power.line_volts_single = 205 V
    """
    name = "supply_power.line_volts_single"
    reading, check, plate = facts.fresh(name), facts.check(name), facts.plate("volts")
    if reading is None or check is None:
        return None
    if plate is None or plate.si <= 0:
        return Silent(f"{check.title}: needs the supply volts of the plate")
    try:
        least, most = limit_share(facts, "volts_band", "low"), limit_share(facts, "volts_band", "high")
    except LookupError as error:
        return Silent(f"{check.title}: {error}")
    level = reading.value.si / plate.si
    sigma = spread(check, reading.value, reading) / plate.si
    none = normal_share((PHANTOM - level) / 0.03)
    low, high = normal_share((least - level) / sigma), normal_share((level - most) / sigma)
    weights = {
        "healthy": (1 - none) * (1 - low) * (1 - high),
        "low": (1 - none) * low,
        "high": (1 - none) * high,
        "none": none,
    }
    says = _SAYS[max(weights, key=lambda o: weights[o])]
    working = [_level_words(reading.value.si, plate, least, most), *facts.assumed("volts")]
    return facts.conclude(name, weights, name, [reading], (), working, says)


def expected_volts(facts: Facts, check: str) -> Expected | None:
    """Plate volts with the band a motor bears, and the unbalance allowed."""
    plate = facts.plate("volts")
    if plate is None or plate.si <= 0:
        return None
    try:
        low, high = (limit_share(facts, "volts_band", end) * plate.si for end in ("low", "high"))
        bear = limit_share(facts, "volts_unbalance", "high") if not check.endswith("_single") else None
    except LookupError:
        return None
    lines = [f"{show_number(low, 3)} to {show_number(high, 3)} V ({plate} supply, ± 10 %)"]
    if bear is not None:
        lines.append(f"all three within {bear * 100:g} % of their mean")
    least, most = (Quantity.of_si(v, "voltage", "V") for v in (low, high))
    working = [
        *plates_told(facts, "volts"),
        f"{show_number(plate.si)} V × {low / plate.si:g} = {show_number(low)} V: the least (DOE tip sheet 9).",
        f"{show_number(plate.si)} V × {high / plate.si:g} = {show_number(high)} V: the most (DOE tip sheet 9).",
    ]
    if bear is not None:
        working.append(f"Largest deviation from the mean over the mean: {bear * 100:g} % at most (DOE tip sheet 7).")
    basis = "DOE tip sheets 7 and 9"
    return Expected(tuple(lines), least, most, facts.assumed("volts"), basis, tuple(working))


def unbalance_known(facts: Facts) -> tuple[float, Reading] | None:
    """The unbalance of the supply volts, if three were read; for motors to consult."""
    reading = facts.known("supply_power.line_volts")
    if reading is None or len(reading.values) != 3 or sum(v.si for v in reading.values.values()) <= 0:
        return None
    return nema_unbalance([v.si for v in reading.values.values()]), reading


_SAYS = {
    "healthy": "The supply volts are in order.",
    "low": "The supply volts are low.",
    "high": "The supply volts are high.",
    "unbalanced": "The three voltages are more unequal than a motor bears.",
    "one_line_lost": "One line has lost the other two.",
    "none": "There are no supply volts here, at most a phantom.",
}
