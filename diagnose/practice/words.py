"""The words of practice on the screen."""

from __future__ import annotations

__all__ = [
    "CAUSE_ASK",
    "CAUSE_HINT",
    "CAUSE_MORE",
    "FAULTY",
    "FIRST",
    "GIVE_UP",
    "HELP",
    "INVENTED",
    "KEYS",
    "KEYS_SUB",
    "LETTERS",
    "NOTHING_TO_READ",
    "NOT_BEGUN",
    "NOT_HERE",
    "NO_UNDO",
    "PAUSED",
    "PROVED",
    "REPAIR_ASK",
    "RESUMED",
    "SOUND",
    "STILL_SO",
    "WHAT_HINT",
    "WHAT_NEXT",
]

INVENTED = "Practice: the machine is simulated; its site and all that happens there are invented. Nobody can be hurt."
WHAT_NEXT = "What do you check, or do?"
WHAT_HINT = "A check in your own words, like: rinse temperature. list shows them all."
KEYS = "g repair   e say the cause   w was that telling   i story, plate, readings   h all letters   p pause"
KEYS_SUB = "b back to the checks   h all letters   p pause"
FIRST = "This can hurt somebody. What do you do first?"
CAUSE_ASK = "What is wrong? Say the cause."
CAUSE_MORE = "And what else is wrong?"
CAUSE_HINT = "In your own words, or list. Enter alone: that is all."
GIVE_UP = "give up: see what it was. Enter alone: back to the checks."
REPAIR_ASK = "Which repair? In your own words, or list; Enter alone: none."
NOT_HERE = "cannot be read here. It took no time; try another check."
NO_UNDO = "What was done at the machine is done, and its minutes are spent."
NOTHING_TO_READ = "With the power off there is nothing to read there. You made it dead for nothing, or leave it so."
STILL_SO = "Repaired, but the kitchen says: still so. "
PROVED = "Proved: nothing is complained of any more."
SOUND = "it was sound; nothing has changed."
FAULTY = "it was faulty, and is repaired now."
RESUMED = "You go on with this exercise."
PAUSED = "Saved. Go on with: diagnose practice resume "
NOT_BEGUN = "Nothing was begun."

LETTERS: tuple[tuple[str, str], ...] = (
    ("c", "a check: `c rinse pressure`, or its words alone"),
    ("g", "go to a repair: `g element`"),
    ("e", "end: say the cause, or give up"),
    ("w", "was that telling: what the tool makes of the last reading; `w inlet`: of another"),
    ("r", "ranking of all causes by the tool; the debrief says that you asked"),
    ("i", "info: the story, the plate and all readings so far"),
    ("n", "write a note: `n L3 alone is right`"),
    ("b", "back to the checks, where a choice or the cause is asked for"),
    ("s", "the same"),
    ("p", "pause: all is saved, go on later"),
    ("h", "this list, as does ?"),
)
HELP = (
    "list shows all checks that can be read, by part of the machine; 12-20 opens a part, a number takes one.",
    "Every check costs its minutes; covers are paid once, bringing the machine into another state each time.",
    "Nothing is judged until you ask, or until the debrief.",
)
