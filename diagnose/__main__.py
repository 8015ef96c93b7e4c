"""Lets `python -m diagnose` do what the `diagnose` command does."""

from diagnose.cli import main

__all__: list[str] = []

if __name__ == "__main__":
    main()
