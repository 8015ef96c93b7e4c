"""Food Code: what a kitchen does while its machine does not sanitise, and from which figures on it may go on.

4-501.110 (wash water), 4-501.111 and 4-703.11(A) (hot water by hand), 4-501.112 (final rinse), 4-501.114(A) and
4-703.11(C) (chlorine), 4-703.11(B) (160 °F at the ware).
"""

from __future__ import annotations

import re

import pytest

from diagnose.model import Machine, MachineType, Meanwhile, load_book
from diagnose.model.machine import fits
from diagnose.model.telephone import meanwhile
from diagnose.physics.chlorine import chlorine_verdict, contact_time_least
from diagnose.units import parse_quantity

BOOK = load_book()
KINDS = list(BOOK.machines.values())
HAND_WARM = parse_quantity("100 °F", "temperature", "°F").si  # about as warm as hands
WORDS = {"ten": 10.0}


def said(complaint: str, kind: MachineType) -> Meanwhile:
    found = meanwhile(BOOK.complaints[complaint], Machine("", kind))
    assert found is not None
    return found


def every_sentence() -> list[str]:
    return [text for c in BOOK.complaints.values() for each in c.until for text in each.say]


def test_chlorine_by_hand_is_strong_warm_and_long_enough() -> None:
    told = {text for text in every_sentence() if "ppm" in text}
    assert len(told) == 1, "one sentence for all complaints"
    match = re.search(r"(\w+) seconds in chlorine sanitiser of (\d+) ppm, in hand-warm", told.pop())
    assert match is not None
    strength, seconds = float(match[2]), WORDS[match[1]]
    for ph in (7.0, 8.0, 9.0, 10.0):
        assert chlorine_verdict(strength, ph, HAND_WARM) == "enough"
        assert seconds >= contact_time_least("chlorine", strength, ph, HAND_WARM)
    assert chlorine_verdict(strength - 1.0, 9.0, HAND_WARM) != "enough"


def test_hot_water_by_hand_is_171_for_30_seconds_and_no_hands_in_it() -> None:
    told = {text for text in every_sentence() if "171" in text}
    assert len(told) == 1
    (text,) = told
    assert "30 seconds" in text
    assert "no hands" in text
    celsius = (float(re.findall(r"(\d+) degrees", text)[0]) - 32) / 1.8
    assert round(celsius) == 77  # 4-501.111 prints 77 °C beside 171 °F


@pytest.mark.parametrize("kind", KINDS, ids=lambda kind: kind.id)
def test_wash_water_a_kitchen_waits_for_is_the_codes(kind: MachineType) -> None:
    least = 120 if kind.traits["sanitising"] == "chemical" else 160 if kind.traits["tanks"] == 1 else 150
    assert re.findall(r"\b1\d0\b", " ".join(said("wash_cold", kind).say)) == [str(least)]


@pytest.mark.parametrize("kind", KINDS, ids=lambda kind: kind.id)
def test_a_machine_that_does_not_sanitise_is_not_relied_on(kind: MachineType) -> None:
    for name in ("rinse_cold", "rinse_none", "rinse_pressure_low", "sanitiser_weak"):
        if fits(Machine("", kind), BOOK.complaints[name].fits):
            told = said(name, kind)
            assert told.use != "as usual"
            assert "sanitise" in " ".join(told.say)


@pytest.mark.parametrize("kind", [k for k in KINDS if k.traits["sanitising"] == "hot water"], ids=lambda kind: kind.id)
def test_hot_rinse_within_its_band_is_relied_on(kind: MachineType) -> None:
    """4-501.112: 180 to 194 °F at the manifold; 4-703.11(B): 160 °F at the ware."""
    assert "between 180 and 194" in said("rinse_pressure_high", kind).say[0]
    assert "180 or more" in said("rinse_runs_on", kind).say[0]
    assert said("rinse_hot", kind).use == "stop"
    assert "Over 194" in said("rinse_hot", kind).say[0]
    assert said("rinse_cold", kind).use == "stop"
    assert "160 degrees" in said("gauge_disbelieved", kind).say[0]
