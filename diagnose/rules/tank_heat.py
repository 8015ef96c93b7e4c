"""Heat going into a tank: from its heater's currents, its steam or its gas, else what the plate says."""

from __future__ import annotations

import math
from dataclasses import dataclass

from diagnose.formulas import said, system_of
from diagnose.physics.element_bank import BankState, bank_power
from diagnose.physics.steam import condensate_power, steam_temperature_at_gauge
from diagnose.rules.bank_amps import line_amps
from diagnose.rules.bank_heat import POWER_RATED, POWER_READ, STATES, SURE, heat_of_currents, heat_of_one_current
from diagnose.rules.bank_ohms import terminal_ohms
from diagnose.rules.bank_supply import Bank, fed
from diagnose.rules.booster_supply import Heat, Supply
from diagnose.rules.facts import Facts, Silent
from diagnose.rules.instruments import spread
from diagnose.units import show_number

__all__ = ["CLOCKED", "CONDENSATE", "RINSE", "WASH", "Tank", "heat_into", "rated_into"]

UNSURE, ALIKE = 0.1, 1.1  # a state less likely is left out; states that differ no more in heat are one; judgement
COIL_ERROR = 0.10  # of a coil's or injector's rating at another pressure than the plate's; judgement
GAS_SHARE, GAS_ERROR = 0.70, 0.08  # of a tank burner's gas that comes into the water, and its error; judgement
MIDDLE = 325.0  # K, a tank half way up: what a coil's steam has before it; judgement
AIR = 101325.0
ASSEMBLY = "tank_heater_electric"
CONDENSATE, COIL = "tank_heater_steam.condensate", "tank_heater_steam.coil_pressure"
MACHINE = "supply_steam.pressure_at_machine"
CLOCKED = "tank_heater_gas.gas_clocked"
_BY_OHMS = {
    "healthy": BankState(),
    "one_element_open": BankState(frozenset({0})),
    "two_elements_open": BankState(frozenset({0, 1})),
    "all_open": BankState(frozenset({0, 1, 2})),
}


@dataclass(frozen=True)
class Tank:
    """One tank of a machine: its plate figures, its limit and its own checks."""

    name: str
    volume: str
    power: str
    limit: str
    settled: str
    time: str
    which: str  # the answer to "which tank stays cold"


WASH = Tank("wash tank", "wash_tank_volume", "tank_power", "wash_tank_least",
            "tank_control.wash_temperature", "tank_control.heat_up_time", "wash_tank")  # fmt: skip
RINSE = Tank("power-rinse tank", "rinse_tank_volume", "rinse_tank_power", "rinse_tank_least",
             "tank_control.rinse_tank_temperature", "tank_control.rinse_heat_up_time", "rinse_tank")  # fmt: skip


def rated_into(facts: Facts, tank: Tank) -> Heat | Silent:
    """What the plate says this tank's heater gives, at the plate's volts or pressure."""
    kind = facts.machine.trait("tank_heat")
    if kind == "gas":
        gas = facts.plate("tank_gas_input") if tank is WASH else None
        if gas is None or gas.si <= 0:
            return Silent("the gas input of this tank's burner must be known")
        words = f"{gas} of gas on the plate, {GAS_SHARE * 100:.0f} % of it into the water"
        return Heat(gas.si * GAS_SHARE, math.hypot(POWER_RATED, GAS_ERROR), False, words, (), ("tank_gas_input",))
    power = facts.plate(tank.power)
    if power is None or power.si <= 0:
        return Silent(f"the heater's power of the {tank.name} must be known")
    if kind != "electric":
        return Heat(power.si, COIL_ERROR, False, f"{power} on the plate", (), (tank.power,))
    supply = fed(facts, Bank(tank.power, "tank_volts", f"heater of the {tank.name}"))
    if isinstance(supply, Silent):
        return supply
    words = f"rated power at the plate's {show_number(supply.plate_volts)} V"
    return Heat(supply.power_by_plate, POWER_RATED, False, words, (), (tank.power, "tank_volts", "volts"))


def heat_into(facts: Facts, tank: Tank) -> Heat | Silent:
    """The heat going into this tank as it was measured; as rated where nothing was, or the other tank's was."""
    kind, said_cold = facts.machine.trait("tank_heat"), facts.chosen(f"{ASSEMBLY}.which_tank")
    if said_cold is not None and said_cold != tank.which:
        return rated_into(facts, tank)
    if kind == "electric":
        return _electric(facts, tank)
    return _gas(facts, tank) if kind == "gas" else _steam(facts, tank, coil=kind == "steam coil")


