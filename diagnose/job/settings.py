"""What its user set in `config.toml` of their own folder: the store of the fleet, and the name they go by."""

from __future__ import annotations

import os
import tomllib
from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path

__all__ = ["STORE_VARIABLE", "Settings", "SettingsError", "read_settings"]

STORE_VARIABLE = "DIAGNOSE_STORE"
_KEYS = ("store", "name")
_LONGEST = 1000


class SettingsError(ValueError):
    """The settings can't be used; the message gives the remedy."""


@dataclass(frozen=True)
class Settings:
    """`store` is the address of the fleet's store, `name` what others see of this user; empty: not set."""

    store: str = ""
    name: str = ""


def read_settings(path: Path, environ: Mapping[str, str] = os.environ) -> Settings:
    """The settings in this file (none when it is not there); the environment goes before it. Raises SettingsError."""
    told = _read(path)
    store = environ.get(STORE_VARIABLE, "").strip() or told.get("store", "").strip()
    return Settings(store, told.get("name", "").strip())


def _read(path: Path) -> dict[str, str]:
    try:
        told = tomllib.loads(path.read_text("utf-8"))
    except FileNotFoundError:
        return {}
    except (OSError, UnicodeDecodeError, tomllib.TOMLDecodeError) as error:
        # The file may hold an address: its text is not repeated.
        why = error.strerror if isinstance(error, OSError) else "it is no TOML"
        raise SettingsError(f'{path} can\'t be read ({why}); write lines like name = "Ann" in it') from None
    for key, value in told.items():
        if key not in _KEYS:
            raise SettingsError(f"{path}: nothing is called {key[:40]!r}; known are {' and '.join(_KEYS)}")
        if not isinstance(value, str) or not value.isprintable() or len(value) > _LONGEST:
            raise SettingsError(f'{path}: {key} must be one line of text in quotes, like {key} = "..."')
    return told
