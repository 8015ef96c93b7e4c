"""What comes next: a pure function of the state of the job, so that resume needs to remember nothing."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from typing import Literal

from diagnose.dialogue import requests as rq
from diagnose.dialogue.care import caution_before
from diagnose.dialogue.sheet_flow import next_on_sheet
from diagnose.handover.sheet import failing, sheet_of
from diagnose.job.state import JobState
from diagnose.model import Book, fits

__all__ = ["MOST_OPTIONS", "next_request", "plate_figures", "proofs", "proving"]

MOST_OPTIONS = 3
_TEMPTING = 0.3  # the probability from which a repair is named beside better checks
Advice = Callable[[], Sequence[rq.Option]]
# The figures the rules lean on most are asked first; the order of the plate follows.
_FIRST_FIGURES = ("volts", "booster_power", "booster_volts", "rinse_flow", "rinse_pressure", "rinse_temperature")


def next_request(book: Book, state: JobState, advice: Advice) -> rq.Request:
    """The next question of a job in this state. `advice` is called only when it decides."""
    if state.closed is not None:
        return rq.Ended()
    if state.waits is not None:
        return rq.Waiting()
    number = len(state.answers) + 1
    if state.turned.what == "hand on":
        return rq.AskOn(number)
    asked = _asked(book, state, number, advice)
    return rq.AskHint(number, state.open_hint) if state.open_hint and _between(asked, state) else asked


def _asked(book: Book, state: JobState, number: int, advice: Advice) -> rq.Request:
    """What the job itself wants next. Who comes to a job that was begun elsewhere looks for danger before all else."""
    if state.complaints and not state.safety_asked:
        return rq.AskSafety(number)
    if state.purpose == "handover":
        return _handover(book, state, number, advice)
    for found in (_machine(state, number), _story(book, state, number), _turned(book, state, number)):
        if found is not None:
            return found
    return _advised(book, state, number, _offered(advice()))


_STORY = (rq.AskMachine, rq.OfferPlate, rq.Describe, rq.AskFigure, rq.AskSafety, rq.AskComplaint, rq.AskContext)


def _between(asked: rq.Request, state: JobState) -> bool:
    """Whether a hint may come now: not before the dangers are asked, not between a caution and its work.

    A check that is suggested waits until the story is told: only then can it be gone to.
    """
    if not state.safety_asked or isinstance(asked, rq.Stopped):
        return False
    if state.open_hint and state.open_hint.given.check and isinstance(asked, _STORY):
        return False
    work = {rq.AskCheck: "check", rq.AskRepair: "cause", rq.AskSet: "adjustment", rq.AskFound: "adjustment"}
    name = getattr(asked, work.get(type(asked), ""), "")
    return name not in state.acknowledged


def _handover(book: Book, state: JobState, number: int, advice: Advice) -> rq.Request:
    """The machine and its dangers, then the sheet; while a failure is looked into, as on any job."""
    asked = _machine(state, number) or _dangers(state, number)
    if asked is not None:
        return asked
    sheet = sheet_of(book, state)
    if not failing(sheet):
        return next_on_sheet(sheet, number)
    return _turned(book, state, number) or _advised(book, state, number, _offered(advice()))


def _dangers(state: JobState, number: int) -> rq.Request | None:
    if not state.safety_asked:
        return rq.AskSafety(number)
    return rq.Stopped(state.stop) if state.stop is not None else None


def _offered(advice: Sequence[rq.Option]) -> tuple[rq.Option, ...]:
    """The best of the advice; a repair that is probable enough to be tempting is always among them."""
    best = list(advice[:MOST_OPTIONS])
    best += [o for o in advice[MOST_OPTIONS:] if o.what == "repair" and o.likely >= _TEMPTING][:1]
    return tuple(best)


def proving(book: Book, state: JobState) -> bool:
    """Whether a repair is being proved: what else could be wrong does not matter until that is over."""
    if not state.present:
        return True
    return state.turned.what == "prove" and _prove(book, state, 0) is not None


def plate_figures(state: JobState) -> tuple[str, ...]:
    """The figures this machine's plate is asked for, the most useful first."""
    assert state.machine is not None
    plate = state.machine.type.plate
    return (*(f for f in _FIRST_FIGURES if f in plate), *(f for f in plate if f not in _FIRST_FIGURES))


