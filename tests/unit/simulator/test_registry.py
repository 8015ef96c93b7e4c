"""Ids of the simulator are those of the book; sound machines are quiet and read well; faults are complained of."""

from __future__ import annotations

import math

import pytest

from diagnose.model import Machine, fits
from diagnose.simulator import COMPLAINTS, FAULTS, LOOKS, CannotReadError, Plate, Simulated
from tests.each import holds_for_each
from tests.unit.simulator.plates import BOOK, TYPES, plate

FEWEST_FAULTS = 150  # a floor: it only rises


def test_every_id_is_known() -> None:
    assert set(FAULTS) <= set(BOOK.causes)
    assert set(LOOKS) <= set(BOOK.checks)
    assert set(COMPLAINTS) <= set(BOOK.complaints)
    assert len(FAULTS) >= FEWEST_FAULTS


def test_a_fault_says_what_it_is() -> None:
    holds_for_each(FAULTS, says_what_it_is)


def says_what_it_is(name: str) -> None:
    fault = FAULTS[name]
    assert len(set(fault.physics)) == 3
    assert all(sentence.endswith(".") and len(sentence) > 10 for sentence in fault.physics)
    assert fault.onset in ("suddenly", "slowly", "installed", "comes and goes")
    assert fault.after in ("", *BOOK.context["last_done"].answers)


@pytest.mark.parametrize("kind", TYPES)
def test_faults_looks_and_complaints_fit_where_the_book_has_them(kind: str) -> None:
    """What the book has not on a type of machine, the simulator has not either."""
    machine = Machine(kind, BOOK.machines[kind])
    for name, fault in FAULTS.items():
        assert not fault.fits(plate(kind)) or fits(machine, BOOK.causes[name].fits), name
    for name, look in LOOKS.items():
        assert not look.fits(plate(kind)) or fits(machine, BOOK.checks[name].fits), name
    for name, complaint in COMPLAINTS.items():
        assert not complaint.fits(plate(kind)) or fits(machine, BOOK.complaints[name].fits), name


@pytest.mark.parametrize("kind", TYPES)
def test_nobody_complains_of_a_sound_machine(kind: str) -> None:
    for seed in (0, 7):
        assert Simulated(plate(kind), seed=seed).complaints() == ()


@pytest.mark.parametrize("kind", TYPES)
def test_answers_are_of_the_form_the_check_wants(kind: str) -> None:
    sim = Simulated(plate(kind), seed=5)
    for name in LOOKS:
        if sim.can_read(name):
            answer, check = sim.read(name), BOOK.checks[name]
            if check.reading is None:
                assert answer.outcome in check.outcomes, name
                assert not answer.values
            else:
                assert list(answer.values) == (check.reading.each or [""]), name


def test_the_same_seed_reads_the_same_and_another_does_not() -> None:
    def amps(seed: int) -> object:
        sim = Simulated(plate("two_tank_electric_208"), (("booster_electric.element_open", 0.8),), seed)
        return sim.read("booster_electric.line_amps").values, sim.read("booster_electric.line_amps").values

    assert amps(1) == amps(1)
    assert amps(1) != amps(2)
    assert len(set(map(str, amps(1)))) == 2  # type: ignore[call-overload]


def test_repair_takes_the_fault_and_the_complaint_away() -> None:
    sim = Simulated(plate("two_tank_electric_208"), (("booster_electric.two_elements_open", 0.8),), 1)
    assert "rinse_cold" in sim.complaints()
    assert not sim.repair("booster_electric.feed_off")
    assert sim.repair("booster_electric.two_elements_open")
    assert (sim.present, sim.complaints()) == ((), ())


def test_a_lying_instrument_is_off_by_what_it_lies() -> None:
    kind = plate("two_tank_electric_208")
    true = Simulated(kind, seed=3).read("rinse_thermometer.reference_reading").values[""]
    false = Simulated(kind, seed=3, lies=(("reference thermometer", 4.0),)).read("rinse_thermometer.reference_reading")
    assert false.values[""] == pytest.approx(true + 4.0)


@pytest.mark.parametrize(
    ("faults", "lies"), [((("no.such", 0.5),), ()), ((("relief_valve.seat_dirty", 0.5),), (("crystal ball", 1.0),))]
)
def test_what_can_not_be_is_refused(faults: tuple[tuple[str, float], ...], lies: tuple[tuple[str, float], ...]) -> None:
    with pytest.raises(ValueError, match=r"no\.such|crystal ball"):
        Simulated(plate("two_tank_electric_208"), faults, lies=lies)


def test_a_fault_of_another_machine_is_refused() -> None:
    with pytest.raises(ValueError, match="can't be on this type"):
        Simulated(plate("two_tank_gas_208"), (("tank_heater_electric.element_open", 0.5),))


def test_what_can_not_be_read_says_so() -> None:
    sim = Simulated(plate("two_tank_electric_208"))
    assert not sim.can_read("no.such")
    with pytest.raises(CannotReadError):
        sim.read("no.such")


def test_a_plate_takes_usual_figures_where_it_has_none() -> None:
    bare = Plate({"tanks": 1}, {"volts": 208.0})
    assert bare["run_on"] == 30.0
    with pytest.raises(KeyError):
        bare["rinse_flow"]


@pytest.mark.parametrize("name", sorted(FAULTS)[::12])
def test_everything_can_be_read_whatever_is_the_matter(name: str) -> None:
    """A sample of the faults, each at its worst: every look answers, or says that there is nothing to be read."""
    kind = next(kind for kind in TYPES if FAULTS[name].fits(plate(kind)))
    sim = Simulated(plate(kind), ((name, 1.0),), seed=3)
    answered = [sim.read(look) for look in LOOKS if sim.can_read(look)]
    assert len(answered) > 100
    assert all(math.isfinite(value) for answer in answered for value in answer.values.values())
