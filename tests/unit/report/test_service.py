"""The service report says what happened in the job, open or closed, in any units."""

from __future__ import annotations

import json
from pathlib import Path

import jsonschema
import msgspec
import pytest

from diagnose.job import events as ev
from diagnose.model import Book, load_book
from diagnose.physics.sanitising import heat_units_of_trace
from diagnose.report.charts import BandChart, CourseChart, TraceChart
from diagnose.report.course import chosen
from diagnose.report.document import Document, Facts, Figure, Heading, Paragraph, Row, Table, texts_of
from diagnose.report.dossier import Dossier
from diagnose.report.measures import System
from diagnose.report.office import office_json, office_schema
from diagnose.report.parts import parts_list
from diagnose.report.readings import band_blocks, finding_blocks
from diagnose.report.service import service_report
from tests.report_job import CLOSED, OPEN, TRACE, dossier_of, recorded
from tests.small_job import small_book


@pytest.fixture(scope="module")
def book(tmp_path_factory: pytest.TempPathFactory) -> Book:
    return small_book(tmp_path_factory.mktemp("book"))


def heads(document: Document) -> list[str]:
    return [b.text for b in document.blocks if isinstance(b, Heading) and b.level == 2]


def tables(document: Document) -> dict[str, Table]:
    found = [b.table if isinstance(b, Figure) else b for b in document.blocks if isinstance(b, Figure | Table)]
    return {table.caption: table for table in found}


def charts(document: Document) -> list[object]:
    return [b.chart for b in document.blocks if isinstance(b, Figure)]


def test_a_closed_job_is_told_from_complaint_to_proof(book: Book) -> None:
    document = service_report(dossier_of(book, CLOSED))
    told = " ".join(texts_of(document))
    assert document.title == "Service report"
    assert document.subtitle == "job-1001, 2026-03-02 to 2026-03-03"
    assert document.blocks[0] == Paragraph("Closed: repaired and proved. Gone: Steam comes out.", "lead")
    facts = dict(pair for b in document.blocks if isinstance(b, Facts) for pair in b.pairs)
    assert facts["Serial number"] == "A 17"
    assert facts["Site"] == "Quay Street, invented"
    assert facts["Visits"] == "2026-03-02, 08:00–08:50; 2026-03-03, 08:55–09:05"
    assert facts["Time on record"] == "1 h 0 min"
    assert facts["Who worked"] == "technician"
    assert facts["How old?"] == "old"
    assert facts["Usual for the checks made"] == "4 minutes"
    assert facts["In the technician's words"] == "Spare fuses left on site."
    for text in ("The fuse holder is brown.", "Keep the doors shut.", "It was overloaded.", "could not be reached"):
        assert text in told
    assert "Volts at the fuse: 207 V, good" in told
    assert heads(document)[0] == "Complaint"
    assert heads(document)[-1] == "How it ended"
    parts = tables(document)["Parts of the repairs made, in general words"]
    assert parts.rows[0].cells[:2] == ("fuse", "The fuse is blown")
    cautions = tables(document)["Cautions shown before the steps they belong to"]
    assert [row.cells[0] for row in cautions.rows] == ["LIVE PARTS", "ISOLATE"]


def test_readings_stand_side_by_side_with_their_limit(book: Book) -> None:
    document = service_report(dossier_of(book, CLOSED))
    (row,) = tables(document)["Readings before and after the repair"].rows
    assert row.cells[:5] == ("Volts at the fuse", "20 V", "207 V", "good", "50 V or more")
    assert row.role == "good"
    (band,) = (chart for chart in charts(document) if isinstance(chart, BandChart))
    (drawn,) = band.rows
    assert (drawn.before, drawn.after, drawn.low, drawn.high) == ((20.0,), (207.0,), 50.0, None)
    found = tables(document)["Readings and observations in the order taken"]
    assert [(r.role, r.cells[found.says or 0]) for r in found.rows] == [("bad", "not as wanted"), ("good", "good")]


