"""From events to an assessment: what a repair, and what was seen at it, does to the ranking."""

from __future__ import annotations

import pytest

from diagnose.job import events as ev
from diagnose.job.assess import Assessment, assess
from diagnose.job.folding import fold
from diagnose.model import load_book

BOOK = load_book()
OPEN, LEAD, COLD = "booster_electric.element_open", "booster_electric.lead_off", "supply_water.heater_set_low"
BEGUN = (
    ev.Opened(machine="two_tank_electric_208", type="two_tank_electric_208"),
    ev.SafetyAnswered(),
    ev.ComplaintSaid("rinse_cold"),
)
PATTERN = ev.ReadingTaken("booster_electric.line_amps", {"L1": "48 A", "L2": "48 A", "L3": "83 A"})
TEPID = ev.ReadingTaken("supply_water.inlet_temperature", {"": "118 F"})
EVEN = ev.ReadingTaken("booster_electric.line_amps", {"L1": "83 A", "L2": "83 A", "L3": "84 A"})


RUNS_ON = (*BEGUN[:2], ev.ComplaintSaid("rinse_runs_on"))
ALWAYS_ON = "rinse_actuator.rinse_always_on"


def after(*events: ev.Event, begun: tuple[ev.Event, ...] = BEGUN) -> Assessment:
    records = [ev.Record(number=n, at="", writer="", event=e) for n, e in enumerate((*begun, *events), 1)]
    return assess(BOOK, fold(records, BOOK))


def p(assessment: Assessment, cause: str) -> float:
    return next(row.probability for row in assessment.rows if row.id == cause)


def test_a_part_found_sound_is_out_and_its_sibling_leads() -> None:
    before = after(PATTERN)
    assert before.rows[0].id == OPEN
    sound = after(PATTERN, ev.Repaired(OPEN, "sound"))
    assert p(sound, OPEN) == pytest.approx(0.0, abs=1e-12)
    assert sound.rows[0].id == LEAD
    assert sound.state.stage == 0, "nothing was changed"
    assert "booster_electric.line_amps" not in {o.id for o in sound.options}, "that reading still stands"


def test_a_part_found_faulty_explains_the_complaint_until_it_is_said_to_stand() -> None:
    mended = after(PATTERN, ev.Repaired(OPEN, "as expected"), EVEN)
    assert p(mended, OPEN) < 0.01
    assert max(row.probability for row in mended.rows) < 0.1
    still = after(PATTERN, ev.Repaired(OPEN, "as expected"), EVEN, ev.ComplaintSaid("rinse_cold"))
    assert sum(row.probability for row in still.rows) > 0.95
    assert p(still, OPEN) < 0.01, "the currents say that this repair took"


def test_what_was_read_before_the_repair_finds_the_second_fault() -> None:
    first = after(PATTERN, TEPID)
    assert {first.rows[0].id, *(r.id for r in first.rows[1:6])} >= {OPEN}
    still = after(PATTERN, TEPID, ev.Repaired(OPEN, "as expected"), EVEN, ev.ComplaintSaid("rinse_cold"))
    water = sum(row.probability for row in still.rows if row.id.startswith("supply_water."))
    assert water > 0.85


def test_reasons_tell_what_was_seen() -> None:
    told = after(PATTERN, ev.Repaired(OPEN, "sound")).reasons(LEAD)
    assert any("it was sound" in reason.says and reason.bits > 1 for reason in told)


def test_ruled_out_is_out() -> None:
    assert p(after(PATTERN, ev.RuledOut(OPEN)), OPEN) == pytest.approx(0.0, abs=1e-12)


def test_a_state_without_a_machine_is_refused() -> None:
    with pytest.raises(ValueError, match="not known yet"):
        assess(BOOK, fold([], BOOK))


def test_readings_that_contradict_are_pointed_out() -> None:
    """The currents say that an element is out, the ohms that all are whole."""
    pairs = dict.fromkeys(("T1-T2", "T2-T3", "T3-T1"), "2.9 ohm")
    (said,) = after(PATTERN, ev.ReadingTaken("booster_electric.terminal_ohms", pairs)).conflicts
    assert "48 48 83 A" in said
    assert "2.9 2.9 2.9 ohm" in said
    assert "again" in said


