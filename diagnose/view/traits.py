"""What an entry is restricted to, in words: "(steam booster)"."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from diagnose.model import TRAITS

__all__ = ["TRAIT_WORDS", "restricted"]

# (trait, value) -> words; a trait of several values is joined by "or".
TRAIT_WORDS: dict[tuple[str, str | int | bool], str] = {
    ("tanks", 1): "one tank",
    ("tanks", 2): "two tanks",
    ("prewash", True): "with pre-wash",
    ("prewash", False): "without pre-wash",
    ("sanitising", "hot water"): "hot-water sanitising",
    ("sanitising", "chemical"): "chemical sanitising",
    ("booster", "electric"): "electric booster",
    ("booster", "steam"): "steam booster",
    ("booster", "gas"): "gas booster",
    ("booster", "none"): "no booster",
    ("booster_place", "built in"): "built-in booster",
    ("booster_place", "remote"): "remote booster",
    ("booster_place", "none"): "no booster",
    ("tank_heat", "electric"): "electric tank heat",
    ("tank_heat", "steam coil"): "steam-coil tank heat",
    ("tank_heat", "steam injector"): "steam-injector tank heat",
    ("tank_heat", "gas"): "gas tank heat",
    ("phases", 1): "single phase",
    ("phases", 3): "three phases",
    ("connection", "delta"): "booster in delta",
    ("connection", "wye"): "booster in wye",
    ("connection", "single"): "booster on one phase",
    ("vents", "both ends"): "vents at both ends",
    ("vents", "hood"): "under a hood",
    ("table_turn", True): "table with a turn",
    ("table_turn", False): "straight tables",
    ("conveyor", "pawl bar"): "pawl-bar conveyor",
    ("conveyor", "chain"): "chain conveyor",
    ("conveyor", "flight"): "flight-type conveyor",
    ("motor_protection", "overload relay"): "overload relays",
    ("motor_protection", "thermal protector"): "thermal protectors",
}


def restricted(fits: Mapping[str, Sequence[str | int | bool]]) -> str:
    """The machines an entry belongs to, in words; nothing where it belongs to every one.

    >>> restricted({"booster": ["electric", "gas"], "tanks": [2]})
    'electric or gas booster, two tanks'
    >>> restricted({"booster": ["electric", "steam", "gas"]})
    'with a booster'
    """
    return ", ".join(_one_trait(trait, values) for trait, values in fits.items())


def _one_trait(trait: str, values: Sequence[str | int | bool]) -> str:
    if trait == "booster" and set(values) == set(TRAITS["booster"]) - {"none"}:
        return "with a booster"
    return _either([TRAIT_WORDS.get((trait, value), f"{trait} {value}") for value in values])


def _either(words: Sequence[str]) -> str:
    """Several words joined by "or", what they all end with said once."""
    last = words[-1].rpartition(" ")[2]
    if len(words) > 1 and all(w.endswith(f" {last}") for w in words):
        return " or ".join([*(w.removesuffix(f" {last}") for w in words[:-1]), words[-1]])
    return " or ".join(words)
