"""Heat balance: when it speaks, when it leaves the reading to its plain band."""

from __future__ import annotations

import pytest

from tests.rulebook import expect, machine, run

PANEL, INLET, AMPS = "rinse_thermometer.panel_reading", "supply_water.inlet_temperature", "booster_electric.line_amps"
PRESSURE, FLOW, BALANCE = "rinse_gauge.flow_pressure", "rinse_arms.flow_measured", "booster_electric.heat_balance"


def _of_panel(*typed: tuple[str, str] | tuple[str, str, int], kind: str = "delta"):  # type: ignore[no-untyped-def]
    done = run(machine(kind), *typed)
    stage = max(t[2] if len(t) > 2 else 0 for t in typed)
    return next(f for f in done.findings if f"{PANEL} at {stage}" in f.counts)


@pytest.mark.parametrize(
    ("typed", "outcome"),
    [
        # one element out: 140 + 33 = 173
        ([(PANEL, "172"), (INLET, "140"), (AMPS, "48 48 83")], "agrees"),
        # cold supply, booster full: 110 + 49 = 159
        ([(PANEL, "159"), (INLET, "110"), (AMPS, "83 83 83")], "agrees"),
        ([(PANEL, "159"), (INLET, "110")], "agrees"),
        # full current, rated flow, yet cold: 140 + 49 = 189
        ([(PANEL, "165"), (INLET, "140"), (AMPS, "83 83 83")], "reads_below_balance"),
        # 110 + 49 = 159 can't read 182
        ([(PANEL, "182"), (INLET, "110"), (AMPS, "83 83 83")], "reads_above_balance"),
        ([(PANEL, "182"), (INLET, "110")], "reads_above_balance"),
        # too much pressure makes it colder: 4.2 × √(32/20) = 5.3 gpm, 38 F°
        ([(PANEL, "174"), (INLET, "136"), (AMPS, "83 83 83"), (PRESSURE, "32")], "agrees"),
        ([(PANEL, "172"), (INLET, "140"), (AMPS, "83 83 83"), (FLOW, "6.2")], "agrees"),
        # nothing heats: what comes in goes out
        ([(PANEL, "138"), (INLET, "140"), (AMPS, "0 0 0")], "agrees"),
    ],
)
def test_balance(typed: list[tuple[str, str]], outcome: str) -> None:
    found = _of_panel(*typed)
    assert found.check == BALANCE
    assert found.outcome == outcome
    assert f"{INLET} at 0" in found.consults


def test_says_the_sum() -> None:
    found = _of_panel((PANEL, "172"), (INLET, "140"), (AMPS, "48 48 83"))
    assert found.working[0].startswith("19.95 kW × 3412 ÷ (500 × 4.2 gpm) = 32.42 F° of rise")
    assert found.working[1] == "140 + 32.42 = 172.4 °F; you read 172 °F: they agree."
    assert found.counts == (f"{PANEL} at 0",)


@pytest.mark.parametrize(
    "typed",
    [
        [(PANEL, "172")],  # no inlet
        [(PANEL, "172"), (INLET, "140")],  # below what full heat gives, but the currents were not read
        [(PANEL, "184"), (INLET, "140"), (AMPS, "83 83 83")],  # in order; a booster cycles at its thermostat
        [(PANEL, "172"), (INLET, "140"), (AMPS, "60 40 95")],  # currents that say nothing
        [(PANEL, "172", 1), (INLET, "140", 0)],  # the inlet of before a repair
    ],
)
def test_leaves_the_reading_to_the_plain_band(typed: list[tuple[str, str]]) -> None:
    assert _of_panel(*typed).rule == "plain_band"


def test_celsius_and_wye() -> None:
    found = _of_panel((PANEL, "70 C"), (INLET, "45 C"), (AMPS, "39 39 39"), kind="wye")
    assert found.outcome == "agrees"
    assert "14.35" in found.working[0]


def test_single_phase_current_is_power() -> None:
    found = _of_panel((PANEL, "162"), (INLET, "140"), ("booster_electric.line_amps_single", "31"), kind="single")
    assert found.outcome == "agrees"


def test_no_electric_booster_no_balance() -> None:
    assert _of_panel((PANEL, "172"), (INLET, "140"), kind="steam").rule == "plain_band"


def test_what_the_booster_can_make_stands_beside_the_band() -> None:
    """Not while the inlet is unread; then with the figures it stands on, and less with an element out."""
    assert len(expect(machine(), PANEL).lines) == 1  # type: ignore[union-attr]
    full = expect(machine(), PANEL, (INLET, "110"))
    assert full is not None
    assert full.lines[1].startswith("from 110 °F this booster makes about 159 °F at most")
    assert "30 kW × 3412 ÷ (500 × 4.2 gpm) = 48.74 F°" in full.working
    assert any(line.startswith("Rated final-rinse flow: 4.2 gpm") for line in full.working)
    part = expect(machine(booster_power="20 kW"), PANEL, (INLET, "110"))
    assert part is not None
    assert "142 °F at most" in part.lines[1]
    assert len(expect(machine("chemical"), PANEL, (INLET, "110")).lines) == 1  # type: ignore[union-attr]
