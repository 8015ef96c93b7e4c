"""How long an event takes from the answer on one computer to the journal of another, and what the prompt pays for it.

Run: python -m tests.bench.fleet [EVENTS]. It starts a PostgreSQL of its own on loopback, also behind a way that takes
150 ms there and back; who follows is a process of its own. Beside ours, in the same run, stand two that one might have
written instead: a follower that looks every 250 ms, and one that is told and then reads the whole job again, with a
writer that sends lock, insert, notify and commit one by one (and keeps no journal of its own). Take the ratios:
machines differ.
"""

from __future__ import annotations

import multiprocessing as mp
import os
import sys
import tempfile
import threading
import time
from collections.abc import Callable, Sequence
from pathlib import Path
from statistics import median, quantiles
from typing import Any

from diagnose.fleet.admin import Kind, make_store, new_member, set_password
from diagnose.fleet.exchange import Exchange
from diagnose.fleet.store import connect
from diagnose.fleet.sync import greet, pull
from diagnose.fleet.worker import Worker
from diagnose.job import events as ev
from diagnose.job.journal import Journal
from tests.bench.fleet_peers import PEER, naive_follower, naive_writer
from tests.delay import Delay
from tests.postgres import Cluster, programs

__all__ = ["main"]

ROUND_TRIP = 0.150
WORDS = "the gauge stands at twenty psi while the rinse flows, the needle is steady. " * 3
Follow = Callable[[Path, str, str, Any, Any], None]


def follow_ours(journal: Path, address: str, tag: str, ready: Any, seen: Any) -> None:
    """A worker; an event counts as seen when it can be read in this computer's own journal."""
    local = threading.local()

    def came(jobs: frozenset[str]) -> None:
        if not hasattr(local, "journal"):
            local.journal, local.known = Journal(journal, writer=None), 0
        rows = local.journal._db.execute("select rowid, body from event where rowid > ?", (local.known,)).fetchall()
        now = time.perf_counter()
        local.known = rows[-1][0]
        seen.put([(number, now) for number in numbers([body for _, body in rows], tag)])

    worker = Worker(journal, address, came)
    worker.looked.wait(30)
    ready.set()
    time.sleep(600)


def follow_polling(journal: Path, address: str, tag: str, ready: Any, seen: Any) -> None:
    """The same journal and store, looked into every 250 ms."""
    exchange, store = Exchange(journal), connect(address)
    greet(exchange, store)
    pull(exchange, store)
    ready.set()
    while True:
        bodies = [letter.body for letter in pull(exchange, store)]
        now = time.perf_counter()
        seen.put([(number, now) for number in numbers(bodies, tag)])
        time.sleep(0.25)


def numbers(bodies: Sequence[str], tag: str) -> list[int]:
    """Which notes of this run these are."""
    sign = f'"{tag} '
    return [int(body.split(sign)[1][:5]) for body in bodies if sign in body]


def taken(
    follow: Follow, write: Callable[[str], dict[int, float]], journal: Path, address: str, tag: str
) -> list[float]:
    """Milliseconds from each answer to where it was first seen in the process that follows."""
    tag = f"{tag}-{time.monotonic_ns()}"
    context = mp.get_context("spawn")
    ready, seen = context.Event(), context.Queue()
    process = context.Process(target=follow, args=(journal, address, tag, ready, seen), daemon=True)
    process.start()
    assert ready.wait(60)
    written = write(tag)
    first: dict[int, float] = {}
    while len(first) < len(written):
        for number, at in seen.get(timeout=60):
            first.setdefault(number, at)
    process.kill()
    process.join()
    return [1000 * (first[number] - at) for number, at in written.items()]


def append_all(journal: Journal, tag: str, count: int, gap: float, appends: list[float]) -> dict[int, float]:
    """Append notes, about so many seconds apart; when each was begun, and how long each took in ms."""
    written = {}
    for nth in range(count):
        event = ev.NoteAdded(f"{tag} {nth:05d} {WORDS}")
        written[nth] = time.perf_counter()
        journal.append("job-1", event)
        appends.append(1000 * (time.perf_counter() - written[nth]))
        time.sleep(gap * (0.5 + (nth * 7919 % 100) / 100))
    return written


def disk(folder: Path) -> list[float]:
    """Milliseconds until a page is on this disk. Each event waits for that twice: here, and in the store."""
    waited = []
    with open(folder / "page", "wb", buffering=0) as file:
        for _ in range(50):
            file.write(b"x" * 4096)
            start = time.perf_counter()
            os.fdatasync(file.fileno())
            waited.append(1000 * (time.perf_counter() - start))
    return waited


def told(name: str, taken: list[float], beside: float) -> None:
    middle, late = median(taken), quantiles(taken, n=20)[-1]
    print(f"  {name:<48} {middle:8.1f} {late:8.1f} {middle / beside:8.1f}", flush=True)


def main(count: int = 200) -> None:
    """Print the tables."""
    found = programs()
    assert found is not None, "no PostgreSQL is installed here"
    cluster = Cluster(found)
    os.environ["PGPASSFILE"] = str(cluster.passfile)
    try:
        cluster.end()
        cluster.start(durable=True)
        _compare(cluster, count)
    finally:
        cluster.stop()


def _compare(cluster: Cluster, count: int) -> None:
    store = connect(cluster.address())
    make_store(store)
    members: tuple[tuple[str, Kind], ...] = (("ann", "technician"), ("desk", "desk"))
    for login, kind in members:
        new_member(store, login, kind, "Invented Kitchens")
        set_password(store, login, "bench")
        cluster.keep_password(login, "bench")
    store.connection.execute(PEER.encode())
    store.close()
    way = Delay(cluster.port, ROUND_TRIP / 2)
    for title, port, events, gap in (("loopback", cluster.port, count, 0.02), ("150 ms", way.port, count // 4, 0.25)):
        ann, desk = (cluster.address(who).replace(f":{cluster.port}/", f":{port}/") for who in ("ann", "desk"))
        _table(title, ann, desk, events, gap)
    way.close()


def _table(title: str, ann: str, desk: str, count: int, gap: float) -> None:
    with tempfile.TemporaryDirectory() as name:
        folder = Path(name)
        bare: list[float] = []
        appends: list[float] = []
        append_all(Journal(folder / "alone", writer=None), "alone", count, gap, bare)
        here = Journal(folder / "here", writer=None)
        worker = Worker(here.path, ann)
        here.hear(worker.wake)
        assert worker.looked.wait(60)

        def answer(tag: str) -> dict[int, float]:
            return append_all(here, tag, count, gap, appends)

        def one_by_one(tag: str) -> dict[int, float]:
            return naive_writer(ann, [f"{tag} {nth:05d} {WORDS}" for nth in range(count)], gap)

        ours = taken(follow_ours, answer, folder / "there", desk, "ours")
        print(f"{title}: {count} events of {len(WORDS)} signs{'':<16} median      p95  to ours  (ms)")
        told("ours: answer to the other journal", ours, median(ours))
        polled = taken(follow_polling, answer, folder / "polling", desk, "polled")
        told("looked for every 250 ms", polled, median(ours))
        told("one by one, and all read again", taken(naive_follower, one_by_one, folder, desk, "naive"), median(ours))
        told("the disk, of which each event of ours waits twice", disk(folder), median(ours))
        told("an append, nobody sends", bare, median(bare))
        told("an append, the worker sends", appends, median(bare))
        print(f"  longest append: {max(bare):.1f} ms where nobody sends, {max(appends):.1f} ms where the worker does")
        worker.stop(5)


if __name__ == "__main__":
    main(*(int(word) for word in sys.argv[1:2]))
