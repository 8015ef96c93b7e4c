"""Faults of drain and overflow."""

from __future__ import annotations

from diagnose.simulator.plant import Plant
from diagnose.simulator.registry import fault

__all__: list[str] = []

_GOES = "Water that leaves is made up by colder water, which the heater must warm."
_STANDS = "Water that can't leave stands over the lip and finds its way onto the floor."


@fault(
    "drain_overflow.fill_weeps",
    (
        "The fill valve does not shut tight.",
        "A trickle runs into the full tank and over its lip, day and night.",
        _GOES,
    ),
    onset="slowly",
)
def fill_weeps(plant: Plant, severity: float) -> None:
    """A share of the rinse's flow."""
    plant.tanks["wash"].fill_leak = (0.06 + 0.2 * severity) * plant.rinse.rated_flow
    plant.signs["grit at fill seat"] = 0.6 + 0.4 * severity


@fault(
    "drain_overflow.drain_left_open",
    (
        "The drain stands open, or short of shut.",
        "More leaves than the fill brings.",
        "The level never gets to its mark.",
    ),
    after="cleaning by the crew",
)
def drain_left_open(plant: Plant, severity: float) -> None:
    """A stream."""
    plant.tanks["wash"].drain_leak = (0.8 + 1.2 * severity) * plant.tanks["wash"].fill_flow
    plant.signs["drain lever open"] = 1.0


@fault(
    "drain_overflow.drain_leaks",
    ("The drain valve leaks past its seat.", "The waste pipe trickles with all shut.", _GOES),
    onset="slowly",
)
def drain_leaks(plant: Plant, severity: float) -> None:
    """A trickle."""
    plant.tanks["wash"].drain_leak = (0.06 + 0.2 * severity) * plant.rinse.rated_flow
    plant.signs["waste pipe trickles"] = 0.6 + 0.4 * severity


@fault(
    "drain_overflow.standpipe_leaks",
    ("The overflow's standpipe is not home on its ring.", "Water leaves under it.", _GOES),
    after="cleaning by the crew",
)
def standpipe_leaks(plant: Plant, severity: float) -> None:
    """Under its ring."""
    plant.tanks["wash"].drain_leak = (0.08 + 0.25 * severity) * plant.rinse.rated_flow
    plant.signs["standpipe not home"] = 0.6 + 0.4 * severity


@fault(
    "drain_overflow.overflow_blocked",
    ("The overflow's cap or pipe is choked.", "What racks and rinse bring can't leave there.", _STANDS),
    onset="slowly",
)
def overflow_blocked(plant: Plant, severity: float) -> None:
    """Choked."""
    plant.tanks["wash"].overflow_open = 0.3 - 0.25 * severity
    plant.signs["overflow choked"] = 0.6 + 0.4 * severity


@fault(
    "drain_overflow.waste_backs_up",
    ("The building's waste pipe does not take the water.", "The floor sink stands full.", _STANDS),
)
def waste_backs_up(plant: Plant, severity: float) -> None:
    """A blocked waste."""
    for tank in plant.tanks.values():
        tank.overflow_open = min(tank.overflow_open, 0.4)
    plant.signs["waste backs up"] = 0.6 + 0.4 * severity


@fault(
    "drain_overflow.runs_by_design",
    (
        "The overflow runs while racks are rinsed.",
        "What the rinse brings must leave, and carries grease away.",
        "In the pause it is still.",
    ),
)
def runs_by_design(plant: Plant, severity: float) -> None:
    """As it must."""
    plant.signs["overflow runs as it must"] = 0.8 + 0.2 * severity


@fault(
    "drain_overflow.bypass_off",
    (
        "A bypass lets the rinse water past the tank to the waste.",
        "The tank gets nothing back for what racks carry out.",
        "Its level sinks rack by rack.",
    ),
    after="cleaning by the crew",
)
def bypass_off(plant: Plant, severity: float) -> None:
    """Past the tank."""
    plant.rinse.past = 0.75 + 0.25 * severity
    plant.signs["rinse goes past the tank"] = 0.6 + 0.4 * severity
    plant.signs["rinse water bypasses the tank"] = 0.6 + 0.4 * severity
