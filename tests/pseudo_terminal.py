"""A program on a pseudo-terminal, read back from an emulated screen."""

from __future__ import annotations

import os
import signal
import sys
from pathlib import Path

import pexpect
import pyte

from tests.home import furnish

__all__ = ["Terminal"]

ROOT = Path(__file__).resolve().parents[1]


class Terminal:
    """A program on a pseudo-terminal, with everything that ever scrolled past kept."""

    def __init__(self, home: Path, columns: int, rows: int, *words: str, **more: str) -> None:
        furnish(home)
        self.screen = pyte.HistoryScreen(columns, rows, history=5000, ratio=0.5)
        self.stream = pyte.ByteStream(self.screen)
        self.bytes = b""
        dropped = ("NO_COLOR", "FORCE_COLOR", "ACCESSIBLE", "COLUMNS", "LINES")
        kept = {k: v for k, v in os.environ.items() if k not in dropped}
        own = {"DIAGNOSE_HOME": str(home), "PYTHONPATH": str(ROOT), "TERM": "xterm-256color", "DIAGNOSE_GUARD": "0"}
        self.child = pexpect.spawn(
            sys.executable,
            ["-m", "diagnose", *words],
            dimensions=(rows, columns),
            env={**kept, **own, **more},
            cwd=str(ROOT),
            timeout=25,
            preexec_fn=lambda: signal.signal(signal.SIGINT, signal.SIG_DFL),  # else ignored in a background shell
        )

    def until(self, text: str) -> None:
        """Read until `text` came and the prompt after it."""
        self.take(text)
        self.take("\n(?:\x1b[^>]*)?>")

    def take(self, pattern: str) -> None:
        """Read until the pattern came."""
        self.child.expect(pattern)
        self._feed(self.child.before + self.child.after)

    def answer(self, text: str, then: str) -> None:
        self.child.send(text + "\r")
        self.until(then)

    def end(self) -> int:
        """Read to the end of the program; its exit code."""
        self.child.expect(pexpect.EOF)
        self._feed(self.child.before)
        self.child.close()
        return -1 if self.child.exitstatus is None else self.child.exitstatus

    def _feed(self, data: bytes) -> None:
        self.bytes += data
        self.stream.feed(data)

    @property
    def lines(self) -> list[str]:
        old = ["".join(row[x].data for x in range(self.screen.columns)) for row in self.screen.history.top]
        return [line.rstrip() for line in (*old, *self.screen.display)]

    @property
    def text(self) -> str:
        return " ".join(" ".join(self.lines).split())
