"""The floors of the house: who may import whom, and which library where; nothing longer than a screenful of pages."""

from __future__ import annotations

import ast
import sys
from collections.abc import Iterator
from functools import cache
from pathlib import Path

from tests.each import holds_for_each

ROOT = Path(__file__).resolve().parents[2]
PACKAGE = ROOT / "diagnose"

# Room -> floor. A room imports only from floors below; rooms on one floor never import each other.
FLOORS = {
    "units": 0,
    "language": 0,
    "physics": 1,
    "model": 2,
    "simulator": 2,
    "formulas": 2,
    "rules": 3,
    "inference": 4,
    "job": 5,
    "handover": 6,
    "fleet": 6,
    "view": 7,
    "terminal": 8,
    "dialogue": 9,
    "batch": 9,
    "calculator": 9,
    "writing": 9,
    "practice": 9,
    "report": 9,
    "desk": 10,
    "cli": 11,
}
# Library -> rooms, or parts of rooms, that may import it. Anything else from outside the standard library is refused.
LIBRARIES = {
    "networkx": {"inference"},
    "numpy": {"inference", "simulator"},
    "msgspec": {"model", "job", "batch", "writing", "practice", "report", "desk"},
    "platformdirs": {"job"},
    "rich": {"view", "terminal"},
    "prompt_toolkit": {"terminal"},
    "click": {"cli"},
    "jinja2": {"report", "desk/web"},
    "markupsafe": {"report"},
    "fpdf": {"report"},
    "psycopg": {"fleet"},
    "starlette": {"desk/web"},
    "uvicorn": {"desk/web"},
}
# Imports a room may not do at all, though the floors would allow it.
LONGEST = 300

MODULES = sorted(PACKAGE.rglob("*.py"))


def room_of(path: Path) -> str | None:
    """The room a module stands in; None for the two modules at the door."""
    parts = path.relative_to(PACKAGE).parts
    return parts[0] if len(parts) > 1 else None


def shown(path: Path) -> str:
    return path.relative_to(PACKAGE).as_posix()


@cache
def parsed(path: Path) -> ast.Module:
    return ast.parse(path.read_text("utf-8"))


@cache
def imports(path: Path) -> tuple[tuple[str, int], ...]:
    """Every module named by an import, with its line, wherever in the file it stands."""
    return tuple(_imports(path))


def _imports(path: Path) -> Iterator[tuple[str, int]]:
    for node in ast.walk(parsed(path)):
        if isinstance(node, ast.Import):
            yield from ((alias.name, node.lineno) for alias in node.names)
        elif isinstance(node, ast.ImportFrom):
            assert node.level == 0, f"{path}:{node.lineno}: relative import"
            yield node.module or "", node.lineno
            if node.module == "diagnose":
                yield from ((f"diagnose.{alias.name}", node.lineno) for alias in node.names)


def test_every_room_is_on_a_floor() -> None:
    rooms = {room_of(path) for path in MODULES} - {None}
    assert rooms == set(FLOORS)


def test_imports_go_down_only() -> None:
    holds_for_each(MODULES, goes_down_only, shown)


def goes_down_only(path: Path) -> None:
    room = room_of(path)
    for name, line in imports(path):
        parts = name.split(".")
        if parts[0] != "diagnose" or len(parts) < 2 or parts[1].startswith("_"):
            continue
        other = parts[1]
        if room is None or other == room or other not in FLOORS:
            continue
        assert FLOORS[other] < FLOORS[room], f"{path}:{line}: {room} may not import {other}"


def test_libraries_stand_where_they_belong() -> None:
    holds_for_each(MODULES, has_its_libraries_only, shown)


def has_its_libraries_only(path: Path) -> None:
    for name, line in imports(path):
        library = name.split(".")[0]
        if library == "diagnose" or library in sys.stdlib_module_names:
            continue
        here = path.relative_to(PACKAGE).as_posix()
        allowed = [place for place in LIBRARIES.get(library, set()) if here.startswith(f"{place}/")]
        assert allowed, f"{path}:{line}: {library} is not for this room"


def test_modules_are_short_and_say_what_they_are() -> None:
    holds_for_each(MODULES, is_short_and_says_what_it_is, shown)


def is_short_and_says_what_it_is(path: Path) -> None:
    text = path.read_text("utf-8")
    tree = parsed(path)
    assert text.count("\n") <= LONGEST
    assert ast.get_docstring(tree), "a module begins by saying what it is for"
    names = [
        t.id
        for n in ast.walk(tree)
        if isinstance(n, ast.Assign | ast.AnnAssign)
        for t in (n.targets if isinstance(n, ast.Assign) else [n.target])
        if isinstance(t, ast.Name)
    ]
    assert "__all__" in names


def test_no_import_goes_round_in_a_circle() -> None:
    graph = {module_name(p): {n for n, _ in imports(p) if n.startswith("diagnose")} for p in MODULES}
    state: dict[str, int] = {}

    def walk(name: str, path: tuple[str, ...]) -> None:
        assert state.get(name) != 1, " -> ".join((*path, name))
        if state.get(name) == 2:
            return
        state[name] = 1
        for other in graph.get(name, ()):
            # A package's own __init__ gathers its modules; modules of it name each other in full.
            if other in graph and other != name and not name.startswith(other + "."):
                walk(other, (*path, name))
        state[name] = 2

    for name in graph:
        walk(name, ())


def module_name(path: Path) -> str:
    parts = path.relative_to(ROOT).with_suffix("").parts
    return ".".join(parts[:-1] if parts[-1] == "__init__" else parts)


def test_public_names_exist() -> None:
    import importlib

    for path in MODULES:
        if path.name == "__main__.py":
            continue
        module = importlib.import_module(module_name(path))
        missing = [name for name in module.__all__ if not hasattr(module, name)]
        assert not missing, f"{path}: {missing}"


def test_top_level_holds_what_is_planned() -> None:
    planned = {
        "README.md",
        "DEVELOPERS.md",
        "LICENSE",
        "pyproject.toml",
        "diagnose",
        "knowledge",
        "tests",
        "transcripts_demo",
    }
    left_by_tools = {"build", "dist"}
    there = {p.name for p in ROOT.iterdir() if not p.name.startswith(".") and not p.name.endswith(".egg-info")}
    assert there - left_by_tools == planned
