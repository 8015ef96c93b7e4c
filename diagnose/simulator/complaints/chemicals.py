"""What kitchen and inspector say of the chemicals."""

from __future__ import annotations

from diagnose.simulator.bench import Bench
from diagnose.simulator.dosing import delivered, head_turns, point_share, rinse_ph
from diagnose.simulator.feeds import Feed
from diagnose.simulator.registry import complaint
from diagnose.simulator.washing import strip_shows, ware

__all__: list[str] = []

# How loudly: judgement throughout. A strip below four fifths of the wanted strength is talked of, one over 155 % too.
_WEAK, _STRONG = 0.8, 1.55


@complaint("sanitiser_weak", sanitising=("chemical",))
def sanitiser_weak(bench: Bench) -> float:
    """The strip is pale, or the rinse so alkaline that the inspector objects."""
    share = strip_shows(bench) / bench.plant.plate["sanitiser_wanted"]
    alkaline = rinse_ph(bench.plant, ware(bench).detergent) - 8.3
    return max(0.0, _WEAK - share, 0.15 * alkaline) * 10.0 if bench.rinse_trace else 0.0


@complaint("chemical_strong")
def chemical_strong(bench: Bench) -> float:
    """A strip far too dark, a smell, a slippery wash."""
    found, sign = ware(bench), bench.sign
    said = max(
        4.0 * sign("chlorine at the jugs"),
        6.0 * sign("bleach in the wash"),
        3.5 * sign("chlorine at the exit"),
        2.0 * max(0.0, found.detergent - 1.7),
        0.35 * max(0.0, found.aid - 3.0),
    )
    if bench.plant.plate.has(sanitising="chemical"):
        share = strip_shows(bench) / bench.plant.plate["sanitiser_wanted"]
        said = max(said, 4.0 * max(0.0, share - _STRONG) + (1.0 if share > _STRONG else 0.0))
    return said


@complaint("chemical_no_feed")
def chemical_no_feed(bench: Bench) -> float:
    """A head that stands, a drum that does not go down, an alarm."""
    chemistry = bench.plant.chemistry
    feeds = [chemistry.detergent, chemistry.rinse_aid]
    if bench.plant.plate.has(sanitising="chemical"):
        feeds.append(chemistry.sanitiser)
    bridged = 4.5 if chemistry.detergent.probe > 5.0 else 0.0
    return max(5.0 * bench.sign("tank well charged"), bridged, *(_missed(bench, feed) for feed in feeds))


def _missed(bench: Bench, feed: Feed) -> float:
    chemistry = bench.plant.chemistry
    if not head_turns(chemistry, feed):
        return 7.5
    passage = point_share(bench.plant) if feed is chemistry.sanitiser else 1.0
    return 14.0 * max(0.0, 0.42 - delivered(feed, passage))
