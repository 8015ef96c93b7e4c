"""Conveyor: speed, dwell, timers, force: as the trade asks it."""

from __future__ import annotations

from diagnose.formulas.formula import Answer, Argument, Formula
from diagnose.physics import conveyor, conveyor_drive, conveyor_speed

__all__ = ["FORMULAS"]

_SPEED = Argument("speed", "Conveyor speed", "speed", "ft/min", "m/min", plate="conveyor_speed")
_RACK = Argument(
    "rack", "Length of a rack", "length", "in", "cm", plate="rack_length", usual="20 in", stands="judgement"
)
_GIVES_SPEED = (Answer("speed", "Speed", "speed", "ft/min", "m/min"),)
_PULL = Argument("pull", "Pull along the track", "force", "lbf", "N")
_EFFICIENCY = Argument(
    "efficiency", "Efficiency of the drive", "share", "%", usual="50 %", stands="worm reducer; judgement"
)

_SPEEDS: tuple[Formula, ...] = (
    Formula(
        id="conveyor-speed",
        subject="conveyor",
        title="Conveyor speed by tape and watch",
        asks="How fast does a rack go that takes this long?",
        run=conveyor_speed.speed_of_time,
        takes=(
            Argument("length", "Way measured", "length", "in", "cm", usual="36 in", stands="three feet of track"),
            Argument("time", "Time", "time", "s"),
        ),
        gives=_GIVES_SPEED,
        us=("{length} ÷ 12 × 60 ÷ {time} = {speed}",),
        si=("{length} ÷ 100 × 60 ÷ {time} = {speed}",),
        also=("feet per minute", "timing"),
    ),
    Formula(
        id="conveyor-speed-strokes",
        subject="conveyor",
        title="Conveyor speed by strokes",
        asks="How fast are racks at this many strokes a minute?",
        run=conveyor_speed.speed_of_strokes,
        takes=(
            Argument("stroke", "Travel in one stroke", "length", "in", "cm", plate="conveyor_stroke"),
            Argument("strokes", "Strokes", "rate", "per minute"),
        ),
        gives=_GIVES_SPEED,
        us=("{stroke} ÷ 12 × {strokes:n} = {speed}",),
        si=("{stroke} ÷ 100 × {strokes:n} = {speed}",),
        also=("bar", "pawls"),
    ),
    Formula(
        id="motor-turns",
        subject="conveyor",
        title="Turns of a motor from poles and frequency",
        asks="How fast does a motor of so many poles turn?",
        run=conveyor_speed.motor_turns,
        takes=(
            Argument("frequency", "Frequency", "frequency", "Hz", plate="frequency"),
            Argument("poles", "Poles", "number", usual="4", stands="the nameplate's rpm tells"),
            Argument("slip", "Slip", "share", "%", usual="4 %", stands="at full load; judgement"),
        ),
        gives=(Answer("turns", "Turns", "frequency", "rpm"),),
        us=("120 × {frequency:n} ÷ {poles:n} × (1 − {slip:n} ÷ 100) = {turns}",),
    ),
    Formula(
        id="conveyor-speed-gears",
        subject="conveyor",
        title="Conveyor speed from motor, reducer and sprockets",
        asks="How fast should this gearing drive the conveyor?",
        run=conveyor_speed.speed_of_gearing,
        takes=(
            Argument("turns", "Motor, turns", "frequency", "rpm"),
            Argument("ratio", "Reducer, ratio", "number"),
            Argument("driver", "Teeth on the reducer's shaft", "number"),
            Argument("driven", "Teeth it drives", "number"),
            Argument("travel", "Travel in one turn", "length", "in", "cm", plate="conveyor_stroke"),
        ),
        gives=_GIVES_SPEED,
        us=("{turns:n} ÷ {ratio:n} × {driver:n} ÷ {driven:n} × {travel} ÷ 12 = {speed}",),
        si=("{turns:n} ÷ {ratio:n} × {driver:n} ÷ {driven:n} × {travel} ÷ 100 = {speed}",),
        also=("sprocket", "gearbox"),
    ),
    Formula(
        id="conveyor-speed-hertz",
        subject="conveyor",
        title="Conveyor speed on another frequency",
        asks="How fast does it run on another frequency?",
        run=conveyor_speed.speed_at_frequency,
        takes=(
            _SPEED,
            Argument("frequency", "Frequency it runs on", "frequency", "Hz"),
            Argument("made_for", "Frequency it is made for", "frequency", "Hz", plate="frequency"),
        ),
        gives=(Answer("then", "Speed then", "speed", "ft/min", "m/min"),),
        us=("{speed} × {frequency:n} ÷ {made_for:n} = {then}",),
        also=("50 hz", "60 hz", "inverter"),
    ),
)

