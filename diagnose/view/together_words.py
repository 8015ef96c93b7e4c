"""Words for a job that several people work on: hints, who said what, who goes on."""

from __future__ import annotations

__all__: list[str] = []

DESK = "the desk"
TECHNICIAN = "the technician"
HINT_FROM = "From {who}:"
HINT_CHECK = "Suggested next: {title}"
HINT_TAKE = "take it: go to that check"
HINT_LEAVE = "leave it and go on as before"
HINT_NOTED = "noted, go on"
HINT_NOT_SO = "it is not so here"
HINT_UNKNOWN = "a check that this knowledge does not have ({id})"
HINT_CAME = "A hint from {who}: it comes between two questions."
ENTER_SHOWS = "news: Enter shows it"
AFTER_THIS = "news after this answer"
HINT_NEVER = "It changes no answer; you decide."
NOTE_FROM = "Note from {who}: "
TOLD_TOO = "{who} told: {told}"
AT_MACHINE_COUNTS = "The one at the machine counts: {counts}"
NEWER_COUNTS = "The newer one counts: {counts}"
BESIDE = "Answered twice"
HAND_ON = "somebody else goes on with it; the job stays open"
WHO_GOES_ON = "Who goes on with it, and what should they know? Enter alone: whoever comes next."
WAITS = "Job {job} waits for {whom}."
GO_ON_WITH = "Go on with: diagnose resume {job}"
WAITS_FOR = {
    "technician": "a technician",
    "desk": "the desk",
    "parts": "parts",
    "another trade": "another trade",
    "kitchen": "the kitchen",
}
HERE_NOW = "{who} is at the machine."
AT_DESK = "{who} is at the desk."
HANDED_ON = "Handed on to {whom}. {text}"
CALL_BEGUN = "On the telephone: {who}."
CALLERS = {"kitchen": "somebody of the kitchen", "technician": "a technician"}
CALL_ENDED = {
    "solved": "The call ended: solved on the telephone.",
    "stop": "The call ended: the machine must not be used.",
    "visit": "The call ended: somebody must come.",
    "goes on": "The call ended: the technician goes on.",
}
HINT_TOLD = "Hint: {told}"
HINT_TAKEN = "Hint taken: {told}"
HINT_LEFT = "Hint left aside: {told}"
UNKNOWN = "Something this program does not know: {name}"
