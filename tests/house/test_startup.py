"""What `--help` may not import: the heavy libraries wait for the command that needs them."""

from __future__ import annotations

import subprocess
import sys

HEAVY = {
    "networkx",
    "numpy",
    "rich",
    "prompt_toolkit",
    "msgspec",
    "platformdirs",
    "sqlite3",
    "jinja2",
    "fpdf",
    "psycopg",
    "starlette",
    "uvicorn",
}


def test_help_imports_nothing_heavy() -> None:
    code = (
        "import sys; sys.argv = ['diagnose', '--help']\n"
        "from diagnose.cli import main\n"
        "try:\n    main()\nexcept SystemExit as end:\n    assert not end.code\n"
        "print('loaded:', *sorted(m.split('.')[0] for m in sys.modules))"
    )
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    loaded = set(done.stdout.split("loaded:")[1].split())
    assert not loaded & HEAVY
