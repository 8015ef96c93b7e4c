"""What burns: pressure along the gas line, flames and what they need, the heat that gets through the wall."""

from __future__ import annotations

import math
from collections.abc import Collection
from dataclasses import dataclass
from functools import lru_cache

from diagnose.simulator.gas_parts import INCH, Burner, GasLine
from diagnose.simulator.plant import Plant

__all__ = [
    "Along",
    "Flame",
    "along",
    "burner_of",
    "burners",
    "flame",
    "inlet_pressure",
    "rest_pressure",
    "taken",
    "why_unlit",
]

_VALVE = 0.28  # of the plate's manifold pressure that the valve loses at rated flow: judgement, 1 inWG of 3.5
_BUBBLES = 0.1  # of the rated flow: with more, gas pushes through water with the whole head of it; judgement
_LEAST = 0.12  # of the plate's manifold pressure: below it no flame stands; judgement
_OPENS_AGAINST = 16.0 * INCH  # Pa, the most against which a gas valve still opens: judgement, over its rated 1/2 psi
# Gas flames, told so that flue loss is proportional to the flue's rise over the room: 10 % are lost as vapour of the
# gross heat, and 1,800 K would lose all (half as much air again as needed); from memory, 400 °F then gives 80 %.
_VAPOUR, _SPAN = 0.10, 1800.0
_LIME = 450.0  # of the wall's own resistance for a metre of lime with steam under it: judgement
_SOOT = 2.0  # of the same, for passages furred shut: judgement
# A burner's own limit at wall and flue cuts it out now and then above this, the more the hotter, [K]: judgement.
_TOO_HOT, _OUT_AT = 650.0, 1350.0
_CLEAN_CO, _RICH_CO, _ENOUGH_AIR = 35.0, 1500.0, 0.85  # ppm, ppm a unit of air missing, air over the sound: judgement


@dataclass(frozen=True)
class Flame:
    """A burner that is called: how it burns, and why not."""

    why: str  # "" where it burns; air | spark | valve | gas | aired | proof
    alight: float  # share of the time
    manifold: float  # Pa while it burns
    share: float  # gas over the rated while it burns
    trough: float  # the same at the least, where its pressure swings
    heat: float  # W into the water, over time
    flue: float  # K
    carbon_monoxide: float  # ppm of air-free flue gas

    @property
    def burns(self) -> bool:
        return self.why == "" and self.alight > 0.0

    @property
    def heat_alight(self) -> float:
        """W into the water while it burns."""
        return self.heat / self.alight if self.alight > 0.0 else 0.0


def burner_of(plant: Plant, name: str) -> Burner | None:
    """The burner of `booster` or of a tank; none where it has another heat."""
    return (plant.booster.heater if name == "booster" else plant.tanks[name].heater).burner


def burners(plant: Plant) -> dict[str, Burner]:
    """Every burner by name."""
    found = {name: burner_of(plant, name) for name in ("booster", *plant.tanks)}
    return {name: burner for name, burner in found.items() if burner is not None}


def rest_pressure(line: GasLine) -> float:
    """At the valves with nothing flowing, [Pa]."""
    return 0.0 if line.off else line.supply + line.lockup


@dataclass(frozen=True)
class Along:
    """Pressures along the gas line, [Pa]."""

    branch: float  # ahead of strainer and cock
    inlet: float  # at the burners' valves
    strainer: float  # lost in the strainer, and
    cock: float  # in cock and connector
    swing: float  # by which it swings through water


def inlet_pressure(plant: Plant, firing: Collection[str], others: bool = True) -> float:
    """At the valves' inlet while these burners fire, and the other appliances or not, [Pa]."""
    line = plant.fuel.gas
    found = burners(plant)
    rated = sum(b.input for b in found.values())
    if line.off or not rated:
        return 0.0
    own = line.strainer / line.strainer_open**2 + line.cock / line.cock_open**2
    jets = tuple((found[n].bore * found[n].jets_open, found[n].manifold, found[n].input / rated) for n in firing)
    others_flow = line.others if others else 0.0
    nominal = plant.plate["gas_pressure"]
    return _inlet(line.supply, line.branch, own, line.slug, line.sinks, others_flow, jets, nominal)


def along(plant: Plant, firing: Collection[str], others: bool = True) -> Along:
    """Pressures along the line while these burners fire."""
    line, found = plant.fuel.gas, burners(plant)
    inlet = inlet_pressure(plant, firing, others)
    rated, nominal = sum(b.input for b in found.values()), plant.plate["gas_pressure"]
    flow = 0.0
    for each in (found[n] for n in firing):
        area = each.bore * each.jets_open
        flow += area * math.sqrt(_manifold(inlet, area, each.manifold, nominal) / nominal) * each.input / rated
    strainer = line.strainer * (flow / line.strainer_open) ** 2
    cock = line.cock * (flow / line.cock_open) ** 2
    return Along(inlet + strainer + cock, inlet, strainer, cock, line.slug * min(1.0, flow / _BUBBLES))


