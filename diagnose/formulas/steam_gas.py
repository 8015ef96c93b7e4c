"""Steam and gas as sources of heat: as the trade asks it."""

from __future__ import annotations

from collections.abc import Mapping

from diagnose.formulas.formula import Answer, Argument, Formula
from diagnose.physics import gas, scale_loss, steam, steam_coil, streams

__all__ = ["FORMULAS"]

Steps = Mapping[str, tuple[float, str, str, str]]

_GAUGE = Argument("gauge", "Steam pressure on the gauge", "pressure", "psi", "bar", plate="steam_pressure")
_FLOW = Argument("flow", "Rinse flow", "flow", "gpm", "L/min", plate="rinse_flow")
_RISE = Argument("rise", "Rise of the water", "temperature difference", "F°", "C°")
_INPUT = Argument("power", "Gas input", "power", "BTU/h", "kW", plate="gas_input")
_EFFICIENCY = Argument(
    "efficiency",
    "Share of the gas input that goes into the water",
    "number",
    usual="0.75",
    stands="county plan check guide EHD 16-01, appendix E",
)


def _absolute(gauge: float) -> Steps:
    return {"absolute": (gauge + steam.STANDARD_AIR, "pressure", "psi", "bar")}


def _latent(gauge: float, **_: float) -> Steps:
    return {"latent": (steam.latent_heat_at_gauge(gauge), "heat per mass", "BTU/lb", "kJ/kg")}


def _coil(
    gauge: float,
    flow: float,
    rated_gauge: float,
    rated_inlet: float,
    rated_flow: float,
    rated_rise: float,
    **_: float,
) -> Steps:
    hot, rated_hot = steam.steam_temperature_at_gauge(gauge), steam.steam_temperature_at_gauge(rated_gauge)
    units = steam_coil.transfer_units(rated_rise, rated_hot - rated_inlet)
    return {
        "steam": (hot, "temperature", "°F", "°C"),
        "rated_steam": (rated_hot, "temperature", "°F", "°C"),
        "rated_units": (units, "number", "", ""),
        "units": (units * rated_flow / flow, "number", "", ""),
    }


def _meter(gauge: float = 0.0, temperature: float = gas.BASE_TEMPERATURE, **_: float) -> Steps:
    return {"factor": (gas.meter_factor(gauge, temperature), "number", "", "")}


