"""Every example in a docstring is run."""

from __future__ import annotations

import doctest
import importlib
from pathlib import Path

import pytest

PACKAGE = Path(__file__).resolve().parents[2] / "diagnose"
WITH_EXAMPLES = sorted(p for p in PACKAGE.rglob("*.py") if ">>>" in p.read_text("utf-8"))


@pytest.mark.parametrize("path", WITH_EXAMPLES, ids=lambda p: p.relative_to(PACKAGE).as_posix())
def test_examples_hold(path: Path) -> None:
    name = ".".join(path.relative_to(PACKAGE.parent).with_suffix("").parts)
    result = doctest.testmod(importlib.import_module(name.removesuffix(".__init__")))
    assert result.attempted > 0
    assert result.failed == 0
