"""Sizing, cooling, starts, coils and insulation, as the trade asks it: the rest of the subject of protection."""

from __future__ import annotations

from diagnose.formulas.formula import Answer, Argument, Formula
from diagnose.physics import cooling, insulation, motors

__all__ = ["FORMULAS"]

_FLA = Argument("full_load", "Full-load amps on the plate", "current", "A", plate="wash_motor_amps")
_YES = ("no", "yes")
_TRIP = Answer("trip", "Greatest trip current", "current", "A")
_MEG = Answer("at_40", "Resistance at 40 °C (104 °F)", "resistance", "Mohm")

Steps = dict[str, tuple[float, str, str, str]]


def _squares(starts: float, start_time: float, **_: object) -> Steps:
    return {"share": (starts * start_time, "number", "", "")}


def _doublings(temperature: float, **_: object) -> Steps:
    return {"tens": ((temperature - 313.15) / 10.0, "number", "", "")}


def _shown(voltage: float, resistance: float, **_: object) -> Steps:
    return {"milli": (1e3 * voltage / resistance, "number", "", ""), "kilo": (resistance / 1e3, "number", "", "")}


FORMULAS: tuple[Formula, ...] = (
    Formula(
        id="overload-size",
        subject="protection",
        title="Greatest trip current of an overload",
        asks="How high may this overload trip at the most?",
        run=cooling.overload_trip_by_words,
        takes=(
            _FLA,
            Argument("service_factor", "Service factor 1.15, or rise of 40 °C at the most?", "words", words=_YES),
            Argument("will_not_start", "Does it fail to start on the ordinary figure?", "words", words=_YES),
        ),
        gives=(_TRIP,),
        us=("{percent} ÷ 100 × {full_load} = {trip}",),
        steps=lambda full_load, **words: {
            "percent": (100 * cooling.overload_trip_by_words(full_load, **words) / full_load, "number", "", "")
        },
        also=("115", "125", "430.32", "heater table"),
    ),
    Formula(
        id="protector-size",
        subject="protection",
        title="Greatest trip current of a built-in protector",
        asks="How high may the protector inside the motor trip?",
        run=motors.integral_protector_trip,
        takes=(_FLA,),
        gives=(_TRIP,),
        us=("{percent} ÷ 100 × {full_load} = {trip}",),
        steps=lambda full_load, **_: {
            "percent": (100 * motors.integral_protector_trip(full_load) / full_load, "number", "", "")
        },
        also=("thermal protector", "built in"),
    ),
    Formula(
        id="cooling-time",
        subject="protection",
        title="Time until a protector closes again",
        asks="How long until the motor runs again by itself?",
        run=cooling.cooling_time,
        takes=(
            Argument(
                "time_constant",
                "Time constant of the standing motor",
                "time",
                "min",
                usual="30 min",
                stands="judgement",
            ),
            Argument("start", "Temperature at the trip", "temperature", "°F", "°C", usual="150 °C", stands="judgement"),
            Argument(
                "reset", "Temperature at which it closes", "temperature", "°F", "°C", usual="70 °C", stands="judgement"
            ),
            Argument("air", "Air round it", "temperature", "°F", "°C"),
        ),
        gives=(Answer("time", "Time", "time", "min"),),
        us=("{time_constant} × ln(({start:n} − {air:n}) ÷ ({reset:n} − {air:n})) = {time}",),
        also=("automatic reset", "runs again after a while"),
    ),
    Formula(
        id="reset-time",
        subject="protection",
        title="Time until an overload can be reset",
        asks="How long must this relay cool before it resets?",
        run=cooling.reset_time,
        takes=(
            Argument(
                "trip_class", "Trip class", "time", "s", plate="overload_class", usual="10 s", stands="common practice"
            ),
            Argument("share", "Share of its heat left at the reset, 0 to 1", "number", usual="0.6", stands="judgement"),
        ),
        gives=(Answer("time", "Time", "time", "min"),),
        us=("{trip_class} ÷ 60 ÷ ln((7.2 ÷ 1.12)² ÷ ((7.2 ÷ 1.12)² − 1)) × ln(1 ÷ {share}) = {time}",),
        also=("overload", "relay"),
    ),
    Formula(
        id="starts-heat",
        subject="protection",
        title="Current that many starts amount to",
        asks="How hard do these starts work the motor?",
        run=cooling.current_of_starts,
        takes=(
            Argument("starts", "Starts", "rate", "per hour"),
            Argument("start_time", "Time a start takes", "time", "s", usual="1 s", stands="judgement"),
            Argument("start_current", "Current in a start", "current", "A"),
            Argument("run_current", "Current in running", "current", "A"),
        ),
        gives=(Answer("amps", "Steady current that warms as much", "current", "A"),),
        us=(
            "{starts:n} × {start_time} ÷ 3600 = {share} of the time spent starting",
            "√({run_current:n}² + {share} × ({start_current:n}² − {run_current:n}²)) = {amps}",
        ),
        steps=_squares,
        also=("starts per hour", "jogging"),
    ),
    Formula(
        id="starts-allowed",
        subject="protection",
        title="Starts an overload bears",
        asks="How many starts an hour before it trips?",
        run=cooling.starts_allowed,
        takes=(
            Argument("setting", "Setting of the overload", "current", "A"),
            Argument("start_time", "Time a start takes", "time", "s", usual="1 s", stands="judgement"),
            Argument("start_current", "Current in a start", "current", "A"),
            Argument("run_current", "Current in running", "current", "A"),
        ),
        gives=(Answer("starts", "Starts", "rate", "per hour"),),
        us=(
            "{setting:n}² − {run_current:n}² = {room}",
            "3600 × {room} ÷ ({start_time} × ({start_current:n}² − {run_current:n}²)) = {starts:n}",
        ),
        steps=lambda setting, run_current, **_: {"room": (setting**2 - run_current**2, "number", "", "")},
        limit="motor_starts",
        also=("starts per hour",),
    ),
    Formula(
        id="coil-volts",
        subject="protection",
        title="Volts at a coil against its label",
        asks="Has this coil volts enough to pull in and hold?",
        run=cooling.coil_share,
        takes=(
            Argument("voltage", "Volts at the coil while in", "voltage", "V"),
            Argument("rated", "Volts on its label", "voltage", "V", plate="control_volts"),
        ),
        gives=(Answer("share", "Share of the label", "share", "%"),),
        us=("100 × {voltage} ÷ {rated} = {share:n}",),
        limit="coil_volts",
        also=("contactor", "chatter"),
    ),
    Formula(
        id="insulation-warm",
        subject="protection",
        title="Insulation reading brought to 40 °C",
        asks="What would this insulation read at 40 °C?",
        run=insulation.insulation_at_40,
        takes=(
            Argument("resistance", "Insulation read", "resistance", "Mohm"),
            Argument("temperature", "Temperature of the winding", "temperature", "°F", "°C"),
        ),
        gives=(_MEG,),
        us=("{tens} steps of 10 C° above 40 °C", "{resistance:n} × 2^{tens} = {at_40:n}"),
        steps=_doublings,
        limit="insulation_least",
        also=("megohm", "insulation"),
    ),
    Formula(
        id="insulation-climb",
        subject="protection",
        title="How insulation climbs within a minute",
        asks="Is it damp, by how its reading climbs?",
        run=insulation.absorption_ratio,
        takes=(
            Argument("after_60", "Reading after 60 seconds", "resistance", "Mohm"),
            Argument("after_10", "Reading after 10 seconds", "resistance", "Mohm"),
        ),
        gives=(Answer("ratio", "Ratio (1.15 or more is good)", "number"),),
        us=("{after_60} ÷ {after_10} = {ratio}",),
        also=("absorption ratio", "insulation", "damp"),
    ),
    Formula(
        id="insulation-check",
        subject="protection",
        title="Insulation by its minute and its climb",
        asks="Does this insulation pass?",
        run=insulation.insulation_verdict,
        takes=(
            Argument("after_60", "Reading after 60 seconds", "resistance", "Mohm"),
            Argument("after_10", "Reading after 10 seconds", "resistance", "Mohm"),
        ),
        gives=(Answer("verdict", "Verdict", "words"),),
        us=("{after_60} wants more than 5 Mohm; {after_60} ÷ {after_10} = {ratio} wants 1.15 or more",),
        steps=lambda after_60, after_10: {"ratio": (after_60 / after_10, "number", "", "")},
        by_hand="a verdict in words",
        also=("insulation", "damp"),
    ),
    Formula(
        id="insulation-leak",
        subject="protection",
        title="Current that leaks through insulation",
        asks="How much does this insulation leak to earth?",
        run=insulation.leakage_current,
        takes=(
            Argument("voltage", "Volts to earth", "voltage", "V"),
            Argument("resistance", "Insulation to earth", "resistance", "kohm"),
        ),
        gives=(Answer("leak", "Leakage", "current", "mA"),),
        us=("{voltage} ÷ {kilo} = {milli}",),
        steps=_shown,
        also=("earth leakage", "ground fault"),
    ),
    Formula(
        id="insulation-life",
        subject="protection",
        title="Life of a winding that runs hotter",
        asks="How much of its life is left to insulation that runs this much hotter?",
        run=insulation.insulation_life,
        takes=(Argument("hotter", "How much hotter it runs", "temperature difference", "F°", "C°"),),
        gives=(Answer("share", "Share of the life", "share", "%"),),
        us=("100 × 0.5^({hotter} ÷ 18) = {share:n}",),
        si=("100 × 0.5^({hotter} ÷ 10) = {share:n}",),
        also=("insulation", "ageing"),
    ),
)
