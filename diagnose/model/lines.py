"""On which line of a TOML file each entry starts, so that a problem can say file:line."""

from __future__ import annotations

import re

__all__ = ["line_of"]

_HEADER = re.compile(r"^\s*\[\[\s*([A-Za-z_]+)\s*\]\]")


def line_of(text: str) -> dict[tuple[str, int], int]:
    """Map (table name, how many-eth of that name from 0) to its 1-based line."""
    seen: dict[str, int] = {}
    lines: dict[tuple[str, int], int] = {}
    for number, line in enumerate(text.splitlines(), 1):
        match = _HEADER.match(line)
        if match:
            nth = seen.get(match[1], 0)
            lines[match[1], nth] = number
            seen[match[1]] = nth + 1
    return lines
