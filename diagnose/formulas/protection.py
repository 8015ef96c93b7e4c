"""Overloads, protectors, insulation, starts: as the trade asks it."""

from __future__ import annotations

import math

from diagnose.formulas.formula import Answer, Argument, Formula
from diagnose.formulas.guarding import FORMULAS as GUARDING
from diagnose.physics import protection

__all__ = ["FORMULAS"]

_CURRENT = Argument("current", "Motor current", "current", "A")
_SETTING = Argument("setting", "Setting of the overload", "current", "A")
_CLASS = Argument(
    "trip_class", "Trip class", "time", "s", plate="overload_class", usual="10 s", stands="common practice"
)
_BEFORE = Argument(
    "before", "Share of the setting it ran at before, 0 from cold", "number", usual="0", stands="from cold"
)
_SEEN = Argument("time", "Time from start to trip", "time", "s")
_PICKUP = protection.PICKUP

Steps = dict[str, tuple[float, str, str, str]]


def _curve(current: float, setting: float, before: float, trip_class: float = 1.0, **_: object) -> Steps:
    x = current / (_PICKUP * setting)
    tau = protection.trip_time_constant(trip_class)
    return {
        "x": (x, "number", "", ""),
        "square": (x**2, "number", "", ""),
        "warm": (min((before / _PICKUP) ** 2, 1.0), "number", "", ""),
        "tau": (tau, "time", "s", "s"),
        "one": (tau, "number", "", ""),
    }


def _back(current: float, time: float, trip_class: float, before: float, **_: object) -> Steps:
    tau = protection.trip_time_constant(trip_class)
    grown = math.exp(time / tau)
    warm = min((before / _PICKUP) ** 2, 1.0)
    x = math.sqrt((grown - warm) / (grown - 1.0))
    return {
        "tau": (tau, "time", "s", "s"),
        "grown": (grown, "number", "", ""),
        "warm": (warm, "number", "", ""),
        "x": (x, "number", "", ""),
    }


def _multiple(trip_class: float, **_: object) -> Steps:
    return {"tau": (protection.trip_time_constant(trip_class), "time", "s", "s")}


FORMULAS: tuple[Formula, ...] = (
    Formula(
        id="trip-time",
        subject="protection",
        title="Time an overload takes to trip",
        asks="After how long should this overload trip?",
        run=protection.trip_time,
        takes=(_CURRENT, _SETTING, _CLASS, _BEFORE),
        gives=(Answer("time", "Time to trip", "time", "s"),),
        us=(
            "{current} ÷ (1.12 × {setting}) = {x}",
            "Time constant of class {trip_class}: {tau}",
            "{tau} × ln(({square} − {warm}) ÷ ({square} − 1)) = {time}",
        ),
        steps=_curve,
        also=("overload", "relay", "class 10", "curve"),
    ),
    Formula(
        id="trip-class",
        subject="protection",
        title="Class an overload shows by its trip",
        asks="Which class does it trip like?",
        run=protection.class_of_trip_time,
        takes=(_CURRENT, _SETTING, _SEEN, _BEFORE),
        gives=(Answer("trip_class", "Trip class shown", "time", "s"),),
        us=(
            "{current} ÷ (1.12 × {setting}) = {x}",
            "A class of 1 s would trip in {one:n} × ln(({square} − {warm}) ÷ ({square} − 1)) seconds",
            "{time} ÷ ({one:n} × ln(({square} − {warm}) ÷ ({square} − 1))) = {trip_class}",
        ),
        steps=_curve,
        also=("overload", "relay worn"),
    ),
    Formula(
        id="trip-setting",
        subject="protection",
        title="Setting an overload acts like",
        asks="To what current would it be set, to trip as it did?",
        run=protection.setting_of_trip_time,
        takes=(_CURRENT, _SEEN, _CLASS, _BEFORE),
        gives=(Answer("setting", "Setting it acts like", "current", "A"),),
        us=(
            "exp({time} ÷ {tau}) = {grown}",
            "√(({grown} − {warm}) ÷ ({grown} − 1)) = {x}",
            "{current} ÷ (1.12 × {x}) = {setting}",
        ),
        steps=_back,
        also=("overload", "dial", "set low"),
    ),
    Formula(
        id="trip-window",
        subject="protection",
        title="Window of a trip class",
        asks="Between which times may a class trip, cold, at 7.2 times its setting?",
        run=protection.trip_window,
        takes=(Argument("kind", "Trip class on the relay", "words", words=tuple(protection.TRIP_WINDOWS)),),
        gives=(Answer("least", "Not before", "time", "s"), Answer("most", "Not after", "time", "s")),
        us=("Class {kind}: {least} to {most} at 7.2 times the setting, from cold",),
        by_hand="read from a table of the standard",
        also=("class 10", "class 20", "class 30", "test a relay"),
    ),
    Formula(
        id="trip-constant",
        subject="protection",
        title="Time constant of a trip class",
        asks="How fast does an overload of this class warm and cool?",
        run=protection.trip_time_constant,
        takes=(_CLASS,),
        gives=(Answer("tau", "Time constant", "time", "s"),),
        us=("{trip_class} ÷ ln((7.2 ÷ 1.12)² ÷ ((7.2 ÷ 1.12)² − 1)) = {tau}",),
        also=("thermal replica",),
    ),
    *GUARDING,
)
