"""Pumps: pressure, speed, power, suction: as the trade asks it."""

from __future__ import annotations

from collections.abc import Mapping

from diagnose.formulas.formula import Answer, Argument, Formula
from diagnose.physics import heat, pumps, steam, suction

__all__ = ["FORMULAS"]

Steps = Mapping[str, tuple[float, str, str, str]]

_FLOW = Argument("flow", "Flow", "flow", "gpm", "L/min")
_PRESSURE = Argument("pressure", "Pressure at the manifold", "pressure", "psi", "bar", plate="pump_pressure")
_POWER = Argument("power", "Shaft power", "power", "hp", "kW", plate="wash_motor_power")
_SPEED = Argument(
    "speed", "Frequency it is made for", "frequency", "Hz", usual="60 Hz", stands="the pump's plate governs"
)
_NEW = Argument("new_speed", "Frequency it runs on", "frequency", "Hz", plate="frequency")
_WATER = Argument("temperature", "Water in the tank", "temperature", "°F", "°C", plate="wash_temperature")
_HEIGHT = Argument(
    "height", "Water above the pump's eye (below: minus)", "length", "ft", "m", usual="1 ft", stands="judgement"
)
_LOSS = Argument(
    "loss", "Head lost in screen and pipe", "length", "ft", "m", usual="1 ft", stands="clear screen: judgement"
)
_HEAD = Answer("head", "Suction head there is", "length", "ft", "m")


def _suction(temperature: float, height: float, loss: float, air: float = suction.SEA_LEVEL, **_: float) -> Steps:
    weight = heat.water_density(temperature) * suction.GRAVITY
    return {
        "air": (air / weight, "length", "ft", "m"),
        "vapour": (steam.saturation_pressure(temperature) / weight, "length", "ft", "m"),
        "head": (suction.suction_head(temperature, height, loss, air), "length", "ft", "m"),
    }


_AVAILABLE = "{air:n} − {vapour:n} + {height:n} − {loss:n} = {head}"
_HEADS = "Air holds up {air} of this water, its vapour takes {vapour}."

_SPEEDS: tuple[Formula, ...] = (
    Formula(
        id="pump-flow-at-speed",
        subject="pumps",
        title="Flow of a pump at another speed or frequency",
        asks="How much does it move at this speed?",
        run=pumps.flow_at_speed,
        takes=(_FLOW, _SPEED, _NEW),
        gives=(Answer("new_flow", "Flow then", "flow", "gpm", "L/min"),),
        us=("{flow} × {new_speed} ÷ {speed} = {new_flow}",),
        also=("affinity", "50 Hz", "rpm"),
    ),
    Formula(
        id="pump-pressure-at-speed",
        subject="pumps",
        title="Pressure of a pump at another speed or frequency",
        asks="What pressure does it make at this speed?",
        run=pumps.pressure_at_speed,
        takes=(_PRESSURE, _SPEED, _NEW),
        gives=(Answer("new_pressure", "Pressure then", "pressure", "psi", "bar"),),
        us=("{pressure} × ({new_speed} ÷ {speed:n})² = {new_pressure}",),
        also=("affinity", "50 Hz", "rpm"),
    ),
    Formula(
        id="pump-power-at-speed",
        subject="pumps",
        title="Power a pump takes at another speed or frequency",
        asks="What does the motor have to give at this speed?",
        run=pumps.power_at_speed,
        takes=(_POWER, _SPEED, _NEW),
        gives=(Answer("new_power", "Shaft power then", "power", "hp", "kW"),),
        us=("{power} × ({new_speed} ÷ {speed:n})³ = {new_power}",),
        also=("affinity", "50 Hz", "overload"),
    ),
    Formula(
        id="pump-power-of-wheel",
        subject="pumps",
        title="Power a pump takes with a larger or smaller wheel",
        asks="What does the wrong impeller ask of the motor?",
        run=pumps.power_of_wheel,
        takes=(
            _POWER,
            Argument("diameter", "Wheel it had", "length", "in", "mm"),
            Argument("new_diameter", "Wheel it has", "length", "in", "mm"),
        ),
        gives=(Answer("new_power", "Shaft power then", "power", "hp", "kW"),),
        us=("{power} × ({new_diameter} ÷ {diameter:n})^5 = {new_power}",),
        also=("impeller", "diameter", "affinity"),
    ),
)

_WORK: tuple[Formula, ...] = (
    Formula(
        id="water-power",
        subject="pumps",
        title="Power that goes into the water",
        asks="How much of the motor's work is in the spray?",
        run=pumps.hydraulic_power,
        takes=(_FLOW, _PRESSURE),
        gives=(Answer("power", "Power in the water", "power", "hp", "W"),),
        us=("{flow} × {pressure} ÷ 1714 = {power}",),
        si=("{flow} × {pressure} ÷ 0.6 = {power}",),
        also=("hydraulic", "horsepower"),
    ),
    Formula(
        id="pump-efficiency",
        subject="pumps",
        title="Efficiency of a pump",
        asks="What share of the shaft's power is in the water?",
        run=pumps.pump_efficiency,
        takes=(_FLOW, _PRESSURE, Argument("shaft_power", "Shaft power", "power", "hp", "W", plate="wash_motor_power")),
        gives=(Answer("efficiency", "Share in the water", "number"),),
        us=("{flow} × {pressure} ÷ (1714 × {shaft_power}) = {efficiency}",),
        si=("{flow} × {pressure} ÷ (0.6 × {shaft_power}) = {efficiency}",),
        also=("worn wheel", "wear"),
    ),
    Formula(
        id="pressure-through-jets",
        subject="pumps",
        title="Wash pressure with jets choked or an end open",
        asks="What does the manifold read with so much of the jets open?",
        run=pumps.pressure_through_jets,
        takes=(
            _PRESSURE,
            Argument("open_share", "Open area over that of all jets", "number"),
            Argument(
                "head",
                "Pressure with every jet shut over that in order",
                "number",
                usual="1.4",
                stands="a small wash pump's curve, judgement; its sheet governs",
            ),
        ),
        gives=(Answer("now", "Pressure then", "pressure", "psi", "bar"),),
        us=("{head} × {pressure} ÷ (1 + ({head} − 1) × {open_share}²) = {now}",),
        also=("clogged jets", "end plug", "manifold", "wash arm"),
    ),
    Formula(
        id="suction-head",
        subject="pumps",
        title="Head at a pump's suction with hot water",
        asks="How far is the water at the pump's eye from boiling?",
        run=suction.suction_head,
        takes=(_WATER, _HEIGHT, _LOSS),
        gives=(_HEAD,),
        us=(_HEADS, _AVAILABLE),
        steps=lambda **v: {k: s for k, s in _suction(**v).items() if k != "head"},
        also=("NPSH", "cavitation", "crackle", "gravel"),
    ),
    Formula(
        id="cavitation-margin",
        subject="pumps",
        title="Margin of a pump against cavitation",
        asks="Does hot water leave the pump enough at its suction?",
        run=suction.suction_margin,
        takes=(_WATER, _HEIGHT, _LOSS, Argument("wanted", "Suction head the pump wants", "length", "ft", "m")),
        gives=(Answer("margin", "Margin", "length", "ft", "m"),),
        us=(_HEADS, _AVAILABLE, "{head} − {wanted} = {margin}"),
        steps=_suction,
        also=("NPSH", "cavitation", "crackle", "hot tank"),
    ),
)

FORMULAS: tuple[Formula, ...] = (*_SPEEDS, *_WORK)
