"""Exit codes of the program: one list, documented, the same for every command."""

from enum import IntEnum

__all__ = ["Exit"]


class Exit(IntEnum):
    """What the program's exit code means."""

    OK = 0
    FAILURE = 1  # the command ran and the answer is no: lint found problems, the complaint is not gone
    USAGE = 2  # wrong words on the command line
    PAUSED = 3  # the job was paused and saved
    BAD_DATA = 4  # a case, machine, journal or knowledge file can't be used
    NO_SUCH_JOB = 5
    HELD = 6  # another process has the job open
    INTERNAL = 7  # a fault of the program; the log says where
    UNREACHABLE = 8  # the store of the fleet does not answer; everything is kept here
