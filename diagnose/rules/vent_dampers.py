"""Exhaust at both ends: the total, and each end's share."""

from __future__ import annotations

import math
from dataclasses import dataclass

from diagnose.formulas import said, system_of
from diagnose.model import Finding, Reading
from diagnose.physics.air import end_shares
from diagnose.physics.exhaust import TANK_AIR, heat_of_exhaust
from diagnose.rules.bands import band_weights, bands_of
from diagnose.rules.facts import Expected, Facts, Silent
from diagnose.rules.instruments import spread
from diagnose.units import Quantity, UnitError, show_number

__all__ = ["Flow", "balance", "expected_flow", "total_flow"]

ENTRANCE, EXIT = "vent_dampers.flow_entrance", "vent_dampers.flow_exit"
ROOM = 297.15  # K, a usual dish room, 75 °F; judgement
BANDS = (0.85, 1.25)  # shares of the flow wanted that are in order, as the bands of the two checks state them


@dataclass(frozen=True)
class Flow:
    """Air taken at both ends, SI, and the air wanted; the relative error; the readings and how they add up."""

    now: float
    wanted: float
    error: float
    read: tuple[Reading, ...]
    words: str


def total_flow(facts: Facts) -> Flow | None:
    """What both ends take, as read at this stage or before; None where one was not read or the plate is silent."""
    read = [facts.known(ENTRANCE), facts.known(EXIT)]
    plate = [facts.plate("vent_entrance"), facts.plate("vent_exit")]
    first, second = read
    if first is None or second is None or plate[0] is None or plate[1] is None:
        return None
    now, wanted = first.value.si + second.value.si, plate[0].si + plate[1].si
    if now <= 0 or wanted <= 0:
        return None
    errors = [_spread(facts, n, r) * r.value.unit.factor for n, r in ((ENTRANCE, first), (EXIT, second))]
    unit = first.value.unit
    words = (
        f"Exhaust {first.value} + {second.value} = {show_number(unit.from_si(now), 3)} {unit.symbol}: "
        f"{now / wanted * 100:.0f} % of the air wanted."
    )
    return Flow(now, wanted, math.hypot(*errors) / now, (first, second), words)


def _spread(facts: Facts, name: str, reading: Reading) -> float:
    check = facts.check(name)
    return spread(check, reading.value, reading) if check else 0.06 * reading.value.value


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
    if outcome == "total_high":
        working += _robbed(facts, entrance.value.si + exit_.value.si, system_of(entrance.value.unit))
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
    if total > 0:
        words += said("vent-shares", system_of(unit), entrance=entrance.value.si, exit_=exit_.value.si)
    return words


def _robbed(facts: Facts, total: float, system: str) -> list[str]:
    """What the air beyond the wanted takes from the wash tank, and against which heater."""
    tank, plates = facts.plate("wash_temperature"), [facts.plate("vent_entrance"), facts.plate("vent_exit")]
    if tank is None or plates[0] is None or plates[1] is None:
        return []
    beyond = total - plates[0].si - plates[1].si
    if beyond <= 0:
        return []
    heat, power = heat_of_exhaust(beyond, tank.si, ROOM), facts.plate("tank_power")
    against = f", {heat / power.si * 100:.0f} % of its heater's {power}" if power and power.si > 0 else ""
    return [
        f"Air beyond the wanted, and what it takes from the wash tank (the {TANK_AIR:.0%} are judgement):",
        *said(
            "exhaust-tank-heat", system, flow=beyond, tank_temperature=tank.si, room_temperature=ROOM, tank_air=TANK_AIR
        ),
        f"That is {heat / 1e3:.1f} kW from the tank{against}.",
    ]


def expected_flow(facts: Facts, check: str) -> Expected | None:
    """Air wanted at an end, its share, and the band in order."""
    mine = "vent_entrance" if check == ENTRANCE else "vent_exit"
    first, second = facts.plate("vent_entrance"), facts.plate("vent_exit")
    own = facts.plate(mine)
    if own is None or first is None or second is None or first.si + second.si <= 0:
        return None
    low, high = (Quantity(share * own.value, own.unit) for share in BANDS)
    stands = "type's figure, assumed" if facts.machine.assumed(mine) else "data plate"
    line = f"{show_number(low.value, 3)} to {show_number(high.value, 3)} {own.unit.symbol} ({own} wanted)"
    shares = said("vent-shares", system_of(own.unit), entrance=first.si, exit_=second.si)
    working = (
        f"Wanted at this end: {own} ({stands}); {BANDS[0]:g} to {BANDS[1]:g} of it is in order (judgement).",
        f"{BANDS[0]:g} × {show_number(own.value)} = {show_number(low.value)}",
        f"{BANDS[1]:g} × {show_number(own.value)} = {show_number(high.value)}",
        "Its share of both ends:",
        shares[0 if mine == "vent_entrance" else 1],
    )
    return Expected((line,), low, high, facts.assumed(mine), f"{stands}; the band is judgement", working)


_SAYS = {
    "as_wanted": "Both ends take the air they should.",
    "total_short": "Both ends are short: look at the fan and the duct, not at one damper.",
    "entrance_short": "The entrance is short while the exit has its air: its damper or curtain end.",
    "exit_short": "The exit is short while the entrance has its air: its damper or curtain end.",
    "total_high": "More air than wanted is taken in all: it cools the tanks.",
}
