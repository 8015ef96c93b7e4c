"""Platinum sensors and thermistors, sound and faulty, as the trade asks it; part of the subject "sensors"."""

from __future__ import annotations

import math
from collections.abc import Callable, Mapping

from diagnose.formulas.formula import Answer, Argument, Formula
from diagnose.physics import ntc, pt100, sensor_faults

__all__ = ["FORMULAS"]

_ZERO = 273.15
_OHMS = ("resistance", "ohm", "ohm")
_C = ("temperature", "°C", "°C")
_K = ("temperature", "K", "K")
_DEGREES = ("temperature difference", "F°", "C°")
_HALF_US = "({temperature:n} − 32) ÷ 1.8 = {celsius}"
_BACK_US = "{celsius:n} × 1.8 + 32 = {temperature}"

_TRUE = Argument("temperature", "True temperature of the sensor", "temperature", "°F", "°C")
_READ = Argument("resistance", "Ohms of the sensor, disconnected", *_OHMS)
_NOMINAL = Argument("nominal", "Ohms of the sensor at 25 degrees Celsius", *_OHMS, plate="sensor_ohms_25")
_BETA = Argument("beta", "Beta of the curve, kelvin", "number")
_SHOWN = Answer("shown", "Temperature shown", "temperature", "°F", "°C")
_ABC = (
    Argument("a", "Coefficient A of the curve", "number"),
    Argument("b", "Coefficient B of the curve", "number"),
    Argument("c", "Coefficient C of the curve", "number"),
)
_R_BY_BETA = "{nominal:n} × exp({beta} × (1 ÷ {kelvin:n} − 1 ÷ 298.15)) = {sensor}"
_T_BY_BETA = "1 ÷ (1 ÷ 298.15 + ln({together:n} ÷ {nominal:n}) ÷ {beta}) = {shown_kelvin}"

Steps = Mapping[str, tuple[float, str, str, str]]


def _true(temperature: float, **_: float) -> Steps:
    return {"celsius": (temperature, *_C), "kelvin": (temperature, *_K)}


def _pt100(resistance: float) -> Steps:
    return {"celsius": (pt100.pt100_temperature(resistance), *_C)}


def _lead(temperature: float, leads: float) -> Steps:
    sensor = pt100.pt100_resistance(temperature)
    shown = pt100.pt100_temperature(sensor + leads)
    return {
        **_true(temperature),
        "sensor": (sensor, *_OHMS),
        "together": (sensor + leads, *_OHMS),
        "shown": (shown, "temperature", "°F", "°C"),
    }


def _steinhart(resistance: float, a: float, b: float, c: float) -> Steps:
    found = ntc.ntc_temperature(resistance, a, b, c)
    log = math.log(resistance)
    return {
        "log": (log, "number", "", ""),
        "inverse": (1e3 / found, "number", "", ""),
        "kelvin": (found, *_K),
        "celsius": (found, *_C),
    }


def _beta(resistance: float, nominal: float, beta: float) -> Steps:
    found = ntc.beta_temperature(resistance, nominal, beta)
    return {"kelvin": (found, *_K), "celsius": (found, *_C)}


def _two_points(cold_ohms: float, cold: float, hot_ohms: float, hot: float) -> Steps:
    return {"cold_kelvin": (cold, *_K), "hot_kelvin": (hot, *_K)}


def _shown(run: Callable[..., float], together: Callable[[float, float], float], extra: str) -> Callable[..., Steps]:
    """Steps of a faulty thermistor: its own ohms, those of both together, what is shown."""

    def steps(temperature: float, nominal: float, beta: float, **fault: float) -> Steps:
        sensor = ntc.beta_resistance(temperature, nominal, beta)
        return {
            **_true(temperature),
            "sensor": (sensor, *_OHMS),
            "together": (together(sensor, fault[extra]), *_OHMS),
            "shown_kelvin": (run(temperature, nominal, beta, fault[extra]), *_K),
        }

    return steps


def _wrong(temperature: float, nominal: float, beta: float, control_nominal: float, control_beta: float) -> Steps:
    shown = ntc.wrong_curve_reading(temperature, nominal, beta, control_nominal, control_beta)
    return {
        **_true(temperature),
        "sensor": (ntc.beta_resistance(temperature, nominal, beta), *_OHMS),
        "shown_kelvin": (shown, *_K),
    }


def _leaky_pt100(temperature: float, leak: float) -> Steps:
    sensor = pt100.pt100_resistance(temperature)
    return {
        **_true(temperature),
        "sensor": (sensor, *_OHMS),
        "together": (sensor_faults.ohms_with_leak(sensor, leak), *_OHMS),
    }


_PT_LINE = "100 × (1 + 0.0039083 × {celsius:n} − 0.0000005775 × {celsius:n}²) = "
_LEADS = (_PT_LINE + "{sensor}", "{sensor:n} + {leads:n} = {together}",
          "By the table {together} is {shown}", "{shown:n} − {temperature:n} = {error}")  # fmt: skip
