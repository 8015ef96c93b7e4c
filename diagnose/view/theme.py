"""Which colour a line's role gets; colours only underline what the words already say."""

from __future__ import annotations

__all__ = ["STYLES", "style_of"]

# Blue, orange-yellow, bold and dim: told apart with every common kind of colour blindness.
STYLES: dict[str, str] = {
    "": "",
    "heading": "bold",
    "question": "bold",
    "caution": "bold yellow",
    "refused": "yellow",
    "good": "cyan",
    "dim": "dim",
    "keys": "dim",
    "echo": "",
}


def style_of(role: str) -> str:
    """The style of a role; none for an unknown role."""
    return STYLES.get(role, "")
