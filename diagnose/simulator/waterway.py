"""Water through the final rinse: from the building to the jets, flow and pressures."""

from __future__ import annotations

from dataclasses import dataclass

from diagnose.physics.flow import factor_of_series
from diagnose.simulator.parts import RinseLine, Water

__all__ = ["RinseFlow", "held_pressure", "rinse_flow", "supply_pressure"]

_WIDE = 8.0  # passages of stop, strainer, valve and regulator over the jets', sound: judgement
_SUPPLY_EFFECT = 0.15  # of each psi over 80 psi before it that a regulator lets through: judgement


@dataclass(frozen=True)
class RinseFlow:
    """Flow of the rinse, [m3/s], and pressures, [Pa gauge]: at the jets, before the regulator, at the stop valve.

    `robbed` is what leaves behind the booster for a tank, [m3/s].
    """

    flow: float
    jets: float
    before: float
    supply: float
    robbed: float = 0.0


def rinse_flow(water: Water, rinse: RinseLine, open_share: float, other_draw: float = 0.0) -> RinseFlow:
    """The flow with the rinse valve open by a share of its passage, while `other_draw`, [m3/s], fills a tank.

    The jets pass `factor * sqrt(pressure)`; everything before them does likewise in series; the regulator holds its
    set pressure less its droop as long as it is offered that much.
    """
    arms = rinse.jets * (rinse.jets_open * rinse.jets_wear + rinse.cap_off) if open_share > 1e-6 else 0.0
    jets = arms + rinse.jets * rinse.robbed
    static = supply_pressure(water, other_draw)
    nothing = RinseFlow(0.0, 0.0, static, static)
    if jets <= 0.0 or static <= 0.0:
        return nothing
    wide = _WIDE * rinse.jets
    narrow = [
        water.factor,
        wide * max(water.stop_open, 1e-6),
        wide * max(water.strainer_open, 1e-6),
        wide * max(rinse.strainer_open, 1e-6),
        wide * max(rinse.valve_opens if open_share >= 1.0 else open_share if arms > 0.0 else 1.0, 1e-6),
        wide * max(rinse.regulator_open, 1e-6),
    ]
    before = factor_of_series(narrow)
    free = factor_of_series([before, jets]) * static**0.5
    flow = free if rinse.regulator_wide else min(free, _regulated(held_pressure(water, rinse), rinse, jets))
    share = arms / jets  # with the rest a tank is filled past the arms
    at_jets = (flow / jets) ** 2 if arms > 0.0 else 0.0
    seen = static - (flow / before) ** 2, static - (flow / water.factor) ** 2
    return RinseFlow(flow * share, at_jets, *seen, robbed=flow * (1.0 - share))


def _regulated(held: float, rinse: RinseLine, jets: float) -> float:
    """Flow at which the jets' pressure equals the regulator's, `set - droop * flow / rated`."""
    slope = rinse.droop / rinse.rated_flow
    # set - slope * q = (q / jets)**2
    root = (slope * jets) ** 2 + 4.0 * max(held, 0.0)
    return float(0.5 * jets * (root**0.5 - slope * jets))


def held_pressure(water: Water, rinse: RinseLine) -> float:
    """What the regulator holds without flow, [Pa]: its setting, and a share of what stands over 80 psi before it."""
    return rinse.set_pressure + _SUPPLY_EFFECT * max(0.0, water.static - 80 * 6894.757)


def supply_pressure(water: Water, draw: float) -> float:
    """Pressure at the stop valve, [Pa], while the building's pipes carry `draw`, [m3/s]."""
    return max(0.0, water.static - (draw / water.factor) ** 2)