_LEAK = (_PT_LINE + "{sensor}", "{sensor:n} × {leak:n} ÷ ({sensor:n} + {leak:n}) = {together}",
         "By the table {together} is {shown}")  # fmt: skip
_PT_BACK = "(0.0039083 − √(0.0039083² − 0.00000231 × ({resistance:n} ÷ 100 − 1))) ÷ 0.000001155 = {celsius}"
_SH_LINES = ("ln({resistance:n}) = {log}", "1000 × ({a} + {b} × {log} + {c} × {log}³) = {inverse}",
             "1000 ÷ {inverse} = {kelvin}", "{kelvin:n} − 273.15 = {celsius}")  # fmt: skip
_KELVIN = {"us": "({temperature:n} + 459.67) ÷ 1.8 = {kelvin}", "si": "{temperature:n} + 273.15 = {kelvin}"}
_END = {"us": "{shown_kelvin:n} × 1.8 − 459.67 = {shown}", "si": "{shown_kelvin:n} − 273.15 = {shown}"}


def _faulty(id_: str, title: str, asks: str, fault: str, ask: str, together: str, also: tuple[str, ...]) -> Formula:
    contact = fault == "contact"
    run = sensor_faults.ntc_with_contact if contact else sensor_faults.ntc_with_leak
    join = (lambda r, x: r + x) if contact else sensor_faults.ohms_with_leak

    def lines(system: str) -> tuple[str, ...]:
        return (_KELVIN[system], _R_BY_BETA, together, _T_BY_BETA, _END[system])

    return Formula(
        id=id_,
        subject="sensors",
        title=title,
        asks=asks,
        run=run,
        takes=(_TRUE, _NOMINAL, _BETA, Argument(fault, ask, *_OHMS)),
        gives=(_SHOWN,),
        us=lines("us"),
        si=lines("si"),
        steps=_shown(run, join, fault),
        also=also,
    )


