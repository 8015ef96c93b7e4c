"""Exhaust at both ends: the total, and each end's share."""

from __future__ import annotations

from diagnose.model import Finding, Reading
from diagnose.physics.air import end_shares
from diagnose.rules.bands import band_weights, bands_of
from diagnose.rules.facts import Facts, Silent
from diagnose.rules.instruments import spread
from diagnose.units import UnitError, show_number

__all__ = ["balance"]

ENTRANCE, EXIT = "vent_dampers.flow_entrance", "vent_dampers.flow_exit"


def balance(facts: Facts) -> Finding | Silent | None:
    """Judge both vents together.

    Purpose: both ends short is the fan or the duct, one end short is its damper; together they say more
    than two bands apart.
    Formula: weights of low, good, high of each end as its own bands give them, multiplied.
    Source: plate's flows; the bands of the two checks (85 to 125 %, judgement).
    Fires: two_tank_electric_208: vent_dampers.flow_entrance = 100 cfm; vent_dampers.flow_exit = 390 cfm
      -> entrance_short
    Silent: two_tank_electric_208: vent_dampers.flow_entrance = 100 cfm
    """
    name = "vent_dampers.balance"
    check, entrance, exit_ = facts.check(name), facts.fresh(ENTRANCE), facts.fresh(EXIT)
    if check is None or (entrance is None and exit_ is None):
        return None
    if entrance is None or exit_ is None:
        return Silent(f"{check.title}: both ends must be measured")
    try:
        first, second = _levels(facts, ENTRANCE, entrance), _levels(facts, EXIT, exit_)
    except (LookupError, UnitError) as error:
        return Silent(f"{check.title}: {error}")
    low, other = first.get("low", 0.0), second.get("low", 0.0)
    neither = (1 - low) * (1 - other)
    # One end high and the other good is half way between as wanted and too much in all.
    much = first.get("high", 0.0) * second.get("high", 0.0)
    much += (first.get("high", 0.0) * second.get("good", 0.0) + first.get("good", 0.0) * second.get("high", 0.0)) / 2
    weights = {
        "as_wanted": max(neither - much, 0.0),
        "total_short": low * other,
        "entrance_short": low * (1 - other),
        "exit_short": other * (1 - low),
        "total_high": much,
    }
    outcome = max(weights, key=lambda o: weights[o])
    plates = facts.assumed("vent_entrance", "vent_exit")
    working = [*_words(facts, entrance, exit_), *plates]
    return facts.conclude(name, weights, name, [entrance, exit_], (), working, _SAYS[outcome])


def _levels(facts: Facts, name: str, reading: Reading) -> dict[str, float]:
    check = facts.check(name)
    if check is None:
        raise LookupError(f"no check {name}")
    bands = bands_of(facts.book, facts.machine, check, reading.value.unit)
    if not bands:
        raise LookupError(f"{check.title} has no bands")
    return band_weights(bands, reading.value.value, spread(check, reading.value, reading))


def _words(facts: Facts, entrance: Reading, exit_: Reading) -> list[str]:
    total, unit = entrance.value.si + exit_.value.si, entrance.value.unit
    share = end_shares(entrance.value.si, exit_.value.si)
    words = [
        f"{entrance.value} + {exit_.value} = {show_number(unit.from_si(total), 3)} {unit.symbol}; "
        f"entrance {share[0] * 100:.0f} %, exit {share[1] * 100:.0f} %."
    ]
    wanted = [facts.plate("vent_entrance"), facts.plate("vent_exit")]
    if wanted[0] is not None and wanted[1] is not None and wanted[0].si + wanted[1].si > 0:
        all_ = wanted[0].si + wanted[1].si
        words.append(f"Wanted: {wanted[0]} and {wanted[1]}; here {total / all_ * 100:.0f} % of that in all.")
    return words


_SAYS = {
    "as_wanted": "Both ends take the air they should.",
    "total_short": "Both ends are short: look at the fan and the duct, not at one damper.",
    "entrance_short": "The entrance is short while the exit has its air: its damper or curtain end.",
    "exit_short": "The exit is short while the entrance has its air: its damper or curtain end.",
    "total_high": "More air than wanted is taken in all: it cools the tanks.",
}
