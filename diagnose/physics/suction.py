"""A pump's suction with hot water: the head there is above boiling, and the margin against cavitation."""

from __future__ import annotations

from diagnose.physics.demand import not_negative, positive
from diagnose.physics.heat import water_density
from diagnose.physics.steam import saturation_pressure

__all__ = ["GRAVITY", "SEA_LEVEL", "suction_head", "suction_margin"]

GRAVITY = 9.80665  # m/s2, standard
SEA_LEVEL = 101325.0  # Pa


def suction_head(temperature: float, height: float, loss: float, air: float = SEA_LEVEL) -> float:
    """Head a pump finds at its suction above the boiling of the water.

    NPSH = (p_air - p_saturation(T)) / (rho(T) g) + z - h_loss

    Parameters
    ----------
    temperature : float
        Temperature of the tank's water, [K], 284 to 372
    height : float
        Water's surface above the pump's eye; below nought where the pump stands higher, [m], -3 to 3
    loss : float
        Head lost in screen, strainer and pipe, [m], 0 to 8
    air : float
        Pressure of the air, [Pa], 7e4 to 1.05e5

    Returns
    -------
    float
        Net positive suction head there is, below nought where the water boils at the eye, [m]

    Notes
    -----
    At 71 °C (160 °F) a third of the air's pressure is eaten by the vapour, at 90 °C (194 °F) seven tenths.

    Examples
    --------
    >>> round(suction_head(344.15, 0.3, 0.5), 2)
    6.97

    References
    ----------
    Definition of net positive suction head; saturation pressure of water.
    """
    not_negative(loss=loss)
    positive(air=air)
    density = water_density(temperature)
    return (air - saturation_pressure(temperature)) / (density * GRAVITY) + height - loss


def suction_margin(temperature: float, height: float, loss: float, wanted: float, air: float = SEA_LEVEL) -> float:
    """Head left at the suction over what the pump wants: below nought it cavitates.

    NPSH there is - NPSH wanted

    Parameters
    ----------
    temperature : float
        Temperature of the tank's water, [K], 284 to 372
    height : float
        Water's surface above the pump's eye, [m], -3 to 3
    loss : float
        Head lost in screen, strainer and pipe, [m], 0 to 8
    wanted : float
        Net positive suction head the pump wants, by its sheet, [m], 0.3 to 6
    air : float
        Pressure of the air, [Pa], 7e4 to 1.05e5

    Returns
    -------
    float
        Margin, [m]

    Notes
    -----
    A wash pump under its tank has margin to spare when its screen is clear: a crackle means a felted screen
    or air, hardly ever the heat of the water alone.

    Examples
    --------
    >>> round(suction_margin(344.15, 0.3, 0.5, 2.0), 2)
    4.97

    References
    ----------
    Definition of net positive suction head.
    """
    not_negative(wanted=wanted)
    return suction_head(temperature, height, loss, air) - wanted
