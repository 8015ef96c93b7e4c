"""Floor 9: a job as a document: service report, handover sheet, office copy; in every format."""

__all__: list[str] = []
