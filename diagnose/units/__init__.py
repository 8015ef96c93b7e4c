"""Floor 0: quantities with units, read, converted and printed."""

from diagnose.units.quantity import Quantity, UnitError, parse_quantity, show_number
from diagnose.units.systems import counterpart, in_system
from diagnose.units.table import DIMENSIONS, UNITS, Unit, find_unit, units_of

__all__ = [
    "DIMENSIONS",
    "UNITS",
    "Quantity",
    "Unit",
    "UnitError",
    "counterpart",
    "find_unit",
    "in_system",
    "parse_quantity",
    "show_number",
    "units_of",
]
