"""Floor 10: the support desk: following a job live, calls, open jobs."""

__all__: list[str] = []
