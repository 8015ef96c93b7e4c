"""What is worked out once for a book, or a tree, and holds for every job on it, as long as that is in use."""

from __future__ import annotations

import weakref
from collections.abc import Callable, Hashable
from typing import TypeVar

__all__ = ["Kept"]

T = TypeVar("T")


class Kept(dict[Hashable, T]):
    """Things of one owner by key, made at the first call; at most `most` of them, the one made first goes.

    They are shared: nobody changes them, and they must not refer to the owner, or it would never be given up.

    >>> from diagnose.model import Book
    >>> book, made = Book(), []
    >>> numbers = Kept.of(book, "numbers", most=2)
    >>> [numbers.get_or(key, lambda: made.append(key) or len(made)) for key in "aaba"]
    [1, 1, 2, 1]
    >>> [numbers.get_or(key, lambda: made.append(key) or len(made)) for key in "cb"]
    [3, 2]
    >>> sorted(numbers)
    ['b', 'c']
    """

    def __init__(self, most: int) -> None:
        super().__init__()
        self._most = most

    @staticmethod
    def of(owner: object, kind: str, most: int) -> Kept[T]:
        """What is kept of one kind for its owner."""
        of_owner = _OWNERS.get(id(owner))
        if of_owner is None:
            of_owner = _OWNERS[id(owner)] = {}
            weakref.finalize(owner, _OWNERS.pop, id(owner), None)
        return of_owner.setdefault(kind, Kept(most))

    def get_or(self, key: Hashable, make: Callable[[], T]) -> T:
        """The thing of this key."""
        if key not in self:
            while len(self) >= self._most:
                del self[next(iter(self))]
            self[key] = make()
        return self[key]


_OWNERS: dict[int, dict[str, Kept]] = {}  # type: ignore[type-arg]
