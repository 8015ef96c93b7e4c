"""What the telephone needs of the knowledge: which type of machine it may be, and what the kitchen does meanwhile."""

from __future__ import annotations

from collections.abc import Iterable, Mapping

from diagnose.model.book import Book
from diagnose.model.entities import Complaint, Meanwhile
from diagnose.model.machine import Machine, fits
from diagnose.model.supporting import MachineType, TellApart, TypeAnswer

__all__ = ["asked_aloud", "meanwhile", "next_question", "types_left"]


def meanwhile(complaint: Complaint, machine: Machine) -> Meanwhile | None:
    """What the kitchen is told to do until this machine is right; None where the knowledge says nothing."""
    return next((each for each in complaint.until if fits(machine, each.fits)), None)


def asked_aloud(book: Book, machine: Machine, complaints: Iterable[str]) -> frozenset[str]:
    """The checks a kitchen with this machine may be asked by telephone while these complaints are there.

    Where a complaint names the only ones (the machine stays off), no other is asked, whatever else is complained of.
    """
    told = [meanwhile(book.complaints[name], machine) for name in complaints]
    found = {name for name, check in book.checks.items() if check.aloud and fits(machine, check.fits)}
    for each in told:
        if each is not None and each.ask_only:
            found &= set(each.ask_only)
    return frozenset(found)


def types_left(book: Book, given: Mapping[str, str]) -> tuple[MachineType, ...]:
    """The types of machine that the answers so far (question -> answer, word for word) leave.

    An answer that no question offers ("don't know") tells nothing. Where no type agrees with all answers, those remain
    that fewest answers speak against: something was misheard, and the call goes on.
    """
    told = [answer for question, text in given.items() if (answer := _answer(book, question, text)) is not None]
    against = {name: sum(not _agrees(kind, answer) for answer in told) for name, kind in book.machines.items()}
    least = min(against.values(), default=0)
    return tuple(kind for name, kind in book.machines.items() if against[name] == least)


def next_question(book: Book, given: Mapping[str, str]) -> TellApart | None:
    """The first question not asked yet whose answers part the types that are left; None where none does."""
    left = types_left(book, given)
    open_ones = (each for name, each in book.tell_apart.items() if name not in given)
    return next((each for each in open_ones if _parts(each.answers, left)), None)


def _answer(book: Book, question: str, text: str) -> TypeAnswer | None:
    asked = book.tell_apart.get(question)
    return next((each for each in asked.answers if each.answer == text), None) if asked is not None else None


def _agrees(kind: MachineType, answer: TypeAnswer) -> bool:
    return fits(Machine("", kind), answer.fits) and all(
        kind.plate.get(figure) in values for figure, values in answer.plate.items()
    )


def _parts(answers: Iterable[TypeAnswer], kinds: Iterable[MachineType]) -> bool:
    """Whether some answer leaves some of the types, but not all."""
    told = [[_agrees(kind, answer) for kind in kinds] for answer in answers]
    return any(any(each) and not all(each) for each in told)
