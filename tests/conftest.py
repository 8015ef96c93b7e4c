"""What all tests share."""

from __future__ import annotations

import gc
from collections.abc import Iterator

import pytest

from tests import home


def pytest_addoption(parser: pytest.Parser) -> None:
    parser.addoption(
        "--accept",
        action="store_true",
        help="write the transcripts anew from what the program prints now; read the difference before keeping it",
    )


def pytest_collection_finish() -> None:
    """Thousands of tests and their cases stay to the end: the collector need not look through them again and again."""
    gc.collect()
    gc.freeze()
    gc.set_threshold(20_000, 20, 50)


@pytest.fixture(autouse=True, scope="session")
def compiled_once(request: pytest.FixtureRequest, tmp_path_factory: pytest.TempPathFactory) -> Iterator[None]:
    """Programs that tests start find what those before them compiled, code and knowledge, whoever started them."""
    own = tmp_path_factory.getbasetemp()
    folder = (own.parent if hasattr(request.config, "workerinput") else own) / "compiled"
    home.share(folder / "knowledge")
    with pytest.MonkeyPatch.context() as patch:
        # Whatever the environment says about that.
        patch.delenv("PYTHONDONTWRITEBYTECODE", raising=False)
        patch.setenv("PYTHONPYCACHEPREFIX", str(folder / "code"))
        yield
