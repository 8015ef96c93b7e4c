"""Floor 2: the formulas of `physics` put in the trade's words, described once for all who use them."""

from diagnose.formulas.catalog import SUBJECTS, all_formulas, find_formula
from diagnose.formulas.formula import Answer, Argument, Formula
from diagnose.formulas.solve import solve_back
from diagnose.formulas.working import Given, Worked, said, system_of, work

__all__ = [
    "SUBJECTS",
    "Answer",
    "Argument",
    "Formula",
    "Given",
    "Worked",
    "all_formulas",
    "find_formula",
    "said",
    "solve_back",
    "system_of",
    "work",
]
