"""What hardness does: how long a softener lasts, what scale is left; and rinse aid."""

from __future__ import annotations

from diagnose.physics.demand import not_negative, positive

__all__ = [
    "rinse_aid_dose",
    "scale_layer",
    "scale_mass",
    "softener_days",
    "softener_volume",
]


def softener_volume(capacity: float, hardness: float) -> float:
    """Water a softener makes between two regenerations.

    W = capacity / hardness

    Parameters
    ----------
    capacity : float
        Capacity between two regenerations as CaCO3, [kg], 0.1 to 20
    hardness : float
        Hardness taken out as CaCO3, [mg/L], 10 to 800

    Returns
    -------
    float
        Water until it is used up, [m3]

    Notes
    -----
    Capacity at the salt dose that is set, not the greatest on the label. In the trade: grains / gpg = gallons.

    Examples
    --------
    >>> round(softener_volume(30000 * 6.479891e-5, 15 * 17.118) / 3.785411784e-3)  # gal
    2000

    References
    ----------
    Conservation of mass.
    """
    positive(capacity=capacity, hardness=hardness)
    return capacity * 1e3 / hardness


def softener_days(capacity: float, hardness: float, water: float) -> float:
    """Days a softener lasts between two regenerations.

    days = capacity / (hardness x water a day)

    Parameters
    ----------
    capacity : float
        Capacity between two regenerations as CaCO3, [kg], 0.1 to 20
    hardness : float
        Hardness taken out as CaCO3, [mg/L], 10 to 800
    water : float
        Water used a day, [m3], 0.01 to 50

    Returns
    -------
    float
        Days between two regenerations, [-]

    Notes
    -----
    A softener that must last longer than this is used up before it regenerates.

    Examples
    --------
    >>> round(softener_days(30000 * 6.479891e-5, 15 * 17.118, 500 * 3.785411784e-3), 2)  # 500 gal a day
    4.0

    References
    ----------
    Conservation of mass.
    """
    positive(capacity=capacity, hardness=hardness, water=water)
    return capacity * 1e3 / (hardness * water)


def scale_mass(drop: float, water: float) -> float:
    """Scale that stays behind when water loses hardness.

    m = drop x W, in grams with the drop in mg/L and W in m3

    Parameters
    ----------
    drop : float
        Hardness the water leaves behind as CaCO3, [mg/L], 1 to 500
    water : float
        Water used in that time, [m3], 0.01 to 50

    Returns
    -------
    float
        Scale, [kg]

    Notes
    -----
    Drop: hardness of the water going in less that of the water coming out, both tested. Also drop as high as the
    whole hardness where water boils away.

    Examples
    --------
    >>> round(scale_mass(100.0, 280 * 3.785411784e-3) * 1000)  # grams from 280 gal
    106

    References
    ----------
    Conservation of mass.
    """
    not_negative(drop=drop)
    positive(water=water)
    return drop * water / 1e3


def scale_layer(mass: float, area: float, density: float) -> float:
    """Thickness of a layer of scale.

    d = m / (rho A)

    Parameters
    ----------
    mass : float
        Scale, [kg], 0.001 to 20
    area : float
        Surface it lies on, [m2], 0.01 to 5
    density : float
        Density of the scale, [kg/m3], 1000 to 2700

    Returns
    -------
    float
        Thickness, [m]

    Notes
    -----
    As if it lay evenly. Solid calcite is 2710 kg/m3; porous scale is lighter. On an immersion element the layer
    burns the element and does not cool the water.

    Examples
    --------
    >>> round(scale_layer(1.0, 0.5, 2000.0) * 1000, 2)  # mm
    1.0

    References
    ----------
    Definition of density.
    """
    not_negative(mass=mass)
    positive(area=area, density=density)
    return mass / (density * area)


def rinse_aid_dose(strength: float, water: float) -> float:
    """Rinse aid for an amount of rinse water.

    V = c W / 10^6

    Parameters
    ----------
    strength : float
        Rinse aid wanted, parts in a million by volume, [mg/L], 20 to 1000
    water : float
        Rinse water, [m3], 1e-4 to 0.1

    Returns
    -------
    float
        Rinse aid, [m3]

    Notes
    -----
    A part in a million by volume is a millilitre in a cubic metre. The label names the dose.

    Examples
    --------
    >>> round(rinse_aid_dose(200.0, 1.9e-3) * 1e6, 2)  # mL
    0.38

    References
    ----------
    Conservation of volume.
    """
    not_negative(strength=strength)
    positive(water=water)
    return strength * water / 1e6
