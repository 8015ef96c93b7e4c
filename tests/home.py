"""A user's folder for programs that tests start: with the knowledge compiled already, as from the second start on."""

from __future__ import annotations

from pathlib import Path

__all__ = ["furnish", "share"]

_shared: list[Path] = []


def share(folder: Path) -> None:
    """Keep the knowledge that programs compile in this folder from now on."""
    folder.mkdir(parents=True, exist_ok=True)
    _shared[:] = [folder]


def furnish(home: Path) -> None:
    """Let a program with this home find, and leave, what it compiles where the others do."""
    cache = home / "cache"
    if _shared and not cache.exists():
        home.mkdir(parents=True, exist_ok=True)
        cache.symlink_to(_shared[0], target_is_directory=True)
