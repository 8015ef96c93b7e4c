"""Words about the store of a fleet: what was sent and fetched, who may do what there, clocks."""

from __future__ import annotations

__all__ = ["ahead", "check_told", "member_told", "passed_told"]

NOT_SET = (
    'no store is set; write store = "postgresql://login@host/database" into {file}, or set DIAGNOSE_STORE '
    "to that address"
)
MADE = "The store is there. Let people in: diagnose store member LOGIN --as technician --company NAME"
MAY = {
    "technician": "reads and writes the company's jobs, as a technician",
    "desk": "reads and writes the company's jobs, as the desk",
    "reader": "reads the company's jobs and writes nothing",
}
PASSWORD = "Password for {login} (Enter alone leaves it as it is)"
PASSWORD_AGAIN = "The same again"
PASSWORDS_DIFFER = "the two are not the same; nothing was changed"
PASSWORD_SET = "The password is set."
NO_PASSWORD = "It has no password yet; in psql, as an administrator: \\password {login}"
ADDRESS = 'Their address: store = "postgresql://{login}@{host}/{database}"'
RENAMED = "This journal writes under a name of its own now; {events} written again under it."
HELD = "{events} of this journal stay here: this login may only read."
SLOW = "The clock of this computer is {much} slow by the store's; set it right, times in jobs follow it."
FAST = "The clock of this computer is {much} fast by the store's; set it right, times in jobs follow it."
UNSENT = "{events} not sent to the store yet; the next `diagnose sync`, or the next job, sends them."
ASKING = "Asking the store for {job} ..."


def events(count: int) -> str:
    """So many events, in words."""
    return f"{count} event" if count == 1 else f"{count} events"


def passed_told(sent: int, received: int, renamed: int, held: int) -> list[str]:
    """What one pass came to."""
    told = [RENAMED.format(events=events(renamed))] if renamed else []
    told.append(f"Sent {events(sent)}, received {received}.")
    return told + ([HELD.format(events=events(held))] if held else [])


def ahead(seconds: float, most: float) -> list[str]:
    """That the clocks differ, where they do by more than `most` seconds; `seconds`: the store's is ahead by so much."""
    if abs(seconds) <= most:
        return []
    minutes = round(abs(seconds) / 60)
    much = f"{minutes} minutes" if minutes < 120 else f"{round(minutes / 60)} hours"
    return [(SLOW if seconds > 0 else FAST).format(much=much)]


def member_told(login: str, kind: str, company: str) -> str:
    """Who was let in."""
    return f"{login} {MAY[kind]}: {company}."


def check_told(login: str, kind: str, company: str, newest: int, encrypted: bool) -> list[str]:
    """What this login is in the store."""
    return [
        f"{member_told(login, kind, company)}",
        f"The store holds {events(newest)} of this company.",
        "The connection is encrypted." if encrypted else "The connection is not encrypted.",
    ]
