"""Floor 9: a job as a document: service report, handover sheet, office copy; in every format."""

from diagnose.report.dossier import Dossier
from diagnose.report.make import DOCUMENTS, FORMATS, ReportError, may_write, render, schema_text, write
from diagnose.report.measures import Measures

__all__ = ["DOCUMENTS", "FORMATS", "Dossier", "Measures", "ReportError", "may_write", "render", "schema_text", "write"]
