"""What can be read of the motors' overloads."""

from __future__ import annotations

from diagnose.simulator.bench import Bench
from diagnose.simulator.motoring import first_trip, pump_meant, rattles, setting_trip_time, tripped
from diagnose.simulator.protecting import opens
from diagnose.simulator.registry import look
from diagnose.simulator.senses import Answer

__all__: list[str] = []

_RELAY = ("overload relay",)
_NAMES = {"wash": "pump", "prewash": "prewash_pump", "rinse": "rinse_pump", "drive": "drive", "fan": "fan"}
_BOX = 8.0  # K that a sound closed control box stands over the room: judgement
_STANDING = 1e8  # ohm of an open contact


def meant(bench: Bench) -> str:
    """The motor complained of: the first that tripped, or the pump."""
    return (*tripped(bench), pump_meant(bench))[0]


@look("motor_overload.which_tripped")
def which_tripped(bench: Bench) -> Answer:
    """Whose flag is out at the moment of the complaint."""
    names = tripped(bench)
    if not names and opens(bench)[0]:
        return bench.seen("all_dead", sure=0.98)
    if len(names) > 1:
        return bench.seen("several", _NAMES[names[0]], sure=0.94)
    if not names and bench.sign("overload goes at starts") > 0.15:
        return bench.seen("pump", "no_trip", sure=0.93)
    return bench.seen(_NAMES[names[0]] if names else "no_trip", "no_trip", sure=0.97)


@look("motor_overload.holds")
def holds(bench: Bench) -> Answer:
    """A quarter of an hour at work."""
    at = first_trip(bench)
    dark = bool(opens(bench)[0]) or bench.sign("overload goes at starts") > 0.15
    return bench.seen("trips_again" if dark or at is not None else "holds", sure=1.0)


@look("motor_overload.trip_timing")
def trip_timing(bench: Bench) -> Answer:
    """From a cool start until it trips."""
    name = meant(bench)
    if name not in tripped(bench):
        odd = bench.sign("overload goes at starts") > 0.15 or rattles(bench)
        if bench.sign("quick class") > 0.0:
            return bench.seen("seconds", "minutes_few", sure=0.95)
        return bench.seen("any_time" if odd else "not_again", "not_again", sure=0.93)
    seconds = setting_trip_time(bench, name, 0.0)
    truth = "seconds" if seconds < 45.0 else "minutes_few" if seconds < 660.0 else "long_run"
    return bench.seen(truth, "minutes_few", sure=0.94)


@look("motor_overload.trip_time", motor_protection=_RELAY)
def trip_time(bench: Bench) -> Answer:
    """Seconds from cold until the overload trips."""
    return bench.value("watch", setting_trip_time(bench, meant(bench), 0.0))


@look("motor_overload.trip_time_hot", motor_protection=_RELAY)
def trip_time_hot(bench: Bench) -> Answer:
    """Seconds until it trips again, reset as soon as it took: it resets with three tenths of its trip heat left."""
    return bench.value("watch", setting_trip_time(bench, meant(bench), 0.3))


def _dial(bench: Bench, name: str) -> Answer:
    motor = bench.plant.motors[name]
    return bench.value("clamp meter", motor.amps * motor.dial)


@look("motor_overload.pump_setting", motor_protection=_RELAY)
def pump_setting(bench: Bench) -> Answer:
    """The pump's dial."""
    return _dial(bench, pump_meant(bench))


@look("motor_overload.drive_setting", motor_protection=_RELAY)
def drive_setting(bench: Bench) -> Answer:
    """The conveyor's dial."""
    return _dial(bench, "drive")


@look("motor_overload.fan_setting", motor_protection=_RELAY)
def fan_setting(bench: Bench) -> Answer:
    """The fan's dial."""
    return _dial(bench, "fan")


@look("motor_overload.range_look", motor_protection=_RELAY)
def range_look(bench: Bench) -> Answer:
    """Scale and class on the label."""
    return bench.strongest("right", 0.98, overload_scale_short="scale_short", quick_class="quick_class")


@look("motor_overload.terminal_heat", motor_protection=_RELAY)
def terminal_heat(bench: Bench) -> Answer:
    """Terminals of overload and contactor after twenty minutes."""
    motor = bench.plant.motors[pump_meant(bench)]
    hot = motor.joint_heat > 0.2 or not all(motor.poles)
    return bench.seen("one_hot" if hot else "alike", "alike", sure=0.96)


