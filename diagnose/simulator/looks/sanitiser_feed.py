"""What can be read of sanitiser, its feed, its strips and its smell."""

from __future__ import annotations

from diagnose.physics.dosing import dose_for_strength, pump_flow_for_strength
from diagnose.simulator.bench import Bench
from diagnose.simulator.dosing import delivered, head_turns, point_share
from diagnose.simulator.registry import look
from diagnose.simulator.senses import Answer
from diagnose.simulator.washing import strip_shows, ware

__all__: list[str] = []

_CHEMICAL = ("chemical",)
_IN_GLASS = 0.4  # of those who measure at an empty jug, that prime the pickup in the glass first: judgement


@look("sanitiser_feed.strip", sanitising=_CHEMICAL)
def strip(bench: Bench) -> Answer:
    """A strip on the ware."""
    return Answer({"": max(0.0, bench.senses.measure("test strip", strip_shows(bench)))})


def _drawn(bench: Bench) -> float:
    """Share of the usual dose that leaves the measuring glass while the pump runs."""
    feed = bench.plant.chemistry.sanitiser
    if not head_turns(bench.plant.chemistry, feed):
        return 0.0
    if feed.left <= 0.0:
        return feed.setting * feed.tube if bench.senses.chance.random() < _IN_GLASS else 0.0
    return feed.setting * delivered(feed, point_share(bench.plant))


@look("sanitiser_feed.per_rack", sanitising=_CHEMICAL)
def per_rack(bench: Bench) -> Answer:
    """Stock drawn a rack."""
    plate, feed = bench.plant.plate, bench.plant.chemistry.sanitiser
    wanted = dose_for_strength(plate["sanitiser_wanted"], plate["sanitiser_stock"], _plate_water(bench))
    share = _drawn(bench) + (feed.runs_on * delivered(feed) if feed.left > 0.0 else 0.0)
    return Answer({"": max(0.0, bench.senses.measure("measuring glass", wanted * share))})


@look("sanitiser_feed.output", sanitising=_CHEMICAL)
def output(bench: Bench) -> Answer:
    """Stock delivered while the pump runs."""
    plate, feed = bench.plant.plate, bench.plant.chemistry.sanitiser
    wanted = pump_flow_for_strength(plate["sanitiser_wanted"], plate["sanitiser_stock"], plate["rinse_flow"])
    share = _drawn(bench) / (0.6 if bench.sign("sanitiser time short") > 0.5 else 1.0)
    share += 0.3 * feed.runs_on if feed.siphons else 0.0
    return bench.value("bucket and watch", wanted * share)


def _plate_water(bench: Bench) -> float:
    plate = bench.plant.plate
    return plate.get("rinse_per_rack", plate["rinse_flow"] / plate["racks_per_hour"])


@look("sanitiser_feed.water_per_rack", sanitising=_CHEMICAL)
def water_per_rack(bench: Bench) -> Answer:
    """Rinse water that runs for one rack."""
    plant = bench.plant
    share = bench.restarted.standing.rinse.flow / plant.rinse.rated_flow
    held = plant.rinse.actuator_share / max(plant.conveyor.pace, 0.2)
    return bench.value("bucket and watch", max(8e-5, _plate_water(bench) * share * held))


@look("sanitiser_feed.stock_test", sanitising=_CHEMICAL)
def stock_test(bench: Bench) -> Answer:
    """Strength of the stock in the sanitiser's jug."""
    return bench.value("titration kit", bench.plant.plate["sanitiser_stock"] * bench.plant.chemistry.sanitiser.stock)


@look("sanitiser_feed.jug_look", sanitising=_CHEMICAL)
def jug_look(bench: Bench) -> Answer:
    """The sanitiser's jug."""
    chemistry = bench.plant.chemistry
    found = {
        "empty": 1.0 if chemistry.sanitiser.left <= 0.0 else 0.0,
        "other_jug": 1.0 if "sanitiser" in chemistry.swapped else 0.0,
        "other_label": bench.sign("another sanitiser"),
        "old": bench.sign("sanitiser jug old"),
        "spilled": bench.sign("chemical spilled"),
    }
    return bench.worst(found, "in_order", sure=0.95)


