"""Where a user's own files lie: the journal, saved machines, holds, the log."""

from __future__ import annotations

import os
from dataclasses import dataclass
from pathlib import Path

from platformdirs import PlatformDirs

__all__ = ["Places", "own_places"]


@dataclass(frozen=True)
class Places:
    """The folder of all user data, and what lies in it."""

    home: Path

    @property
    def journal(self) -> Path:
        return self.home / "journal.sqlite3"

    @property
    def machines(self) -> Path:
        return self.home / "machines"

    @property
    def instruments(self) -> Path:
        return self.home / "instruments.json"

    @property
    def holds(self) -> Path:
        return self.home / "holds"

    @property
    def config(self) -> Path:
        """What its user set: the store of the fleet, their name."""
        return self.home / "config.toml"

    @property
    def log(self) -> Path:
        return self.home / "diagnose.log"

    @property
    def cache(self) -> Path:
        """What can be thrown away: it is made again."""
        return self.home / "cache"

    @property
    def knowledge(self) -> Path:
        return self.home / "knowledge"


def own_places() -> Places:
    """The user's data folder of this system (XDG on Linux); `DIAGNOSE_HOME` names another."""
    named = os.environ.get("DIAGNOSE_HOME")
    return Places(Path(named) if named else Path(PlatformDirs("diagnose", appauthor=False).user_data_dir))
