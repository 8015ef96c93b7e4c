"""Regulators, the supply at rest and flowing, and filling a tank: as the trade asks it."""

from __future__ import annotations

from collections.abc import Mapping

from diagnose.formulas.formula import Answer, Argument, Formula
from diagnose.physics import filling, regulator, supply

__all__ = ["SUPPLY"]

_FLOW = ("flow", "gpm", "L/min")
_PRESSURE = ("pressure", "psi", "bar")
_FACTOR = ("flow factor", "gpm/√psi", "L/min/√bar")
_PSI, _BAR = 6894.757293168, 1e5

_REST = Argument("rest", "Pressure behind the regulator at rest", *_PRESSURE)
_DROOP = Argument(
    "droop", "Droop from rest to the rated flow", *_PRESSURE, usual="3 psi", stands="common practice: 2 to 5 psi"
)
_RATED = Argument("rated_flow", "Rated flow", *_FLOW, plate="rinse_flow")
_STATIC = Argument("static", "Supply at rest", *_PRESSURE)
_FLOWING = Argument("flowing", "Supply while it flows", *_PRESSURE)
_KNOWN = Argument("flow", "Flow then", *_FLOW, plate="rinse_flow")
_FILL_FLOW = Argument("fill_flow", "Flow of the tank fill", *_FLOW, plate="fill_flow")
_FILL_PRESSURE = Argument("fill_pressure", "Flowing pressure the fill is meant for", *_PRESSURE, plate="fill_pressure")
_VOLUME = Argument("volume", "Water the tank holds", "volume", "gal", "L", plate="wash_tank_volume")
_TIME = Answer("time", "Time to fill", "time", "min", "min")


def _half(rest: float, droop: float, rated_flow: float, factor: float) -> Mapping[str, tuple[float, str, str, str]]:
    """Half of droop × K ÷ rated flow, a figure per root of pressure: once for psi, once for bar."""
    half = droop / rated_flow * factor / 2.0
    return {"half_us": (half / _PSI**0.5, "number", "", ""), "half_si": (half / _BAR**0.5, "number", "", "")}


def _factors(
    static: float, flowing: float, flow: float, sound_flowing: float, sound_flow: float
) -> Mapping[str, tuple[float, str, str, str]]:
    return {
        "now": (supply.supply_factor(static, flowing, flow), *_FACTOR),
        "sound": (supply.supply_factor(static, sound_flowing, sound_flow), *_FACTOR),
    }


_REGULATOR: tuple[Formula, ...] = (
    Formula(
        id="regulator-pressure",
        subject="flow",
        title="Pressure behind a regulator at a flow",
        asks="How far does a sound regulator sag at this flow?",
        run=regulator.drooped_pressure,
        takes=(_REST, _DROOP, _RATED, Argument("flow", "Flow now", *_FLOW)),
        gives=(Answer("pressure", "Pressure, flowing", *_PRESSURE),),
        us=("{rest} − {droop} × {flow} ÷ {rated_flow} = {pressure}",),
        limit="rinse_pressure",
        also=("droop", "sag", "static"),
    ),
    Formula(
        id="regulator-droop",
        subject="flow",
        title="Droop of a regulator from one pair of pressures",
        asks="What droop at the rated flow do rest and flow show?",
        run=regulator.droop_of_pair,
        takes=(
            _REST,
            Argument("flowing", "Pressure behind it, flowing", *_PRESSURE),
            Argument("flow", "Flow then", *_FLOW),
            _RATED,
        ),
        gives=(Answer("droop", "Droop at the rated flow", *_PRESSURE),),
        us=("({rest} − {flowing}) × {rated_flow} ÷ {flow} = {droop}",),
        limit="regulator_droop",
        also=("weary", "sag", "static"),
    ),
    Formula(
        id="regulator-and-jets",
        subject="flow",
        title="Pressure at which a regulator and its jets settle",
        asks="Where does the droop line meet these jets?",
        run=regulator.operating_pressure,
        takes=(_REST, _DROOP, _RATED, Argument("factor", "Flow factor K of the jets", *_FACTOR)),
        gives=(Answer("pressure", "Pressure, flowing", *_PRESSURE),),
        us=(
            "{droop} × {factor} ÷ {rated_flow} ÷ 2 = {half_us:n}",
            "(√({half_us:n}² + {rest:n}) − {half_us:n})² = {pressure}",
        ),
        si=(
            "{droop} × {factor} ÷ {rated_flow} ÷ 2 = {half_si:n}",
            "(√({half_si:n}² + {rest:n}) − {half_si:n})² = {pressure}",
        ),
        steps=_half,
        limit="rinse_pressure",
        also=("worn jets", "droop"),
    ),
)

