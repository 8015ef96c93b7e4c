"""A coil heated by steam: what rise it gives with other steam, other water or another flow than rated."""

from __future__ import annotations

import math

from diagnose.physics.demand import RefusedError, positive
from diagnose.physics.steam import steam_temperature_at_gauge

__all__ = ["coil_rise", "transfer_units"]


def transfer_units(rise: float, difference: float) -> float:
    """Transfer units of a coil: how near the water comes to the steam.

    N = -ln(1 - dT / (T_steam - T_in))

    Parameters
    ----------
    rise : float
        Rise of the water, [K], 1 to 60
    difference : float
        Steam's temperature over that of the water entering, [K], 62 to 150

    Returns
    -------
    float
        Transfer units, [-]

    Notes
    -----
    Half of what a clean coil had says that half of its surface or of its conductance is lost.

    Examples
    --------
    >>> round(transfer_units(22.2, 66.0), 2)  # 40 F° of rise, 119 F° under the steam
    0.41

    References
    ----------
    Heat exchanger with condensing steam (effectiveness 1 - exp(-N)).
    """
    positive(rise=rise, difference=difference)
    if rise >= difference:
        raise RefusedError("water can't rise to the steam's temperature or over it", "rise", rise, 0.0, difference)
    return -math.log1p(-rise / difference)


def coil_rise(
    gauge: float,
    inlet: float,
    flow: float,
    rated_gauge: float,
    rated_inlet: float,
    rated_flow: float,
    rated_rise: float,
) -> float:
    """Rise that a clean steam coil gives with other steam, other water or another flow than it is rated for.

    dT = (T_steam - T_in) (1 - exp(-N)), N = N_rated Q_rated / Q, N_rated = -ln(1 - dT_rated / (T_steam,r - T_in,r))

    Parameters
    ----------
    gauge : float
        Steam pressure at the coil on the gauge, [Pa], 1e4 to 1.4e6
    inlet : float
        Temperature of the water entering, [K], 283.15 to 348.15
    flow : float
        Volume flow of the water, [m3/s], 1e-4 to 5e-4
    rated_gauge : float
        Steam pressure it is rated for, [Pa], 3e4 to 1e6
    rated_inlet : float
        Inlet temperature it is rated for, [K], 293.15 to 343.15
    rated_flow : float
        Flow it is rated for, [m3/s], 1e-4 to 5e-4
    rated_rise : float
        Rise it is rated for, [K], 5 to 50

    Returns
    -------
    float
        Rise, [K]

    Notes
    -----
    Steam at one temperature along the coil, the same heat passed per area and degree as when rated: no
    lime, no water standing in it, no air. With its steam valve open all the while.

    Examples
    --------
    >>> gpm, psi = 3.785411784e-3 / 60, 6894.757
    >>> rated = (20 * psi, 333.15, 4.5 * gpm, 40 / 1.8)
    >>> round(coil_rise(20 * psi, 333.15, 4.5 * gpm, *rated) * 1.8, 1)
    40.0
    >>> round(coil_rise(8 * psi, 333.15, 4.5 * gpm, *rated) * 1.8, 1)  # at 8 psi it gives less
    31.9

    References
    ----------
    Heat exchanger with condensing steam (effectiveness 1 - exp(-N)).
    """
    positive(inlet=inlet, flow=flow, rated_inlet=rated_inlet, rated_flow=rated_flow, rated_rise=rated_rise)
    steam, rated_steam = steam_temperature_at_gauge(gauge), steam_temperature_at_gauge(rated_gauge)
    positive(steam_over_inlet=steam - inlet)
    rated_units = transfer_units(rated_rise, rated_steam - rated_inlet)
    return -(steam - inlet) * math.expm1(-rated_units * rated_flow / flow)
