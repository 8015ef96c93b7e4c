"""Every word and sign on the screens, in one place. Knowledge has its own words in the knowledge files."""

from __future__ import annotations

__all__ = ["minutes"]

PROMPT = "> "

ACCESS = {"none": "nothing to open", "tank drained": "tank drained"}
STATE = {
    "running": "machine running",
    "idle hot": "machine idle, hot",
    "isolated": "machine isolated",
    "cold and drained": "machine cold and drained",
}
WHO = {
    "operator": "anybody",
    "technician": "technician",
    "licensed electrician": "licensed electrician",
    "licensed gas fitter": "licensed gas fitter",
    "licensed plumber": "licensed plumber",
}
# The word typed by somebody who may do what nobody announced for this job may.
LICENCE_WORDS = {
    "technician": "TECHNICIAN",
    "licensed electrician": "LICENSED",
    "licensed gas fitter": "LICENSED",
    "licensed plumber": "LICENSED",
}
FOUND = {
    "as expected": "as expected: faulty, and repaired now",
    "sound": "sound: nothing was wrong with it",
    "can't tell": "repaired or replaced, but can't tell whether it was faulty",
}
CLOSED = {
    "repaired": "repaired and proved",
    "stopped for safety": "stopped for safety",
    "help called": "help called",
    "no fault": "no fault of the machine",
    "given up": "given up",
    "handed over": "handed over",
    "solved on the telephone": "solved on the telephone",
}
UNKNOWN_KIND = "Unknown"  # an event of a newer program

# The line under each question, and the letters that mean the same at every question.
KEYS = "? don't know   s skip   b back   w why   h all letters   p pause"
KEYS_FREE = "Enter alone: leave it out   b back   h all letters   p pause"
KEYS_CHOOSE = "b back   h all letters   p pause"
LETTERS: tuple[tuple[str, str, str], ...] = (
    ("?", "", "don't know, go on without"),
    ("s", "skip", "skip: can't reach it, or not now"),
    ("b", "back", "back to the question before; the old answer is offered again"),
    ("w", "why", "why this question; `w 2`: what speaks for and against cause 2"),
    ("f", "figure", "the figure expected here, and how it is worked out; `f line amps`: of another check"),
    ("r", "ranking", "ranking of all causes"),
    ("t", "tree", "tree from complaint to causes; `t all` or `t 3` opens more of it"),
    ("c", "check", "another check, or a reading nobody asked for: `c inlet temperature`"),
    ("g", "go", "go to a repair: `g 1`"),
    ("x", "exclude", "rule out a cause: `x 2`"),
    ("u", "undo", "undo any earlier answer, from a list"),
    ("m", "meter", "which of your instruments this is read with; `m 2`: the second"),
    ("n", "note", "write a note into the job: `n gasket cut`"),
    ("l", "lines", "the sheet of a handover, line by line; `l 62`: go to line 62"),
    ("a", "add", "add a complaint: `a steam at both ends`"),
    ("i", "info", "what is known so far: the job as a summary"),
    ("!", "danger", "danger: the stop conditions again"),
    ("e", "end", "end the job: call for help, or leave it"),
    ("p", "pause", "pause: all is saved, go on later"),
    ("h", "help", "this list"),
)
HELP_MORE = (
    "Numbers choose from a list. Readings take a unit: 71, 71,5, 160F, 71 C, 20psi, 1.4 bar.",
    "Percentages are degrees of belief, from judgement and from the readings, not counts of past repairs.",
    "Cautions, the data plate, local rules and licensed trades go before anything said here.",
)

