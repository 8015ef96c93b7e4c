"""FDA Food Code 4-204.117: detergents and sanitisers are dispensed automatically, with a visual check or an alarm.

So a look that needs no tool must tell which chemical stays away, on every machine, and an alarm must be read as one.
"""

from __future__ import annotations

import pytest

from diagnose.inference import build_tree
from diagnose.model import Machine, load_book

BOOK = load_book()
LOOK, BOX = "chemical_feeds.which_feed", "chemical_feeds.box_lamp"


def test_the_look_is_one_without_tools() -> None:
    check = BOOK.checks[LOOK]
    assert check.aloud
    assert (check.open, check.who) == (["none"], "operator")
    assert not check.cautions


@pytest.mark.parametrize("kind", sorted(BOOK.machines))
def test_every_machine_has_feeds_that_can_stay_away(kind: str) -> None:
    tree = build_tree(BOOK, Machine("x", BOOK.machines[kind]))
    causes = tree.causes_under("chemical_no_feed")
    assert {"chemical_feeds.box_unpowered", "chemical_feeds.signal_missing", "detergent_feed.stock_out"} <= set(causes)
    chemical = BOOK.machines[kind].traits["sanitising"] == "chemical"
    assert ("sanitiser_feed.stock_empty" in causes) == chemical


def test_a_blinking_alarm_is_read_as_a_held_feed() -> None:
    rows = BOOK.checks[BOX].shows
    blinking = {row for row, shown in rows.items() if "blinks" in shown}
    assert blinking == {"chemical_feeds.alarm_lockout"}
