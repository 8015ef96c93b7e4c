"""Plain bands: a reading against the figures of good order, with the error of its instrument."""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import dataclass

from diagnose.model import Book, Check, Finding, Limit, Machine, Reading
from diagnose.model.bands import BAND_FORM
from diagnose.rules.facts import Facts, Silent
from diagnose.rules.instruments import instrument_of, spread
from diagnose.units import Quantity, Unit, UnitError, parse_quantity, show_number

__all__ = ["Band", "Edge", "band_weights", "bands_of", "limit_end", "limit_share", "normal_share", "plain_band"]


ASSUMED = "type's figure, assumed; the data plate governs"
PERCENT = parse_quantity("0 %", "share").unit


@dataclass(frozen=True)
class Edge:
    """One end of a band in the unit of the reading, and where the figure stands."""

    value: float
    unit: Unit
    stands: str

    def __str__(self) -> str:
        return str(Quantity(self.value, self.unit))


@dataclass(frozen=True)
class Band:
    """Half-open [low, high) of one outcome; None is an open end."""

    outcome: str
    low: Edge | None
    high: Edge | None


def normal_share(z: float) -> float:
    """Share of a normal distribution below `z` standard deviations.

    >>> normal_share(0.0), round(normal_share(1.96), 3)
    (0.5, 0.975)
    """
    return 0.5 * math.erfc(-z / math.sqrt(2.0))


def limit_end(book: Book, machine: Machine | None, name: str, end: str, unit: Unit) -> Edge:
    """One end of a limit in `unit`: the plate's figure where there is one, else the limit's own.

    A limit states each end once per unit system, rounded as its source rounds it; the figure of the
    reading's system is taken as it stands and not converted. LookupError: no such limit, or an open end.
    """
    limit = book.limits.get(name)
    if limit is None or end not in ("low", "high"):
        raise LookupError(f"no limit {name}.{end} is known")
    texts, plate_name = (limit.low, limit.plate_low) if end == "low" else (limit.high, limit.plate_high)
    figures = [parse_quantity(t, limit.quantity) for t in texts]
    plate = machine.plate(plate_name) if machine is not None and plate_name else None
    if machine is not None and plate is not None and plate_name is not None:
        stands = ASSUMED if machine.assumed(plate_name) else "data plate"
        alike = any(f.unit == plate.unit and f.value == plate.value for f in figures)
        chosen = _in_system(figures, unit) if alike and not _same_system(plate.unit, unit) else plate
        return Edge(_value(chosen, unit), unit, stands)
    if not figures:
        raise LookupError(f"limit {name} has no {end} end")
    return Edge(_value(_in_system(figures, unit), unit), unit, _stands(book, limit))


def limit_share(facts: Facts, name: str, end: str) -> float:
    """One end of a limit that is a share, as a fraction. LookupError where the book has no such limit."""
    return limit_end(facts.book, facts.machine, name, end, PERCENT).value / 100.0


def bands_of(book: Book, machine: Machine, check: Check, unit: Unit) -> list[Band]:
    """The bands of a check in `unit`; empty for a check without bands. LookupError: a figure is missing."""
    banded = {o: c for o, c in check.outcomes.items() if c.low is not None or c.high is not None}
    return [
        Band(name, _edge(book, machine, o.low, unit), _edge(book, machine, o.high, unit)) for name, o in banded.items()
    ]


def band_weights(bands: list[Band], value: float, spread_: float) -> dict[str, float]:
    """Share of a normal distribution round the reading that lies in each band.

    >>> psi = parse_quantity("1 psi", "pressure").unit
    >>> edge = lambda v: Edge(v, psi, "")
    >>> low, good = Band("low", None, edge(15.0)), Band("good", edge(15.0), None)
    >>> {k: round(v, 2) for k, v in band_weights([low, good], 14.0, 1.0).items()}
    {'low': 0.84, 'good': 0.16}
    """
    weights: dict[str, float] = {}
    for band in bands:
        below_low = 0.0 if band.low is None else normal_share((band.low.value - value) / spread_)
        below_high = 1.0 if band.high is None else normal_share((band.high.value - value) / spread_)
        weights[band.outcome] = weights.get(band.outcome, 0.0) + max(below_high - below_low, 0.0)
    return weights