@lru_cache(maxsize=4096)
def _inlet(
    supply: float,
    branch: float,
    own: float,
    slug: float,
    sinks: float,
    others: float,
    jets: tuple[tuple[float, float, float], ...],
    rated: float,
) -> float:
    """By halving: what flows falls with the pressure lost, and what is lost rises with what flows."""
    low, high = 0.0, supply
    for _ in range(28):
        inlet = (low + high) / 2
        flow = sum(area * math.sqrt(_manifold(inlet, area, held, rated) / rated) * part for area, held, part in jets)
        # What others burn falls with their pressure as soon as that is short for their own regulators.
        beside = others * math.sqrt(min(1.0, (inlet + own * flow**2) / (1.3 * rated)))
        lost = sinks * (flow + beside) + branch * (flow + beside) ** 2 + own * flow**2
        lost += slug / 2 * min(1.0, flow / _BUBBLES)
        low, high = (inlet, high) if supply - lost > inlet else (low, inlet)
    return (low + high) / 2


def _manifold(inlet: float, area: float, held: float, rated: float) -> float:
    """Behind the valve, [Pa]: what its regulator holds, or what the open valve leaves of the inlet."""
    return min(held * rated, inlet / (1.0 + _VALVE * area**2))


def why_unlit(plant: Plant, name: str) -> tuple[str, float]:
    """What keeps a burner that is called from burning, "" if nothing, and the share of time it burns."""
    burner, line = burner_of(plant, name), plant.fuel.gas
    if burner is None:
        return "none", 0.0
    if burner.draught - burner.hoods_draw < 1.0:
        return "air", 0.0
    if line.off:
        return "gas", 0.0
    if burner.spark < 0.5:
        return "spark", 0.0
    if not burner.valve_works or rest_pressure(line) > _OPENS_AGAINST:
        return "valve", 0.0
    if line.aired > 0.0:
        return "aired", 0.0
    if burner.proved < 1.0:  # a signal near the least holds now and then
        return "proof", 0.35 * max(0.0, (burner.proved - 0.6) / 0.4)
    return "", 1.0


def flame(plant: Plant, name: str, firing: Collection[str], water: float, others: bool = True) -> Flame:
    """How a burner that is called burns, together with those `firing`; `water` is the temperature at its wall, [K]."""
    burner = burner_of(plant, name)
    why, alight = why_unlit(plant, name)
    room = plant.air.room
    if burner is None or (why and alight <= 0.0):
        return Flame(why, 0.0, 0.0, 0.0, 0.0, 0.0, room + 0.3 * max(0.0, water - room), 0.0)
    rated = plant.plate["gas_pressure"]
    area = burner.bore * burner.jets_open
    lit = [n for n in {*firing, name} if why_unlit(plant, n)[1] > 0.0]
    found = along(plant, sorted(lit), others)
    held = _manifold(found.inlet, area, burner.manifold, rated)
    least = _manifold(max(0.0, found.inlet - found.swing / 2), area, burner.manifold, rated)
    if held < _LEAST * rated:
        return Flame("gas", 0.0, 0.0, 0.0, 0.0, 0.0, room + 0.3 * max(0.0, water - room), 0.0)
    share = area * math.sqrt(held / rated)
    taken_up, flue = taken(burner, share, water, room)
    lacking = max(0.0, _ENOUGH_AIR - burner.air / share)
    if flue > _TOO_HOT:
        alight *= max(0.1, 1.0 - (flue - _TOO_HOT) / (_OUT_AT - _TOO_HOT))
    heat = burner.input * share * taken_up * alight
    return Flame(why, alight, held, share, area * math.sqrt(least / rated), heat, flue, _CLEAN_CO + _RICH_CO * lacking)


def taken(burner: Burner, share: float, water: float, room: float) -> tuple[float, float]:
    """Share of a burner's heat that the water takes, and the flue's temperature, [K], at a share of its rated gas.

    The gases cool towards the water by exp(-NTU); the wall's NTU is found from the clean efficiency with water 50 K
    over the room. Lime and soot add to its resistance; less gas stays longer.
    """
    hot = (1.0 - _VAPOUR) * _SPAN
    sound = ((1.0 - _VAPOUR - burner.case_loss - burner.efficiency) * _SPAN - 50.0) / (hot - 50.0)
    units = -math.log(sound) / (1.0 + _LIME * burner.lime + _SOOT * burner.soot) / max(share, 0.05) ** 0.3
    above = water - room
    flue = above + (hot - above) * math.exp(-units)
    return max(0.0, 1.0 - _VAPOUR - burner.case_loss - flue / _SPAN), room + flue
