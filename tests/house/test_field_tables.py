"""The tables of fields in knowledge/README.md are those of the records; `--accept` writes them anew."""

from __future__ import annotations

from pathlib import Path

import msgspec
import pytest

from diagnose.model.fields import RECORDS, field_tables, fields_of

README = Path(__file__).resolve().parents[2] / "knowledge" / "README.md"
BEGIN, END = "<!-- fields: made from the records in diagnose/model, held by a test -->\n\n", "\n<!-- end of fields -->"


def test_the_tables_are_the_records(request: pytest.FixtureRequest) -> None:
    text = README.read_text("utf-8")
    before, _, rest = text.partition(BEGIN)
    shown, _, after = rest.partition(END)
    if request.config.getoption("--accept"):
        README.write_text(before + BEGIN + field_tables() + END + after, "utf-8")
        return
    assert shown == field_tables()


def test_every_field_says_what_it_means() -> None:
    for name, record in RECORDS.items():
        for field in fields_of(record):
            assert len(field.means) >= 5, f"{name}.{field.name}"
            assert field.needed or field.left_out or field.default is None, f"{name}.{field.name}"


def test_every_record_that_the_loader_reads_has_its_table() -> None:
    from diagnose.model.loader import _KINDS

    read = {record for kinds in _KINDS.values() for record in kinds.values()}
    assert read <= set(RECORDS.values())
    inner = {r for r in RECORDS.values() if issubclass(r, msgspec.Struct)} - read
    assert {r.__name__ for r in inner} == {"Basis", "Meanwhile", "Shift", "ReadingSpec", "Outcome", "TypeAnswer"}
