"""The tree in every form: rows that fold, JSON by its schema, DOT and Mermaid whole and escaped."""

from __future__ import annotations

import json
import re
from collections.abc import Iterator

import jsonschema
import msgspec
import pytest

from diagnose.batch import tree_json
from diagnose.batch.tree import draw_tree, trace_cause
from diagnose.model import TRAITS, Book, Machine, load_book
from diagnose.view.drawn.chart import Chart, Folding, NoSuchNodeError
from diagnose.view.drawn.dot import dot_lines, dot_text
from diagnose.view.drawn.mermaid import mermaid_lines
from diagnose.view.drawn.text import tree_lines
from diagnose.view.layout import text_width
from diagnose.view.outline import Outline
from diagnose.view.traits import TRAIT_WORDS, restricted
from tests.small_tree import BOOK, MACHINE, NASTY, nasty_book

ALL = Folding(everything=True)
GRAPH = {"top": ["a", "b", "shared"], "a": ["shared", "c1"], "b": ["c2", "c3"], "shared": ["c4", "c5"]}


@pytest.fixture(scope="module")
def book() -> Book:
    return load_book()


def outline() -> Outline:
    return Outline(lambda node: GRAPH.get(node, ()))


def test_numbers_stay_whatever_folds() -> None:
    whole = {r.number: r.node for r in outline().rows(["top"])}
    assert whole == {
        "": "top", "1": "a", "1.1": "shared", "1.1.1": "c4", "1.1.2": "c5", "1.2": "c1",
        "2": "b", "2.1": "c2", "2.2": "c3", "3": "shared",
    }  # fmt: skip
    for shut in ("a", "b", "shared"):
        rows = outline().rows(["top"], closed=[shut])
        assert all(whole.get(r.number, r.node) == r.node for r in rows)
    assert outline().at("top", "2.2") == "c3"
    assert [outline().at("top", wrong) for wrong in ("4", "2.0", "2.x", "", "1.1.1.1")] == [None] * 5


def test_what_was_shown_is_named_again_with_its_number() -> None:
    again = outline().rows(["top"])[-1]
    assert (again.node, again.again, again.folded) == ("shared", "1.1", 2)
    # Where the first place is shut, the second shows it.
    rows = {r.number: r for r in outline().rows(["top"], closed=["a"])}
    assert (rows["3"].again, rows["3"].folded, rows["3.1"].node) == (None, 0, "c4")


def test_depth_and_folded_counts() -> None:
    rows = {r.number: r.folded for r in outline().rows(["top"], deepest=1)}
    assert rows == {"": 0, "1": 3, "2": 2, "3": 2}
    assert outline().leaves("top") == {"c1", "c2", "c3", "c4", "c5"}


def test_as_much_opens_as_the_screen_holds() -> None:
    chart = Chart(BOOK, "no_spray", MACHINE)
    pages = [tree_lines(chart, Folding(), 80, screen) for screen in (5, 18, 24, 40, 90)]
    assert [len(p) for p in pages] == sorted(len(p) for p in pages)
    for page, screen in zip(pages[1:], (18, 24, 40, 90), strict=True):
        assert len(page) <= screen
    assert pages[-1] == tree_lines(chart, ALL, 80, 5)
    assert sum("[+" in line for line in pages[0]) == 5


def test_unfold_fold_and_depth() -> None:
    chart = Chart(BOOK, "no_spray", MACHINE)

    def shown(**folding: object) -> set[str]:
        return {r.node for r in chart.rows(Folding(**folding), 5, lambda grown: 99)}  # type: ignore[arg-type]

    first = {"no_spray", "arm.dry", "feed.starved", "feed.crossed", "drive.weak", "unlisted.no_spray"}
    assert shown() == first
    assert shown(opened=("feed.crossed",)) == first | {"feed.tap_open", "feed.check_leaks"}
    by_number = next(r.number for r in chart.rows(Folding()) if r.node == "drive.weak")
    assert shown(opened=(by_number,)) == first | {"drive.belt", "drive.brush", "drive.volts"}
    assert shown(deepest=1) == first
    assert "feed.valve_shut" in shown(deepest=2)
    assert shown(everything=True) - shown(everything=True, closed=("drive.weak",)) == {
        "drive.belt", "drive.brush", "drive.volts",
    }  # fmt: skip
    assert shown(deepest=1, opened=("drive.weak",)) == first | {"drive.belt", "drive.brush", "drive.volts"}
    for wrong in ("feed.lock", "9", "drive"):
        with pytest.raises(NoSuchNodeError, match="nothing in this tree"):
            shown(opened=(wrong,))


def test_what_does_not_fit_the_machine_drops_out_and_is_named_without_one() -> None:
    with_machine = " ".join(tree_lines(Chart(BOOK, "no_spray", MACHINE), ALL, 80, 24))
    without = " ".join(tree_lines(Chart(BOOK, "no_spray"), ALL, 80, 24))
    assert "Steam locks" not in with_machine
    assert "Steam locks the feed line (steam booster)" in without
    assert "(all of)" in without
    assert "(at least two of)" in without


def test_every_trait_has_words() -> None:
    assert {(trait, value) for trait, values in TRAITS.items() for value in values} == set(TRAIT_WORDS)
    assert restricted({}) == ""


@pytest.fixture(scope="module")
def charts(book: Book) -> list[Chart]:
    return [Chart(book, name) for name in book.complaints]


@pytest.mark.parametrize("width", [80, 45, 30])
def test_every_complaint_fits_and_names_everything(charts: list[Chart], width: int) -> None:
    for chart in charts:
        for folding in (Folding(), ALL):
            lines = tree_lines(chart, folding, width, 24)
            assert max(text_width(line) for line in lines) <= width
        for row in chart.rows(Folding(deepest=1)):
            assert chart.title(row.node).split()[0] in " ".join(lines)


