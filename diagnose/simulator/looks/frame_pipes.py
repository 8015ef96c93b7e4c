"""What can be heard and felt of frame, pumps and pipes."""

from __future__ import annotations

from diagnose.simulator.bench import Bench
from diagnose.simulator.motoring import unbalance
from diagnose.simulator.registry import look
from diagnose.simulator.senses import Answer
from diagnose.simulator.sounding import Sound, humming, loudest, surge

__all__: list[str] = []

_HEARD = 0.15  # of the loudest noise: below it nobody hears it beside the work
_SLIP = 0.97  # of its synchronous turns that a loaded motor makes: judgement
_BALLS = 5.4  # times a turn that a bearing's balls pass a pitted place: judgement
_WASH = "wash"


def _heard(bench: Bench) -> Sound | None:
    found = loudest(bench)
    return found if found is not None and found.loud > _HEARD else None


@look("frame_pipes.where_heard")
def where_heard(bench: Bench) -> Answer:
    """One walk round it with an ear half a yard off."""
    found = _heard(bench)
    if found is None:
        return bench.seen("nothing", "all_over", sure=0.97)
    if found.comes == "always_so":
        return bench.seen("nothing", "all_over", "drive_end", sure=0.6)
    return bench.seen(found.place, "all_over", "pump", "panel", sure=0.9)


@look("frame_pipes.with_what")
def with_what(bench: Bench) -> Answer:
    """Through one full round, from start to stop."""
    found = _heard(bench)
    if found is None:
        return bench.seen("quiet", "always_so", sure=0.97)
    return bench.seen(found.comes, "pumps", "strokes", sure=0.91)


def _electrical(bench: Bench) -> bool:
    """Whether the pump's motor growls with the lines: on two of them, on uneven volts, or by turns that are shorted."""
    uneven = bench.plant.power.phases == 3 and unbalance(bench.heating.standing.volts) > 0.02
    return _WASH in humming(bench) or uneven or bench.sign("pump motor growls") > 0.2


@look("frame_pipes.tone")
def tone(bench: Bench) -> Answer:
    """The strongest line of the noisy pump's motor."""
    line = bench.plant.power.frequency
    turn = line / 2.0 * _SLIP
    strongest = turn
    if _electrical(bench):
        strongest = 2.0 * line
    elif bench.sign("pump bearing growls") > 0.2:
        strongest = _BALLS * turn
    elif bench.sign("pump coupling askew") > 0.2:
        strongest = float(bench.senses.see("2", ("1",), sure=0.8)) * turn
    elif bench.sign("wash motor loose") > 0.2:  # a loose body answers at halves and multiples of the turn
        strongest = float(bench.senses.see("1", ("2", "0.5", "1.5"), sure=0.6)) * turn
    return bench.value("vibration meter", strongest)


@look("frame_pipes.hand_on")
def hand_on(bench: Bench) -> Answer:
    """A flat hand on each panel, guard and door."""
    shakes = max(bench.sign("wheel unbalanced"), bench.sign("wash motor loose"))
    found = {"falls_silent": bench.sign("panel drums"), "shakes": max(shakes, bench.sign("frame shakes on three feet"))}
    return bench.worst(found, "no_change", sure=0.93)


@look("frame_pipes.feet_look")
def feet_look(bench: Bench) -> Answer:
    """A card and a hand at each foot."""
    return bench.noticed("frame shakes on three feet", "one_hangs", "all_bear", sure=0.97)


@look("frame_pipes.mount_bolts")
def mount_bolts(bench: Bench) -> Answer:
    """Pump and motor rocked, a spanner on each bolt."""
    return bench.noticed("wash motor loose", "loose", "tight", sure=0.97)


@look("frame_pipes.coupling_line")
def coupling_line(bench: Bench) -> Answer:
    """Widest daylight under a straight edge."""
    return Answer({"": max(0.0, bench.senses.measure("feeler gauge", bench.plant.pumps[_WASH].askew))})


@look("frame_pipes.pipe_hand")
def pipe_hand(bench: Bench) -> Answer:
    """Pipes watched and held as the rinse starts and stops."""
    found = {"quiet_when_held": bench.sign("pipe beats on the frame"), "thump_stays": bench.plant.rinse.slams - 0.3}
    return bench.worst(found, "still", sure=0.94)


@look("frame_pipes.surge_peak")
def surge_peak(bench: Bench) -> Answer:
    """A drag pointer over ten racks."""
    return bench.value("test gauge", surge(bench))


@look("frame_pipes.crackle", booster=("electric",))
def crackle(bench: Bench) -> Answer:
    """Beside the booster with its heat on, and after it."""
    heater = bench.plant.booster.heater
    boils = heater.scale > 0.001 and bench.heating.heat.get("booster", 0.0) > 0.0
    return bench.seen("sings" if boils else "quiet", "quiet", sure=0.93)
