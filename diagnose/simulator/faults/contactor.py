"""Faults of the motors' contactors: poles, coils, magnets, and what feeds the coils."""

from __future__ import annotations

from diagnose.simulator.control import coil_impedance, draws_in
from diagnose.simulator.plant import Plant
from diagnose.simulator.registry import fault

__all__: list[str] = []

_THREE = (3,)
_OPEN = 1e9  # ohm
_TWO = "On two lines the motor hums at standstill, or runs on at 1.7 times its working current until it trips."
_BOUNCE = "Each time the motor starts anew, and its overload gathers the heat of the starts."
_STANDS = "The motor behind it is never switched on."


def _pole(plant: Plant, motor: str) -> None:
    plant.motors[motor].poles[1] = False


@fault(
    "contactor.pump_pole_open",
    ("One pole of the pump's contactor does not make.", "Its line ends there, with volts before it.", _TWO),
    onset="comes and goes",
    phases=_THREE,
)
def pump_pole_open(plant: Plant, severity: float) -> None:
    """Pitted by thousands of starts."""
    _pole(plant, "wash")


@fault(
    "contactor.drive_pole_open",
    ("One pole of the conveyor's contactor does not make.", "Film and lint lie between its faces.", _TWO),
    onset="comes and goes",
    phases=_THREE,
)
def drive_pole_open(plant: Plant, severity: float) -> None:
    """At one ampere no arc burns the film away."""
    _pole(plant, "drive")


@fault(
    "contactor.poles_welded",
    (
        "Poles of a motor's contactor have welded together.",
        "Its coil may drop as it will, the current flows on.",
        "Neither stop nor table switch nor overload can take the motor off its lines.",
    ),
)
def poles_welded(plant: Plant, severity: float) -> None:
    """The contactor that is called most: the conveyor's where racks stop it, else the pump's."""
    flight = plant.plate.traits["conveyor"] == "flight"
    plant.motors["wash" if flight else "drive"].welded = True
    plant.signs["contacts pitted"] = 0.3


@fault(
    "contactor.control_tap_high",
    (
        "The control transformer's primary hangs on the tap for a higher supply than there is.",
        "Every coil gets seven eighths of its volts, and pull goes with their square.",
        "When the house sags a little, contactors let go and pull in again.",
    ),
    onset="installed",
    after="newly connected",
)
def control_tap_high(plant: Plant, severity: float) -> None:
    """240 V chosen on 208 V; the rush takes the last few percent."""
    plant.power.control_share = 208.0 / 240.0
    plant.power.volts *= 0.975 - 0.015 * severity
    plant.signs["overload goes at starts"] = 0.3 + 0.3 * severity
    plant.signs["contacts pitted"] = 0.3 + 0.4 * severity


@fault(
    "contactor.hold_contact_poor",
    (
        "A contact in the coils' circuit makes poorly.",
        "It takes a third of their volts, more when it is shaken, and the contactors let go for a moment.",
        _BOUNCE,
    ),
    onset="comes and goes",
    after="cleaning by the crew",
)
def hold_contact_poor(plant: Plant, severity: float) -> None:
    """A stop button or a door switch that is green inside: some ohms in series with the coils."""
    where = "doors" if round(severity * 100) % 2 else "stops"
    plant.control.poor[where] = (0.42 + 0.5 * severity) * abs(coil_impedance(plant))
    plant.signs["contactor hold poor"] = 0.4 + 0.5 * severity
    plant.signs["overload goes at starts"] = 0.3 + 0.4 * severity
    plant.signs["contacts pitted"] = 0.2 + 0.4 * severity


@fault(
    "contactor.shading_ring_broken",
    (
        "The copper ring in a contactor's pole face is cracked.",
        "The pull falls to nothing twice in each cycle, and the armature trembles.",
        "Full volts stand at the coil, it buzzes, and its contacts arc.",
    ),
    onset="slowly",
)
def shading_ring_broken(plant: Plant, severity: float) -> None:
    """Cracked by hammering; or grease between the faces."""
    plant.motors["wash"].coil.ring = 0.6 - 0.5 * severity
    plant.signs["contactor buzz"] = 0.5 + 0.5 * severity
    plant.signs["overload goes at starts"] = 0.2 + 0.3 * severity
    plant.signs["contacts pitted"] = 0.3 + 0.5 * severity


def _out(plant: Plant, motor: str) -> None:
    part = plant.motors[motor]
    part.coil_works = draws_in(part.coil)


@fault(
    "contactor.pump_coil_open",
    ("The coil of the pump's contactor is burnt through.", "Full volts stand across it and nothing pulls.", _STANDS),
)
def pump_coil_open(plant: Plant, severity: float) -> None:
    """Cooked by volts, dirt or a hot box."""
    plant.motors["wash"].coil.ohms = _OPEN
    _out(plant, "wash")


@fault(
    "contactor.drive_coil_open",
    ("The coil of the conveyor's contactor is burnt through.", "Water sprays and racks stand.", _STANDS),
)
def drive_coil_open(plant: Plant, severity: float) -> None:
    """Hundreds of closings a day."""
    plant.motors["drive"].coil.ohms = _OPEN
    _out(plant, "drive")


@fault(
    "contactor.coil_wrong_volts",
    (
        "The new contactor's coil is wound for other volts than this control circuit has.",
        "At half its volts a coil pulls with a quarter; at five times it is gone in a minute.",
        _STANDS,
    ),
    onset="installed",
    after="parts replaced",
)
def coil_wrong_volts(plant: Plant, severity: float) -> None:
    """One for twice the volts, or one for a fifth, burnt."""
    coil = plant.motors["wash"].coil
    if severity < 0.85:
        coil.label = 2.0
    else:
        coil.label, coil.ohms = 0.2, _OPEN
    _out(plant, "wash")


@fault(
    "contactor.armature_held",
    (
        "Something lies in the way of a contactor's armature.",
        "It hangs half way, its magnet stays open, and the coil draws many times its holding current.",
        _STANDS,
    ),
    after="parts replaced",
)
def armature_held(plant: Plant, severity: float) -> None:
    """A packing wedge, lint, an interlock fitted askew."""
    plant.motors["wash"].coil.free = 0.7 - 0.4 * severity
    plant.signs["contactor held hum"] = 0.4 + 0.4 * severity
    _out(plant, "wash")
