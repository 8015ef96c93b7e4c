"""The wheel carries knowledge, catalogues and templates, and a program installed from it finds the knowledge there."""

from __future__ import annotations

import subprocess
import sys
import zipfile
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]


def test_knowledge_ships_inside_the_wheel(tmp_path: Path) -> None:
    build = [sys.executable, "-m", "pip", "wheel", "--quiet", "--no-deps", "--no-build-isolation", "--wheel-dir"]
    subprocess.run([*build, str(tmp_path), str(ROOT)], check=True, capture_output=True)
    (wheel,) = tmp_path.glob("diagnose-*.whl")
    with zipfile.ZipFile(wheel) as archive:
        names = set(archive.namelist())
        archive.extractall(tmp_path / "site")
    here = {p.relative_to(ROOT / "knowledge").as_posix() for p in (ROOT / "knowledge").rglob("*") if p.is_file()}
    assert {f"diagnose/_knowledge/{name}" for name in here} <= names
    for room in ("language/catalogue", "report/templates", "desk/web/templates", "desk/web/static"):
        beside = [p.name for p in (ROOT / "diagnose" / room).iterdir()]
        assert {f"diagnose/{room}/{name}" for name in beside} <= names
    assert "diagnose/fleet/schema.sql" in names
    code = "from diagnose.model import load_book, shipped_knowledge; print(shipped_knowledge()); load_book()"
    run = [sys.executable, "-c", f"import sys; sys.path.insert(0, {str(tmp_path / 'site')!r}); {code}"]
    done = subprocess.run(run, cwd=tmp_path, check=True, capture_output=True, text=True)
    assert "_knowledge" in done.stdout
