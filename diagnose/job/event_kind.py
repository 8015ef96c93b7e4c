"""What every kind of event has in common."""

from __future__ import annotations

import msgspec

__all__ = ["Kind"]


class Kind(msgspec.Struct, frozen=True, forbid_unknown_fields=True, tag_field="kind", tag=str):
    """An event as it lies in the journal: its kind by name, then its fields."""
