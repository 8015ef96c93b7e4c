"""Fans at another speed, ducts at another flow: as the trade asks it."""

from __future__ import annotations

from diagnose.formulas.formula import Answer, Argument, Formula
from diagnose.physics import air_moved

__all__ = ["FANS"]

_FLOW = Argument("flow", "Air taken", "air flow", "cfm", "m3/h")
_TURNS = (
    Argument("turns", "Speed now", "frequency", "rpm"),
    Argument("new_turns", "Other speed", "frequency", "rpm"),
)

FANS: tuple[Formula, ...] = (
    Formula(
        id="fan-flow",
        subject="air",
        title="Fan at another speed: flow",
        asks="How much air does the fan move at another speed?",
        run=air_moved.fan_flow,
        takes=(_FLOW, *_TURNS),
        gives=(Answer("then", "Flow then", "air flow", "cfm", "m3/h"),),
        us=("{flow} × {new_turns:n} ÷ {turns:n} = {then}",),
        also=("pulley", "belt", "fan laws"),
    ),
    Formula(
        id="fan-suction",
        subject="air",
        title="Fan at another speed: suction",
        asks="What suction does the fan give at another speed?",
        run=air_moved.fan_suction,
        takes=(Argument("suction", "Suction now", "pressure", "inWG", "Pa"), *_TURNS),
        gives=(Answer("then", "Suction then", "pressure", "inWG", "Pa"),),
        us=("{suction} × ({new_turns:n} ÷ {turns:n})² = {then}",),
        also=("pulley", "belt", "fan laws"),
    ),
    Formula(
        id="fan-power",
        subject="air",
        title="Fan at another speed: power",
        asks="What power does the fan want at another speed?",
        run=air_moved.fan_power,
        takes=(Argument("power", "Power now", "power", "hp", "W", plate="fan_motor_power"), *_TURNS),
        gives=(Answer("then", "Power then", "power", "hp", "W"),),
        us=("{power} × ({new_turns:n} ÷ {turns:n})³ = {then}",),
        also=("pulley", "belt", "fan laws"),
    ),
    Formula(
        id="duct-suction",
        subject="air",
        title="Suction a duct wants at another flow",
        asks="What suction should stand before the fan at this flow?",
        run=air_moved.suction_of_flow,
        takes=(
            Argument("suction", "Suction when in order", "pressure", "inWG", "Pa"),
            Argument("flow", "Flow then", "air flow", "cfm", "m3/h"),
            Argument("new_flow", "Flow now", "air flow", "cfm", "m3/h"),
        ),
        gives=(Answer("now", "Suction wanted now", "pressure", "inWG", "Pa"),),
        us=("{suction} × ({new_flow:n} ÷ {flow:n})² = {now}",),
        also=("filter", "grease", "clogged"),
    ),
)
