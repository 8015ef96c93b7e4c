"""Keep pictures of the desk's pages, as wide as a desk, a telephone and a page, light and dark, to look at.

    python -m tests.bench.browser.desk FOLDER [--axe AXE.min.js]

The checker of accessibility is the one the tests use, or a newer one that is named.
"""

from __future__ import annotations

import argparse
import tempfile
from pathlib import Path

from diagnose.desk.web.pages import job_path
from tests.browser import Browser, Page, axe_source, chromium
from tests.desk_jobs import fill, write
from tests.desk_server import TOKEN, Site, served
from tests.report_job import HOSTILE, hostile_job
from tests.small_job import small_book

VIEWS = (("desk", 1280, False), ("desk-dark", 1280, True), ("phone", 390, False), ("small-phone", 320, True))


def pictures(page: Page, site: Site, folder: Path, axe: str) -> int:
    """A picture of every page in every view; how many faults were found."""
    faults = 0
    jobs = ["job-1001", "job-1005", "job-1006", "job-1009", "job-1900"]
    for name, path in {"board": "/", **{job: job_path(job) for job in jobs}}.items():
        for view, width, dark in VIEWS:
            page.resize(width)
            page.colours(dark)
            page.go(f"{site.address}{path}")
            found = [*page.barred(axe), *([f"{page.too_wide:g} dots too wide"] if page.too_wide else [])]
            print(f"{name} {view}: {'; '.join(found) or 'in order'}")
            faults += len(found)
            page.picture(folder / f"{name}-{view}.png")
        page.resize(700)
        page.colours(False, "print")
        page.picture(folder / f"{name}-paper.png")
    return faults


def main() -> int:
    words = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    words.add_argument("folder", type=Path)
    words.add_argument("--axe", type=Path)
    said = words.parse_args()
    said.folder.mkdir(parents=True, exist_ok=True)
    program = chromium()
    if program is None:
        print("no chromium is installed on this computer")
        return 2
    axe = said.axe.read_text("utf-8") if said.axe else axe_source()
    with tempfile.TemporaryDirectory() as name:
        work = Path(name)
        journal = fill(work / "journal.sqlite3")
        write(journal, "job-1900", hostile_job(" ".join(HOSTILE))[:-1], 1, None)
        with served(small_book(work / "knowledge"), journal) as site, Browser(program, work / "profile") as browser:
            page = browser.page()
            page.go(f"{site.address}/")
            page.picture(said.folder / "login.png")
            page.run("document.getElementById('token').focus()")
            page.type(TOKEN, enter=True)
            faults = pictures(page, site, said.folder, axe) + len(page.complaints)
            print("\n".join(page.complaints))
    return 1 if faults else 0


if __name__ == "__main__":
    raise SystemExit(main())
