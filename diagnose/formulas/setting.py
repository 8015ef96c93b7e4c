"""Setting: which way and how far to turn what can be set, as the trade asks it."""

from __future__ import annotations

from diagnose.formulas.formula import Answer, Argument, Formula
from diagnose.physics import setting, setting_feeds

__all__ = ["FORMULAS"]

_TEMPERATURE = ("temperature", "°F", "°C")
_DIFFERENCE = ("temperature difference", "F°", "C°")
_PRESSURE = ("pressure", "psi", "bar")
_SPEED = ("speed", "ft/min", "m/min")
_SPEED_READ = Argument("read", "Speed read", *_SPEED)
_SPEED_WANTED = Argument("wanted", "Speed wanted", *_SPEED, plate="conveyor_speed")
_MARK = Answer("mark_then", "Mark to set", "number")
_FEEDER = Argument("setting", "Setting of the feeder now, in its marks", "number")
_THEN = Answer("then", "Setting to make", "number")

Steps = dict[str, tuple[float, str, str, str]]


def _room(cut_out: float, cut_in: float, least: float, most: float, **_: float) -> Steps:
    return {"width": (cut_out - cut_in, *_DIFFERENCE), "room": (most - least, *_DIFFERENCE)}


def _percents(least: float, most: float, **_: float) -> Steps:
    return {"low_n": (100.0 * least, "number", "", ""), "high_n": (100.0 * most, "number", "", "")}


_BY_ITSELF: tuple[Formula, ...] = (
    Formula(
        id="set-thermostat",
        subject="setting",
        title="Dial of a thermostat",
        asks="Where must the dial stand so that it cuts in and out as wanted?",
        run=setting.thermostat_dial,
        takes=(
            Argument("dial", "Dial now", *_TEMPERATURE),
            Argument("cut_out", "Seen to cut out at", *_TEMPERATURE),
            Argument("cut_in", "Seen to cut in at", *_TEMPERATURE),
            Argument("least", "Least wanted", *_TEMPERATURE, plate="wash_temperature"),
            Argument("most", "Most wanted", *_TEMPERATURE),
        ),
        gives=(Answer("then", "Dial to set", *_TEMPERATURE),),
        us=(
            "It switches over {cut_out:n} − {cut_in:n} = {width:n} degrees",
            "Room for it: {most:n} − {least:n} = {room:n} degrees",
            "{dial} + ({least:n} + {most:n} − {cut_in:n} − {cut_out:n}) ÷ 2 = {then}",
        ),
        steps=_room,
        also=("dial", "cut in", "cut out", "differential", "heat"),
    ),
    Formula(
        id="set-regulator",
        subject="setting",
        title="Turns of a pressure regulator's screw",
        asks="How many turns, and which way, to the pressure wanted?",
        run=setting.regulator_turns,
        takes=(
            Argument("read", "Pressure now, flowing", *_PRESSURE),
            Argument("wanted", "Pressure wanted, flowing", *_PRESSURE, plate="rinse_pressure"),
            Argument(
                "per_turn",
                "Pressure of one turn",
                *_PRESSURE,
                usual="8 psi",
                stands="judgement, rather much, so that the first turn is a small one; the next goes by what it gave",
            ),
        ),
        gives=(Answer("turns", "Turns in, or out where below nought", "number"),),
        us=("({wanted} − {read}) ÷ {per_turn} = {turns}",),
        also=("screw", "rinse pressure", "prv"),
    ),
    Formula(
        id="pressure-of-a-turn",
        subject="setting",
        title="Pressure that one turn of a regulator gives",
        asks="What did the last turn of the screw bring?",
        run=setting.pressure_per_turn,
        takes=(
            Argument("before", "Pressure before, flowing", *_PRESSURE),
            Argument("after", "Pressure after, flowing", *_PRESSURE),
            Argument("turns", "Turns in, or out where below nought", "number"),
        ),
        gives=(Answer("per_turn", "Pressure of one turn", *_PRESSURE),),
        us=("({after} − {before}) ÷ ({turns}) = {per_turn}",),
        also=("screw", "regulator"),
    ),
    Formula(
        id="set-timer",
        subject="setting",
        title="Mark of a timer's dial",
        asks="Which mark gives the time wanted?",
        run=setting.timer_mark,
        takes=(
            Argument("mark", "Mark now", "number"),
            Argument("read", "Time it gave", "time", "s"),
            Argument("wanted", "Time wanted", "time", "s", plate="run_on"),
        ),
        gives=(_MARK,),
        us=("{mark} × {wanted} ÷ {read} = {mark_then}",),
        also=("run-on", "timer", "dial"),
    ),
    Formula(
        id="set-timer-again",
        subject="setting",
        title="Mark of a timer's dial from two tries",
        asks="Which mark gives the time wanted, after two tries?",
        run=setting.timer_mark_of_pairs,
        takes=(
            Argument("mark_before", "Mark at first", "number"),
            Argument("read_before", "Time it gave then", "time", "s"),
            Argument("mark", "Mark now", "number"),
            Argument("read", "Time it gives now", "time", "s"),
            Argument("wanted", "Time wanted", "time", "s", plate="run_on"),
        ),
        gives=(_MARK,),
        us=("{mark} + ({wanted} − {read}) × ({mark} − {mark_before}) ÷ ({read} − {read_before}) = {mark_then}",),
        also=("run-on", "timer", "dial", "offset"),
    ),
    Formula(
        id="set-overload",
        subject="setting",
        title="Dial of a motor overload",
        asks="Where must the dial stand for this motor, and between which amps may it?",
        run=setting.overload_dial,
        takes=(
            Argument("full_load", "Full-load amps on the plate", "current", "A", plate="wash_motor_amps"),
            Argument("least", "Lowest share allowed", "share", "%", usual="100 %", stands="common practice"),
            Argument(
                "most",
                "Highest share allowed",
                "share",
                "%",
                usual="115 %",
                stands="NEC 430.32(A)(1), motors in general; 125 % by the nameplate's marks",
            ),
        ),
        gives=(
            Answer("then", "Dial to set", "current", "A"),
            Answer("low", "Not under", "current", "A"),
            Answer("high", "Not above", "current", "A"),
        ),
        us=(
            "The nameplate's amps: {then}",
            "{full_load} × {low_n} ÷ 100 = {low}",
            "{full_load} × {high_n} ÷ 100 = {high}",
        ),
        steps=_percents,
        also=("dial", "relay", "430.32", "115"),
    ),
)

