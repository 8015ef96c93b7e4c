"""How much steam rises towards each end of the machine."""

from __future__ import annotations

from collections.abc import Mapping
from functools import lru_cache

from diagnose.physics.moist_air import saturation_pressure
from diagnose.simulator.plant import Plant
from diagnose.simulator.waterway import RinseFlow

__all__ = ["PREWASH", "fog", "steam_rates"]

PREWASH = 335.5  # K, 144 °F: what running over keeps an unheated pre-wash tank at; judgement

_IN_HAND = 0.8  # of the wanted exhaust: what a sound machine's steam takes; judgement
_AT_REST = 0.25  # of the running machine's steam, sprays off; judgement
_WET_WALLS = 0.5  # of the rinse's steam goes on between racks from wet walls and ware: judgement
_FLASH = 363.15  # K, 194 °F: above it the rinse flashes (FDA Food Code 4-501.112 sets it as the maximum)
_CARRIES = 0.28  # kg of vapour in a cubic metre of saturated air at a tank's temperature, 160 °F: from memory
_THUMPS = 7.0  # judgement
_FLASH_RATE = 0.12  # more of the sound rate for each kelvin above; judgement


@lru_cache(maxsize=64)
def _sound(temperature: float) -> float:
    """Vapour pressure at one of the plate's temperatures, which come again and again, [Pa]."""
    return saturation_pressure(temperature)


def steam_rates(plant: Plant, temperatures: Mapping[str, float], rinse: RinseFlow, running: bool) -> dict[str, float]:
    """Steam rising towards entrance and exit with sound curtains, [m3/s]: with the vapour pressure of the water there.

    The entrance sees the first tank, the exit the last one and the final rinse.
    """
    names = list(plant.tanks)
    first, last = names[0], names[-1]
    entrance = _strength(plant, first, temperatures[first])
    fresh = temperatures["manifold"]
    sprayed = rinse.flow / plant.rinse.rated_flow
    unheated = plant.plate.has(booster="none")  # building water, some kelvin over what the plate wants
    sound = _sound(plant.plate["rinse_temperature"] + (11.0 if unheated else 3.0))
    wet = max(sprayed, _WET_WALLS if running else 0.0)
    final = wet * saturation_pressure(min(fresh, 372.0)) / sound + sprayed * _FLASH_RATE * 3.0 * max(
        0.0, fresh - _FLASH
    )
    exit_ = 0.6 * _strength(plant, last, temperatures[last]) + 0.4 * final
    share = _IN_HAND * (1.0 if running else _AT_REST)
    return {
        "entrance": share * plant.air.wanted["entrance"] * entrance,
        "exit": share * plant.air.wanted["exit"] * exit_,
    }


def fog(steam: float) -> float:
    """Saturated air that carries so much steam, [kg/s] to [m3/s]; it comes in thumps, each far over the mean.

    >>> round(fog(0.01), 3)
    0.25
    """
    return steam / _CARRIES * _THUMPS


def _strength(plant: Plant, tank: str, temperature: float) -> float:
    """Vapour pressure over that at the tank's sound setting."""
    sound = plant.plate["rinse_tank_temperature"] if tank == "rinse" else plant.plate["wash_temperature"]
    aim = PREWASH if plant.tanks[tank].heater.power <= 0.0 else sound + 3.5
    return saturation_pressure(min(temperature, 372.0)) / _sound(aim)
