"""Which check or cause is meant by what a trainee types."""

from __future__ import annotations

import pytest

from diagnose.model import load_book
from diagnose.practice.finding import Listing
from diagnose.terminal.refusals import Refused, Told

IDS = ["booster_electric.line_amps", "pump.drive_look", "rinse_gauge.flow_pressure", "booster_electric.feed_present"]


@pytest.fixture
def listing() -> Listing:
    texts = {
        "booster_electric.line_amps": ["Booster line currents"],
        "booster_electric.feed_present": ["Booster line volts"],
        "pump.drive_look": ["Pump drive"],
        "rinse_gauge.flow_pressure": ["Rinse pressure"],
    }
    return Listing(load_book(), IDS, texts, "check")


def test_a_number_is_that_of_the_list_shown_last(listing: Listing) -> None:
    whole = listing.ids
    with pytest.raises(Refused, match="list shows them all"):
        listing.meant("4", 80)  # nothing with numbers stands on the screen
    with pytest.raises(Told):
        listing.meant("list", 80)
    assert listing.meant("4", 80) == whole[3]
    with pytest.raises(Told) as told:
        listing.meant("line", 80)
    offered = [line.split(None, 1) for line in told.value.lines[1:]]
    assert [number for number, _ in offered] == [str(n) for n in range(1, len(offered) + 1)]
    titles = {"Booster line currents": IDS[0], "Booster line volts": IDS[3]}
    assert listing.meant("2", 80) == titles[offered[1][1]]
    with pytest.raises(Refused):
        listing.meant("4", 80)  # the short list has no fourth
    listing.forget()
    with pytest.raises(Refused, match="list shows them all"):
        listing.meant("2", 80)


def test_the_whole_list_shown_again_counts_again(listing: Listing) -> None:
    with pytest.raises(Told):
        listing.meant("line", 80)
    with pytest.raises(Told):
        listing.meant("1-3", 80)
    assert listing.meant("4", 80) == listing.ids[3]
