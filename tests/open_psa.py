"""Solving an exported tree with the independent solver, where it is installed."""

from __future__ import annotations

import math
import shutil
import subprocess
from pathlib import Path
from xml.etree import ElementTree

__all__ = ["SOLVER", "agrees", "solve_xml", "with_judge"]

SOLVER = shutil.which("scram")
DIGITS = 6  # the solver prints so many
CLOSE = 1e-9


def solve_xml(xml: str, folder: Path) -> dict[str, str]:
    """The top probabilities as the solver prints them, by gate."""
    assert SOLVER is not None
    path = folder / "tree.xml"
    path.write_text(xml, "utf-8")
    command = [SOLVER, "--probability", "1", "--bdd", "--limit-order", "1", str(path)]
    done = subprocess.run(command, capture_output=True, text=True, check=False)
    assert done.returncode == 0, done.stderr
    report = ElementTree.fromstring(done.stdout)
    return {each.attrib["name"]: each.attrib["probability"] for each in report.iter("sum-of-products")}


def with_judge(xml: str, top: str, ours: float) -> tuple[str, float, float]:
    """The tree with two gates more, and what they must print if the top's probability is ours within CLOSE.

    The solver prints six digits. Joined with an event that brings our probability to just below, and just above, the
    middle between two printed numbers, the two gates print those two numbers only if it is right to CLOSE.
    """
    goal = ours * 0.9
    unit = 10.0 ** (math.floor(math.log10(goal)) - DIGITS + 1)
    below = math.floor(goal / unit)
    share = (below + 0.5) * unit / ours
    gates = "".join(
        f'<define-gate name="judge-{side}"><and><gate name="{top}"/><basic-event name="share-{side}"/></and>'
        "</define-gate>"
        f'<define-basic-event name="share-{side}"><float value="{share * (1 + off)!r}"/></define-basic-event>'
        for side, off in (("low", -CLOSE), ("high", CLOSE))
    )
    judged = xml.replace("</opsa-mef>", f'<define-fault-tree name="judges">{gates}</define-fault-tree></opsa-mef>')
    return judged, below * unit, (below + 1) * unit


def agrees(xml: str, top: str, ours: float, folder: Path) -> bool:
    """Whether the solver finds our probability to CLOSE."""
    judged, low, high = with_judge(xml, top, ours)
    printed = solve_xml(judged, folder)
    found = (float(printed["judge-low"]), float(printed["judge-high"]))
    return all(math.isclose(a, b, rel_tol=1e-8) for a, b in zip(found, (low, high), strict=True))
