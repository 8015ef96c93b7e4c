"""Pull at which the slip clutch should let go, against the pull the racks want."""

from __future__ import annotations

from diagnose.formulas import said, system_of
from diagnose.physics.conveyor_drive import GRAVITY, conveyor_pull
from diagnose.rules.bands import limit_end
from diagnose.rules.facts import Expected, Facts
from diagnose.units import Quantity, parse_quantity, show_number

__all__ = ["expected_pull"]

SLIDE = "guide_rails.track_slide"
RACKS = 4.0  # in the machine at once; judgement
LOADED, TRIAL = (parse_quantity(t, "mass").si for t in ("30 lb", "20 lb"))  # a loaded rack; the one slid by hand
FRICTION = 0.3  # where no rack was slid; judgement


def expected_pull(facts: Facts, check: str) -> Expected | None:
    """The clutch's band, and what the racks want of it: by the pull that slid a rack, where that was read."""
    entry = facts.check(check)
    if entry is None or entry.reading is None:
        return None
    unit = parse_quantity(f"1 {entry.reading.unit}", "force").unit
    try:
        low, high = (limit_end(facts.book, facts.machine, "clutch_pull", end, unit) for end in ("low", "high"))
    except LookupError:
        return None
    slid, system = facts.known(SLIDE), system_of(unit)
    friction = slid.value.si / (TRIAL * GRAVITY) if slid else FRICTION
    wanted = Quantity.of_si(conveyor_pull(RACKS, LOADED, friction), "force", unit.symbol)
    stands = f"A rack of 20 lb slid at {slid.value}: friction" if slid else "Friction not measured, taken as"
    working = [
        f"In order: {show_number(low.value)} to {high} ({high.stands}).",
        f"{stands} {show_number(friction, 2)}; {RACKS:g} racks of 30 lb (judgement):",
        *said("conveyor-pull", system, racks=RACKS, weight=LOADED, friction=friction),
    ]
    if wanted.si > 0:
        working.append("What a clutch at the lower end has in hand, in percent:")
        working += said("clutch-margin", system, slips_at=unit.to_si(low.value), needed=wanted.si)
    line = f"{show_number(low.value, 3)} to {high} (racks want {show_number(wanted.value, 2)} {unit.symbol})"
    return Expected((line,), Quantity(low.value, unit), Quantity(high.value, unit), (), high.stands, tuple(working))
