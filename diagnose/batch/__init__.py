"""Floor 7: commands that answer at once, without a dialogue: rank a case, look into the knowledge."""

from diagnose.batch.jobs import list_jobs, show_job
from diagnose.batch.rank import rank_case
from diagnose.batch.shelf import KINDS, lint_knowledge, list_entries, show_entry, show_stats

__all__ = ["KINDS", "lint_knowledge", "list_entries", "list_jobs", "rank_case", "show_entry", "show_job", "show_stats"]
