"""Filling a tank: the minutes against volume, flow and pressure, and the supply at rest against filling."""

from __future__ import annotations

import math
from dataclasses import dataclass

from diagnose.formulas import said, system_of
from diagnose.model import Finding, Reading
from diagnose.physics.filling import fill_time, fill_time_with_loss
from diagnose.physics.flow import flow_at_pressure
from diagnose.rules.bands import normal_share
from diagnose.rules.facts import Expected, Facts, Silent
from diagnose.rules.instruments import spread
from diagnose.rules.told import limit_si, plates_told, reading_told, shown
from diagnose.units import Quantity, parse_quantity

__all__ = ["expected_fill_pressure", "expected_fill_time", "fill_minutes", "fill_pressure"]

TIME, PAIR, LOSS = "level_control.fill_time", "level_control.fill_pressure", "drain_overflow.overflow_rate"
FILL = 0.12  # flow of one sound fill against the plate's; judgement
SLOW_FROM = 0.35  # takes this much longer than computed: slow; judgement
SUPPLY_LEAST = 0.75  # of the pressure the fill is meant for: 87 % of the flow; judgement
MINUTE = parse_quantity("1 min", "time").unit
_PLATE = ("wash_tank_volume", "fill_flow", "fill_pressure")


@dataclass(frozen=True)
class _Fill:
    """What the fill should do here: SI flow and time, relative error, and what that rests on."""

    volume: float
    rated: float
    flow: float
    error: float
    pressure: float | None = None
    pair: Reading | None = None

    @property
    def time(self) -> float:
        return fill_time(self.volume, self.flow)

    @property
    def rated_time(self) -> float:
        return fill_time(self.volume, self.rated)


def _fill(facts: Facts) -> _Fill | None:
    """Volume and flow of the plate, the flow brought to the pressure that was read while filling."""
    volume, flow, meant = (facts.plate(name) for name in _PLATE)
    if volume is None or flow is None or volume.si <= 0 or flow.si <= 0:
        return None
    pair, check = facts.now(PAIR), facts.check(PAIR)
    filling = pair.values.get("filling") if pair is not None else None
    if filling is None or check is None or meant is None or meant.si <= 0 or filling.si <= 0:
        return _Fill(volume.si, flow.si, flow.si, FILL)
    gauge = spread(check, filling, pair) / filling.value
    now = flow_at_pressure(flow.si, meant.si, filling.si)
    return _Fill(volume.si, flow.si, now, math.hypot(FILL, gauge / 2), filling.si, pair)


def fill_minutes(facts: Facts) -> Finding | Silent | None:
    """Judge the minutes a tank takes to fill by its volume and by the flow that the pressure there drives.

    Purpose: twelve minutes are right for one tank and a fault for another; and slow with little pressure is the
    supply, slow with full pressure the fill itself or water lost meanwhile.
    Formula: t = V / Q, Q = Q_plate √(P / P_plate), less what runs away; a third longer and more is slow.
    Source: conservation of volume; square-root law of openings; 35 % is judgement.
    Fires: two_tank_electric_208 (wash_tank_volume = 28 gal, fill_flow = 6 gpm): level_control.fill_time = 12 min
      -> too_slow
    Fires: two_tank_electric_208 (wash_tank_volume = 72 gal, fill_flow = 6 gpm): level_control.fill_time = 12 min
      -> as_computed
    Fires: two_tank_electric_208 (wash_tank_volume = 28 gal, fill_flow = 6 gpm, fill_pressure = 30 psi):
      level_control.fill_pressure = 55 6 psi; level_control.fill_time = 11 min -> slow_by_supply
    Silent: two_tank_electric_208: level_control.fill_pressure = 55 32 psi
    """
    reading, check = facts.fresh(TIME), facts.check(TIME)
    if reading is None or check is None:
        return None
    fill = _fill(facts)
    if fill is None:
        return Silent(f"{check.title}: needs the tank's volume and the flow of its fill")
    if reading.value.si <= 0:
        return Silent(f"{check.title}: no time was read")
    loss, known = facts.now(LOSS), fill.pair is not None
    longer = _longer(facts, reading, fill, fill.time)
    slow = _longer(facts, reading, fill, fill.rated_time)
    unexplained = _longer(facts, reading, fill, _time_with_loss(fill, loss))
    weights = {
        "as_computed": (1 - longer) * (1 - slow if known else 1.0),
        "slow_by_supply": (1 - longer) * slow if known else 0.0,
        "slow_by_loss": max(longer - unexplained, 0.0),
        "slow_by_fill" if known else "too_slow": unexplained,
    }
    share = reading.value.si / fill.time * 100
    working = [
        *_computed(facts, fill, loss),
        f"Read: {reading.value} = {share:.0f} % of {shown(fill.time, 'time', 'min')}; up to 135 % they agree.",
        *facts.assumed(*(_PLATE if known else _PLATE[:2])),
    ]
    says = _SAYS[max(weights, key=lambda o: weights[o])]
    return facts.conclude(TIME, weights, TIME, [reading], [fill.pair, loss], working, says)


