"""What can be read of the feeds' control, and of the feeds of detergent and rinse aid."""

from __future__ import annotations

from diagnose.simulator.bench import Bench
from diagnose.simulator.dosing import delivered, head_turns
from diagnose.simulator.feeds import Chemistry, Feed
from diagnose.simulator.registry import look
from diagnose.simulator.senses import Answer
from diagnose.simulator.washing import ware

__all__: list[str] = []

_BRIDGED = 5.0  # times the truth that a probe tells, from which its feed rests in plain water: judgement
_NOTHING = 0.3  # share of a turn's volume below which one says that nothing comes: judgement
_DENSITY = 1300.0  # kg/m3 of liquid detergent: judgement
_AID = 150e-6  # usual rinse aid by volume of the rinse: judgement
_RACKS = ("pawl bar", "chain")


def _feeds(bench: Bench) -> dict[str, Feed]:
    chemistry = bench.plant.chemistry
    feeds = {"detergent": chemistry.detergent, "rinse_aid": chemistry.rinse_aid}
    if bench.plant.plate.has(sanitising="chemical"):
        feeds["sanitiser"] = chemistry.sanitiser
    return feeds


def _rests(bench: Bench, name: str) -> bool:
    """Whether a head stands in service though its control lives."""
    chemistry, feed = bench.plant.chemistry, _feeds(bench)[name]
    held = name == "detergent" and (feed.probe > _BRIDGED or bench.sign("tank well charged") > 0.3)
    return held or not head_turns(chemistry, feed)


def _works(bench: Bench) -> Feed:
    """The feed that moves least: the one that is looked at."""
    return min(_feeds(bench).values(), key=lambda feed: delivered(feed) * (1.0 - feed.spills))


@look("chemical_feeds.which_feed")
def which_feed(bench: Bench) -> Answer:
    """Which heads turn and which lines move."""
    if bench.plant.chemistry.box != "works":
        return bench.seen("all_still", "detergent_still", sure=0.95)
    for name, feed in _feeds(bench).items():
        if _rests(bench, name):
            return bench.seen(f"{name}_still", "each_turns", sure=0.95)
        if delivered(feed) < _NOTHING:
            return bench.seen(f"{name}_turns", "each_turns", sure=0.92)
    return bench.seen("each_turns", "detergent_still", sure=0.98)


@look("chemical_feeds.box_lamp")
def box_lamp(bench: Bench) -> Answer:
    """Lamp, alarm and prime buttons."""
    chemistry = bench.plant.chemistry
    if chemistry.box == "dark":
        return bench.seen("dark", "alive", sure=0.98)
    if any(feed.alarm for feed in _feeds(bench).values()):
        return bench.seen("blinks", "button_only", sure=0.92)
    if not all(feed.turns for feed in _feeds(bench).values()):
        return bench.seen("one_dead", "button_only", sure=0.94)
    if any(_rests(bench, name) for name in _feeds(bench)):
        sure = 0.65 if bench.sign("tank well charged") > 0.3 else 0.92
        return bench.seen("button_only", "alive", sure=sure)
    return bench.seen("alive", "button_only", sure=0.98)


@look("chemical_feeds.drum_look")
def drum_look(bench: Bench) -> Answer:
    """Drum and line while the head turns."""
    feed = _works(bench)
    if feed.left <= 0.0:
        return bench.seen("empty", "line_empty", sure=0.97)
    if not feed.primed:
        return bench.seen("line_empty", "empty", sure=0.96)
    found = {
        "flat": 1.0 - feed.pickup,
        "stands": max(1.0 - feed.head, 1.0 - feed.delivery),
        "bubbles": feed.air,
        "creeps": 1.0 - min(feed.tube, 1.0),
    }
    return bench.worst({k: v if v > 0.25 else 0.0 for k, v in found.items()}, "solid", sure=0.92)


@look("chemical_feeds.head_look")
def head_look(bench: Bench) -> Answer:
    """Cover, rollers and tube."""
    found = {
        "slack": max(1.0 - feed.head for feed in _feeds(bench).values()),
        "pulls_hard": max(1.0 - feed.pickup for feed in _feeds(bench).values()),
    }
    return bench.worst({k: v if v > 0.4 else 0.0 for k, v in found.items()}, "presses", sure=0.95)


@look("chemical_feeds.delivery_look")
def delivery_look(bench: Bench) -> Answer:
    """The end of the line."""
    shut = max(1.0 - feed.delivery for feed in _feeds(bench).values())
    return bench.worst({"shut": shut if shut > 0.3 else 0.0}, "free", sure=0.96)


@look("chemical_feeds.setting_look")
def setting_look(bench: Bench) -> Answer:
    """Settings beside the card."""
    return bench.noticed("a feed set to nought", "nought", "as_written", sure=0.97)


@look("chemical_feeds.signal_volts")
def signal_volts(bench: Bench) -> Answer:
    """Volts at the signal terminals."""
    if bench.plant.chemistry.box == "no signal":
        return bench.seen("never", "comes", sure=0.97)
    return bench.seen("comes", "never", sure=0.72 if bench.plant.chemistry.box == "dark" else 0.98)


@look("chemical_feeds.tenth_out")
def tenth_out(bench: Bench) -> Answer:
    """A tenth of the wash let out and made up with water."""
    chemistry, feed = bench.plant.chemistry, bench.plant.chemistry.detergent
    if head_turns(chemistry, feed) and feed.probe < _BRIDGED:
        return bench.seen("starts", "still", sure=0.97)
    return bench.seen("still", "starts", sure=0.96)


