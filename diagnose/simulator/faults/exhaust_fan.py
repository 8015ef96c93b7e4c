"""Faults of the exhaust fan: its drive, wheel and switching, and what makes its motor trip."""

from __future__ import annotations

from diagnose.simulator.plant import Plant
from diagnose.simulator.registry import fault

__all__: list[str] = []

_THREE, _ONE = (3,), (1,)
_SHORT = "Both ends lack the same share of air, and steam comes out at both."
_STILL = "No air moves, and all the steam of both ends goes into the room."
_TRIPS = "The overload opens after some while, and while the fan stands both ends steam."


@fault(
    "exhaust_fan.leads_swapped",
    (
        "Two leads of the fan motor are changed over.",
        "A wheel with forward-curved blades that turns backwards moves a third of its air.",
        _SHORT,
    ),
    onset="installed",
    after="electrical work",
    phases=_THREE,
)
def leads_swapped(plant: Plant, severity: float) -> None:
    """Against the arrow."""
    plant.air.fan_backwards = True


@fault(
    "exhaust_fan.belt_slips",
    ("The belt slips on its pulleys.", "Air falls with the wheel's speed, and the motor's work with its cube.", _SHORT),
    onset="slowly",
)
def belt_slips(plant: Plant, severity: float) -> None:
    """Stretched or glazed."""
    plant.air.fan = 0.72 - 0.2 * severity
    plant.signs["fan belt squeals"] = 0.2 + 0.2 * severity
    plant.signs["fan belt slack"] = 0.5 + 0.5 * severity


@fault(
    "exhaust_fan.belt_broken",
    ("The belt has broken or come off.", "The motor runs light and the wheel stands.", _STILL),
)
def belt_broken(plant: Plant, severity: float) -> None:
    """Its strings lie under the guard."""
    plant.air.fan_linked = False
    plant.signs["fan belt gone"] = 1.0


@fault(
    "exhaust_fan.wheel_loose",
    (
        "The wheel is loose on its shaft.",
        "The shaft turns in the hub and drags the wheel along only now and then.",
        _STILL,
    ),
)
def wheel_loose(plant: Plant, severity: float) -> None:
    """Its key or screw has gone."""
    plant.air.fan_linked = False
    plant.signs["fan wheel knock"] = 0.3 + 0.3 * severity
    plant.signs["fan wheel loose"] = 0.6 + 0.4 * severity


@fault(
    "exhaust_fan.switched_off",
    ("The fan's switch or timer stands at off.", "Its starter gets no command.", _STILL),
    onset="comes and goes",
)
def switched_off(plant: Plant, severity: float) -> None:
    """At off."""
    plant.motors["fan"].coil_works = False
    plant.signs["fan switch at off"] = 1.0


@fault(
    "exhaust_fan.starter_open",
    ("The fan's starter does not pull in though it is called.", "No volts reach the motor.", _STILL),
    after="electrical work",
)
def starter_open(plant: Plant, severity: float) -> None:
    """Coil or interlock."""
    plant.motors["fan"].coil_works = False


@fault(
    "exhaust_fan.wheel_coated",
    (
        "Lint and fat fill the blades' hollows.",
        "Flatter blades make less pressure, so less air moves.",
        "Alone it costs about a tenth of the air; the wheel shakes a little.",
    ),
    onset="slowly",
)
def wheel_coated(plant: Plant, severity: float) -> None:
    """Over an eighth of an inch."""
    plant.air.wheel = 0.85 - 0.2 * severity
    plant.signs["fan wheel shakes"] = 0.1 + 0.15 * severity


@fault(
    "exhaust_fan.belt_too_tight",
    ("The belt is far too tight.", "It loads the bearings, and the motor works against them.", _TRIPS),
    onset="installed",
    after="parts replaced",
)
def belt_too_tight(plant: Plant, severity: float) -> None:
    """Like a string."""
    plant.motors["fan"].drag = 0.36 + 0.12 * severity
    plant.signs["fan belt tight"] = 0.6 + 0.4 * severity


@fault(
    "exhaust_fan.wheel_rubs",
    ("The wheel rubs on its inlet ring.", "Friction once a turn is work that the motor does besides its air.", _TRIPS),
    after="parts replaced",
)
def wheel_rubs(plant: Plant, severity: float) -> None:
    """Bent or out of place."""
    plant.motors["fan"].drag = 0.36 + 0.15 * severity
    plant.signs["fan wheel rubs"] = 0.5 + 0.5 * severity
    plant.signs["fan wheel scrape grinds"] = 0.4 + 0.4 * severity


@fault(
    "exhaust_fan.bearing_dry",
    ("A bearing of the fan or its motor is dry.", "It drags, the more the warmer it gets.", _TRIPS),
    onset="slowly",
)
def bearing_dry(plant: Plant, severity: float) -> None:
    """Its grease has run out."""
    plant.motors["fan"].drag = 0.36 + 0.3 * severity
    plant.signs["fan bearing growl"] = 0.4 + 0.4 * severity


@fault(
    "exhaust_fan.geared_up",
    (
        "The pulleys turn the wheel faster than it was set for.",
        "Work goes with the cube of speed: the motor stands at the limit of its nameplate.",
        "Whatever else warms its overload makes it the first to drop out.",
    ),
    onset="installed",
    after="parts replaced",
)
def geared_up(plant: Plant, severity: float) -> None:
    """The adjustable pulley screwed closed."""
    plant.air.fan = 1.06 + 0.03 * severity


@fault(
    "exhaust_fan.motor_in_steam",
    (
        "Hot wet air blows at the fan's motor and its overload.",
        "An overload in hot air opens at less than its setting.",
        _TRIPS,
    ),
    onset="comes and goes",
)
def motor_in_steam(plant: Plant, severity: float) -> None:
    """A leaking sleeve or shaft seal."""
    plant.motors["fan"].around = 333.0 + 12.0 * severity
    plant.motors["fan"].joint_heat = 0.5 + 0.3 * severity
    plant.signs["steam at the fan's motor"] = 0.6 + 0.4 * severity


@fault(
    "exhaust_fan.starter_pole_open",
    (
        "One pole of the fan's starter does not make.",
        "On two lines the motor can't run up, or runs at 1.7 times its current.",
        _TRIPS,
    ),
    phases=_THREE,
)
def starter_pole_open(plant: Plant, severity: float) -> None:
    """Pitted or its lug burnt."""
    plant.motors["fan"].poles[1] = False


@fault(
    "exhaust_fan.capacitor_weak",
    (
        "The capacitor has lost its capacity.",
        "The start winding's current comes too small and too late to turn the rotor.",
        _TRIPS,
    ),
    onset="slowly",
    phases=_ONE,
)
def capacitor_weak(plant: Plant, severity: float) -> None:
    """Dried out by heat."""
    plant.motors["fan"].starts = False
