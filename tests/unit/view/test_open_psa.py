"""The Open-PSA export: its shape by the standard, and the same top probability from an independent solver."""

from __future__ import annotations

import math
import re
from pathlib import Path
from xml.etree import ElementTree

import pytest

from diagnose.inference import FaultTree, Situation, solve
from diagnose.model import Book, Machine, load_book
from diagnose.view.drawn.chart import Chart
from diagnose.view.drawn.open_psa import open_psa_lines, safe_names
from tests.decision_diagram import top_probability
from tests.open_psa import CLOSE, SOLVER, agrees, solve_xml
from tests.small_tree import BOOK, MACHINE, NASTY, nasty_book

STORED = Path(__file__).resolve().parents[2] / "golden" / "open_psa"
# What scram 0.16.2 printed for the two stored files: `scram --probability 1 --bdd FILE`.
PRINTED = {"no_spray_electric": "0.0482944", "no_spray_whole": "0.0673286"}
TYPES = ("two_tank_electric_208", "two_tank_steam_208")
NAME = re.compile(r"[A-Za-z][A-Za-z0-9_]*(-[A-Za-z0-9_]+)*")
needs_solver = pytest.mark.skipif(
    SOLVER is None, reason="the solver scram is not installed; stored digits judge instead"
)


@pytest.fixture(scope="module")
def book() -> Book:
    return load_book()


def prior(tree: FaultTree, complaint: str) -> float:
    return math.exp(solve(tree, Situation(((complaint, 0, True),))).log_evidence)


def charts(book: Book, kind: str) -> list[Chart]:
    found = [Chart(book, name, Machine(kind, book.machines[kind])) for name in book.complaints]
    return [chart for chart in found if chart.possible]


def stored() -> dict[str, Chart]:
    return {"no_spray_electric": Chart(BOOK, "no_spray", MACHINE), "no_spray_whole": Chart(BOOK, "no_spray")}


@needs_solver
@pytest.mark.parametrize("kind", TYPES)
def test_every_complaint_has_the_probability_an_independent_solver_finds(book: Book, kind: str, tmp_path: Path) -> None:
    wrong = []
    for chart in charts(book, kind):
        top = safe_names([chart.complaint])[chart.complaint]
        if not agrees("\n".join(open_psa_lines(chart)), top, prior(chart.tree, chart.complaint), tmp_path):
            wrong.append(chart.complaint)
    assert len(charts(book, kind)) > 5
    assert not wrong


@needs_solver
def test_the_judge_sees_a_difference_in_the_ninth_digit(tmp_path: Path) -> None:
    chart = stored()["no_spray_whole"]
    xml, ours = "\n".join(open_psa_lines(chart)), prior(chart.tree, "no_spray")
    assert agrees(xml, "no_spray", ours, tmp_path)
    assert not agrees(xml, "no_spray", ours * (1 + 3 * CLOSE), tmp_path)
    assert not agrees(xml, "no_spray", ours * (1 - 3 * CLOSE), tmp_path)


@needs_solver
@pytest.mark.parametrize("name", PRINTED)
def test_the_stored_digits_are_what_the_solver_prints(name: str, tmp_path: Path) -> None:
    assert solve_xml((STORED / f"{name}.xml").read_text("utf-8"), tmp_path) == {"no_spray": PRINTED[name]}


@pytest.mark.parametrize("name", PRINTED)
def test_our_probability_has_the_digits_the_solver_printed(name: str) -> None:
    chart = stored()[name]
    assert f"{prior(chart.tree, 'no_spray'):.6g}" == PRINTED[name]


@pytest.mark.parametrize("name", PRINTED)
def test_the_export_is_the_stored_file(name: str, request: pytest.FixtureRequest) -> None:
    printed, path = "\n".join(open_psa_lines(stored()[name])) + "\n", STORED / f"{name}.xml"
    if request.config.getoption("--accept"):
        path.write_text(printed, "utf-8")
    else:
        assert printed == path.read_text("utf-8")


@pytest.mark.parametrize("kind", [*TYPES, None])
def test_every_complaint_has_the_probability_of_a_decision_diagram(book: Book, kind: str | None) -> None:
    whole = [Chart(book, name) for name in book.complaints]
    for chart in charts(book, kind) if kind else whole:
        ours = prior(chart.tree, chart.complaint)
        assert top_probability(chart.tree, chart.complaint) == pytest.approx(ours, rel=1e-9), chart.complaint


def test_shape_and_values(book: Book) -> None:
    """Every name is safe, unique and declared once; every reference is declared; formulas are those of the tree."""
    for chart in [*charts(book, TYPES[0]), Chart(book, "rinse_cold"), *stored().values()]:
        root = ElementTree.fromstring("\n".join(open_psa_lines(chart)).encode())
        assert root.tag == "opsa-mef"
        (tree,) = root.findall("define-fault-tree")
        declared = {"gate": {}, "basic-event": {}}  # type: ignore[var-annotated]
        for element in tree:
            if element.tag != "label":
                name, node = element.attrib["name"], chart.tree.nodes[_id(element)]
                assert NAME.fullmatch(name)
                assert [part.tag for part in element][:2] == ["label", "attributes"]
                declared[element.tag.removeprefix("define-")][name] = (node, element[2])
        assert not declared["gate"].keys() & declared["basic-event"].keys()
        assert {n.id for n, _ in declared["gate"].values()} | {
            n.id for n, _ in declared["basic-event"].values()
        } == set(chart.tree.below(chart.complaint))
        for node, value in declared["basic-event"].values():
            assert (value.tag, float(value.attrib["value"])) == ("float", node.prior)
        for node, formula in declared["gate"].values():
            members = [formula] if len(node.inputs) == 1 else list(formula)
            assert [declared[m.tag][m.attrib["name"]][0].id for m in members] == list(node.inputs)
            if len(node.inputs) > 1:
                wanted = "or" if node.need == 1 else "and" if node.need == len(node.inputs) else "atleast"
                assert formula.tag == wanted
                assert formula.get("min") == (str(node.need) if wanted == "atleast" else None)


def _id(element: ElementTree.Element) -> str:
    attribute = element.find("attributes/attribute")
    assert attribute is not None
    return attribute.attrib["value"]


def test_every_kind_of_gate_is_written() -> None:
    text = "\n".join(open_psa_lines(stored()["no_spray_whole"]))
    assert all(f"<{gate}>" in text for gate in ("or", "and", 'atleast min="2"'))


def test_any_title_is_well_formed() -> None:
    root = ElementTree.fromstring("\n".join(open_psa_lines(Chart(nasty_book(), "no_spray"))).encode())
    labels = [label.text for label in root.iter("label")]
    assert f"{NASTY} feed.valve_shut" in labels


def test_names_are_safe_and_never_alike() -> None:
    ids = ["a.b", "a-b", "a..b", "9lives", "ä.ö", "-", "a.b-2", "x y"]
    names = safe_names(ids)
    assert len(set(names.values())) == len(ids)
    assert all(NAME.fullmatch(name) for name in names.values())
