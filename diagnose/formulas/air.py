"""Exhaust, moist air, curtains: as the trade asks it."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from diagnose.formulas.air_wet import WET
from diagnose.formulas.fans import FANS
from diagnose.formulas.formula import Answer, Argument, Formula
from diagnose.physics import air, air_moved, traverse

__all__ = ["FORMULAS"]

_Steps = Mapping[str, tuple[float, str, str, str]]

_DENSITY = Argument(
    "density", "Density of the air", "density", "lb/ft3", "kg/m3", usual="0.0752 lb/ft3", stands="room air at sea level"
)


def _speeds(velocity_pressures: Sequence[float], density: float = air.STANDARD_DENSITY) -> dict[str, object]:
    each = tuple(air.speed_of_pressure(p, density) for p in velocity_pressures)
    return {
        "each": (each, "air speed", "fpm", "m/s"),
        "sum": (sum(each), "air speed", "fpm", "m/s"),
        "count": (float(len(each)), "number", "", ""),
    }


def _place(side: float, nth: int) -> _Steps:
    return {"part": (traverse.place_across(side, nth) / side, "number", "", "")}


_MEASURED: tuple[Formula, ...] = (
    Formula(
        id="air-speed",
        subject="air",
        title="Air speed from velocity pressure",
        asks="How fast is the air that gives this velocity pressure?",
        run=air.speed_of_pressure,
        takes=(Argument("velocity_pressure", "Velocity pressure", "pressure", "inWG", "Pa"), _DENSITY),
        gives=(Answer("speed", "Speed", "air speed", "fpm", "m/s"),),
        us=("1096.2 × √({velocity_pressure:n} ÷ {density:n}) = {speed}",),
        si=("√(2 × {velocity_pressure:n} ÷ {density:n}) = {speed}",),
        also=("pitot", "4005"),
    ),
    Formula(
        id="air-speed-mean",
        subject="air",
        title="Mean air speed of a traverse",
        asks="What is the mean speed of these velocity pressures?",
        run=air.mean_speed,
        takes=(
            Argument("velocity_pressures", "Velocity pressure at each place", "pressure", "inWG", "Pa", many=0),
            _DENSITY,
        ),
        gives=(Answer("speed", "Mean speed", "air speed", "fpm", "m/s"),),
        us=(
            "Speed at each place, 1096.2 × √(velocity pressure ÷ {density:n}): {each}",
            "Speeds are averaged, never pressures: their sum, over how many there are:",
            "{sum:n} ÷ {count:n} = {speed}",
        ),
        si=(
            "Speed at each place, √(2 × velocity pressure ÷ {density:n}): {each}",
            "Speeds are averaged, never pressures: their sum, over how many there are:",
            "{sum:n} ÷ {count:n} = {speed}",
        ),
        steps=_speeds,  # type: ignore[arg-type]
        also=("traverse", "pitot"),
    ),
    Formula(
        id="duct-area",
        subject="air",
        title="Area of a round duct",
        asks="What area has a round duct of this diameter?",
        run=traverse.round_area,
        takes=(Argument("diameter", "Inner diameter", "length", "in", "mm"),),
        gives=(Answer("area", "Area", "area", "ft2", "m2"),),
        us=("3.1416 × {diameter:n}² ÷ 4 ÷ 144 = {area}",),
        si=("3.1416 × {diameter:n}² ÷ 4 ÷ 1000000 = {area}",),
    ),
    Formula(
        id="duct-flow",
        subject="air",
        title="Air flow in a duct",
        asks="How much air passes at this mean speed?",
        run=traverse.duct_flow,
        takes=(
            Argument("speed", "Mean speed", "air speed", "fpm", "m/s"),
            Argument("area", "Free area", "area", "ft2", "m2"),
        ),
        gives=(Answer("flow", "Flow", "air flow", "cfm", "m3/h"),),
        us=("{speed} × {area} = {flow}",),
        si=("{speed} × {area} × 3600 = {flow}",),
        also=("cfm", "exhaust"),
    ),
    Formula(
        id="traverse-side",
        subject="air",
        title="Places across a rectangular duct",
        asks="How far from the wall is each of the five places across a side?",
        run=traverse.place_across,
        takes=(
            Argument("side", "Side of the duct", "length", "in", "mm"),
            Argument("nth", "Which place, from 1", "number", usual="1", stands="the one nearest the wall"),
        ),
        gives=(Answer("distance", "From the wall", "length", "in", "mm"),),
        us=("{side} × {part:n} = {distance}",),
        steps=_place,
        also=("log-tchebycheff", "traverse"),
    ),
    Formula(
        id="traverse-round",
        subject="air",
        title="Places across a round duct",
        asks="Where are the six places across a round duct?",
        run=traverse.points_of_round,
        takes=(Argument("diameter", "Inner diameter", "length", "in", "mm"),),
        gives=tuple(Answer(f"place_{n}", f"Place {n}", "length", "in", "mm") for n in range(1, 7)),
        us=tuple(f"{{diameter}} × {share:g} = {{place_{n}}}" for n, share in enumerate(traverse.LOG_LINEAR, 1)),
        also=("log-linear", "traverse"),
    ),
    Formula(
        id="hood-flow",
        subject="air",
        title="Exhaust a dishwasher hood wants",
        asks="How much air does a hood of this length want?",
        run=traverse.hood_flow,
        takes=(Argument("length", "Length of the hood", "length", "ft", "m"),),
        gives=(Answer("flow", "Flow", "air flow", "cfm", "m3/h"),),
        us=("{length} × 100 = {flow}",),
        si=("{length} × 557.4 = {flow}",),
    ),
)

_ENDS: tuple[Formula, ...] = (
    Formula(
        id="vent-shares",
        subject="air",
        title="Share of each end in the exhaust",
        asks="What part of the air does each end take?",
        run=air.end_shares,
        takes=(
            Argument("entrance", "Air at the entrance", "air flow", "cfm", "m3/h", plate="vent_entrance"),
            Argument("exit_", "Air at the exit", "air flow", "cfm", "m3/h", plate="vent_exit"),
        ),
        gives=(Answer("first", "Entrance", "share", "%"), Answer("second", "Exit", "share", "%")),
        us=(
            "100 × {entrance:n} ÷ ({entrance:n} + {exit_:n}) = {first:n}",
            "100 × {exit_:n} ÷ ({entrance:n} + {exit_:n}) = {second:n}",
        ),
        also=("damper",),
    ),
    Formula(
        id="damper-setting",
        subject="air",
        title="How much more open a damper must stand",
        asks="By what factor must a damper open for the air wanted?",
        run=air.damper_factor,
        takes=(
            Argument("flow", "Air it takes now", "air flow", "cfm", "m3/h"),
            Argument("wanted", "Air wanted", "air flow", "cfm", "m3/h"),
            Argument("suction", "Suction in the duct now", "pressure", "inWG", "Pa"),
            Argument("suction_then", "Suction once both are set", "pressure", "inWG", "Pa"),
        ),
        gives=(Answer("factor", "Factor on its free opening", "number"),),
        us=("{wanted:n} ÷ {flow:n} × √({suction:n} ÷ {suction_then:n}) = {factor:n}",),
    ),
    Formula(
        id="curtain-capture",
        subject="air",
        title="Air drawn in past a curtain",
        asks="How fast is air drawn in under the curtain?",
        run=air.gap_speed,
        takes=(
            Argument("flow", "Air the vent behind it takes", "air flow", "cfm", "m3/h", plate="vent_entrance"),
            Argument("width", "Width of the opening", "length", "in", "cm", usual="24 in", stands="judgement"),
            Argument("height", "Height of the strips", "length", "in", "cm", usual="20 in", stands="judgement"),
            Argument("gap", "Gap under them", "length", "in", "cm"),
        ),
        gives=(Answer("speed", "Speed", "air speed", "fpm", "m/s"),),
        us=("{flow:n} × 144 ÷ ({width:n} × ({gap:n} + 0.1 × {height:n})) = {speed}",),
        si=("{flow:n} ÷ 3600 × 10000 ÷ ({width:n} × ({gap:n} + 0.1 × {height:n})) = {speed}",),
    ),
    Formula(
        id="makeup-air",
        subject="air",
        title="Air the room lacks",
        asks="How much more air is taken from the room than is supplied?",
        run=air_moved.makeup_short,
        takes=(
            Argument("exhaust", "Air the machine's fan takes", "air flow", "cfm", "m3/h"),
            Argument("hoods", "Air other hoods take", "air flow", "cfm", "m3/h"),
            Argument("supplied", "Air supplied to the room", "air flow", "cfm", "m3/h"),
        ),
        gives=(Answer("short", "Lacking", "air flow", "cfm", "m3/h"),),
        us=("{exhaust} + {hoods} − {supplied} = {short}",),
    ),
    Formula(
        id="makeup-opening",
        subject="air",
        title="Opening through which lacking air comes in",
        asks="What free opening lets the lacking air in?",
        run=air_moved.opening_needed,
        takes=(
            Argument("short", "Air lacking", "air flow", "cfm", "m3/h"),
            Argument("suction", "Suction of the room", "pressure", "inWG", "Pa", usual="5 Pa", stands="judgement"),
            Argument("discharge", "Discharge coefficient", "number", usual="0.65", stands="plain opening"),
        ),
        gives=(Answer("area", "Free area", "area", "ft2", "m2"),),
        us=("{short:n} ÷ ({discharge:n} × 1096.2 × √({suction:n} ÷ 0.0752)) = {area}",),
        si=("{short:n} ÷ 3600 ÷ ({discharge:n} × √(2 × {suction:n} ÷ 1.204)) = {area}",),
    ),
)

FORMULAS: tuple[Formula, ...] = (*_MEASURED, *_ENDS, *WET, *FANS)