_UPSTREAM: tuple[Formula, ...] = (
    Formula(
        id="supply-restriction",
        subject="flow",
        title="Restriction upstream, from rest and flow",
        asks="What K have pipe, strainer and stop ahead of the gauge?",
        run=supply.supply_factor,
        takes=(_STATIC, _FLOWING, _KNOWN),
        gives=(Answer("factor", "K of the supply", *_FACTOR),),
        us=("{flow} ÷ √({static} − {flowing}) = {factor}",),
        also=("static", "strainer", "stop valve"),
    ),
    Formula(
        id="restriction-left",
        subject="flow",
        title="How much of a supply is left, in per cent of its K",
        asks="How narrow has it become against good order?",
        run=supply.restriction_left,
        takes=(
            _STATIC,
            Argument("flowing", "Pressure now, flowing", *_PRESSURE),
            Argument("flow", "Flow now", *_FLOW),
            Argument("sound_flowing", "Flowing pressure in good order", *_PRESSURE),
            Argument("sound_flow", "Flow in good order", *_FLOW, plate="rinse_flow"),
        ),
        gives=(Answer("left", "Share of K left", "share", "%", "%"),),
        us=(
            "{flow} ÷ √({static} − {flowing}) = {now}",
            "{sound_flow} ÷ √({static} − {sound_flowing}) = {sound}",
            "{now} ÷ {sound} × 100 = {left:n}",
        ),
        steps=_factors,
        also=("static", "blocked strainer"),
    ),
    Formula(
        id="supply-at-other-flow",
        subject="flow",
        title="What a supply has left at another flow",
        asks="What pressure stands there when more is drawn?",
        run=supply.pressure_at_other_flow,
        takes=(_STATIC, _FLOWING, _KNOWN, Argument("other_flow", "Flow asked for", *_FLOW)),
        gives=(Answer("pressure", "Pressure at that flow", *_PRESSURE),),
        us=("{static} − ({static} − {flowing}) × ({other_flow} ÷ {flow})² = {pressure}",),
        limit="supply_pressure",
        also=("static", "flow test"),
    ),
)

_FILLING: tuple[Formula, ...] = (
    Formula(
        id="fill-time",
        subject="flow",
        title="Time to fill a tank",
        asks="How many minutes does the tank take?",
        run=filling.fill_time,
        takes=(_VOLUME, Argument("flow", "Flow of the tank fill", *_FLOW, plate="fill_flow")),
        gives=(_TIME,),
        us=("{volume} ÷ {flow} = {time}",),
        also=("fill", "minutes"),
    ),
    Formula(
        id="fill-time-with-loss",
        subject="flow",
        title="Time to fill a tank that loses water",
        asks="How many minutes, with the drain leaking?",
        run=filling.fill_time_with_loss,
        takes=(
            _VOLUME,
            Argument("flow", "Flow of the tank fill", *_FLOW, plate="fill_flow"),
            Argument("loss", "What runs away meanwhile", *_FLOW),
        ),
        gives=(_TIME,),
        us=("{volume} ÷ ({flow} − {loss}) = {time}",),
        also=("drain leak",),
    ),
    Formula(
        id="fill-flow-from-supply",
        subject="flow",
        title="Flow of a tank fill on this supply",
        asks="How much does the fill pass on a supply known at rest and flowing?",
        run=supply.fill_flow_from_supply,
        takes=(_STATIC, _FLOWING, _KNOWN, _FILL_FLOW, _FILL_PRESSURE),
        gives=(Answer("through", "Flow of the fill here", *_FLOW),),
        us=("√({static} ÷ (({static} − {flowing}) ÷ {flow:n}² + {fill_pressure} ÷ {fill_flow:n}²)) = {through}",),
        also=("static", "flow test"),
    ),
    Formula(
        id="fill-time-from-supply",
        subject="flow",
        title="Time to fill a tank on this supply",
        asks="How many minutes, on a supply known at rest and flowing?",
        run=filling.fill_time_from_supply,
        takes=(_VOLUME, _STATIC, _FLOWING, _KNOWN, _FILL_FLOW, _FILL_PRESSURE),
        gives=(_TIME,),
        us=(
            "√({static} ÷ (({static} − {flowing}) ÷ {flow:n}² + {fill_pressure} ÷ {fill_flow:n}²)) = {through}",
            "{volume} ÷ {through} = {time}",
        ),
        steps=lambda volume, **supplied: {"through": (supply.fill_flow_from_supply(**supplied), *_FLOW)},
        also=("static", "slow fill"),
    ),
    Formula(
        id="leak-of-level",
        subject="flow",
        title="Water a tank loses, from its falling level",
        asks="How much runs away when the level falls so far?",
        run=filling.leak_of_level,
        takes=(
            Argument("length", "Length of the tank inside", "length", "in", "cm"),
            Argument("width", "Width of the tank inside", "length", "in", "cm"),
            Argument("fall", "Fall of the level", "length", "in", "cm"),
            Argument("time", "Time it took", "time", "min", "min"),
        ),
        gives=(Answer("leak", "Flow lost", *_FLOW),),
        us=("{length} × {width} × {fall} ÷ 231 ÷ {time} = {leak}",),
        si=("{length} × {width} × {fall} ÷ 1000 ÷ {time} = {leak}",),
        limit="water_lost_at_rest",
        also=("drain leaks", "level"),
    ),
)

SUPPLY: tuple[Formula, ...] = (*_REGULATOR, *_UPSTREAM, *_FILLING)
