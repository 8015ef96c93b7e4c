"""Floor 9: the conversation of a job."""

from diagnose.dialogue.run import run_job
from diagnose.dialogue.start import start

__all__ = ["run_job", "start"]