FORMULAS: tuple[Formula, ...] = (
    Formula(
        id="steam-temperature",
        subject="steam_gas",
        title="Temperature of steam by its gauge",
        asks="How hot is steam at this pressure on the gauge?",
        run=steam.steam_temperature_at_gauge,
        takes=(_GAUGE,),
        gives=(Answer("temperature", "Temperature", "temperature", "°F", "°C"),),
        us=("{gauge:n} + 14.7 = {absolute} absolute, at which steam has {temperature}",),
        si=("{gauge:n} + 1.013 = {absolute} absolute, at which steam has {temperature}",),
        steps=_absolute,
        by_hand="the temperature is read from the steam table",
        also=("saturation", "steam table"),
    ),
    Formula(
        id="steam-latent-heat",
        subject="steam_gas",
        title="Heat that steam gives up",
        asks="How much heat does a pound of steam give when it condenses?",
        run=steam.latent_heat_at_gauge,
        takes=(_GAUGE,),
        gives=(Answer("latent", "Latent heat", "heat per mass", "BTU/lb", "kJ/kg"),),
        us=("{gauge:n} + 14.7 = {absolute} absolute, at which steam gives {latent}",),
        si=("{gauge:n} + 1.013 = {absolute} absolute, at which steam gives {latent}",),
        steps=_absolute,
        by_hand="the heat is read from the steam table",
        also=("condensing", "steam table"),
    ),
    Formula(
        id="boiling-pressure",
        subject="steam_gas",
        title="Pressure at which water of a temperature boils",
        asks="Under what absolute pressure does water this hot boil?",
        run=steam.saturation_pressure,
        takes=(Argument("temperature", "Water", "temperature", "°F", "°C"),),
        gives=(Answer("pressure", "Absolute pressure", "pressure", "psi", "kPa"),),
        us=("Water at {temperature} boils at {pressure} absolute.",),
        by_hand="read from the steam table",
        also=("flashing", "cavitation", "saturation"),
    ),
    Formula(
        id="condensate-heat",
        subject="steam_gas",
        title="Heat a coil takes, by its condensate",
        asks="How many kilowatts does this much condensate stand for?",
        run=steam.condensate_power,
        takes=(Argument("condensate", "Condensate", "mass flow", "lb/h", "kg/h"), _GAUGE),
        gives=(Answer("power", "Heat", "power", "kW"),),
        us=("{condensate} × {latent} ÷ 3412 = {power}",),
        si=("{condensate} × {latent} ÷ 3600 = {power}",),
        steps=_latent,
        also=("trap", "bucket", "steam booster"),
    ),
    Formula(
        id="steam-needed",
        subject="steam_gas",
        title="Steam that a rise needs",
        asks="How much steam an hour does this rise take?",
        run=steam.steam_for_rise,
        takes=(_FLOW, _RISE, _GAUGE),
        gives=(Answer("steam", "Steam", "mass flow", "lb/h", "kg/h"),),
        us=("500 × {flow} × {rise} ÷ {latent} = {steam}",),
        si=("250.9 × {flow} × {rise} ÷ {latent} = {steam}",),
        steps=_latent,
        also=("condensate", "trap size", "boiler"),
    ),
    Formula(
        id="coil-rise",
        subject="steam_gas",
        title="Rise a clean steam coil gives",
        asks="What rise must a clean coil give with this steam, water and flow?",
        run=steam_coil.coil_rise,
        takes=(
            Argument("gauge", "Steam pressure at the coil, on the gauge", "pressure", "psi", "bar"),
            Argument("inlet", "Water entering", "temperature", "°F", "°C"),
            Argument("flow", "Rinse flow", "flow", "gpm", "L/min"),
            Argument("rated_gauge", "Steam pressure rated", "pressure", "psi", "bar", plate="steam_pressure"),
            Argument("rated_inlet", "Inlet rated", "temperature", "°F", "°C", plate="booster_inlet"),
            Argument("rated_flow", "Flow rated", "flow", "gpm", "L/min", plate="rinse_flow"),
            Argument("rated_rise", "Rise rated", "temperature difference", "F°", "C°"),
        ),
        gives=(Answer("rise", "Rise", "temperature difference", "F°", "C°"),),
        us=(
            "Steam rated {rated_steam}, steam now {steam} (steam table).",
            "−ln(1 − {rated_rise} ÷ ({rated_steam:n} − {rated_inlet:n})) = {rated_units}",
            "{rated_units} × {rated_flow} ÷ {flow} = {units}",
            "({steam:n} − {inlet:n}) × (1 − exp(−{units})) = {rise}",
        ),
        steps=_coil,
        also=("limed coil", "steam booster", "short steam"),
    ),
    Formula(
        id="gas-clocked",
        subject="steam_gas",
        title="Gas input by the meter",
        asks="How much heat does the burner take, by the meter's dial?",
        run=gas.gas_input,
        takes=(
            Argument("volume", "Volume on the dial", "volume", "ft3", "m3"),
            Argument("time", "Time for it", "time", "s"),
            Argument(
                "heating_value",
                "Heating value of the gas",
                "heating value",
                "BTU/ft3",
                "MJ/m3",
                usual="1030 BTU/ft3",
                stands="natural gas; the supplier knows",
            ),
            Argument(
                "gauge",
                "Gas pressure in the meter",
                "pressure",
                "inWG",
                "kPa",
                usual="7 inWG",
                stands="common supply of natural gas",
            ),
            Argument("temperature", "Gas in the meter", "temperature", "°F", "°C", usual="60 °F", stands="judgement"),
        ),
        gives=(Answer("input", "Gas input", "power", "BTU/h", "kW"),),
        us=(
            "({gauge:n} + 406.8) ÷ 407.7 × 519.7 ÷ ({temperature:n} + 459.7) = {factor}",
            "3600 × {volume} × {heating_value} × {factor} ÷ {time} = {input}",
        ),
        si=(
            "({gauge:n} + 101.3) ÷ 101.6 × 288.7 ÷ ({temperature:n} + 273.15) = {factor}",
            "1000 × {volume} × {heating_value} × {factor} ÷ {time} = {input}",
        ),
        steps=_meter,
        also=("clock the meter", "BTU", "burner"),
    ),
    Formula(
        id="gas-rise",
        subject="steam_gas",
        title="Rise a gas booster gives",
        asks="How many degrees does this gas input give this flow?",
        run=gas.gas_rise,
        takes=(_INPUT, _EFFICIENCY, _FLOW),
        gives=(Answer("rise", "Rise", "temperature difference", "F°", "C°"),),
        us=("{power} × {efficiency} ÷ (500 × {flow}) = {rise}",),
        si=("{power} × {efficiency} × 14.35 ÷ {flow} = {rise}",),
        also=("gas booster",),
    ),
    Formula(
        id="gas-needed",
        subject="steam_gas",
        title="Gas input that a rise needs",
        asks="How much gas does this rise want?",
        run=gas.gas_for_rise,
        takes=(_FLOW, _RISE, _EFFICIENCY),
        gives=(Answer("input", "Gas input", "power", "BTU/h", "kW"),),
        us=("500 × {flow} × {rise} ÷ {efficiency} = {input}",),
        si=("{flow} × {rise} ÷ (14.35 × {efficiency}) = {input}",),
        also=("gas booster", "sizing"),
    ),
    Formula(
        id="gas-efficiency",
        subject="steam_gas",
        title="Share of the gas found in the water",
        asks="How much of the gas input arrives in the water?",
        run=streams.heater_efficiency,
        takes=(_FLOW, Argument("rise", "Rise measured", "temperature difference", "F°", "C°"), _INPUT),
        gives=(Answer("efficiency", "Share found in the water", "number"),),
        us=("500 × {flow} × {rise} ÷ {power} = {efficiency}",),
        si=("{flow} × {rise} ÷ (14.35 × {power}) = {efficiency}",),
        also=("limed", "sooted", "flue"),
    ),
    Formula(
        id="gas-manifold",
        subject="steam_gas",
        title="Gas input by the manifold's pressure",
        asks="What input does this manifold pressure give?",
        run=gas.input_at_manifold,
        takes=(
            Argument("rated_input", "Gas input on the plate", "power", "BTU/h", "kW", plate="gas_input"),
            Argument("manifold", "Manifold pressure read", "pressure", "inWG", "kPa"),
            Argument(
                "rated_manifold", "Manifold pressure on the plate", "pressure", "inWG", "kPa", plate="gas_pressure"
            ),
        ),
        gives=(Answer("input", "Gas input", "power", "BTU/h", "kW"),),
        us=("{rated_input} × √({manifold:n} ÷ {rated_manifold:n}) = {input}",),
        also=("regulator", "jets"),
    ),
    Formula(
        id="scale-fuel-loss",
        subject="steam_gas",
        title="Fuel that scale wastes on a fired exchanger",
        asks="What share of the gas does scale send up the flue?",
        run=scale_loss.fuel_lost_to_scale,
        takes=(
            Argument("thickness", "Scale on the water side", "length", "in", "mm"),
            Argument("deposit", "Kind of scale", "words", words=scale_loss.DEPOSITS),
            Argument("surface", "Surface it sits on", "words", words=scale_loss.SURFACES),
        ),
        gives=(Answer("lost", "Share of the fuel lost", "share", "%"),),
        us=("{thickness} of {deposit} scale on a {surface}: {lost} of the fuel is lost.",),
        by_hand="read from a table",
        also=("lime", "efficiency", "gas booster"),
    ),
)
