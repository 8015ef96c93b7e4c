"""Gas burner of a tank: what the meter should show."""

from __future__ import annotations

from diagnose.formulas import said, system_of
from diagnose.physics import gas
from diagnose.rules.facts import Expected, Facts
from diagnose.rules.told import plates_told
from diagnose.units import Quantity, parse_quantity

__all__ = ["expected_clocked"]

RATED_FROM = 0.9  # of the plate's input, as the bands of the check; judgement


def expected_clocked(facts: Facts, check: str) -> Expected | None:
    """The plate's input of the tank burner, and the seconds the meter then takes for a turn of the dial."""
    plate = facts.plate("tank_gas_input")
    if plate is None or plate.si <= 0:
        return None
    supply, system = parse_quantity("7 inWG", "pressure").si, system_of(plate.unit)
    volume = parse_quantity("0.05 m3" if system == "si" else "2 ft3", "volume")
    seconds = volume.si * gas.NATURAL_GAS * gas.meter_factor(supply) / plate.si
    values = {"volume": volume.si, "time": seconds, "heating_value": gas.NATURAL_GAS, "gauge": supply}
    worked = said("gas-clocked", system, **values, temperature=gas.BASE_TEMPERATURE)
    working = (
        *plates_told(facts, "tank_gas_input"),
        *worked,
        "1,030 BTU/ft3 and 7 inWG at the meter are usual for natural gas: ask the supplier.",
    )
    low = Quantity(plate.value * RATED_FROM, plate.unit)
    line = f"{plate}: {volume} in {seconds:.0f} s"
    return Expected((line,), low, None, facts.assumed("tank_gas_input"), "the plate, and usual natural gas", working)