_FED: tuple[Formula, ...] = (
    Formula(
        id="set-feeder",
        subject="setting",
        title="Setting of a feeder by the strength found",
        asks="Where must the feeder stand for the strength wanted?",
        run=setting_feeds.feeder_setting,
        takes=(
            _FEEDER,
            Argument("read", "Strength found", "concentration", "ppm"),
            Argument("wanted", "Strength wanted", "concentration", "ppm", plate="sanitiser_wanted"),
        ),
        gives=(_THEN,),
        us=("{setting} × {wanted} ÷ {read} = {then}",),
        also=("sanitiser", "detergent", "dose", "pump speed"),
    ),
    Formula(
        id="set-feeder-by-dose",
        subject="setting",
        title="Setting of a feeder by what it gives a rack",
        asks="Where must the feeder stand for the dose wanted?",
        run=setting_feeds.feeder_setting_by_dose,
        takes=(
            _FEEDER,
            Argument("read", "Stock it gave a rack", "volume", "mL"),
            Argument("wanted", "Stock a rack should get", "volume", "mL"),
        ),
        gives=(_THEN,),
        us=("{setting} × {wanted} ÷ {read} = {then}",),
        also=("rinse aid", "sanitiser", "dose"),
    ),
    Formula(
        id="set-table-foot",
        subject="setting",
        title="How far to raise a table's foot",
        asks="How far up or down must this foot go for the pitch wanted?",
        run=setting_feeds.foot_rise,
        takes=(
            Argument("fall", "Fall to the machine, read", "slope", "in/ft", "mm/m"),
            Argument("wanted", "Fall wanted", "slope", "in/ft", "mm/m"),
            Argument("distance", "From the machine to the foot", "length", "ft", "m"),
        ),
        gives=(Answer("rise", "Up, or down where below nought", "length", "in", "mm"),),
        us=("({wanted} − {fall}) × {distance} = {rise}",),
        also=("pitch", "slope", "table", "drain"),
    ),
    Formula(
        id="turns-of-a-foot",
        subject="setting",
        title="Turns of a threaded foot",
        asks="How many turns raise the foot so far?",
        run=setting_feeds.foot_turns,
        takes=(
            Argument("rise", "Way up, below nought down", "length", "in", "mm"),
            Argument("pitch", "Pitch of its thread", "length", "in", "mm"),
        ),
        gives=(Answer("turns", "Turns", "number"),),
        us=("{rise} ÷ {pitch} = {turns}",),
        also=("pitch", "table", "level"),
    ),
    Formula(
        id="set-drive",
        subject="setting",
        title="Hertz of a conveyor's drive",
        asks="Which frequency gives the speed wanted?",
        run=setting_feeds.drive_hertz,
        takes=(Argument("hertz", "Frequency now", "frequency", "Hz", plate="frequency"), _SPEED_READ, _SPEED_WANTED),
        gives=(Answer("then", "Frequency to set", "frequency", "Hz"),),
        us=("{hertz} × {wanted} ÷ {read} = {then}",),
        also=("inverter", "frequency controller", "speed"),
    ),
    Formula(
        id="set-pulley",
        subject="setting",
        title="Driving pulley for another conveyor speed",
        asks="Which driving pulley gives the speed wanted?",
        run=setting_feeds.driving_pulley,
        takes=(Argument("pulley", "Driving pulley now", "length", "in", "mm"), _SPEED_READ, _SPEED_WANTED),
        gives=(Answer("then", "Driving pulley to fit", "length", "in", "mm"),),
        us=("{pulley} × {wanted} ÷ {read} = {then}",),
        also=("sprocket", "belt", "ratio", "speed"),
    ),
)

FORMULAS: tuple[Formula, ...] = (*_BY_ITSELF, *_FED)
