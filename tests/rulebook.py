"""A small book of knowledge for the tests of the rules: the checks the rules answer, and their limits."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from diagnose.model import Basis, Book, Check, Limit, Machine, MachineType, Outcome, Reading, ReadingSpec
from diagnose.rules import Expected, RuleRun, expected, findings
from diagnose.units import parse_quantity

__all__ = ["BOOK", "MACHINES", "expect", "machine", "reading", "run"]

BASIS = Basis(kind="judgement")
PUBLISHED = Basis(kind="published", source="food_code", where="4-501.112")
LINES, PAIRS, TERMINALS = ["L1", "L2", "L3"], ["L1-L2", "L2-L3", "L3-L1"], ["T1-T2", "T2-T3", "T3-T1"]


def _check(
    name: str,
    spec: tuple[str, str] | None,
    outcomes: Sequence[str] | Mapping[str, tuple[str | None, str | None]],
    each: Sequence[str] = (),
    instrument: str = "eyes",
    fits: Mapping[str, list[str | int | bool]] | None = None,
    computed: bool = False,
) -> Check:
    bands = outcomes if isinstance(outcomes, Mapping) else dict.fromkeys(outcomes, (None, None))
    good = "good" if "good" in bands else next(iter(bands))
    return Check(
        id=name,
        title=name.replace("_", " "),
        ask="?",
        steps=[],
        reading=ReadingSpec(quantity=spec[0], unit=spec[1], each=list(each)) if spec else None,
        computed=computed,
        instrument=instrument,
        minutes=1,
        open=["none"],
        state="running",
        who="technician",
        cautions=[],
        looks_at=[],
        outcomes={o: Outcome(title=o, good=o == good, low=b[0], high=b[1]) for o, b in bands.items()},
        shows={"none": {}},
        fits=dict(fits or {}),
        basis=BASIS,
    )


def _three(low: str, high: str) -> dict[str, tuple[str | None, str | None]]:
    return {"low": (None, low), "good": (low, high), "high": (high, None)}


AMPS, VOLTS, OHMS, HOT, PSI = ("current", "A"), ("voltage", "V"), ("resistance", "ohm"), ("temperature", "°F"), (
    "pressure",
    "psi",
)  # fmt: skip
THREE, ONE = {"phases": [3]}, {"phases": [1]}
BANK = ("healthy", "one_element_out", "two_elements_out", "one_line_out", "all_low", "none", "unlike")
MOTOR = ("healthy", "high", "low", "unbalanced", "phase_lost", "none")
RINSE = _three("limit.rinse_temperature.low", "limit.rinse_temperature.high")
_CHECKS = (
    _check("booster_electric.line_amps", AMPS, BANK, LINES, "clamp meter", {"booster": ["electric"], **THREE}),
    _check("booster_electric.line_amps_single", AMPS, ("healthy", "part_out", "all_low", "none", "unlike"), (),
           "clamp meter", {"booster": ["electric"], **ONE}),
    _check("booster_electric.terminal_ohms", OHMS,
           ("healthy", "one_element_open", "two_elements_open", "all_open", "unlike"), TERMINALS, "multimeter", THREE),
    _check("booster_electric.insulation", ("resistance", "Mohm"),
           {"earthed": (None, "0.1 Mohm"), "damp": ("0.1 Mohm", "1 Mohm"), "good": ("1 Mohm", None)}, (),
           "insulation tester"),
    _check("booster_electric.heat_balance", None, ("agrees", "reads_below_balance", "reads_above_balance"),
           fits={"booster": ["electric"]}, computed=True),
    _check("supply_power.line_volts", VOLTS, ("healthy", "low", "high", "unbalanced", "one_line_lost"), PAIRS,
           "voltmeter", THREE),
    _check("supply_power.line_volts_single", VOLTS, ("healthy", "low", "high", "none"), (), "voltmeter", ONE),
    _check("supply_water.inlet_temperature", HOT, ("enough", "too_cold", "too_hot"), (), "digital thermometer"),
    _check("rinse_thermometer.panel_reading", HOT, RINSE, (), "panel thermometer"),
    _check("rinse_thermometer.reference_reading", HOT, RINSE, (), "reference thermometer"),
    _check("rinse_gauge.flow_pressure", PSI, _three("limit.rinse_pressure.low", "limit.rinse_pressure.high"), (),
           "panel gauge"),
    _check("rinse_gauge.static_pressure", PSI, ("steady", "creeps_up", "supply_low"), (), "test gauge"),
    _check("rinse_arms.flow_measured", ("flow", "gpm"), ("as_expected", "more_than_expected", "less_than_expected"),
           (), "bucket and watch"),
    *(_check(f"{m}.line_amps", AMPS, MOTOR, LINES, "clamp meter", THREE)
      for m in ("pump_motor", "drive_motor", "exhaust_fan")),
    *(_check(f"{m}.line_amps_single", AMPS, ("healthy", "high", "low", "none"), (), "clamp meter", ONE)
      for m in ("pump_motor", "drive_motor", "exhaust_fan")),
    *(_check(f"motor_overload.{m}_setting", AMPS, ("as_nameplate", "below", "above"), (), "eyes, dial")
      for m in ("pump", "drive", "fan")),
    _check("vent_dampers.flow_entrance", ("air flow", "cfm"),
           _three("plate.vent_entrance * 0.85", "plate.vent_entrance * 1.25"), (), "anemometer"),
    _check("vent_dampers.flow_exit", ("air flow", "cfm"), _three("plate.vent_exit * 0.85", "plate.vent_exit * 1.25"),
           (), "anemometer"),
    _check("vent_dampers.balance", None,
           ("as_wanted", "total_short", "entrance_short", "exit_short", "total_high"), computed=True),
    _check("pump.look", None, ("turns_right", "turns_backwards")),
    _check("jam_switch.gap", ("length", "mm"), ("close",)),
    _check("wash.tank", HOT, _three("limit.tank_temperature.low", "limit.tank_temperature.high"), (), "panel gauge"),
    _check("wash.three_places", HOT, _three("150 °F", "170 °F"), ["left", "middle", "right"], "probe"),
)  # fmt: skip


def _limit(name: str, quantity: str, low: Sequence[str], high: Sequence[str], *plate: str | None,
           basis: Basis = BASIS) -> Limit:  # fmt: skip
    ends = dict(zip(("plate_low", "plate_high"), plate, strict=False))
    return Limit(id=name, title=name, quantity=quantity, low=list(low), high=list(high), basis=basis, **ends)


_LIMITS = (
    _limit("rinse_temperature", "temperature", ["180 °F", "82 °C"], ["194 °F", "90 °C"], "rinse_temperature",
           basis=PUBLISHED),
    _limit("rinse_temperature_chemical", "temperature", ["120 °F", "49 °C"], ["150 °F", "66 °C"], "rinse_temperature"),
    _limit("rinse_pressure", "pressure", ["15 psi", "100 kPa"], ["25 psi", "170 kPa"], "rinse_pressure_least",
           "rinse_pressure_most"),
    _limit("rinse_pressure_code", "pressure", ["5 psi", "35 kPa"], ["30 psi", "200 kPa"], basis=PUBLISHED),
    _limit("booster_inlet", "temperature", ["138 °F", "59 °C"], ["165 °F", "74 °C"], "booster_inlet"),
    _limit("tank_temperature", "temperature", ["150 °F", "66 °C"], ["172 °F", "78 °C"], "wash_temperature"),
    _limit("volts_band", "share", ["90 %"], ["110 %"]),
    _limit("volts_unbalance", "share", [], ["1 %"]),
    _limit("motor_load", "share", ["60 %"], ["105 %"]),
    _limit("motor_current_unbalance", "share", [], ["10 %"]),
    _limit("overload_setting_115", "share", ["100 %"], ["115 %"]),
)  # fmt: skip

_TRAITS: dict[str, str | int | bool] = {
    "tanks": 2, "prewash": False, "sanitising": "hot water", "booster": "electric", "booster_place": "built in",
    "tank_heat": "electric", "phases": 3, "connection": "delta", "vents": "both ends", "table_turn": False,
    "conveyor": "pawl bar",
    "motor_protection": "overload relay",
}  # fmt: skip
_PLATE = {
    "volts": "208 V", "booster_power": "30 kW", "booster_volts": "208 V", "booster_inlet": "140 °F",
    "rinse_flow": "4.2 gpm", "rinse_pressure": "20 psi", "rinse_pressure_least": "15 psi",
    "rinse_pressure_most": "25 psi", "rinse_temperature": "180 °F", "wash_temperature": "150 °F",
    "wash_motor_amps": "6.8 A", "drive_motor_amps": "1.2 A", "fan_motor_amps": "2.2 A",
    "vent_entrance": "200 cfm", "vent_exit": "400 cfm",
}  # fmt: skip


def _type(name: str, traits: Mapping[str, str | int | bool], **plate: str) -> MachineType:
    return MachineType(id=name, title=name, traits={**_TRAITS, **traits}, plate={**_PLATE, **plate}, basis=BASIS)


MACHINES: dict[str, MachineType] = {
    "delta": _type("delta", {}),
    "wye": _type("wye", {"connection": "wye"}, volts="400 V", booster_volts="400 V", booster_power="27 kW",
                 rinse_flow="15 L/min", rinse_temperature="82 °C", booster_inlet="60 °C"),
    "single": _type("single", {"phases": 1, "connection": "single"}, volts="240 V", booster_volts="240 V",
                    booster_power="15 kW", rinse_flow="2.3 gpm", wash_motor_amps="9.2 A"),
    "steam": _type("steam", {"booster": "steam"}),
    "gas": _type("gas", {"booster": "gas"}, gas_input="100000 BTU/h", rinse_flow="3.0 gpm"),
    "chemical": _type("chemical", {"booster": "none", "sanitising": "chemical"}, rinse_temperature="120 °F"),
}  # fmt: skip
BOOK = Book(
    checks={c.id: c for c in _CHECKS}, limits={limit.id: limit for limit in _LIMITS}, machines=MACHINES
)  # fmt: skip


def machine(name: str = "delta", **own: str) -> Machine:
    """A machine of a type in this book, with figures read from its own plate."""
    return Machine(name, MACHINES[name], own)


def reading(check: str, text: str, stage: int = 0, book: Book = BOOK, name: str | None = None) -> Reading:
    """A reading typed as a technician would: values one after another, or the id of an outcome."""
    spec = book.checks[check].reading
    shown = name or f"{check} at {stage}"
    if spec is None or text in book.checks[check].outcomes:
        return Reading(shown, check, outcome=text, stage=stage)
    texts = text.split() if spec.each else [text]
    values = [parse_quantity(t, spec.quantity, spec.unit) for t in texts]
    return Reading(shown, check, dict(zip(spec.each or [""], values, strict=True)), stage=stage)


def run(machine_: Machine, *typed: tuple[str, str] | tuple[str, str, int], book: Book = BOOK) -> RuleRun:
    """The rules over readings typed as (check, text) or (check, text, stage)."""
    return findings(book, machine_, [reading(t[0], t[1], t[2] if len(t) > 2 else 0, book) for t in typed])


def expect(machine_: Machine, check: str, *typed: tuple[str, str]) -> Expected | None:
    """What is expected of a check after these readings."""
    return expected(BOOK, machine_, [reading(*t) for t in typed], check)