def test_the_evidence_is_that_before_the_repair(book: Book) -> None:
    document = service_report(dossier_of(book, CLOSED))
    told = list(texts_of(document))
    believed = next(text for text in told if text.startswith("Before the work it was believed at"))
    before = dossier_of(book, OPEN).assessment
    assert before is not None
    share = next(row.probability for row in before.rows if row.id == "box.fuse")
    assert f"{share * 100:.0f} %" in believed
    assert told[told.index(believed) + 1] == "Volts at the fuse (20 V): none (speaks strongly for it)"


def test_an_open_job_says_so_and_what_is_likely(book: Book) -> None:
    document = service_report(dossier_of(book, OPEN))
    assert document.blocks[0] == Paragraph("This job is still open. What follows is how it stands now.", "lead")
    likely = tables(document)["Causes, the most probable first"]
    assert likely.rows[0].cells[0] == "The fuse is blown"
    assert "How it ended" not in heads(document)
    assert "Proof" not in heads(document)


@pytest.mark.parametrize("count", range(len(OPEN)))
def test_a_job_can_be_told_from_its_first_record_on(book: Book, count: int) -> None:
    service_report(dossier_of(book, OPEN[:count]))
    parts_list(dossier_of(book, OPEN[:count]))
    office_json(dossier_of(book, OPEN[:count]))


def test_a_repair_that_nothing_proves_is_said(book: Book) -> None:
    told = " ".join(texts_of(service_report(dossier_of(book, (*OPEN, ev.Repaired("box.fuse", "as expected"))))))
    assert "No reading after the repair proves it." in told
    assert "Still complained of: Steam comes out." in told


def test_a_danger_that_stopped_the_job_is_told_first(book: Book) -> None:
    stopped = (*OPEN[:1], ev.SafetyAnswered("gas"), ev.Closed("stopped for safety"))
    told = [b for b in service_report(dossier_of(book, stopped)).blocks if isinstance(b, Paragraph)]
    assert told[1] == Paragraph("Stopped for a danger: Smell of gas? Everybody out.", "caution")


def test_what_was_withdrawn_is_not_told(book: Book) -> None:
    taken_back = (*OPEN, ev.Withdrawn(len(OPEN)))
    assert "brown" not in " ".join(texts_of(service_report(dossier_of(book, taken_back))))


def test_parts_of_an_open_job_are_likely_ones_and_of_a_closed_one_those_fitted(book: Book) -> None:
    may_be = tables(parts_list(dossier_of(book, OPEN)))["By the probability of their cause, as the job stands"]
    assert may_be.rows[0].cells[0] == "fuse"
    assert may_be.rows[0].cells[1].endswith("%")
    used = tables(parts_list(dossier_of(book, CLOSED)))
    assert [*used] == ["Parts of the repairs made, in general words"]
    sound = (*OPEN, ev.Repaired("box.fuse", "sound"), ev.Closed("given up"))
    assert "no parts were used" in " ".join(texts_of(parts_list(dossier_of(book, sound))))


def test_the_office_copy_keeps_to_its_schema(book: Book) -> None:
    schema = json.loads(office_schema())
    for events in ((), OPEN, CLOSED):
        copy = json.loads(office_json(dossier_of(book, events)))
        jsonschema.Draft202012Validator(schema).validate(copy)
        assert copy["schema"] == 1
        assert copy["job"] == "job-1001"
    assert copy["closed"] == "repaired"
    assert copy["repairs"][0]["parts"] == ["fuse"]
    assert copy["repairs"][0]["probability_before"] > 0.5
    assert copy["readings"][1]["low"] == {"place": "", "value": 50.0, "unit": "V"}
    assert copy["likely_parts"] == []


@pytest.fixture(scope="module")
def traced() -> Dossier:
    return dossier_of(load_book(), TRACE)


