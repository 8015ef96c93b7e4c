"""What can be read of the tanks' heat while it works."""

from __future__ import annotations

from diagnose.simulator.bench import Bench
from diagnose.simulator.heating import controlled
from diagnose.simulator.registry import look
from diagnose.simulator.senses import Answer
from diagnose.simulator.tank_state import heat_minutes, hottest, least_of

__all__: list[str] = []

_HOT, _CHEMICAL = ("hot water",), ("chemical",)
_TWO = (2,)


def _hotter(bench: Bench) -> str:
    heated = [n for n, t in bench.plant.tanks.items() if t.heater.power > 0.0]
    return max(heated, key=lambda n: hottest(bench, n) - least_of(bench, n))


def _dial(bench: Bench, tank: str) -> float:
    """The dial as the kitchen has it when it calls the tank hot."""
    drawn = hottest(bench, tank) - bench.temperature(tank) if bench.plant.tanks[tank].dial_stuck is None else 0.0
    return bench.dial(tank) + drawn


def _never(bench: Bench, tank: str = "wash") -> bool:
    part = bench.plant.tanks[tank]
    off = part.thermostat.stuck is False or not part.heater.coil_works
    return (off or not controlled(bench.plant)) and not part.heater.welded


def _always(bench: Bench, tank: str = "wash") -> bool:
    part = bench.plant.tanks[tank]
    return part.heater.welded or part.thermostat.stuck is True


def _stops_at(bench: Bench, tank: str = "wash") -> float:
    control = bench.plant.tanks[tank].thermostat
    return control.setting + control.width / 2 - control.offset


def _chain(bench: Bench) -> str:
    """Where the chain of the tank's heat is open."""
    found = {
        "tank heat switch off": "at_switch",
        "tank thermostat open": "at_thermostat",
        "tank limit button out": "at_limit",
        "tank heat coil open": "coil_idle",
        "cut-out says low": "at_low_water",
    }
    marked = max(found, key=bench.sign)
    return found[marked] if bench.sign(marked) > 0.15 else "all_through"


@look("tank_control.tank_panel", sanitising=_HOT)
def tank_panel(bench: Bench) -> Answer:
    """The panel of the hotter tank."""
    return bench.value("panel thermometer", _dial(bench, _hotter(bench)))


@look("tank_control.tank_panel_chemical", sanitising=_CHEMICAL)
def tank_panel_chemical(bench: Bench) -> Answer:
    """The panel of the wash tank."""
    return bench.value("panel thermometer", _dial(bench, "wash"))


@look("tank_control.tank_reference", sanitising=_HOT)
def tank_reference(bench: Bench) -> Answer:
    """A second thermometer in the hotter tank; near the top, where layers show."""
    tank = _hotter(bench)
    return bench.value("reference thermometer", hottest(bench, tank) + 8.0 * bench.sign("hot water lies on top"))


@look("tank_control.tank_reference_chemical", sanitising=_CHEMICAL)
def tank_reference_chemical(bench: Bench) -> Answer:
    """A second thermometer in the wash tank."""
    warm = hottest(bench, "wash") + 8.0 * bench.sign("hot water lies on top")
    return bench.value("reference thermometer", warm)


@look("tank_control.setting")
def setting(bench: Bench) -> Answer:
    """How the tank's thermostat is set, by its dial."""
    over = bench.plant.tanks["wash"].thermostat.setting - least_of(bench, "wash")
    told = "above" if over > 6.5 else "below" if over < 1.0 else "as_plate"
    return bench.seen(told, "as_plate", sure=0.96)


@look("tank_control.swing")
def swing(bench: Bench) -> Answer:
    """How far the tank swings between heat off and heat on."""
    tank = _hotter(bench)
    control = bench.plant.tanks[tank].thermostat
    width = control.width + (9.0 if control.lag > 100.0 else 0.0)
    return Answer({"": max(0.0, bench.senses.measure("two thermometers", width))})


@look("tank_control.heat_stops")
def heat_stops(bench: Bench) -> Answer:
    """The thermostat turned to its lowest."""
    if bench.sign("tank thermostats crossed") > 0.0 or _always(bench):
        return bench.seen("goes_on", "stops", sure=0.96)
    late = bench.plant.tanks["wash"].thermostat.lag > 100.0
    return bench.seen("stops_late" if late else "stops", "stops", sure=0.93)


@look("tank_control.thermostat_ohms")
def thermostat_ohms(bench: Bench) -> Answer:
    """Its contact, isolated, at its lowest."""
    closed = bench.plant.tanks["wash"].thermostat.stuck is True
    return bench.seen("stays_closed" if closed else "opens", sure=0.98)


@look("tank_control.contactor_ohms", tank_heat=("electric",))
def contactor_ohms(bench: Bench) -> Answer:
    """The poles of the tank's contactor, isolated."""
    return bench.noticed("tank poles welded", "closed", "all_open", sure=0.98)


@look("tank_control.after_valve", tank_heat=("steam coil", "steam injector"))
def after_valve(bench: Bench) -> Answer:
    """The pipe beyond the steam valve, a quarter of an hour after."""
    warm = 388.0 if bench.sign("tank steam valve leaks") > 0.15 else bench.plant.air.room + 12.0
    return bench.value("infrared thermometer", warm)


@look("tank_control.bulb_look")
def bulb_look(bench: Bench) -> Answer:
    """The thermostat's bulb, tank drained."""
    return bench.noticed("tank bulb out of its clamp", "out_or_caked", "seated", sure=0.97)


