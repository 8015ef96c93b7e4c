"""Words of the support desk's screens."""

from __future__ import annotations

__all__: list[str] = []

FOLLOWING = "Following: what happens there appears here by itself."
FOLLOW_KEYS = "c suggest a check   n say something   r ranking   w why   h all letters   p leave"
READ_KEYS = "r ranking   w why   h all letters   p leave"
FOLLOW_LETTERS = {
    "c": "suggest a check: `c inlet temperature`; it appears there between two questions, and is taken or left",
    "n": "say something to who works there: `n ask the chef when it began`",
    "r": "ranking of all causes",
    "w": "why: `w 2`: what speaks for and against cause 2",
    "t": "tree from complaint to causes; `t all` or `t 3` opens more of it",
    "i": "what is known so far: the job as a summary",
    "h": "this list",
    "p": "leave; the job goes on there",
}
NO_LETTER = "Here letters only look on or send a hint. h shows all of them."
READ_ONLY = "You may read here, not write."
SENT = "Sent. It appears there between two questions."
WORDS_WITH = "Words to go with it? Enter alone: none."
WHAT_TO_SAY = "What is to be said? Enter alone: nothing."
EARLIER = "{count} earlier answers; diagnose jobs {job} shows all."
NOW_ASKED = "Asked there now, question {number}: "
ALSO_GOOD = "also good: "
NOW_CLOSED = "The job is closed."
LEFT = "You left; the job goes on there. Come back with: diagnose desk follow "
NOTHING_OPEN = "There is no open job to follow. `diagnose jobs` lists all."
