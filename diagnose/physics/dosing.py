"""Doses: what strength a dose gives the rinse, and what dose a wanted strength takes."""

from __future__ import annotations

from diagnose.physics.demand import not_negative, positive

__all__ = [
    "dose_for_strength",
    "pump_flow_for_strength",
    "strength_in_stream",
    "strength_of_dose",
]


def strength_of_dose(dose: float, stock: float, water: float) -> float:
    """Strength that a dose gives the water it goes into.

    c = V s 10^6 / W

    Parameters
    ----------
    dose : float
        Stock fed, [m3], 1e-8 to 1e-4
    stock : float
        Strength of the stock, grams of active matter in a millilitre, [-], 0.005 to 0.2
    water : float
        Water it goes into, [m3], 1e-4 to 0.1

    Returns
    -------
    float
        Strength in the water, [mg/L]

    Notes
    -----
    What the dose adds to the water (0.1 % at 50 mg/L from 5 % stock), and what soil uses up, are left out. Stock
    in grams a millilitre: a label's percent by weight times its density.

    Examples
    --------
    >>> round(strength_of_dose(8e-6, 0.0525, 2.1e-3 * 4), 1)  # 8 mL of 5.25 % into 8.4 L
    50.0

    References
    ----------
    Conservation of mass.
    """
    not_negative(dose=dose)
    positive(stock=stock, water=water)
    return dose * stock * 1e6 / water


def dose_for_strength(strength: float, stock: float, water: float) -> float:
    """Stock that must be fed for a wanted strength.

    V = c W / (s 10^6)

    Parameters
    ----------
    strength : float
        Strength in the water, [mg/L], 5 to 500
    stock : float
        Strength of the stock, grams of active matter in a millilitre, [-], 0.005 to 0.2
    water : float
        Water it goes into, [m3], 1e-4 to 0.1

    Returns
    -------
    float
        Stock to feed, [m3]

    Notes
    -----
    Without what soil on the ware uses up.

    Examples
    --------
    >>> round(dose_for_strength(50.0, 0.0525, 8.4e-3) * 1e6, 2)  # mL
    8.0

    References
    ----------
    Conservation of mass.
    """
    not_negative(strength=strength)
    positive(stock=stock, water=water)
    return strength * water / (stock * 1e6)


def strength_in_stream(pump_flow: float, stock: float, water_flow: float) -> float:
    """Strength of a rinse that is fed while it flows.

    c = q s 10^6 / Q

    Parameters
    ----------
    pump_flow : float
        Output of the feed pump, [m3/s], 1e-8 to 1e-5
    stock : float
        Strength of the stock, grams of active matter in a millilitre, [-], 0.005 to 0.2
    water_flow : float
        Flow of the rinse, [m3/s], 1e-5 to 1e-3

    Returns
    -------
    float
        Strength in the rinse, [mg/L]

    Notes
    -----
    Pump and rinse run together; a feed that starts late gives less over the rack as a whole.

    Examples
    --------
    >>> round(strength_in_stream(12.26e-6 / 60, 0.0525, 3.4 * 3.785411784e-3 / 60), 1)  # 12.26 mL/min into 3.4 gpm
    50.0

    References
    ----------
    Conservation of mass.
    """
    not_negative(pump_flow=pump_flow)
    positive(stock=stock, water_flow=water_flow)
    return pump_flow * stock * 1e6 / water_flow


def pump_flow_for_strength(strength: float, stock: float, water_flow: float) -> float:
    """Pump output wanted for a strength in a flowing rinse.

    q = c Q / (s 10^6)

    Parameters
    ----------
    strength : float
        Strength in the water, [mg/L], 5 to 500
    stock : float
        Strength of the stock, grams of active matter in a millilitre, [-], 0.005 to 0.2
    water_flow : float
        Flow of the rinse, [m3/s], 1e-5 to 1e-3

    Returns
    -------
    float
        Output wanted, [m3/s]

    Notes
    -----
    As `strength_in_stream`, turned round.

    Examples
    --------
    >>> round(pump_flow_for_strength(50.0, 0.0525, 3.4 * 3.785411784e-3 / 60) * 60e6, 2)  # mL/min
    12.26

    References
    ----------
    Conservation of mass.
    """
    not_negative(strength=strength)
    positive(stock=stock, water_flow=water_flow)
    return strength * water_flow / (stock * 1e6)
