"""Floor 4: from findings to the probability of every cause, the reasons for it, and the next step.

How it works, in the order of the modules:

- `tree`: the book becomes the fault tree of one machine: causes with priors, gates above them, checks with tables.
- `situation`: what is known of a job (complaints, findings, repairs, each with its stage), and what comes out.
- `network`, `evidence`: both are unrolled into tables of at most three yes-or-no variables (or small counters). A
  repair below a node starts a new copy of it; everything else is shared between the stages.
- `elimination`, `propagation`: an order of summing out makes a tree of clusters; a pass towards its roots and one back
  give every probability exactly, for a whole batch of "what if" cases at once; `conditioning` fixes a few variables
  (`cutset` says which) one value after another where the batch would be too much.
- `posterior`: what is believed now, and what would be after each outcome of each open check, in one sweep.
- `explain`, `conflict`: the same sweep over "what if this had not been found" gives reasons in bits and contradictions.
- `economy`, `repairs`, `options`, `advice`: minutes for covers, states, repairs and help; the expected minutes to a
  verified repair after each possible answer; what to do next.
- `van`, `needs`, `calls`, `calling`: which parts to carry to a visit, and what a question on the telephone is worth.
"""

from diagnose.inference.advice import advise, counted_as
from diagnose.inference.calling import CallAdvice, advise_call
from diagnose.inference.calls import Question
from diagnose.inference.conflict import Conflict, conflicts, nothing_listed_fits
from diagnose.inference.economy import Circumstances, Economy, Task
from diagnose.inference.evidence import Item
from diagnose.inference.explain import Explanation, Reason, explain
from diagnose.inference.needs import IF_NEEDED, VanAdvice, advise_van, kept, minutes_of, parts_of, who_for
from diagnose.inference.options import Advice, Option
from diagnose.inference.posterior import (
    bearing_checks,
    concerned,
    predict,
    solve,
    solve_and_predict,
    weighable,
)
from diagnose.inference.roughly import foretold_roughly
from diagnose.inference.situation import (
    ImpossibleSituationError,
    Prediction,
    Situation,
    Solution,
    TooWideError,
)
from diagnose.inference.tree import FaultTree, Node, TreeCheck, build_tree, unlisted

__all__ = [
    "IF_NEEDED",
    "Advice",
    "CallAdvice",
    "Circumstances",
    "Conflict",
    "Economy",
    "Explanation",
    "FaultTree",
    "ImpossibleSituationError",
    "Item",
    "Node",
    "Option",
    "Prediction",
    "Question",
    "Reason",
    "Situation",
    "Solution",
    "Task",
    "TooWideError",
    "TreeCheck",
    "VanAdvice",
    "advise",
    "advise_call",
    "advise_van",
    "bearing_checks",
    "build_tree",
    "concerned",
    "conflicts",
    "counted_as",
    "explain",
    "foretold_roughly",
    "kept",
    "minutes_of",
    "nothing_listed_fits",
    "parts_of",
    "predict",
    "solve",
    "solve_and_predict",
    "unlisted",
    "weighable",
    "who_for",
]
