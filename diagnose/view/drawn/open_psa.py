"""The tree in the Open-PSA Model Exchange Format: an open standard that fault-tree solvers read.

The whole tree of the complaint, as gates and basic events with float probabilities. Of one machine it holds the gates
as they are with what fits it; without a machine everything, as if one machine could have it all. "Something not
listed here" is a basic event like the causes.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping
from xml.sax.saxutils import escape, quoteattr

from diagnose.inference import Node
from diagnose.view.drawn.chart import Chart
from diagnose.view.drawn.picture import heading

__all__ = ["open_psa_lines", "safe_names"]


def open_psa_lines(chart: Chart) -> list[str]:
    """The document, one element a line."""
    tree = chart.tree
    below = tree.below(chart.complaint)
    gates = [tree.nodes[n] for n in reversed(tree.gates) if n in below]
    leaves = [tree.nodes[n] for n in tree.causes_under(chart.complaint)]
    name = safe_names([node.id for node in (*gates, *leaves)])
    title, description = heading(chart)
    top = safe_names([f"tree of {chart.complaint}"])[f"tree of {chart.complaint}"]
    lines = [
        '<?xml version="1.0" encoding="UTF-8"?>',
        "<opsa-mef>",
        f"  <label>{escape(_plain(f'{title}. {description}'))}</label>",
        f"  <define-fault-tree name={quoteattr(top)}>",
        f"    <label>{escape(_plain(chart.title(chart.complaint)))}</label>",
    ]
    for gate in gates:
        lines += _entry(chart, gate, name[gate.id], "define-gate", _formula(gate, tree.nodes, name))
    for leaf in leaves:
        lines += _entry(chart, leaf, name[leaf.id], "define-basic-event", [f'<float value="{leaf.prior!r}"/>'])
    return [*lines, "  </define-fault-tree>", "</opsa-mef>"]


def _entry(chart: Chart, node: Node, name: str, element: str, body: list[str]) -> list[str]:
    return [
        f"    <{element} name={quoteattr(name)}>",
        f"      <label>{escape(_plain(chart.title(node.id)))}</label>",
        f'      <attributes><attribute name="id" value={quoteattr(node.id)}/></attributes>',
        *(f"      {line}" for line in body),
        f"    </{element}>",
    ]


def _formula(gate: Node, nodes: Mapping[str, Node], name: Mapping[str, str]) -> list[str]:
    """A gate of one member is that member; otherwise or, and, atleast."""
    members = [_reference(nodes[each], name[each]) for each in gate.inputs]
    if len(members) == 1:
        return members
    if gate.need == 1:
        opened = closed = "or"
    elif gate.need == len(members):
        opened = closed = "and"
    else:
        opened, closed = f'atleast min="{gate.need}"', "atleast"
    return [f"<{opened}>", *(f"  {each}" for each in members), f"</{closed}>"]


def _reference(node: Node, name: str) -> str:
    return f"<{'basic-event' if node.leaf else 'gate'} name={quoteattr(name)}/>"


def safe_names(ids: Iterable[str]) -> dict[str, str]:
    """Names the standard allows: a letter, then letters, digits and single dashes or low lines; no two alike.

    >>> safe_names(["contactor.pole_open", "unlisted.rinse_cold", "contactor-pole_open"])
    {'contactor.pole_open': 'contactor-pole_open', 'unlisted.rinse_cold': 'unlisted-rinse_cold', \
'contactor-pole_open': 'contactor-pole_open-2'}
    """
    found: dict[str, str] = {}
    taken: set[str] = set()
    for each in ids:
        plain = re.sub(r"-+", "-", re.sub(r"[^A-Za-z0-9_]", "-", each)).strip("-") or "entry"
        plain = plain if plain[0].isalpha() else f"n-{plain}"
        free = next(n for n in (plain, *(f"{plain}-{k}" for k in range(2, len(taken) + 3))) if n not in taken)
        taken.add(free)
        found[each] = free
    return found


def _plain(text: str) -> str:
    """Without signs no XML document may hold."""
    return re.sub(r"[\x00-\x08\x0b\x0c\x0e-\x1f\ufffe\uffff]", " ", text)
