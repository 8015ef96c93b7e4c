"""A small book written by hand: a cold rinse in an invented machine, and a stuck rack that shares one cause with it."""

from __future__ import annotations

from typing import Any

from diagnose.model import (
    Basis,
    Book,
    Cause,
    Check,
    Complaint,
    Effort,
    Event,
    Finding,
    Machine,
    MachineType,
    Outcome,
    Scale,
    Shift,
)

__all__ = ["BOOK", "MACHINE", "book_of", "cause", "check", "event", "machine", "saw"]

BASIS = Basis(kind="judgement")


def cause(name: str, how_often: str = "common", **more: Any) -> Cause:
    given: dict[str, Any] = {
        "title": name,
        "shows": "x",
        "why": "x",
        "told_apart": "x",
        "repair": ["x"],
        "minutes": 30,
        "parts": ["x"],
        "open": ["none"],
        "state": "isolated",
        "who": "technician",
        "cautions": [],
        "prove_by": ["a.gauge"],
    }
    return Cause(id=name, how_often=how_often, basis=BASIS, **{**given, **more})


def event(name: str, of: list[str], gate: Any = "any", **more: Any) -> Event:
    return Event(id=name, title=name, gate=gate, of=of, basis=BASIS, **more)


def check(name: str, looks_at: list[str], shows: dict[str, dict[str, str | float]], **more: Any) -> Check:
    outcomes = list(dict.fromkeys(o for row in shows.values() for o in row))
    given: dict[str, Any] = {
        "title": name,
        "ask": "x",
        "steps": ["x"],
        "instrument": "eyes",
        "minutes": 2,
        "open": ["none"],
        "state": "running",
        "who": "operator",
        "cautions": [],
    }
    told = {o: Outcome(title=o) for o in outcomes}
    return Check(id=name, looks_at=looks_at, outcomes=told, shows=shows, basis=BASIS, **{**given, **more})


def complaint(name: str, of: list[str]) -> Complaint:
    return Complaint(id=name, title=name, kitchen=["x"], of=of, prove_by=["a.gauge"], basis=BASIS)


def _scales() -> dict[str, Scale]:
    return {
        "likelihood": Scale("t", "o", {"nearly always": 0.93, "usually": 0.75, "seldom": 0.07}),
        "frequency": Scale("t", "o", {"common": 0.02, "uncommon": 0.0025, "rare": 0.001}),
        "shift": Scale("t", "o", {"several times": 4.0, "half": 0.5}),
    }


def _effort(name: str, minutes: float, back: float = 0.0) -> Effort:
    return Effort(id=name, title=name, minutes=minutes, back=back, basis=BASIS)


def book_of(complaints: list[Complaint], events: list[Event], causes: list[Cause], checks: list[Check]) -> Book:
    return Book(
        complaints={each.id: each for each in complaints},
        events={each.id: each for each in events},
        causes={each.id: each for each in causes},
        checks={each.id: each for each in checks},
        scales=_scales(),
        access={a.id: a for a in (_effort("none", 0), _effort("control box", 4), _effort("booster cover", 6))},
        states={s.id: s for s in (_effort("running", 0), _effort("isolated", 5, 3), _effort("idle hot", 1, 1))},
        help={"call": _effort("call", 240)},
    )


def machine(booster: str) -> Machine:
    traits: dict[str, str | int | bool] = {"booster": booster}
    return Machine("made up", MachineType(id="t", title="t", traits=traits, plate={}, basis=BASIS))


MACHINE = machine("electric")

BOOK = book_of(
    [
        complaint("cold", ["b.heat_short", "a.water_cold", "a.gauge_low", "g.gas_short"]),
        complaint("stuck", ["c.drive_slips", "s.volts_low"]),
    ],
    [
        event("b.heat_short", ["b.element_open", "b.pole_open", "s.volts_low"]),
        event("c.drive_slips", ["c.clutch_worn", "c.load_high"], gate="all"),
        event("g.gas_short", ["g.valve_shut"], fits={"booster": ["gas"]}),
    ],
    [
        cause(
            "b.element_open",
            open=["booster cover"],
            shifts=[Shift(when="age", among=["old"], by="several times")],
            minutes=60,
        ),
        cause("b.pole_open", "uncommon", open=["control box"], minutes=45),
        cause("s.volts_low", who="licensed electrician"),
        cause("a.water_cold", minutes=15, state="running"),
        cause("a.gauge_low", minutes=10),
        cause("c.clutch_worn"),
        cause("c.load_high"),
        cause("g.valve_shut", fits={"booster": ["gas"]}),
    ],
    [
        check(
            "a.gauge",
            ["a.gauge_low"],
            {"a.gauge_low": {"low": "nearly always", "good": "seldom"}, "none": {"good": "nearly always"}},
        ),
        check(
            "b.amps",
            ["b.pole_open", "b.element_open", "s.volts_low"],
            {
                "b.pole_open": {"one_line_out": "nearly always"},
                "b.element_open": {"one_element_out": "nearly always"},
                "s.volts_low": {"all_low": "usually", "healthy": "seldom"},
                "none": {"healthy": "nearly always"},
            },
            open=["control box"],
            who="technician",
        ),
        check(
            "b.ohms",
            ["b.element_open"],
            {"b.element_open": {"open": "nearly always"}, "none": {"sound": "nearly always"}},
            open=["booster cover"],
            state="isolated",
            who="technician",
        ),
        check(
            "a.inlet", ["a.water_cold"], {"a.water_cold": {"cold": "nearly always"}, "none": {"warm": "nearly always"}}
        ),
        check("g.flame", ["g.gas_short"], {"g.gas_short": {"small": "usually"}, "none": {"blue": "usually"}}),
        check(
            "b.sum",
            ["b.heat_short"],
            {"b.heat_short": {"short": "usually"}, "none": {"agrees": "usually"}},
            computed=True,
        ),
    ],
)


def saw(check_id: str, outcome: str, stage: int = 0) -> Finding:
    return Finding(check=check_id, weights={outcome: 1.0}, rule="chosen", counts=(f"r{check_id}",), stage=stage)
