"""Every word of the board of open jobs, on the terminal and in the browser."""

from __future__ import annotations

__all__ = ["age"]

WAITS_FOR = {
    "technician": "technician",
    "desk": "desk",
    "parts": "parts",
    "another trade": "another trade",
    "kitchen": "kitchen",
}
CALL = "on the telephone"
CALLERS = {"kitchen": "the kitchen", "technician": "a technician"}
HINT = "technician: a hint waits"
AT_WORK = "technician at work"
DANGER = "stopped for danger"
UNREAD = "can't be read"
INSIDE = "something inside failed ({name}); `diagnose jobs {job}` shows its events"

PURPOSE = {"repair": "repair", "handover": "handover"}
NO_MACHINE = "machine not known yet"
NO_COMPLAINT = "no complaint yet"
NO_LEAD = "nothing to rank yet"
NOT_WORKED_OUT = "the ranking can't be worked out"
PENDING = "being worked out"
UNTIMED = "?"
AHEAD = "clock?"
AHEAD_TOLD = "Whoever wrote last has a clock that is ahead of this one."

TITLE = "Open jobs"
HEADERS = {"begun": "begun", "touched": "idle", "job": "job", "where": "where", "waits": "waits for"}
RECORD = {"site": "site", "machine": "machine", "complaint": "complaint", "leads": "leads", "waits": "waits for"}
NO_JOBS = "No job is open."
NONE_FIT = "No open job fits that."
SHOWN = "{first}-{last} of {count}"
SHOWN_ONE = "{first} of {count}"
OF_ALL = "{count} open"
WITH_WORDS = 'with "{words}"'
SORTED = {
    "touched": "touched longest ago first",
    "age": "begun longest ago first",
    "site": "by site",
    "waiting": "by whom they wait for",
}
KEYS = "1-9 look   0 next page   Enter newest   words find   h all letters   p leave"
LETTERS = (
    ("1-9", "look at this job, at once where the terminal can do that"),
    ("0", "the next page; after the last the first"),
    ("b", "back: the page before, or all jobs after a filter"),
    ("Enter", "the board as it stands now"),
    ("words", "only jobs with these words: in job, site, machine, complaint, cause or whom they wait for"),
    ("/words", "the same, also for words that begin with a number or are one letter; / alone: all jobs again"),
    ("h", "this list"),
    ("p", "leave"),
)
CHANGED = "changed: Enter shows it"
NO_BEFORE = "This is the first page of all open jobs."
NO_NUMBER = "Numbers on this page go from 1 to {last}."
NOT_OPEN = "{job} is not there any more, or is closed; Enter shows the board."
TO_BOARD = "Enter: back to the board   p leave"
WORKING = "Working out what leads in {count} jobs; it is kept for the next time."


def age(minutes: float | None) -> str:
    """How long ago, short.

    >>> age(0.4), age(59.9), age(60), age(47.9 * 60), age(48 * 60), age(None), age(-20)
    ('0 min', '59 min', '1 h', '47 h', '2 d', '?', 'clock?')
    """
    if minutes is None:
        return UNTIMED
    if minutes < -5:
        return AHEAD
    whole = max(0, int(minutes))
    if whole < 60:
        return f"{whole} min"
    return f"{whole // 60} h" if whole < 48 * 60 else f"{whole // (24 * 60)} d"
