"""Which heater a bank's readings belong to, what feeds it, and the sentences all rules of banks share."""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import dataclass

from diagnose.rules.booster_supply import Supply, supply_of
from diagnose.rules.facts import Facts, Silent
from diagnose.units import show_number

__all__ = [
    "BANKS",
    "ELEMENT_SPREAD",
    "LOW_FROM",
    "RATING_SPREAD",
    "VOLTS_UNREAD",
    "Bank",
    "bank_of",
    "fed",
    "shares",
    "supply_line",
]

ELEMENT_SPREAD = 0.025  # elements of one bank against each other; judgement
RATING_SPREAD = 0.04  # a whole bank against its rating, cold and hot; judgement (makers allow +5 % -10 %)
VOLTS_UNREAD = 0.04  # supply volts against the plate where nobody measured them; judgement from C84.1's ±5 %
LOW_FROM = 0.90  # share of the plate's volts, hence of the current, below which it is low (as for volts)


@dataclass(frozen=True)
class Bank:
    """One heater's bank: the plate figures of its power and of its elements' volts, and its name."""

    power: str
    volts: str
    name: str

    @property
    def plate(self) -> tuple[str, ...]:
        """Every plate figure its currents stand on."""
        return self.power, self.volts, "volts"


BANKS: Mapping[str, Bank] = {
    "booster_electric": Bank("booster_power", "booster_volts", "booster"),
    "tank_heater_electric": Bank("tank_power", "tank_volts", "tank heater"),
}
RINSE_TANK = Bank("rinse_tank_power", "tank_volts", "power-rinse tank's heater")


def bank_of(facts: Facts, assembly: str) -> Bank:
    """The bank an assembly's readings belong to: of two tanks the one that was said to stay cold."""
    if assembly == "tank_heater_electric" and facts.chosen("tank_heater_electric.which_tank") == "rinse_tank":
        return RINSE_TANK
    return BANKS[assembly]


def fed(facts: Facts, bank: Bank) -> Supply | Silent:
    """What feeds a bank."""
    return supply_of(facts, bank.power, bank.volts, bank.name)


def supply_line(supply: Supply, connection: str, full: float) -> str:
    """Power, volts and connection, and the current they make, in one sentence."""
    volts = f"{show_number(supply.volts)} V" + (" (measured)" if supply.read else "")
    rated = ""
    if not math.isclose(supply.rated_volts, supply.volts):
        share = (supply.volts / supply.rated_volts) ** 2 * 100
        rated = f" (elements for {show_number(supply.rated_volts)} V: {share:.0f} % of {supply.power / 1e3:g} kW)"
    each = "" if connection == "single phase" else " in each line"
    return f"{show_number(supply.power_now / 1e3)} kW at {volts} in {connection}: {full:.1f} A{each}{rated}."


def shares(**likely: float) -> dict[str, float]:
    """Likelihoods made shares of one."""
    total = sum(likely.values())
    return {o: v / total for o, v in likely.items()}
