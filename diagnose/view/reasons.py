"""Findings with their working, conflicts between readings, and what speaks for and against a cause."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from diagnose.job.telling import Reason
from diagnose.model import Book, Finding
from diagnose.view import words
from diagnose.view.layout import Line, wrap

__all__ = ["bits_text", "conflict_block", "finding_block", "why_block"]

_NO_WEIGHT = 0.05  # bits; less than this changes nothing one could notice


def finding_block(finding: Finding, book: Book, width: int) -> list[Line]:
    """What a reading means here, and how that was worked out."""
    check = book.checks.get(finding.check)
    says = finding.says or (check.outcomes[finding.outcome].title if check else finding.outcome)
    lines = wrap(says, width, " ", role="heading")
    for text in finding.working:
        lines += wrap(text, width, "   ")
    return lines


def conflict_block(conflicts: Iterable[str], width: int) -> list[Line]:
    """Readings that can't well all be right."""
    lines: list[Line] = []
    for text in conflicts:
        if not lines:
            lines += wrap(words.CONFLICT, width, role="caution")
        lines += wrap(text, width, "  - ", "    ")
    return lines


def why_block(title: str, shows: str, reasons: Sequence[Reason], width: int) -> list[Line]:
    """What speaks for and against one cause, the strongest first, in words and bits."""
    lines = wrap(title, width, role="heading")
    if shows:
        lines += wrap(shows, width, "  Shows: ", "    ")
    told = sorted((r for r in reasons if r.sole or abs(r.bits) >= _NO_WEIGHT), key=lambda r: (not r.sole, -abs(r.bits)))
    sides = ((words.FOR, [r for r in told if r.bits > 0]), (words.AGAINST, [r for r in told if r.bits < 0]))
    for head, side in sides:
        if side:
            lines += wrap(f"{head[0].upper()}{head[1:]}:", width, "  ")
            for reason in side:
                weight = words.SOLE if reason.sole else bits_text(reason.bits)
                lines += wrap(f"{reason.says} ({weight})", width, "    - ", "      ")
    if not told:
        lines += wrap(words.NOTHING_YET, width, "  ")
    return lines


def bits_text(bits: float) -> str:
    """Bits in words and number: how much the odds change.

    >>> bits_text(2.0), bits_text(-1.0), bits_text(0.3)
    ('strongly, odds x 4, +2.0 bits', 'clearly, odds / 2, -1.0 bits', 'slightly, odds x 1.2, +0.3 bits')
    """
    size = abs(bits)
    word = "decisively" if size >= 4 else "strongly" if size >= 2 else "clearly" if size >= 1 else "slightly"
    factor = 2 ** min(size, 20)
    shown = f"{factor:.1f}".rstrip("0").rstrip(".") if factor < 10 else f"{factor:.0f}"
    return f"{word}, odds {'x' if bits > 0 else '/'} {shown}, {bits:+.1f} bits"
