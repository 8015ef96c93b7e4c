"""What is kept of a book: the same tree for the same machine and answers, never another book's, gone with its book."""

from __future__ import annotations

import gc
import weakref
from dataclasses import replace

from diagnose.inference import build_tree
from diagnose.inference.kept import Kept
from tests.small_tree import BOOK, MACHINE


def test_a_tree_is_grown_once_and_answers_only_move_its_priors() -> None:
    plain = build_tree(BOOK, MACHINE)
    assert build_tree(BOOK, MACHINE, {}) is plain
    other = build_tree(BOOK, MACHINE, {"made up": "yes"})
    assert other is not plain
    assert other.checks is plain.checks
    assert (other.leaves, other.gates) == (plain.leaves, plain.gates)
    assert all(other.below(node) == plain.below(node) for node in plain.nodes)


def test_a_book_with_other_tables_gets_its_own() -> None:
    name, check = next((n, c) for n, c in BOOK.checks.items() if n in build_tree(BOOK, MACHINE).checks)
    fewer = replace(BOOK, checks={k: v for k, v in BOOK.checks.items() if k != name})
    assert check.id in build_tree(BOOK, MACHINE).checks
    assert check.id not in build_tree(fewer, MACHINE).checks


def test_nothing_is_kept_of_a_book_given_up() -> None:
    book = replace(BOOK)
    tree = weakref.ref(build_tree(book, MACHINE))
    assert len(Kept.of(book, "trees", 64)) >= 1
    del book
    gc.collect()
    assert tree() is None
