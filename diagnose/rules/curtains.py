"""How wide a gap at a curtain may be, and how fast air is then drawn in past it."""

from __future__ import annotations

from diagnose.formulas import said, system_of
from diagnose.physics.air import gap_speed
from diagnose.rules.bands import limit_end
from diagnose.rules.facts import Expected, Facts
from diagnose.units import Quantity, parse_quantity, show_number

__all__ = ["VENTS", "expected_gap"]

# Check of a curtain's gap -> the flow behind it as read, and as the plate wants it.
VENTS = {
    "curtains.entrance_gap": ("vent_dampers.flow_entrance", "vent_entrance"),
    "curtains.exit_gap": ("vent_dampers.flow_exit", "vent_exit"),
}
WIDTH, HEIGHT = (parse_quantity(t, "length").si for t in ("24 in", "20 in"))  # usual opening for 20 in racks; judgement
HOLDS = 0.5  # m/s, 100 fpm: holds steam that drifts; from memory


def expected_gap(facts: Facts, check: str) -> Expected | None:
    """The limit of the gap, and the speed of the air past it."""
    entry, (read, plate) = facts.check(check), VENTS[check]
    if entry is None or entry.reading is None:
        return None
    unit = parse_quantity(f"1 {entry.reading.unit}", "length").unit
    try:
        most = limit_end(facts.book, facts.machine, "curtain_gap", "high", unit)
    except LookupError:
        return None
    working = [f"Widest in order: {most} ({most.stands})."]
    known, wanted = facts.known(read), facts.plate(plate)
    flow = known.value if known else wanted
    assumed: tuple[str, ...] = ()
    if flow is not None and flow.si > 0:
        gap = unit.to_si(most.value)
        speed = Quantity.of_si(gap_speed(flow.si, WIDTH, HEIGHT, gap), "air speed", "fpm")
        verdict = "holds" if speed.si >= HOLDS else "does not hold"
        working += [
            f"Air behind it: {flow} {'as read' if known else 'as wanted, not read'}; opening 24 by 20 in (judgement).",
            *said("curtain-capture", system_of(unit), flow=flow.si, width=WIDTH, height=HEIGHT, gap=gap),
            f"{show_number(speed.value, 2)} fpm {verdict} steam that drifts: 100 fpm does (from memory).",
        ]
        assumed = () if known else facts.assumed(plate)
    end = Quantity(most.value, unit)
    return Expected((f"under {most} ({most.stands})",), None, end, assumed, most.stands, tuple(working))