SHOPS = "from your own folder of knowledge, not ours: "
NUMBER_OF = "Why this number: "
FOUND_BY = "Found: "
ALSO_LIKE = "Also like these words: "
STANDS_ON = "Stands on: "
NO_NUMBER = "No figure was worked out yet. At a question that measures, f shows what it should read, and why."
NO_FIGURE = "What it should read here can't be worked out with the figures known so far."
NO_MEASURE = "This is looked at, not measured: there is no figure to work out."
ANYTHING = "Anything else the kitchen complains of?"
WHICH_MACHINE = "Which machine?"
SAVED = "Saved machines"
MACHINE_GROUPS = {"1": "One tank", "2": "Two tanks", "flight": "Flight type: ware stands on the belt"}
RANGE_HINT = "A range like 1-5 shows what stands there; all shows everything."
MACHINE_HINT = "Take the nearest type; its plate can be read next."
STOP_UNKNOWN = "Stop. Make safe, and call the right service."
SAVED_NOTE = "saved"
PLATE_OFFER = "Are the figures of its data plate at hand?"
PLATE_USUAL = "go on with the usual figures of the type (said to be assumed)"
PLATE_READ = "read the plate now, and keep this machine under a name"
DESCRIBE = {
    "name": "A name to keep this machine under?",
    "serial": "Serial number?",
    "site": "Which site?",
}
DESCRIBE_HINT = {
    "name": "Up to 40 letters, digits, blanks, dots or dashes.",
    "serial": "As it stands on the plate, free text.",
    "site": "Free text, for the list of jobs.",
}
PLATE_NOT_THERE = ("Enter alone: not on the plate, the type's figure is assumed", "rest: none of the rest is on it")
SAFETY = "Before anything else: is one of these so?"
SAFETY_NONE = "none of these"
SAFETY_AGAIN = "If one of these is so, stop and type !"
COMPLAINT = "What does the kitchen complain of?"
COMPLAINT_HINT = "Number, several numbers, or words, like: water not hot at the end"
TAKEN = "Taken as: "
ANYTHING_HINT = "Enter alone: no, that is all."
COMPLAINT_NEEDED = "Without a complaint there is nothing to look for; say it in the kitchen's own words."
SAID_ALREADY = "That is taken already. Enter alone: that is all."
CONTEXT_HINT = "Number or words; Enter alone or ?: not known."
EXPECTED = "Expected here: "
WHY_THIS = "Why this one: "
NEXT_CHECK = "Next check"
PROOF = "To prove the repair"
REPAIR = "Repair"
SETTING = "To set"
BY_PROOF = "This proves the repair."
NO_INSTRUMENT = ("", "none", "eyes", "eyes only")
STEP_MISTAKES = "Mistakes to avoid:"
INSTEAD = "Other good checks now"
CHOOSE_OTHER = "`c 2` takes the second, `c` and words any other."
CAUTION = "Caution"
DEFER = "Local rules and the data plate go before anything said here."
DEFER_SAID = "data plate"  # a caution that says so itself needs it no second time
RANKING = "Ranking"
WAS = "was"
RANKING_KEYS = "w 1 why   t tree   r all of it"
TELLS_APART = "It tells apart (what each shows most often):"
WHY_PLAIN = "The answer decides where to look first."
WHY = {
    "AskMachine": "Its type decides which parts there are and what they should read.",
    "OfferPlate": "Figures of this very machine make every later comparison sharper than usual figures of the type.",
    "AskFigure": "Readings are compared with this figure. Not on the plate: the type's figure is used, and said so.",
    "Describe": "So that the job and the machine are found again.",
    "AskSafety": "Some dangers come before any diagnosis; each has one instruction.",
    "AskComplaint": "Only causes that can bring about what is complained of are looked for.",
    "AskContext": "The answer makes some causes more likely and others less. Not known changes nothing.",
    "AskGone": "A repair is proved by the complaint being gone, not by a new part.",
    "AskClose": "The end of the job is kept with it, for whoever comes next.",
    "AskEnd": "The end of the job is kept with it, for whoever comes next.",
    "AskHint": "Somebody who follows sees the same readings, and may know more. You decide.",
    "AskOn": "It is said to whoever goes on, and shown where open jobs are listed.",
}
FOR = "speaks for it"
SOLE = "this alone decides it"
AGAINST = "speaks against it"
NOTHING_YET = "nothing measured yet: only how often it happens"
CONFLICT = "Caution: these readings can't well all be right"
NEXT = "What next?"
DECIDE_HINT = "A number; or c another check, g another repair, x rule out, e end."
NO_ADVICE = "Nothing is left to ask that would help."
WHAT_FOUND = "What did you find? Answer when it is done; s leaves the repair for now."
WHAT_FOUND_NO_FAULT = "Is that what you find?"
FOUND_NO_FAULT = {
    "as expected": "yes, and it is set right now",
    "sound": "no, it is not so",
    "can't tell": "set right, but can't tell whether it was the reason",
}
END = "How does the job end?"
END_WAYS = (
    ("help called", "call for help: close with what is known"),
    ("given up", "leave it: close without a repair"),
)
END_BACK = "go on with the job"
GONE = "Is this gone now:"
ALL_GONE = "Nothing is complained of any more."
MORE_WRONG = "something else is wrong still"
GONE_YES = "gone"
GONE_NO = "still there"
GO_ON = "Going on with all that is known: there may be a second fault, or the repair did not take."
UNLISTED_FIRST = (
    "What fits best now is something not listed here. Check the readings that surprise you once more, "
    "look for what nobody asked about, and think of calling for help."
)
UNLISTED_BEHIND = "Most likely it is something that brings this about: "
OTHER_KNOWLEDGE = (
    "This job was begun with another edition of the knowledge; it goes on with the one here. Answers that no longer "
    "fit are named below, if there are any."
)
PAUSED = "Paused, saved. Resume with: diagnose resume "
NOT_BEGUN = "Nothing was answered yet, so nothing is kept."
OLD_ANSWER = "Enter alone: "
FIRST_QUESTION = "This is the first question: there is nothing before it."
NOT_TAKEN = "Not taken: "
SET_TO = "set to"
FOUND_STANDING = "found at"
LINE_LEFT = "Left as it is: "
TAKEN_BACK = "Taken back: "
NOTED = "Noted."
WHICH_CHECK = "Which check? Words, like: inlet temperature. Enter alone: none."
WHICH_CAUSE = "Which cause? Its number in the ranking, or words. Enter alone: none."
WHICH_UNDO = "Which answer is taken back? Its question's number. Enter alone: none."
WHICH_DANGER = "Its number:"
HELP_INSIDE = "Answer as asked; Enter alone or b leaves everything as it was, p pauses."
WHICH_ONE = "Which of these? Enter alone: none."
WHICH_METER = "Read with which? Its number. Enter alone: as before."
NO_METER = "None of your instruments reads this; `diagnose instrument add` keeps one."
USUAL_METER = "none of yours: "
WHICH_NOTE = "What is to be noted? Enter alone: nothing."
NOT_YET = "There is nothing to rank before a machine and a complaint are known."
STANDS = "Left as it was."
SKIPPED = "Left out."
NO_LETTER_HERE = "That does not apply to this question. h shows all letters."
GO_NO_SKIP = "This one needs an answer; b goes back, p pauses."
BE_SURE = "Look until you are sure; if that is not possible, treat it as so and answer with its number."
RESUMED = "Going on where it was left."
WELCOME = "diagnose: from complaint to proven repair. h shows all letters, p pauses; every answer is saved at once."
UNUSED = "This reading could not be used: "
CALL_HELP = "call for help"
HELP_WHY = "when nothing here is worth its minutes"
NO_FAULT = "No fault of the machine"
THIS_MACHINE = "This machine: "
AT_HANDOVER = "at handover"
LOOKS = "Looked at in one job only, which its report tells: {count}."
BEFORE_REPAIR = ", before a repair"
CAME_BACK = "Came back"
DRIFTS = "Drifts"
CHANGED = "Changed"
BEYOND_ERRORS = ", more than the instruments may be off"
BASELINE = "Baseline"
NO_BASELINE = "No baseline: no handover of this machine was finished."
NO_HANDOVER = "no handover kept"
NO_HISTORY = "No history yet: no job in the journal is on this machine."
NONE_READABLE = "no job that can be read here"
SOME_UNREAD = "Something of its history can't be read here; it is named by: diagnose machine show "
UNREAD_HERE = "Can't be read here"
JOBS_OF_IT = "Jobs"
READ_OVER_TIME = "Readings over time"
REPAIRED = "Repaired"
NOT_SEEN_FAULTY = "No part was seen to be faulty"
STILL_OPEN = "still open"
LOOK_WHY = "look for why it comes back."
ASKED = {
    "AskMachine": WHICH_MACHINE,
    "OfferPlate": PLATE_OFFER,
    "AskSafety": SAFETY,
    "Decide": NEXT,
    "AskClose": ALL_GONE,
    "AskEnd": END,
    "AskHandover": "How does it go on?",
}


def minutes(value: float) -> str:
    """Minutes as words.

    >>> minutes(1), minutes(2.5), minutes(90)
    ('1 minute', '2.5 minutes', '90 minutes')
    """
    number = f"{value:g}" if value < 10 else f"{value:.0f}"
    return f"{number} minute" if number == "1" else f"{number} minutes"
