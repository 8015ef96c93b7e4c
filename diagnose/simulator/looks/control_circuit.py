"""What can be read of the control circuit."""

from __future__ import annotations

from diagnose.simulator.bench import Bench
from diagnose.simulator.control import chain, circuit_ohms, control_share, lost_at, shakes_open, starts
from diagnose.simulator.protecting import dark, opens, stays_open
from diagnose.simulator.registry import look
from diagnose.simulator.senses import Answer
from diagnose.simulator.starting import start_pressed, stopped

__all__: list[str] = []

_OPEN = 1e9  # ohm of an open contact
_FULL = 0.7  # share of the transformer's input from which it counts as full: judgement


@look("control_circuit.start_press")
def start_press(bench: Bench) -> Answer:
    """Two seconds on start, and let go."""
    truth = start_pressed(bench)
    likely = {"dark_dead": "lamps_only", "lamps_only": "dark_dead", "rattles": "all_runs"}
    return bench.seen(truth, likely.get(truth, "lamps_only"), sure=0.98)


@look("control_circuit.feed_look")
def feed_look(bench: Bench) -> Answer:
    """Handles at wall and panel, as found."""
    if not bench.plant.control.links["feed"]:
        return bench.seen("off", "all_on", sure=0.98)
    found = "tripped" if stays_open(bench) else "all_on"
    return bench.seen(found, "off" if found == "tripped" else "tripped", sure=0.98)


@look("control_circuit.stops_pulled")
def stops_pulled(bench: Bench) -> Answer:
    """Every stop button twisted out, then start."""
    if bench.sign("stop button in") > 0.15 or bench.plant.control.knocked:
        return bench.seen("one_was_in", "all_were_out", sure=0.97)
    return bench.noticed("stop contact gives to pressing", "starts_by_working", "all_were_out", sure=0.95)


@look("control_circuit.chain_volts")
def chain_volts(bench: Bench) -> Answer:
    """Volts at each place of the chain against the return, start held, as found."""
    volts = bench.plant.plate["control_volts"]
    shares = chain(bench.plant)
    live = 0.0 if dark(bench) else volts
    return Answer({place: max(0.0, bench.senses.measure("voltmeter", share * live)) for place, share in shares.items()})


@look("control_circuit.transformer_volts")
def transformer_volts(bench: Bench) -> Answer:
    """Before its fuses, behind them, and out of the control transformer."""
    power = bench.plant.power
    if dark(bench) or control_share(bench.plant) < _FULL * power.control_share:
        return bench.seen("none_before", sure=0.98)
    truth = "lost_in_fuse" if bench.sign("primary fuse parted") > 0.0 else "gives"
    if bench.sign("transformer winding open") > 0.0:
        truth = "in_not_out"
    return bench.seen(truth, "gives", sure=0.98)


@look("control_circuit.fuse_again")
def fuse_again(bench: Bench) -> Answer:
    """A new secondary fuse, each function called in turn."""
    if circuit_ohms(bench.plant) < 3.0:
        return bench.seen("goes_again", "holds", sure=0.96)
    whole = bench.plant.control.links["fuse"] or bench.sign("control wire loose") > 0.0
    return bench.seen("was_whole" if whole else "holds", "was_whole", sure=0.98)


@look("control_circuit.branch_ohms")
def branch_ohms(bench: Bench) -> Answer:
    """Fuse out: from its load clip to return or frame."""
    return bench.value("ohmmeter", circuit_ohms(bench.plant))


@look("control_circuit.relay_volts")
def relay_volts(bench: Bench) -> Answer:
    """The master relay's coil, start held."""
    plant = bench.plant
    if dark(bench) or chain(plant)["coil"] < 0.3:
        return bench.seen("no_volts", "goes_in", sure=0.98)
    return bench.seen("goes_in" if plant.control.links["relay"] else "volts_stays_out", "goes_in", sure=0.98)


@look("control_circuit.hold_ohms")
def hold_ohms(bench: Bench) -> Answer:
    """The hold contact, armature pushed in."""
    return bench.value("ohmmeter", bench.plant.control.hold_ohms)


@look("control_circuit.wire_tug")
def wire_tug(bench: Bench) -> Answer:
    """Two fingers on each control wire."""
    return bench.noticed("control wire loose", "one_loose", "all_tight", sure=0.97)


@look("control_circuit.permit_wait")
def permit_wait(bench: Bench) -> Answer:
    """Dials against the permit's figure, and waiting."""
    control = bench.plant.control
    if control.permit_short > 0.0:
        return bench.seen("starts_when_hot", "hot_and_free", sure=0.97)
    if lost_at(bench.plant) == "permits":
        return bench.seen("hot_no_start", "hot_and_free", sure=0.96)
    stands = dark(bench) or not starts(bench.plant)  # most find no permit on their machine and say that it is free
    return bench.seen("hot_and_free", "hot_no_start", sure=0.85 if stands else 0.99)


@look("control_circuit.permit_ohms")
def permit_ohms(bench: Bench) -> Answer:
    """The permit's contact, its tank hot."""
    ohms = _OPEN if bench.sign("permit thermostat open") > 0.0 else 0.4
    return bench.value("ohmmeter", ohms)


@look("control_circuit.how_it_stops")
def how_it_stops(bench: Bench) -> Answer:
    """Told of the last stop: what stood, and what brought it back."""
    stood, back = stopped(bench)
    return bench.seen(back, "start_at_once", "a_knock", sure=0.94 if stood else 0.985)


@look("control_circuit.stop_free")
def stop_free(bench: Bench) -> Answer:
    """Twenty minutes of racks under watch, its table kept clear; what comes and goes may stay away for so long."""
    stood, back = stopped(bench)
    if back == "next_rack" and max(bench.sign("clean table full"), bench.sign("clean table fills again")) > 0.15:
        stood = ""
    often = not starts(bench.plant) or opens(bench)[1] == "at_reset" or not shakes_open(bench.plant)
    if not stood or opens(bench)[1] == "once":
        truth = "no_stop" if starts(bench.plant) else "all_stops"
        return bench.seen(truth, "one_part_stops", sure=0.99)
    named = {"all": "all_stops", "part": "one_part_stops"}[stood]
    return bench.seen(named, "no_stop", sure=0.96 if often else 0.88)
