"""How many measurements both exhaust dampers take to come right, on simulated machines that differ from case to case.

Run: python -m tests.bench.dampers [CASES [FIRST]]. A case is a type of machine with vents at both ends, blades of a
kind and shape of their own, a duct more or less narrow, a fan that gives 1.3 to 2 times the wanted air with both
dampers wide open, then its wheel up to 15 % better or worse, and handles that stand anywhere. What comes of it is
judged by the true flows: the total within 5 % of what is wanted and the share of each end within 5 % of its own
wanted share. Beside it stands the looser reading of the same words, shares within 5 points of a hundred.

Printed for two instruments (the simulator's vane traverse and a flow hood of 3 %) and two hands (one that sets every
5 %, and one that also finds places between those marks, to 1 %), with what someone could reach at best who knew all.
"""

from __future__ import annotations

import random
import sys
from collections import Counter
from collections.abc import Sequence
from dataclasses import dataclass

from diagnose.handover.dampers import DamperAim, DamperStep, next_dampers
from diagnose.handover.ends import Flowmeter, Pair, Trial
from diagnose.simulator.airway import ENDS, air_flow
from diagnose.simulator.blades import KINDS, Blade
from diagnose.simulator.parts import Air
from diagnose.simulator.plant import Plant
from diagnose.simulator.senses import ACCURACY
from tests.unit.simulator.plates import TYPES, plate

__all__ = ["HOOD", "MOST", "VANE", "Played", "attainable", "case", "main", "play"]

MOST = 5  # measurements
BAND = 0.05
VANE = Flowmeter(*ACCURACY["vent traverse"])
HOOD = Flowmeter(0.0, 0.03)
_HAND = 0.005  # of the travel by which a hand misses the place it means; judgement
_STILL = {"entrance": 0.0, "exit": 0.0}
_WITH_BOTH = tuple(name for name in TYPES if plate(name).has(vents="both ends"))
_TROUBLES = ("weak fan", "narrow end", "loose blade")


@dataclass(frozen=True)
class Played:
    """How a case ended: the last step, measurements, how far total and the smaller share are off, truly and as read."""

    last: DamperStep
    measured: int
    true: tuple[float, float]
    read: tuple[float, float]
    smaller: float  # the smaller share wanted

    @property
    def right(self) -> bool:
        """Total and shares truly within 5 %, each of its own."""
        return max(map(abs, self.true)) <= BAND

    @property
    def right_in_points(self) -> bool:
        """The total truly within 5 % and shares within 5 points of a hundred."""
        return abs(self.true[0]) <= BAND and abs(self.true[1]) * self.smaller <= BAND

    @property
    def read_right(self) -> bool:
        """As `right`, by the last reading."""
        return max(map(abs, self.read)) <= BAND


def case(seed: int, trouble: str = "") -> Air:
    """The air of one machine, its handles anywhere; `trouble` is one of `weak fan`, `narrow end`, `loose blade`."""
    dice = random.Random(f"dampers {seed}")
    air = Plant.built(plate(dice.choice(_WITH_BOTH))).air
    kind = dice.choice(KINDS)
    for end in ENDS:
        steep, leak = dice.uniform(0.09, 0.11), dice.uniform(0.01, 0.05)
        air.blades[end] = Blade(kind, dice.uniform(1.5, 3.0), dice.uniform(1.0, 3.0), steep, leak)
    air.duct_open = dice.uniform(0.85, 1.15)
    wide = sum(_flow(air)) / sum(air.wanted.values())
    air.wheel = (dice.uniform(1.3, 2.0) / wide) ** 2 * dice.uniform(0.85, 1.15)
    air.handle = {end: dice.random() for end in ENDS}
    if trouble == "weak fan":
        air.wheel *= 0.2
    elif trouble == "narrow end":
        air.damper["exit"] = 0.15
    return air