def _machine(state: JobState, number: int) -> rq.Request | None:
    if state.machine is None:
        return rq.AskMachine(number)
    if state.plate_wanted is None and not state.by_kitchen:
        return rq.OfferPlate(number)
    kept = state.plate_wanted or state.purpose == "handover"  # under a name, for what comes after
    wanted: tuple[Literal["name", "serial", "site"], ...] = ("name", "serial") if kept else ()
    for what in wanted:
        if what not in state.described:
            return rq.Describe(number, what)
    if "site" not in state.described:
        return rq.Describe(number, "site")
    if state.plate_wanted and "plate" not in state.steps:
        left = [figure for figure in plate_figures(state) if figure not in state.plate_asked]
        if left:
            return rq.AskFigure(number, left[0], len(left))
    return None


def _story(book: Book, state: JobState, number: int) -> rq.Request | None:
    dangers = _dangers(state, number)
    if dangers is not None:
        return dangers
    if "complaints" not in state.steps or not state.complaints:
        return rq.AskComplaint(number, state.present)
    for question in book.context:
        if question not in state.context_asked:
            return rq.AskContext(number, question)
    return None


def _turned(book: Book, state: JobState, number: int) -> rq.Request | None:
    target = state.turned.id
    if state.turned.what == "end":
        return rq.AskEnd(number)
    if state.turned.what == "complaint":
        return rq.AskComplaint(number, state.present)
    if state.turned.what == "check" and target in book.checks:
        return _check(book, state, number, target, "choice")
    if state.turned.what == "repair" and target in book.causes:
        return caution_before(book, state, number, target) or rq.AskRepair(number, target)
    if state.turned.what == "prove":
        asked = _prove(book, state, number)
        if asked is not None:
            return asked
    if not state.present:
        no_fault = all(r.cause in book.causes and book.causes[r.cause].no_fault for r in state.repairs)
        return rq.AskClose(number, "no fault" if no_fault and state.repairs else "repaired")
    return None


def _prove(book: Book, state: JobState, number: int) -> rq.Request | None:
    if state.repairs and state.repairs[-1].found == "sound":
        return None  # nothing was changed, so there is nothing to prove
    for check in proofs(book, state):
        if check not in state.readings_now() and check not in state.skipped:
            return _check(book, state, number, check, "proof")
    asked = {name for name, stage, _ in state.complaints if stage == state.stage}
    for complaint in state.present:
        if complaint not in asked:
            return rq.AskGone(number, complaint)
    return None


def proofs(book: Book, state: JobState) -> tuple[str, ...]:
    """The checks that prove the last repair: the cause's own, then those of what is complained of."""
    last = state.repairs[-1].cause if state.repairs else ""
    wanted = [*(book.causes[last].prove_by if last in book.causes else ())]
    said = dict.fromkeys(name for name, _, _ in state.complaints)
    wanted += [c for complaint in said if complaint in book.complaints for c in book.complaints[complaint].prove_by]
    return tuple(c for c in dict.fromkeys(wanted) if _can_be_asked(book, state, c))


def _can_be_asked(book: Book, state: JobState, check: str) -> bool:
    entry = book.checks.get(check)
    if entry is None or entry.computed or (state.by_kitchen and not entry.aloud):
        return False
    return state.machine is not None and fits(state.machine, entry.fits)


def _advised(book: Book, state: JobState, number: int, options: tuple[rq.Option, ...]) -> rq.Request:
    if options and options[0].what == "check":
        return _check(book, state, number, options[0].id, "advice", options)
    return rq.Decide(number, options)


def _check(
    book: Book,
    state: JobState,
    number: int,
    check: str,
    by: Literal["advice", "choice", "proof"],
    options: tuple[rq.Option, ...] = (),
) -> rq.Request:
    return caution_before(book, state, number, check, options) or rq.AskCheck(number, check, by, options)
