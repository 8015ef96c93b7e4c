"""Short invented jobs for tests of documents: made of events, told in UTC."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import UTC, datetime, timedelta

from diagnose.job import events as ev
from diagnose.language import ENGLISH, Texts
from diagnose.model import Book
from diagnose.report import Dossier, Measures
from diagnose.report.measures import System
from tests.sheets import read

__all__ = [
    "CLOSED",
    "HOSTILE",
    "OPEN",
    "TRACE",
    "dossier_of",
    "handover_job",
    "handover_of",
    "hostile_job",
    "recorded",
]

# On the small book of tests/small_job.py: steam at the ends, a blown fuse behind it.
_BEGUN: tuple[ev.Event, ...] = (
    ev.Opened(machine="Pier", type="plain", serial="A 17", site="Quay Street, invented", own={"volts": "208 V"}),
    ev.SafetyAnswered(),
    ev.ComplaintSaid("steam_out"),
    ev.StepDone("complaints"),
    ev.ContextGiven("age", "old"),
)
OPEN: tuple[ev.Event, ...] = (
    *_BEGUN,
    ev.Acknowledged(["live"], "box.volts"),
    ev.ReadingTaken("box.volts", {"": "20 V"}, instrument="my meter", of_kind="voltmeter", accuracy="2 V"),
    ev.Skipped("box.where", "can't reach"),
    ev.NoteAdded("The fuse holder is brown."),
)
CLOSED: tuple[ev.Event, ...] = (
    *OPEN,
    ev.Acknowledged(["isolate"], "box.fuse"),
    ev.Repaired("box.fuse", "as expected"),
    ev.ReadingTaken("box.volts", {"": "207 V"}),
    ev.ComplaintSaid("steam_out", present=False),
    ev.Closed("repaired", "Spare fuses left on site."),
)
# On the whole knowledge: a plate's temperature through the rinse.
TRACE: tuple[ev.Event, ...] = (
    ev.Opened(machine="two_tank_electric_208", type="two_tank_electric_208", site="Pier Canteen, invented"),
    ev.SafetyAnswered(),
    ev.ComplaintSaid("rinse_cold"),
    ev.ReadingTaken("rinse_thermometer.panel_reading", {"": "172 °F"}),
    ev.ReadingTaken(
        "rinse_proof.trace",
        {f"s{n}": f"{t} °F" for n, t in enumerate((151, 155, 160, 162, 163, 164, 164, 163, 162, 160, 158, 153), 1)},
    ),
)
HOSTILE = (
    "<script>alert(1)</script><b>bold</b> <!-- &amp; \"'",
    "# head | pipe *star* _under_ `code` [link](javascript:x) ![i](http://example.invalid/x.png) ~~gone~~ $x$",
    "\x1b[2J\x1b]0;title\x07\x9b31mred\x08\x00\r\n| a | b |\n|---|---|",
    "right\u202eto left\u2066\u2069\u200f\u061c zero\u200bwidth\ufeff soft\u00ad",
    "line\u2028separator\u2029paragraph\u0085next\x0bdown\x0cpage",
    "w" * 10_000,
    "{nb} {count} {{ 7 * 7 }} {% raw %} %(x)s \\ \\x41",
    "www.example.invalid http://example.invalid a@example.invalid",
    "1. one",
    "- dash",
)


def recorded(events: Sequence[ev.Event], later: int = 3) -> tuple[ev.Record, ...]:
    """Records of the events, five minutes from one to the next; the last `later` of them a day on."""
    begun = datetime(2026, 3, 2, 8, tzinfo=UTC)
    times = [begun + timedelta(minutes=5 * n) for n in range(len(events))]
    if later and len(events) > len(TRACE):
        times = [t + timedelta(days=1) if n >= len(events) - later else t for n, t in enumerate(times)]
    return tuple(
        ev.Record(number=n, at=t.isoformat(timespec="seconds"), writer="test", event=e)
        for n, (e, t) in enumerate(zip(events, times, strict=True), 1)
    )


def dossier_of(
    book: Book, events: Sequence[ev.Event], texts: Texts = ENGLISH, system: System = "typed", job: str = "job-1001"
) -> Dossier:
    return Dossier(book, job, recorded(events), texts, Measures(system), UTC)


def hostile_job(text: str) -> tuple[ev.Event, ...]:
    """The closed job with this text wherever somebody may write freely."""
    opened = ev.Opened(machine=text, type="plain", serial=text, site=text, own={"volts": "208 V"})
    taken = ev.ReadingTaken("box.volts", {"": "20 V"}, instrument=text, of_kind="voltmeter", accuracy="2 V")
    rest = [e for e in CLOSED[1:-1] if not isinstance(e, ev.ReadingTaken | ev.NoteAdded)]
    people = (ev.CallBegun("kitchen", text), ev.CallEnded("visit", text), ev.HandedOn("parts", text), ev.Present(text))
    return (opened, *rest[:4], taken, ev.NoteAdded(text), *people, *rest[4:], ev.Closed("repaired", text))


def handover_job(book: Book, text: str = "both inside their errors") -> tuple[ev.Event, ...]:
    """A handover with lines that passed, were set, were left, and can't be told; `text` stands where words may."""
    opened = ev.Opened(
        machine="east", type="two_tank_electric_208", serial=text, site=text, own={"volts": "208 V"}, purpose="handover"
    )
    screw = ("final_rinse.regulator_screw", "final_rinse.pressure")
    return (
        opened,
        ev.SafetyAnswered(),
        read(book, "before_power.level_frame", "0.03 in/ft"),
        read(book, "electrical.earth_path", "0.05"),
        read(book, "heat.thermometers_there", "2"),
        ev.LineLeft("heat.thermometers", "waits for another trade", text),
        read(book, "rinse_gauge.flow_pressure", "12"),
        ev.Adjusted(*screw, {"turns": "1 x"}),
        read(book, "rinse_gauge.flow_pressure", "20.5"),
        read(book, "rinse_thermometer.panel_reading", "181"),
        read(book, "rinse_proof.trace", "155 160 163 165 166 167 167 166 165 165 164 162"),
        read(book, "booster_electric.line_amps", "83 83 82"),
        read(book, "safety.stops_stop", "1"),
        read(book, "people.shown_daily", "1"),
        ev.NoteAdded(text, "people.daily"),
        ev.NoteAdded(text),
        ev.Closed("handed over", text),
    )


def handover_of(book: Book, texts: Texts = ENGLISH, system: System = "typed", text: str = "on Friday") -> Dossier:
    return dossier_of(book, handover_job(book, text), texts, system)
