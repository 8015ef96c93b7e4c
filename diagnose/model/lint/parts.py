"""Parts go by one name each, so that those of two causes are seen to be the same."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator

from diagnose.model.book import Book
from diagnose.model.parts import part_of
from diagnose.model.problems import Problem

__all__ = ["check"]


def check(book: Book) -> Iterator[Problem]:
    """A part of ours that is in no stock, where there are any; a name that stands twice; one that no cause needs.

    A shop may name parts of its own: they count as loaded for a visit.
    """
    if not book.stocks:
        return
    known = Counter(name for stock in book.stocks.values() for name in set(stock.names))
    needed = {part_of(text).name for cause in book.causes.values() for text in cause.parts}
    for name, cause in book.causes.items():
        for text in cause.parts if not book.places[name].shop else ():
            if part_of(text).name not in known:
                yield Problem(
                    book.places[name],
                    f"{name}: no stock has the part {part_of(text).name!r}",
                    "use the name it has in parts.toml, what must match after a comma; or name it there",
                )
    for key, stock in book.stocks.items():
        for name in stock.names:
            if name not in needed:
                yield Problem(book.places[f"stock:{key}"], f"{name!r}: no cause needs it", "use it, or drop it")
            elif stock.names.count(name) > 1:
                yield Problem(book.places[f"stock:{key}"], f"{name!r} stands twice", "drop one")
