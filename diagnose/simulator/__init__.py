"""Floor 2: a physical machine with faults and instruments. It knows units and physics, and never sees a likelihood."""

from diagnose.simulator import complaints, faults, looks
from diagnose.simulator.plate import Plate
from diagnose.simulator.registry import COMPLAINTS, FAULTS, LOOKS, Fault
from diagnose.simulator.senses import ACCURACY, Answer, CannotReadError
from diagnose.simulator.simulated import Simulated

__all__ = [
    "ACCURACY",
    "COMPLAINTS",
    "FAULTS",
    "LOOKS",
    "READABLE",
    "Answer",
    "CannotReadError",
    "Fault",
    "Plate",
    "Simulated",
    "complaints",
    "faults",
    "looks",
]

READABLE = frozenset(LOOKS)