def test_readings_that_agree_are_not() -> None:
    open_pair = {"T1-T2": "8.7 ohm", "T2-T3": "4.3 ohm", "T3-T1": "4.3 ohm"}
    assert after(PATTERN, ev.ReadingTaken("booster_electric.terminal_ohms", open_pair)).conflicts == ()


def test_what_is_not_listed_says_for_which_complaint_when_there_are_two() -> None:
    titles = [row.title for row in after(ev.ComplaintSaid("racks_jam")).rows if row.kind == "unlisted"]
    assert sorted(titles) == [
        "something not listed here (Final rinse too cold)",
        "something not listed here (Racks jam)",
    ]
    assert [row.title for row in after().rows if row.kind == "unlisted"] == ["something not listed here"]


def test_what_is_not_listed_is_one_row_for_all_events() -> None:
    known = after(PATTERN)
    (row,) = (row for row in known.rows if row.kind == "unlisted")
    leaves = [leaf for leaf in known.solution.causes if leaf.startswith("unlisted.")]
    assert row.id == "unlisted.rinse_cold"
    assert row.probability == pytest.approx(sum(known.solution.posterior[leaf] for leaf in leaves))
    assert row.probability > known.solution.posterior[row.id]
    assert p(after(PATTERN, ev.RuledOut(row.id)), row.id) == pytest.approx(0.0, abs=1e-12)


def test_an_event_that_was_shown_and_has_no_listed_cause_left_is_told() -> None:
    seen = (
        ev.ReadingTaken("rinse_actuator.rinse_end", outcome="never"),
        ev.ReadingTaken("rinse_actuator.under_arms", outcome="nothing"),
    )
    causes = BOOK.events[ALWAYS_ON].of
    before = after(*seen, begun=RUNS_ON)
    assert before.rows[0].id in causes
    assert before.unlisted_behind == ()
    none_left = after(*seen, *(ev.RuledOut(cause) for cause in (*causes, "rinse_valve.leaks_by")), begun=RUNS_ON)
    assert none_left.rows[0].id == "unlisted.rinse_runs_on"
    assert none_left.unlisted_behind == (BOOK.title(ALWAYS_ON),)
    assert "never ends" in " ".join(reason.says for reason in none_left.reasons("unlisted.rinse_runs_on"))


def test_statements_that_cannot_all_be_so_are_left_aside_and_told() -> None:
    """The complaint was said to be gone, and then a part that brings it about was found faulty all the same."""
    gone = (ev.Repaired(OPEN, "as expected"), EVEN, ev.ComplaintSaid("rinse_cold", present=False))
    odd = after(PATTERN, *gone, ev.Repaired(COLD, "as expected"))
    (said,) = odd.left_aside
    assert said.endswith("left aside is that the complaint was gone: Final rinse too cold.")
    assert odd.conflicts[0] == said


def test_ruling_everything_out_still_leaves_a_ranking() -> None:
    rows = after().rows
    bare = after(*(ev.RuledOut(row.id) for row in rows))
    assert len(bare.left_aside) == 1
    assert sum(row.probability for row in bare.rows) == pytest.approx(1.0)


def test_more_readings_than_can_be_weighed_lose_the_oldest(monkeypatch: pytest.MonkeyPatch) -> None:
    import diagnose.inference.conditioning as arithmetic
    from diagnose.inference.kept import Kept

    trips = ev.ComplaintSaid("motor_trips")
    amps = ev.ReadingTaken("pump_motor.line_amps", {"L1": "8.0 A", "L2": "8.1 A", "L3": "7.9 A"})
    later = ev.ReadingTaken("exhaust_fan.line_amps", {"L1": "2.0 A", "L2": "2.0 A", "L3": "2.1 A"})
    whole = after(trips, amps, later)
    assert whole.left_aside == ()
    Kept.of(whole.tree, "solved", 1).clear()  # so that it is weighed anew
    monkeypatch.setattr(arithmetic, "WIDEST", 512)
    small = after(trips, amps, later)
    assert small.left_aside[0].endswith("left aside is an old one: Pump motor line currents.")
    assert len(small.situation.findings) + len(small.left_aside) == 2
    assert sum(row.probability for row in small.rows) > 0.99
