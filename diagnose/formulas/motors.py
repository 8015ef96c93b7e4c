"""Motors: what they draw, and what poor volts do to them, as the trade asks it."""

from __future__ import annotations

from diagnose.formulas.formula import Answer, Argument, Formula
from diagnose.physics import motor_load, motor_supply, motors

__all__ = ["FORMULAS"]

_POWER = Argument("power", "Motor power", "power", "hp", "kW", plate="wash_motor_power")
_VOLTS = Argument("voltage", "Line volts", "voltage", "V", plate="volts")
_HALF = "judgement: small motors; its plate governs"
_EFFICIENCY = Argument("efficiency", "Efficiency, 0 to 1", "number", usual="0.8", stands=_HALF)
_FACTOR = Argument("power_factor", "Power factor, 0 to 1", "number", usual="0.8", stands=_HALF)
_THREE = Argument("values", "Volts L1-L2, L2-L3, L3-L1", "voltage", "V", many=3)
_UNBALANCE = Argument("unbalance", "Voltage unbalance", "share", "%")
_AMPS = Answer("amps", "Current", "current", "A")


def _mean(values: tuple[float, ...], **_: object) -> dict[str, tuple[float, str, str, str]]:
    mean = sum(values) / len(values)
    off = max(abs(v - mean) for v in values)
    return {
        "mean": (mean, "voltage", "V", "V"),
        "off": (off, "voltage", "V", "V"),
        "sum": (sum(values), "voltage", "V", "V"),
        "hundred": (100.0 * off / mean, "number", "", ""),
    }


def _mean_amps(values: tuple[float, ...], **_: object) -> dict[str, tuple[float, str, str, str]]:
    mean = sum(values) / len(values)
    off = max(abs(v - mean) for v in values)
    return {
        "total": (sum(values), "current", "A", "A"),
        "mean": (mean, "current", "A", "A"),
        "off": (off, "current", "A", "A"),
        "hundred": (100.0 * off / mean, "number", "", ""),
    }


def _total(loads: tuple[float, ...], **_: object) -> dict[str, tuple[float, str, str, str]]:
    return {"total": (sum(loads), "current", "A", "A")}


def _b(voltages: tuple[float, ...], **_: object) -> dict[str, tuple[float, str, str, str]]:
    b = sum(v**4 for v in voltages) / sum(v**2 for v in voltages) ** 2
    return {"b": (b, "number", "", ""), "root": (max(3 - 6 * b, 0.0) ** 0.5, "number", "", "")}


def _percent(unbalance: float, **_: object) -> dict[str, tuple[float, str, str, str]]:
    return {"u": (100.0 * unbalance, "number", "", "")}


def _letter(letter: str, **_: object) -> dict[str, tuple[float, str, str, str]]:
    return {"figure": (motor_supply.code_letter_figure(letter), "number", "", "")}


