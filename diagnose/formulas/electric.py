"""Electric heaters: power, currents, ohms: as the trade asks it."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from diagnose.formulas.feeders import FEEDERS
from diagnose.formulas.formula import Answer, Argument, Formula
from diagnose.physics import bank_words, electric_heat
from diagnose.physics.element_bank import CONNECTIONS

__all__ = ["FORMULAS"]

Steps = Mapping[str, tuple[float, str, str, str]]

_POWER = Argument("power", "Rated power of the heater", "power", "kW", plate="booster_power")
_VOLTS = Argument("voltage", "Volts between the lines", "voltage", "V", plate="volts")
_RATED_VOLTS = Argument("voltage", "Volts the elements are rated for", "voltage", "V", plate="booster_volts")
_CONNECTION = Argument(
    "connection",
    "How the elements are joined",
    "words",
    usual="delta",
    stands="most heaters on 208 to 480 V; the plate or the drawing governs",
    words=CONNECTIONS,
)
_PER_LEG = Argument(
    "per_leg",
    "Elements side by side in each leg",
    "number",
    usual="1",
    stands="three elements in all; count them, the drawing governs",
)
_STATE = Argument("state", "State", "words", usual="one element open", stands="for example", words=bank_words.STATES)
_LINES = tuple(Answer(f"line{k}", f"Line {k}", "current", "A") for k in (1, 2, 3))
_PAIRS = tuple(Answer(f"pair{k}", name, "resistance", "ohm") for k, name in enumerate(("T1-T2", "T2-T3", "T3-T1"), 1))
_FULL = "{power} × 1000 ÷ (1.732 × {voltage}) = {full}"


def _full_amps(power: float, voltage: float, **_: Any) -> Steps:
    full = electric_heat.balanced_line_current(power, voltage)
    return {"full": (full, "current", "A", "A")}


def _state_steps(power: float, voltage: float, connection: str, state: str, per_leg: int) -> Steps:
    full = electric_heat.balanced_line_current(power, voltage)
    lines = bank_words.amps_in_state(power, voltage, connection, state, per_leg)
    shares = {f"share{k}": (i / full, "number", "", "") for k, i in enumerate(lines, 1)}
    return {"full": (full, "current", "A", "A"), **shares}


def _heat_steps(power: float, voltage: float, connection: str, state: str, per_leg: int) -> Steps:
    return {"share": (bank_words.heat_in_state(power, voltage, connection, state, per_leg) / power, "number", "", "")}


def _ohm_steps(power: float, voltage: float, connection: str, per_leg: int, **_: Any) -> Steps:
    element = bank_words.element_of_bank(power, voltage, connection, per_leg)
    legs = 3.0 if connection == "delta" else 1.0
    return {"element": (element, "resistance", "ohm", "ohm"), "legs": (legs, "number", "", "")}


_PLAIN: tuple[Formula, ...] = (
    Formula(
        id="power-at-volts",
        subject="electric",
        title="Power of a heater at other volts",
        asks="How much does it give on the volts there are?",
        run=electric_heat.power_at_voltage,
        takes=(
            Argument("rated_power", "Rated power", "power", "kW", plate="booster_power"),
            Argument("rated_voltage", "Volts it is rated for", "voltage", "V", plate="booster_volts"),
            Argument("voltage", "Volts there are", "voltage", "V", plate="volts"),
        ),
        gives=(Answer("power", "Power given", "power", "kW"),),
        us=("{rated_power} × ({voltage} ÷ {rated_voltage:n})² = {power}",),
        also=("kW", "low voltage", "240 on 208", "derating"),
    ),
    Formula(
        id="line-amps",
        subject="electric",
        title="Current in each line of a three-phase heater",
        asks="What should the clamp read in each line?",
        run=electric_heat.balanced_line_current,
        takes=(_POWER, _VOLTS),
        gives=(Answer("current", "Each line", "current", "A"),),
        us=("{power} × 1000 ÷ (1.732 × {voltage}) = {current}",),
        also=("amps", "clamp", "delta", "wye"),
    ),
    Formula(
        id="line-amps-single",
        subject="electric",
        title="Current of a single-phase heater",
        asks="What should the clamp read?",
        run=electric_heat.single_phase_current,
        takes=(_POWER, _VOLTS),
        gives=(Answer("current", "Current", "current", "A"),),
        us=("{power} × 1000 ÷ {voltage} = {current}",),
        also=("amps", "clamp"),
    ),
    Formula(
        id="element-ohms",
        subject="electric",
        title="Ohms of one element of a bank",
        asks="What should one element measure by itself?",
        run=bank_words.element_of_bank,
        takes=(_POWER, _RATED_VOLTS, _CONNECTION, _PER_LEG),
        gives=(Answer("element", "One element", "resistance", "ohm"),),
        us=("{legs} × {per_leg} × {voltage:n}² ÷ ({power} × 1000) = {element}",),
        steps=lambda **v: {"legs": _ohm_steps(**v)["legs"]},
        also=("resistance", "open element", "multimeter"),
    ),
)

_BANKS: tuple[Formula, ...] = (
    Formula(
        id="bank-amps",
        subject="electric",
        title="Line currents of a bank with elements open or a line lost",
        asks="What do the three lines read in this state?",
        run=bank_words.amps_in_state,
        takes=(_POWER, _VOLTS, _CONNECTION, _STATE, _PER_LEG),
        gives=_LINES,
        us=(
            _FULL,
            "{full} × {share1} = {line1}",
            "{full} × {share2} = {line2}",
            "{full} × {share3} = {line3}",
        ),
        steps=_state_steps,
        also=("open delta", "lost phase", "58 %", "87 %"),
    ),
    Formula(
        id="bank-heat",
        subject="electric",
        title="Heat left with elements open or a line lost",
        asks="How many kilowatts are left?",
        run=bank_words.heat_in_state,
        takes=(_POWER, _VOLTS, _CONNECTION, _STATE, _PER_LEG),
        gives=(Answer("heat", "Heat left", "power", "kW"),),
        us=("{power} × {share} = {heat}",),
        steps=_heat_steps,
        also=("open delta", "two thirds", "half"),
    ),
    Formula(
        id="bank-ohms",
        subject="electric",
        title="Ohms between the terminals with elements open",
        asks="What does the isolated bank measure in this state?",
        run=bank_words.ohms_in_state,
        takes=(_POWER, _RATED_VOLTS, _CONNECTION, _STATE, _PER_LEG),
        gives=_PAIRS,
        us=(
            "{legs} × {per_leg} × {voltage:n}² ÷ ({power} × 1000) = {element}",
            "Between the terminals: {pair1}, {pair2}, {pair3}.",
        ),
        steps=_ohm_steps,
        also=("resistance", "open element", "delta", "wye"),
    ),
    Formula(
        id="which-state-amps",
        subject="electric",
        title="What three line currents say of a bank",
        asks="Which element is open, or which line is lost?",
        run=bank_words.state_of_amps,
        takes=(
            Argument("currents", "Currents L1 L2 L3", "current", "A", many=3),
            _POWER,
            _VOLTS,
            _CONNECTION,
            _PER_LEG,
        ),
        gives=(Answer("state", "State", "words"), Answer("states", "States that fit", "number")),
        us=(_FULL, "Read {currents}: {state}."),
        steps=_full_amps,
        by_hand="held against every state the bank can be in; the full current can be reckoned",
        also=("clamp", "open element", "lost phase", "diagnose"),
    ),
    Formula(
        id="which-state-ohms",
        subject="electric",
        title="What three resistances say of an isolated bank",
        asks="Which element is open?",
        run=bank_words.state_of_ohms,
        takes=(
            Argument("resistances", "Ohms T1-T2 T2-T3 T3-T1", "resistance", "ohm", many=3),
            _POWER,
            _RATED_VOLTS,
            _CONNECTION,
            _PER_LEG,
        ),
        gives=(Answer("state", "State", "words"), Answer("states", "States that fit", "number")),
        us=("{legs} × {per_leg} × {voltage:n}² ÷ ({power} × 1000) = {element}", "Read {resistances}: {state}."),
        steps=_ohm_steps,
        by_hand="held against every state the bank can be in; the element's ohms can be reckoned",
        also=("multimeter", "open element", "diagnose"),
    ),
)

FORMULAS: tuple[Formula, ...] = (*_PLAIN, *_BANKS, *FEEDERS)
