"""The control circuit: whether the machine starts, where its volts end, which motors do not run up."""

from __future__ import annotations

from diagnose.simulator.electrics import sources
from diagnose.simulator.plant import Plant

__all__ = ["PLACES", "PULLS_IN", "SAID_STANDING", "chain", "control_share", "lost_at", "stalls", "starts"]

# Places along the chain at which volts are read, each behind these links.
PLACES = {
    "transformer": ("feed", "breaker", "transformer"),
    "fuse": ("fuse",),
    "switch": ("switch",),
    "stops": ("stops",),
    "doors": ("doors",),
    "overloads": ("overloads",),
    "permits": ("permits",),
    "coil": ("order", "start"),
}
# What the kitchen can still complain of where the machine does not start.
SAID_STANDING = frozenset({"no_start", "breaker_trips"})
PULLS_IN = 0.8  # share of its volts at which a coil pulls in; common practice says 0.85 of rating at the least
_POOR = 0.45  # share of the volts that a poor contact leaves: judgement


def control_share(plant: Plant) -> float:
    """Volts of the control transformer over its rating; it hangs on the first two lines."""
    power = plant.power
    first, second = sources(power)[:2]
    if first is None or second is None:
        return 0.0
    return abs(first - second) / plant.plate["volts"] * power.control_share


def lost_at(plant: Plant) -> str:
    """The first link of the chain that is open, "" where volts come through to the master relay."""
    control = plant.control
    if control_share(plant) <= 0.0:
        return "feed"
    return next((name for name, closed in control.links.items() if not closed and name != "relay"), "")


def chain(plant: Plant) -> dict[str, float]:
    """Share of the control volts behind each place of the chain, the start button held."""
    share, found = control_share(plant), {}
    for place, links in PLACES.items():
        if not all(plant.control.links[link] for link in links):
            share = 0.0
        if plant.control.weak_at in links:
            share *= _POOR
        found[place] = share
    return found


def starts(plant: Plant) -> bool:
    """Whether it runs on after the start button was pressed and let go."""
    control = plant.control
    return all(control.links.values()) and control.holds and chain(plant)["coil"] >= PULLS_IN * 0.75


def stalls(plant: Plant, name: str) -> bool:
    """Whether a motor that stands can't run up: a line of three is gone, or its start winding gets nothing."""
    motor = plant.motors[name]
    if plant.power.phases == 1:
        return not motor.starts
    dead = plant.power.line_open or motor.terminal_open or motor.winding_open or not all(motor.poles)
    return bool(dead) or not motor.starts
