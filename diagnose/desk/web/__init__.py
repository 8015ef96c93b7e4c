"""The board as a page for browsers: read-only, behind a token, brought up to date while one looks at it."""

__all__: list[str] = []
