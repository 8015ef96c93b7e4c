"""Sanitising: heat units, chlorine, contact time, feed pumps: as the trade asks it."""

from __future__ import annotations

from diagnose.formulas.dosing import FORMULAS as DOSING
from diagnose.formulas.formula import Answer, Argument, Formula
from diagnose.physics import chlorine, sanitising

__all__ = ["FORMULAS"]

_SURFACE = Argument("temperature", "Temperature of the ware's surface", "temperature", "°F", "°C")
_RINSE = Argument("temperature", "Temperature of the rinse", "temperature", "°F", "°C")
_WANTED = Argument("wanted", "Heat units wanted", "number", usual="3600", stands="NSF/ANSI 3, its text not seen")
_STRENGTH = Argument("strength", "Strength read by strip or kit", "concentration", "ppm")
_PH = Argument("ph", "pH of the rinse", "number")
_UNITS = Answer("earned", "Heat units", "number")
_LEAST = Answer("least", "Least temperature", "temperature", "°F", "°C")
_VERDICT = Answer("verdict", "Verdict", "words")


def _rate(temperature: float, **_: object) -> dict[str, tuple[float, str, str, str]]:
    return {"rate": (sanitising.heat_unit_rate(temperature), "number", "", "")}


def _rates(temperatures: tuple[float, ...], **_: object) -> dict[str, tuple[float, str, str, str]]:
    return {"rates": (sum(sanitising.heat_unit_rate(t) for t in temperatures), "number", "", "")}


