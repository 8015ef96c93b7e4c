"""`diagnose machine show`: the plate, then the history, for people and for programs."""

from __future__ import annotations

import json
from pathlib import Path

import pytest

from diagnose.batch.machines import show_saved
from diagnose.job import events as ev
from diagnose.job.journal import Journal
from diagnose.job.machines import SavedMachine, save_machine
from diagnose.model import Book, load_book
from diagnose.view.layout import text_width

KIND = "two_tank_electric_208"
OPENED = ev.Opened(machine="Bay 2", type=KIND)
ELEMENT = ev.Repaired("booster_electric.element_open", "as expected")


@pytest.fixture(scope="module")
def book() -> Book:
    return load_book()


@pytest.fixture
def journal(tmp_path: Path) -> Journal:
    """Seven invented jobs on one machine: its handover, then a pressure that falls and an element that burns out."""
    save_machine(tmp_path / "machines", SavedMachine(name="Bay 2", type=KIND, site="Pier Canteen, invented"))
    day = [""]
    journal = Journal(tmp_path / "j", clock=lambda: f"{day[0]}T08:00:00+00:00")
    pressures = (("2020-03-02", 24), ("2021-03-02", 21), ("2022-03-02", 19), ("2023-03-02", 17), ("2024-03-02", 14))
    for nth, (at, psi) in enumerate(pressures):
        day[0] = at
        opened = OPENED if nth else ev.Opened(machine="Bay 2", type=KIND, purpose="handover")
        amps = ev.ReadingTaken("booster_electric.line_amps", {"L1": "48 A", "L2": "48 A", "L3": "83 A"})
        repair = [ev.ComplaintSaid("rinse_cold"), amps, ELEMENT, ev.Closed("repaired")] if nth > 1 else []
        for event in (opened, ev.ReadingTaken("rinse_gauge.flow_pressure", {"": f"{psi} psi"}), *repair):
            journal.append(f"job-{nth}", event)
        if not nth:
            journal.append("job-0", ev.Closed("handed over"))
    return journal


@pytest.mark.parametrize("width", [45, 80])
def test_the_history_follows_the_plate(book: Book, journal: Journal, tmp_path: Path, width: int) -> None:
    lines = show_saved(book, tmp_path / "machines", journal, "bay 2", False, width)
    assert all(text_width(line) <= width for line in lines)
    told = " ".join(" ".join(lines).split())
    assert told.index("type's figure, assumed") < told.index(
        "Baseline: handed over on 2020-03-02 (job-0), 1 check read."
    )
    for part in (
        "Drifts: falls about 2.4 psi a year: 24 psi at handover, 14 psi now",
        "One heating element is open: 3 times since 2022-03; look for why it comes back.",
        "Scale keeps the heat in the sheath",
        "Booster line currents: 48 48 83 A on 2022-03-02, before a repair, 48 48 83 A on 2024-03-02, before a repair",
    ):
        assert part in told


def test_the_record_has_schema_and_stable_keys(book: Book, journal: Journal, tmp_path: Path) -> None:
    (text,) = show_saved(book, tmp_path / "machines", journal, "Bay 2", True, 80)
    answer = json.loads(text)
    assert list(answer) == ["schema", "machine", "plate", "history"]
    history = answer["history"]
    assert list(history) == ["baseline", "jobs", "readings", "changes", "repeated", "unread"]
    assert history["baseline"] == {"job": "job-0", "date": "2020-03-02", "checks": 1}
    assert history["repeated"] == [{"cause": ELEMENT.cause, "times": 3, "since": "2022-03-02"}]
    (change,) = history["changes"]
    assert (change["check"], change["was"]["typed"], change["now"]["typed"]) == (
        "rinse_gauge.flow_pressure",
        "24.0 psi",
        "14.0 psi",
    )
    assert change["drift"]["readings"] == 5
    assert change["drift"]["p"] == pytest.approx(2 / 120)
    first = history["readings"][0]
    assert first["values"] == [{"place": "", "typed": "24.0 psi", "si": pytest.approx(24 * 6894.757, rel=1e-6)}]


def test_a_machine_without_jobs_says_so(book: Book, tmp_path: Path) -> None:
    save_machine(tmp_path / "machines", SavedMachine(name="Bay 3", type=KIND))
    journal = Journal(tmp_path / "empty")
    lines = show_saved(book, tmp_path / "machines", journal, "Bay 3", False, 80)
    assert lines[-1] == "No history yet: no job in the journal is on this machine."
    history = json.loads(show_saved(book, tmp_path / "machines", journal, "Bay 3", True, 80)[0])["history"]
    assert history == {"baseline": None, "jobs": [], "readings": [], "changes": [], "repeated": [], "unread": []}
