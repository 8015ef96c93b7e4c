"""Volts on their way to the machine: drops along wires, and the bands a supply should keep."""

from __future__ import annotations

import math

from diagnose.physics.demand import not_negative, positive

__all__ = ["BANDS", "conductor_drop", "drop_share", "supply_band"]

# Nominal volts -> (highest, least at the service, least where used) of range A and of range B.
# ANSI C84.1 table 1 from memory, confidence high (the 480 V row partly seen); 400 V: IEC 60038, 10 %, from memory.
BANDS: dict[int, tuple[tuple[float, float, float], tuple[float, float, float]]] = {
    120: ((126.0, 114.0, 108.0), (127.0, 110.0, 104.0)),
    208: ((218.0, 197.0, 187.0), (220.0, 191.0, 180.0)),
    240: ((252.0, 228.0, 216.0), (254.0, 220.0, 208.0)),
    400: ((440.0, 360.0, 360.0), (440.0, 360.0, 360.0)),
    480: ((504.0, 456.0, 432.0), (508.0, 440.0, 416.0)),
}
_PLACES = {"at the service": 1, "where used": 2}


def conductor_drop(current: float, length: float, ohms_per_length: float, phases: int) -> float:
    """Volts lost along the wires from panel to machine.

    dV = f I r L, f = sqrt(3) line to line with three phases, 2 (there and back) with one

    Parameters
    ----------
    current : float
        Current in each line, [A], 0 to 400
    length : float
        Length of the run, one way, [m], 1 to 200
    ohms_per_length : float
        Resistance of one wire by its length, [ohm/m], 1e-4 to 0.05
    phases : int
        1 or 3, [-], 1 to 3

    Returns
    -------
    float
        Drop between the lines, [V]

    Notes
    -----
    Power factor near one and copper at working heat; a heater is such a load, a motor's drop is a little less.

    Examples
    --------
    >>> round(conductor_drop(83.3, 30.0, 0.83e-3, 3), 2)
    3.59

    References
    ----------
    Ohm's law for balanced lines.
    """
    not_negative(current=current, length=length, ohms_per_length=ohms_per_length)
    if phases not in (1, 3):
        raise ValueError("a run has one phase or three")
    return (math.sqrt(3.0) if phases == 3 else 2.0) * current * ohms_per_length * length


def drop_share(panel: float, machine: float) -> float:
    """Share of the volts lost between panel and machine.

    (V_panel - V_machine) / V_panel

    Parameters
    ----------
    panel : float
        Volts at the panel under load, [V], 100 to 600
    machine : float
        Volts at the machine at the same time, [V], 80 to 600

    Returns
    -------
    float
        Share lost, below nought when the readings were taken at different loads, [-]

    Notes
    -----
    Read both while everything on the feed runs: a drop without current is no drop.

    Examples
    --------
    >>> round(drop_share(208.0, 201.0), 4)
    0.0337

    References
    ----------
    3 % for a branch: NEC 210.19 note and DOE tip sheet 8.
    """
    positive(panel=panel)
    not_negative(machine=machine)
    return (panel - machine) / panel


def supply_band(voltage: float, nominal: str, place: str) -> str:
    """Where a voltage stands in the bands a supply should keep.

    range A: the usual; range B: to be put right soon; outside: at once

    Parameters
    ----------
    voltage : float
        Volts measured, [V], 80 to 600
    nominal : str
        Nominal volts of the system, one of `BANDS`, [-]
    place : str
        `at the service` or `where used`, [-]

    Returns
    -------
    str
        `range A`, `range B`, `low` or `high`

    Notes
    -----
    A motor's own nameplate, 90 to 110 %, is another matter and counts for the motor.

    Examples
    --------
    >>> supply_band(450.0, "480", "at the service"), supply_band(440.0, "480", "where used")
    ('range B', 'range A')

    References
    ----------
    ANSI C84.1 table 1, from memory, confidence high; IEC 60038 for 230/400 V, from memory.
    """
    positive(voltage=voltage)
    if not nominal.isdigit() or int(nominal) not in BANDS or place not in _PLACES:
        raise ValueError(f"use one of {', '.join(map(str, BANDS))} V and {' or '.join(_PLACES)}")
    usual, wide = BANDS[int(nominal)]
    least = _PLACES[place]
    for band, name in ((usual, "range A"), (wide, "range B")):
        if band[least] <= voltage <= band[0]:
            return name
    return "low" if voltage < wide[least] else "high"
