"""What was answered of an entry before it was written: kept after every line, offered again."""

from __future__ import annotations

import json
import os
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any

__all__ = ["Draft"]


@dataclass
class Draft:
    """`kept` are the fields answered, `typed` the lines typed since, which are taken again first.

    `into` is the file the entry goes to: an assembly's, or an area's of complaints.
    """

    path: Path
    into: str = ""
    kept: dict[str, Any] = field(default_factory=dict)
    typed: list[str] = field(default_factory=list)

    @classmethod
    def load(cls, path: Path) -> Draft:
        """The draft at that place; an empty one where there is none that can be read."""
        try:
            data = json.loads(path.read_text("utf-8"))
            return cls(path, str(data["into"]), dict(data["kept"]), [str(line) for line in data["typed"]])
        except (OSError, ValueError, KeyError, TypeError):
            return cls(path)

    @property
    def begun(self) -> bool:
        return bool(self.into or self.kept or self.typed)

    def save(self) -> None:
        """On disk before the next question."""
        self.path.parent.mkdir(parents=True, exist_ok=True, mode=0o700)
        fresh = self.path.with_suffix(".new")
        text = json.dumps({"into": self.into, "kept": self.kept, "typed": self.typed}, indent=1)
        with open(fresh, "w", encoding="utf-8") as file:
            file.write(text)
            file.flush()
            os.fsync(file.fileno())
        fresh.replace(self.path)

    def settle(self) -> None:
        """The lines typed have become a field."""
        self.typed.clear()
        self.save()

    def drop(self) -> None:
        """Forget it: it was written, or is not wanted."""
        self.path.unlink(missing_ok=True)
        self.into = ""
        self.kept.clear()
        self.typed.clear()