FORMULAS: tuple[Formula, ...] = (
    Formula(
        id="pt100-ohms",
        subject="sensors",
        title="Ohms of a Pt100",
        asks="What should a platinum sensor read in ohms at this temperature?",
        run=pt100.pt100_resistance,
        takes=(_TRUE,),
        gives=(Answer("resistance", "Ohms of the sensor", *_OHMS),),
        us=(_HALF_US, _PT_LINE + "{resistance}"),
        si=(_PT_LINE + "{resistance}",),
        steps=_true,
        also=("platinum", "RTD", "sensor resistance"),
    ),
    Formula(
        id="pt100-temperature",
        subject="sensors",
        title="Temperature of a Pt100 from its ohms",
        asks="How warm is a platinum sensor of these ohms?",
        run=pt100.pt100_temperature,
        takes=(_READ,),
        gives=(Answer("temperature", "Temperature", "temperature", "°F", "°C"),),
        us=(_PT_BACK, _BACK_US),
        si=(_PT_BACK,),
        steps=_pt100,
        also=("platinum", "RTD"),
    ),
    Formula(
        id="pt100-leads",
        subject="sensors",
        title="Error of a Pt100 on two wires",
        asks="How much too hot does a platinum sensor read for its leads and contacts?",
        run=pt100.pt100_lead_error,
        takes=(_TRUE, Argument("leads", "Ohms of both leads together", *_OHMS)),
        gives=(Answer("error", "Reads too hot by", *_DEGREES),),
        us=(_HALF_US, *_LEADS),
        si=_LEADS,
        steps=_lead,
        also=("lead resistance", "two-wire", "corroded contact", "RTD"),
    ),
    Formula(
        id="pt100-leak",
        subject="sensors",
        title="Reading of a Pt100 with a leak across it",
        asks="What does a platinum sensor with a wet connector show?",
        run=sensor_faults.pt100_with_leak,
        takes=(_TRUE, Argument("leak", "Ohms of the leak", *_OHMS)),
        gives=(_SHOWN,),
        us=(_HALF_US, *_LEAK),
        si=_LEAK,
        steps=_leaky_pt100,
        also=("wet connector", "RTD"),
    ),
    Formula(
        id="ntc-temperature",
        subject="sensors",
        title="Temperature of a thermistor by its three coefficients",
        asks="How warm is a thermistor of these ohms (Steinhart-Hart)?",
        run=ntc.ntc_temperature,
        takes=(_READ, *_ABC),
        gives=(Answer("temperature", "Temperature", "temperature", "°F", "°C"),),
        us=(*_SH_LINES, _BACK_US),
        si=_SH_LINES,
        steps=_steinhart,
        also=("NTC", "thermistor", "Steinhart-Hart"),
    ),
    Formula(
        id="ntc-ohms",
        subject="sensors",
        title="Ohms of a thermistor by its three coefficients",
        asks="What should a thermistor read in ohms at this temperature (Steinhart-Hart)?",
        run=ntc.ntc_resistance,
        takes=(_TRUE, *_ABC),
        gives=(Answer("resistance", "Ohms of the sensor", *_OHMS),),
        us=("At {temperature} the curve A {a}, B {b}, C {c} gives {resistance}",),
        by_hand="the ohms are the root of a cubic; work the temperature of a few ohms instead and narrow down",
        also=("NTC", "thermistor", "Steinhart-Hart"),
    ),
    Formula(
        id="beta-temperature",
        subject="sensors",
        title="Temperature of a thermistor by its beta",
        asks="How warm is a thermistor of these ohms (ohms at 25 °C and beta)?",
        run=ntc.beta_temperature,
        takes=(_READ, _NOMINAL, _BETA),
        gives=(Answer("temperature", "Temperature", "temperature", "°F", "°C"),),
        us=("1 ÷ (1 ÷ 298.15 + ln({resistance:n} ÷ {nominal:n}) ÷ {beta}) = {kelvin}",
            "{kelvin:n} × 1.8 − 459.67 = {temperature}"),
        si=("1 ÷ (1 ÷ 298.15 + ln({resistance:n} ÷ {nominal:n}) ÷ {beta}) = {kelvin}",
            "{kelvin:n} − 273.15 = {temperature}"),
        steps=_beta,
        also=("NTC", "thermistor", "B value"),
    ),
    Formula(
        id="beta-ohms",
        subject="sensors",
        title="Ohms of a thermistor by its beta",
        asks="What should a thermistor read in ohms at this temperature (ohms at 25 °C and beta)?",
        run=ntc.beta_resistance,
        takes=(_TRUE, _NOMINAL, _BETA),
        gives=(Answer("sensor", "Ohms of the sensor", *_OHMS),),
        us=(_KELVIN["us"], _R_BY_BETA),
        si=(_KELVIN["si"], _R_BY_BETA),
        steps=_true,
        also=("NTC", "thermistor", "B value", "sensor resistance"),
    ),
    Formula(
        id="beta-of-ohms",
        subject="sensors",
        title="Beta of a thermistor from its ohms at two temperatures",
        asks="Which curve does a thermistor of these ohms follow?",
        run=ntc.beta_of_two_points,
        takes=(
            Argument("cold_ohms", "Ohms when cold", *_OHMS, plate="sensor_ohms_25"),
            Argument("cold", "Temperature when cold", "temperature", "°F", "°C", usual="25 °C", stands="as on plates"),
            Argument("hot_ohms", "Ohms when hot", *_OHMS, plate="sensor_ohms_80"),
            Argument("hot", "Temperature when hot", "temperature", "°F", "°C", usual="80 °C", stands="as on plates"),
        ),
        gives=(Answer("beta", "Beta, kelvin", "number"),),
        us=("{cold} is {cold_kelvin}, {hot} is {hot_kelvin}",
            "ln({cold_ohms:n} ÷ {hot_ohms:n}) ÷ (1 ÷ {cold_kelvin:n} − 1 ÷ {hot_kelvin:n}) = {beta}"),
        steps=_two_points,
        also=("NTC", "thermistor", "B value", "curve"),
    ),
    Formula(
        id="wrong-curve",
        subject="sensors",
        title="What a control shows of a probe with another curve",
        asks="How far off is the display with the wrong thermistor?",
        run=ntc.wrong_curve_reading,
        takes=(
            _TRUE,
            Argument("nominal", "Ohms of the probe at 25 degrees Celsius", *_OHMS),
            Argument("beta", "Beta of the probe, kelvin", "number"),
            Argument("control_nominal", "Ohms at 25 degrees Celsius of its control", *_OHMS, plate="sensor_ohms_25"),
            Argument("control_beta", "Beta the control is made for, kelvin", "number"),
        ),
        gives=(_SHOWN,),
        us=(_KELVIN["us"], _R_BY_BETA,
            "1 ÷ (1 ÷ 298.15 + ln({sensor:n} ÷ {control_nominal:n}) ÷ {control_beta}) = {shown_kelvin}", _END["us"]),
        si=(_KELVIN["si"], _R_BY_BETA,
            "1 ÷ (1 ÷ 298.15 + ln({sensor:n} ÷ {control_nominal:n}) ÷ {control_beta}) = {shown_kelvin}", _END["si"]),
        steps=_wrong,
        also=("wrong probe", "wrong sensor", "NTC", "curve"),
    ),
    _faulty("ntc-contact", "Reading of a thermistor with a bad contact in series",
            "How much too cold does a corroded connector make it read?", "contact", "Ohms of the contact",
            "{sensor:n} + {contact:n} = {together}", ("corroded connector", "NTC", "series")),
    _faulty("ntc-leak", "Reading of a thermistor with a leak across it",
            "How much too hot does a wet connector make it read?", "leak", "Ohms of the leak",
            "{sensor:n} × {leak:n} ÷ ({sensor:n} + {leak:n}) = {together}", ("wet connector", "NTC", "parallel")),
)  # fmt: skip
