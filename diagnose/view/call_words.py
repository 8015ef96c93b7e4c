"""Words of a call: what the desk reads, and what it says aloud in the caller's terms.

What is said aloud stands in the catalogue of other languages too.
"""

from __future__ import annotations

from diagnose.language import mark

__all__: list[str] = []

WELCOME = (
    "diagnose desk call: ask aloud what stands after Say (a technician: the question as it stands), "
    "type what you hear. Every answer is saved at once."
)
SAY = "Say: "
PAUSED = "Paused, saved. Go on with the call: diagnose desk call "
WHO_CALLS = "Who is on the telephone?"
CALLERS = ("somebody of the kitchen: no tool, no cover, nothing live", "a technician at the machine")
CALLER_HINT = "Number; a name may follow, like: 1 Ana."
STOP_FIRST = "Ask before anything else:"
WOULD_TELL = "It would tell: "
SAVED_HINT = "Number, or words of its name or place; Enter alone: none of these, its type is found by questions."
TYPE_LEFT = "{count} types of machine are left; ? when they don't know."
WHERE = "Name, place, and a number to call back, for whoever must come. Enter alone: not told."
NOT_FOR_KITCHENS = "That needs a tool, a cover or a technician: nothing to ask a kitchen for."
MENDS = "The kitchen puts this right alone: {title}"
CARE_FIRST = "Read this out too, and type the word only when they say that it is so."
MENDED = ("done: it was so, and is put right", "it was not so: nothing was changed", "done, but they can't tell")
MENDED_HINT = "s: they can't, or don't want to."
SOLVED = ("the call is over: solved on the telephone", "something else is wrong still")
END = "How does the call end?"
END_WAYS = {
    "visit": "somebody must come",
    "stop": "somebody must come, and the machine is not used until then",
    "solved": "it works again: solved on the telephone; what it was may follow, like: {nth} drain stood open",
    "goes on": "the technician goes on alone at the machine",
}
END_BACK = "go on asking"
NOTHING_LEFT = "Nothing more is worth asking on the telephone."
UNTIL_STOP = "Until it is right: the machine must not be used."
UNTIL_CARE = "Until it is right: only with care."
VISIT = "For whoever comes"
KNOWN = "What the call told"
PARTS = "Parts for the van"
NO_PARTS = "No part is likely enough to be carried."
CHANCE = "With these, one visit does in {chance} of 100 cases."
CHANCE_NONE = "Without any part, one visit does in {chance} of 100 cases."
LEFT_OUT = "Not carried"
FOR_CAUSES = "for: {causes}"
BRING = "Instruments"
WHO_COMES = "Who must come"
ANY_TECHNICIAN = "a technician"
WITH_LICENCE = "{who}: needed in {chance} of 100 cases"
MINUTES_THERE = "About {minutes} there, with every part at hand."
RESUME = "On site: diagnose resume "
AGAIN = "This sheet again: diagnose desk visit "
NO_VISIT = "Job {job} has no machine yet, so nothing can be said about a visit."
NO_COMPLAINT = "Job {job} has no complaint yet, so nothing can be said about a visit."

# Said aloud.
ALOUD = {
    "machine": mark("Which kitchen are you calling from, and which machine is it?"),
    "site": mark("Where are you calling from? Please tell me the name of the house and the place."),
    "complaint": mark("What does the machine do, or not do?"),
    "anything": mark("Is anything else wrong with it?"),
    "gone": mark("Please run a few racks. Is it gone now?"),
    "come": mark("Somebody will come. Please do not open anything and do not repair anything yourselves."),
    "thanks": mark("Good. If it comes back, please call again."),
    "hazard": mark("Mind your hands: do not reach into the machine, open nothing, keep away from hot water and steam."),
}
