"""Floor 4: from findings to the probability of every cause, the reasons for it, and the next step.

`build_tree` makes the fault tree of a machine; `solve_and_predict` answers what is believed now and what each open
check would make us believe; `explain`, `conflicts` and `nothing_listed_fits` say why, and what does not fit together;
`advise` ranks what can be done next.
"""

from diagnose.inference.advice import advise
from diagnose.inference.conflict import Conflict, conflicts, nothing_listed_fits
from diagnose.inference.economy import Circumstances, Economy, Task
from diagnose.inference.evidence import Item
from diagnose.inference.explain import Explanation, Reason, explain
from diagnose.inference.options import Advice, Option
from diagnose.inference.posterior import bearing_checks, concerned, predict, solve, solve_and_predict
from diagnose.inference.situation import (
    ImpossibleSituationError,
    Prediction,
    Situation,
    Solution,
    Statement,
    TooWideError,
)
from diagnose.inference.tree import FaultTree, Node, TreeCheck, build_tree, unlisted

__all__ = [
    "Advice",
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
    "Reason",
    "Situation",
    "Solution",
    "Statement",
    "Task",
    "TooWideError",
    "TreeCheck",
    "advise",
    "bearing_checks",
    "build_tree",
    "concerned",
    "conflicts",
    "explain",
    "nothing_listed_fits",
    "predict",
    "solve",
    "solve_and_predict",
    "unlisted",
]
