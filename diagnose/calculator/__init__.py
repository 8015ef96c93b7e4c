"""Floor 9: the calculator. Figures in from the plate, the words typed or an answer asked for; working out."""

from diagnose.calculator.answer import Reckoned, reckon
from diagnose.calculator.figures import FigureError, Wanted, gather_figures
from diagnose.calculator.listing import list_formulas, list_some, list_subjects, matching
from diagnose.calculator.report import as_json, as_lines

__all__ = [
    "FigureError",
    "Reckoned",
    "Wanted",
    "as_json",
    "as_lines",
    "gather_figures",
    "list_formulas",
    "list_some",
    "list_subjects",
    "matching",
    "reckon",
]