@look("tank_control.burner_look", tank_heat=("gas",))
def burner_look(bench: Bench) -> Answer:
    """The main flame with the valve without voltage."""
    return bench.noticed("tank gas valve stays open", "burns_on", "goes_out", sure=0.98)


@look("tank_control.wash_temperature")
def wash_temperature(bench: Bench) -> Answer:
    """The panel after ten minutes without a rack: what racks took comes back, what heat lacks does not."""
    return bench.value("panel thermometer", _rested(bench, "wash"))


@look("tank_control.rinse_tank_temperature", tanks=_TWO)
def rinse_tank_temperature(bench: Bench) -> Answer:
    """The same of the power-rinse tank."""
    return bench.value("panel thermometer", _rested(bench, "rinse"))


def _rested(bench: Bench, tank: str) -> float:
    """The dial after ten minutes' rest with pump and heat on."""
    rested = bench.rested.temperature(tank)
    part = bench.plant.tanks[tank]
    return part.dial_stuck if part.dial_stuck is not None else rested + part.dial_offset


@look("tank_control.fill_temperature")
def fill_temperature(bench: Bench) -> Answer:
    """Water just filled in."""
    return bench.value("reference thermometer", bench.plant.water.temperature - 4.0)


@look("tank_control.heat_up_time")
def heat_up_time(bench: Bench) -> Answer:
    """Minutes from full to the wash tank's least."""
    return bench.value("watch", 60.0 * heat_minutes(bench, "wash", by_dial=True))


@look("tank_control.rinse_heat_up_time", tanks=_TWO)
def rinse_heat_up_time(bench: Bench) -> Answer:
    """Minutes from full to the power-rinse tank's least."""
    return bench.value("watch", 60.0 * heat_minutes(bench, "rinse", by_dial=True))


@look("tank_control.heat_call")
def heat_call(bench: Bench) -> Answer:
    """Whether the heat is on, and stays on, while the tank is cold."""
    if _never(bench) or bench.sign("cut-out says low") > 0.15:
        return bench.seen("never", sure=0.98)
    early = _stops_at(bench) < least_of(bench, "wash") + 0.5
    part = bench.plant.tanks["wash"]
    stuck_low = part.dial_stuck is not None and part.dial_stuck < least_of(bench, "wash")
    low_dial = stuck_low or part.dial_offset < -2.5  # K from which the crew sees it short of the least; judgement
    return bench.seen("goes_off" if early or low_dial else "stays_on", "stays_on", sure=0.96)


@look("tank_control.control_chain")
def control_chain(bench: Bench) -> Answer:
    """Where the volts end along the chain."""
    return bench.seen(_chain(bench), sure=0.97)


@look("tank_control.stop_temperature")
def stop_temperature(bench: Bench) -> Answer:
    """Degrees at which the heat stops, by a second thermometer."""
    early = _stops_at(bench) < least_of(bench, "wash")
    answer = bench.senses.measure("reference thermometer", _stops_at(bench))
    return Answer({"": answer}) if not early else Answer({"": min(answer, least_of(bench, "wash") - 0.6)})


@look("tank_control.cold_when")
def cold_when(bench: Bench) -> Answer:
    """When the tank is cold."""
    if bench.sign("begun before it was hot") > 0.15:
        return bench.seen("at_start", "at_rush", sure=0.95)
    rush = [n for n in bench.plant.tanks if bench.temperature(n) < least_of(bench, n) - 0.8]
    rush = [n for n in rush if bench.plant.tanks[n].heater.power > 0.0]
    if not rush:
        return bench.seen("not_cold", "at_rush", sure=0.96)
    all_day = any(_rested(bench, n) < least_of(bench, n) - 0.8 for n in rush)
    return bench.seen("all_day" if all_day else "at_rush", "at_rush", sure=0.95)


@look("tank_control.load_look")
def load_look(bench: Bench) -> Answer:
    """Count and feel of the racks."""
    return bench.noticed("ware cold or heavy", "heavy_or_cold", "usual", sure=0.95)


@look("tank_control.hot_when")
def hot_when(bench: Bench) -> Answer:
    """When the tank is too hot."""
    if bench.sign("hot water lies on top") > 0.15:
        return bench.seen("before_pump", "swings", sure=0.95)
    tank = _hotter(bench)
    if hottest(bench, tank) < least_of(bench, tank) + 8.0:
        return bench.seen("never", sure=0.96)
    if _always(bench, tank) or not bench.plant.tanks[tank].low_cutout:
        return bench.seen("climbs", "steady", sure=0.94)
    if bench.plant.water.temperature > least_of(bench, tank) + 6.0:
        return bench.seen("from_fill", "steady", sure=0.96)
    if bench.plant.tanks[tank].thermostat.lag > 100.0:
        return bench.seen("swings", "steady", sure=0.94)
    return bench.seen("steady", "climbs", sure=0.94)


@look("tank_control.stirred")
def stirred(bench: Bench) -> Answer:
    """How far a thermometer near the surface falls with the pump on."""
    fall = 0.6 + 9.0 * bench.sign("hot water lies on top")
    return Answer({"": max(0.0, bench.senses.measure("two thermometers", fall))})


@look("tank_control.which_heat", tanks=_TWO)
def which_heat(bench: Bench) -> Answer:
    """Whose heat stops when a thermostat is turned down."""
    return bench.noticed("tank thermostats crossed", "the_other", "its_own", sure=0.97)


@look("tank_control.figure_known")
def figure_known(bench: Bench) -> Answer:
    """What the kitchen takes for right."""
    return bench.noticed("hot as meant, thought too hot", "less_expected", "plate_known", sure=0.94)
