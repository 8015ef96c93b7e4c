"""`diagnose knowledge new`: answers through a pipe become a valid entry; refusals, drafts, what is still missing."""

from __future__ import annotations

import io
import sys
import tomllib
from collections.abc import Callable
from functools import cache
from pathlib import Path
from typing import Annotated, Any

import msgspec
import pytest

from diagnose.model import Book, Cause, load_book, shipped_knowledge
from diagnose.model.fields import RECORDS, fields_of
from diagnose.model.lint import lint
from diagnose.model.record import said
from diagnose.terminal.matcher import find
from diagnose.writing.questions import Questions
from diagnose.writing.talk import EndOfInputError, Talk
from tests.small_knowledge import write_small

Run = Callable[..., tuple[int, str, str]]

CAUSE = """arm
painted
Arm is painted shut
Paint stands on two jets of six.
Somebody painted the room; tape the jets next time.
Paint peels with a nail, lime does not.
common
n
Isolate at the switch.
Clean the jets.
Run a rack.


ten
10
jets

1
isolated
technician
1
look_cracked

n


judgement


"""
COMPLAINT = """1
rinse_loud
Rinse is loud
it roars
it whistles at the end

arm.short


arm.pressure




judgement


"""
CHECK = """arm
tap
Tap on the arm
Tap on the arm. Does it ring?
Stop the machine.
Tap on it.



n
n
eyes
1
none
idle hot
operator

arm.cracked

rings
it rings
y
dull
it is dull
n

2
2

1
1



judgement


"""
EVENT = """arm
leaks
Water leaves the arm elsewhere
at_least
2
cracked
capless
choked


judgement


"""


@pytest.fixture
def run(tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capfd: pytest.CaptureFixture[str]) -> Run:
    """Run the command on the small knowledge with these lines typed: (exit code, stdout, stderr)."""
    from diagnose.cli import main

    small = write_small(tmp_path / "ours")
    monkeypatch.setattr("diagnose.model.shipped_knowledge", lambda: small)
    monkeypatch.setenv("DIAGNOSE_HOME", str(tmp_path / "home"))
    monkeypatch.setenv("COLUMNS", "80")

    def go(typed: str, *words: str) -> tuple[int, str, str]:
        monkeypatch.setattr(sys, "stdin", io.StringIO(typed))
        monkeypatch.setattr(sys, "argv", ["diagnose", "knowledge", "new", *words])
        with pytest.raises(SystemExit) as end:
            main()
        out, err = capfd.readouterr()
        return int(end.value.code or 0), out, err

    return go


def own(tmp_path: Path, name: str) -> dict[str, Any]:
    return tomllib.loads((tmp_path / "home" / "knowledge" / name).read_text("utf-8"))


def book_with_own(tmp_path: Path):  # type: ignore[no-untyped-def]
    return load_book(tmp_path / "ours", tmp_path / "home" / "knowledge")


def test_a_cause_is_written_and_what_is_missing_is_said(run: Run, tmp_path: Path) -> None:
    code, out, err = run(CAUSE, "cause")
    assert (code, err) == (0, "")
    written = own(tmp_path, "assemblies/arm.toml")
    assert written["title"] == "Rinse arm"
    assert written["cause"][0]["id"] == "painted"
    assert written["cause"][0]["repair"] == ["Isolate at the switch.", "Clean the jets.", "Run a rack."]
    assert "arm.painted" in book_with_own(tmp_path).causes
    assert "'ten' is no number" in out
    assert "Still missing:" in out
    assert "arm.painted: stands under no complaint" in " ".join(out.split())
    assert not (tmp_path / "home" / "drafts" / "cause.json").exists()
    assert (tmp_path / "ours" / "assemblies" / "arm.toml").read_text("utf-8").count("painted") == 0


