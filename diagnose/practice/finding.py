"""Which check or cause is meant: by words, or by its number in the list shown last."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from diagnose.model import Book, Check, Machine, fits
from diagnose.practice.machine import Practice
from diagnose.terminal.choosing import number_from, short
from diagnose.terminal.grouped import RANGE, Group, listed, tell_range
from diagnose.terminal.matcher import Match, clear_winner, find
from diagnose.terminal.refusals import Refused, Told
from diagnose.view.layout import Line, wrap

__all__ = ["Listing", "causes_of", "checks_of"]

# How well words must fit a check, and how far ahead of the next, to be taken without asking back. Judgement, by trial.
_SURE, _LEAD = 0.65, 1.15


class Listing:
    """Entries by assembly, numbered through; `others` are found by words too, but stand on no list."""

    def __init__(self, book: Book, ids: Sequence[str], texts: Mapping[str, Sequence[str]], kind: str) -> None:
        self._texts, self._kind = texts, kind
        self._shown: list[str] = []  # what stands on the screen with numbers: all, or what words left open
        by: dict[str, list[str]] = {}
        for name in ids:
            by.setdefault(name.split(".")[0], []).append(name)
        order = [a for a in book.assemblies if a in by] + [a for a in by if a not in book.assemblies]
        self.ids = [name for a in order for name in by[a]]
        self.groups = [Group(book.assemblies.get(a, a), [book.title(name) for name in by[a]]) for a in order]

    def meant(self, text: str, width: int) -> str:
        """The id meant. Raises Refused with a remedy, or Told where the list or part of it is asked for."""
        exact = next((n for n, each in self._texts.items() if text.casefold() in (n, each[0].casefold())), None)
        if exact is not None:
            return exact
        if text[:1].isdigit() and text.rstrip(".)").isdigit():
            if not self._shown:
                remedy = f"Say the {self._kind} in words, or list shows them all."
                raise Refused(f"No numbers stand here now. {remedy}", text)
            return self._shown[number_from(text, len(self._shown), "Or say it in words.") - 1]
        if text.casefold() in ("list", "all"):
            self._shown = self.ids
            raise Told(listed(self.groups, width))
        self._shown = self.ids if RANGE.fullmatch(text) else []
        tell_range(text, self.groups, width)
        matches = find(text, self._texts, 9)
        if self._plain(matches):
            return matches[0].id
        if not matches:
            raise Refused(f"{short(text)} is like no {self._kind} here. Try other words, or list.", text)
        here = [m.id for m in matches if m.id in self.ids]
        if len(here) == 1:
            return here[0]  # the only one that can be done here
        raise Told(self._perhaps(text, [m.id for m in matches], width))

    def _plain(self, matches: Sequence[Match]) -> bool:
        """Whether the first needs no asking back: a wrong check costs its minutes, so it must be plainly ahead."""
        if clear_winner(matches) is None or matches[0].score < _SURE:
            return False
        return len(matches) == 1 or matches[0].score >= _LEAD * matches[1].score

    def forget(self) -> None:
        """Something else stands on the screen now: numbers mean nothing until a list is shown again."""
        self._shown = []

    def _perhaps(self, text: str, names: Sequence[str], width: int) -> list[Line]:
        known = frozenset(self.ids)
        there = [name for name in names if name in known]
        if not there:
            raise Refused(
                f"{short(text)}: {'; '.join(self._texts[n][0] for n in names[:3])}: cannot be read here.", text
            )
        self._shown = there
        lines = wrap(f"{short(text)} may mean one of these. Its number, or other words:", width)
        for nth, name in enumerate(there, 1):
            lines += wrap(self._texts[name][0], width, f"  {nth}  ")
        return lines


def checks_of(practice: Practice) -> Listing:
    """All checks of the machine; on the list those that can be read here."""
    checks = [c for c in practice.book.checks.values() if not c.computed and fits(practice.machine, c.fits)]
    texts = {c.id: _texts(c, practice.book) for c in checks}
    return Listing(practice.book, [c.id for c in checks if practice.can_read(c.id)], texts, "check")


def _texts(check: Check, book: Book) -> list[str]:
    """What a check is found by: its own words, and what is measured on which part: "rinse temperature"."""
    name = check.id.replace(".", " ").replace("_", " ")
    part = book.assemblies.get(check.id.split(".")[0], "")
    measured = [f"{part} {check.reading.quantity}"] if check.reading else []
    return [check.title, check.ask, name, *measured]


def causes_of(book: Book, machine: Machine) -> Listing:
    """All causes this machine can have."""
    causes = [c for c in book.causes.values() if fits(machine, c.fits)]
    texts = {c.id: [c.title, c.id.replace(".", " ").replace("_", " ")] for c in causes}
    return Listing(book, list(texts), texts, "cause")
