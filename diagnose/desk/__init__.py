"""Floor 10: the support desk. Every open job on a board; nothing here answers a question for the technician."""

__all__: list[str] = []
