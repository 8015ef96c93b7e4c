"""A letter: one event as it travels between journals and the store, its body word for word."""

from __future__ import annotations

import re
from dataclasses import dataclass
from datetime import datetime

from diagnose.fleet.errors import Refused

__all__ = ["ALONE", "Key", "Letter"]

Key = tuple[str, str, int]
ALONE = "local"  # who wrote into journals that met no other: such events stay where they are
# Jobs give names to files; writers stand in `writer:seq`.
_JOB = re.compile(r"[A-Za-z0-9][A-Za-z0-9._-]{0,79}")
_WRITER = re.compile(r"[A-Za-z0-9][A-Za-z0-9._-]{0,39}")


@dataclass(frozen=True)
class Letter:
    """The `seq`-th event of `writer` in `job`. `position` is its place in the order of commits; 0: not sent yet."""

    job: str
    writer: str
    seq: int
    seen: str
    at: str
    body: str
    position: int = 0

    @property
    def key(self) -> Key:
        """What it is known by everywhere."""
        return self.job, self.writer, self.seq

    @property
    def name(self) -> str:
        """The key in words."""
        return f"event {self.seq} of {self.job} by {self.writer}"

    def same_as(self, other: Letter) -> bool:
        """Whether both are one and the same event."""
        return (self.key, self.seen, self.at, self.body) == (other.key, other.seen, other.at, other.body)

    def check(self) -> None:
        """Raise Refused for what no journal of ours writes: it might lead astray whoever reads it."""
        try:
            datetime.fromisoformat(self.at)
            whole = bool(_JOB.fullmatch(self.job) and _WRITER.fullmatch(self.writer)) and self.writer != ALONE
        except ValueError:
            whole = False
        if not whole or self.seq < 1 or not self.body.startswith("{"):
            raise Refused(
                f"the store holds something at place {self.position} that is no event; nothing after it is taken "
                "until whoever keeps the store has looked at it"
            )
