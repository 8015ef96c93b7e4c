"""Tanks: heating up, losses, overflow, racks: as the trade asks it."""

from __future__ import annotations

from collections.abc import Mapping

from diagnose.formulas.formula import Answer, Argument, Formula
from diagnose.formulas.racks import RACKS
from diagnose.physics import heat, overflow, tanks

__all__ = ["FORMULAS"]

Steps = Mapping[str, tuple[float, str, str, str]]

_VOLUME = Argument("volume", "Water held", "volume", "gal", "L", plate="wash_tank_volume")
_POWER = Argument("power", "Tank heater", "power", "kW", plate="tank_power")
_START = Argument("start", "Temperature at the start", "temperature", "°F", "°C")
_LOSS = Argument(
    "loss",
    "Heat lost to the room per degree",
    "heat loss",
    "BTU/(h·F°)",
    "W/C°",
    usual="35 W/C°",
    stands="judgement: 1.5 to 2 kW of a hot tank in a 75 °F room; found by watching it cool",
)
_ROOM = Argument("room", "Room", "temperature", "°F", "°C", usual="75 °F", stands="judgement")
_INFLOW = Argument("inflow", "Water running in and over the drain", "flow", "gpm", "L/min")
_ENTERING = Argument("inflow_temperature", "Temperature of that water", "temperature", "°F", "°C")
_TIME = Answer("time", "Time", "time", "min")

_SETTLED_US = (
    "(3412 × {power} + {loss} × {room:n} + 500 × {inflow} × {inflow_temperature:n})"
    " ÷ ({loss} + 500 × {inflow}) = {settled}"
)
_SETTLED_SI = (
    "(1000 × {power} + {loss} × {room:n} + 69.68 × {inflow} × {inflow_temperature:n})"
    " ÷ ({loss} + 69.68 × {inflow}) = {settled}"
)
_CONSTANT_US = "8.333 × {volume} ÷ ({loss} + 500 × {inflow}) × 60 = {constant}"
_CONSTANT_SI = "69.68 × {volume} ÷ ({loss} + 69.68 × {inflow}) = {constant}"


def _settling(
    volume: float, power: float, loss: float, room: float, inflow: float, inflow_temperature: float, **_: float
) -> Steps:
    settled = tanks.steady_temperature(power, loss, room, inflow, inflow_temperature)
    constant = heat.TRADE_HEAT * volume / (loss + heat.TRADE_HEAT * inflow)
    return {"settled": (settled, "temperature", "°F", "°C"), "constant": (constant, "time", "min", "min")}


def _settling_alone(volume: float, power: float, loss: float, room: float, **_: float) -> Steps:
    over = (power / loss, "temperature difference", "F°", "C°")
    return {"over": over, **_settling(volume, power, loss, room, 0.0, room)}


def _day(inflow: float, **_: float) -> Steps:
    return {"day": (inflow * 12 * 3600, "volume", "gal", "L")}


def _idle(start: float, room: float, volume: float, end: float, time: float) -> Steps:
    loss = tanks.loss_factor_of_cooling(volume, start, end, time, room)
    return {"power": (loss * (start - room), "power", "kW", "kW")}


