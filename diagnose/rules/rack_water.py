"""Final-rinse water a rack: of the plate, or the rinse's flow over the racks an hour."""

from __future__ import annotations

from dataclasses import dataclass

from diagnose.model import Reading
from diagnose.rules.facts import Facts
from diagnose.rules.told import plates_told, reading_told, shown
from diagnose.units import Quantity

__all__ = ["RackWater", "plate_water", "rack_water"]

FLOW = "rinse_arms.flow_measured"


@dataclass(frozen=True)
class RackWater:
    """Water a rack in m3, how it was come by, and the reading consulted for it."""

    si: float
    working: tuple[str, ...]
    assumptions: tuple[str, ...] = ()
    measured: Reading | None = None


def rack_water(facts: Facts, unit: str = "gal") -> RackWater | None:
    """Rinse water a rack: the plate's, unless a measured flow or only the plate's flow can be shared among the racks.

    Racks edge to edge keep the rinse running all the time: flow over racks an hour is then what each gets.
    None where neither the figure nor the racks an hour are known.
    """
    flow, racks = facts.plate("rinse_flow"), facts.plate("racks_per_hour")
    measured = facts.known(FLOW)
    told = facts.plate("rinse_per_rack")
    now = measured.value.si if measured is not None else None
    if told is not None and told.si > 0:
        if now is None or flow is None or flow.si <= 0:
            return RackWater(told.si, plates_told(facts, "rinse_per_rack"), facts.assumed("rinse_per_rack"))
        water = told.si * now / flow.si
        line = f"{told} × {measured.value if measured else ''} ÷ {flow} = {shown(water, 'volume', unit)} a rack now"
        names: tuple[str, ...] = ("rinse_per_rack", "rinse_flow")
        return RackWater(water, (*plates_told(facts, *names), line), facts.assumed(*names), measured)
    if racks is None or racks.si <= 0 or (now is None and (flow is None or flow.si <= 0)):
        return None
    rate = now if now is not None else flow.si if flow is not None else 0.0
    if rate <= 0:
        return None
    water = rate / racks.si
    names = ("racks_per_hour",) if now is not None else ("rinse_flow", "racks_per_hour")
    shares = f"{shown(rate, 'flow', 'gpm' if unit == 'gal' else 'L/min')} × 60 ÷ {racks} = "
    lines = (*plates_told(facts, *names), *reading_told(facts, measured), f"{shares}{shown(water, 'volume', unit)}")
    return RackWater(water, lines, facts.assumed(*names), measured)


def plate_water(facts: Facts) -> tuple[Quantity, tuple[str, ...]] | None:
    """Rinse water a rack by the plate alone, and the names of the figures it comes from; None where it is not known."""
    water = facts.plate("rinse_per_rack")
    if water is not None:
        return (water, ("rinse_per_rack",)) if water.si > 0 else None
    flow, racks = facts.plate("rinse_flow"), facts.plate("racks_per_hour")
    if flow is None or racks is None or flow.si <= 0 or racks.si <= 0:
        return None
    return Quantity.of_si(flow.si / racks.si, "volume", "gal"), ("rinse_flow", "racks_per_hour")
