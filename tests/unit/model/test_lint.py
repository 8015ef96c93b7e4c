"""Each lint stays silent on sound knowledge and speaks on knowledge broken in its way."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

import pytest

from diagnose.model import load_book
from diagnose.model.lint import LINTS, lint
from tests.small_knowledge import write_small

# A sheet of a handover of one line, with something that sets it.
SHEET = """
title = "Rinse"
order = 1

[[line]]
id = "pressure_line"
check = "arm.pressure"
adjust = ["screw"]
opens = { high = "no_rinse" }
basis = { kind = "judgement" }

[[adjust]]
id = "screw"
title = "The screw"
how = ["Turn it.", "Read again."]
upsets = ["arm.pressure"]
minutes = 5
open = ["none"]
state = "isolated"
who = "technician"
cautions = []
basis = { kind = "judgement" }
"""


def sheet(change: str = "") -> dict[str, str]:
    """The sheet with one piece of it changed, `old => new`."""
    old, _, new = change.partition(" => ")
    assert old in SHEET
    return {"handover__rinse_sheet": SHEET.replace(old, new)}


def until(*fields: str, basis: str = '"judgement"') -> dict[str, str]:
    """The complaint with what the kitchen does meanwhile, once for each of the fields given."""
    told = ", ".join(f'{{ use = "stop", {each}, basis = {{ kind = {basis} }} }}' for each in fields)
    return {"complaints__rinse": f"unlisted = => until = [{told}]\nunlisted ="}


def stock(*names: str) -> dict[str, str]:
    """Knowledge in which these parts lie in the van."""
    return {"parts": f'[[stock]]\nid = "van"\nkept = "van"\nnames = {[*names]}\nbasis = {{ kind = "judgement" }}\n'}


# lint -> (what is broken, a piece of what must be said)
BROKEN = [
    ("references", {"assemblies__arm": 'of = ["cracked", => of = ["craked",'}, "did you mean arm.cracked?"),
    ("references", {"complaints__rinse": 'prove_by = ["arm.pressure"] => prove_by = ["arm.x"]'},
     "prove_by names arm.x"),
    ("tree", {"assemblies__arm": 'of = ["cracked", => of = ["short", "cracked",'}, "in a circle"),
    ("tree", {"assemblies__arm": 'gate = "any" => gate = "at_least"\nk = 5'}, "at_least needs k"),
    ("words", {"assemblies__arm": 'how_often = "common" => how_often = "daily"'},
     "'daily' is not on the frequency scale"),
    ("rows", {"assemblies__arm": 'choked = { high => clogged = { high'}, "shows has no row for arm.choked"),
    ("rows", {"assemblies__arm": 'choked = { high = => choked = { low ='}, "outcome high is named in no row"),
    ("rows", {"assemblies__arm": "good = true, => "}, "no outcome is marked good"),
    ("bands", {"assemblies__arm": 'high = "limit.pressure.low" => high = "12 psi"'}, "leave a hole or overlap"),
    ("bands", {"assemblies__arm": 'unit = "psi" => unit = "A"'}, "'A' is no unit of pressure"),
    ("bands", {"limits__rinse": '"15 psi" => "15 V"'}, "V is a unit of voltage"),
    ("bands", {"limits__rinse": 'low = ["15 psi", "100 kPa"] => low = []'}, "that limit is open there"),
    ("basis", {"limits__rinse": '"common practice" => "published", source = "lore"'}, "source lore is not listed"),
    ("context", {"assemblies__arm": 'how_often = "common" => how_often = "common"\n'
     'shifts = [{ when = "age", among = ["ancient"], by = "twice" }]'}, "age has no answer 'ancient'"),
    ("machines", {"machines__plain": 'vents = "both ends" => vents = "roof"'}, "vents can't be 'roof'"),
    ("machines", {"machines__plain": 'volts = "208 V" => volts = "208 psi"'}, "plate figure volts"),
    ("instruments", {"instruments": 'absolute = "2 psi" => share = 3.0'}, "a share of 3 is no accuracy"),
    ("instruments", {"instruments": 'absolute = "2 psi" => absolute = "2 A"'}, "is a unit of current"),
    ("instruments", {"instruments": 'quantity = "pressure" => quantity = "flow"'}, "no instrument measures pressure"),
    ("access", {"assemblies__arm": 'open = ["none"] => open = ["none", "front panel"]'}, "open says none and more"),
    ("access", {"assemblies__arm": "cautions = [] => cautions = ['isolate']",
     "cautions": 'id = "wet_floor" => id = "isolate"'}, "isolate is not work for an operator"),
    ("aloud", {"assemblies__arm": 'repair = ["Isolate at the switch.", => aloud = ["Stop it.", "Look at it."]\n'
     'repair = ["Isolate at the switch.",'}, "words for the telephone, but it needs technician"),
    ("aloud", {"assemblies__arm": 'ask = "What does => aloud = "Open the front panel. What is there?"\nask = "What does'
     }, "aloud, it opens a cover: 'Open the front panel'"),
    ("aloud", {"assemblies__arm": 'ask = "What does => aloud = "Is the solenoid warm?"\nask = "What does'},
     "a word no kitchen knows: 'solenoid'"),
    ("aloud", {"assemblies__arm": 'instrument = "panel gauge" => aloud = "What does it read?"\n'
     'instrument = "clamp meter"'}, "it needs a clamp"),
    ("aloud", until('say = []'), "until says nothing"),
    ("aloud", until('ask_only = ["arm.pressure"], say = ["Off."]'), "arm.pressure is asked, but not aloud"),
    ("aloud", until('say = ["Off."]', 'say = ["On."]'), "is never said"),
    ("references", until('ask_only = ["arm.x"], say = ["Off."]'), "ask_only names arm.x"),
    ("machines", until('fits = { tank = [1] }, say = ["Off."]'), "fits names tank, which is no trait"),
    ("basis", until('say = ["Off."]', basis='"published", source = "lore", where = "1"'), "source lore is not listed"),
    ("aloud", {"context": 'ask = "How old?" => ask = "How old?"\naloud = "Take the cover off: how old is it?"'},
     "it opens a cover"),
    ("aloud", {"tell_apart": '[[tell_apart]]\nid = "heat"\naloud = "How?"\nanswers = [{ answer = "x" }]'},
     "fewer than two answers"),
    ("parts", stock("two"), "no stock has the part 'one'"),
    ("parts", stock("one", "two"), "'two': no cause needs it"),
    ("parts", stock("one", "one"), "'one' stands twice"),
    ("hazards", {"assemblies__arm": '["Stop the machine.", => ["Pour in the delimer.",'}, "no caution chemical"),
    ("hazards", {"assemblies__arm": 'open = ["none"]\nstate = "running" => open = ["control box"]\nstate = "running"'},
     "no caution live_parts"),
    ("proofs", {"assemblies__arm": 'prove_by = ["look_cracked"] => prove_by = ["look_capless"]'},
     "no check in prove_by"),
    ("used", {"complaints__rinse": 'of = ["arm.short"] => of = ["arm.choked"]'}, "stands under no complaint"),
    ("references", sheet('check = "arm.pressure" => check = "arm.presure"'), "did you mean arm.pressure?"),
    ("references", sheet('upsets = ["arm.pressure"] => upsets = ["arm.x"]'), "upsets names arm.x"),
    ("hazards", sheet('"Turn it." => "Pour in the delimer."'), "no caution chemical"),
    ("sheet", sheet('high = "no_rinse" => blue = "no_rinse"'), "opens names outcome blue"),
    ("sheet", sheet('high = "no_rinse" => good = "no_rinse"'), "which is good"),
    ("sheet", sheet('high = "no_rinse" => high = "no_rince"'), "which does not exist"),
    ("sheet", sheet('title = "Rinse"\norder = 1 => '), "has no title and order"),
    ("sheet", sheet('adjust = ["screw"] => '), "no line is set by it"),
    ("sheet", sheet('id = "pressure_line" => id = "screw"'), "has the same id"),
    ("texts", {"assemblies__arm": '"The arm is cracked" => "The arm is cracked."'}, "the title is no title"),
    ("texts", {"assemblies__arm": f'"Fit a new one." => "Fit {"a" * 50}."'}, "has a word of 51 letters"),
]  # fmt: skip


def test_the_small_knowledge_is_sound(tmp_path: Path) -> None:
    assert [str(p) for p in lint(load_book(write_small(tmp_path)))] == []


@pytest.mark.parametrize(("name", "changes", "says"), BROKEN, ids=lambda x: x if isinstance(x, str) else "")
def test_broken_knowledge_is_named(tmp_path: Path, name: str, changes: dict[str, str], says: str) -> None:
    found = [str(p) for p in LINTS[name](load_book(write_small(tmp_path, **changes)))]
    assert any(says in p for p in found), found


def test_a_small_sheet_is_sound(tmp_path: Path) -> None:
    assert [str(p) for p in lint(load_book(write_small(tmp_path, **sheet())))] == []


def test_siblings_that_nothing_tells_apart_are_named(tmp_path: Path) -> None:
    book = load_book(write_small(tmp_path))
    looks = {"arm.look_cracked", "arm.look_capless"}
    blind = replace(book, checks={name: c for name, c in book.checks.items() if name not in looks})
    (problem,) = LINTS["separate"](blind)
    assert "no check tells it from arm.capless under arm.short" in str(problem)


def test_every_lint_is_broken_by_a_test() -> None:
    assert {name for name, _, _ in BROKEN} | {"separate"} == set(LINTS)
