"""The simulated control circuit, breaker and earth-leakage device, against values worked by hand.

Where a value comes from stands beside its check; where none is named it is arithmetic with the constants of the module,
which are judgements and said to be so there.
"""

from __future__ import annotations

import math
from functools import cache

import pytest

from diagnose.simulator import Simulated
from diagnose.simulator.bench import Bench
from diagnose.simulator.control import (
    chain,
    circuit_ohms,
    coil_impedance,
    door_makes,
    draws_in,
    drop_share,
    lost_at,
    shakes_open,
    starts,
)
from diagnose.simulator.control_parts import Coil, Control
from diagnose.simulator.parts import Power
from diagnose.simulator.plant import Plant
from diagnose.simulator.protecting import bears, dark, leak_paths, leakage, megohms, opens
from diagnose.simulator.starting import start_pressed, stopped
from tests.unit.simulator.plates import plate

THREE, ONE_TANK = "two_tank_electric_208", "single_tank_steam_208"
LINKS = tuple(Control().links)


def plant() -> Plant:
    return Plant.built(plate(THREE))


@cache
def found(name: str = "", severity: float = 0.7) -> Bench:
    """A machine with one fault, or a sound one, run once for all tests."""
    kind = ONE_TANK if name.startswith(("control", "door", "operator", "contactor")) else THREE
    return Simulated(plate(kind), ((name, severity),) if name else (), seed=4).bench


# ---- the chain


def test_a_sound_chain_brings_full_volts_to_the_coil() -> None:
    assert list(chain(plant()).values()) == pytest.approx([1.0] * 8)
    assert lost_at(plant()) == ""
    assert starts(plant())


@pytest.mark.parametrize(
    ("link", "dead_from"),
    [("fuse", 1), ("switch", 2), ("stops", 3), ("doors", 4), ("overloads", 5), ("permits", 6), ("start", 7)],
)
def test_volts_end_behind_the_open_link(link: str, dead_from: int) -> None:
    """Kirchhoff: no current flows, so full volts stand before it; behind it only what strays."""
    here = plant()
    here.control.links[link] = False
    volts = list(chain(here).values())
    assert volts[:dead_from] == pytest.approx([1.0] * dead_from)
    assert max(volts[dead_from:]) < 0.1
    assert lost_at(here) == link
    assert not starts(here)


@pytest.mark.parametrize("link", LINKS)
def test_any_open_link_keeps_it_from_starting(link: str) -> None:
    here = plant()
    here.control.links[link] = False
    assert not starts(here)


def test_coils_of_48_volt_amperes_at_120_volts_are_300_ohms() -> None:
    """|Z| = 120 V ** 2 / 48 VA = 300 ohm; resistive 0.35 of it, 105 ohm."""
    z = coil_impedance(plant())
    assert abs(z) == pytest.approx(300.0, rel=1e-3)
    assert z.real == pytest.approx(105.0)


def test_a_burnt_contact_divides_the_volts() -> None:
    """200 ohm before coils of 105 + 281 j ohm: 300 / |305 + 281 j| = 300 / 415 = 0.723; 200 / 415 = 0.482 across it."""
    here = plant()
    here.control.poor["stops"] = 200.0
    volts = chain(here)
    assert volts["switch"] == pytest.approx(1.0)
    assert volts["stops"] == pytest.approx(0.723, abs=0.002)
    assert volts["coil"] == volts["stops"]
    assert drop_share(here)["stops"] == pytest.approx(0.482, abs=0.002)
    assert starts(here)


def test_two_poor_contacts_share_the_loss() -> None:
    """100 ohm each: behind the first |205 + 281 j| / |305 + 281 j| = 348 / 415 = 0.839."""
    here = plant()
    here.control.poor |= {"stops": 100.0, "overloads": 100.0}
    volts = chain(here)
    assert volts["doors"] == pytest.approx(0.839, abs=0.002)
    assert volts["overloads"] == pytest.approx(0.723, abs=0.002)


def test_a_wet_door_switch_carries_too_little() -> None:
    """5 kohm of water: 300 / |5103 + 281 j| = 0.0587 of the volts, and nothing pulls."""
    here = plant()
    here.control.door.ohms = 5000.0
    assert chain(here)["doors"] == pytest.approx(0.0587, abs=0.001)
    assert not starts(here)


def test_the_wrong_tap_gives_208_over_240() -> None:
    """Turns of a 240 V winding on 208 V: 0.867 of the volts, 104 V of 120."""
    here = plant()
    here.power.control_share = 208.0 / 240.0
    assert chain(here)["coil"] * 120.0 == pytest.approx(104.0)


@pytest.mark.parametrize(
    ("gap", "pressed", "shaken", "makes"),
    [
        (0.004, False, True, True),  # well in reach, shaken or not
        (0.0083, False, False, True),  # at the edge it makes at rest,
        (0.0083, False, True, False),  # and lets go as the pumps shake it
        (0.0105, False, False, False),
        (0.0105, True, False, True),  # a hand on the door brings the magnet near enough
        (0.0125, True, False, False),
    ],
)
def test_a_magnet_makes_within_its_reach(gap: float, pressed: bool, shaken: bool, makes: bool) -> None:
    control = Control()
    control.door.gap = gap
    assert door_makes(control, pressed, shaken) is makes


