"""Panel and second thermometer in the same rinse."""

from __future__ import annotations

import pytest

from tests.rules.test_booster_rise import found, run

PANEL, REFERENCE, COMPARED = (
    "rinse_thermometer.panel_reading",
    "rinse_thermometer.reference_reading",
    "rinse_thermometer.compared",
)
TWO = "two_tank_electric_208"


@pytest.mark.parametrize(
    ("panel", "reference", "outcome"),
    [
        ("165", "184", "panel_low"),
        ("203", "186", "panel_high"),
        ("181", "180", "agree"),
        ("165", "166", "agree"),  # a rinse that is truly cold shows on both
        ("203", "202", "agree"),
        ("74 C", "84 C", "panel_low"),
    ],
)
def test_which_of_the_two_lies(panel: str, reference: str, outcome: str) -> None:
    finding = found(COMPARED, TWO, {PANEL: panel, REFERENCE: reference})
    assert finding.outcome == outcome
    assert finding.counts == (PANEL,)
    assert finding.consults == (REFERENCE,)


def test_the_reference_is_still_judged_by_its_band() -> None:
    done = run(TWO, {PANEL: "165", REFERENCE: "166"})
    outcomes = {f.check: f.outcome for f in done.findings}
    assert outcomes[REFERENCE] == "low"
    assert outcomes[COMPARED] == "agree"


def test_what_sound_instruments_may_differ_by_is_no_verdict() -> None:
    weights = found(COMPARED, TWO, {PANEL: "178", REFERENCE: "182"}).weights
    assert weights["agree"] > 0.5
    assert weights["panel_low"] > weights["panel_high"]
    assert found(COMPARED, TWO, {PANEL: "174", REFERENCE: "182"}).weights["panel_low"] > 0.9


def test_working_says_the_difference_and_what_is_allowed() -> None:
    us = found(COMPARED, TWO, {PANEL: "165", REFERENCE: "184"})
    assert us.working[:2] == (
        "Panel 165 °F, second thermometer 184 °F: -19.0 F°.",
        "Sound instruments of these kinds may differ by up to 4.0 F°.",
    )
    metric = found(COMPARED, TWO, {PANEL: "75 C", REFERENCE: "85 C"})
    assert metric.working[0].endswith("-10.0 C°.")


def test_silent_without_the_second_thermometer() -> None:
    done = run(TWO, {PANEL: "165"})
    assert not [f for f in done.findings if f.check == COMPARED]
    assert any("second thermometer" in f.silent for f in done.firings)
    assert not [f for f in run(TWO, {REFERENCE: "165"}).findings if f.check == COMPARED]


def test_a_chemical_machine_has_its_own_pair() -> None:
    typed = {f"{PANEL}_chemical": "112", f"{REFERENCE}_chemical": "129"}
    assert found(COMPARED, "single_tank_chemical_208", typed).outcome == "panel_low"
