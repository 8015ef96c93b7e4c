"""Sensors and gauges: as the trade asks it."""

from __future__ import annotations

from collections.abc import Mapping

from diagnose.formulas.formula import Answer, Argument, Formula
from diagnose.formulas.resistance_sensors import FORMULAS as RESISTANCE
from diagnose.physics import gauges, pt100, sensor_faults, thermocouples

__all__ = ["FORMULAS"]

_OHMS = ("resistance", "ohm", "ohm")
_T = ("temperature", "°F", "°C")
_DEGREES = ("temperature difference", "F°", "C°")
_MV = ("voltage", "mV", "mV")
_PSI = ("pressure", "psi", "kPa")
_KIND = Argument("kind", "Type of the thermocouple", "words", words=("J", "K", "T"))
_JUNCTION = Argument("temperature", "Temperature of the junction", *_T)
_TERMINALS = Argument("terminals", "Temperature of the terminals", *_T)
_TABLE = "the curve of a type is a polynomial of up to the fourteenth degree; look it up in the table of the type"
_SPAN = Argument("span", "Span of the scale", *_PSI)
_CLASS = Argument("accuracy", "Accuracy as a share of the span", "share", "%", "%")
_AT = Argument("reading", "What the gauge reads", *_PSI)

Steps = Mapping[str, tuple[float, str, str, str]]


def _cold(terminals: float, kind: str, emf: float) -> Steps:
    cold = thermocouples.thermocouple_emf(terminals, kind)
    return {"cold": (cold, *_MV), "sum": (emf + cold, *_MV)}


def _pair(temperature: float, terminals: float, kind: str) -> Steps:
    hot, cold = thermocouples.thermocouple_emf(temperature, kind), thermocouples.thermocouple_emf(terminals, kind)
    return {"hot": (hot, *_MV), "cold": (cold, *_MV), "left": (hot - cold, *_MV), "turned": (2 * cold - hot, *_MV)}


