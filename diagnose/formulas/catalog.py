"""All formulas by subject: whoever describes one adds it to its subject's tuple."""

from __future__ import annotations

from collections.abc import Mapping
from functools import cache
from importlib import import_module

from diagnose.formulas.formula import Formula

__all__ = ["SUBJECTS", "all_formulas", "find_formula"]

# Module of this room -> the subject in the trade's words.
SUBJECTS: Mapping[str, str] = {
    "heat": "Heat into water: boosters, pipes, water itself",
    "tanks": "Tanks: heating up, losses, overflow, racks",
    "steam_gas": "Steam and gas as sources of heat",
    "flow": "Jets, regulators, filling, hammer",
    "pumps": "Pumps: pressure, speed, power, suction",
    "electric": "Electric heaters: power, currents, ohms",
    "motors": "Motors: volts, currents, unbalance",
    "protection": "Overloads, protectors, insulation, starts",
    "air": "Exhaust, moist air, curtains",
    "conveyor": "Conveyor: speed, dwell, timers, force",
    "sanitising": "Sanitising: heat units, chlorine, contact time",
    "sensors": "Sensors and gauges",
    "water": "Hardness, scale, rinse aid",
    "setting": "Setting: which way and how far",
}


@cache
def all_formulas() -> Mapping[str, Formula]:
    """Every formula by its id, subject by subject."""
    found: dict[str, Formula] = {}
    for subject in SUBJECTS:
        for formula in import_module(f"diagnose.formulas.{subject}").FORMULAS:
            if formula.id in found:
                raise ValueError(f"two formulas are called {formula.id}")
            found[formula.id] = formula
    return found


def find_formula(name: str) -> Formula:
    """The formula of that id. Raises KeyError."""
    return all_formulas()[name]
