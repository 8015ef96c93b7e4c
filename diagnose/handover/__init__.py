"""Floor 6: the sheet of a handover on this machine: its lines, what each comes to, how far to set what fails."""

__all__: list[str] = []
