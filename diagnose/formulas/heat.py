"""Heat into water, as the trade asks it."""

from __future__ import annotations

from collections.abc import Mapping

from diagnose.formulas.formula import Answer, Argument, Formula
from diagnose.physics import expansion, heat, streams

__all__ = ["FORMULAS"]

Steps = Mapping[str, tuple[float, str, str, str]]

_FLOW = Argument("flow", "Rinse flow", "flow", "gpm", "L/min", plate="rinse_flow")
_POWER = Argument("power", "Heater power", "power", "kW", plate="booster_power")
_RISE = Argument("rise", "Rise wanted", "temperature difference", "F°", "C°")
_EFFICIENCY = Argument(
    "efficiency",
    "Share of the power that goes into the water",
    "number",
    usual="0.98",
    stands="electric; 0.75 for gas: county plan check guide EHD 16-01, appendix E",
)
_RISE_US = "{power} × 3412 ÷ (500 × {flow}) = {rise}"
_RISE_SI = "{power} × 14.35 ÷ {flow} = {rise}"


def _rise(power: float, flow: float, **_: float) -> Steps:
    return {"rise": (heat.rise_of_flow(power, flow), "temperature difference", "F°", "C°")}


def _water(temperature: float) -> Steps:
    return {
        "density": (heat.water_density(temperature), "density", "lb/ft3", "kg/m3"),
        "capacity": (heat.water_heat_capacity(temperature), "specific heat", "BTU/(lb·F°)", "kJ/(kg·C°)"),
    }


def _expansion(volume: float, cold: float, hot: float) -> Steps:
    return {"grown": (expansion.expanded_volume(volume, cold, hot) / volume, "number", "", "")}


def _along_pipe(start: float, room: float, length: float, loss: float, flow: float) -> Steps:
    end = streams.pipe_end_temperature(start, room, length, loss, flow)
    return {
        "part": (loss * length / (heat.TRADE_HEAT * flow), "number", "", ""),
        "drop": (start - end, "temperature difference", "F°", "C°"),
    }


