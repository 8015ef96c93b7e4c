"""What a call may want next, beside the questions of any job."""

from __future__ import annotations

from dataclasses import dataclass

from diagnose.dialogue.requests import Numbered

__all__ = ["AskCallEnd", "AskCaller", "AskSaved", "AskSolved", "AskType", "AskWhere", "CallOver", "LetMend"]


@dataclass(frozen=True)
class AskCaller(Numbered):
    """Who is on the telephone."""


@dataclass(frozen=True)
class AskSaved(Numbered):
    """Whether it is a machine saved under a name."""


@dataclass(frozen=True)
class AskType(Numbered):
    """A question that tells types of machine apart."""

    question: str
    left: int


@dataclass(frozen=True)
class AskWhere(Numbered):
    """A stop condition holds: what to do is said; then who it is, and where."""

    stop: str


@dataclass(frozen=True)
class LetMend(Numbered):
    """The kitchen puts a cause right alone."""

    cause: str
    why: str = ""


@dataclass(frozen=True)
class AskSolved(Numbered):
    """Nothing is complained of any more."""


@dataclass(frozen=True)
class AskCallEnd(Numbered):
    """How the call ends; `asked_for`: the desk wants it, though there is more to ask."""

    asked_for: bool


@dataclass(frozen=True)
class CallOver(Numbered):
    """The call is over."""
