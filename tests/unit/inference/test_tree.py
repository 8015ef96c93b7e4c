"""The tree of one machine: what drops out, what context does, what a check's table becomes."""

from __future__ import annotations

from dataclasses import replace

import pytest

from diagnose.inference import build_tree
from diagnose.model import Scale
from tests.unit.inference.hand_book import BOOK, MACHINE, book_of, cause, check, event, machine

TREE = build_tree(BOOK, MACHINE)


def test_what_does_not_fit_drops_out() -> None:
    assert "g.valve_shut" not in TREE.nodes
    assert "g.gas_short" not in TREE.nodes
    assert "g.gas_short" not in TREE.nodes["cold"].inputs
    assert TREE.checks["g.flame"].looks_at == ()
    assert TREE.checks["g.flame"].shows.shape == (1, 2)


def test_a_gas_machine_keeps_it() -> None:
    tree = build_tree(BOOK, machine("gas"))
    assert tree.causes_under("cold")[-2:] == ("g.valve_shut", "unlisted.cold")


def test_every_complaint_has_its_leak() -> None:
    assert TREE.nodes["cold"].inputs[-1] == "unlisted.cold"
    assert TREE.nodes["unlisted.cold"].prior == 0.0025


@pytest.mark.parametrize(
    ("gate", "k", "kept"),
    [("any", None, True), ("all", None, False), ("at_least", 2, True), ("at_least", 3, False)],
)
def test_gates_that_lost_a_member(gate: str, k: int | None, kept: bool) -> None:
    """Of three inputs one does not fit: "any" and "2 of" count the rest; "all" and "3 of" can never be true."""
    causes = [cause("x"), cause("y"), cause("z", fits={"booster": ["gas"]})]
    tree = build_tree(book_of([], [event("e", ["x", "y", "z"], gate, k=k)], causes, []), MACHINE)
    assert ("e" in tree.nodes) is kept
    if kept:
        assert tree.nodes["e"].inputs == ("x", "y")
        assert tree.nodes["e"].need == (k or 1)


def test_what_can_never_be_true_takes_others_with_it() -> None:
    causes = [cause("x"), cause("z", fits={"booster": ["gas"]})]
    events = [event("never", ["x", "z"], "all"), event("above", ["never"]), event("beside", ["never", "x"])]
    tree = build_tree(book_of([], events, causes, []), MACHINE)
    assert set(tree.nodes) == {"x", "beside"}


def test_an_event_of_causes_has_a_share_that_is_not_listed() -> None:
    """Of two causes at 0.02 each, a twentieth beside; none where all are needed, nor right under events alone."""
    events = [event("e", ["x", "y"]), event("both", ["x", "y"], "all"), event("above", ["e", "both"])]
    book = book_of([], events, [cause("x"), cause("y")], [])
    leaky = replace(book, scales={**book.scales, "unlisted": Scale("t", "o", {"beside the causes of an event": 0.05})})
    assert set(build_tree(book, MACHINE).nodes) == {"x", "y", "e", "both", "above"}
    tree = build_tree(leaky, MACHINE)
    assert set(tree.nodes) == {"x", "y", "e", "both", "above", "unlisted.e"}
    assert tree.nodes["e"].inputs == ("x", "y", "unlisted.e")
    assert tree.nodes["unlisted.e"].prior == pytest.approx(0.05 * (1 - 0.98**2))


def test_context_multiplies_the_odds() -> None:
    old = build_tree(BOOK, MACHINE, {"age": "old"}).nodes["b.element_open"]
    new = TREE.nodes["b.element_open"]
    assert old.prior / (1 - old.prior) == pytest.approx(4 * new.prior / (1 - new.prior))
    assert old.shifts == (("age", 4.0),)
    assert new.shifts == ()
    assert build_tree(BOOK, MACHINE, {"age": "young"}).nodes["b.element_open"] == new


def test_rows_share_what_is_left() -> None:
    """In the order of the screen; what is not named shares the rest evenly, and a full row keeps 0.002 for it.

    A row that names two and leaves two gives those 0.07 together, and is scaled to 1.
    """
    amps = TREE.checks["b.amps"]
    assert amps.outcomes == ("one_line_out", "one_element_out", "all_low", "healthy")
    assert amps.shows[0] == pytest.approx([0.93, 0.07 / 3, 0.07 / 3, 0.07 / 3])
    assert amps.shows[2] == pytest.approx([x / 0.89 for x in (0.035, 0.035, 0.75, 0.07)])
    sure = check("sure", ["x"], {"x": {"yes": 1.0}, "none": {"no": 1.0}})
    row = build_tree(book_of([], [], [cause("x")], [sure]), MACHINE).checks["sure"].shows[0]
    assert row == pytest.approx([1 / 1.002, 0.002 / 1.002])


def test_a_finding_weighs_rows() -> None:
    likely = TREE.checks["a.gauge"].likelihoods({"low": 0.8, "good": 0.2})
    assert likely == pytest.approx([0.8 * 0.93 + 0.2 * 0.07, 0.8 * 0.07 + 0.2 * 0.93])
    with pytest.raises(ValueError, match="no outcome odd"):
        TREE.checks["a.gauge"].likelihoods({"odd": 1.0})


def test_ways_down() -> None:
    assert list(TREE.paths("cold", "s.volts_low")) == [["cold", "b.heat_short", "s.volts_low"]]
    assert TREE.causes_under("stuck") == ("s.volts_low", "c.clutch_worn", "c.load_high", "unlisted.stuck")


def test_a_circle_is_named() -> None:
    book = book_of([], [event("a", ["b"]), event("b", ["a"])], [], [])
    with pytest.raises(ValueError, match="go round in a circle"):
        build_tree(book, MACHINE)


def test_a_missing_row_is_named() -> None:
    lame = check("lame", ["x"], {"none": {"no": 1.0}})
    with pytest.raises(ValueError, match="lame does not say what it shows for x"):
        build_tree(book_of([], [], [cause("x")], [lame]), MACHINE)
