"""Faults of what switches the booster's heat: no call, and heat that stops early."""

from __future__ import annotations

from diagnose.simulator.plant import Plant
from diagnose.simulator.registry import fault

__all__: list[str] = []

_HEATED = ("electric", "steam", "gas")
_ELECTRIC = ("electric",)
_NO_HEAT = "Without a call no heat goes in: the rinse is as cold as the water that enters."
_EARLY = "The heat goes out before the water is hot enough, and comes again only when it has cooled."


def _barred(plant: Plant, sign: str, severity: float = 1.0) -> None:
    """The chain is open at one link: no heat."""
    plant.booster.allowed = False
    plant.signs[sign] = 0.6 + 0.4 * severity


@fault(
    "booster_control.pole_open",
    (
        "One pole of the contactor does not make.",
        "Its line carries nothing: in a delta bank the other two fall to 87 % and half the heat is left.",
        "Across that closed pole stands the voltage that is missing at the bank.",
    ),
    booster=_ELECTRIC,
)
def pole_open(plant: Plant, severity: float) -> None:
    """Burnt contact."""
    plant.booster.heater.poles[1] = False
    plant.signs["booster pole burnt"] = 0.7 + 0.3 * severity


@fault(
    "booster_control.coil_open",
    ("Volts stand at the contactor's coil and it does not pull.", "No pole makes.", _NO_HEAT),
    booster=_ELECTRIC,
)
def coil_open(plant: Plant, severity: float) -> None:
    """Coil open or armature jammed."""
    plant.booster.heater.coil_works = False
    plant.signs["booster coil open"] = 1.0


@fault(
    "booster_control.high_limit_tripped",
    ("The high limit has opened once and waits for its button.", "The control chain ends at it.", _NO_HEAT),
    booster=_HEATED,
)
def high_limit_tripped(plant: Plant, severity: float) -> None:
    """Its button stands out."""
    _barred(plant, "booster limit button out")


@fault(
    "booster_control.low_water_lockout",
    (
        "The booster is not full of water, and its protection keeps the heat off, rightly.",
        "The control chain ends at the low-water device.",
        _NO_HEAT,
    ),
    after="plumbing work",
    booster=_HEATED,
)
def low_water_lockout(plant: Plant, severity: float) -> None:
    """Air in it."""
    _barred(plant, "booster not full")


@fault(
    "booster_control.low_water_device_stuck",
    ("Probe, float or paddle says empty though the booster is full.", "The control chain ends there.", _NO_HEAT),
    onset="slowly",
    booster=_HEATED,
)
def low_water_device_stuck(plant: Plant, severity: float) -> None:
    """Limed."""
    _barred(plant, "booster low-water device limed", severity)


@fault(
    "booster_control.thermostat_open",
    ("The thermostat's contact or its sensor is open, so it never calls.", "The control chain ends at it.", _NO_HEAT),
    booster=_HEATED,
)
def thermostat_open(plant: Plant, severity: float) -> None:
    """Never calls."""
    plant.booster.thermostat.stuck = False
    plant.signs["booster thermostat open"] = 1.0


@fault(
    "booster_control.control_fuse",
    ("The booster's control fuse has blown.", "Its control chain is dead from the beginning.", _NO_HEAT),
    booster=_HEATED,
)
def control_fuse(plant: Plant, severity: float) -> None:
    """Blown."""
    _barred(plant, "booster control fuse blown")


@fault(
    "booster_control.switch_off",
    ("The heat switch stands off.", "The chain ends at the switch.", _NO_HEAT),
    after="cleaning by the crew",
    booster=_HEATED,
)
def switch_off(plant: Plant, severity: float) -> None:
    """Off."""
    _barred(plant, "booster heat switch off")


@fault(
    "booster_control.stat_set_low",
    ("The thermostat is set too low.", _EARLY, "Turned up, the rinse follows."),
    booster=_HEATED,
)
def stat_set_low(plant: Plant, severity: float) -> None:
    """Set down."""
    plant.booster.thermostat.setting -= 8.0 + 7.0 * severity
    plant.signs["booster dial turned down"] = 1.0


@fault(
    "booster_control.stat_drifted",
    (
        "The thermostat opens well under its dial.",
        _EARLY,
        "Its dial stands right, and a second thermometer shows where it cuts.",
    ),
    onset="slowly",
    booster=_HEATED,
)
def stat_drifted(plant: Plant, severity: float) -> None:
    """Opens early."""
    plant.booster.thermostat.offset = 8.0 + 7.0 * severity
    plant.signs["booster thermostat drifted"] = 1.0


@fault(
    "booster_control.sensor_scaled",
    (
        "Lime on the sensor makes it late.",
        "The heat comes on when much of the rack has been rinsed and goes out long after.",
        "The rinse swings: cold at the end of racks, hot after pauses.",
    ),
    onset="slowly",
    booster=_HEATED,
)
def sensor_scaled(plant: Plant, severity: float) -> None:
    """A lag of most of a minute and more."""
    plant.booster.thermostat.lag = 55.0 + 60.0 * severity
    plant.signs["scale on the booster sensor"] = 0.6 + 0.4 * severity
    plant.water.hardness = max(plant.water.hardness, 0.2)


@fault(
    "booster_control.limit_weak",
    (
        "The automatic high limit opens under the thermostat's setting.",
        _EARLY,
        "While the heat is out it is the limit that stands open, not the thermostat.",
    ),
    onset="slowly",
    booster=_HEATED,
)
def limit_weak(plant: Plant, severity: float) -> None:
    """It cuts instead of the thermostat."""
    plant.booster.thermostat.setting -= 8.0 + 6.0 * severity
    plant.signs["booster limit cuts early"] = 1.0


@fault(
    "booster_control.stat_short_cycles",
    (
        "The bulb is loose or a terminal is, and the heat goes in and out many times a minute.",
        "Half the time there is none, so half the heat is missing.",
        "Currents are right whenever it is in.",
    ),
    onset="comes and goes",
    booster=_HEATED,
)
def stat_short_cycles(plant: Plant, severity: float) -> None:
    """In half of the time and less."""
    plant.booster.heater.duty = 0.6 - 0.25 * severity
    plant.signs["booster heat short-cycles"] = 0.6 + 0.4 * severity
