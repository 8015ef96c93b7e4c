"""What can be read of the exhaust's duct, flap, cap and hood."""

from __future__ import annotations

from diagnose.simulator.airing import air_now
from diagnose.simulator.bench import Bench
from diagnose.simulator.registry import look
from diagnose.simulator.senses import Answer

__all__: list[str] = []

_HOOD = ("hood",)
_EDGE = 0.34  # m/s at the edge of a hood at its wanted flow: judgement
_NOTHING = 0.5  # share of the wanted air under which next to nothing leaves the cap: judgement


@look("exhaust_duct.run_look")
def run_look(bench: Bench) -> Answer:
    """The run followed with lamp and tissue."""
    found = {
        "parted": bench.sign("duct joint open"),
        "door_off": bench.sign("duct door off"),
        "belly": bench.sign("water lies in the duct"),
        "small_leak": bench.sign("slit sleeve"),
        "wet_seam": bench.sign("wet seam of the duct"),
        "bare_and_cold": bench.sign("duct bare and cold"),
    }
    return bench.worst(found, "whole", sure=0.96)


@look("exhaust_duct.inside_look")
def inside_look(bench: Bench) -> Answer:
    """The duct's inside before the fan."""
    found = {"choked": bench.sign("duct choked"), "water": bench.sign("water lies in the duct")}
    return bench.worst(found, "clear", sure=0.96)


@look("exhaust_duct.flap_look")
def flap_look(bench: Bench) -> Answer:
    """The flap swung by a finger."""
    return bench.noticed("flap stuck", "stuck", "free", sure=0.98)


@look("exhaust_duct.cap_look")
def cap_look(bench: Bench) -> Answer:
    """What leaves the cap: all that goes through the fan, whatever it draws it from."""
    air, plant = air_now(bench), bench.plant.air
    drawn = air.total / sum(plant.wanted.values()) + 0.8 * (plant.parted + plant.let_in) * (air.suction > 5.0)
    if drawn < _NOTHING:
        return bench.seen("next_to_nothing", "strong", sure=0.96)
    return bench.noticed("cap screen furred", "jets", "strong", sure=0.97)


@look("exhaust_duct.hood_filters_look", vents=_HOOD)
def hood_filters_look(bench: Bench) -> Answer:
    """Filters held to the light, one taken out."""
    felted = 1.0 - bench.plant.air.filters_open
    return bench.worst({"clogged": felted}, "clear", sure=0.97)


@look("exhaust_duct.hood_speed", vents=_HOOD)
def hood_speed(bench: Bench) -> Answer:
    """Air drawn in at the hood's edge, the mean of eight places."""
    share = air_now(bench).total / sum(bench.plant.air.wanted.values())
    return Answer({"": max(0.0, bench.senses.measure("anemometer", _EDGE * share))})


@look("exhaust_duct.gutter_look", vents=_HOOD)
def gutter_look(bench: Bench) -> Answer:
    """A cup of water poured into the gutter."""
    return bench.noticed("gutter stands full", "stands", "runs_off", sure=0.98)
