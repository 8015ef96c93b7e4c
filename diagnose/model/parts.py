"""Parts as causes name them: `booster heating element, same volts and watts, if burnt through` read into its pieces."""

from __future__ import annotations

import re
from dataclasses import dataclass

__all__ = ["Part", "part_of"]

_NAME = re.compile(r"^(?P<name>[^,:]+?)(?P<match>[,:].*|)$", re.S)
_IF = re.compile(r"[,:]?\s+(?P<why>if\s.+)$", re.S)


@dataclass(frozen=True)
class Part:
    """One part of a repair: its name, what must match, and, where it is not always needed, when it is."""

    name: str
    match: str = ""
    only: str = ""  # "if its tips are pitted"

    @property
    def text(self) -> str:
        """As a cause writes it."""
        return ", ".join(filter(None, [self.name, self.match, self.only]))


def part_of(text: str) -> Part:
    """The name before the first comma, what must match after it, and the "if" at the end.

    >>> part_of("booster contactor, coil volts as labelled, poles for its current")
    Part(name='booster contactor', match='coil volts as labelled, poles for its current', only='')
    >>> part_of("shaft sleeve, if grooved"), part_of("gasket")
    (Part(name='shaft sleeve', match='', only='if grooved'), Part(name='gasket', match='', only=''))
    """
    said = _IF.search(text)
    rest = text[: said.start()] if said else text
    found = _NAME.match(rest.strip())
    name, match = (found["name"], found["match"].strip(" ,:")) if found else (rest, "")
    return Part(name.strip(), match, said["why"].strip() if said else "")
