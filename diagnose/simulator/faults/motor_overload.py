"""Faults of the motors' overloads, and of what surrounds and handles them."""

from __future__ import annotations

from diagnose.simulator.plant import Plant
from diagnose.simulator.registry import fault

__all__: list[str] = []

_RELAY = ("overload relay",)
_BENDS = "The bimetal reaches its trip heat at a current the motor may carry for ever."
_BACK = "It cools, is reset, and trips again with a healthy motor."


def _set(plant: Plant, motor: str, severity: float) -> None:
    plant.motors[motor].dial = (0.71 if motor != "drive" else 0.58) - 0.08 * severity


@fault(
    "motor_overload.pump_set_low",
    ("The pump's overload is set under its nameplate.", _BENDS, _BACK),
    after="parts replaced",
    motor_protection=_RELAY,
)
def pump_set_low(plant: Plant, severity: float) -> None:
    """A dial left low."""
    _set(plant, "wash", severity)


@fault(
    "motor_overload.drive_set_low",
    ("The conveyor's overload is set under its nameplate.", _BENDS, _BACK),
    after="parts replaced",
    motor_protection=_RELAY,
)
def drive_set_low(plant: Plant, severity: float) -> None:
    """A dial left low."""
    _set(plant, "drive", severity)


@fault(
    "motor_overload.fan_set_low",
    ("The fan's overload is set under its nameplate.", _BENDS, _BACK),
    after="parts replaced",
    motor_protection=_RELAY,
)
def fan_set_low(plant: Plant, severity: float) -> None:
    """A dial left low."""
    _set(plant, "fan", severity)


@fault(
    "motor_overload.range_too_small",
    ("The overload's scale ends under the nameplate, so it can't be set right.", _BENDS, _BACK),
    after="parts replaced",
    motor_protection=_RELAY,
)
def range_too_small(plant: Plant, severity: float) -> None:
    """The wrong part was fitted."""
    _set(plant, "wash", severity)
    plant.signs["overload scale short"] = 1.0


@fault(
    "motor_overload.hot_terminal",
    ("A loose screw at the overload heats by the square of the current.", "Its heat walks into the bimetal.", _BACK),
    onset="slowly",
    motor_protection=_RELAY,
)
def hot_terminal(plant: Plant, severity: float) -> None:
    """One terminal hotter than its neighbours."""
    plant.motors["wash"].joint_heat = 0.8 + 0.5 * severity
    plant.signs["overload terminal hot"] = 0.6 + 0.4 * severity


@fault(
    "motor_overload.box_hot",
    ("The control box is far warmer than overloads are made for.", "A warm bimetal needs less current to bend.", _BACK),
    onset="slowly",
    motor_protection=_RELAY,
)
def box_hot(plant: Plant, severity: float) -> None:
    """A blocked vent, steam at the box, a heater's contactor beside it."""
    for motor in plant.motors.values():
        motor.early = 0.78 - 0.08 * severity  # a relay that is not compensated loses about that at 30 K more: judgement
    plant.signs["box hot"] = 0.6 + 0.4 * severity


@fault(
    "motor_overload.steam_round_motor",
    (
        "Steam stands round the motor.",
        "It can't shed its heat into air that is hot already.",
        "Winding and protector run hot.",
    ),
    onset="slowly",
)
def steam_round_motor(plant: Plant, severity: float) -> None:
    """A curtain, a seal or a duct lets it out there."""
    _hot_round(plant, "wash", 27.0 + 15.0 * severity)
    plant.motors["wash"].early = 0.76 - 0.08 * severity
    plant.signs["steam on motor"] = 0.6 + 0.4 * severity


def _hot_round(plant: Plant, motor: str, over: float) -> None:
    plant.motors[motor].around += over


@fault(
    "motor_overload.relay_worn",
    ("The relay's bimetal has aged.", _BENDS, _BACK),
    onset="slowly",
    motor_protection=_RELAY,
)
def relay_worn(plant: Plant, severity: float) -> None:
    """It trips with any motor."""
    plant.motors["wash"].early = 0.74 - 0.12 * severity
    plant.signs["overload itself weary"] = 1.0


@fault(
    "motor_overload.protector_weak",
    (
        "The protector in the winding opens at a lower heat than when new.",
        "The motor is hardly warm when it goes off.",
        _BACK,
    ),
    onset="slowly",
    motor_protection=("thermal protector",),
)
def protector_weak(plant: Plant, severity: float) -> None:
    """It opens a lukewarm motor."""
    plant.motors["wash"].early = 0.72 - 0.12 * severity
    plant.signs["protector itself weary"] = 1.0


