"""Gas as a source of heat: input clocked at the meter, what the pressure in it changes, the rise it gives."""

from __future__ import annotations

import math

from diagnose.physics.demand import not_negative, positive, within
from diagnose.physics.heat import TRADE_HEAT, rise_of_flow

__all__ = [
    "BASE_PRESSURE",
    "BASE_TEMPERATURE",
    "NATURAL_GAS",
    "gas_for_rise",
    "gas_input",
    "gas_rise",
    "input_at_manifold",
    "meter_factor",
]

BASE_PRESSURE = 101560.0  # Pa: 14.73 psi, at which heating values of gas are told in the trade
BASE_TEMPERATURE = 288.70555555555555  # K: 60 °F
NATURAL_GAS = 1030.0 * 1055.05585262 / 0.3048**3  # J/m3: 1,030 BTU/ft3, usual for natural gas; the supplier knows
_AIR = 101325.0


def meter_factor(gauge: float, temperature: float = BASE_TEMPERATURE) -> float:
    """How much more gas a cubic foot on the meter holds than one at base pressure and temperature.

    factor = (p_gauge + 101,325 Pa) / 101,560 Pa x 288.7 K / T

    Parameters
    ----------
    gauge : float
        Pressure of the gas in the meter, [Pa], 0 to 7e4
    temperature : float
        Temperature of the gas in the meter, [K], 253.15 to 313.15

    Returns
    -------
    float
        Factor, [-]

    Notes
    -----
    Sea level: altitude is left out. A meter with temperature or pressure compensation shows base volume
    already: then the factor is one.

    Examples
    --------
    >>> round(meter_factor(7 * 249.08891), 3)  # 7 inWG: next to nothing
    1.015
    >>> round(meter_factor(2 * 6894.757), 3)  # a meter at 2 psi
    1.133

    References
    ----------
    Ideal gas; base of 14.73 psi and 60 °F from memory.
    """
    not_negative(gauge=gauge)
    positive(temperature=temperature)
    return (gauge + _AIR) / BASE_PRESSURE * BASE_TEMPERATURE / temperature


def gas_input(
    volume: float,
    time: float,
    heating_value: float = NATURAL_GAS,
    gauge: float = 0.0,
    temperature: float = BASE_TEMPERATURE,
) -> float:
    """Gas input of a burner from the time the meter takes for a volume.

    P = V / t x H x factor of the meter

    Parameters
    ----------
    volume : float
        Volume on the dial, [m3], 0.01 to 1
    time : float
        Time it takes, [s], 10 to 600
    heating_value : float
        Heat of a volume of gas at base pressure and temperature, gross, [J/m3], 2e7 to 1e8
    gauge : float
        Pressure of the gas in the meter, [Pa], 0 to 7e4
    temperature : float
        Temperature of the gas in the meter, [K], 253.15 to 313.15

    Returns
    -------
    float
        Input, [W]

    Notes
    -----
    All other users off, pilots reckoned off or left out of account.

    Examples
    --------
    >>> foot = 0.3048**3
    >>> round(gas_input(2 * foot, 74.0, gauge=235.0) / 1055.05585262 * 3600)  # 2 ft3 in 74 s, in BTU/h
    100216

    References
    ----------
    Definition of heating value; ideal gas.
    """
    not_negative(volume=volume)
    positive(time=time, heating_value=heating_value)
    return volume / time * heating_value * meter_factor(gauge, temperature)


def gas_rise(power: float, efficiency: float, flow: float) -> float:
    """Rise that a gas input gives a flow of water.

    dT = efficiency P / (rho c Q)

    Parameters
    ----------
    power : float
        Gas input, [W], 0 to 3e5
    efficiency : float
        Heat into the water over gas input, [-], 0.3 to 1
    flow : float
        Volume flow of the water, [m3/s], 1e-5 to 1e-3

    Returns
    -------
    float
        Rise, [K]

    Notes
    -----
    A clean exchanger that does not condense has some 0.75 to 0.8; lime and soot lower it.

    Examples
    --------
    >>> btu = 1055.05585262 / 3600
    >>> round(gas_rise(100e3 * btu, 0.75, 3.0 * 3.785411784e-3 / 60) * 1.8)  # 100,000 BTU/h at 75 %, 3 gpm
    50

    References
    ----------
    Conservation of energy; 0.75 is what county plan check guide EHD 16-01, appendix E, reckons with.
    """
    within(0.0, 1.0, efficiency=efficiency)
    return rise_of_flow(power * efficiency, flow)


def gas_for_rise(flow: float, rise: float, efficiency: float) -> float:
    """Gas input that a rise of a flow of water wants.

    P = rho c Q dT / efficiency

    Parameters
    ----------
    flow : float
        Volume flow of the water, [m3/s], 1e-5 to 1e-3
    rise : float
        Temperature rise, [K], 0 to 80
    efficiency : float
        Heat into the water over gas input, [-], 0.3 to 1

    Returns
    -------
    float
        Gas input, [W]

    Notes
    -----
    Steady state; a burner that cycles takes it on the average.

    Examples
    --------
    >>> btu = 1055.05585262 / 3600
    >>> round(gas_for_rise(240 * 3.785411784e-3 / 3600, 60 / 1.8, 0.75) / btu / 1e3)  # 240 gph by 60 F°
    160

    References
    ----------
    Conservation of energy; example of county plan check guide EHD 16-01, appendix E.
    """
    not_negative(flow=flow, rise=rise)
    positive(efficiency=efficiency)
    within(0.0, 1.0, efficiency=efficiency)
    return TRADE_HEAT * flow * rise / efficiency


def input_at_manifold(rated_input: float, manifold: float, rated_manifold: float) -> float:
    """Gas input with another pressure at the burner's manifold than the plate's.

    P = P_rated sqrt(p / p_rated)

    Parameters
    ----------
    rated_input : float
        Gas input on the plate, [W], 1e3 to 3e5
    manifold : float
        Manifold pressure while it burns, [Pa], 50 to 4000
    rated_manifold : float
        Manifold pressure on the plate, [Pa], 200 to 3000

    Returns
    -------
    float
        Input, [W]

    Notes
    -----
    Jets clean and of the plate's bore: less by the meter than this says blocked jets.

    Examples
    --------
    >>> round(input_at_manifold(100.0, 2.5, 3.5))  # 2.5 inWG for 3.5
    85

    References
    ----------
    Flow through an orifice goes with the square root of the pressure.
    """
    not_negative(rated_input=rated_input, manifold=manifold)
    positive(rated_manifold=rated_manifold)
    return rated_input * math.sqrt(manifold / rated_manifold)