def test_a_cause_is_attached_by_copies_and_then_nothing_is_missing(run: Run, tmp_path: Path) -> None:
    attached = "short\n\nlook_cracked\npressure\n\n\n2\n2\n\n\n1\n2\n\n"
    code, _, err = run(CAUSE + attached, "cause")
    assert (code, err) == (0, "")
    book = book_with_own(tmp_path)
    assert book.events["arm.short"].of == ["arm.cracked", "arm.capless", "arm.choked", "arm.painted"]
    assert book.checks["arm.look_cracked"].looks_at == ["arm.cracked", "arm.painted"]
    assert book.checks["arm.look_cracked"].shows["arm.painted"] == {"broken": "seldom"}
    assert book.checks["arm.pressure"].looks_at[-1] == "arm.painted"
    assert book.checks["arm.pressure"].reading is not None
    assert book.places["arm.pressure"].replaces
    still = {p.what for p in lint(book)}
    assert not any("stands under no complaint" in what or "no check looks at it" in what for what in still)
    # A second cause goes into the same copy, which stands in the shop's file once.
    again = CAUSE.replace("painted", "waxed")
    code, _, err = run(again + "short\n\n\n", "cause")
    assert (code, err) == (0, "")
    assert book_with_own(tmp_path).events["arm.short"].of[-2:] == ["arm.painted", "arm.waxed"]
    assert len(own(tmp_path, "assemblies/arm.toml")["event"]) == 1


def test_a_check_and_a_complaint_are_written(run: Run, tmp_path: Path) -> None:
    assert run(CHECK, "check")[0] == 0
    assert run(COMPLAINT, "complaint")[0] == 0
    book = book_with_own(tmp_path)
    check = book.checks["arm.tap"]
    assert list(check.outcomes) == ["rings", "dull"]
    assert check.shows == {"arm.cracked": {"dull": "seldom"}, "none": {"rings": "nearly always"}}
    assert book.complaints["rinse_loud"].kitchen == ["it roars", "it whistles at the end"]
    assert book.complaints["rinse_loud"].of == ["arm.short"]


def test_an_event_asks_how_many_only_where_it_takes_some(run: Run, tmp_path: Path) -> None:
    assert run(EVENT + "no_rinse\n\n", "event")[0] == 0
    book = book_with_own(tmp_path)
    assert (book.events["arm.leaks"].gate, book.events["arm.leaks"].k) == ("at_least", 2)
    assert book.complaints["no_rinse"].of == ["arm.short", "arm.leaks"]
    code, out, _ = run(EVENT.replace("leaks", "drips").replace("at_least\n2\n", "any\n"), "event")
    assert code == 0
    assert "3 of 7: gate" in out
    assert "of 7: k" not in out
    assert book_with_own(tmp_path).events["arm.drips"].k is None


def test_an_assembly_is_a_file_to_write_into(run: Run, tmp_path: Path) -> None:
    code, out, _ = run("arm\nHose\nhose_set\nHoses and unions.\nHoses and unions\n", "assembly")
    assert code == 0
    assert "arm stands already" in out
    assert "'Hose' is no id" in out
    assert "no full stop" in out
    assert own(tmp_path, "assemblies/hose_set.toml") == {"title": "Hoses and unions"}
    typed = CAUSE.replace("arm\npainted", "hose_set\npainted").replace("look_cracked", "arm.look_cracked")
    assert run(typed, "cause")[0] == 0
    assert "hose_set.painted" in book_with_own(tmp_path).causes


@pytest.mark.parametrize("kind", ["cause", "check", "complaint"])
def test_an_end_at_any_line_keeps_all_and_goes_on_there(run: Run, tmp_path: Path, kind: str) -> None:
    typed = {"cause": CAUSE, "check": CHECK, "complaint": COMPLAINT}[kind]
    lines = typed.splitlines(keepends=True)
    for cut in range(1, len(lines)):
        code, _, err = run("".join(lines[:cut]), kind)
        assert (code, err) == (3, f"diagnose: kept as a draft; go on with: diagnose knowledge new {kind}\n")
        code, _, err = run("1\n" + "".join(lines[cut:]), kind)
        assert (code, err) == (0, "")
        (path,) = (tmp_path / "home" / "knowledge").rglob("*.toml")
        entry = tomllib.loads(path.read_text("utf-8"))[kind][0]
        path.unlink()
        if cut == 1:
            first = entry
        assert entry == first, cut


