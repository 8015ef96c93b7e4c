"""Sanitiser strip by the code's table."""

from __future__ import annotations

import pytest

from tests.rules.test_sanitiser_feed import STRIP, chemical, done, expect

PH, PROBE, PANEL = (
    "water_quality.rinse_ph",
    "rinse_thermometer.reference_reading_chemical",
    "rinse_thermometer.panel_reading_chemical",
)


@pytest.mark.parametrize(
    ("strip", "ph", "heat", "outcome"),
    [
        ("50 ppm", "9", "88 F", "not_here"),  # pH 9: 100 °F wanted
        ("50 ppm", "7", "88 F", "good"),  # pH 7: 75 °F
        ("50 ppm", "9", "120 F", "good"),
        ("50 ppm", "11", "130 F", "not_here"),  # no row over pH 10
        ("150 ppm", "9", "80 F", "strong"),  # 100 mg/L and more: 55 °F
        ("25 ppm", "7", "130 F", "weak"),
        ("0 ppm", "7", "130 F", "none"),
    ],
)
def test_same_strip_other_water(strip: str, ph: str, heat: str, outcome: str) -> None:
    found = next(f for f in done(chemical(), (STRIP, strip), (PH, ph), (PROBE, heat)).findings if f.check == STRIP)
    assert found.outcome == outcome
    assert set(found.consults) == {f"{PH} at 0", f"{PROBE} at 0"}


def test_near_the_row_it_is_no_verdict() -> None:
    found = next(f for f in done(chemical(), (STRIP, "50"), (PH, "9"), (PROBE, "100 F")).findings if f.check == STRIP)
    assert 0.15 < found.weights["not_here"] < 0.85


def test_other_plate_other_outcome() -> None:
    assert done(chemical(sanitiser_wanted="100 ppm"), (STRIP, "50 ppm")).findings[0].outcome == "weak"
    assert done(chemical(sanitiser_wanted="50 ppm"), (STRIP, "50 ppm")).findings[0].outcome == "good"


def test_unread_temperature_and_ph_are_said() -> None:
    found = done(chemical(), (STRIP, "50 ppm")).findings[0]
    assert any("Not read: temperature and pH" in line for line in found.working)


def test_celsius_goes_by_the_codes_own_figure() -> None:
    found = next(f for f in done(chemical(), (STRIP, "50"), (PH, "9"), (PANEL, "60 C")).findings if f.check == STRIP)
    assert any("asks for 38 °C at pH 9" in line for line in found.working)


def test_silent_without_a_strip() -> None:
    assert not any(f.check == STRIP for f in done(chemical(), (PH, "9")).findings)


def test_expected_names_the_row() -> None:
    told = expect(chemical(), STRIP, (PH, "9"))
    assert told is not None
    assert "100 °F at pH 9" in told.lines[1]
    assert told.working
    unread = expect(chemical(), STRIP)
    assert unread is not None
    assert "75 °F at pH 8 or less, 100 °F at pH 10 or less" in unread.lines[1]


def test_expected_tells_what_the_dose_must_give() -> None:
    told = expect(chemical(), STRIP, ("sanitiser_feed.per_rack", "2 mL"), ("sanitiser_feed.water_per_rack", "1.1 gal"))
    assert told is not None
    assert any(line.endswith("= 25.22 ppm by the dose that is fed.") for line in told.working)


def test_contact_time_stands_beside_it() -> None:
    plate = chemical(rinse_zone="12 in", conveyor_speed="6 ft/min")
    found = next(f for f in done(plate, (STRIP, "60"), (PH, "7"), (PROBE, "130 F")).findings if f.check == STRIP)
    assert any(line.startswith("Contact: 7 s wanted") and "10.0 s under the rinse" in line for line in found.working)
