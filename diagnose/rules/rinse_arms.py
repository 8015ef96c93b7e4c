"""Rinse flow: what passes the jets, against what the pressure there should drive through them."""

from __future__ import annotations

import math
from dataclasses import dataclass

from diagnose.formulas import said, system_of
from diagnose.model import Finding, Reading
from diagnose.physics.flow import flow_at_pressure
from diagnose.rules.bands import normal_share
from diagnose.rules.facts import Expected, Facts, Silent
from diagnose.rules.instruments import spread
from diagnose.rules.told import plates_told, reading_told
from diagnose.units import Quantity, Unit

__all__ = ["RinseFlow", "expected_flow", "flow_measured", "flow_now"]

JETS = 0.05  # flow of sound jets against the plate's; judgement (sprays follow exponents of 0.44 to 0.5)
PLATE_ALONE = 0.08  # flow against the plate with no pressure read; judgement: 20 psi plus or minus 3
OFF_FROM = 0.15  # this much more or less than expected points to the jets; judgement
_PLATE = ("rinse_flow", "rinse_pressure")


@dataclass(frozen=True)
class RinseFlow:
    """The rinse flow as best known: its SI value, relative standard deviation, and where it comes from."""

    value: float
    error: float
    origin: str  # measured | from the pressure | plate
    consults: tuple[Reading, ...] = ()
    plate: tuple[str, ...] = ()


def flow_now(facts: Facts) -> RinseFlow | None:
    """Flow measured at this stage; else from the flow pressure read at this stage; else the plate's."""
    measured, check = facts.now("rinse_arms.flow_measured"), facts.check("rinse_arms.flow_measured")
    if measured is not None and check is not None and measured.value.si > 0:
        error = spread(check, measured.value, measured) / measured.value.value
        return RinseFlow(measured.value.si, error, "measured", (measured,))
    return flow_by_pressure(facts)


def flow_by_pressure(facts: Facts) -> RinseFlow | None:
    """Flow that sound jets pass at the pressure read at this stage, or at the plate's pressure."""
    flow, rated = facts.plate("rinse_flow"), facts.plate("rinse_pressure")
    if flow is None or flow.si <= 0:
        return None
    pressure, check = facts.now("rinse_gauge.flow_pressure"), facts.check("rinse_gauge.flow_pressure")
    if pressure is None or check is None or rated is None or rated.si <= 0 or pressure.value.si <= 0:
        return RinseFlow(flow.si, PLATE_ALONE, "plate", (), ("rinse_flow",))
    gauge = spread(check, pressure.value, pressure) / pressure.value.value
    value = flow_at_pressure(flow.si, rated.si, pressure.value.si)
    return RinseFlow(value, math.hypot(gauge / 2, JETS), "from the pressure", (pressure,), _PLATE)


def flow_measured(facts: Facts) -> Finding | Silent | None:
    """Judge a measured rinse flow by the flow its pressure should drive.

    Purpose: low pressure with high flow is worn or missing jets or an end cap; low with low is upstream.
    Formula: Q = Q_plate √(P / P_plate); 15 % more or less is off.
    Source: square-root law of openings; 15 % is judgement.
    Fires: two_tank_electric_208 (rinse_flow = 4.2 gpm, rinse_pressure = 20 psi): rinse_gauge.flow_pressure = 12 psi;
      rinse_arms.flow_measured = 4.6 gpm -> more_than_expected
    Fires: two_tank_electric_208 (rinse_flow = 6.0 gpm, rinse_pressure = 20 psi): rinse_gauge.flow_pressure = 12 psi;
      rinse_arms.flow_measured = 4.6 gpm -> as_expected
    Silent: two_tank_electric_208: rinse_gauge.flow_pressure = 12 psi
    """
    name = "rinse_arms.flow_measured"
    reading, check = facts.fresh(name), facts.check(name)
    if reading is None or check is None:
        return None
    wanted = flow_by_pressure(facts)
    if wanted is None:
        return Silent(f"{check.title}: needs the rated rinse flow of the plate")
    ratio = reading.value.si / wanted.value
    own = spread(check, reading.value, reading) / max(reading.value.value, 1e-9)
    error = math.hypot(min(own, 0.2), wanted.error) * max(ratio, 0.2)
    more = normal_share((ratio - 1 - OFF_FROM) / error)
    less = normal_share((1 - OFF_FROM - ratio) / error)
    weights = {
        "as_expected": max(1 - more - less, 0.0),
        "more_than_expected": more,
        "less_than_expected": less,
    }
    working = [
        *_working(facts, wanted, reading.value.unit),
        f"Read: {reading.value} = {ratio * 100:.0f} % of that; from 85 to 115 % they agree.",
        *facts.assumed(*wanted.plate),
    ]
    says = _SAYS[max(weights, key=lambda o: weights[o])]
    return facts.conclude(name, weights, name, [reading], wanted.consults, working, says)


def expected_flow(facts: Facts, check: str) -> Expected | None:
    """The flow sound jets pass at the pressure read, or at the plate's."""
    wanted, plate = flow_by_pressure(facts), facts.plate("rinse_flow")
    if wanted is None or plate is None:
        return None
    flow = Quantity(plate.unit.from_si(wanted.value), plate.unit)
    working = (
        *plates_told(facts, *_PLATE),
        *(line for r in wanted.consults for line in reading_told(facts, r)),
        *_working(facts, wanted, plate.unit),
        "Sound jets keep to it within 5 %, within 8 where no pressure was read (judgement).",
        "15 % more or less points to the jets (judgement).",
    )
    line = _wanted_words(facts, wanted, plate.unit)
    return Expected((line,), flow, flow, facts.assumed(*wanted.plate), "Q = K √P and the plate", working)


def _working(facts: Facts, wanted: RinseFlow, unit: Unit) -> tuple[str, ...]:
    """The flow that the pressure drives, as the calculator writes it; the plate's where no pressure was read."""
    plate, rated = facts.plate("rinse_flow"), facts.plate("rinse_pressure")
    if not wanted.consults or plate is None or rated is None:
        return (f"{_wanted_words(facts, wanted, unit)}.",)
    pressure = wanted.consults[0].value.si
    values = {"rated_flow": plate.si, "rated_pressure": rated.si, "pressure": pressure}
    return said("rinse-flow-at-pressure", system_of(unit), **values)


def _wanted_words(facts: Facts, wanted: RinseFlow, unit: Unit) -> str:
    plate, rated = facts.plate("rinse_flow"), facts.plate("rinse_pressure")
    shown = f"{unit.from_si(wanted.value):.1f} {unit.symbol}"
    if not wanted.consults:
        at = f" at {rated}" if rated is not None else ""
        return f"{shown} on the plate{at}; no flow pressure read"
    return f"{plate} × √({wanted.consults[0].value} ÷ {rated}) = {shown} through sound jets"


_SAYS = {
    "as_expected": "The flow is what its pressure should drive.",
    "more_than_expected": "More passes than the pressure should drive: worn or missing jets, or an end cap off.",
    "less_than_expected": "Less passes than the pressure should drive: jets or arms are restricted.",
}
