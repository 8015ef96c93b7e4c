"""Open reports in a browser at the widths of a desk, a telephone and a page: no overflow, no request, nothing barred.

    python -m tests.bench.browser LIBRARIES [--chromium PROGRAM] [--shots FOLDER]

LIBRARIES is a folder outside the checkout in which `npm install playwright-core axe-core` was run.
"""

from __future__ import annotations

import argparse
import shutil
import subprocess
import sys
import tempfile
from collections.abc import Iterator
from pathlib import Path

from diagnose.language import load_texts
from diagnose.model import load_book
from diagnose.report import render
from tests.report_job import CLOSED, HOSTILE, OPEN, TRACE, dossier_of, handover_of, hostile_job
from tests.small_job import small_book

SCRIPT = Path(__file__).with_name("check.cjs")


def reports(folder: Path) -> Iterator[Path]:
    """The pages that are looked at, written to the folder."""
    small, whole, spanish = small_book(folder / "knowledge"), load_book(), load_texts("es")
    everything = hostile_job(" ".join(HOSTILE))
    for name, dossier in {
        "open": dossier_of(small, OPEN),
        "closed": dossier_of(small, CLOSED),
        "trace": dossier_of(whole, TRACE, system="both"),
        "spanish": dossier_of(whole, TRACE, spanish, "si"),
        "hostile": dossier_of(small, everything),
    }.items():
        for what in ("service", "parts"):
            made = render(dossier, what, "html")
            assert isinstance(made, str)
            path = folder / f"{name}-{what}.html"
            path.write_text(made, "utf-8")
            yield path
    for language in ("en", "es"):
        made = render(handover_of(whole, load_texts(language)), "handover", "html")
        assert isinstance(made, str)
        path = folder / f"handover-{language}.html"
        path.write_text(made, "utf-8")
        yield path


def main() -> int:
    words = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    words.add_argument("libraries", type=Path)
    words.add_argument("--chromium", default=shutil.which("chromium") or "chromium")
    words.add_argument("--shots", type=Path, help="keep screenshots and printed pages here")
    said = words.parse_args()
    if said.shots:
        said.shots.mkdir(parents=True, exist_ok=True)
    with tempfile.TemporaryDirectory() as name:
        (Path(name) / "knowledge").mkdir()
        pages = [str(path) for path in reports(Path(name))]
        shots = str(said.shots.resolve()) if said.shots else ""
        run = ["node", str(SCRIPT), str(said.libraries.resolve()), said.chromium, shots, *pages]
        return subprocess.run(run, check=False).returncode


if __name__ == "__main__":
    sys.exit(main())