FORMULAS: tuple[Formula, ...] = (
    Formula(
        id="heat-up",
        subject="tanks",
        title="Heat-up of a tank, nothing lost",
        asks="How long does this power take to warm the tank?",
        run=heat.heat_up_time,
        takes=(_VOLUME, Argument("rise", "Rise", "temperature difference", "F°", "C°"), _POWER),
        gives=(_TIME,),
        us=("8.333 × {volume} × {rise} ÷ (3412 × {power}) × 60 = {time}",),
        si=("4.181 × {volume} × {rise} ÷ (60 × {power}) = {time}",),
        also=("warm up", "fill to hot"),
    ),
    Formula(
        id="heat-up-loss",
        subject="tanks",
        title="Heat-up of a tank that loses to the room",
        asks="How long does the tank really take, with what it loses?",
        run=tanks.heat_up_time_with_loss,
        takes=(
            _VOLUME,
            _START,
            Argument("target", "Temperature wanted", "temperature", "°F", "°C"),
            _POWER,
            _LOSS,
            _ROOM,
        ),
        gives=(_TIME,),
        us=(
            "3412 × {power} ÷ {loss} = {over} over the room, where heat and loss would balance",
            "{room:n} + {over:n} = {settled}",
            "8.333 × {volume} ÷ {loss} × 60 = {constant}",
            "{constant} × ln(({settled:n} − {start:n}) ÷ ({settled:n} − {target:n})) = {time}",
        ),
        si=(
            "1000 × {power} ÷ {loss} = {over} over the room, where heat and loss would balance",
            "{room:n} + {over:n} = {settled}",
            "69.68 × {volume} ÷ {loss} = {constant}",
            "{constant} × ln(({settled:n} − {start:n}) ÷ ({settled:n} − {target:n})) = {time}",
        ),
        steps=_settling_alone,
        also=("warm up", "slow"),
    ),
    Formula(
        id="heat-up-overflow",
        subject="tanks",
        title="Heat-up or cooling of a tank with its overflow running",
        asks="How long does the tank take while water runs through it?",
        run=tanks.time_to_temperature,
        takes=(
            _VOLUME,
            _START,
            Argument("target", "Temperature at the end", "temperature", "°F", "°C"),
            _POWER,
            _LOSS,
            _ROOM,
            _INFLOW,
            _ENTERING,
        ),
        gives=(_TIME,),
        us=(
            _SETTLED_US,
            _CONSTANT_US,
            "{constant} × ln(({settled:n} − {start:n}) ÷ ({settled:n} − {target:n})) = {time}",
        ),
        si=(
            _SETTLED_SI,
            _CONSTANT_SI,
            "{constant} × ln(({settled:n} − {start:n}) ÷ ({settled:n} − {target:n})) = {time}",
        ),
        steps=_settling,
        also=("weeping fill valve", "drain leaks"),
    ),
    Formula(
        id="tank-after",
        subject="tanks",
        title="Tank some time later",
        asks="How warm is the tank after this time, heated or not, water running or not?",
        run=overflow.temperature_after,
        takes=(
            _VOLUME,
            _START,
            Argument("time", "Time gone by", "time", "min"),
            _POWER,
            _LOSS,
            _ROOM,
            _INFLOW,
            _ENTERING,
        ),
        gives=(Answer("after", "Temperature then", "temperature", "°F", "°C"),),
        us=(_SETTLED_US, _CONSTANT_US, "({start:n} − {settled:n}) × exp(−{time} ÷ {constant}) + {settled:n} = {after}"),
        si=(_SETTLED_SI, _CONSTANT_SI, "({start:n} − {settled:n}) × exp(−{time} ÷ {constant}) + {settled:n} = {after}"),
        steps=_settling,
        also=("cools down", "standing"),
    ),
    Formula(
        id="tank-settles",
        subject="tanks",
        title="Where a tank settles",
        asks="How hot does the tank get at best with water running through it?",
        run=tanks.steady_temperature,
        takes=(_POWER, _LOSS, _ROOM, _INFLOW, _ENTERING),
        gives=(Answer("settled", "Settles at", "temperature", "°F", "°C"),),
        us=(_SETTLED_US,),
        si=(_SETTLED_SI,),
        also=("overflow runs", "never gets hot"),
    ),
    Formula(
        id="tank-power",
        subject="tanks",
        title="Power that holds a tank hot",
        asks="How many kilowatts hold the tank against room and overflow?",
        run=tanks.power_to_hold,
        takes=(
            Argument("temperature", "Temperature held", "temperature", "°F", "°C", plate="wash_temperature"),
            _ROOM,
            _LOSS,
            _INFLOW,
            _ENTERING,
        ),
        gives=(Answer("power", "Power", "power", "kW"),),
        us=(
            "({loss} × ({temperature:n} − {room:n}) + 500 × {inflow} × ({temperature:n} − {inflow_temperature:n}))"
            " ÷ 3412 = {power}",
        ),
        si=(
            "({loss} × ({temperature:n} − {room:n}) + 69.68 × {inflow} × ({temperature:n} − {inflow_temperature:n}))"
            " ÷ 1000 = {power}",
        ),
        also=("idle", "hold"),
    ),
    Formula(
        id="overflow-heat",
        subject="tanks",
        title="What a running overflow costs",
        asks="How much heat and water does the overflow carry off?",
        run=overflow.heat_of_inflow,
        takes=(
            _INFLOW,
            _ENTERING,
            Argument("temperature", "Tank", "temperature", "°F", "°C", plate="wash_temperature"),
        ),
        gives=(Answer("power", "Heat carried off", "power", "kW"),),
        us=(
            "500 × {inflow} × ({temperature:n} − {inflow_temperature:n}) ÷ 3412 = {power}",
            "{inflow} × 60 × 12 = {day} in a day of 12 hours",
        ),
        si=(
            "69.68 × {inflow} × ({temperature:n} − {inflow_temperature:n}) ÷ 1000 = {power}",
            "{inflow} × 60 × 12 = {day} in a day of 12 hours",
        ),
        steps=_day,
        also=("weeping fill valve", "water runs away", "waste"),
    ),
    Formula(
        id="loss-by-cooling",
        subject="tanks",
        title="Loss of a tank, found by watching it cool",
        asks="How much heat does the tank lose, from how fast it cools?",
        run=tanks.loss_factor_of_cooling,
        takes=(
            _VOLUME,
            _START,
            Argument("end", "Temperature at the end", "temperature", "°F", "°C"),
            Argument("time", "Time between the two", "time", "min"),
            _ROOM,
        ),
        gives=(Answer("loss", "Heat lost per degree", "heat loss", "BTU/(h·F°)", "W/C°"),),
        us=(
            "8.333 × {volume} × 60 ÷ {time} × ln(({start:n} − {room:n}) ÷ ({end:n} − {room:n})) = {loss}",
            "{loss} × ({start:n} − {room:n}) ÷ 3412 = {power} at the start",
        ),
        si=(
            "69.68 × {volume} ÷ {time} × ln(({start:n} − {room:n}) ÷ ({end:n} − {room:n})) = {loss}",
            "{loss} × ({start:n} − {room:n}) ÷ 1000 = {power} at the start",
        ),
        steps=_idle,
        also=("heat loss", "cooling"),
    ),
    *RACKS,
)