FORMULAS: tuple[Formula, ...] = (
    Formula(
        id="heat-units",
        subject="sanitising",
        title="Heat units at one temperature",
        asks="How much sanitising does ware get that stays this hot for this long?",
        run=sanitising.heat_units_at,
        takes=(
            _SURFACE,
            Argument("time", "Time at it", "time", "s"),
        ),
        gives=(_UNITS,),
        us=(
            "At {temperature} ware earns {rate} heat units a second (none under 143 °F, no more above 165 °F).",
            "{rate:n} × {time} = {earned}",
            "3600 are wanted (NSF/ANSI 3); none under 143 °F is an assumption.",
        ),
        steps=_rate,
        also=("HUE", "heat unit equivalents", "disinfection"),
    ),
    Formula(
        id="heat-units-trace",
        subject="sanitising",
        title="Heat units over a trace",
        asks="How much sanitising does a plate get, from its temperature read step by step?",
        run=sanitising.heat_units_of_trace,
        takes=(
            Argument("temperatures", "Surface temperatures one after another", "temperature", "°F", "°C", many=0),
            Argument(
                "step", "Time between two readings", "time", "s", usual="1 s", stands="the usual step of a logger"
            ),
        ),
        gives=(_UNITS,),
        us=(
            "Rates at {temperatures}: {rates} heat units a second in sum (none under 143 °F, no more above 165 °F).",
            "{rates:n} × {step} = {earned}",
            "3600 are wanted (NSF/ANSI 3); none under 143 °F is an assumption.",
        ),
        steps=_rates,
        also=("HUE", "logger", "trace", "disinfection"),
    ),
    Formula(
        id="heat-units-time",
        subject="sanitising",
        title="Time for the heat units",
        asks="How long must ware stay at this temperature to be sanitised?",
        run=sanitising.time_for_heat_units,
        takes=(
            _SURFACE,
            _WANTED,
        ),
        gives=(Answer("time", "Time", "time", "s"),),
        us=("At {temperature} ware earns {rate} heat units a second.", "{wanted} ÷ {rate:n} = {time}"),
        steps=_rate,
        also=("HUE", "dwell"),
    ),
    Formula(
        id="heat-units-temperature",
        subject="sanitising",
        title="Temperature for the heat units",
        asks="How hot must ware get in the time it has?",
        run=sanitising.temperature_for_heat_units,
        takes=(
            Argument("time", "Time at the temperature", "time", "s"),
            _WANTED,
        ),
        gives=(Answer("temperature", "Temperature of the ware", "temperature", "°F", "°C"),),
        us=("ln({wanted} ÷ ({time} × 3.03438)) + 17 × ln(10) = 0.265972 × {temperature}",),
        si=("(ln({wanted} ÷ ({time} × 3.03438)) + 17 × ln(10)) ÷ 0.265972 = 1.8 × {temperature:n} + 32",),
        also=("HUE",),
    ),
    Formula(
        id="z-value",
        subject="sanitising",
        title="Degrees for ten times the effect, from two times",
        asks="How many degrees make it work ten times as fast?",
        run=sanitising.z_of_two_points,
        takes=(
            Argument("slow", "Time needed at the lower temperature", "time", "s"),
            Argument("fast", "Time needed at the higher temperature", "time", "s"),
            Argument("step", "How far apart the temperatures are", "temperature difference", "F°", "C°"),
        ),
        gives=(Answer("z", "z-value", "temperature difference", "F°", "C°"),),
        us=("{step} × ln(10) ÷ ln({slow} ÷ {fast}) = {z}",),
        also=("z",),
    ),
    Formula(
        id="z-of-slope",
        subject="sanitising",
        title="Degrees for ten times the effect, from a slope",
        asks="What z-value belongs to this exponent a kelvin?",
        run=sanitising.z_of_slope,
        takes=(Argument("slope", "Slope of the exponent, a kelvin", "number"),),
        gives=(Answer("z", "z-value", "temperature difference", "F°", "C°"),),
        us=("1.8 × ln(10) ÷ {slope} = {z}",),
        si=("ln(10) ÷ {slope} = {z}",),
    ),
    Formula(
        id="chlorine-temperature",
        subject="sanitising",
        title="Least temperature for chlorine",
        asks="How warm must the rinse be for this strength and pH?",
        run=chlorine.chlorine_least_temperature,
        takes=(
            _STRENGTH,
            _PH,
        ),
        gives=(_LEAST,),
        us=("{strength} at pH {ph} asks for {least} (Food Code 4-501.114(A)).",),
        by_hand="a row of the code's table, nothing to reckon",
        also=("sanitiser", "bleach", "hypochlorite", "strip"),
    ),
    Formula(
        id="chlorine-check",
        subject="sanitising",
        title="Chlorine rinse against the code",
        asks="Is this chlorine rinse strong and warm enough for its pH?",
        run=chlorine.chlorine_verdict,
        takes=(
            _STRENGTH,
            _PH,
            _RINSE,
        ),
        gives=(_VERDICT,),
        us=("{strength} at pH {ph} and {temperature}: {verdict} (Food Code 4-501.114(A)).",),
        by_hand="a row of the code's table, nothing to reckon",
        also=("sanitiser", "bleach", "hypochlorite", "strip"),
    ),
    Formula(
        id="iodine-check",
        subject="sanitising",
        title="Iodine against the code",
        asks="Is this iodine solution within the code?",
        run=chlorine.iodine_verdict,
        takes=(
            _STRENGTH,
            _PH,
            _RINSE,
        ),
        gives=(_VERDICT,),
        us=(
            "{strength} at pH {ph} and {temperature}: {verdict}.",
            "12.5 to 25 ppm, pH 5 or less, 68 °F (20 °C) or more (Food Code 4-501.114(B)).",
        ),
        by_hand="a row of the code's table, nothing to reckon",
        also=("sanitiser",),
    ),
    Formula(
        id="quat-check",
        subject="sanitising",
        title="Quaternary ammonium against the code",
        asks="Is this quat solution within the code and its label?",
        run=chlorine.quat_verdict,
        takes=(
            _STRENGTH,
            Argument("wanted", "Least strength on the label", "concentration", "ppm"),
            Argument("hardness", "Hardness of the water", "hardness", "gpg", "mg/L"),
            _RINSE,
        ),
        gives=(_VERDICT,),
        us=(
            "{strength} where the label wants {wanted}, {hardness}, {temperature}: {verdict}.",
            "75 °F (24 °C) or more, hardness 500 mg/L or less, or as the label says (Food Code 4-501.114(C)).",
        ),
        by_hand="a row of the code's table, nothing to reckon",
        also=("sanitiser", "QAC"),
    ),
    Formula(
        id="contact-time",
        subject="sanitising",
        title="Least contact time",
        asks="How long must ware be in contact with this sanitiser?",
        run=chlorine.contact_time_least,
        takes=(
            Argument("kind", "Sanitiser", "words", words=("chlorine", "other")),
            _STRENGTH,
            _PH,
            _RINSE,
        ),
        gives=(Answer("time", "Least contact time", "time", "s"),),
        us=("{kind} of {strength} at pH {ph} and {temperature}: {time} (Food Code 4-703.11(C); the label governs).",),
        by_hand="a row of the code's table, nothing to reckon",
        also=("sanitiser", "exposure"),
    ),
    *DOSING,
)