FORMULAS: tuple[Formula, ...] = (
    Formula(
        id="booster-rise",
        subject="heat",
        title="Rise a booster gives the rinse",
        asks="How many degrees does this power give this flow?",
        run=heat.rise_of_flow,
        takes=(_POWER, _FLOW),
        gives=(Answer("rise", "Rise", "temperature difference", "F°", "C°"),),
        us=(_RISE_US,),
        si=(_RISE_SI,),
        also=("temperature rise", "booster"),
    ),
    Formula(
        id="outlet-temperature",
        subject="heat",
        title="Water behind a heater",
        asks="How hot does the water leave the booster at full heat?",
        run=streams.outlet_temperature,
        takes=(
            Argument("inlet", "Water entering", "temperature", "°F", "°C", plate="booster_inlet"),
            _POWER,
            _FLOW,
        ),
        gives=(Answer("outlet", "Water leaving", "temperature", "°F", "°C"),),
        us=(_RISE_US, "{inlet:n} + {rise:n} = {outlet}"),
        si=(_RISE_SI, "{inlet:n} + {rise:n} = {outlet}"),
        steps=_rise,
        also=("final rinse temperature", "booster outlet"),
    ),
    Formula(
        id="inlet-needed",
        subject="heat",
        title="Inlet temperature that a target needs",
        asks="How hot must the water come in for this booster to make the rinse?",
        run=streams.inlet_needed,
        takes=(
            Argument("target", "Temperature wanted", "temperature", "°F", "°C", plate="rinse_temperature"),
            _POWER,
            _FLOW,
        ),
        gives=(Answer("inlet", "Least temperature entering", "temperature", "°F", "°C"),),
        us=(_RISE_US, "{target:n} − {rise:n} = {inlet}"),
        si=(_RISE_SI, "{target:n} − {rise:n} = {inlet}"),
        steps=_rise,
        also=("supply too cold", "incoming water"),
    ),
    Formula(
        id="power-needed",
        subject="heat",
        title="Power that a rise needs",
        asks="How many kilowatts does this flow want for this rise?",
        run=heat.power_for_rise,
        takes=(_FLOW, _RISE, _EFFICIENCY),
        gives=(Answer("power", "Power taken in", "power", "kW"),),
        us=("500 × {flow} × {rise} ÷ (3412 × {efficiency}) = {power}",),
        si=("{flow} × {rise} ÷ (14.35 × {efficiency}) = {power}",),
        also=("kW", "booster size", "sizing"),
    ),
    Formula(
        id="heater-efficiency",
        subject="heat",
        title="Share of a heater's power found in the water",
        asks="Does the power taken in arrive in the water?",
        run=streams.heater_efficiency,
        takes=(
            _FLOW,
            Argument("rise", "Rise measured", "temperature difference", "F°", "C°"),
            Argument("power", "Power taken in", "power", "kW", plate="booster_power"),
        ),
        gives=(Answer("efficiency", "Share found in the water", "number"),),
        us=("500 × {flow} × {rise} ÷ (3412 × {power}) = {efficiency}",),
        si=("{flow} × {rise} ÷ (14.35 × {power}) = {efficiency}",),
        also=("efficiency", "heat balance"),
    ),
    Formula(
        id="mixing",
        subject="heat",
        title="Two streams mixed",
        asks="How warm is the water when hot and cold run together?",
        run=streams.mixed_temperature,
        takes=(
            Argument("hot_flow", "Flow of the hot stream", "flow", "gpm", "L/min"),
            Argument("hot", "Hot stream", "temperature", "°F", "°C"),
            Argument("cold_flow", "Flow of the cold stream", "flow", "gpm", "L/min"),
            Argument("cold", "Cold stream", "temperature", "°F", "°C"),
        ),
        gives=(Answer("mixed", "Mixed", "temperature", "°F", "°C"),),
        us=("({hot_flow} × {hot:n} + {cold_flow} × {cold:n}) ÷ ({hot_flow} + {cold_flow}) = {mixed}",),
        also=("mixing valve", "crossflow", "cold bleeding into hot"),
    ),
    Formula(
        id="pipe-loss",
        subject="heat",
        title="Heat lost along a pipe",
        asks="How hot is the water at the end of this pipe?",
        run=streams.pipe_end_temperature,
        takes=(
            Argument("start", "Water entering the pipe", "temperature", "°F", "°C"),
            Argument("room", "Air round the pipe", "temperature", "°F", "°C", usual="75 °F", stands="judgement"),
            Argument("length", "Length of pipe", "length", "ft", "m"),
            Argument(
                "loss",
                "Heat lost per length and degree",
                "loss per length",
                "BTU/(h·ft·F°)",
                "W/(m·C°)",
                usual="0.7 W/(m·C°)",
                stands="bare 3/4 in (22 mm) copper; with 1 in of insulation 0.2: from memory",
            ),
            _FLOW,
        ),
        gives=(Answer("end", "Water leaving the pipe", "temperature", "°F", "°C"),),
        us=(
            "{loss} × {length} ÷ (500 × {flow}) = {part}",
            "({start:n} − {room:n}) × exp(−{part}) + {room:n} = {end}",
            "{start:n} − {end:n} = {drop}",
        ),
        si=(
            "{loss} × {length} ÷ (69.68 × {flow}) = {part}",
            "({start:n} − {room:n}) × exp(−{part}) + {room:n} = {end}",
            "{start:n} − {end:n} = {drop}",
        ),
        steps=_along_pipe,
        also=("bare pipe", "insulation", "remote booster", "manifold"),
    ),
    Formula(
        id="water-expansion",
        subject="heat",
        title="Water that a closed booster must get rid of as it heats",
        asks="How much water leaves by the relief valve each time this booster heats up?",
        run=expansion.expanded_volume,
        takes=(
            Argument("volume", "Water the booster holds", "volume", "gal", "L", plate="booster_volume"),
            Argument("cold", "Water before heating", "temperature", "°F", "°C", plate="booster_inlet"),
            Argument("hot", "Water as the heat is cut", "temperature", "°F", "°C"),
        ),
        gives=(Answer("more", "Volume that must go elsewhere", "volume", "fl oz", "mL"),),
        us=("Water grows by {grown} of itself from {cold} to {hot}.", "{volume} × 128 × {grown} = {more}"),
        si=("Water grows by {grown} of itself from {cold} to {hot}.", "{volume} × 1000 × {grown} = {more}"),
        steps=_expansion,
        also=("expansion tank", "relief valve", "thermal expansion"),
    ),
    Formula(
        id="water-density",
        subject="heat",
        title="Weight of water by its temperature",
        asks="How heavy is water at this temperature?",
        run=heat.water_density,
        takes=(Argument("temperature", "Temperature", "temperature", "°F", "°C"),),
        gives=(Answer("density", "Density", "density", "lb/ft3", "kg/m3"),),
        us=("Water at {temperature}: {density}.",),
        by_hand="read from an equation fitted to the water table",
        also=("pounds per gallon",),
    ),
    Formula(
        id="water-heat-capacity",
        subject="heat",
        title="Heat that warms water by one degree",
        asks="How much heat does a mass of water take for one degree?",
        run=heat.water_heat_capacity,
        takes=(Argument("temperature", "Temperature", "temperature", "°F", "°C"),),
        gives=(Answer("capacity", "Heat capacity", "specific heat", "BTU/(lb·F°)", "kJ/(kg·C°)"),),
        us=("Water at {temperature}: {capacity}.",),
        by_hand="read from an equation fitted to the water table",
        also=("specific heat",),
    ),
    Formula(
        id="water-heat",
        subject="heat",
        title="The 500 rule at another temperature",
        asks="What does the 500 of the trade become in water this hot?",
        run=heat.trade_figure,
        takes=(Argument("temperature", "Temperature", "temperature", "°F", "°C"),),
        gives=(Answer("figure", "BTU/h per gpm and F°", "number"),),
        us=("{density} × {capacity} × 8.021 = {figure}",),
        si=("{density} × {capacity} ÷ 8.361 = {figure}",),
        steps=_water,
        also=("500", "hot water", "BTU"),
    ),
)