_TIMES: tuple[Formula, ...] = (
    Formula(
        id="dwell",
        subject="conveyor",
        title="Time ware spends in a zone",
        asks="How long is ware under the sprays of a zone?",
        run=conveyor.dwell,
        takes=(Argument("length", "Length of the zone", "length", "in", "cm", plate="wash_zone"), _SPEED),
        gives=(Answer("time", "Time", "time", "s"),),
        us=("{length} ÷ 12 × 60 ÷ {speed} = {time}",),
        si=("{length} ÷ 100 × 60 ÷ {speed} = {time}",),
        also=("wash time", "contact time"),
    ),
    Formula(
        id="racks-per-hour",
        subject="conveyor",
        title="Racks an hour",
        asks="How many racks an hour pass at this speed?",
        run=conveyor.racks_an_hour,
        takes=(
            _SPEED,
            _RACK,
            Argument("gap", "Gap between racks", "length", "in", "cm", usual="0 in", stands="rack against rack"),
        ),
        gives=(Answer("racks", "Racks", "rate", "per hour"),),
        us=("{speed} × 60 × 12 ÷ ({rack} + {gap}) = {racks:n}",),
        si=("{speed} × 60 × 100 ÷ ({rack} + {gap}) = {racks:n}",),
    ),
    Formula(
        id="rinse-time",
        subject="conveyor",
        title="Time one rack keeps the rinse on",
        asks="How long should the rinse run for one rack?",
        run=conveyor.arm_held_time,
        takes=(
            _RACK,
            Argument("overlap", "Way it holds the arm besides", "length", "in", "cm", usual="0 in", stands="judgement"),
            Argument("delay", "Delay of the control", "time", "s", usual="0 s", stands="0 to 2 s is common"),
            _SPEED,
        ),
        gives=(Answer("time", "Time", "time", "s"),),
        us=("({rack} + {overlap}) ÷ 12 × 60 ÷ {speed} + {delay} = {time}",),
        si=("({rack} + {overlap}) ÷ 100 × 60 ÷ {speed} + {delay} = {time}",),
        also=("actuator", "rinse per rack"),
    ),
    Formula(
        id="run-on",
        subject="conveyor",
        title="Run-on the timer must give",
        asks="How long must the conveyor run on to carry the last rack out?",
        run=conveyor.run_on_needed,
        takes=(
            Argument("way", "From the timer's lever to clear of the last pawl", "length", "ft", "m"),
            _SPEED,
            Argument("in_hand", "Reserve", "time", "s", usual="5 s", stands="judgement"),
        ),
        gives=(Answer("time", "Time", "time", "s"),),
        us=("{way} × 60 ÷ {speed} + {in_hand} = {time}",),
        also=("energy saver", "timer"),
    ),
)

_FORCES: tuple[Formula, ...] = (
    Formula(
        id="conveyor-pull",
        subject="conveyor",
        title="Pull that moves the racks",
        asks="What pull do the racks in the machine want?",
        run=conveyor_drive.conveyor_pull,
        takes=(
            Argument("racks", "Racks in the machine", "number"),
            Argument("weight", "One rack, loaded", "mass", "lb", "kg", usual="30 lb", stands="heavy plates; judgement"),
            Argument("friction", "Friction on the track", "number", usual="0.3", stands="0.2 clean and wet; judgement"),
        ),
        gives=(Answer("pull", "Pull", "force", "lbf", "N"),),
        us=("{racks:n} × {weight} × {friction:n} = {pull}",),
        si=("{racks:n} × {weight} × 9.807 × {friction:n} = {pull}",),
    ),
    Formula(
        id="conveyor-torque",
        subject="conveyor",
        title="Torque at the drive",
        asks="What torque at the crank makes this pull?",
        run=conveyor_drive.drive_torque,
        takes=(_PULL, Argument("radius", "Radius of crank or sprocket", "length", "in", "cm"), _EFFICIENCY),
        gives=(Answer("torque", "Torque", "torque", "lbf·ft", "N·m"),),
        us=("{pull:n} × {radius:n} ÷ 12 ÷ ({efficiency:n} ÷ 100) = {torque:n}",),
        si=("{pull:n} × {radius:n} ÷ 100 ÷ ({efficiency:n} ÷ 100) = {torque:n}",),
    ),
    Formula(
        id="conveyor-power",
        subject="conveyor",
        title="Power the racks want of the motor",
        asks="What power moves the racks?",
        run=conveyor_drive.drive_power,
        takes=(_PULL, _SPEED, _EFFICIENCY),
        gives=(Answer("power", "Power", "power", "hp", "W"),),
        us=("{pull:n} × {speed:n} ÷ 33000 ÷ ({efficiency:n} ÷ 100) = {power}",),
        si=("{pull:n} × {speed:n} ÷ 60 ÷ ({efficiency:n} ÷ 100) = {power}",),
    ),
    Formula(
        id="clutch-margin",
        subject="conveyor",
        title="What the slip clutch has in hand",
        asks="How far above the pull wanted does the clutch let go?",
        run=conveyor_drive.slip_margin,
        takes=(
            Argument("slips_at", "Pull at which it lets go", "force", "lbf", "N"),
            Argument("needed", "Pull the racks want", "force", "lbf", "N"),
        ),
        gives=(Answer("margin", "Margin", "share", "%"),),
        us=("100 × ({slips_at:n} ÷ {needed:n} − 1) = {margin:n}",),
    ),
    Formula(
        id="drive-load",
        subject="conveyor",
        title="Load of the conveyor motor from its amps",
        asks="What part of its work does the motor do at this current?",
        run=conveyor_drive.working_share,
        takes=(
            Argument("current", "Current read", "current", "A"),
            Argument("idle", "Current uncoupled", "current", "A"),
            Argument("full", "Full-load amps", "current", "A", plate="drive_motor_amps"),
        ),
        gives=(Answer("load", "Share of rated work", "share", "%"),),
        us=("100 × √({current:n}² − {idle:n}²) ÷ √({full:n}² − {idle:n}²) = {load:n}",),
        also=("empty and loaded", "drag"),
    ),
)

FORMULAS: tuple[Formula, ...] = (*_SPEEDS, *_TIMES, *_FORCES)
