"""Floor 0: quantities with units, read, converted and printed."""

from diagnose.units.quantity import Quantity, UnitError, parse_quantity, show_number
from diagnose.units.table import DIMENSIONS, UNITS, Unit, find_unit, units_of

__all__ = [
    "DIMENSIONS",
    "UNITS",
    "Quantity",
    "Unit",
    "UnitError",
    "find_unit",
    "parse_quantity",
    "show_number",
    "units_of",
]
