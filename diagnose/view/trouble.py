"""Any exception as one sentence with a remedy and an exit code; the unexpected also goes to the log."""

from __future__ import annotations

import traceback

from diagnose.fleet.errors import StoreError, Unreachable
from diagnose.job.case import CaseError
from diagnose.job.hold import JobHeld
from diagnose.job.instruments import InstrumentError
from diagnose.job.journal import JournalError, utc_now
from diagnose.job.machines import MachineError
from diagnose.job.places import own_places
from diagnose.job.settings import SettingsError
from diagnose.model import KnowledgeError
from diagnose.units import UnitError
from diagnose.view.exits import Exit

__all__ = ["trouble"]

_BAD_DATA = (
    CaseError,
    InstrumentError,
    JournalError,
    KnowledgeError,
    MachineError,
    SettingsError,
    UnitError,
)


def trouble(error: Exception) -> tuple[str, Exit]:
    """(what to print, exit code)."""
    if isinstance(error, JobHeld):
        return f"diagnose: {error}", Exit.HELD
    if isinstance(error, StoreError):
        return f"diagnose: {error}", Exit.UNREACHABLE if isinstance(error, Unreachable) else Exit.FAILURE
    if isinstance(error, _BAD_DATA):
        return f"diagnose: {error}", Exit.BAD_DATA
    log = own_places().log
    try:
        log.parent.mkdir(parents=True, exist_ok=True, mode=0o700)
        with open(log, "a", encoding="utf-8") as file:
            file.write(f"{utc_now()}\n{traceback.format_exc()}\n")
        where = f"the log is {log}"
    except OSError:
        where = "the log could not be written; run again with --debug"
    return (
        f"diagnose: something inside failed ({type(error).__name__}). Your answers are saved; {where}.",
        Exit.INTERNAL,
    )
