"""Supply bands: ANSI C84.1 (480 V from a utility's page, other rows from memory, confidence high) and IEC 60038."""

from __future__ import annotations

import pytest

from diagnose.physics.feeders import BANDS, drop_share, supply_band


@pytest.mark.parametrize(
    ("nominal", "most", "service", "used"),
    [(120, 126, 114, 108), (208, 218, 197, 187), (240, 252, 228, 216), (480, 504, 456, 432)],
)
def test_range_a(nominal: int, most: float, service: float, used: float) -> None:
    assert BANDS[nominal][0] == (most, service, used)
    for place, least in (("at the service", service), ("where used", used)):
        assert supply_band(least, str(nominal), place) == "range A"
        assert supply_band(most, str(nominal), place) == "range A"
        assert supply_band(least - 0.5, str(nominal), place) == "range B"


@pytest.mark.parametrize(
    ("nominal", "most", "service", "used"),
    [(120, 127, 110, 104), (208, 220, 191, 180), (240, 254, 220, 208), (480, 508, 440, 416)],
)
def test_range_b(nominal: int, most: float, service: float, used: float) -> None:
    assert BANDS[nominal][1] == (most, service, used)
    for place, least in (("at the service", service), ("where used", used)):
        assert supply_band(least, str(nominal), place) == "range B"
        assert supply_band(least - 0.5, str(nominal), place) == "low"
        assert supply_band(most + 0.5, str(nominal), place) == "high"


def test_service_band_is_five_per_cent() -> None:
    """480 V: 456 to 504 V at the service, 432 V after a further 5 % inside: the row seen in print."""
    assert BANDS[480][0] == (480 * 1.05, 480 * 0.95, 480 * 0.90)
    assert supply_band(450, "480", "at the service") == "range B"  # low at the service
    assert supply_band(440, "480", "where used") == "range A"


def test_public_supply_of_50_hertz() -> None:
    """230/400 V ± 10 %."""
    assert supply_band(360, "400", "where used") == "range A"
    assert supply_band(359, "400", "where used") == "low"
    assert supply_band(441, "400", "where used") == "high"


def test_drop_of_a_branch() -> None:
    """NEC notes: 3 % for a branch, 5 % in all."""
    assert drop_share(480, 465.6) == pytest.approx(0.03)


@pytest.mark.parametrize(
    ("volts", "nominal", "place"), [(0, "480", "where used"), (480, "470", "where used"), (480, "480", "here")]
)
def test_nonsense_is_refused(volts: float, nominal: str, place: str) -> None:
    with pytest.raises(ValueError, match=r"voltage|use one of"):
        supply_band(volts, nominal, place)
