"""Floor 9: a job as a document: service report, handover sheet, office copy; terminal, Markdown, HTML, PDF, JSON."""

__all__: list[str] = []
