"""One test over many small things: every one is tried, and all that fail are named with their reason."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from typing import TypeVar

import pytest

__all__ = ["holds_for_each"]

T = TypeVar("T")


def holds_for_each(things: Iterable[T], check: Callable[[T], None], named: Callable[[T], str] = str) -> None:
    """Run the check on each thing. Fails once, naming all for which it failed; and where there is nothing to try."""
    tried, failed = 0, []
    for thing in things:
        tried += 1
        try:
            check(thing)
        except Exception as error:
            failed.append(f"{named(thing)}: {type(error).__name__}: {error}")
    assert tried, "there is nothing to try"
    if failed:
        pytest.fail(f"{len(failed)} of {tried}:\n" + "\n".join(failed), pytrace=False)