def test_a_draft_can_be_forgotten(run: Run, tmp_path: Path) -> None:
    run("arm\npainted\nArm is painted shut\n", "cause")
    code, out, _ = run("9\n2\n" + CAUSE.replace("painted", "waxed"), "cause")
    assert code == 0
    assert "Arm is painted shut" in out
    assert own(tmp_path, "assemblies/arm.toml")["cause"][0]["id"] == "waxed"


def test_nothing_typed_keeps_nothing(run: Run, tmp_path: Path) -> None:
    code, _, err = run("", "cause")
    assert (code, err) == (3, "diagnose: stopped; nothing was written\n")
    assert not (tmp_path / "home" / "drafts").exists() or not list((tmp_path / "home" / "drafts").iterdir())


def test_fields_are_changed_before_it_is_written(run: Run, tmp_path: Path) -> None:
    changed = (
        CHECK.removesuffix("\n") + "2\nKnock on the arm\n" + "14\ncracked\ncapless\n\n" + "2\n2\n\n2\n1\n\n1\n1\n\n\n"
    )
    names = [f.name for f in msgspec.structs.fields(RECORDS["Check"])]
    changed = changed.replace("14\ncracked", f"{names.index('looks_at') + 1}\ncracked")
    code, _, err = run(changed, "check")
    assert (code, err) == (0, "")
    check = book_with_own(tmp_path).checks["arm.tap"]
    assert check.title.startswith("Knock on the arm")
    assert check.looks_at == ["arm.cracked", "arm.capless"]
    assert set(check.shows) == {"arm.cracked", "arm.capless", "none"}


def test_left_at_the_end_it_is_a_draft(run: Run, tmp_path: Path) -> None:
    code, _, err = run(CAUSE.removesuffix("\n") + "q\n", "cause")
    assert code == 3
    assert "kept as a draft" in err
    assert not (tmp_path / "home" / "knowledge").exists()
    assert run("1\n\n", "cause")[0] == 0


def test_into_names_another_folder_and_ours_is_never_the_default(run: Run, tmp_path: Path) -> None:
    before = {p: p.read_bytes() for p in (tmp_path / "ours").rglob("*.toml")}
    assert run(CAUSE, "cause", "--into", str(tmp_path / "shop"))[0] == 0
    assert (tmp_path / "shop" / "assemblies" / "arm.toml").exists()
    assert {p: p.read_bytes() for p in (tmp_path / "ours").rglob("*.toml")} == before
    code, _, err = run(CAUSE, "cause", "--into", "/proc/nowhere")
    assert code == 4
    assert "can't be written" in err


def test_an_id_that_stands_already_is_refused(run: Run) -> None:
    code, out, _ = run(CAUSE.replace("painted\n", "cracked\nPainted\npainted\n", 1), "cause")
    assert code == 0
    assert "arm.cracked stands already" in " ".join(out.split())
    assert "'Painted' is no id" in out


def test_what_is_not_there_yet_is_taken_when_said_twice(run: Run, tmp_path: Path) -> None:
    code, out, _ = run(CAUSE.replace("look_cracked\n", "arm.rub\narm.rub\n"), "cause")
    assert code == 0
    assert "Nothing is called arm.rub yet" in out
    assert own(tmp_path, "assemblies/arm.toml")["cause"][0]["prove_by"] == ["arm.rub"]
    assert "names arm.rub, which does not exist" in " ".join(out.split())


def answers(lines: list[str]) -> Talk:
    waiting = list(lines)
    return Talk(lambda prompt: waiting.pop(0) if waiting else None, lambda told: None, 80)


@cache
def shipped() -> Book:
    return load_book()


def questions(lines: list[str]) -> Questions:
    return Questions(shipped(), answers(lines), lambda w, t: [m.id for m in find(w, t)], "rinse_arms")