def _longer(facts: Facts, reading: Reading, fill: _Fill, wanted: float) -> float:
    """How sure it is that the time read is a third longer than `wanted`."""
    check = facts.check(TIME)
    if check is None or not math.isfinite(wanted):
        return 0.0
    own = spread(check, reading.value, reading) / reading.value.value
    ratio = reading.value.si / wanted
    return normal_share((ratio - 1 - SLOW_FROM) / (math.hypot(own, fill.error) * max(ratio, 1.0)))


def _time_with_loss(fill: _Fill, loss: Reading | None) -> float:
    """The time with what runs away taken off the flow; without end where as much runs away as enters."""
    lost = loss.value.si if loss is not None else 0.0
    return fill_time_with_loss(fill.volume, fill.flow, lost) if lost < fill.flow else math.inf


def _computed(facts: Facts, fill: _Fill, loss: Reading | None = None) -> list[str]:
    """The computation line by line, in the units of the plate."""
    plate, meant = facts.plate("wash_tank_volume"), facts.plate("fill_pressure")
    system = system_of(plate.unit) if plate is not None else "us"
    lines: list[str] = []
    if fill.pressure is not None and meant is not None:
        lines += said(
            "rinse-flow-at-pressure",
            system,
            rated_flow=fill.rated,
            rated_pressure=meant.si,
            pressure=fill.pressure,
        )
    lines += said("fill-time", system, volume=fill.volume, flow=fill.flow)
    lost = loss.value.si if loss is not None else 0.0
    if 0.0 < lost < fill.flow:
        lines += said("fill-time-with-loss", system, volume=fill.volume, flow=fill.flow, loss=lost)
    elif loss is not None and lost > 0:
        lines.append(f"{loss.value} runs away, as much as enters: it never fills.")
    return lines


def expected_fill_time(facts: Facts, check: str) -> Expected | None:
    """Minutes from the plate's volume and the flow at the pressure read, or at the plate's."""
    fill = _fill(facts)
    if fill is None:
        return None
    minutes = Quantity(MINUTE.from_si(fill.time), MINUTE)
    most = Quantity(minutes.value * (1 + SLOW_FROM), MINUTE)
    lines = _computed(facts, fill, facts.now(LOSS))
    names = _PLATE if fill.pair is not None else _PLATE[:2]
    working = (
        *plates_told(facts, *names),
        *reading_told(facts, fill.pair),
        *reading_told(facts, facts.now(LOSS)),
        *lines,
        "One fill differs from another by 12 %; a third longer counts as slow (judgement).",
    )
    line = f"about {shown(fill.time, 'time', 'min', 2)} from empty, drain shut"
    return Expected((line,), minutes, most, facts.assumed(*names), "volume over flow; Q = K √P and the plate", working)


