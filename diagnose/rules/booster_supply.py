"""What feeds a booster: rated power and volts of an electric one, and the heat any of them gets now."""

from __future__ import annotations

from dataclasses import dataclass

from diagnose.model import Reading
from diagnose.physics.electric_heat import power_at_voltage
from diagnose.rules.facts import Facts, Silent

__all__ = ["Heat", "Supply", "supply_of"]


@dataclass(frozen=True)
class Heat:
    """Heat going into the water now: SI power, relative error, whether it was measured, and why so.

    `lines` are the working that led to the power, for a source of heat where that takes more than `words`.
    """

    power: float
    error: float
    read: bool
    words: str
    consults: tuple[Reading, ...] = ()
    plate: tuple[str, ...] = ()  # plate figures it stands on
    lines: tuple[str, ...] = ()


@dataclass(frozen=True)
class Supply:
    """What feeds the booster: rated power at rated volts, the volts there are, and where they come from."""

    power: float
    rated_volts: float
    plate_volts: float
    volts: float
    read: Reading | None

    @property
    def power_now(self) -> float:
        return power_at_voltage(self.power, self.rated_volts, self.volts)

    @property
    def power_by_plate(self) -> float:
        return power_at_voltage(self.power, self.rated_volts, self.plate_volts)

    @property
    def share(self) -> float:
        """Volts there are over the plate's volts."""
        return self.volts / self.plate_volts


def supply_of(
    facts: Facts, power: str = "booster_power", rated: str = "booster_volts", name: str = "booster"
) -> Supply | Silent:
    """Rated power and volts from the plate; the mean of measured volts, unless a line is lost.

    `power` and `rated` are the plate figures of the heater called `name`: a tank's elements may be fed so too.
    """
    watts, volts = facts.plate(power), facts.plate("volts")
    if watts is None or volts is None or watts.si <= 0 or volts.si <= 0:
        return Silent(f"the {name}'s power and the supply volts must be known")
    elements = facts.plate(rated) or volts
    if elements.si <= 0:
        return Silent(f"the volts of the {name}'s elements must be above nought")
    read = facts.known("supply_power.line_volts") or facts.known("supply_power.line_volts_single")
    now = volts.si
    if read is not None:
        seen = [v.si for v in read.values.values()]
        if min(seen) > 0.8 * max(seen) and 0.5 < max(seen) / volts.si < 1.5:
            now = sum(seen) / len(seen)
        else:
            read = None  # a lost line is for the currents to show, not to be averaged away
    return Supply(watts.si, elements.si, volts.si, now, read)
