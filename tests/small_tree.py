"""An invented machine's fault tree with every kind of gate, for what draws it."""

from __future__ import annotations

from typing import Any

from diagnose.model import Complaint, Event, Machine, MachineType
from tests.unit.inference.hand_book import BASIS, book_of, cause, check

__all__ = ["BOOK", "MACHINE", "NASTY", "nasty_book"]

_SEEN = "nearly always"
NASTY = 'A "quoted" <b>title</b> & more; #1 \\ it\'s [so] ]]> `end`'


def _machine(booster: str) -> Machine:
    traits: dict[str, str | int | bool] = {"booster": booster}
    kind = MachineType(
        id=f"made_up_{booster}", title=f"Made-up machine, {booster}", traits=traits, plate={}, basis=BASIS
    )
    return Machine(kind.id, kind)


def _event(name: str, title: str, of: str, gate: Any = "any", k: int | None = None) -> Event:
    return Event(id=name, title=title, gate=gate, k=k, of=of.split(), basis=BASIS)


MACHINE = _machine("electric")

BOOK = book_of(
    [
        Complaint(
            id="no_spray",
            title="No spray comes from the arm",
            kitchen=["the arm is dry"],
            of=["arm.dry", "feed.starved", "feed.crossed", "drive.weak"],
            prove_by=["arm.look"],
            basis=BASIS,
        )
    ],
    [
        _event("arm.dry", "Water does not leave by the jets", "arm.jets_choked arm.cap_off feed.starved"),
        _event("feed.starved", "The arm gets too little water", "feed.valve_shut feed.screen_full feed.lock"),
        _event("feed.crossed", "Cold water crosses into the hot line", "feed.tap_open feed.check_leaks", "all"),
        _event("drive.weak", "The pump turns too slowly", "drive.belt drive.brush drive.volts", "at_least", 2),
    ],
    [
        cause("arm.jets_choked", title="Jets are choked with lime"),
        cause("arm.cap_off", "uncommon", title="The end cap of the arm is off"),
        cause("feed.valve_shut", title="The stop valve is half shut", no_fault=True),
        cause("feed.screen_full", "uncommon", title="The strainer's screen is full"),
        cause("feed.lock", title="Steam locks the feed line", fits={"booster": ["steam"]}),
        cause("feed.tap_open", title="A mixing tap stands open"),
        cause("feed.check_leaks", title="The tap's check valve leaks"),
        cause("drive.belt", title="The belt slips"),
        cause("drive.brush", title="The motor's brushes are worn"),
        cause("drive.volts", title="Low voltage at the motor"),
    ],
    [
        check(
            "arm.look",
            ["arm.jets_choked", "arm.cap_off", "feed.starved"],
            {
                "arm.jets_choked": {"choked": _SEEN},
                "arm.cap_off": {"gone": _SEEN},
                "feed.starved": {"weak": "usually"},
                "none": {"whole": _SEEN},
            },
            title="The arm, seen from the door",
        ),
        check(
            "feed.gauge",
            ["feed.valve_shut", "feed.starved", "drive.weak"],
            {
                "feed.valve_shut": {"none": _SEEN},
                "feed.starved": {"low": "usually", "none": "seldom"},
                "drive.weak": {"low": _SEEN},
                "none": {"good": _SEEN},
            },
            title="Pressure at the feed line's test cock",
            minutes=8,
        ),
        check(
            "feed.feel",
            ["feed.crossed", "feed.tap_open"],
            {"feed.crossed": {"cold": _SEEN}, "feed.tap_open": {"warm": "usually"}, "none": {"hot": _SEEN}},
            title="Feel of the hot line",
        ),
        check(
            "drive.hear",
            ["drive.belt", "drive.brush", "drive.weak"],
            {
                "drive.belt": {"squeals": "usually"},
                "drive.brush": {"crackles": "usually"},
                "drive.weak": {"slow": "usually"},
                "none": {"hums": _SEEN},
            },
            title="The sound of the pump",
        ),
        check("feed.sum", ["feed.starved"], {"feed.starved": {"short": _SEEN}, "none": {"ok": _SEEN}}, computed=True),
    ],
)


def nasty_book():  # type: ignore[no-untyped-def]
    """The same with titles full of signs that mean something to other programs."""
    from dataclasses import replace

    import msgspec

    def nasty(table):  # type: ignore[no-untyped-def]
        return {name: msgspec.structs.replace(entry, title=f"{NASTY} {name}") for name, entry in table.items()}

    return replace(
        BOOK,
        complaints=nasty(BOOK.complaints),
        events=nasty(BOOK.events),
        causes=nasty(BOOK.causes),
        checks=nasty(BOOK.checks),
    )
