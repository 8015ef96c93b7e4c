"""Saved machines: written whole, read strictly, named kindly."""

from __future__ import annotations

import os
import stat
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from diagnose.job.machines import MachineError, SavedMachine, check_plate, list_machines, load_machine, save_machine
from diagnose.model import PLATE_FIGURES, load_book

QUAY = SavedMachine(
    name="Quay Street", type="two_tank_electric_208", own={"booster_power": "30.0 kW"}, serial="A-1", site="invented"
)


def test_there_and_back(tmp_path: Path) -> None:
    path = save_machine(tmp_path / "machines", QUAY)
    assert load_machine(tmp_path / "machines", "quay street ") == QUAY
    assert list_machines(tmp_path / "machines") == (QUAY,)
    assert stat.S_IMODE(os.stat(path).st_mode) == 0o600
    machine = QUAY.machine(load_book())
    assert not machine.assumed("booster_power")
    assert machine.assumed("rinse_flow")


def test_an_unknown_name_lists_the_known(tmp_path: Path) -> None:
    save_machine(tmp_path, QUAY)
    with pytest.raises(MachineError, match="saved are: Quay Street"):
        load_machine(tmp_path, "Pier")


@pytest.mark.parametrize("name", ["", " ", "../etc", "a" * 41, "\x1b[2J", "-x"])
def test_names_that_will_not_do(tmp_path: Path, name: str) -> None:
    with pytest.raises(MachineError, match="won't do as a name"):
        save_machine(tmp_path, SavedMachine(name=name, type="x"))
    assert list(tmp_path.iterdir()) == []


def test_a_broken_file_is_a_sentence_and_hides_nothing_else(tmp_path: Path) -> None:
    save_machine(tmp_path, QUAY)
    (tmp_path / "pier.json").write_text("{")
    assert list_machines(tmp_path) == (QUAY,)
    with pytest.raises(MachineError, match="mend or delete it"):
        load_machine(tmp_path, "pier")


def test_plate_figures_are_checked() -> None:
    assert check_plate("booster_power", "30") == "30.0 kW"
    for figure, text in (("booster_power", "30 psi"), ("booster_power", "-3"), ("wings", "2"), ("volts", "x")):
        with pytest.raises(MachineError):
            check_plate(figure, text)


@given(st.sampled_from(sorted(PLATE_FIGURES)), st.text(max_size=20))
def test_rubbish_on_a_plate_is_a_sentence(figure: str, text: str) -> None:
    try:
        check_plate(figure, text)
    except MachineError as error:
        assert str(error)
