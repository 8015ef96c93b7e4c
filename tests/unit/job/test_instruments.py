"""Instruments of one's own: kept, read again, widened when their calibration is long ago, and replayed without them."""

from __future__ import annotations

from datetime import date
from pathlib import Path

import msgspec
import pytest

from diagnose.job import events as ev
from diagnose.job.assess import assess
from diagnose.job.case import CaseError, case_of, case_state
from diagnose.job.folding import fold
from diagnose.job.instruments import (
    InstrumentError,
    OwnInstrument,
    add_instrument,
    check_instrument,
    fitting,
    in_use,
    list_instruments,
    overdue_since,
    read_with,
    remove_instrument,
    usual,
)
from diagnose.model import load_book

BOOK = load_book()
KINDS = BOOK.instruments
TODAY = date(2026, 6, 15)
REFERENCE = "rinse_thermometer.reference_reading"


def own(accuracy: str = "1 F", calibrated: str = "2026-01", name: str = "probe", **more: object) -> OwnInstrument:
    made = OwnInstrument(name=name, kind="reference_thermometer", accuracy=accuracy, calibrated=calibrated)
    return check_instrument(msgspec.structs.replace(made, **more), KINDS)


def test_kept_changed_and_removed(tmp_path: Path) -> None:
    path = tmp_path / "sub" / "instruments.json"
    assert list_instruments(path) == ()
    assert not add_instrument(path, own(), KINDS)
    assert not add_instrument(path, own(name="clamp", kind="Clamp Meter", accuracy="2 %"), KINDS)
    assert add_instrument(path, own("0.5 F", name="PROBE"), KINDS)
    assert [(o.name, o.kind, o.accuracy) for o in list_instruments(path)] == [
        ("clamp", "clamp_meter", "2 %"),
        ("PROBE", "reference_thermometer", "0.5 °F"),
    ]
    assert remove_instrument(path, "probe").name == "PROBE"
    assert len(list_instruments(path)) == 1
    with pytest.raises(InstrumentError, match="kept are: clamp"):
        remove_instrument(path, "probe")


@pytest.mark.parametrize(
    ("changes", "says"),
    [
        ({"name": "../x"}, "won't do as a name"),
        ({"kind": "reference thermometre"}, "did you mean 'reference thermometer'"),
        ({"kind": "qqqq"}, "knowledge list instruments"),
        ({"accuracy": "1 psi"}, "accuracy of a reference thermometer"),
        ({"calibrated": "March"}, "2026-03"),
        ({"calibrated": "2026-13"}, "no date"),
        ({"interval": 0}, "12 is usual"),
    ],
)
def test_refused_with_a_remedy(changes: dict[str, object], says: str) -> None:
    with pytest.raises(InstrumentError, match=says):
        own(**changes)  # type: ignore[arg-type]


def test_a_broken_file_is_named(tmp_path: Path) -> None:
    path = tmp_path / "instruments.json"
    path.write_text("{", "utf-8")
    with pytest.raises(InstrumentError, match="mend or delete"):
        list_instruments(path)


@pytest.mark.parametrize(
    ("calibrated", "since", "taken"),
    [
        ("2026-01", None, "1 °F"),
        ("2025-06-30", None, "1 °F"),  # it stands to the end of its last month
        ("2025-05-02", "2026-06", "2 °F"),
        ("2025-03", "2026-04", "2 °F"),
        ("2024-05", "2025-06", "2.5 °F"),  # a year more, half of it more
        ("2023-05", "2024-06", "3 °F"),
        ("2010-01", "2011-02", "4 °F"),  # never more than four times
        ("", "", "2 °F"),
    ],
)
def test_overdue_widens(calibrated: str, since: str | None, taken: str) -> None:
    each = own(calibrated=calibrated)
    assert overdue_since(each, TODAY) == since
    used = in_use(each, KINDS, TODAY)
    assert used.text == taken
    if since is None:
        assert str(used) == "your reference thermometer 'probe', ± 1 °F"
    else:
        assert f"taken as ± {taken}" in str(used)
        assert (f"overdue since {since}" if since else "never calibrated") in str(used)


def test_a_month_at_the_end_of_the_year() -> None:
    assert overdue_since(own(calibrated="2024-12"), TODAY) == "2026-01"
    assert overdue_since(own(calibrated="2025-12", interval=6), TODAY) is None
    assert overdue_since(own(calibrated="2025-11", interval=6), TODAY) == "2026-06"


