"""The trace of a plate's own temperature: what each second is worth, and whether the sum is enough."""

from __future__ import annotations

from diagnose.model import Reading
from diagnose.physics.sanitising import HEAT_UNITS_WANTED, heat_unit_rate, heat_units_of_trace
from diagnose.report.document import Row, Table
from diagnose.report.dossier import Dossier
from diagnose.units import show_number

__all__ = ["TRACE", "trace_table"]

TRACE = "rinse_proof.trace"
_STEP = 1.0  # s, as the check asks for


def trace_table(dossier: Dossier, reading: Reading) -> tuple[Table, str]:
    """The trace as a table with the heat units so far, and a sentence on their sum."""
    texts, measures = dossier.texts, dossier.measures
    rows, so_far = [], 0.0
    for nth, quantity in enumerate(reading.values.values(), 1):
        so_far += heat_unit_rate(quantity.si) * _STEP
        rows.append(Row((str(nth), measures.values({"": quantity}), show_number(round(so_far)))))
    headers = (texts.say("Second"), texts.say("Temperature"), texts.say("Heat units so far"))
    table = Table(texts.say("The trace in figures"), headers, tuple(rows))
    units = heat_units_of_trace([q.si for q in reading.values.values()], _STEP)
    figures = {"units": f"{units:.0f}", "wanted": f"{HEAT_UNITS_WANTED:.0f}"}
    stands = texts.say("The figure wanted is that of NSF/ANSI 3, whose text was not seen.")
    if units >= HEAT_UNITS_WANTED:
        return table, texts.say(
            "The plate got {units} heat units; {wanted} are wanted: enough.", **figures
        ) + " " + stands
    return table, texts.say("The plate got {units} heat units; {wanted} are wanted: too few.", **figures) + " " + stands