_THERMOCOUPLES = (
    Formula(
        id="thermocouple-mv",
        subject="sensors",
        title="Millivolts at the terminals of a thermocouple",
        asks="What should a meter read at the terminals?",
        run=thermocouples.terminal_emf,
        takes=(_JUNCTION, _TERMINALS, _KIND),
        gives=(Answer("emf", "Voltage at the terminals", *_MV),),
        us=("Table {kind}: {temperature} is {hot}, {terminals} is {cold}", "{hot:n} − {cold:n} = {emf}"),
        steps=_pair,
        also=("cold junction", "mV"),
    ),
    Formula(
        id="thermocouple-temperature",
        subject="sensors",
        title="Temperature from the millivolts of a thermocouple",
        asks="How warm is the junction?",
        run=thermocouples.junction_temperature,
        takes=(Argument("emf", "Voltage at the terminals", *_MV), _TERMINALS, _KIND),
        gives=(Answer("temperature", "Temperature of the junction", *_T),),
        us=(
            "Table {kind}: {terminals} is {cold}",
            "{emf:n} + {cold:n} = {sum}",
            "Table {kind}: {sum} is {temperature}",
        ),
        steps=_cold,
        also=("cold junction", "mV"),
    ),
    Formula(
        id="thermocouple-ice",
        subject="sensors",
        title="Millivolts of a thermocouple against melting ice",
        asks="What does the table of the type say at this temperature?",
        run=thermocouples.thermocouple_emf,
        takes=(_JUNCTION, _KIND),
        gives=(Answer("emf", "Voltage", *_MV),),
        us=("Table {kind}: {temperature} is {emf}",),
        by_hand=_TABLE,
        also=("table",),
    ),
    Formula(
        id="thermocouple-ice-back",
        subject="sensors",
        title="Temperature of a thermocouple from the table of its type",
        asks="Which temperature has this voltage against melting ice?",
        run=thermocouples.thermocouple_temperature,
        takes=(Argument("emf", "Voltage against melting ice", *_MV), _KIND),
        gives=(Answer("temperature", "Temperature of the junction", *_T),),
        us=("Table {kind}: {emf} is {temperature}",),
        by_hand=_TABLE,
        also=("table",),
    ),
    Formula(
        id="thermocouple-uncompensated",
        subject="sensors",
        title="Reading that leaves the warmth of the terminals out",
        asks="What does a display without cold-junction compensation show?",
        run=thermocouples.uncompensated_reading,
        takes=(_JUNCTION, _TERMINALS, _KIND),
        gives=(Answer("shown", "Temperature shown", *_T),),
        us=(
            "Table {kind}: {temperature} is {hot}, {terminals} is {cold}",
            "{hot:n} − {cold:n} = {left}",
            "Table {kind}: {left} is {shown}",
        ),
        steps=_pair,
        also=("cold junction", "reads low"),
    ),
    Formula(
        id="thermocouple-reversed",
        subject="sensors",
        title="Reading of a thermocouple connected the wrong way round",
        asks="What does a reversed pair show?",
        run=thermocouples.reversed_reading,
        takes=(_JUNCTION, _TERMINALS, _KIND),
        gives=(Answer("shown", "Temperature shown", *_T),),
        us=(
            "Table {kind}: {temperature} is {hot}, {terminals} is {cold}",
            "2 × {cold:n} − {hot:n} = {turned}",
            "Table {kind}: {turned} is {shown}",
        ),
        steps=_pair,
        also=("falls as it warms", "polarity"),
    ),
    Formula(
        id="thermocouple-tolerance",
        subject="sensors",
        title="How far a thermocouple of a class may be off",
        asks="How true must a thermocouple of class 1 or 2 be?",
        run=thermocouples.thermocouple_tolerance,
        takes=(_JUNCTION, _KIND, Argument("grade", "Class", "words", words=("1", "2"))),
        gives=(Answer("tolerance", "Off by at most", *_DEGREES),),
        us=("Type {kind} of class {grade} at {temperature}: off by at most {tolerance}",),
        by_hand="the larger of two figures of the class counts: so many degrees, or a share of the temperature in °C",
        also=("accuracy",),
    ),
)

_GAUGES = (
    Formula(
        id="gauge-error",
        subject="sensors",
        title="Error of a gauge from its class",
        asks="How far off may a gauge of this span and class be?",
        run=gauges.dial_error,
        takes=(_SPAN, _CLASS),
        gives=(Answer("error", "Off by at most", *_PSI),),
        us=("{span:n} × {share} = {error}",),
        steps=lambda span, accuracy: {"share": (accuracy, "number", "", "")},
        also=("accuracy", "per cent of span", "full scale"),
    ),
    Formula(
        id="gauge-share",
        subject="sensors",
        title="Error of a gauge beside what it reads",
        asks="How good is this gauge low on its scale?",
        run=gauges.error_share,
        takes=(_AT, _SPAN, _CLASS),
        gives=(Answer("share", "Error over reading", "share", "%", "%"),),
        us=("{of_span} × {span:n} ÷ {reading:n} = {fraction}", "That is {share} of the reading"),
        steps=lambda reading, span, accuracy: {
            "of_span": (accuracy, "number", "", ""),
            "fraction": (gauges.error_share(reading, span, accuracy), "number", "", ""),
        },
        also=("accuracy", "per cent of reading", "low on the scale"),
    ),
    Formula(
        id="gauge-span",
        subject="sensors",
        title="Widest scale a gauge may have",
        asks="Which gauge is true enough for this?",
        run=gauges.smallest_span,
        takes=(Argument("error", "Off by at most", *_PSI), _CLASS),
        gives=(Answer("span", "Span of the scale", *_PSI),),
        us=("{error:n} ÷ {share} = {span}",),
        steps=lambda error, accuracy: {"share": (accuracy, "number", "", "")},
        also=("choose a gauge",),
    ),
    Formula(
        id="gauge-grade",
        subject="sensors",
        title="Error of a gauge from the grade on its dial",
        asks="How far off may a gauge of this grade be here?",
        run=gauges.grade_error,
        takes=(_AT, _SPAN, Argument("grade", "Grade on the dial", "words", words=tuple(gauges.GRADES))),
        gives=(Answer("error", "Off by at most", *_PSI),),
        us=("{span:n} × {share} = {error}",),
        steps=lambda reading, span, grade: {
            "share": (gauges.grade_error(reading, span, grade) / span, "number", "", "")
        },
        also=("class", "EN 837", "grade B"),
    ),
    Formula(
        id="errors-together",
        subject="sensors",
        title="Several independent errors together",
        asks="How far off may the result be?",
        run=gauges.combined_error,
        takes=(Argument("errors", "Each error by itself", *_DEGREES, many=0),),
        gives=(Answer("error", "All together", *_DEGREES),),
        us=("√(sum of the squares of {errors}) is {error}",),
        by_hand="there may be any number of errors: square each, add them up, and take the root",
        also=("uncertainty", "root of squares"),
    ),
)