@look("detergent_feed.fed_per_rack", conveyor=_RACKS)
def detergent_per_rack(bench: Bench) -> Answer:
    """Liquid detergent a rack over the run of service."""
    service = bench.service
    racks = service.rack_rate * sum(s.moment.moving for s in service.samples) / len(service.samples)
    fed = service.ledger.fed.get("detergent", 0.0) / max(bench.plant.chemistry.detergent.stock, 0.1)
    a_rack = fed / _DENSITY / max(racks * service.state.time, 1.0)
    return Answer({"": max(0.0, bench.senses.measure("measuring glass", a_rack))})


@look("detergent_feed.probe_look")
def probe_look(bench: Bench) -> Answer:
    """The probe wiped clean."""
    found = {"limed": bench.sign("detergent probe limed"), "stops_late": bench.sign("detergent set too high")}
    return bench.worst(found, "bright", sure=0.95)


@look("detergent_feed.tank_strength")
def tank_strength(bench: Bench) -> Answer:
    """Drop test of the wash tank."""
    state = bench.service.state
    strength = 1e6 * state.flowing["detergent wash"] / max(state.flowing["mass wash"], 0.1)
    return bench.value("titration kit", max(0.0, strength))


@look("detergent_feed.jug_look")
def detergent_jug(bench: Bench) -> Answer:
    """The detergent's container."""
    feed = bench.plant.chemistry.detergent
    if feed.left <= 0.0:
        return bench.seen("empty", "in_order", sure=0.96)
    resting = not head_turns(bench.plant.chemistry, feed) or feed.probe > _BRIDGED
    if resting or delivered(feed) < 0.06:
        return bench.seen("untouched", "in_order", sure=0.85)
    if ware(bench).detergent > 1.6:
        return bench.seen("fast", "in_order", sure=0.85)
    return bench.seen("in_order", "fast", sure=0.98)


@look("detergent_feed.line_look")
def detergent_line(bench: Bench) -> Answer:
    """The feed as the tank is thinned."""
    chemistry, feed = bench.plant.chemistry, bench.plant.chemistry.detergent
    if chemistry.box == "dark":
        return bench.seen("dead", "rests", sure=0.96)
    if not head_turns(chemistry, feed) or feed.probe > _BRIDGED:
        return bench.seen("rests", "dead", sure=0.94)
    return _line(bench, feed)


def _line(bench: Bench, feed: Feed) -> Answer:
    if feed.left <= 0.0 or not feed.primed:
        return bench.seen("empty_line", "bubbles", sure=0.92)
    if feed.air > 0.2:
        return bench.seen("bubbles", "moves", sure=0.95)
    if delivered(feed) < 0.6:
        return bench.seen("creeps", "moves", sure=0.9)
    return bench.seen("moves", "creeps", sure=0.98)


@look("detergent_feed.probe_lifted")
def probe_lifted(bench: Bench) -> Answer:
    """The probe's plug pulled."""
    chemistry: Chemistry = bench.plant.chemistry
    if not head_turns(chemistry, chemistry.detergent):
        return bench.seen("dead", "starts", sure=0.96)
    if chemistry.detergent.probe > _BRIDGED:
        return bench.seen("starts_thin", "starts", sure=0.95)
    return bench.seen("starts", "starts_thin", sure=0.98)


@look("detergent_feed.label_look")
def label_look(bench: Bench) -> Answer:
    """The label."""
    return bench.noticed("another detergent", "other", "right", sure=0.97)


@look("detergent_feed.pickups_traced")
def pickups_traced(bench: Bench) -> Answer:
    """Each tube followed to its drum."""
    return bench.worst({"crossed": 1.0 if bench.plant.chemistry.swapped else 0.0}, "right", sure=0.97)


@look("rinse_aid_feed.sheet_look")
def sheet_look(bench: Bench) -> Answer:
    """Glass and plate held to the light."""
    found = ware(bench)
    return bench.worst({"beads": found.beads, "streaks": found.streaks}, "film", sure=0.93)


@look("rinse_aid_feed.jug_look")
def aid_jug(bench: Bench) -> Answer:
    """The rinse aid's jug."""
    feed = bench.plant.chemistry.rinse_aid
    if feed.left <= 0.0:
        return bench.seen("empty", "in_order", sure=0.96)
    if not head_turns(bench.plant.chemistry, feed):
        return bench.seen("untouched", "in_order", sure=0.8)
    if feed.setting > 2.0:
        return bench.seen("fast", "in_order", sure=0.85)
    return bench.seen("in_order", "untouched", sure=0.98)


@look("rinse_aid_feed.line_look")
def aid_line(bench: Bench) -> Answer:
    """Head and line through one rinse."""
    feed = bench.plant.chemistry.rinse_aid
    if not head_turns(bench.plant.chemistry, feed):
        return bench.seen("head_still", "moves", sure=0.95)
    if feed.delivery < 0.5:
        return bench.seen("swollen", "creeps", sure=0.88)
    return _line(bench, feed)


@look("rinse_aid_feed.tube_look")
def aid_tube(bench: Bench) -> Answer:
    """The squeeze tube out of its head."""
    return bench.worst({"flat": 1.0 if bench.plant.chemistry.rinse_aid.tube < 0.8 else 0.0}, "round", sure=0.95)


@look("rinse_aid_feed.fed_per_rack", conveyor=_RACKS)
def aid_per_rack(bench: Bench) -> Answer:
    """Rinse aid a rack, measured with the pickup in a glass."""
    plate, feed = bench.plant.plate, bench.plant.chemistry.rinse_aid
    share = delivered(feed) if feed.left > 0.0 else feed.tube
    turned = feed.setting * share if head_turns(bench.plant.chemistry, feed) else 0.0
    water = plate.get("rinse_per_rack", plate["rinse_flow"] / plate["racks_per_hour"])
    return Answer({"": max(0.0, bench.senses.measure("measuring glass", _AID * water * turned))})
