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
SHEET = "sheet: {told}"
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
KEYS = "1-9 follow   0 next page   Enter newest   words find   h all letters   p leave"
LETTERS = (
    ("1-9", "follow this job, at once where the terminal can do that"),
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
WORKING = "Working out what leads in {count} jobs; it is kept for the next time."

# The page of one job.
JOB = "Job {job}"
NOW = "How it stands"
NEXT = "What is next"
HINTS = "Hints"
TWICE = "What does not fit together"
RANKING = "Ranking"
KNOWN = "What is known"
COURSE = "Course of events"
FACTS = {
    "machine": "Machine",
    "type": "Type",
    "serial": "Serial number",
    "site": "Site",
    "purpose": "Job",
    "begun": "Begun",
    "touched": "Last touched",
    "waits": "Waits for",
    "here": "Who is where",
    "sheet": "Sheet",
}
AGO = "{time}, {age} ago"
PLACES = {"machine": "at the machine", "desk": "at the desk"}
CLOSED = "Closed: {how}."
CLOSES = "Nothing more is asked: the job closes for safety."
QUESTION = "Question {number}: {asked}"
FIRST_CARE = "Before it, whoever does it reads this and types {typed}."
ONLY_BY = "Only for: {who}."
BY_HAND = "At the machine it is done step by step:"
ALSO = "Other good checks now"
HINT_OPEN = "waits"
HINT_TAKEN = "taken"
HINT_LEFT = "left aside"
HINT_HEADERS = ("From", "Hint", "Stands")
HINT_CAPTION = "Hints in the order given"
RANK_HEADERS = ("Rank", "Probability", "Cause")
RANK_CAPTION = "Degrees of belief, from judgement and from the readings, not counts of past repairs"
MORE_CAUSES = "{count} more, each at most this"
ONE_MORE = "one more"
NOT_ANSWERED = "Not answered"
RULED_OUT = "Ruled out"
REPAIRS = "Repairs"
NOTES = "Notes"
FAILS = "Lines of the sheet that fail"
COURSE_HEADERS = ("Question", "Time", "Who", "What")
COURSE_CAPTION = "What was answered and said, oldest first; times by the clock of each, told as {zone}"
TAKEN_BACK = "Taken back since, and not shown: {count}."
CARE_TAKEN = "Cautions read and typed ({cautions}) before: {before}"
METER = "Read with: {name} ({check})"
USUAL = "the usual kind"
SET_TO = "{what}: set to {how}"
FOUND_AT = "{what}: found at {how}"
LEFT_LINE = "Line left ({why}): {line}"

# The pages around it.
BOARD_TITLE = "Support desk"
LOGIN_TITLE = "Log in"
LOGIN_LABEL = "Token"
LOGIN_HINT = "It stands on the terminal on which the desk was started, or in its file."
LOGIN_BUTTON = "Log in"
LOGIN_WRONG = "That is not the token."
LOGIN_WAIT = "Too many wrong tokens. Try again in {seconds} s."
LOGOUT = "Log out"
LOGGED_OUT = "You are logged out."
NOT_FOUND = "There is no such page"
NO_SUCH_JOB = "There is no job of that name in this journal. It may be named differently, or not have arrived yet."
WRONG_HOST = "This server is not reached under that name."
WRONG_ORIGIN = "That came from another page, and was not done."
FAULT = "Something inside failed"
FAULT_TOLD = "The log says where. Nothing was changed; the jobs are as they were."
UNREADABLE = "This job can't be shown"
TO_ALL = "All open jobs"
FILTER_LABEL = "Only jobs with these words"
FILTER_BUTTON = "Show"
SORT_LABEL = "In the order"
COUNT = "{count} open jobs"
COUNT_ONE = "1 open job"
COUNT_NONE = "No job is open"
COUNT_SHOWN = "{shown} of {count} open jobs shown"
COLUMNS = ("Job", "Where", "Complaint", "What leads", "Waits for", "Begun", "Last touched")
TABLE_CAPTION = "Open jobs with where they are, what leads, and whom each waits for"
READ_ONLY = "This page only shows; it changes nothing in any job."
RELOAD = "Without scripts, reload it to see the newest."


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
