"""What the conversation may want next: one small record per kind of question."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from diagnose.job.state import Hint
from diagnose.model import Book
from diagnose.view import words

__all__ = [
    "AskCaution",
    "AskCheck",
    "AskClose",
    "AskComplaint",
    "AskContext",
    "AskEnd",
    "AskFailed",
    "AskFigure",
    "AskFound",
    "AskGone",
    "AskHandover",
    "AskHint",
    "AskLeave",
    "AskMachine",
    "AskOn",
    "AskRepair",
    "AskSafety",
    "AskSet",
    "AskWho",
    "Decide",
    "Describe",
    "Ended",
    "Numbered",
    "OfferPlate",
    "Option",
    "Request",
    "Stopped",
    "Waiting",
    "Wanted",
]


@dataclass(frozen=True)
class Option:
    """One thing the advice would do next, and why in a sentence."""

    what: Literal["check", "repair", "help"]
    id: str = ""
    why: str = ""
    likely: float = 0.0  # of a repair: how probable its cause is

    def title(self, book: Book) -> str:
        """What it is, in words."""
        if self.what == "help":
            return words.CALL_HELP
        return book.title(self.id) if self.what == "check" else f"go to the repair: {book.title(self.id)}"


@dataclass(frozen=True)
class Numbered:
    """A question, by its number."""

    number: int


@dataclass(frozen=True)
class AskMachine(Numbered):
    """Which machine: a saved one or a type."""


@dataclass(frozen=True)
class OfferPlate(Numbered):
    """Whether to read the plate, or to go on with the type's figures."""


@dataclass(frozen=True)
class Describe(Numbered):
    """Name, serial number or site, in free text."""

    what: Literal["name", "serial", "site"]


@dataclass(frozen=True)
class AskFigure(Numbered):
    """One plate figure."""

    figure: str
    left: int


@dataclass(frozen=True)
class AskSafety(Numbered):
    """The stop conditions."""


@dataclass(frozen=True)
class Stopped:
    """A stop condition holds: its instruction, and the end of the job."""

    stop: str


@dataclass(frozen=True)
class AskComplaint(Numbered):
    """What the kitchen complains of; `said` already."""

    said: tuple[str, ...] = ()


@dataclass(frozen=True)
class AskContext(Numbered):
    """One question about the job as a whole."""

    question: str


@dataclass(frozen=True)
class AskCaution(Numbered):
    """Cautions to be read, and words to be typed, before a check or repair is shown."""

    before: str
    cautions: tuple[str, ...]
    words: tuple[str, ...]
    licence: str = ""  # who alone may do it, when that is nobody who works here
    options: tuple[Option, ...] = ()  # the advice it was taken from, itself first


@dataclass(frozen=True)
class AskCheck(Numbered):
    """One check to be answered."""

    check: str
    by: Literal["advice", "choice", "proof", "sheet"]
    options: tuple[Option, ...] = ()  # the advice it was taken from, itself first


@dataclass(frozen=True)
class Decide(Numbered):
    """What to do next, where the advice is no check."""

    options: tuple[Option, ...]


@dataclass(frozen=True)
class AskRepair(Numbered):
    """A repair to be made, and what was found."""

    cause: str


@dataclass(frozen=True)
class AskGone(Numbered):
    """Whether a complaint is gone after a repair."""

    complaint: str


@dataclass(frozen=True)
class AskClose(Numbered):
    """Nothing is complained of any more."""

    how: Literal["repaired", "no fault"]


@dataclass(frozen=True)
class AskEnd(Numbered):
    """How the job ends without a proven repair."""


@dataclass(frozen=True)
class AskFailed(Numbered):
    """A line of the sheet is not as wanted, or can't be told: what now?"""

    line: str


@dataclass(frozen=True)
class AskFound(Numbered):
    """How what is to be set stands now, before it is touched."""

    line: str
    adjustment: str


@dataclass(frozen=True)
class AskSet(Numbered):
    """Something to be set, which way and how far."""

    line: str
    adjustment: str


@dataclass(frozen=True)
class AskLeave(Numbered):
    """Why a line is left as it is."""

    line: str


@dataclass(frozen=True)
class AskWho(Numbered):
    """Who was shown what a line tells."""

    line: str


@dataclass(frozen=True)
class AskHandover(Numbered):
    """The sheet is through: hand the machine over, or what else?"""


@dataclass(frozen=True)
class AskHint(Numbered):
    """What somebody who follows suggests: taken, or left."""

    hint: Hint


@dataclass(frozen=True)
class AskOn(Numbered):
    """Who goes on with the job."""


@dataclass(frozen=True)
class Waiting:
    """Somebody else goes on with the job; here it is over for now."""


@dataclass(frozen=True)
class Ended:
    """The job is closed."""


Request = (
    AskMachine
    | OfferPlate
    | Describe
    | AskFigure
    | AskSafety
    | Stopped
    | AskComplaint
    | AskContext
    | AskCaution
    | AskCheck
    | Decide
    | AskRepair
    | AskGone
    | AskClose
    | AskEnd
    | AskFailed
    | AskFound
    | AskSet
    | AskLeave
    | AskWho
    | AskHandover
    | AskHint
    | AskOn
    | Waiting
    | Ended
)
Wanted = Request | Numbered  # of any kind of conversation