FORMULAS: tuple[Formula, ...] = (
    Formula(
        id="motor-amps",
        subject="motors",
        title="Full-load current of a three-phase motor",
        asks="What should this motor draw at full load?",
        run=motor_load.full_load_current,
        takes=(_POWER, _VOLTS, _EFFICIENCY, _FACTOR),
        gives=(_AMPS,),
        us=("745.7 × {power} ÷ (1.732 × {voltage} × {efficiency} × {power_factor}) = {amps}",),
        si=("1000 × {power} ÷ (1.732 × {voltage} × {efficiency} × {power_factor}) = {amps}",),
        also=("FLA", "full load amps", "nameplate"),
    ),
    Formula(
        id="motor-amps-single",
        subject="motors",
        title="Full-load current of a single-phase motor",
        asks="What should this single-phase motor draw at full load?",
        run=motor_load.full_load_current_single,
        takes=(_POWER, _VOLTS, _EFFICIENCY, _FACTOR),
        gives=(_AMPS,),
        us=("745.7 × {power} ÷ ({voltage} × {efficiency} × {power_factor}) = {amps}",),
        si=("1000 × {power} ÷ ({voltage} × {efficiency} × {power_factor}) = {amps}",),
        also=("FLA", "single phase"),
    ),
    Formula(
        id="unbalance",
        subject="motors",
        title="Voltage unbalance by the NEMA definition",
        asks="How unequal are these three voltages?",
        run=motors.nema_unbalance,
        takes=(_THREE,),
        gives=(Answer("share", "Unbalance (NEMA)", "share", "%"),),
        us=(
            "{sum} ÷ 3 = {mean}",
            "Largest step from that mean: {off}",
            "100 × {off} ÷ {mean} = {hundred}",
        ),
        steps=_mean,
        limit="volts_unbalance",
        also=("NEMA", "imbalance"),
    ),
    Formula(
        id="unbalance-true",
        subject="motors",
        title="True unbalance: negative over positive sequence",
        asks="How unequal are these voltages, by their negative sequence?",
        run=motors.negative_sequence_factor,
        takes=(Argument("voltages", "Volts L1-L2, L2-L3, L3-L1", "voltage", "V", many=3),),
        gives=(Answer("factor", "Negative-sequence factor", "share", "%"),),
        us=(
            "b = sum of V⁴ over (sum of V²)² is {b}",
            "√(3 − 6 × {b}) = {root}",
            "√((1 − {root}) ÷ (1 + {root})): {factor}",
        ),
        steps=_b,
        by_hand="the last digits of b decide, which a pocket calculator drops",
        also=("VUF", "imbalance"),
    ),
    Formula(
        id="motor-derating",
        subject="motors",
        title="Load a motor may carry on unequal volts",
        asks="How much of its power may this motor give?",
        run=motor_load.derating,
        takes=(_UNBALANCE,),
        gives=(Answer("share", "Share of its rated power", "share", "%"),),
        us=("At {unbalance}: {share} of the rated power (1 %: all, 2 %: 95, 3 %: 88, 4 %: 82, 5 %: 75)",),
        by_hand="read from a table, with straight lines in between",
        also=("derate",),
    ),
    Formula(
        id="motor-extra-heat",
        subject="motors",
        title="Extra warmth from unequal volts",
        asks="How much hotter does a motor get on these volts?",
        run=motor_load.extra_rise,
        takes=(
            Argument("rise", "Rise on equal volts", "temperature difference", "F°", "C°", usual="80 C°", stands=_HALF),
            _UNBALANCE,
        ),
        gives=(Answer("extra", "Extra rise", "temperature difference", "F°", "C°"),),
        us=("{rise} × 2 × {u}² ÷ 100 = {extra}",),
        steps=_percent,
        also=("temperature rise",),
    ),
    Formula(
        id="current-unbalance",
        subject="motors",
        title="Current unbalance the supply explains",
        asks="How unequal may the currents be on these volts?",
        run=motor_load.current_unbalance_expected,
        takes=(_UNBALANCE,),
        gives=(
            Answer("least", "From", "share", "%"),
            Answer("most", "Up to", "share", "%"),
        ),
        us=("6 × {unbalance:n} = {least:n}", "10 × {unbalance:n} = {most:n}"),
        also=("imbalance",),
    ),
    Formula(
        id="lost-phase",
        subject="motors",
        title="Current after a phase is lost",
        asks="What do the two lines left draw?",
        run=motor_load.lost_phase_line,
        takes=(Argument("current", "Line current before", "current", "A", plate="wash_motor_amps"),),
        gives=(_AMPS,),
        us=("1.732 × {current} = {amps}",),
        also=("single phasing", "single-phasing"),
    ),
    Formula(
        id="lost-phase-winding",
        subject="motors",
        title="Worst winding after a phase is lost",
        asks="What does the worst winding of a delta motor carry then?",
        run=motor_load.lost_phase_winding,
        takes=(Argument("current", "Line current before", "current", "A", plate="wash_motor_amps"),),
        gives=(_AMPS,),
        us=("1.732 × {current} × 2 ÷ 3 = {amps}", "Its own share was {current} ÷ 1.732: it carries twice that."),
        also=("single phasing",),
    ),
    Formula(
        id="start-current",
        subject="motors",
        title="Current at the start, by the code letter",
        asks="What does this motor draw before it turns?",
        run=motor_supply.locked_rotor_of_letter,
        takes=(
            _POWER,
            Argument("letter", "Code letter on the plate", "words", words=tuple(motor_supply.CODE_LETTERS)),
            _VOLTS,
        ),
        gives=(_AMPS,),
        us=(
            "Letter {letter}: up to {figure} kVA a horsepower",
            "{power} × {figure} × 1000 ÷ (1.732 × {voltage}) = {amps}",
        ),
        si=(
            "Letter {letter}: up to {figure} kVA a horsepower",
            "{power} ÷ 0.7457 × {figure} × 1000 ÷ (1.732 × {voltage}) = {amps}",
        ),
        steps=_letter,
        also=("locked rotor", "LRA", "inrush"),
    ),
    Formula(
        id="motor-torque",
        subject="motors",
        title="Torque left on other volts",
        asks="How much of its torque is left on these volts?",
        run=motor_supply.torque_share,
        takes=(
            Argument("voltage", "Volts at the motor", "voltage", "V"),
            Argument("rated", "Volts on its plate", "voltage", "V", plate="volts"),
        ),
        gives=(Answer("share", "Share of the torque", "share", "%"),),
        us=("100 × ({voltage} ÷ {rated})² = {share:n}",),
        also=("low volts", "stall"),
    ),
    Formula(
        id="feeder-loss",
        subject="motors",
        title="Power lost in one line of a feeder",
        asks="How much power does this drop of volts cost?",
        run=motor_supply.feeder_loss,
        takes=(
            Argument("drop", "Volts lost along the line", "voltage", "V"),
            Argument("current", "Current in it", "current", "A"),
        ),
        gives=(Answer("loss", "Power lost", "power", "W"),),
        us=("{drop} × {current} = {loss}",),
        also=("voltage drop", "joint"),
    ),
    Formula(
        id="unbalance-amps",
        subject="motors",
        title="Unbalance of three currents",
        asks="How unequal are these three currents?",
        run=motors.nema_unbalance,
        takes=(Argument("values", "Amps L1, L2, L3", "current", "A", many=3),),
        gives=(Answer("share", "Unbalance", "share", "%"),),
        us=(
            "{total} ÷ 3 = {mean}",
            "Largest step from that mean: {off}",
            "100 × {off} ÷ {mean} = {hundred}",
        ),
        steps=_mean_amps,
        limit="motor_current_unbalance",
        also=("imbalance", "current"),
    ),
    Formula(
        id="motor-off-volts",
        subject="motors",
        title="Current at full load on other volts",
        asks="What does a loaded motor draw when its volts are off?",
        run=motors.current_change_at_volts,
        takes=(Argument("share", "Volts at the motor, share of its plate", "share", "%"),),
        gives=(Answer("least", "From", "share", "%"), Answer("most", "Up to", "share", "%")),
        us=("At {share} of its volts full load draws {least} to {most} of the nameplate's amps",),
        by_hand="straight lines through 105 to 110 % of the amps at 90 % volts, and 90 to 95 % at 110 %",
        also=("off design", "low volts", "high volts"),
    ),
    Formula(
        id="motor-slip",
        subject="motors",
        title="Slip of a motor on other volts",
        asks="How much more does it fall behind on these volts?",
        run=motor_supply.slip_share,
        takes=(
            Argument("voltage", "Volts at the motor", "voltage", "V"),
            Argument("rated", "Volts on its plate", "voltage", "V", plate="volts"),
        ),
        gives=(Answer("share", "Slip over its slip on rated volts", "share", "%"),),
        us=("100 × ({rated} ÷ {voltage})² = {share:n}",),
        also=("speed", "low volts"),
    ),
    Formula(
        id="breaker-load",
        subject="motors",
        title="All loads against the breaker",
        asks="Is the breaker large enough for all that runs at once?",
        run=motor_supply.breaker_share,
        takes=(
            Argument("loads", "Amps of each, one after the other", "current", "A", many=0),
            Argument("rating", "Breaker or fuse that feeds them", "current", "A", plate="breaker_amps"),
        ),
        gives=(Answer("share", "Share of the breaker (80 % at the most for hours)", "share", "%"),),
        us=("Together: {total}", "100 × {total} ÷ {rating} = {share:n}"),
        steps=_total,
        also=("fuse", "sum of loads", "machine goes dead"),
    ),
)
