"""What can be read of the breaker and the earth-leakage device of the feed."""

from __future__ import annotations

from diagnose.simulator.bench import Bench
from diagnose.simulator.protecting import (
    OPENS,
    bears,
    feed_amps,
    leak_paths,
    leakage,
    light_amps,
    megohms,
    opens,
)
from diagnose.simulator.registry import look
from diagnose.simulator.senses import Answer

__all__: list[str] = []

_LOW = 1e6  # ohm under which a branch fails its test: common practice for wet places
_DAMP = 2e6  # ohm under which it is damp: judgement


@look("breaker_earth_leakage.device_look")
def device_look(bench: Bench) -> Answer:
    """What stands open in the panel when all went dead."""
    return bench.seen(opens(bench)[0] or "nothing", "breaker", sure=0.98)


@look("breaker_earth_leakage.feed_amps")
def feed_amps_read(bench: Bench) -> Answer:
    """The fullest line at the breaker with everything on."""
    amps = 0.0 if opens(bench)[1] == "at_reset" else feed_amps(bench)
    return Answer({"": max(0.0, bench.senses.measure("clamp meter", amps))})


@look("breaker_earth_leakage.pole_heat")
def pole_heat(bench: Bench) -> Answer:
    """Screws of the breaker after half an hour: watts in a loose one."""
    hot = bench.plant.power.screw_heat > 0.05
    return bench.seen("one_hot" if hot else "alike", "alike", sure=0.96)


@look("breaker_earth_leakage.light_load")
def light_load(bench: Bench) -> Answer:
    """Half an hour with the heaters off."""
    power = bench.plant.power
    full = light_amps(bench) > bears(power) * bench.plant.plate["breaker_amps"]
    if full and opens(bench)[1] == "under_load":
        return bench.seen("opens", "holds", sure=0.95)
    return bench.seen("opens" if bench.sign("breaker latch worn") > 0.5 else "holds", "holds", sure=0.95)


@look("breaker_earth_leakage.leakage")
def leakage_read(bench: Bench) -> Answer:
    """A leakage clamp round all lines, everything on."""
    return Answer({"": max(0.0, bench.senses.measure("leakage clamp", leakage(bench.plant)))})


@look("breaker_earth_leakage.when_it_opens")
def when_it_opens(bench: Bench) -> Answer:
    """What was switched or done at that moment."""
    return bench.seen(opens(bench)[1] or "once", "under_load", "motor_on", sure=0.95)


@look("breaker_earth_leakage.feed_insulation")
def feed_insulation(bench: Bench) -> Answer:
    """All lines to earth, everything connected."""
    return bench.value("insulation tester", megohms(bench.plant))


@look("breaker_earth_leakage.branch_low")
def branch_low(bench: Bench) -> Answer:
    """Each load lifted and measured alone."""
    paths = leak_paths(bench.plant)
    worst = min(paths, key=lambda name: paths[name])
    if paths[worst] < _LOW:
        return bench.seen(worst, "several", sure=0.97)
    damp = sum(ohms < _DAMP for ohms in paths.values()) > 2
    return bench.seen("several" if damp else "none_low", "none_low", sure=0.97)


@look("breaker_earth_leakage.box_look")
def box_look(bench: Bench) -> Answer:
    """Control box and junction boxes, covers off."""
    return bench.strongest("dry", 0.97, water_in_box="wet", soot_between_lines="soot")


@look("breaker_earth_leakage.line_to_line")
def line_to_line(bench: Bench) -> Answer:
    """Line to line, contactors open."""
    return bench.seen("touching" if bench.plant.power.touching else "clear", "clear", sure=0.98)


@look("breaker_earth_leakage.start_retry")
def start_retry(bench: Bench) -> Answer:
    """Reset once: the next start of the same motor, and the one after."""
    power, (what, moment) = bench.plant.power, opens(bench)
    if what and moment == "motor_on" and power.peak_share < 1.0 and power.wire_ohms > 1e4:
        return bench.seen("now_and_then", "holds_all", sure=0.9)
    again = bool(what) and moment in ("at_reset", "motor_on")
    return bench.seen("each_time" if again else "holds_all", "now_and_then", sure=0.97)


@look("breaker_earth_leakage.other_loads")
def other_loads(bench: Bench) -> Answer:
    """What goes dead with the breaker, and its clamp with the machine off."""
    return bench.seen("another" if bench.plant.power.others > 0.0 else "alone", "alone", sure=0.98)


@look("breaker_earth_leakage.panel_air")
def panel_air(bench: Bench) -> Answer:
    """In the closed panel after an hour of rush."""
    return bench.value("reference thermometer", bench.plant.power.panel_air)


@look("breaker_earth_leakage.device_label")
def device_label(bench: Bench) -> Answer:
    """Milliamperes on its label."""
    device = bench.plant.power.device
    truth = "fine" if device < 0.0075 else "between" if device < 0.025 else "coarse"
    return bench.seen(truth, "between", sure=0.98)


@look("breaker_earth_leakage.device_ramp")
def device_ramp(bench: Bench) -> Answer:
    """Share of its rating at which it opens on the tester's ramp, nothing behind it."""
    return bench.value("device tester", OPENS * bench.plant.power.device_share)


@look("breaker_earth_leakage.neutral_ohms")
def neutral_ohms(bench: Bench) -> Answer:
    """Neutral lifted at the block: from neutral to earth on the machine's side."""
    return bench.value("ohmmeter", bench.plant.power.neutral_ohms)


@look("breaker_earth_leakage.holds")
def holds(bench: Bench) -> Answer:
    """Everything cold and calling, each motor three times, ten racks: slow heat and damp mornings may stay away."""
    what, moment = opens(bench)
    if not what or moment == "once":
        return bench.seen("stays_in", sure=1.0)
    slow = moment in ("under_load", "after_wet") or bench.plant.power.peak_share < 1.0
    return bench.seen("opened", "stays_in", sure=0.6 if slow else 0.96)
