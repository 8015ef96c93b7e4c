"""Floor 4: from findings to the probability of every cause, the reasons for it, and the next step."""

from diagnose.inference.posterior import predict, solve, solve_and_predict
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
    "FaultTree",
    "ImpossibleSituationError",
    "Node",
    "Prediction",
    "Situation",
    "Solution",
    "Statement",
    "TooWideError",
    "TreeCheck",
    "build_tree",
    "predict",
    "solve",
    "solve_and_predict",
    "unlisted",
]
