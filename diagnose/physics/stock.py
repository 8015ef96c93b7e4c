"""Chemicals in the jug and in the tank: strength of a stock, how long it lasts, detergent in a tank."""

from __future__ import annotations

import math

from diagnose.physics.demand import not_negative, positive

__all__ = [
    "container_lasts",
    "detergent_needed",
    "stock_after",
    "stock_by_volume",
    "tank_strength_after",
]


def stock_by_volume(by_weight: float, density: float) -> float:
    """Strength of a stock by volume from its strength by weight.

    s = w rho / 1000

    Parameters
    ----------
    by_weight : float
        Label's strength, share by weight, [-], 0.005 to 0.2
    density : float
        Density of the stock, [kg/m3], 1000 to 1400

    Returns
    -------
    float
        Grams of active matter in a millilitre, [-]

    Notes
    -----
    A jug of 5.25 % by weight and 1080 kg/m3 holds 5.67 g in 100 mL.

    Examples
    --------
    >>> round(stock_by_volume(0.0525, 1080.0), 4)
    0.0567

    References
    ----------
    Definition of both strengths.
    """
    positive(by_weight=by_weight, density=density)
    return by_weight * density / 1000.0


def stock_after(fresh: float, age: float, half_life: float) -> float:
    """Strength left of a stock that decays while it stands.

    s = s0 2^(-age / half life)

    Parameters
    ----------
    fresh : float
        Strength when delivered, [-], 0.005 to 0.2
    age : float
        Time it has stood, [s], 0 to 4e7
    half_life : float
        Time in which half is lost, [s], 1e6 to 4e7

    Returns
    -------
    float
        Strength left, [-]

    Notes
    -----
    Decay of hypochlorite is nearly exponential over weeks; its half-life must come from the label or two tests.
    It is months in a cool dark store and weeks in a hot or sunny one (from memory).

    Examples
    --------
    >>> stock_after(0.0525, 90 * 86400.0, 90 * 86400.0)
    0.02625

    References
    ----------
    First-order decay, from memory; the half-life is the user's.
    """
    positive(fresh=fresh, half_life=half_life)
    not_negative(age=age)
    return float(fresh * 2.0 ** (-age / half_life))


def container_lasts(volume: float, dose: float, rack_rate: float) -> float:
    """How long a container lasts.

    t = V / (dose x rack rate)

    Parameters
    ----------
    volume : float
        Stock in the container, [m3], 1e-3 to 0.1
    dose : float
        Stock fed, [m3], 1e-8 to 1e-4
    rack_rate : float
        Racks, [1/s], 0.001 to 0.1

    Returns
    -------
    float
        Time until it is empty, [s]

    Notes
    -----
    At the dose and the racks as given, without stops.

    Examples
    --------
    >>> round(container_lasts(19e-3, 3.5e-6, 150 / 3600) / 3600, 1)  # hours
    36.2

    References
    ----------
    Conservation of mass.
    """
    positive(volume=volume, dose=dose, rack_rate=rack_rate)
    return volume / (dose * rack_rate)


def tank_strength_after(start: float, overflow: float, volume: float) -> float:
    """Detergent left in a wash tank when rinse water overflows it and nothing is fed.

    c = c0 exp(-q / V)

    Parameters
    ----------
    start : float
        Strength at the start, [mg/L], 100 to 5000
    overflow : float
        Rinse water that displaces tank water, [m3], 0 to 1
    volume : float
        Water in the tank, [m3], 0.02 to 0.3

    Returns
    -------
    float
        Strength left, [mg/L]

    Notes
    -----
    The tank is taken to be well mixed. Overflow is racks times the rinse water a rack that reaches this tank.

    Examples
    --------
    >>> round(tank_strength_after(2000.0, 22 * 3.785411784e-3, 22 * 3.785411784e-3))  # one tankful over the top
    736

    References
    ----------
    Dilution of a mixed tank.
    """
    positive(start=start, volume=volume)
    not_negative(overflow=overflow)
    return start * math.exp(-overflow / volume)


def detergent_needed(strength: float, water: float) -> float:
    """Detergent that brings or keeps water at a strength.

    m = c W, in grams with c in mg/L and W in m3

    Parameters
    ----------
    strength : float
        Strength to hold, [mg/L], 100 to 5000
    water : float
        Water to charge, or rinse water that displaces it, [m3], 1e-4 to 1

    Returns
    -------
    float
        Detergent, [kg]

    Notes
    -----
    For a fresh tank the whole volume; for each rack the rinse water that pushes tank water over the top.

    Examples
    --------
    >>> round(detergent_needed(2000.0, 22 * 3.785411784e-3) * 1000)  # grams for 22 gal
    167

    References
    ----------
    Conservation of mass.
    """
    positive(water=water)
    not_negative(strength=strength)
    return strength * water / 1e3