@look("motor_overload.box_temperature")
def box_temperature(bench: Bench) -> Answer:
    """Inside the closed control box."""
    over = _BOX + 22.0 * bench.sign("box hot") + 11.0 * bench.sign("corner hot")
    return bench.value("reference thermometer", bench.plant.air.room + over)


@look("motor_overload.motor_air")
def motor_air(bench: Bench) -> Answer:
    """Air beside the motor's fan."""
    return bench.value("reference thermometer", bench.plant.motors[meant(bench)].around)


@look("motor_overload.steam_look")
def steam_look(bench: Bench) -> Answer:
    """Steam or drips on the motor."""
    return bench.noticed("steam on motor", "steam", "dry", sure=0.96)


@look("motor_overload.relay_swap", motor_protection=_RELAY)
def relay_swap(bench: Bench) -> Answer:
    """Two overloads exchanged."""
    weary = max(bench.sign("overload itself weary"), bench.sign("quick class"))
    return bench.seen("goes_with_relay" if weary > 0.15 else "stays_with_motor", "stays_with_motor", sure=0.96)


def _trips(bench: Bench) -> bool:
    return bool(tripped(bench)) or bench.sign("protector itself weary") > 0.0


@look("motor_overload.case_at_trip", there=_trips, motor_protection=("thermal protector",))
def case_at_trip(bench: Bench) -> Answer:
    """The motor's case as its protector opens: at its own heat, or earlier where it is weary."""
    name = meant(bench)
    warm = bench.plant.motors[name].around + 53.0
    if bench.sign("protector itself weary") > 0.0:
        warm = 330.0
    elif bench.plant.motors[name].cooling < 0.7:
        warm = 369.0
    elif setting_trip_time(bench, name, 0.0) < 60.0:
        warm = 340.0
    return bench.value("infrared thermometer", warm)


@look("motor_overload.starts_count")
def starts_count(bench: Bench) -> Answer:
    """Starts over ten minutes, an hour's worth, [1/s]."""
    hour = 4.0
    bursts = max(bench.sign("door or float bounces"), bench.sign("contactor hold poor"), 0.4 * rattles(bench))
    many = max(bench.sign("hand stops it for each rack"), bench.sign("stops between racks"))
    if bursts > 0.15:
        hour = 70.0 + 120.0 * bursts
    elif many > 0.15:
        hour = 25.0 + 20.0 * many
    elif bench.sign("reset while hot") > 0.15:
        hour = 18.0
    return bench.value("counter", hour / 3600.0)


@look("motor_overload.interlock_watch")
def interlock_watch(bench: Bench) -> Answer:
    """What happens just before each of ten starts."""
    return bench.strongest(
        "no_needless",
        0.95,
        door_or_float_bounces="door_or_water",
        contactor_hold_poor="door_or_water",
        hand_stops_it_for_each_rack="a_hand",
        stops_between_racks="between_racks",
    )


@look("motor_overload.reset_ask")
def reset_ask(bench: Bench) -> Answer:
    """How long the crew waits."""
    return bench.noticed("reset while hot", "again_and_again", "once_cooled", sure=0.94)


@look("motor_overload.flags_look")
def flags_look(bench: Bench) -> Answer:
    """Flags before anything is reset."""
    out = bench.sign("overload flag out") > 0.0 or bool(tripped(bench))
    return bench.seen("one_out" if out else "none_out", "none_out", sure=0.98)


@look("motor_overload.overload_ohms", motor_protection=_RELAY)
def overload_ohms(bench: Bench) -> Answer:
    """The control contact, reset and cold."""
    ohms = _STANDING if bench.sign("overload contact open") > 0.0 else 0.2
    return bench.value("ohmmeter", ohms)


@look("motor_overload.test_flap", motor_protection=_RELAY)
def test_flap(bench: Bench) -> Answer:
    """The overload's test pressed."""
    if bench.sign("overload bound") > 0.0:
        return bench.seen("moves_nothing", sure=0.98)
    welded = any(m.welded for m in bench.plant.motors.values())
    return bench.seen("coil_dead_runs" if welded else "drops", "drops", sure=0.97)