@fault(
    "motor_overload.reset_too_soon",
    (
        "The crew resets it while it is hot.",
        "Each start brings six times the current into a winding that has not cooled.",
        "A small cause becomes a day of trips.",
    ),
)
def reset_too_soon(plant: Plant, severity: float) -> None:
    """A motor a little over its plate, never left to cool."""
    plant.signs["reset while hot"] = 0.6 + 0.4 * severity
    plant.signs["overload goes at starts"] = 0.5 + 0.4 * severity


def _starts(plant: Plant, severity: float, sign: str) -> None:
    plant.signs[sign] = 0.6 + 0.4 * severity
    plant.signs["overload goes at starts"] = 0.5 + 0.5 * severity


_SIX = "Each start brings six times the current, and the motor has no time to cool between."


@fault(
    "motor_overload.interlock_bounces",
    ("A door switch or a float makes and breaks as the machine shakes.", "The motors start over and over.", _SIX),
    onset="comes and goes",
)
def interlock_bounces(plant: Plant, severity: float) -> None:
    """Starts without end."""
    _starts(plant, severity, "door or float bounces")
    plant.control.stops_by = "door or water"


@fault(
    "motor_overload.stopped_for_each_rack",
    ("The crew stops and starts it for each rack.", "Dozens of starts an hour heat the winding.", _SIX),
    after="nothing lately",
)
def stopped_for_each_rack(plant: Plant, severity: float) -> None:
    """A habit."""
    _starts(plant, severity, "hand stops it for each rack")


@fault(
    "motor_overload.surroundings_warm",
    ("Motors and overloads stand in hot air all shift.", "Both lose what they shed into it.", _BENDS),
    onset="slowly",
)
def surroundings_warm(plant: Plant, severity: float) -> None:
    """The corner behind the machine has no air."""
    for motor in plant.motors.values():
        motor.around += 14.0 + 8.0 * severity
        motor.early = 0.78 - 0.06 * severity
    plant.signs["corner hot"] = 0.6 + 0.4 * severity


@fault(
    "motor_overload.class_too_quick",
    (
        "The overload's class is quicker than the pump's run-up allows.",
        "The start alone brings it to its trip heat.",
        "Once past the start it holds.",
    ),
    after="parts replaced",
    motor_protection=_RELAY,
)
def class_too_quick(plant: Plant, severity: float) -> None:
    """A class 5 where a 10 or 20 belongs."""
    plant.motors["wash"].trip_class = 5.0
    plant.signs["quick class"] = 1.0
    plant.signs["overload goes at starts"] = 0.6 + 0.4 * severity


_CHAIN = "The overload's contact is a link of the chain that holds the machine on."


@fault(
    "motor_overload.left_tripped",
    ("An overload has tripped and waits for its reset.", _CHAIN, "Lamps burn, nothing starts."),
)
def left_tripped(plant: Plant, severity: float) -> None:
    """A flag is out."""
    plant.control.links["overloads"] = False
    plant.signs["overload flag out"] = 1.0


@fault(
    "motor_overload.aux_contact_open",
    ("The overload's control contact stays open after the reset.", _CHAIN, "Its flag is in and still nothing starts."),
    motor_protection=_RELAY,
)
def aux_contact_open(plant: Plant, severity: float) -> None:
    """Burnt or stuck."""
    plant.control.links["overloads"] = False
    plant.signs["overload contact open"] = 1.0


def _unguarded(plant: Plant, severity: float) -> None:
    plant.motors["wash"].dial = 1.7
    plant.motors["wash"].drag += 0.5 + 0.2 * severity


@fault(
    "motor_overload.set_high",
    (
        "The overload is set far over the nameplate.",
        "A pump that drags runs on over its plate.",
        "The winding gets hot and nothing stops it.",
    ),
    after="electrical work",
    motor_protection=_RELAY,
)
def set_high(plant: Plant, severity: float) -> None:
    """Turned up to get through a shift."""
    _unguarded(plant, severity)


@fault(
    "motor_overload.mechanism_bound",
    (
        "The overload's slide is bound since a short.",
        "A pump that drags runs on over its plate.",
        "The winding gets hot and nothing stops it.",
    ),
    motor_protection=_RELAY,
)
def mechanism_bound(plant: Plant, severity: float) -> None:
    """It trips at nothing, its test included."""
    _unguarded(plant, severity)
    plant.motors["wash"].dial = 1.0
    plant.motors["wash"].early = 3.0
    plant.signs["overload bound"] = 1.0
