"""Floor 6: the sheet of a handover on this machine, what each line comes to, how far to set what fails; no input."""

__all__: list[str] = []
