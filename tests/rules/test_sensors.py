"""A sensor's ohms: the same figure on two curves, open and short, and the plain reading of what stands beside it."""

from __future__ import annotations

from dataclasses import replace

import pytest

from diagnose.model import Machine, load_book
from diagnose.rules import RuleRun, expected
from tests.rulebook import reading
from tests.rulebook import run as run_rules

BOOK = load_book()
OHMS, BESIDE = "rinse_thermometer.sensor_ohms", "rinse_thermometer.reference_reading"
FALLING = {"sensor_ohms_25": "10000 ohm", "sensor_ohms_80": "1256 ohm"}  # beta 3977
OTHER = {"sensor_ohms_25": "10000 ohm", "sensor_ohms_80": "1662 ohm"}  # beta 3435
PLATINUM = {"sensor_ohms_25": "109.73 ohm", "sensor_ohms_80": "130.9 ohm"}


def _machine(own: dict[str, str]) -> Machine:
    return Machine("m", BOOK.machines["two_tank_electric_208"], own)


def _run(own: dict[str, str], ohms: str, beside: str | None = "180 F") -> RuleRun:
    typed = [(OHMS, ohms)] if beside is None else [(BESIDE, beside), (OHMS, ohms)]
    return run_rules(_machine(own), *typed, book=BOOK)


def _outcome(run: RuleRun) -> str | None:
    return next((f.outcome for f in run.findings if f.check == OHMS), None)


@pytest.mark.parametrize(
    ("own", "ohms", "outcome"),
    [
        (FALLING, "1168 ohm", "as_curve"),
        (FALLING, "1550 ohm", "reads_low"),
        (FALLING, "980 ohm", "reads_high"),
        (OTHER, "1550 ohm", "as_curve"),  # the same ohms, another curve
        (OTHER, "1168 ohm", "reads_high"),
        (PLATINUM, "131.7 ohm", "as_curve"),
        (PLATINUM, "139 ohm", "reads_high"),  # too many ohms: hot with platinum, cold with a thermistor
        (PLATINUM, "124 ohm", "reads_low"),
        (PLATINUM, "1168 ohm", "open"),
        (FALLING, "120 kohm", "open"),
        (FALLING, "60 ohm", "short"),
        (FALLING, "10 Mohm", "open"),
        (FALLING, "0.3 ohm", "short"),
    ],
)
def test_outcome(own: dict[str, str], ohms: str, outcome: str) -> None:
    assert _outcome(_run(own, ohms)) == outcome


def test_a_pt1000_is_platinum_too() -> None:
    own = {"sensor_ohms_25": "1097.3 ohm", "sensor_ohms_80": "1309 ohm"}
    assert _outcome(_run(own, "1317 ohm")) == "as_curve"
    assert _outcome(_run(own, "1400 ohm")) == "reads_high"


def test_the_reading_beside_it_counts_for_itself_and_is_only_consulted() -> None:
    run = _run(FALLING, "1550 ohm")
    finding = next(f for f in run.findings if f.check == OHMS)
    assert len(finding.counts) == 1
    assert len(finding.consults) == 1
    assert {f.check for f in run.findings} == {OHMS, BESIDE}
    assert not run.unanswered


@pytest.mark.parametrize("own", [{}, {"sensor_ohms_25": "10000 ohm"}])
def test_silent_and_asking_for_the_curve_where_the_plate_lacks_it(own: dict[str, str]) -> None:
    run = _run(own, "1550 ohm")
    assert _outcome(run) is None
    assert "curve of this probe is needed" in run.unanswered[0].why


def test_a_curve_of_the_type_is_not_enough_to_judge() -> None:
    machine = _machine({})
    kind = replace_plate(machine, FALLING)
    run = run_rules(kind, (BESIDE, "180 F"), (OHMS, "1550 ohm"), book=BOOK)
    assert _outcome(run) is None
    assert "curve of this probe is needed" in run.unanswered[0].why


def replace_plate(machine: Machine, plate: dict[str, str]) -> Machine:
    """The same machine whose type, not its own plate, states the curve."""
    import msgspec

    return replace(machine, type=msgspec.structs.replace(machine.type, plate={**machine.type.plate, **plate}))


def test_broken_leads_need_no_curve() -> None:
    assert _outcome(_run({}, "10 Mohm", None)) == "open"
    assert _outcome(_run({}, "0.2 ohm", None)) == "short"


def test_silent_without_the_temperature_there() -> None:
    run = _run(FALLING, "1550 ohm", None)
    assert _outcome(run) is None
    assert "second thermometer" in run.unanswered[0].why


def test_near_the_edge_both_count() -> None:
    finding = next(f for f in _run(FALLING, "1240 ohm").findings if f.check == OHMS)
    assert 0.2 < finding.weights["as_curve"] < 0.8
    assert finding.weights["reads_low"] > 0.2
    assert finding.weights["reads_high"] < 0.01


def test_a_common_meter_can_not_tell_three_degrees_on_platinum() -> None:
    finding = next(f for f in _run(PLATINUM, "132.9 ohm").findings if f.check == OHMS)  # 5 °F over the curve
    assert finding.outcome == "as_curve"
    assert finding.weights["as_curve"] < 0.9


def test_working_and_sentence_tell_the_likely_fault() -> None:
    finding = next(f for f in _run(FALLING, "1550 ohm").findings if f.check == OHMS)
    assert "corroded contact in series" in finding.says
    working = " ".join(finding.working)
    assert "10000 ohm at 25 °C" in working
    assert "you read 1550 ohm" in working
    other = next(f for f in _run(PLATINUM, "124 ohm").findings if f.check == OHMS)
    assert "wet connector" in other.says


def test_expected_ohms() -> None:
    read = [reading(BESIDE, "180 F", book=BOOK)]
    shown = expected(BOOK, _machine(FALLING), read, OHMS)
    assert shown is not None
    assert shown.low is not None
    assert shown.high is not None
    assert shown.low.value < 1168 < shown.high.value
    assert any("exp(" in line for line in shown.working)
    ahead = expected(BOOK, _machine(FALLING), [], OHMS)
    assert ahead is not None
    assert "176 °F" in ahead.lines[0]
    rising = expected(BOOK, _machine(PLATINUM), [], OHMS)
    assert rising is not None
    assert rising.low is not None
    assert 130.2 < rising.low.value < 130.9
    of_type = expected(BOOK, _machine({}), [], OHMS)
    assert of_type is not None
    assert of_type.low is None
    assert "if it is of the type's curve" in of_type.lines[0]
    assert any("needed" in line for line in of_type.working)
    bare = Machine("m", BOOK.machines["single_tank_electric_208"], {})
    unknown = expected(BOOK, bare, [], OHMS)
    assert unknown is not None
    assert unknown.lines[0].startswith("The curve of this probe is needed")


def test_a_reading_that_does_not_belong_to_the_machine_is_not_consulted() -> None:
    chemical = Machine("m", BOOK.machines["single_tank_chemical_208"], FALLING)
    run = run_rules(chemical, (BESIDE, "180 F"), (OHMS, "1550 ohm"), book=BOOK)
    assert _outcome(run) is None
    right = run_rules(
        chemical, ("rinse_thermometer.reference_reading_chemical", "130 F"), (OHMS, "2930 ohm"), book=BOOK
    )
    assert _outcome(right) == "as_curve"