@pytest.mark.parametrize(
    ("coil", "share", "goes_in"),
    [
        (Coil(), 1.0, True),
        (Coil(), 0.55, False),
        (Coil(label=2.0), 1.0, False),  # 240 V coil on 120 V: half its volts, a quarter of its pull
        (Coil(ohms=1e9), 1.0, False),
        (Coil(free=0.5), 1.0, False),
    ],
)
def test_what_draws_in(coil: Coil, share: float, goes_in: bool) -> None:
    assert draws_in(coil, share) is goes_in


def test_a_short_shows_beside_the_coils() -> None:
    """Copper of the coils 0.3 x 300 = 90 ohm; 1 ohm beside it makes 90 / 91 = 0.989 ohm."""
    here = plant()
    assert circuit_ohms(here) == pytest.approx(90.0, rel=0.01)
    here.control.short_ohms = 1.0
    assert circuit_ohms(here) == pytest.approx(0.989, abs=0.001)


@pytest.mark.parametrize(
    ("fault", "severity", "press", "back"),
    [
        ("control_circuit.secondary_fuse", 0.7, "dark_dead", "dark_then_fuse"),
        ("control_circuit.stop_pressed", 0.7, "lamps_only", "never_stopped"),
        ("control_circuit.stop_pressed", 0.3, "all_runs", "start_at_once"),
        ("control_circuit.hold_contact_open", 0.7, "while_held", "never_stopped"),
        ("control_circuit.wire_loose", 0.3, "all_runs", "a_knock"),
        ("door_interlock.magnet_shifted", 0.3, "all_runs", "door_or_water"),
        ("operator_panel.lamp_dead", 0.7, "dark_runs", "never_stopped"),
        ("contactor.pump_coil_open", 0.7, "part_still", "never_stopped"),
        ("breaker_earth_leakage.screw_hot", 0.7, "dark_dead", "breaker_reset"),
    ],
)
def test_start_and_stop_follow_from_the_parts(fault: str, severity: float, press: str, back: str) -> None:
    bench = found(fault, severity)
    assert start_pressed(bench) == press
    assert stopped(bench)[1] == back


def test_nothing_shakes_a_sound_machine_open() -> None:
    bench = found()
    assert (shakes_open(bench.plant), start_pressed(bench), stopped(bench)) == ("", "all_runs", ("", "never_stopped"))


# ---- the feed


def test_a_bimetal_adds_heat_to_that_of_the_current() -> None:
    """A screw that gives half the trip heat leaves the root of a half of the current: 0.707."""
    power = Power(208.0, 3, 60.0)
    assert bears(power) == 1.0
    power.screw_heat = 0.5
    assert bears(power) == pytest.approx(math.sqrt(0.5))


def test_a_warm_panel_takes_from_the_breaker() -> None:
    """20 K over 40 degC at 1.2 % of the trip heat a kelvin: the root of 0.76, 0.872."""
    power = Power(208.0, 3, 60.0, panel_air=333.15)
    assert bears(power) == pytest.approx(0.872, abs=0.001)


def test_megohms_in_parallel() -> None:
    """Five branches at 50, one at 20 and two at 5 megohms: 1 / (5/50 + ...) by Kirchhoff."""
    here = plant()
    whole = sum(1.0 / ohms for ohms in leak_paths(here).values())
    assert megohms(here) == pytest.approx(1.0 / whole)
    here.power.wire_ohms = 1000.0
    assert megohms(here) == pytest.approx(1.0 / (whole - 1 / 5e7 + 1e-3))
    assert megohms(here) < 1000.0


def test_a_sound_machine_leaks_a_few_milliamperes_and_a_wet_element_many() -> None:
    """120 V to earth: 10 kohm at work leaks 20 x 120 / 10 000 = 0.24 A beside the natural 2.5 mA and the rest."""
    here = plant()
    sound = leakage(here)
    assert 0.001 < sound < 0.006
    here.booster.heater.earth_ohms = 1e4
    assert leakage(here) == pytest.approx(0.24 + sound, abs=0.001)


def test_a_start_of_every_kind_is_told_by_its_moment() -> None:
    moments = {
        "breaker_earth_leakage.lines_touch": ("breaker", "at_reset"),
        "breaker_earth_leakage.start_peak": ("breaker", "motor_on"),
        "breaker_earth_leakage.others_on_feed": ("breaker", "under_load"),
        "breaker_earth_leakage.box_wet": ("leakage_device", "after_wet"),
        "breaker_earth_leakage.coil_earthed": ("leakage_device", "rinse_on"),
        "breaker_earth_leakage.surge_once": ("leakage_device", "once"),
        "booster_electric.element_earthed": ("leakage_device", "heat_on"),
        "pump_motor.winding_leaks": ("leakage_device", "motor_on"),
    }
    assert {name: opens(found(name)) for name in moments} == moments


def test_dark_where_it_has_opened_and_stays_so() -> None:
    assert dark(found("breaker_earth_leakage.screw_hot"))
    assert not dark(found("breaker_earth_leakage.surge_once"))
    assert not dark(found())
