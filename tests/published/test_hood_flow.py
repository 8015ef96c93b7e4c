"""International Mechanical Code, section 507.3.4.2 as cited: a hood over a dishwasher takes 100 cfm per foot.

A six-foot hood so takes 600 cfm net, which the types that stand under one have on their plates.
"""

from __future__ import annotations

import pytest

from diagnose.model import Machine, load_book

BOOK = load_book()
HOODS = [name for name, type_ in BOOK.machines.items() if type_.traits["vents"] == "hood"]
PER_FOOT = 100.0  # cfm


@pytest.mark.parametrize("name", HOODS)
def test_the_plates_of_machines_under_a_hood_ask_for_a_hood_of_usual_length(name: str) -> None:
    machine = Machine("m", BOOK.machines[name])
    ends = [machine.plate(end) for end in ("vent_entrance", "vent_exit")]
    flow = sum(each.value for each in ends if each is not None)
    assert flow == pytest.approx(PER_FOOT * 6, rel=0.35)


def test_the_check_at_the_hood_leaves_the_last_word_to_the_local_code() -> None:
    text = " ".join(BOOK.checks["exhaust_duct.hood_speed"].steps)
    assert "the local code governs" in text
    assert set(BOOK.checks["exhaust_duct.hood_speed"].fits["vents"]) == {"hood"}
