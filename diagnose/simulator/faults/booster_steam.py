"""Faults of the steam booster: its branch, valve, coil, trap and return."""

from __future__ import annotations

from diagnose.simulator.plant import Plant
from diagnose.simulator.registry import fault
from diagnose.simulator.steam_parts import SteamBranch

__all__: list[str] = []

_STEAM = ("steam",)
_SHORT = "Less heat than the rinse takes: it sinks while racks follow one another."
_FLOODED = "Water stands in the coil, and only what is left above it condenses steam."


def branch(plant: Plant) -> SteamBranch:
    """The booster's own branch."""
    return plant.booster.heater.steam


@fault(
    "booster_steam.coil_limed",
    (
        "Lime lies on the coil's water side, and the heat has to come through it.",
        "The shell's resistance adds to the coil's own, so steam of full pressure condenses more slowly.",
        _SHORT,
    ),
    onset="slowly",
    booster=_STEAM,
)
def coil_limed(plant: Plant, severity: float) -> None:
    """Half a millimetre and more."""
    branch(plant).coil_scale = 0.4e-3 + 0.8e-3 * severity


@fault(
    "booster_steam.air_bound",
    (
        "The coil's air vent stays shut, and the air that came in while it was off stays too.",
        "Where air stands no steam condenses; through the trap it leaves only slowly.",
        "The rinse is cold at first and gets better within the hour.",
    ),
    onset="slowly",
    booster=_STEAM,
)
def air_bound(plant: Plant, severity: float) -> None:
    """Full of air at the start."""
    branch(plant).air = 0.8 + 0.2 * severity
    plant.signs["booster steam air-bound"] = 0.6 + 0.4 * severity


@fault(
    "booster_steam.strainer_blocked",
    (
        "The screen of the booster's own strainer is felted with rust.",
        "At rest the coil has full pressure; while steam is drawn most of it is lost in the screen.",
        _SHORT,
    ),
    onset="slowly",
    after="plumbing work",
    booster=_STEAM,
)
def strainer_blocked(plant: Plant, severity: float) -> None:
    """Choked."""
    branch(plant).strainer_open = 0.122 - 0.045 * severity


@fault(
    "booster_steam.valve_stays_shut",
    (
        "The steam valve gets its call and does not open, or only by a crack.",
        "Through a crack so little steam comes that it all condenses and no pressure builds up behind it.",
        _SHORT,
    ),
    booster=_STEAM,
)
def valve_stays_shut(plant: Plant, severity: float) -> None:
    """By a crack, or with a burnt coil not at all."""
    branch(plant).valve_opens = 0.07 - 0.07 * severity
    plant.signs["booster steam solenoid burnt"] = 1.0 if severity > 0.85 else 0.0


@fault(
    "booster_steam.trap_closed",
    (
        "The trap does not let the condensate out.",
        _FLOODED,
        _SHORT,
    ),
    booster=_STEAM,
)
def trap_closed(plant: Plant, severity: float) -> None:
    """Blocked, or nearly."""
    branch(plant).trap_open = 0.26 - 0.25 * severity


@fault(
    "booster_steam.return_backs_up",
    (
        "The return stands under nearly as much pressure as the coil, and pushes little out.",
        _FLOODED,
        "Let out into a bucket instead, the condensate gushes and the heat is back.",
    ),
    onset="installed",
    after="plumbing work",
    booster=_STEAM,
)
def return_backs_up(plant: Plant, severity: float) -> None:
    """Held back."""
    branch(plant).back = 0.95 + 0.09 * severity


@fault(
    "booster_steam.coil_leaks",
    (
        "The coil has a hole, and rinse water, which has more pressure than the steam, runs into it.",
        _FLOODED,
        "The trap gives more than the heat can make, and it is cool.",
    ),
    booster=_STEAM,
)
def coil_leaks(plant: Plant, severity: float) -> None:
    """Rinse water in the condensate; what is lost of the rinse is small beside its flow and not counted."""
    branch(plant).floods = 1.35 + 0.6 * severity


@fault(
    "booster_steam.valve_leaks",
    (
        "Rust lies between disc and seat of the steam valve, and it leaks when shut.",
        "While racks run that is part of the heat; in a pause the water goes on warming past its setting.",
        "The first rinse after it flashes, and the relief valve spits.",
    ),
    booster=_STEAM,
)
def valve_leaks(plant: Plant, severity: float) -> None:
    """Leaks when shut."""
    branch(plant).valve_leaks = 0.04 + 0.05 * severity
    plant.signs["booster steam valve leaks"] = 0.6 + 0.4 * severity
    plant.signs["booster soaks hot in pauses"] = 0.7 + 0.3 * severity