_FAULTS = (
    Formula(
        id="pt100-tolerance",
        subject="sensors",
        title="How far a Pt100 of a class may be off",
        asks="How true must a platinum sensor of class A or B be?",
        run=pt100.pt100_tolerance,
        takes=(
            Argument("temperature", "Temperature of the sensor", *_T),
            Argument("grade", "Class of the sensor", "words", words=("A", "B")),
        ),
        gives=(Answer("tolerance", "Off by at most", *_DEGREES),),
        us=("Class {grade} at {temperature}: off by at most {tolerance}",),
        by_hand="the two figures of a class are in its standard: 0.15 + 0.002 t for A, 0.30 + 0.005 t for B, in °C",
        also=("class A", "class B", "accuracy"),
    ),
    Formula(
        id="sensor-contact",
        subject="sensors",
        title="Ohms of the contact in series with a sensor",
        asks="How many ohms does a corroded connector add?",
        run=sensor_faults.contact_in_series,
        takes=(
            Argument("sound", "Ohms the sensor should have at this temperature", *_OHMS),
            Argument("read", "Ohms read through leads and connector", *_OHMS),
        ),
        gives=(Answer("contact", "Ohms in series", *_OHMS),),
        us=("{read:n} − {sound:n} = {contact}",),
        also=("corroded connector", "series"),
    ),
    Formula(
        id="sensor-leak",
        subject="sensors",
        title="Ohms of the leak across a sensor",
        asks="How large is the leak through a wet connector?",
        run=sensor_faults.leak_across,
        takes=(
            Argument("sound", "Ohms the sensor should have at this temperature", *_OHMS),
            Argument("read", "Ohms read through leads and connector", *_OHMS),
        ),
        gives=(Answer("leak", "Ohms of the leak", *_OHMS),),
        us=("{sound:n} × {read:n} ÷ ({sound:n} − {read:n}) = {leak}",),
        also=("wet connector", "parallel", "shunt"),
    ),
    Formula(
        id="sensor-with-leak",
        subject="sensors",
        title="Ohms of a sensor with a leak across it",
        asks="What does a meter read of both together?",
        run=sensor_faults.ohms_with_leak,
        takes=(
            Argument("resistance", "Ohms of the sensor alone", *_OHMS),
            Argument("leak", "Ohms of the leak", *_OHMS),
        ),
        gives=(Answer("together", "Ohms of both together", *_OHMS),),
        us=("{resistance:n} × {leak:n} ÷ ({resistance:n} + {leak:n}) = {together}",),
        also=("wet connector", "parallel", "shunt"),
    ),
)

FORMULAS: tuple[Formula, ...] = (*RESISTANCE, *_THERMOCOUPLES, *_FAULTS, *_GAUGES)