def test_a_new_field_is_asked_without_touching_the_command() -> None:
    fresh = msgspec.defstruct(
        "Cause",
        [
            ("smell", Annotated[str, said("what it smells of")]),
            ("noises", Annotated[list[str], said("what is heard")]),
            ("odd", Annotated[dict[str, int], said("a kind of value nobody thought of", "table of something")]),
            ("often", Annotated[str, said("how often", "word of frequency")], "rare"),
        ],
        bases=(Cause,),
        frozen=True,
        kw_only=True,
    )
    names = [f.name for f in msgspec.structs.fields(fresh)]
    assert set(names) > {"smell", "noises", "odd", "often", "told_apart"}
    asked = questions(["burnt", "hum", "click", "", "{ a = }", "{ a = 1 }", ""])
    kept: dict[str, Any] = dict.fromkeys(name for name in names if name not in ("smell", "noises", "odd", "often"))
    asked.record(fresh, kept, lambda: None)
    assert {k: v for k, v in kept.items() if v} == {"smell": "burnt", "noises": ["hum", "click"], "odd": {"a": 1}}
    assert kept["often"] is None


def test_a_reading_with_bands_and_a_shift() -> None:
    asked = questions(["y", "pressure", "furlong", "psi", "", "5 F", "0 psi", "", ""])
    field = {f.name: f for f in fields_of(RECORDS["Check"])}
    reading = asked.ask(RECORDS["Check"], field["reading"], {})
    assert reading == {"quantity": "pressure", "unit": "psi", "least": "0 psi"}
    low, good = "limit.rinse_pressure.low", "good"
    asked = questions(["low", "low", "n", "", "plate.nothing", low, good, good, "y", low, "", ""])
    asked.whole["reading"] = reading
    outcomes = asked.ask(RECORDS["Check"], field["outcomes"], {})
    assert outcomes == {
        "low": {"title": "low", "good": False, "high": "limit.rinse_pressure.low"},
        "good": {"title": "good", "good": True, "low": "limit.rinse_pressure.low"},
    }
    asked = questions(["y", "last_done", "electrical work, plumbing work", "several times", "", "n"])
    shifts = asked.ask(RECORDS["Cause"], {f.name: f for f in fields_of(RECORDS["Cause"])}["shifts"], {})
    assert shifts == [{"when": "last_done", "among": ["electrical work", "plumbing work"], "by": "several times"}]


def test_published_asks_for_its_source_and_judgement_does_not() -> None:
    book = load_book()
    source = next(iter(book.sources))
    basis = {f.name: f for f in fields_of(RECORDS["Cause"])}["basis"]
    asked = questions(["published", source, "4-501.113", ""])
    assert asked.ask(RECORDS["Cause"], basis, {}) == {"kind": "published", "source": source, "where": "4-501.113"}
    assert questions(["memory", ""]).ask(RECORDS["Cause"], basis, {}) == {"kind": "memory"}
    with pytest.raises(EndOfInputError):
        questions(["published"]).ask(RECORDS["Cause"], basis, {})


def test_texts_no_screen_can_show_are_refused_at_once() -> None:
    told: list[str] = []
    lines = ["w" * 60, "a \u2603", "", "fine"]
    asked = questions([])
    asked.talk = Talk(lambda prompt: lines.pop(0) if lines else None, told.extend, 80)
    assert asked.ask(RECORDS["Cause"], {f.name: f for f in fields_of(RECORDS["Cause"])}["why"], {}) == "fine"
    text = " ".join(" ".join(told).split())
    assert "use shorter words" in text
    assert "use plain characters" in text
    assert "this one is needed" in text


@pytest.mark.parametrize("width", [80, 45])
def test_every_question_says_what_is_wanted_and_fits(width: int) -> None:
    from diagnose.view.layout import text_width

    assert shipped_knowledge().is_dir()
    for record in (RECORDS[k] for k in ("Cause", "Check", "Complaint", "Event")):
        for field in fields_of(record):
            told: list[str] = []
            asked = questions([])
            asked.talk = Talk(lambda prompt: None, told.extend, width)
            asked.whole.update(outcomes={"a": {"title": "x"}}, looks_at=["rinse_arms.jets_worn"])
            with pytest.raises(EndOfInputError):
                asked.ask(record, field, {"quantity": "pressure", "unit": "psi"})
            assert field.means.split()[0].strip("`,").casefold() in " ".join(told).casefold()
            assert max(map(text_width, told)) <= width