def test_the_kind_a_check_asks_for_decides() -> None:
    late, good = own(name="late", calibrated="2020-01"), own(name="good")
    infrared = own(name="spot", kind="infrared_thermometer", accuracy="4 F")
    clamp = own(name="clamp", kind="clamp_meter", accuracy="2 %")
    kept = [late, infrared, clamp, good]
    check = BOOK.checks[REFERENCE]
    assert [o.name for o in fitting(check, kept, KINDS)] == ["late", "spot", "good"]
    chosen = usual(check, kept, KINDS, TODAY)
    assert chosen is not None
    assert chosen.name == "good"
    assert usual(check, [infrared, clamp], KINDS, TODAY) is None
    assert usual(BOOK.checks["rinse_thermometer.panel_reading"], kept, KINDS, TODAY) is None  # the machine's own dial


def _state(taken: ev.ReadingTaken):  # type: ignore[no-untyped-def]
    kind = "two_tank_electric_208"
    events = [ev.Opened(machine=kind, type=kind), ev.SafetyAnswered(), ev.ComplaintSaid("rinse_cold"), taken]
    return fold((ev.Record(number=n, at="", writer="t", event=e) for n, e in enumerate(events, 1)), BOOK)


def test_a_reading_is_replayed_from_the_journal_alone() -> None:
    taken = read_with(ev.ReadingTaken(REFERENCE, {"": "178.5 °F"}), in_use(own("0.3 F", "2025-03"), KINDS, TODAY))
    again = msgspec.json.decode(msgspec.json.encode(taken), type=ev.Event)
    assert again == taken
    accuracy = _state(taken).readings[0].accuracy
    assert accuracy is not None
    assert str(accuracy) == (
        "your reference thermometer 'probe', ± 0.3 °F, calibration overdue since 2026-04: taken as ± 0.6 °F"
    )
    assert accuracy.text == "0.6 °F"


def test_a_reading_of_an_old_journal_is_read_as_before() -> None:
    body = b'{"kind":"ReadingTaken","check":"rinse_thermometer.reference_reading","values":{"":"178 \xc2\xb0F"}}'
    event = msgspec.json.decode(body, type=ev.Event)
    assert isinstance(event, ev.ReadingTaken)
    state = _state(event)
    assert state.readings[0].accuracy is None
    assert not state.unread


def test_an_accuracy_that_can_not_be_read_is_said() -> None:
    state = _state(ev.ReadingTaken(REFERENCE, {"": "178 °F"}, instrument="x", accuracy="1 psi"))
    assert "psi" in state.unread[0]


def test_overdue_widening_changes_a_verdict_near_an_edge() -> None:
    """178.4 °F is 1.6 under the limit: a sound probe of 1.5 °F says low; the same one years overdue can't."""

    def low(calibrated: str) -> float:
        used = in_use(own("1.5 F", calibrated), KINDS, TODAY)
        found = assess(BOOK, _state(read_with(ev.ReadingTaken(REFERENCE, {"": "178.4 °F"}), used))).findings[0]
        assert any("your reference thermometer 'probe'" in line for line in found.working)
        return found.weights["low"]

    sharp, dull = low("2026-01"), low("2015-01")
    assert sharp > 0.95
    assert dull < 0.75


CASE = {
    "machine": "two_tank_electric_208",
    "complaints": ["rinse_cold"],
    "date": "2026-06-15",
    "readings": {REFERENCE: "179 F", "rinse_thermometer.panel_reading": "179 F"},
}


def test_a_case_may_name_instruments() -> None:
    probe = {"name": "probe", "kind": "reference thermometer", "accuracy": "0.2 F", "calibrated": "2026-02"}
    plain, told = case_state(case_of(CASE, "c"), BOOK), case_state(case_of({**CASE, "instruments": [probe]}, "c"), BOOK)
    assert [r.instrument for r in plain.readings] == [None, None]
    assert [r.instrument for r in told.readings] == ["probe", None]
    # One's own are taken only where the case names none.
    assert case_state(case_of(CASE, "c"), BOOK, [own(name="mine")]).readings[0].instrument == "mine"
    both = case_state(case_of({**CASE, "instruments": [probe]}, "c"), BOOK, [own(name="mine")])
    assert both.readings[0].instrument == "probe"


def test_a_case_with_bad_instruments_says_all_at_once() -> None:
    bad = {"name": "p", "kind": "reference thermometer", "accuracy": "good"}
    with pytest.raises(CaseError) as caught:
        case_state(case_of({**CASE, "date": "soon", "instruments": [bad]}, "c"), BOOK)
    assert any("instrument p" in p for p in caught.value.problems)
    assert any(p.startswith("date:") for p in caught.value.problems)
