"""Floor 9: commands that answer at once, without a dialogue; each is imported by the command that needs it."""

__all__: list[str] = []
