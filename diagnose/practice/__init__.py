"""Floor 9: practice. A simulated machine with a hidden fault, its exercises, and the debrief."""

__all__: list[str] = []
