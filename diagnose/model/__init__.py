"""Floor 2: what the knowledge, a machine and an observation are, and how they are read."""

from diagnose.model.book import Book, Place, Scale
from diagnose.model.entities import Cause, Check, Complaint, Event, Meanwhile, Outcome, ReadingSpec, Shift
from diagnose.model.instruments import Instrument
from diagnose.model.loader import load_book, shipped_knowledge
from diagnose.model.machine import PLATE_FIGURES, TRAITS, Machine, PlateFigure, fits
from diagnose.model.observed import Finding, Reading
from diagnose.model.parts import Part, part_of
from diagnose.model.problems import KnowledgeError, Problem
from diagnose.model.record import Basis
from diagnose.model.sheet import Adjustment, SheetLine
from diagnose.model.supporting import (
    Caution,
    ContextQuestion,
    Effort,
    InstrumentKind,
    Limit,
    MachineType,
    Source,
    Stock,
    StopCondition,
    TellApart,
    TypeAnswer,
)

__all__ = [
    "PLATE_FIGURES",
    "TRAITS",
    "Adjustment",
    "Basis",
    "Book",
    "Cause",
    "Caution",
    "Check",
    "Complaint",
    "ContextQuestion",
    "Effort",
    "Event",
    "Finding",
    "Instrument",
    "InstrumentKind",
    "KnowledgeError",
    "Limit",
    "Machine",
    "MachineType",
    "Meanwhile",
    "Outcome",
    "Part",
    "Place",
    "PlateFigure",
    "Problem",
    "Reading",
    "ReadingSpec",
    "Scale",
    "SheetLine",
    "Shift",
    "Source",
    "Stock",
    "StopCondition",
    "TellApart",
    "TypeAnswer",
    "fits",
    "load_book",
    "part_of",
    "shipped_knowledge",
]