def fill_pressure(facts: Facts) -> Finding | Silent | None:
    """Judge the supply of the fill by a pair of pressures, at rest and filling.

    Purpose: a full figure at rest says nothing of strainer and stop; only what stands there while water flows
    counts, and the pair tells whether the main is weak or something on the way chokes.
    Formula: least = 0.75 P_plate while filling; at rest under P_plate it is the main, over the limit too much for a
    branch and its fill valve; K = Q / √(P_rest - P).
    Source: square-root law of openings; 0.75 is judgement; limit of the supply's pressure.
    Fires: two_tank_electric_208 (fill_pressure = 30 psi): level_control.fill_pressure = 60 6 psi -> falls_away
    Fires: two_tank_electric_208 (fill_pressure = 30 psi): level_control.fill_pressure = 60 40 psi -> holds
    Fires: two_tank_electric_208 (fill_pressure = 30 psi): level_control.fill_pressure = 118 90 psi -> too_high
    Silent: two_tank_electric_208: level_control.fill_time = 6 min
    """
    reading, check, meant = facts.fresh(PAIR), facts.check(PAIR), facts.plate("fill_pressure")
    if reading is None or check is None:
        return None
    if meant is None or meant.si <= 0:
        return Silent(f"{check.title}: needs the pressure the fill is meant for")
    rest, filling = reading.values["at rest"], reading.values["filling"]
    errors = [spread(check, value, reading) * value.unit.factor for value in (rest, filling)]
    if filling.si - rest.si > 3 * math.hypot(*errors):
        return Silent(f"{check.title}: more while filling than at rest cannot be; at rest comes first")
    holds = normal_share((filling.si - SUPPLY_LEAST * meant.si) / errors[1])
    weak = normal_share((meant.si - rest.si) / errors[0])
    over = _over(facts, rest, errors[0])
    weights = {
        "too_high": holds * over,
        "holds": holds * (1 - over),
        "rest_low": (1 - holds) * weak,
        "falls_away": (1 - holds) * (1 - weak),
    }
    working = [
        f"Meant for {meant} flowing; three quarters of it, "
        f"{shown(SUPPLY_LEAST * meant.si, 'pressure', rest.unit.symbol)}, is the least here.",
        *_lost_on_the_way(facts, rest, filling),
        *_too_much(facts, rest),
        *facts.assumed("fill_pressure"),
    ]
    return facts.conclude(
        PAIR, weights, PAIR, [reading], (), working, _SUPPLY_SAYS[max(weights, key=weights.__getitem__)]
    )


def _lost_on_the_way(facts: Facts, rest: Quantity, filling: Quantity) -> list[str]:
    """What pipe, strainer and stop take, and the flow factor that is left of them, with a sound fill."""
    fill = _fill(facts)
    lost = shown(max(rest.si - filling.si, 0.0), "pressure", rest.unit.symbol)
    words = [f"{rest} at rest − {filling} filling = {lost} lost on the way."]
    if fill is not None and fill.pair is not None and rest.si > filling.si:
        system = system_of(rest.unit)
        words += said("supply-restriction", system, static=rest.si, flowing=filling.si, flow=fill.flow)
    return words


def _over(facts: Facts, rest: Quantity, error: float) -> float:
    """How sure it is that more stands there at rest than a branch should; never, where no limit is known."""
    try:
        return normal_share((rest.si - limit_si(facts, "supply_pressure", "high", rest.unit)) / error)
    except LookupError:
        return 0.0


def _too_much(facts: Facts, rest: Quantity) -> list[str]:
    """Codes ask for a reducing valve above a pressure at rest."""
    try:
        most = limit_si(facts, "supply_pressure", "high", rest.unit)
    except LookupError:
        return []
    figure = shown(most, "pressure", rest.unit.symbol)
    return [f"{rest} at rest is more than a branch should stand: a reducing valve is wanted above {figure}."] * (
        rest.si > most
    )


def expected_fill_pressure(facts: Facts, check: str) -> Expected | None:
    """The least that should stand ahead of the fill while it fills."""
    meant = facts.plate("fill_pressure")
    if meant is None or meant.si <= 0:
        return None
    least = Quantity(meant.value * SUPPLY_LEAST, meant.unit)
    working = (
        *plates_told(facts, "fill_pressure"),
        f"0.75 × {meant} = {least}: 87 % of the flow passes there, √0.75 (the 0.75 is judgement).",
        "At rest it must stand higher; how much is lost on the way is the difference.",
    )
    line = f"{least} or more while filling; at rest higher"
    return Expected((line,), least, None, facts.assumed("fill_pressure"), "plate and judgement", working)


_SAYS = {
    "as_computed": "It fills in the time that volume and flow make.",
    "too_slow": "It takes longer than volume and flow make: read the pressure ahead of the fill to say why.",
    "slow_by_supply": "It is slow, and the little pressure there explains it: look upstream, not at the fill valve.",
    "slow_by_loss": "It is slow because water runs away while it fills.",
    "slow_by_fill": "It takes longer than the pressure there makes it: the fill itself, or water lost meanwhile.",
}
_SUPPLY_SAYS = {
    "holds": "Enough stands ahead of the fill while it fills.",
    "falls_away": "Good at rest and gone when it flows: something on the way chokes.",
    "too_high": "Enough while it fills, but more at rest than a branch should stand: a fill valve may not hold it.",
    "rest_low": "Even at rest it is short: it is the main.",
}
