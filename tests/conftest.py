"""What all tests share."""

from __future__ import annotations

import pytest


def pytest_addoption(parser: pytest.Parser) -> None:
    parser.addoption(
        "--accept",
        action="store_true",
        help="write the transcripts anew from what the program prints now; read the difference before keeping it",
    )
