"""Water hammer, as the trade asks it."""

from __future__ import annotations

from collections.abc import Mapping

from diagnose.formulas.formula import Answer, Argument, Formula
from diagnose.physics import hammer

__all__ = ["HAMMER"]

_PRESSURE = ("pressure", "psi", "bar")
_SPEED = ("speed", "ft/s", "m/s")
_DENSITY = Argument(
    "density", "Density of the water", "density", "lb/ft3", "kg/m3", usual="998 kg/m3", stands="cold water"
)
_WAVE = Argument(
    "wave_speed", "Speed of the pressure wave", *_SPEED, usual="4500 ft/s", stands="metal pipe, common practice"
)
_VELOCITY = Argument("velocity", "Speed of the water that is stopped", *_SPEED)
_LENGTH = Argument("length", "Pipe from the valve back to the main", "length", "ft", "m")
_TIME = Argument("time", "Time the valve takes to shut", "time", "s", "s")
_RISE = Answer("rise", "Pressure rise", *_PRESSURE)
_WHOLE_US = "{density} × {wave_speed} × {velocity} ÷ 4633 = {rapid}"
_WHOLE_SI = "{density} × {wave_speed} × {velocity} ÷ 100000 = {rapid}"
_Steps = Mapping[str, tuple[float, str, str, str]]


def _slow(density: float, wave_speed: float, velocity: float, length: float, time: float) -> _Steps:
    critical = hammer.critical_time(length, wave_speed)
    return {
        "rapid": (hammer.hammer_rapid(density, wave_speed, velocity), *_PRESSURE),
        "critical": (critical, "time", "s", "s"),
        "share": (min(1.0, critical / time), "number", "", ""),
    }


def _handbook(density: float, wave_speed: float, velocity: float, length: float, time: float) -> _Steps:
    return {
        "rapid": (hammer.hammer_rapid(density, wave_speed, velocity), *_PRESSURE),
        "uncapped": (hammer.HANDBOOK * velocity * length / time, *_PRESSURE),
    }


HAMMER: tuple[Formula, ...] = (
    Formula(
        id="pipe-speed",
        subject="flow",
        title="Speed of the water in a pipe",
        asks="How fast does it run?",
        run=hammer.speed_in_pipe,
        takes=(
            Argument("flow", "Flow", "flow", "gpm", "L/min", plate="rinse_flow"),
            Argument("diameter", "Inside diameter of the pipe", "length", "in", "mm"),
        ),
        gives=(Answer("speed", "Speed", *_SPEED),),
        us=("0.4085 × {flow} ÷ {diameter:n}² = {speed}",),
        si=("21.22 × {flow} ÷ {diameter:n}² = {speed}",),
        also=("velocity", "hammer"),
    ),
    Formula(
        id="hammer-time",
        subject="flow",
        title="Critical time of water hammer",
        asks="How fast must a valve shut to give the whole blow?",
        run=hammer.critical_time,
        takes=(_LENGTH, _WAVE),
        gives=(Answer("critical", "Critical time", "time", "s", "s"),),
        us=("2 × {length} ÷ {wave_speed} = {critical}",),
        also=("water hammer", "knock"),
    ),
    Formula(
        id="hammer-rapid",
        subject="flow",
        title="Water hammer of a valve that snaps shut",
        asks="How high does the pressure jump?",
        run=hammer.hammer_rapid,
        takes=(_DENSITY, _WAVE, _VELOCITY),
        gives=(_RISE,),
        us=("{density} × {wave_speed} × {velocity} ÷ 4633 = {rise}",),
        si=("{density} × {wave_speed} × {velocity} ÷ 100000 = {rise}",),
        also=("water hammer", "Joukowsky", "knock"),
    ),
    Formula(
        id="hammer-slow",
        subject="flow",
        title="Water hammer of a valve that takes its time",
        asks="How high does the pressure jump when it shuts slowly?",
        run=hammer.hammer_slow,
        takes=(_DENSITY, _WAVE, _VELOCITY, _LENGTH, _TIME),
        gives=(_RISE,),
        us=(
            "2 × {length} ÷ {wave_speed} = {critical}",
            _WHOLE_US,
            "share of it, critical over closing time but 1 at most: {share:n}",
            "{rapid} × {share:n} = {rise}",
        ),
        si=(
            "2 × {length} ÷ {wave_speed} = {critical}",
            _WHOLE_SI,
            "share of it, critical over closing time but 1 at most: {share:n}",
            "{rapid} × {share:n} = {rise}",
        ),
        steps=_slow,
        also=("water hammer", "knock"),
    ),
    Formula(
        id="hammer-handbook",
        subject="flow",
        title="Water hammer by the handbook's rule, on the safe side",
        asks="What does the 0.07 rule say, capped at the whole blow?",
        run=hammer.hammer_handbook,
        takes=(_DENSITY, _WAVE, _VELOCITY, _LENGTH, _TIME),
        gives=(_RISE,),
        us=("0.07 × {velocity} × {length} ÷ {time} = {uncapped}", _WHOLE_US, "the lesser of the two: {rise}"),
        si=("0.05195 × {velocity} × {length} ÷ {time} = {uncapped}", _WHOLE_SI, "the lesser of the two: {rise}"),
        steps=_handbook,
        also=("water hammer", "knock"),
    ),
)
