"""Length of both chains of a conveyor, rack chains or those of a belt of flights, against the pitch on the plate."""

from __future__ import annotations

import math

from diagnose.model import Finding, Reading
from diagnose.rules.bands import limit_end, normal_share
from diagnose.rules.facts import Expected, Facts, Silent
from diagnose.rules.instruments import spread
from diagnose.units import Quantity, parse_quantity, show_number

__all__ = ["CONVEYORS", "expected_length", "lengths"]

CONVEYORS = ("conveyor_chain", "flight_conveyor")
LINKS = 20
NEW = 0.001  # how far the pitch of a new chain may be off, as a share; judgement
WRONG = 0.12  # a length further off than this is another number of links


def lengths(facts: Facts, assembly: str) -> Finding | Silent | None:
    """Judge twenty links of either chain, against the plate's pitch and against each other.

    Purpose: slack is taken up at the idlers either way; only the length says whether the chains are worn out, both
    alike, or whether a new one runs beside an old one, which no setting of idlers can cure.
    Formula: wear = length / (20 pitch) - 1; the two differing by more than 0.5 % are unlike; else their mean
    above 2 % is worn out.
    Source: plate's pitch; 2 % common practice, 0.5 % judgement.
    Fires: chain_two_tank_electric_480 (chain_pitch = 1 in): conveyor_chain.chain_length = 20.5 20.52 in -> both_long
    Fires: chain_two_tank_electric_480 (chain_pitch = 1 in): conveyor_chain.chain_length = 20.02 20.4 in -> unlike
    Silent: chain_two_tank_electric_480 (chain_pitch = 1 in): conveyor_chain.chain_length = 17.0 23.0 in
    Silent: two_tank_electric_208: conveyor_chain.chain_length = 20.5 20.52 in
    """
    name = f"{assembly}.chain_length"
    reading, check, pitch = facts.fresh(name), facts.check(name), facts.plate("chain_pitch")
    if reading is None or check is None:
        return None
    if pitch is None or pitch.si <= 0 or len(reading.values) != 2:
        return Silent(f"{check.title}: needs the pitch of the chain and both sides")
    new = LINKS * pitch.si
    left, right = (v.si / new - 1 for v in reading.values.values())
    if max(abs(left), abs(right)) > WRONG:
        return Silent(f"{check.title}: that is another number of links, or another pitch; count again")
    sigma = max(spread(check, v, reading) * v.unit.factor for v in reading.values.values()) / new
    weights = _weights(facts, left, right, math.hypot(sigma, NEW))
    if isinstance(weights, Silent):
        return weights
    outcome = max(weights, key=lambda o: weights[o])
    return facts.conclude(
        name, weights, name, [reading], (), _working(facts, reading, pitch, left, right), _SAYS[outcome]
    )


def _weights(facts: Facts, left: float, right: float, sigma: float) -> dict[str, float] | Silent:
    try:
        most, apart = (_share(facts, limit) for limit in ("chain_wear", "chain_unlike"))
    except LookupError as error:
        return Silent(str(error))
    unlike = 1 - normal_share((apart - abs(left - right)) / (sigma * math.sqrt(2)))
    long = 1 - normal_share((most - (left + right) / 2) / sigma)
    return {"unlike": unlike, "both_long": (1 - unlike) * long, "as_new": (1 - unlike) * (1 - long)}


def _share(facts: Facts, limit: str) -> float:
    edge = limit_end(facts.book, facts.machine, limit, "high", parse_quantity("1 %", "share").unit)
    return edge.value * edge.unit.factor


def _working(facts: Facts, reading: Reading, pitch: Quantity, left: float, right: float) -> list[str]:
    words = [f"New: {LINKS} × {pitch} = {show_number(LINKS * pitch.value, 4)} {pitch.unit.symbol}."]
    for (side, value), share in zip(reading.values.items(), (left, right), strict=True):
        words.append(f"{side.capitalize()}: {value}, {share * 100:+.1f} %.")
    return [*words, *facts.assumed("chain_pitch")]


def expected_length(facts: Facts, check: str) -> Expected | None:
    """Twenty links of a new chain, and the longest that will still do."""
    pitch = facts.plate("chain_pitch")
    if pitch is None or pitch.si <= 0:
        return None
    try:
        most = _share(facts, "chain_wear")
    except LookupError:
        return None
    new = Quantity(LINKS * pitch.value, pitch.unit)
    end = Quantity(new.value * (1 + most), pitch.unit)
    stands = "type's figure, assumed" if facts.machine.assumed("chain_pitch") else "data plate"
    working = (
        f"Pitch {pitch} ({stands}).",
        f"{LINKS} × {show_number(pitch.value, 4)} = {show_number(new.value, 4)} {pitch.unit.symbol} when new;",
        f"{most * 100:g} % more is {show_number(end.value, 4)} {pitch.unit.symbol}, and both sides alike.",
    )
    line = f"{show_number(new.value, 4)} to {show_number(end.value, 4)} {pitch.unit.symbol}, both alike"
    return Expected((line,), new, end, facts.assumed("chain_pitch"), "pitch times links; 2 % is usual", working)


_SAYS = {
    "as_new": "Both chains are within their length: slack is a matter of the idlers.",
    "both_long": "Both chains are worn out: no idler cures it.",
    "unlike": "The chains are not of one length: they part again however they are set.",
}