def play(seed: int, meter: Flowmeter, step: float, fine: float, trouble: str = "") -> Played:
    """Set the dampers of one case as told, up to five measurements."""
    air, dice = case(seed, trouble), random.Random(f"measured {seed}")
    wanted = Pair(*(air.wanted[end] for end in ENDS))
    aim = DamperAim(wanted, meter, BAND, step, fine)
    handles = Pair(*(round(round(air.handle[end] / step) * step, 4) for end in ENDS))
    trials: list[Trial] = []
    while True:
        if not trials or handles != trials[-1].open:
            for end, meant in zip(ENDS, handles, strict=True):
                if trouble != "loose blade" or end != "exit":
                    air.handle[end] = min(1.0, max(0.0, meant + _HAND * dice.uniform(-1.0, 1.0)))
        true = _flow(air)
        read = Pair(*(max(0.0, flow + meter.error(flow) * dice.uniform(-1.0, 1.0)) for flow in true))
        trials.append(Trial(handles, read))
        last = next_dampers(trials, aim)
        if last.kind not in ("set", "again") or len(trials) == MOST:
            return Played(last, len(trials), _off(true, wanted), _off(read, wanted), min(wanted) / sum(wanted))
        handles = last.open


def attainable(seed: int, step: float) -> bool:
    """Whether any position of the handles brings it right, for someone who knows all."""
    air, places = case(seed), round(1.0 / step)
    wanted = Pair(*(air.wanted[end] for end in ENDS))
    for one in range(places + 1):
        for other in range(places + 1):
            air.handle = {"entrance": one / places, "exit": other / places}
            if max(map(abs, _off(_flow(air), wanted))) <= BAND:
                return True
    return False


def _flow(air: Air) -> Pair:
    found = air_flow(air, True, _STILL).exhaust
    return Pair(found["entrance"], found["exit"])


def _off(flow: Pair, wanted: Pair) -> tuple[float, float]:
    small = wanted.index(min(wanted))
    share, want = flow[small] / sum(flow), wanted[small] / sum(wanted)
    return sum(flow) / sum(wanted) - 1.0, share / want - 1.0


def main(cases: int = 500, first: int = 0) -> None:
    """Print the table."""
    print(f"{cases} cases, at most {MOST} measurements. Total and each share within 5 % of its own:")
    for hand, step, fine in (("every 5 %", 0.05, 0.05), ("also between, to 1 %", 0.05, 0.01)):
        print(f"\nA hand that sets {hand}")
        if step == fine:
            print(f"  possible at all      {_share([attainable(n, step) for n in range(first, first + cases)])}")
        for name, meter in (("vane traverse", VANE), ("flow hood of 3 %", HOOD)):
            all_played = [play(nth, meter, step, fine) for nth in range(first, first + cases)]
            _told(name, all_played)
    print("\nWhat can't be set, vane traverse, every 5 %: what was said")
    for trouble in _TROUBLES:
        found = [play(nth, VANE, 0.05, 0.05, trouble) for nth in range(first, first + cases // 5)]
        said = Counter(" ".join((p.last.kind, p.last.where)).strip() for p in found)
        print(f"  {trouble:18} {dict(said.most_common())}")


def _told(name: str, played: Sequence[Played]) -> None:
    claimed = [each for each in played if each.last.kind == "reached"]
    print(f"  {name}")
    print(f"    truly so             {_share([each.right for each in played])}")
    print(f"    shares in points     {_share([each.right_in_points for each in played])}")
    print(f"    by the last reading  {_share([each.read_right for each in played])}")
    print(f"    said to be reached   {_share([each.last.kind == 'reached' for each in played])}", end="")
    print(f", and truly so {_share([each.right for each in claimed])} of those")
    print(f"    measurements         {sum(each.measured for each in played) / len(played):.2f}", end="")
    print(f"  {dict(sorted(Counter(each.measured for each in played).items()))}")
    print(f"    ended as             {dict(Counter(each.last.kind for each in played).most_common())}")


def _share(so: Sequence[bool]) -> str:
    return f"{100.0 * sum(so) / max(len(so), 1):.1f} %"


if __name__ == "__main__":
    main(*(int(word) for word in sys.argv[1:]))
