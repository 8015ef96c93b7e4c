"""Floor 1: pure formulas in SI, a module per subject."""

__all__: list[str] = []
