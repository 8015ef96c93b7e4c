"""Moist air and what the exhaust carries away: as the trade asks it."""

from __future__ import annotations

from collections.abc import Mapping

from diagnose.formulas.formula import Answer, Argument, Formula
from diagnose.physics import air_state, exhaust, moist_air

__all__ = ["WET"]

_Steps = Mapping[str, tuple[float, str, str, str]]
_KG_OF_POUND, _J_OF_BTU = 0.45359237, 1055.05585262

_PRESSURE = Argument("pressure", "Air pressure", "pressure", "Pa", usual="101325 Pa", stands="sea level")
_ROOM = Argument("room_temperature", "Room temperature", "temperature", "°F", "°C", usual="75 °F", stands="dish room")
_ROOM_WET = Argument(
    "room_humidity", "Room humidity", "share", "%", usual="50 %", stands="dish room with the machine off"
)
_HUMIDITY = Argument("humidity", "Relative humidity", "share", "%", usual="90 %", stands="of a machine's exhaust")
_WARM = Argument("temperature", "Temperature of the air", "temperature", "°F", "°C")
_FLOW = Argument("flow", "Air taken", "air flow", "cfm", "m3/h")

_SWEPT = f"{exhaust.TANK_AIR * 100:g} %"


def _vapour(temperature: float, humidity: float, pressure: float = moist_air.SEA_LEVEL) -> _Steps:
    saturated = moist_air.saturation_pressure(temperature)
    ratio = moist_air.humidity_ratio(temperature, humidity, pressure)
    return {
        "saturated": (saturated, "pressure", "Pa", "Pa"),
        "vapour": (humidity * saturated, "pressure", "Pa", "Pa"),
        "ratio_found": (ratio, "number", "", ""),
        "kelvin": (temperature, "temperature", "K", "K"),
        "metric": (moist_air.moist_density(temperature, ratio, pressure), "density", "kg/m3", "kg/m3"),
    }


def _gained(dry: float, heat: float, water: float) -> _Steps:
    """Dry air a second, and what each kilogram of it has gained in heat and water."""
    return {
        "dry": (dry, "mass flow", "lb/h", "kg/h"),
        "btu": (heat * _KG_OF_POUND / _J_OF_BTU, "number", "", ""),
        "kj": (heat / 1e3, "number", "", ""),
        "water": (water, "number", "", ""),
    }


def _exhaust(
    flow: float,
    temperature: float,
    humidity: float,
    room_temperature: float,
    room_humidity: float = 0.5,
    pressure: float = moist_air.SEA_LEVEL,
) -> _Steps:
    wet = moist_air.humidity_ratio(temperature, humidity, pressure)
    room = moist_air.humidity_ratio(room_temperature, room_humidity, pressure)
    heat = moist_air.moist_enthalpy(temperature, wet) - moist_air.moist_enthalpy(room_temperature, room)
    return _gained(flow / moist_air.moist_volume(temperature, wet, pressure), heat, wet - room)


def _tank(
    flow: float,
    tank_temperature: float,
    room_temperature: float,
    room_humidity: float = 0.5,
    tank_air: float = exhaust.TANK_AIR,
    pressure: float = moist_air.SEA_LEVEL,
) -> _Steps:
    hot = moist_air.humidity_ratio(tank_temperature, 1.0, pressure)
    room = moist_air.humidity_ratio(room_temperature, room_humidity, pressure)
    heat = moist_air.moist_enthalpy(tank_temperature, hot) - moist_air.moist_enthalpy(room_temperature, room)
    return _gained(flow / moist_air.moist_volume(room_temperature, room, pressure), heat, hot - room)


