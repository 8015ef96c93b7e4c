"""Every word of the sheet of a handover on the screen, in one place."""

from __future__ import annotations

__all__: list[str] = []

# What a line of a handover's sheet has come to, in the order counted.
VERDICT = {
    "pass": "pass",
    "fail": "FAIL",
    "cannot tell": "can't tell",
    "again": "again",
    "left": "left",
    "to do": "to do",
    "not read": "not read",
}
LEFT = {
    "not now": "not now, at a later visit",
    "waits for another trade": "waits for another trade",
    "no instrument here": "no instrument for it here",
    "not at this site": "not at this site",
    "remark": "stays as it is, with a remark",
}
SHEET = "Sheet: "
WANTED = "Wanted: "
CANNOT_TELL = "The reading is within the instrument's error of the figure wanted: a better instrument can tell."
FAILED = "What now?"
SET = "set "
TO_SET = "To set: "
AGAIN = "measure it again"
LOOK_INTO = "look for the cause, with all readings so far: "
LEAVE_IT = "leave it, with the reason"
LEAVE = "Why is this left?"
LEAVE_HINT = "A number, and what should stand on the sheet: 2 plumber comes on Friday"
REMARK_WANTED = "A remark needs words: 5 and what should stand on the sheet."
WHO_SHOWN = "who was it? Functions will do, like: two of the evening crew, kitchen manager."
WHO_HINT = "Say who was shown; s leaves the line."
SET_SO = "  Worked out: "
SET_DONE = "Answer when it is set."
SET_AS_SAID = "set as worked out"
SET_BY_EYE = "set; it is read again next"
SET_OTHER = "Set otherwise: 1 and the figures it was set to. "
CANNOT_SET = "it can't be set"
NEAR_ENOUGH = "near enough: it stays so"
SAY_FIGURE = "Say the figures as they stand; s leaves it for now."
NO_POWER = "Nothing is switched on before these are as wanted: "
MISSING = "No handover without these: "
HAND_OVER = "How does it go on?"
SIGN = "hand over,"
TAKE_UP = "take up the lines that were left"
TAKE_UP_MISSING = "take up what a handover can't do without"
NOT_HANDED_OVER = "end without handing over"
NOT_FOUND = "looked into, the cause not found yet"
WAS_SET = "Set: "
MENDED = "Mended: "
NOW = "now"
REMARKS = "With these remarks:"
SHEET_ON_PAPER = "The sheet on paper: diagnose report "
BACK_TO_SHEET = "leave it: back to the sheet, with a remark"

WELCOME_HANDOVER = (
    "diagnose: handing a machine over, line by line. h shows all letters, l the sheet, p pauses; every answer is saved "
    "at once, and several visits are no harm."
)
NO_SHEET = "There is no sheet here: `diagnose handover` begins one."
SHEET_HINT = "l and a number goes to a line."
LOOKING = "A failure is being looked into; the sheet goes on when it is found, or e leaves it with a remark."
