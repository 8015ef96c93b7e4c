"""U.S. Navy training manuals NAVEDTRA 14076 (Engineman) and NAVEDTRA 14164 (Mess Management Specialist), ch. 4.

The inspection list of scullery machines names the thermostat that permits the start, and the rinse tank's thermostat
stops the machine below its figure. So a machine that waits for heat is no fault, and one that waits although it is hot
is: both belong to a machine that does not start, and only the first is put down to its design.
"""

from __future__ import annotations

from pathlib import Path

import pytest

from diagnose.batch.cases import TechnicianCase, assessed, read_cases
from diagnose.inference import build_tree
from diagnose.model import Machine, load_book

BOOK = load_book()
WAITS, OPEN = "control_circuit.permit_waits", "control_circuit.permit_thermostat_open"
CASES = [c for c in read_cases(Path(__file__).parents[1] / "cases") if c.first in (WAITS, OPEN)]


@pytest.mark.parametrize("cause", [WAITS, OPEN])
def test_the_permit_is_a_way_of_not_starting(cause: str) -> None:
    tree = build_tree(BOOK, Machine("x", BOOK.machines["two_tank_steam_208"]))
    assert cause in tree.causes_under("no_start")


def test_below_its_figure_the_stop_is_by_design() -> None:
    tree = build_tree(BOOK, Machine("x", BOOK.machines["two_tank_steam_208"]))
    assert BOOK.causes[WAITS].no_fault
    assert not BOOK.causes[OPEN].no_fault
    assert WAITS in tree.causes_under("stops_midrun")


@pytest.mark.parametrize("case", CASES, ids=lambda c: c.name)
def test_cold_and_hot_are_told_apart(case: TechnicianCase) -> None:
    """The same lamps and the same silence: the tank's temperature decides which of the two it is."""
    assert case.first is not None
    other = OPEN if case.first == WAITS else WAITS
    rows = {row.id: row.probability for row in assessed(BOOK, case).rows}
    assert rows[case.first] > 10 * rows.get(other, 0.0)