WET: tuple[Formula, ...] = (
    Formula(
        id="vapour-pressure",
        subject="air",
        title="Vapour pressure of saturated air",
        asks="What vapour pressure can air of this temperature hold?",
        run=moist_air.saturation_pressure,
        takes=(_WARM,),
        gives=(Answer("pressure", "Vapour pressure", "pressure", "inWG", "Pa"),),
        us=("Over water of {temperature} stands {pressure} of vapour.",),
        by_hand="read from a steam table; the form behind it has six terms",
    ),
    Formula(
        id="air-humidity",
        subject="air",
        title="Water in moist air",
        asks="How much water does each pound of dry air carry?",
        run=moist_air.humidity_ratio,
        takes=(_WARM, _HUMIDITY, _PRESSURE),
        gives=(Answer("ratio", "Water for each unit of dry air, by weight", "number"),),
        us=(
            "Vapour pressure: {saturated} when saturated, so {vapour} here.",
            "0.622 × {vapour:n} ÷ ({pressure:n} − {vapour:n}) = {ratio:n}",
        ),
        steps=_vapour,
    ),
    Formula(
        id="air-humidity-two",
        subject="air",
        title="Relative humidity from two thermometers",
        asks="How humid is the air by a dry and a wet thermometer?",
        run=air_state.humidity_of_two,
        takes=(
            Argument("temperature", "Dry thermometer", "temperature", "°F", "°C"),
            Argument("wet_bulb", "Wet thermometer", "temperature", "°F", "°C"),
            _PRESSURE,
        ),
        gives=(Answer("humidity", "Relative humidity", "share", "%"),),
        us=("Dry {temperature}, wet {wet_bulb} at {pressure}: {humidity}.",),
        by_hand="read from a psychrometric chart",
        also=("psychrometer", "wet bulb"),
    ),
    Formula(
        id="dew-point",
        subject="air",
        title="Dew point",
        asks="On what surfaces does this air drip?",
        run=air_state.dew_point_of_air,
        takes=(_WARM, _HUMIDITY, _PRESSURE),
        gives=(Answer("dew", "Dew point", "temperature", "°F", "°C"),),
        us=("Its vapour pressure is {vapour}: saturated at {dew}. What is colder drips.",),
        steps=_vapour,
        by_hand="read back from a steam table",
        also=("ceiling drips", "condensation"),
    ),
    Formula(
        id="air-density",
        subject="air",
        title="Density of moist air",
        asks="What does this air weigh?",
        run=air_state.density_of_air,
        takes=(_WARM, _HUMIDITY, _PRESSURE),
        gives=(Answer("density", "Density", "density", "lb/ft3", "kg/m3"),),
        us=(
            "Water to dry air: 0.622 × {vapour:n} ÷ ({pressure:n} − {vapour:n}), that is {ratio_found:n}.",
            "{pressure:n} × (1 + {ratio_found:n}) ÷ (287.04 × {kelvin:n} × (1 + 1.608 × {ratio_found:n})) = {metric:n}",
            "{metric:n} ÷ 16.018 = {density}",
        ),
        si=(
            "Water to dry air: 0.622 × {vapour:n} ÷ ({pressure:n} − {vapour:n}), that is {ratio_found:n}.",
            "{pressure:n} × (1 + {ratio_found:n}) ÷ (287.04 × {kelvin:n} × (1 + 1.608 × {ratio_found:n})) = {density}",
        ),
        steps=_vapour,
    ),
    Formula(
        id="exhaust-heat",
        subject="air",
        title="Heat carried out by the exhaust",
        asks="How much heat leaves with exhaust of this temperature?",
        run=exhaust.exhaust_heat,
        takes=(_FLOW, _WARM, _HUMIDITY, _ROOM, _ROOM_WET, _PRESSURE),
        gives=(Answer("heat", "Heat", "power", "kW"),),
        us=(
            "{flow} of it hold {dry} of dry air; each pound has gained {btu:n} BTU.",
            "{dry:n} × {btu:n} ÷ 3412 = {heat}",
        ),
        si=(
            "{flow} of it hold {dry} of dry air; each kilogram has gained {kj:n} kJ.",
            "{dry:n} × {kj:n} ÷ 3600 = {heat}",
        ),
        steps=_exhaust,
        also=("dampers", "tank cold"),
    ),
    Formula(
        id="exhaust-water",
        subject="air",
        title="Water carried out by the exhaust",
        asks="How much water leaves with exhaust of this temperature?",
        run=exhaust.exhaust_moisture,
        takes=(_FLOW, _WARM, _HUMIDITY, _ROOM, _ROOM_WET, _PRESSURE),
        gives=(Answer("carried", "Water", "mass flow", "lb/h", "kg/h"),),
        us=(
            "{flow} of it hold {dry} of dry air; each pound carries {water:n} lb more water than in the room.",
            "{dry:n} × {water:n} = {carried}",
        ),
        si=(
            "{flow} of it hold {dry} of dry air; each kilogram carries {water:n} kg more water than in the room.",
            "{dry:n} × {water:n} = {carried}",
        ),
        steps=_exhaust,
        also=("moisture", "steam"),
    ),
    Formula(
        id="exhaust-tank-heat",
        subject="air",
        title="Heat the exhaust takes from a tank",
        asks="How much heat do the dampers take from the tank?",
        run=exhaust.heat_of_exhaust,
        takes=(
            _FLOW,
            Argument("tank_temperature", "Tank", "temperature", "°F", "°C", plate="wash_temperature"),
            _ROOM,
            _ROOM_WET,
            Argument("tank_air", "Part that swept the spray", "share", "%", usual=_SWEPT, stands="judgement"),
            _PRESSURE,
        ),
        gives=(Answer("heat", "Heat", "power", "kW"),),
        us=(
            "{flow} hold {dry} of dry air, of which {tank_air} leave saturated at {tank_temperature}:",
            "each pound of those takes {btu:n} BTU.",
            "{dry:n} × {tank_air:n} ÷ 100 × {btu:n} ÷ 3412 = {heat}",
        ),
        si=(
            "{flow} hold {dry} of dry air, of which {tank_air} leave saturated at {tank_temperature}:",
            "each kilogram of those takes {kj:n} kJ.",
            "{dry:n} × {tank_air:n} ÷ 100 × {kj:n} ÷ 3600 = {heat}",
        ),
        steps=_tank,
        also=("dampers", "tank cold"),
    ),
)
