"""Gas booster: the heat its clocked input puts into the water, and the rise that must come of it."""

from __future__ import annotations

import math

from diagnose.formulas import said, system_of
from diagnose.model import Finding
from diagnose.physics import gas
from diagnose.rules.booster_rise import expected_rise, judge_rise
from diagnose.rules.booster_supply import Heat
from diagnose.rules.facts import Expected, Facts, Silent
from diagnose.rules.instruments import spread
from diagnose.rules.told import plates_told, shown
from diagnose.units import Quantity, parse_quantity

__all__ = ["EFFICIENCY", "expected_clocked", "expected_gas_rise", "heat_now", "rated_heat", "rise"]

EFFICIENCY = 0.75  # county plan check guide EHD 16-01, appendix E
EFFICIENCY_ERROR = 0.05  # of it: boosters that do not condense run at some 70 to 80 %; judgement
INPUT_ERROR = 0.06  # of a rated input that nobody clocked; judgement
CLOCKED, RISE = "booster_gas.gas_clocked", "booster_gas.rise"
MANIFOLD = "booster_gas.manifold_pressure"


def heat_now(facts: Facts) -> Heat | Silent:
    """Three quarters of the input clocked at this stage, or else of the plate's."""
    reading, check = facts.now(CLOCKED), facts.check(CLOCKED)
    if reading is None or check is None:
        return rated_heat(facts)
    own = spread(check, reading.value, reading) / max(reading.value.value, 1e-9)
    error = math.hypot(min(own, 0.2), EFFICIENCY_ERROR)
    words = f"{reading.value} of gas clocked, {EFFICIENCY * 100:.0f} % of it into the water"
    return Heat(reading.value.si * EFFICIENCY, error, True, words, (reading,))


def rated_heat(facts: Facts) -> Heat | Silent:
    """Three quarters of the plate's input."""
    plate = facts.plate("gas_input")
    if plate is None or plate.si <= 0:
        return Silent("the booster's gas input must be known")
    words = f"{plate} of gas on the plate, {EFFICIENCY * 100:.0f} % of it into the water"
    error = math.hypot(INPUT_ERROR, EFFICIENCY_ERROR)
    return Heat(plate.si * EFFICIENCY, error, False, words, (), ("gas_input",))


def rise(facts: Facts) -> Finding | Silent | None:
    """Judge the rise over the gas booster by the input clocked at the meter.

    Purpose: gas that burns in full and water that stays cold is an exchanger that does not take the heat;
    a rise that is as small as the input is no fault of the exchanger.
    Formula: rise = 0.75 x BTU/h / (500 x gpm); under 80 % of it the heat is not taken, under 85 % of the
    rated rise the booster gives too little.
    Source: conservation of energy; 75 % of county plan check guide EHD 16-01; 80 and 85 % are judgement.
    Fires: single_tank_gas_208 (gas_input = 100000 BTU/h): booster_gas.gas_clocked = 99000 BTU/h;
      rinse_arms.flow_measured = 3.0 gpm; booster_gas.rise = 27 F -> short_for_input
    Silent: single_tank_gas_208: booster_gas.gas_clocked = 99000 BTU/h
    """
    return judge_rise(facts, RISE, heat_now(facts), rated_heat(facts))


def expected_gas_rise(facts: Facts, check: str) -> Expected | None:
    """The rise that the input clocked, or the plate's, gives the flow there is."""
    return expected_rise(facts, heat_now(facts))


def expected_clocked(facts: Facts, check: str) -> Expected | None:
    """The plate's input, and the seconds the meter then takes for two cubic feet."""
    plate = facts.plate("gas_input")
    if plate is None or plate.si <= 0:
        return None
    low = Quantity(plate.value * 0.9, plate.unit)
    supply = parse_quantity("7 inWG", "pressure").si
    volume = parse_quantity("0.05 m3" if system_of(plate.unit) == "si" else "2 ft3", "volume")
    seconds = volume.si * gas.NATURAL_GAS * gas.meter_factor(supply) / plate.si
    values = {"volume": volume.si, "time": seconds, "heating_value": gas.NATURAL_GAS, "gauge": supply}
    worked = said("gas-clocked", system_of(plate.unit), **values, temperature=gas.BASE_TEMPERATURE)
    lines = [f"{plate}: {volume} in {seconds:.0f} s"]
    stands = "1,030 BTU/ft3 and 7 inWG at the meter are usual for natural gas: ask the supplier."
    working = [*plates_told(facts, "gas_input"), *worked, stands]
    manifold, rated = facts.now(MANIFOLD), facts.plate("gas_pressure")
    if manifold is not None and rated is not None and rated.si > 0:
        burnt = gas.input_at_manifold(plate.si, manifold.value.si, rated.si)
        lines.append(f"sound jets at {manifold.value}: {shown(burnt, 'power', plate.unit.symbol)}")
        given = {"rated_input": plate.si, "manifold": manifold.value.si, "rated_manifold": rated.si}
        working += [*plates_told(facts, "gas_pressure"), *said("gas-manifold", system_of(plate.unit), **given)]
    basis = "the plate, and usual natural gas"
    return Expected(tuple(lines), low, None, facts.assumed("gas_input"), basis, tuple(working))