def test_the_ways_to_a_cause_are_all_there(book: Book) -> None:
    cause = "supply_power.fuse_open"
    machine = Machine("m", book.machines["two_tank_electric_208"])
    answer = json.loads(trace_cause(book, cause, machine, True, 80)[0])
    ways = {(p["complaint"], tuple(s["id"] for s in p["steps"])) for p in answer["paths"]}
    assert ways == set(_ways(book, cause))
    lines = trace_cause(book, cause, machine, False, 45)
    assert max(map(text_width, lines)) <= 45
    assert sum("Supply fuses" in line for line in lines) >= 1


def _ways(book: Book, cause: str) -> Iterator[tuple[str, tuple[str, ...]]]:
    """By climbing from the cause, with no machine in the way of what leads to this one."""

    def up(way: tuple[str, ...]) -> Iterator[tuple[str, ...]]:
        for parent in (*book.events, *book.complaints):
            if way[0] in book.children(parent):
                yield from up((parent, *way))
        if way[0] in book.complaints:
            yield way

    machine = Machine("m", book.machines["two_tank_electric_208"])
    for way in up((cause,)):
        tree = Chart(book, way[0], machine)
        if tree.possible and all(node in tree.tree.nodes for node in way):
            yield way[0], way


def drawn_of(chart: Chart) -> set[str]:
    """All below the complaint; of what is not listed, only that of the complaint itself is drawn."""
    below = chart.tree.below(chart.complaint)
    return {n for n in below if chart.tree.nodes[n].kind != "unlisted" or n == f"unlisted.{chart.complaint}"}


def test_json_keeps_its_schema_and_says_all(book: Book) -> None:
    for chart in (Chart(BOOK, "no_spray"), Chart(book, "rinse_cold")):
        answer = json.loads(tree_json.chart_json(chart, ALL))
        jsonschema.validate(answer, msgspec.json.schema(tree_json.TreeOut))
        assert {n["id"] for n in answer["nodes"]} == drawn_of(chart)
        at = {n["number"]: n for n in answer["nodes"]}
        assert all(n["parent"] in at for n in answer["nodes"] if n["depth"])
        assert answer["causes"] == len({n["id"] for n in answer["nodes"] if n["kind"] == "cause"})
    paths = json.loads(trace_cause(BOOK, "feed.valve_shut", None, True, 80)[0])
    jsonschema.validate(paths, msgspec.json.schema(tree_json.PathsOut))
    assert len(paths["paths"]) == 2


def test_every_key_of_the_json_is_documented() -> None:
    text = tree_json.__doc__ or ""
    for record in (tree_json.TreeOut, tree_json.NodeOut, tree_json.CheckOut, tree_json.PathsOut, tree_json.StepOut):
        for key in record.__struct_fields__:
            assert f"`{key}`" in text, key


QUOTED = re.compile(r'"(?:[^"\\]|\\.)*"')


@pytest.mark.parametrize("source", ["nasty", "rinse_cold", "motor_trips"])
def test_dot_is_whole(book: Book, source: str) -> None:
    chart = Chart(nasty_book(), "no_spray") if source == "nasty" else Chart(book, source)
    lines = dot_lines(chart, ALL)
    text = "\n".join(lines)
    bare = QUOTED.sub("Q", text)
    assert '"' not in bare
    assert bare.count("{") == bare.count("}") == 1 + sum("rank=same" in line for line in lines)
    assert bare.count("[") == bare.count("]")
    declared = {QUOTED.match(line.strip())[0] for line in lines if re.match(r'\s+"(?:[^"\\]|\\.)*" \[', line)}  # type: ignore[index]
    for line in lines:
        if " -> " in QUOTED.sub("Q", line):
            assert set(QUOTED.findall(line)[:2]) <= declared
    assert {dot_text(n) for n in drawn_of(chart)} <= declared
    if source == "nasty":
        assert all(re.search(r"feed\.valve_shut", line) for line in lines if "valve_shut\\l" in line)


@pytest.mark.parametrize("source", ["nasty", "rinse_cold", "motor_trips"])
def test_mermaid_is_whole(book: Book, source: str) -> None:
    chart = Chart(nasty_book(), "no_spray") if source == "nasty" else Chart(book, source)
    lines = mermaid_lines(chart, ALL)
    assert lines[0] == "flowchart LR"
    declared, drawn = set(), set()
    for line in lines[3:]:
        statement = line.strip()
        if found := re.fullmatch(r'(n\d+c?)(\[\[|\[|\(|>)"([^"]*)"(\]\]|\]|\))', statement):
            declared.add(found[1])
            inside = re.sub(r"#(?:\d+|quot|lt|gt|amp);|<br/>", "", found[3])
            assert not re.search(r'[#;<>"`]', inside), inside
        elif found := re.fullmatch(r"(n\d+) (?:---|-\.-) (n\d+c?)", statement):
            drawn |= {found[1], found[2]}
        else:
            assert re.fullmatch(r"class(Def)? [\w,]+ .*", statement), statement
    assert drawn == declared
    assert sum(not name.endswith("c") for name in declared) == len(drawn_of(chart))


def test_titles_come_through_unharmed() -> None:
    nasty = nasty_book()
    for form in ("text", "json", "dot", "mermaid", "svg", "open-psa"):
        lines = draw_tree(nasty, "no_spray", MACHINE, form, ALL, 80, 24)
        assert lines
    titles = [n["title"] for n in json.loads(draw_tree(nasty, "no_spray", MACHINE, "json", ALL, 80, 24)[0])["nodes"]]
    assert f"{NASTY} feed.tap_open" in titles
