"""Water that is heated in a closed vessel: how much of it has to find room elsewhere."""

from __future__ import annotations

from diagnose.physics.demand import RefusedError, positive
from diagnose.physics.heat import water_density

__all__ = ["expanded_volume"]


def expanded_volume(volume: float, cold: float, hot: float) -> float:
    """Volume that heated water takes up more than it did cold.

    V_more = V (rho_cold / rho_hot - 1)

    Parameters
    ----------
    volume : float
        Water held, [m3], 1e-3 to 0.2
    cold : float
        Temperature before heating, [K], 285 to 340
    hot : float
        Temperature after heating, [K], 341 to 363

    Returns
    -------
    float
        Volume that must go elsewhere, [m3]

    Notes
    -----
    The vessel's own growth is left out: steel takes back less than a tenth of it. With no way back into the main,
    no expansion tank and a tight rinse valve this much leaves by the relief valve, each time the water is heated.

    Examples
    --------
    >>> round(expanded_volume(0.0114, 333.15, 361.15) * 1e6)  # 3 gal from 140 to 190 °F, in mL
    195

    References
    ----------
    Conservation of mass; density of water held to IAPWS-IF97 by the tests.
    """
    positive(volume=volume)
    if hot < cold:
        raise RefusedError(f"hot = {hot} is under cold = {cold}: water that cools needs no room", "hot", hot, cold)
    return volume * (water_density(cold) / water_density(hot) - 1.0)
