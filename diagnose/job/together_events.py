"""What can happen in a job that several people work on: who is where, calls, hints, and who goes on with it."""

from __future__ import annotations

from typing import Literal

import msgspec

from diagnose.job.event_kind import Kind

__all__ = ["CallBegun", "CallEnded", "HandedOn", "HintAnswered", "Hinted", "Present", "TypeTold", "Unknown"]


class Present(Kind, frozen=True):
    """Who writes from now on, and where they are. At the machine: who works there, what must not be opened."""

    name: str = ""
    place: Literal["machine", "desk"] = "machine"
    allowed: tuple[str, ...] = ()  # empty: as it was
    keep_closed: tuple[str, ...] = ()


class CallBegun(Kind, frozen=True):
    """The desk has somebody on the telephone and writes down what is said; `language` is the caller's."""

    caller: Literal["kitchen", "technician"]
    name: str = ""
    language: str = ""


class TypeTold(Kind, frozen=True):
    """What the caller answered to a question that tells types of machine apart; word for word, or not known."""

    question: str
    answer: str = ""


class CallEnded(Kind, frozen=True):
    """The call is over: solved, the machine must not be used, somebody must come, or the technician goes on alone."""

    how: Literal["solved", "stop", "visit", "goes on"]
    text: str = ""


class Hinted(Kind, frozen=True):
    """Who follows suggests a check, or says something, or both. It answers no question and changes no answer."""

    check: str = ""
    text: str = ""


class HintAnswered(Kind, frozen=True):
    """Who works at the machine takes the hint (`number`-th event of the writer `of`), or leaves it."""

    number: int
    of: str
    taken: bool


class HandedOn(Kind, frozen=True):
    """Somebody else goes on with the job: whom or what it waits for now, in words."""

    to: Literal["technician", "desk", "parts", "another trade", "kitchen"]
    text: str = ""


class Unknown(msgspec.Struct, frozen=True):
    """An event of a kind, or with fields, that this program does not know: kept and passed on as it is."""

    name: str
