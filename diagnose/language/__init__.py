"""Floor 0: texts in another language, from one catalogue per language."""

__all__: list[str] = []
