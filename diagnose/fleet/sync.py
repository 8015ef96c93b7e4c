"""One pass between a journal and the store: fetch what is new there, send what is new here."""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path

from diagnose.fleet.exchange import Exchange
from diagnose.fleet.letter import Letter
from diagnose.fleet.renewal import renew
from diagnose.fleet.store import BATCH, Hello, Store, connect

__all__ = ["SKEW", "Passed", "greet", "pull", "push", "sync", "take_new_name"]

SKEW = 120.0  # seconds that two clocks may differ before it is said


@dataclass(frozen=True)
class Passed:
    """What a pass came to. `held`: events that stay here, since this login only reads; `renamed`: written again."""

    sent: int
    received: int
    ahead: float  # seconds by which the store's clock is ahead
    held: int = 0
    renamed: int = 0


def sync(journal: Path, address: str, new_writer: bool = False, new_store: bool = False) -> Passed:
    """Connect, and make one pass. Raises StoreError and JournalError.

    `new_writer` gives a copied journal a name of its own first; `new_store` begins anew with this store.
    """
    exchange = Exchange(journal)
    try:
        store = connect(address)
        try:
            return _sync(exchange, store, new_writer, new_store)
        finally:
            store.close()
    finally:
        exchange.close()


def _sync(exchange: Exchange, store: Store, new_writer: bool, new_store: bool) -> Passed:
    if new_store:
        store.hello()  # nothing is forgotten for a store that lets nobody in
        exchange.forget_store()
    hello = greet(exchange, store)
    renamed = take_new_name(exchange, store) if new_writer else 0
    received = len(pull(exchange, store))
    sent = push(exchange, store) if hello.may_write else 0
    if sent:
        received += len(pull(exchange, store))  # what others wrote in between
    held = 0 if hello.may_write else exchange.unsent()
    return Passed(sent, received, hello.ahead, held, renamed)


def greet(exchange: Exchange, store: Store) -> Hello:
    """Make sure that journal and store know each other. Raises Refused where they don't."""
    hello = store.hello(exchange.cursor)
    exchange.greet(hello.store, hello.at_cursor)
    return hello


def pull(exchange: Exchange, store: Store, batch: int = BATCH) -> tuple[Letter, ...]:
    """Fetch all that the store has after the cursor, and return what was new here."""
    fresh: list[Letter] = []
    while True:
        page = store.read(exchange.cursor, batch)
        if page.letters:
            fresh += exchange.receive(page.letters)
        if not page.letters or page.letters[-1].position >= page.newest:
            return tuple(fresh)


def push(exchange: Exchange, store: Store, batch: int = BATCH) -> int:
    """Send all that the store has not, a round trip for each batch; how many."""
    sent = 0
    while letters := exchange.pending(batch):
        exchange.delivered(store.push(letters))
        sent += len(letters)
    return sent


def take_new_name(exchange: Exchange, store: Store) -> int:
    """Give a copied journal a name of its own; how many events are written again, as the store has them not."""
    waiting = exchange.pending(-1, 2**62)
    for start in range(0, len(waiting), BATCH):
        part = waiting[start : start + BATCH]
        kept = store.kept(part)
        same = {one.key: kept[one.key].position for one in part if one.key in kept and one.same_as(kept[one.key])}
        exchange.delivered(same)
    return exchange.rewrite(renew)
