"""The wash pump's pressure and its motor's current, judged together."""

from __future__ import annotations

import math
from dataclasses import dataclass

from diagnose.formulas import said, system_of
from diagnose.model import Finding, Reading
from diagnose.physics.motors import nema_unbalance
from diagnose.physics.pumps import pressure_at_speed
from diagnose.rules.bands import band_weights, bands_of, limit_share, normal_share
from diagnose.rules.facts import Expected, Facts, Silent
from diagnose.rules.instruments import spread
from diagnose.rules.pump_motor import motor_of
from diagnose.rules.told import plates_told
from diagnose.units import Quantity, UnitError, show_number

__all__ = ["duty", "expected_pressure"]

PRESSURE = "pump.pressure"
AMPS = ("pump_motor.line_amps", "pump_motor.line_amps_single")
# A wash pump takes 70 to 100 % of its nameplate; beside a pressure that says the same, under 70 % is low already.
LOW_LOAD = 0.70
PLATE = 0.04  # what plate pressure, nameplate and the usual load of a pump are good for together; judgement
ONE_SIDED = 0.5  # high pressure with current in order: half way between choked jets and a strong pump; judgement


@dataclass(frozen=True)
class _Levels:
    """Weights of low, in order and high."""

    low: float
    good: float
    high: float


def duty(facts: Facts) -> Finding | Silent | None:
    """Judge pressure at the manifold and current of the pump's motor together.

    Purpose: a centrifugal pump takes more power the more water it moves, so the two together say where the
    water went: low and low, it moves little (backwards, air, blocked suction); high and low, jets or manifold
    choked; low and high, it runs out through an open end; low with current in order, a worn or slow wheel.
    Formula: p / p_plate against the bands of the pressure check; I / nameplate against 70 % and the limit
    motor_load; weights multiplied. Speed: p2 = p1 (n2 / n1)².
    Source: affinity laws and the usual curve of a centrifugal pump; thresholds judgement. Currents that differ
    by more than the limit motor_current_unbalance speak of the supply and are left to their own rule.
    Fires: two_tank_electric_208 (pump_pressure = 8 psi, wash_motor_amps = 6.8 A): pump.pressure = 4 psi;
      pump_motor.line_amps = 3.6 3.6 3.7 A -> moves_little
    Fires: two_tank_electric_208 (pump_pressure = 8 psi, wash_motor_amps = 6.8 A): pump.pressure = 10.8 psi;
      pump_motor.line_amps = 4.1 4.2 4.1 A -> choked
    Silent: two_tank_electric_208 (pump_pressure = 8 psi): pump.pressure = 4 psi
    """
    name = "pump.duty"
    check, pressure = facts.check(name), facts.fresh(PRESSURE)
    amps = facts.fresh(AMPS[0]) or facts.fresh(AMPS[1])
    if check is None or pressure is None:
        return None
    if amps is None:
        return Silent(f"{check.title}: the motor's current was not read")
    if motor_of(facts, "pump_motor").plate != "wash_motor_amps":
        return Silent(f"{check.title}: the current is that of the power-rinse pump, the pressure the wash pump's")
    try:
        levels = _pressure_levels(facts, pressure), _load_levels(facts, amps)
    except (LookupError, UnitError, ValueError) as error:
        return Silent(f"{check.title}: {error}")
    weights = _weights(*levels)
    outcome = max(weights, key=lambda o: weights[o])
    working = [*_words(facts, pressure, amps, outcome), *facts.assumed("pump_pressure", "wash_motor_amps")]
    return facts.conclude(name, weights, name, [pressure, amps], (), working, _SAYS[outcome])


def _weights(p: _Levels, load: _Levels) -> dict[str, float]:
    return {
        # Current a little low beside a pressure in order is a light day; beside a high pressure it is a sign.
        "as_plate": p.good * (load.good + load.low) + p.high * load.good * ONE_SIDED,
        "moves_little": p.low * load.low,
        "choked": p.high * (load.low + load.good * ONE_SIDED),
        "runs_out": p.low * load.high,
        "weak_wheel": p.low * load.good,
        "drags": p.good * load.high,
        "overdriven": p.high * load.high,
    }


def _pressure_levels(facts: Facts, reading: Reading) -> _Levels:
    check = facts.check(PRESSURE)
    bands = bands_of(facts.book, facts.machine, check, reading.value.unit) if check else []
    if check is None or not bands:
        raise LookupError("needs the wash pressure of the plate")
    levels = band_weights(bands, reading.value.value, spread(check, reading.value, reading))
    return _Levels(levels.get("low", 0.0), levels.get("good", 0.0), levels.get("high", 0.0))


