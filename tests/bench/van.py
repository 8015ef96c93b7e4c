"""The judge of the telephone: calls with a simulated kitchen, and whether the van list then holds what is needed.

    python -m tests.bench.van            200 calls
    python -m tests.bench.van 40 --tell  each call told
    python -m tests.bench.van 200 --first 60000

A fault is drawn as often as it is found, on a machine drawn evenly; the kitchen says what the simulated machine makes
it say, and a worker answers what is asked. Nothing was chosen on seeds from 60000 on: calls from there say how good it
is, those below are for finding out why. No simulated fault is one that is not listed, so more visits are finished than
a list promises, which leaves room for those.
"""

from __future__ import annotations

import argparse
import sys
from collections.abc import Iterable, Iterator, Sequence
from concurrent.futures import ProcessPoolExecutor
from itertools import pairwise

from diagnose.inference import kept, parts_of
from diagnose.model import Book, load_book
from tests.bench.judging.calls import Call, drawn, held, made_call, parts_needed

__all__ = ["finished", "main", "report", "told"]

_BINS = (0.0, 0.2, 0.4, 0.6, 0.8, 0.9, 1.01)


def _play(seed: int) -> Call:
    book = load_book()
    return made_call(book, drawn(book, seed))


def finished(book: Book, call: Call) -> bool:
    """Whether a visit would be finished with the list: every part the true cause always needs is there."""
    assert call.van is not None
    parts = [part.name for part in parts_of(book, call.job.causes[0]) if not part.only]
    carried = {part.name for part in call.van.carried}
    return all(name in carried or kept(book, name) in ("van", "house") for name in parts)


def report(book: Book, calls: Sequence[Call]) -> Iterator[str]:
    """The figures, line by line."""
    visits = [call for call in calls if not _solved(call)]
    yield f"{len(calls)} calls: {_share(_solved(c) for c in calls)} solved by telephone"
    own = [c for c in calls if book.causes[c.job.causes[0]].aloud]
    yield (f"  where the kitchen can put the cause right itself ({len(own)}): {_share(_solved(c) for c in own)} solved")
    yield f"  mends of what was not wrong: {_mean(len(c.wrong) for c in calls):.2f} a call"
    yield f"  questions {_mean(len(c.asked) for c in calls):.1f} a call, minutes {_mean(c.minutes for c in calls):.0f}"
    yield f"  slowest step {max(c.slowest for c in calls):.1f} s"
    yield from _held(book, visits)
    yield f"  parts carried {_mean(len(c.van.carried) for c in visits if c.van):.1f} a visit"
    yield "chance to finish the visit as the list promised it, visits, came true:"
    for low, high in pairwise(_BINS):
        inside = [c for c in visits if c.van is not None and low <= c.van.chance < high]
        if inside:
            promised = _mean(c.van.chance for c in inside if c.van)
            yield f"  {promised:5.2f} {len(inside):4} {_share(finished(book, c) for c in inside)}"
    promised = _mean(c.van.chance for c in visits if c.van)
    yield f"  all: promised {promised:.2f}, came {_mean(finished(book, c) for c in visits):.2f}"


def _solved(call: Call) -> bool:
    return call.end is not None and call.end.how == "solved"


def _held(book: Book, visits: Sequence[Call]) -> Iterator[str]:
    need = [(c, needed) for c in visits if (needed := parts_needed(book, c.job.causes[0]))]
    ordered = sum(
        any(kept(book, p.name) == "order" for p in parts_of(book, c.job.causes[0]) if not p.only) for c in visits
    )
    yield f"visits {len(visits)}; the cause needs parts that must be loaded in {len(need)}, one to order in {ordered}"
    yield "  where they must be loaded: the main part is carried, all are"
    lists = {
        "van list": [tuple(part.name for part in c.van.carried) if c.van else () for c, _ in need],
        "most frequent, nothing asked": [c.frequent for c, _ in need],
        "parts of the likeliest causes": [c.likeliest for c, _ in need],
    }
    for name, carried in lists.items():
        both = [held(needed, each) for (_, needed), each in zip(need, carried, strict=True)]
        yield f"  {name:30} {_share(main for main, _ in both):>5} {_share(every for _, every in both):>5}"


def told(book: Book, call: Call) -> str:
    """One call in a few lines."""
    cause, van, end = call.job.causes[0], call.van, call.end
    assert end is not None
    needed = parts_needed(book, cause)
    carried = tuple(part.name for part in van.carried) if van else ()
    mark = "" if end.how == "solved" or not needed else " HELD" if held(needed, carried)[0] else " MISSED"
    chance = f"{van.chance:.2f}" if van else "-"
    return (
        f"{cause} on {call.job.exercise.machine} ({', '.join(call.job.said[:2])}): {end.how}{mark}, row {call.rank}, "
        f"chance {chance}\n    asked {', '.join(call.asked)}\n"
        f"    put right {call.mended}, wrongly {call.wrong}\n    needs {list(needed)}, carried {list(carried)}"
    )


def _mean(values: Iterable[float]) -> float:
    numbers = list(values)
    return sum(numbers) / len(numbers) if numbers else 0.0


def _share(values: Iterable[bool]) -> str:
    numbers = list(values)
    return f"{100 * sum(numbers) / len(numbers):.0f} %" if numbers else "-"


def main() -> None:
    """Print the report."""
    options = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    options.add_argument("calls", type=int, nargs="?", default=200)
    options.add_argument("--first", type=int, default=0, help="the first seed")
    options.add_argument("--workers", type=int, default=2)
    options.add_argument("--tell", action="store_true")
    given = options.parse_args()
    book, calls = load_book(), []
    with ProcessPoolExecutor(given.workers) as pool:
        for call in pool.map(_play, range(given.first, given.first + given.calls)):
            calls.append(call)
            if given.tell:
                print(told(book, call), flush=True)
            elif len(calls) % 20 == 0:
                print(f"{len(calls)} of {given.calls}", file=sys.stderr, flush=True)
    print("\n".join(report(book, calls)))


if __name__ == "__main__":
    main()
