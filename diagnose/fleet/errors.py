"""What can go wrong between a journal and the store: one sentence each, with what to do."""

from __future__ import annotations

__all__ = ["Refused", "StoreError", "Unreachable"]


class StoreError(Exception):
    """The store can't be used; the message gives the remedy and never the address."""


class Unreachable(StoreError):
    """The store does not answer now; trying again later may help."""


class Refused(StoreError):
    """The store, or this journal, says no; somebody must do something about it."""
