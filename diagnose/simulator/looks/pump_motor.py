"""What can be read of the pump's motor."""

from __future__ import annotations

from diagnose.simulator.bench import Bench
from diagnose.simulator.motoring import case_temperature, pump_meant
from diagnose.simulator.registry import look
from diagnose.simulator.senses import Answer

__all__ = ["amps_by_line", "insulation_of"]

_THREE, _ONE = (3,), (1,)


def amps_by_line(bench: Bench, name: str) -> Answer:
    """The three lines of a motor clamped."""
    amps = bench.running_amps(name)
    read = bench.each("small current clamp", L1=amps[0], L2=amps[1], L3=amps[2])
    return Answer({line: abs(value) for line, value in read.values.items()})  # a clamp knows no sign


def insulation_of(bench: Bench, name: str) -> Answer:
    """Winding to frame, [ohm]."""
    motor = bench.plant.motors[name]
    ohms = min(motor.earth_ohms, 3e6) if motor.winding_short > 0.0 and motor.starts else motor.earth_ohms
    return bench.value("insulation tester", ohms)


@look("pump_motor.line_amps", phases=_THREE)
def line_amps(bench: Bench) -> Answer:
    """The pump's three lines."""
    return amps_by_line(bench, pump_meant(bench))


@look("pump_motor.line_amps_single", phases=_ONE)
def line_amps_single(bench: Bench) -> Answer:
    """One line of the pump."""
    amps = bench.senses.measure("clamp meter", bench.running_amps(pump_meant(bench))[0])
    return Answer({"": abs(amps)})  # a clamp knows no sign


@look("pump_motor.case_temperature")
def case(bench: Bench) -> Answer:
    """The case after twenty minutes, or as found."""
    return bench.value("infrared thermometer", case_temperature(bench, pump_meant(bench)))


@look("pump_motor.insulation")
def insulation(bench: Bench) -> Answer:
    """Winding to frame."""
    return insulation_of(bench, pump_meant(bench))


@look("pump_motor.winding_ohms")
def winding_ohms(bench: Bench) -> Answer:
    """Pairs of leads, by ohmmeter."""
    motor = bench.plant.motors[pump_meant(bench)]
    if motor.terminal_open or motor.winding_open:
        return bench.seen("one_lead_open", sure=0.98)
    if bench.sign("pump motor growls") > 0.0:
        return bench.seen("uneven", "even", sure=0.93)
    return bench.seen("four_times" if bench.sign("pump leads joined wrong") > 0.0 else "even", "even", sure=0.95)


@look("pump_motor.terminal_box_look")
def terminal_box_look(bench: Bench) -> Answer:
    """Lid off."""
    return bench.strongest(
        "sound",
        0.96,
        pump_leads_joined_wrong="joined_wrong",
        pump_splice_burnt="splice_burnt",
        pump_terminal_box_wet="wet",
    )


@look("pump_motor.nameplate_look")
def nameplate_look(bench: Bench) -> Answer:
    """Volts and power on the motor's own plate against what is measured."""
    plant = bench.plant
    above = bench.sign("pump plate volts above") > 0.0
    if above or plant.power.volts < 0.9 * plant.plate["volts"]:
        return bench.seen("volts_above", "fits", sure=0.97)
    return bench.noticed("pump motor smaller", "smaller", "fits", sure=0.97)


@look("pump_motor.cooling_look")
def cooling_look(bench: Bench) -> Answer:
    """Fan and grille."""
    return bench.noticed("pump cooling choked", "choked", "clear", sure=0.96)


@look("pump_motor.uncoupled")
def uncoupled(bench: Bench) -> Answer:
    """The motor run bare."""
    name = pump_meant(bench)
    motor = bench.plant.motors[name]
    if motor.winding_short > 0.0:
        return bench.seen("growls_uneven", "still_the_same", sure=0.94)
    if bench.sign("pump bearing growls") > 0.15:
        return bench.seen("rough", "still_the_same", sure=0.95)
    over = max(bench.running_amps(name)) > 1.06 * motor.amps and not motor.terminal_open and all(motor.poles)
    return bench.seen("good_without_pump" if over else "still_the_same", "still_the_same", sure=0.95)


def capacitor(bench: Bench, sign: str) -> Answer:
    """Share of its label that a capacitor holds: it falls to three tenths."""
    weak = bench.sign(sign)
    return bench.value("titration kit", 1.0 if weak <= 0.0 else 0.8 - 0.5 * weak)


@look("pump_motor.capacitor_share", phases=_ONE)
def capacitor_share(bench: Bench) -> Answer:
    """The pump motor's capacitor."""
    return capacitor(bench, "pump capacitor weak")


@look("pump_motor.start_click", phases=_ONE)
def start_click(bench: Bench) -> Answer:
    """Heard as it runs up and coasts down."""
    return bench.strongest("clicks", 0.92, pump_start_switch_sticks="no_click", pump_capacitor_weak="slow_then_click")