@look("sanitiser_feed.line_look", sanitising=_CHEMICAL)
def line_look(bench: Bench) -> Answer:
    """What moves in the feed line through two racks."""
    chemistry, feed = bench.plant.chemistry, bench.plant.chemistry.sanitiser
    if not head_turns(chemistry, feed):
        return bench.seen("still", "solid", sure=0.96)
    if feed.left <= 0.0:
        return bench.seen("bubbles", "still", sure=0.52)
    if feed.air > 0.1:
        return bench.seen("bubbles", "solid", sure=0.95)
    if feed.spills > 0.1:
        return bench.seen("leaks", "solid", sure=0.93)
    if feed.delivery * point_share(bench.plant) < 0.75:
        return bench.seen("swells", "still", "leaks", sure=0.85)
    if feed.runs_on > 0.2:
        return bench.seen("creeps", "solid", sure=0.9)
    return bench.seen("solid", "bubbles", sure=0.98)


@look("sanitiser_feed.pump_turns", sanitising=_CHEMICAL)
def pump_turns(bench: Bench) -> Answer:
    """When the head turns."""
    chemistry, feed = bench.plant.chemistry, bench.plant.chemistry.sanitiser
    if not head_turns(chemistry, feed):
        return bench.seen("never", "with_rinse", sure=0.98)
    if feed.told == "at other times":
        return bench.seen("other_times", "part", sure=0.85)
    if feed.runs_on > 0.2 and not feed.siphons:
        return bench.seen("goes_on", "with_rinse", sure=0.95)
    return bench.noticed("sanitiser time short", "part", "with_rinse", sure=0.98)


@look("sanitiser_feed.tube_look", sanitising=_CHEMICAL)
def tube_look(bench: Bench) -> Answer:
    """The squeeze tube in the hand."""
    tube = bench.plant.chemistry.sanitiser.tube
    found = {"flat": 1.0 if tube < 0.8 else 0.0, "large": 1.0 if tube > 1.2 else 0.0}
    return bench.worst(found, "round", sure=0.96)


@look("sanitiser_feed.second_strips", sanitising=_CHEMICAL)
def second_strips(bench: Bench) -> Answer:
    """Strips in use beside new ones."""
    return bench.noticed("old strips", "new_higher", "agree", sure=0.97)


@look("sanitiser_feed.jet_and_ware", sanitising=_CHEMICAL)
def jet_and_ware(bench: Bench) -> Answer:
    """Jet and ware compared."""
    found = ware(bench)
    if found.jet_chlorine > 5.0 and found.chlorine < 0.7 * found.jet_chlorine:
        return bench.seen("ware_lower", "same", sure=0.94)
    return bench.seen("same", "ware_lower", sure=0.97)


@look("sanitiser_feed.strip_timed", sanitising=_CHEMICAL)
def strip_timed(bench: Bench) -> Answer:
    """At once and after a minute."""
    return bench.noticed("strips read late", "less_at_once", "as_before", sure=0.97)


@look("sanitiser_feed.wash_strip")
def wash_strip(bench: Bench) -> Answer:
    """A strip in the wash tank."""
    return bench.noticed("bleach in the wash", "strong", "none", sure=0.97)


@look("sanitiser_feed.smell_where")
def smell_where(bench: Bench) -> Answer:
    """Where it smells."""
    found = ware(bench)
    chemical = bench.plant.plate.has(sanitising="chemical")
    over = found.chlorine / bench.plant.plate["sanitiser_wanted"] - 1.4 if chemical else 0.0
    smelt = {
        "at_jugs": bench.sign("chlorine at the jugs"),
        "over_wash": max(bench.sign("bleach in the wash"), 0.35 * max(0.0, found.detergent - 1.5)),
        "sharp": 0.25 * max(0.0, found.aid - 2.5) if chemical else 0.0,
        "at_exit": max(bench.sign("chlorine at the exit"), over),
    }
    return bench.worst(smelt, "nowhere", sure=0.92)