def _electric(facts: Facts, tank: Tank) -> Heat | Silent:
    supply = fed(facts, Bank(tank.power, "tank_volts", f"heater of the {tank.name}"))
    if isinstance(supply, Silent):
        return supply
    single = facts.now(f"{ASSEMBLY}.line_amps_single")
    if single is not None:
        return heat_of_one_current(supply, single)
    reading = facts.now(f"{ASSEMBLY}.line_amps")
    # Asked for an expectation no rule has run yet: then the currents are judged here.
    finding = facts.finding(f"{ASSEMBLY}.line_amps") or line_amps(facts, ASSEMBLY)
    if reading is None or finding is None or isinstance(finding, Silent):
        measured = _by_ohms(facts, supply)
        if measured is not None:
            return measured
        words = f"rated power at {show_number(supply.volts)} V, currents not read"
        plate = (tank.power, "tank_volts", "volts")
        lines = said("power-at-volts", "us", rated_power=supply.power, rated_voltage=supply.rated_volts,
                     voltage=supply.volts) if supply.read else ()  # fmt: skip
        consults = (supply.read,) if supply.read else ()
        return Heat(supply.power_now, POWER_RATED, supply.read is not None, words, consults, plate, lines)
    if finding.outcome == "none":
        return Heat(0.0, POWER_READ, True, "no current in any line", (reading,))
    # In a wye an open element and a lost line draw alike, and leave the same heat: the state need not be known then.
    likely = [o for o, w in finding.weights.items() if o in STATES and w >= UNSURE]
    told = [heat_of_currents(facts, supply, reading, outcome) for outcome in likely]
    powers = [heat.power for heat in told]
    if not told or sum(finding.weights[o] for o in likely) < SURE or max(powers) > ALIKE * min(powers):
        return Silent("the tank heater's currents do not say clearly what heat is left")
    return told[0]


def _by_ohms(facts: Facts, supply: Supply) -> Heat | None:
    """The heat a bank gives whose ohms say clearly how many of its elements are whole."""
    reading = facts.now(f"{ASSEMBLY}.terminal_ohms")
    finding = facts.finding(f"{ASSEMBLY}.terminal_ohms") or terminal_ohms(facts, ASSEMBLY)
    if reading is None or finding is None or isinstance(finding, Silent):
        return None
    state = _BY_OHMS.get(finding.outcome)
    if state is None or finding.weights[finding.outcome] < SURE:
        return None
    connection = str(facts.machine.trait("connection"))
    power = bank_power(supply.power_now, supply.volts, connection, state)
    share = bank_power(1.0, supply.volts, connection, state)
    words = f"{share * 100:.0f} % of {show_number(supply.power_now / 1e3, 3)} kW by its ohms"
    # Whole elements may still lack a line or a pole: that their heat goes in is then not measured.
    known = finding.outcome != "healthy"
    return Heat(power, POWER_RATED, known, words, (reading, supply.read) if supply.read else (reading,))


def _gas(facts: Facts, tank: Tank) -> Heat | Silent:
    reading, check = facts.now(CLOCKED), facts.check(CLOCKED)
    if reading is None or check is None or tank is not WASH:
        return rated_into(facts, tank)
    own = spread(check, reading.value, reading) / max(reading.value.value, 1e-9)
    words = f"{reading.value} of gas clocked, {GAS_SHARE * 100:.0f} % of it into the water"
    return Heat(reading.value.si * GAS_SHARE, math.hypot(min(own, 0.2), GAS_ERROR), True, words, (reading,))


def _steam(facts: Facts, tank: Tank, coil: bool) -> Heat | Silent:
    """From the condensate weighed; else a clean coil's or injector's rating at the pressure read."""
    rated, plate = rated_into(facts, tank), facts.plate("steam_pressure")
    if isinstance(rated, Silent) or plate is None or plate.si <= 0:
        return rated
    weighed = facts.now(CONDENSATE)
    if coil and weighed is not None:
        power = condensate_power(weighed.value.si, plate.si)
        system = system_of(weighed.value.unit)
        lines = said("condensate-heat", system, condensate=weighed.value.si, gauge=plate.si)
        return Heat(power, COIL_ERROR, True, f"{weighed.value} of condensate", (weighed,), (), lines)
    read = facts.now(COIL) or facts.now(MACHINE)
    if read is None:
        return rated
    share = _share_of_pressure(read.value.si, plate.si, coil)
    words = f"{read.value} of steam for {plate}: {share * 100:.0f} % of {show_number(rated.power / 1e3)} kW, if clean"
    return Heat(rated.power * share, COIL_ERROR, True, words, (read,), (tank.power, "steam_pressure"))


def _share_of_pressure(gauge: float, plate: float, coil: bool) -> float:
    """Share of the rating: of a coil by steam's lead over the water, of a choked nozzle by absolute pressure."""
    if gauge < 0.1 * plate:
        return 0.0
    if not coil:
        return (gauge + AIR) / (plate + AIR)
    return (steam_temperature_at_gauge(gauge) - MIDDLE) / (steam_temperature_at_gauge(plate) - MIDDLE)
