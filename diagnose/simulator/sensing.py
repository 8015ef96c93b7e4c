"""Ohms of temperature sensors."""

from __future__ import annotations

from diagnose.physics.ntc import beta_of_two_points, beta_resistance

__all__ = ["sensor_resistance"]


def sensor_resistance(at_25: float, at_80: float, temperature: float) -> float:
    """Ohms at a temperature, [K], of a sensor with these ohms at 25 and 80 °C: a thermistor where they fall.

    >>> round(sensor_resistance(10000.0, 1256.0, 353.15)), round(sensor_resistance(109.73, 130.9, 353.15), 1)
    (1256, 130.9)
    """
    if at_80 >= at_25:
        return at_25 + (at_80 - at_25) * (temperature - 298.15) / 55.0
    return beta_resistance(temperature, at_25, beta_of_two_points(at_25, 298.15, at_80, 353.15))