def plain_band(facts: Facts) -> Finding | Silent | None:
    """Answer a banded check from its own reading.

    Purpose: what is left when no rule that says more has taken the reading.
    Formula: weight of an outcome = share of N(reading, instrument) in its band; of several places the
    one furthest from good counts.
    Source: bands as the check states them; the data plate before the limit, the limit in the unit read.
    Fires: two_tank_electric_208: rinse_thermometer.panel_reading = 172 F -> low
    Silent: two_tank_electric_208: booster_electric.line_amps = 48 48 83 A
    """
    silent: Silent | None = None
    for (stage, name), reading in facts.newest.items():
        check = facts.check(name)
        if stage != facts.stage or check is None or facts.fresh(name) is None:
            continue
        result = _answer(facts, check, reading)
        if isinstance(result, Finding):
            return result
        silent = result or silent
    return silent


def _answer(facts: Facts, check: Check, reading: Reading) -> Finding | Silent:
    worst: dict[str, float] | None = None
    shown: Quantity | None = None
    bands: list[Band] = []
    good = [o for o, c in check.outcomes.items() if c.good]
    for value in reading.values.values():
        try:
            bands = bands_of(facts.book, facts.machine, check, value.unit)
        except (LookupError, UnitError) as error:
            return Silent(f"{check.title}: {error}")
        if not bands:
            return Silent(f"{check.title}: no bands, and no rule could use the reading")
        weights = band_weights(bands, value.value, spread(check, value, reading))
        if worst is None or _goodness(weights, good) < _goodness(worst, good):
            worst, shown = weights, value
    if worst is None or shown is None:
        return Silent(f"{check.title}: nothing was read")
    working, says = _words(check, reading, bands, shown, worst)
    # A limit's own figure is still good: at a tie the good outcome goes first.
    ordered = {o: worst[o] for o in sorted(worst, key=lambda o: o not in good)}
    return facts.conclude(check.id, ordered, "plain_band", [reading], working=working, says=says)


def _words(
    check: Check, reading: Reading, bands: list[Band], value: Quantity, weights: Mapping[str, float]
) -> tuple[list[str], str]:
    kind = instrument_of(check, reading)
    outcome = max(weights, key=lambda o: weights[o])
    near = [e for b in bands for e in (b.low, b.high) if e and abs(e.value - value.value) < kind.accuracy(value)]
    working = [f"{check.outcomes[b.outcome].title}: {_range(b)}" for b in bands]
    working.append(f"Read: {value} ({kind}).")
    says = f"{value}: {check.outcomes[outcome].title}."
    if near:
        says = f"{value} is within the instrument's error of {near[0]}: confirm with a second one."
    return working, says


def _range(band: Band) -> str:
    ends = [e for e in (band.low, band.high) if e]
    stands = ", ".join(dict.fromkeys(e.stands for e in ends if e.stands))
    if band.low and band.high:
        text = f"{show_number(band.low.value)} to {band.high}"
    elif band.low:
        text = f"{band.low} and up"
    else:
        text = f"under {band.high}"
    return f"{text} ({stands})" if stands else text


def _goodness(weights: Mapping[str, float], good: list[str]) -> float:
    return sum(weights.get(o, 0.0) for o in good)


def _edge(book: Book, machine: Machine, text: str | None, unit: Unit) -> Edge | None:
    if text is None:
        return None
    match = BAND_FORM.match(text)
    if match is None:
        return Edge(_value(parse_quantity(text, unit.dimension, unit.symbol), unit), unit, "")
    factor = float(match["factor"] or 1.0)
    if match["limit"]:
        edge = limit_end(book, machine, match["limit"], match["end"], unit)
        return Edge(edge.value * factor, unit, edge.stands)
    figure = machine.plate(match["plate"])
    if figure is None:
        raise LookupError(f"the plate figure {match['plate']} is not known")
    stands = ASSUMED if machine.assumed(match["plate"]) else "data plate"
    return Edge(_value(figure, unit) * factor, unit, stands)


def _value(quantity: Quantity, unit: Unit) -> float:
    """The figure in `unit`, exact where it was written so, to 12 digits where converted (200 kPa is 2 bar)."""
    if quantity.unit == unit:
        return quantity.value
    return float(f"{quantity.as_unit(unit).value:.12g}")


def _same_system(one: Unit, other: Unit) -> bool:
    return one == other or one.system == other.system or "both" in (one.system, other.system)


def _in_system(figures: list[Quantity], unit: Unit) -> Quantity:
    """The figure in this very unit, else in its system, else the first."""
    ranked = sorted(figures, key=lambda f: (f.unit != unit, not _same_system(f.unit, unit)))
    return ranked[0]


def _stands(book: Book, limit: Limit) -> str:
    basis = limit.basis
    if basis.kind != "published" or basis.source is None:
        return basis.kind
    source = book.sources.get(basis.source)
    return f"{source.title if source else basis.source} {basis.where or ''}".strip()