def _load_levels(facts: Facts, reading: Reading) -> _Levels:
    """Load of the motor; ValueError where the currents are unequal, or it stands."""
    check, plate = facts.check(reading.check), facts.plate("wash_motor_amps")
    if check is None or plate is None or plate.si <= 0:
        raise LookupError("needs the full-load amps of the wash pump")
    seen = [v.si for v in reading.values.values()]
    if max(seen) < 0.05 * plate.si:
        raise ValueError("the motor was not running")
    if len(seen) == 3 and nema_unbalance(seen) > limit_share(facts, "motor_current_unbalance", "high"):
        raise ValueError("the three currents are unequal: they say something else first")
    mean = Quantity.of_si(sum(seen) / len(seen), "current", "A")
    load = mean.si / plate.si
    sigma = math.hypot(spread(check, mean, reading) / plate.si, PLATE)
    low = normal_share((LOW_LOAD - load) / sigma)
    high = normal_share((load - limit_share(facts, "motor_load", "high")) / sigma)
    return _Levels(low, max(1.0 - low - high, 0.0), high)


def _words(facts: Facts, pressure: Reading, amps: Reading, outcome: str) -> list[str]:
    wanted, full = facts.plate("pump_pressure"), facts.plate("wash_motor_amps")
    if wanted is None or full is None:
        return []
    seen = [v.si for v in amps.values.values()]
    share, load = pressure.value.si / wanted.si, sum(seen) / len(seen) / full.si
    words = [
        f"Manifold {pressure.value}: {share * 100:.0f} % of the plate's {wanted}.",
        f"Motor {', '.join(show_number(i) for i in seen)} A: {load * 100:.0f} % of the {full} nameplate.",
    ]
    if outcome in ("weak_wheel", "moves_little") and abs(share - (50 / 60) ** 2) < 0.04:
        system = system_of(pressure.value.unit)
        words += said("pump-pressure-at-speed", system, pressure=wanted.si, speed=60.0, new_speed=50.0)
        words.append("So much is left of a 60 Hz pump on 50 Hz: compare the motor's plate with the pump's.")
    return words


def expected_pressure(facts: Facts, check: str) -> Expected | None:
    """The band round the plate's wash pressure, and what 50 Hz would leave of it where that is the supply."""
    entry, plate, hertz = facts.check(check), facts.plate("pump_pressure"), facts.plate("frequency")
    if entry is None or plate is None:
        return None
    try:
        bands = bands_of(facts.book, facts.machine, entry, plate.unit)
    except (LookupError, UnitError):
        return None
    good = next((b for b in bands if entry.outcomes[b.outcome].good and b.low and b.high), None)
    if good is None or good.low is None or good.high is None:
        return None
    low, high = Quantity(good.low.value, plate.unit), Quantity(good.high.value, plate.unit)
    line = f"{show_number(low.value, 3)} to {show_number(high.value, 3)} {plate.unit.symbol} (plate {plate})"
    working = [*plates_told(facts, "pump_pressure", "frequency")]
    working += [
        f"{show_number(plate.value)} {plate.unit.symbol} × {end.value / plate.value:.2f} = {show_number(end.value)} "
        f"{plate.unit.symbol}: {word} that counts as in order (judgement)."
        for end, word in ((low, "the least"), (high, "the most"))
    ]
    if hertz is not None and hertz.si < 60:
        left = Quantity.of_si(pressure_at_speed(plate.si, 60.0, hertz.si), "pressure", plate.unit.symbol)
        working.append(f"The same pump made for 60 Hz would leave {show_number(left.value, 3)} {plate.unit.symbol}.")
    return Expected((line,), low, high, facts.assumed("pump_pressure"), "the plate", tuple(working))


_SAYS = {
    "as_plate": "Pump and motor do what their plates say: look where the water goes, not at the pump.",
    "moves_little": "It moves little water: backwards, sucking air, blocked at the suction, or the wheel loose.",
    "choked": "It works against too much: jets or manifold are choked.",
    "runs_out": "Water runs out somewhere else than through the jets: an end plug, an arm, a jet, a joint.",
    "weak_wheel": "It turns with its usual load and yet makes too little pressure: a worn wheel, or too few turns.",
    "drags": "The pressure is there and the motor draws too much: drag, bearings, or the motor itself.",
    "overdriven": "It moves and draws more than the plate: the wheel is too large or turns too fast.",
}
