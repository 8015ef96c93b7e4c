"""Steam from the main to the coils, as parts: what a fault can change. Pressures over the plate's, gauge."""

from __future__ import annotations

from dataclasses import dataclass

__all__ = ["MAIN", "REDUCER_LOSES", "STOP_LOSES", "STRAINER_LOSES", "SteamBranch", "SteamLine"]

MAIN = 2.5  # pressure of a sound main over the plate's: judgement, common practice is two to five times
# Pressure lost at the machine's rated steam over the plate's, by the square of the flow: judgement, pipes well sized.
STOP_LOSES, STRAINER_LOSES, REDUCER_LOSES = 0.03, 0.05, 0.25


@dataclass
class SteamLine:
    """The main, and what stands between it and the machine's coils."""

    main: float = MAIN
    others: float = 0.0  # of it, what other users take while they run
    slow: float = 0.0  # s in which a cold line gets its pressure
    stop_open: float = 1.0  # share of the stop's passage
    strainer_open: float = 1.0
    reducer_set: float = 1.03  # pressure the reducing valve holds without flow
    reducer_open: float = 1.0  # share of the passage it can open
    reducer_leak: float = 0.0  # share of it that stays open
    carried: float = 0.0  # water by weight that the boiler throws over
    undrained: float = 0.0  # water by weight that the line makes and its trap leaves in it
    leak: float = 0.0  # steam lost at a joint over the machine's rated steam
    gauge_factor: float = 1.0  # what the machine's gauge shows over what is there
    gauge_stuck: float | None = None  # Pa it always shows

    @property
    def wet(self) -> float:
        """Water by weight in the steam."""
        return min(0.9, self.carried + self.undrained)


@dataclass
class SteamBranch:
    """One heater's own branch: strainer, valve, coil or injector, trap and return. Flows over its rated steam."""

    strainer_open: float = 1.0
    valve_opens: float = 1.0  # share of its passage on a call
    valve_leaks: float = 0.0  # share of it when shut
    coil_scale: float = 0.0  # m of lime on its water side
    air: float = 0.0  # share of the coil that air fills at the start
    trap_open: float = 1.0  # share of the passage of its trap
    trap_blows: float = 0.0  # steam that goes straight through it
    back: float = 0.0  # pressure of the return over the plate's
    floods: float = 0.0  # rinse water that runs into the coil
    hole: float = 0.0  # steam that leaves the coil into the tank
    holes_open: float = 1.0  # share of an injector's holes
    bursts: float = 0.0  # share of an injector's steam that breaks through the water
    bypass: float = 0.0  # share of the pressure ahead of the reducing valve that gets round it to this branch
