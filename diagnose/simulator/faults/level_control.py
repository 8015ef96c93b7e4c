"""Faults of the tank's filling."""

from __future__ import annotations

from diagnose.simulator.plant import Plant
from diagnose.simulator.registry import fault

__all__: list[str] = []

_THIN = "Little water comes, so filling takes longer by as much."
_DRY = "No water comes though the tank is low."
_RUNS = "Water runs into the full tank and away over the lip, and takes heat with it."


def _throttled(plant: Plant, share: float) -> None:
    for tank in plant.tanks.values():
        tank.fill_open = share


def _dry(plant: Plant) -> None:
    for tank in plant.tanks.values():
        tank.fill_dead = True


def _climb(plant: Plant, kelvins: float) -> float:
    """Seconds in which the heater brings what is left of the wash tank's water up by so much."""
    tank = plant.tanks["wash"]
    return 4.12e6 * 0.28 * tank.volume * kelvins / max(tank.heater.power, 1.0)


@fault(
    "level_control.fill_stop_closed",
    ("The fill's own stop is shut, or partly so.", "It takes the pressure that the fill should have.", _THIN),
    after="plumbing work",
)
def fill_stop_closed(plant: Plant, severity: float) -> None:
    """Partly shut, or shut."""
    _throttled(plant, 0.35 - 0.3 * severity)
    plant.signs["fill stop not open"] = 1.0


@fault(
    "level_control.fill_screen_blocked",
    ("The screen at the fill valve's inlet is full.", "It takes the pressure that the fill should have.", _THIN),
    onset="slowly",
)
def fill_screen_blocked(plant: Plant, severity: float) -> None:
    """Blocked."""
    _throttled(plant, 0.4 - 0.25 * severity)
    plant.signs["fill screen full"] = 0.6 + 0.4 * severity


@fault(
    "level_control.fill_valve_limed",
    ("Lime lets the fill valve open only part of the way.", "Its passage is small.", _THIN),
    onset="slowly",
)
def fill_valve_limed(plant: Plant, severity: float) -> None:
    """Limed."""
    _throttled(plant, 0.4 - 0.25 * severity)
    plant.signs["fill valve limed"] = 0.6 + 0.4 * severity


@fault("level_control.fill_coil_dead", ("The fill valve's coil is open.", "It is fed and does not pull.", _DRY))
def fill_coil_dead(plant: Plant, severity: float) -> None:
    """Open coil."""
    _dry(plant)
    plant.signs["fill coil open"] = 1.0


@fault(
    "level_control.float_hangs_up",
    ("The float hangs in its upper place.", "It tells a full tank, and nothing calls the fill.", _DRY),
)
def float_hangs_up(plant: Plant, severity: float) -> None:
    """Hangs."""
    _dry(plant)
    plant.signs["float hangs high"] = 1.0
    plant.signs["fill not called"] = 1.0


@fault(
    "level_control.probe_bridged",
    ("A film joins the level probe to the wall.", "It tells a full tank, and nothing calls the fill.", _DRY),
    onset="slowly",
)
def probe_bridged(plant: Plant, severity: float) -> None:
    """Bridged."""
    _dry(plant)
    plant.signs["level probe bridged"] = 1.0
    plant.signs["fill not called"] = 1.0


@fault(
    "level_control.level_relay_dead",
    ("The level relay does not pass the call on.", "Told that the tank is low, nothing moves.", _DRY),
)
def level_relay_dead(plant: Plant, severity: float) -> None:
    """Dead relay."""
    _dry(plant)
    plant.signs["level relay dead"] = 1.0
    plant.signs["fill not called"] = 1.0


def _runs(plant: Plant, sign: str) -> None:
    tank = plant.tanks["wash"]
    tank.says_low = True
    tank.fill_held = True
    plant.signs[sign] = 1.0
    plant.signs["fill called for"] = 1.0


@fault(
    "level_control.probe_scaled",
    ("The level probe is limed over and never tells a full tank.", "The fill is called for all the time.", _RUNS),
    onset="slowly",
)
def probe_scaled(plant: Plant, severity: float) -> None:
    """Limed over."""
    _runs(plant, "crust on the level probe")


@fault(
    "level_control.float_sinks",
    ("The float has taken in water and lies low.", "The fill is called for all the time.", _RUNS),
)
def float_sinks(plant: Plant, severity: float) -> None:
    """Lies low."""
    _runs(plant, "float lies low")


@fault(
    "level_control.set_above_overflow",
    ("The fill is set to shut above the lip.", "The level never gets there.", _RUNS),
    onset="installed",
    after="parts replaced",
)
def set_above_overflow(plant: Plant, severity: float) -> None:
    """Set too high."""
    _runs(plant, "level set above the lip")


@fault(
    "level_control.relay_welded",
    ("The level relay's contact has welded.", "The fill coil is fed with a full tank.", _RUNS),
)
def relay_welded(plant: Plant, severity: float) -> None:
    """Welded."""
    _runs(plant, "level relay welded")


@fault(
    "level_control.hand_fill_open",
    ("The valve for filling by hand stands open.", "It passes water whatever the control says.", _RUNS),
    after="cleaning by the crew",
)
def hand_fill_open(plant: Plant, severity: float) -> None:
    """Left open."""
    plant.tanks["wash"].fill_leak = (0.1 + 0.25 * severity) * plant.rinse.rated_flow
    plant.signs["hand fill open"] = 1.0


@fault(
    "level_control.fill_backwards",
    ("The fill valve sits against its arrow.", "The supply lifts its diaphragm instead of pressing it shut.", _RUNS),
    onset="installed",
    after="plumbing work",
)
def fill_backwards(plant: Plant, severity: float) -> None:
    """Never quite shuts."""
    plant.tanks["wash"].fill_leak = (0.12 + 0.2 * severity) * plant.rinse.rated_flow
    plant.signs["fill arrow against the flow"] = 1.0


@fault(
    "level_control.cut_out_stuck",
    (
        "The low-water cut-out tells low with a full tank.",
        "It keeps the heat off, by design of a wrong figure.",
        "Filled to its mark the tank stays cold.",
    ),
)
def cut_out_stuck(plant: Plant, severity: float) -> None:
    """Holds the heat off."""
    plant.tanks["wash"].heater.coil_works = False
    plant.signs["cut-out says low"] = 1.0


@fault(
    "level_control.cut_out_bridged",
    (
        "The low-water cut-out is bridged, and the crew draws the tank down with its heat switched on.",
        "The thermostat's bulb hangs in the air and calls, and nothing else takes the heat away.",
        "The little water that is left climbs in minutes, while a full tank keeps its figure.",
    ),
    after="electrical work",
)
def cut_out_bridged(plant: Plant, severity: float) -> None:
    """Minutes for which it is left so."""
    tank = plant.tanks["wash"]
    tank.low_cutout = False
    tank.drawn_hot = (1.0 + 0.8 * severity) * _climb(plant, 25.0)


@fault(
    "level_control.siphoned_back",
    (
        "The fill ends under the water line, and its vacuum breaker does not let air in.",
        "When the building's main is let down at night the pipe siphons the tank back to its outlet.",
        "By day the main's pressure keeps it from it, and nothing leaks.",
    ),
    onset="comes and goes",
    after="plumbing work",
)
def siphoned_back(plant: Plant, severity: float) -> None:
    """As far as the outlet."""
    plant.signs["water drawn back"] = 0.5 + 0.5 * severity
    plant.signs["fill breaker stuck"] = 1.0