def test_a_trace_is_drawn_with_its_heat_units(traced: Dossier) -> None:
    document = service_report(traced)
    (chart,) = (c for c in charts(document) if isinstance(c, TraceChart))
    assert chart.values[:3] == (151.0, 155.0, 160.0)
    assert [level for level, _, _ in chart.levels] == pytest.approx([160.0, 143.0])
    units = heat_units_of_trace([(v + 459.67) / 1.8 for v in chart.values], 1.0)
    assert f"got {units:.0f} heat units; 3600 are wanted: too few" in chart.description
    assert tables(document)["The trace in figures"].rows[-1].cells[2] == f"{units:.0f}"


def test_the_course_follows_the_answers(traced: Dossier) -> None:
    document = service_report(traced)
    (chart,) = (c for c in charts(document) if isinstance(c, CourseChart))
    assert len(chart.courses[0].values) == len(traced.points) == 3
    last = traced.assessment
    assert last is not None
    assert chart.courses[0].values[-1] == pytest.approx(
        next(r.probability for r in last.rows if last.book.title(r.id) == chart.courses[0].label)
    )


@pytest.mark.parametrize(("system", "shown", "drawn"), [("si", "78 °C", 77.8), ("both", "172 °F (78 °C)", 172.0)])
def test_other_units_hold_in_readings_bands_charts_and_sentences(
    traced: Dossier, system: System, shown: str, drawn: float
) -> None:
    dossier = dossier_of(traced.book, TRACE, system=system)
    document = Document("t", "s", (*finding_blocks(dossier), *band_blocks(dossier)))
    (row,) = tables(document)["Readings so far"].rows
    assert row.cells[1] == shown
    assert "82 to 90 °C" in row.cells[3]
    assert f"{shown}: under the least" in " ".join(texts_of(document))
    (band,) = (c for c in charts(document) if isinstance(c, BandChart))
    assert band.rows[0].before[0] == pytest.approx(drawn, abs=0.05)


def test_a_row_may_not_stand_by_its_colour_alone() -> None:
    with pytest.raises(ValueError, match="colour alone"):
        Table("t", ("a", "b"), (Row(("x", ""), "bad"),), 1)
    with pytest.raises(ValueError, match="under 2 headers"):
        Table("t", ("a", "b"), (Row(("x",)),))


def test_a_long_job_is_told_at_a_dozen_points() -> None:
    readings = [ev.ReadingTaken("box.volts", {"": "20 V"})] * 40
    records = recorded((*OPEN[:4], *readings[:20], ev.Repaired("box.fuse", "as expected"), *readings[20:]))
    points = chosen(records, 12)
    assert len(points) == 12
    assert {4 - 1, len(records), 24, 25} <= set(points)
    assert points == sorted(points)


def test_the_report_in_markdown_is_as_accepted(book: Book, request: pytest.FixtureRequest) -> None:
    from diagnose.report.to_markdown import to_markdown

    path = Path(__file__).resolve().parents[2] / "golden" / "report" / "service.md"
    printed = to_markdown(service_report(dossier_of(book, CLOSED)))
    if request.config.getoption("--accept"):
        path.write_text(printed, "utf-8")
    else:
        assert printed == path.read_text("utf-8")


def test_who_worked_on_it_is_told_where_there_were_several(book: Book) -> None:
    taken = ev.ReadingTaken("box.volts", {"": "20 V"})
    call = [ev.CallBegun("kitchen", "Ana"), *OPEN[:5], ev.ReadingTaken("box.volts", {"": "208 V"})]
    records = recorded([*call, ev.CallEnded("visit", "tomorrow"), ev.Present("B"), taken], later=0)
    desk = tuple(msgspec.structs.replace(r, writer="desk-1") for r in records[:8])
    there = tuple(msgspec.structs.replace(r, writer="tech-1") for r in records[8:])
    made = " ".join(texts_of(service_report(Dossier(book, "job-1", (*desk, *there)))))
    for told in ("On the telephone: Ana.", "The call ended: somebody must come. tomorrow", "At the machine: B."):
        assert told in made
    assert "By another; this one counts" in made
    assert "Who worked on it" not in " ".join(texts_of(service_report(dossier_of(book, CLOSED))))
