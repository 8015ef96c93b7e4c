"""`diagnose instrument`: list, add, remove, and what `rank` makes of them."""

from __future__ import annotations

import json
from pathlib import Path

import pytest

from diagnose.batch.instruments import add_own, list_own, remove_own
from diagnose.batch.rank import rank_case
from diagnose.job.instruments import InstrumentError
from diagnose.model import load_book

BOOK = load_book()


def _add(path: Path, name: str = "probe", kind: str = "reference thermometer", accuracy: str = "0.2 F") -> list[str]:
    return add_own(BOOK, path, name, kind, accuracy, "2020-01", 12, 80)


def test_nothing_then_one_then_changed_then_none(tmp_path: Path) -> None:
    path = tmp_path / "i.json"
    assert "No instruments kept yet" in list_own(BOOK, path, False, 80)[0]
    (first, *rest) = _add(path)
    assert first.startswith("Kept: your reference thermometer 'probe', ± 0.2 °F")
    assert "taken as ± 0.8 °F." in " ".join((first, *rest))
    assert "".join(_add(path, "probe", accuracy="1 F")).startswith("Changed:")
    lines = list_own(BOOK, path, False, 100)
    assert len(lines) == 2
    assert "4 °F" in lines[1]
    assert remove_own(path, "Probe", 80) == ["Forgotten: probe."]
    with pytest.raises(InstrumentError):
        remove_own(path, "probe", 80)


def test_json(tmp_path: Path) -> None:
    path = tmp_path / "i.json"
    _add(path)
    (row,) = json.loads(list_own(BOOK, path, True, 80)[0])["instruments"]
    assert row["instrument"]["kind"] == "reference_thermometer"
    assert row["overdue_since"] == "2021-02"


def test_rank_reads_with_them(tmp_path: Path) -> None:
    case = tmp_path / "c.toml"
    case.write_text(
        'machine = "two_tank_electric_208"\ncomplaints = ["rinse_cold"]\ndate = "2020-03-01"\n'
        'readings = { "rinse_thermometer.reference_reading" = "179 F" }\n',
        "utf-8",
    )
    path = tmp_path / "i.json"
    _add(path)

    def low(instruments: Path | None) -> float:
        (found,) = json.loads(rank_case(BOOK, case, True, 80, instruments)[0])["findings"]
        return float(found["weights"]["low"])

    assert low(path) > 0.99 > 0.97 > low(None)
