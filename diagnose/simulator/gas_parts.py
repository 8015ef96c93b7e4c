"""The gas side of the simulated machine: the line up to its burners, and a burner with its exchanger. All SI; sound."""

from __future__ import annotations

from dataclasses import dataclass

__all__ = ["Burner", "GasLine"]

INCH = 249.08891  # Pa, inch of water


@dataclass
class GasLine:
    """From the branch's regulator to the burners' valves. Flows count in shares of all the machine's rated gas."""

    supply: float = 7.2 * INCH  # Pa behind the regulator, flowing; common practice
    lockup: float = 0.2 * INCH  # Pa that it stands higher with nothing flowing: judgement
    others: float = 2.0  # what other appliances on the branch burn at the rush: judgement
    branch: float = 10.0  # Pa lost in the branch at rated flow, squared with the flow: judgement
    strainer: float = 12.0  # the same of the machine's strainer, and
    cock: float = 12.0  # of its cock and connector: judgement
    strainer_open: float = 1.0
    cock_open: float = 1.0
    slug: float = 0.0  # Pa by which it swings with flow through water in a low place; half of it is lost in the mean
    sinks: float = 0.0  # Pa lost after ten minutes of firing for each rated flow: a bottle that chills
    shut: bool = False  # a valve ahead of the machine
    held: bool = False  # by the ventilation's interlock
    dead_branch: bool = False  # what is shut or held takes the other appliances with it
    aired: float = 0.0  # share of air that still stands in the line

    @property
    def off(self) -> bool:
        return self.shut or self.held


@dataclass
class Burner:
    """A burner: its air, its flame, its valve and jets, and the wall through which it heats."""

    input: float  # W rated
    efficiency: float  # share of it that a clean wall brings into the water
    case_loss: float = 0.0  # share that burner box and walls lose to the room
    manifold: float = 1.0  # pressure its regulator holds, over the plate's
    bore: float = 1.0  # area of its jets over the plate's
    jets_open: float = 1.0  # share of that area free
    valve_works: bool = True
    draught: float = 1.4  # at the air switch over the figure printed on it: judgement
    hoods_draw: float = 0.1  # of that, what the kitchen's hoods take away: judgement
    air: float = 1.0  # for the flame, over the sound
    spark: float = 1.0  # under a half it does not light
    proved: float = 3.0  # flame signal over the least that its control asks: judgement
    lime: float = 0.0  # m on the water side
    soot: float = 0.0  # share of the passages' width
