"""Floor 5: a job as events, their fold to a state, the journal, and the assessment of a state."""

from diagnose.job.folding import fold
from diagnose.job.hold import JobHeld, hold
from diagnose.job.journal import Journal, JournalError, new_job_name
from diagnose.job.machines import MachineError, SavedMachine, list_machines, load_machine, save_machine
from diagnose.job.places import Places, own_places
from diagnose.job.state import JobState

__all__ = [
    "JobHeld",
    "JobState",
    "Journal",
    "JournalError",
    "MachineError",
    "Places",
    "SavedMachine",
    "fold",
    "hold",
    "list_machines",
    "load_machine",
    "new_job_name",
    "own_places",
    "save_machine",
]
