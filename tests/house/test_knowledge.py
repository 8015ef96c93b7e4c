"""The shipped knowledge is sound, deep enough, and answered by rules where it needs computing."""

from __future__ import annotations

import pytest

from diagnose.model import Book, MachineType, load_book
from diagnose.model.lint import LINTS, lint


@pytest.fixture(scope="module")
def book() -> Book:
    return load_book()


def test_lint_has_nothing_to_say(book: Book) -> None:
    assert [str(p) for p in lint(book)] == []


def test_every_lint_module_is_used() -> None:
    from pathlib import Path

    import diagnose.model.lint as room

    files = {p.stem for p in Path(room.__file__).parent.glob("*.py")} - {"__init__"}
    assert files == set(LINTS)


def test_there_is_enough_of_it(book: Book) -> None:
    assert len(book.complaints) >= 40
    assert len(book.causes) >= 260
    assert len(book.checks) >= 300
    assert len(book.events) >= 90
    assert len(book.limits) >= 60
    assert len(book.machines) >= 20
    assert {e.gate for e in book.events.values()} == {"any", "all", "at_least"}


def test_measured_checks_without_bands_have_a_rule(book: Book) -> None:
    from diagnose.rules import RULES

    ruled = {rule.name for rule in RULES}
    for name, check in book.checks.items():
        banded = any(o.low or o.high for o in check.outcomes.values())
        if check.computed or (check.reading is not None and not banded):
            assert name in ruled, f"{name}: no bands and no rule of its name"


def test_rules_answer_checks_that_exist(book: Book) -> None:
    from diagnose.rules import RULES

    general = {"plain_band", "chosen_outcome"}
    assert {rule.name for rule in RULES} - general <= set(book.checks)


def test_no_two_causes_of_a_complaint_look_alike_in_every_check(book: Book) -> None:
    from diagnose.inference import build_tree
    from diagnose.inference.separation import inseparable
    from diagnose.model import Machine, fits

    for kind in types_with_every_trait(book):
        machine = Machine("", kind)
        tree = build_tree(book, machine)
        for name, complaint in book.complaints.items():
            if not fits(machine, complaint.fits):
                continue
            for one, other in inseparable(tree, name):
                said = {*book.causes[one].inseparable_from, *book.causes[other].inseparable_from}
                assert {one, other} & said, f"{name} on {kind.id}: {one} and {other}"


def types_with_every_trait(book: Book) -> list[MachineType]:
    """As few types of machine as have every value of every trait that any of them has."""
    left = {pair for kind in book.machines.values() for pair in kind.traits.items()}
    chosen: list[MachineType] = []
    while left:
        chosen.append(max(book.machines.values(), key=lambda kind: len(left & set(kind.traits.items()))))
        left -= set(chosen[-1].traits.items())
    return chosen


def test_outside_causes_count_as_much_as_broken_parts(book: Book) -> None:
    """Building water, power, drain, steam, gas, room air, operation, chemicals and ware; and what is as designed."""
    outside = ("supply_", "room_air.", "operation.", "soil_load.", "water_quality.", "exhaust_duct.", "water_use.")
    assert sum(name.startswith(outside) for name in book.causes) >= 80
    assert sum(cause.no_fault for cause in book.causes.values()) >= 20


def test_causes_are_shared_between_complaints(book: Book) -> None:
    from diagnose.model.truth import under

    below = {c: under(book, c) & set(book.causes) for c in book.complaints}
    shared = [n for n in book.causes if sum(n in b for b in below.values()) > 1]
    assert len(shared) >= 10


def test_steps_and_repairs_are_deep_enough_to_follow(book: Book) -> None:
    for name, check in book.checks.items():
        if not check.computed:
            assert len(check.steps) >= 2, f"{name}: one step is no instruction"
    for name, cause in book.causes.items():
        assert len(cause.repair) >= (1 if cause.no_fault else 3), f"{name}: too few repair steps"
        assert min(len(cause.shows), len(cause.why), len(cause.told_apart)) >= 40, f"{name}: too thin"
