"""Which bank the readings of an assembly belong to, and what feeds it."""

from __future__ import annotations

from diagnose.model import Machine, load_book
from diagnose.rules.bank_supply import BANKS, bank_of, fed, shares, supply_line
from diagnose.rules.facts import Silent, gather
from tests.rulebook import reading

SHIPPED = load_book()
WHICH = "tank_heater_electric.which_tank"


def _machine(**own: str) -> Machine:
    return Machine("m", SHIPPED.machines["two_tank_electric_208"], own)


def test_of_two_tanks_the_one_that_stays_cold() -> None:
    own = _machine()
    alone = gather(SHIPPED, own, [])
    assert bank_of(alone, "tank_heater_electric").power == "tank_power"
    told = gather(SHIPPED, own, [reading(WHICH, "rinse_tank", book=SHIPPED)])
    assert bank_of(told, "tank_heater_electric").power == "rinse_tank_power"
    assert bank_of(told, "booster_electric").power == "booster_power"


def test_volts_of_the_elements_before_volts_of_the_supply() -> None:
    facts = gather(SHIPPED, _machine(tank_power="20 kW", volts="208 V", tank_volts="240 V"), [])
    supply = fed(facts, BANKS["tank_heater_electric"])
    assert not isinstance(supply, Silent)
    assert supply.rated_volts == 240
    assert round(supply.power_now) == 15022
    assert supply_line(supply, "delta", 41.7).endswith("(elements for 240 V: 75 % of 20 kW).")
    plain = fed(gather(SHIPPED, _machine(tank_power="20 kW", volts="208 V"), []), BANKS["tank_heater_electric"])
    assert not isinstance(plain, Silent)
    assert plain.rated_volts == 208


def test_silence_names_the_heater() -> None:
    answer = fed(gather(SHIPPED, _machine(tank_power="0 kW"), []), BANKS["tank_heater_electric"])
    assert isinstance(answer, Silent)
    assert "tank heater's power" in answer.why


def test_shares_sum_to_one() -> None:
    assert shares(a=1.0, b=3.0) == {"a": 0.25, "b": 0.75}
