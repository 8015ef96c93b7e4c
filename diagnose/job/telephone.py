"""The telephone: what to ask the kitchen next, what to let it put right, and how the call ends.

Everything here is worked out from an assessment; nothing is asked, said or stored. A call with the kitchen goes on as
long as a question is expected to spare more minutes of what follows than it takes (`inference/calls.py`); a technician
who calls is at the machine, and what the advice puts first comes next.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Literal

from diagnose.inference import Prediction, Question, advise_call
from diagnose.job.assess import Assessment
from diagnose.job.circumstances import circumstances
from diagnose.job.state import JobState
from diagnose.job.van import MOST_PARTS
from diagnose.model import Book
from diagnose.model.telephone import meanwhile

Use = Literal["as usual", "with care", "stop"]

__all__ = ["MOST_QUESTIONS", "Ending", "Step", "asked_so_far", "ending", "last_ending", "next_step"]

MOST_QUESTIONS = 12  # a kitchen has its own work to do; judgement
# What is believed so far is put right before anything else is asked: asking it costs patience as well. Judgement.
AS_GOOD_AS_KNOWN = 0.8
_WEIGHTY = 0.02  # of belief: what moves less is not told
_REASONS = 3
_FEW = 6  # questions foretold exactly
_LATE, _LATE_FEW = 6, 2  # after so many findings so few: each may then need a second of its own
_TOO_LATE = 9  # and after so many several: the last questions are chosen by the rough reckoning
_USES: tuple[Use, ...] = ("as usual", "with care", "stop")  # the gravest last


@dataclass(frozen=True)
class Step:
    """What comes next in a call: a check to ask, a cause to let the kitchen put right, or the end.

    `why` are sentences; `minutes` those of the step, `spares` what it is expected to spare of what follows.
    """

    what: Literal["ask", "mend", "end"]
    id: str = ""
    why: tuple[str, ...] = ()
    minutes: float = 0.0
    spares: float = 0.0
    asked: tuple[Question, ...] = field(default=(), repr=False)  # the questions that were weighed, the best first


@dataclass(frozen=True)
class Ending:
    """How a call ends, as it stands: solved (by which causes put right), stop using the machine, or a visit.

    With "stop" nobody touches the machine until somebody was there; `condition` is the stop condition, or the complaint
    with which it stays off. `use` says how far the kitchen goes on using it until a visit.
    """

    how: Literal["solved", "stop", "visit"]
    causes: tuple[str, ...] = ()
    condition: str = ""
    use: Use = "as usual"
    why: tuple[str, ...] = ()


def ending(book: Book, state: JobState) -> Ending | None:
    """The end that is there already, whatever could still be asked: a danger, or nothing complained of any more."""
    if state.stop is not None:
        said = book.stops[state.stop].ask if state.stop in book.stops else state.stop
        return Ending("stop", condition=state.stop, use="stop", why=(f"Danger: {said}",))
    if state.complaints and not state.present:
        mended = tuple(repair.cause for repair in state.repairs if repair.found != "sound")
        done = [f"Put right by the kitchen: {book.title(cause)}" for cause in mended if cause in book.causes]
        return Ending("solved", mended, why=(*done, "Nothing is complained of any more."))
    return None


def last_ending(seen: Assessment, why: tuple[str, ...] = ()) -> Ending:
    """The end of a call in which nothing more is asked: a visit, and the machine is used until then or not."""
    there = ending(seen.book, seen.state)
    if there is not None:
        return there
    until = {name: meanwhile(seen.book.complaints[name], seen.machine) for name in seen.state.present}
    for name, each in until.items():
        if each is not None and each.ask_only:
            return Ending("stop", (), name, "stop", (f"The machine stays off: {seen.book.title(name)}", *why))
    uses = [_USES.index(each.use) for each in until.values() if each is not None]
    use = _USES[max(uses, default=0)]
    return Ending("visit", use=use, why=why)


def asked_so_far(state: JobState, book: Book) -> int:
    """Questions fit for the telephone that were answered, or could not be."""
    names = [*(r.check for r in state.readings), *state.skipped]
    return sum(name in book.checks and bool(book.checks[name].aloud) for name in names)


def next_step(seen: Assessment, asked: int | None = None, most: int = MOST_PARTS) -> Step:
    """What comes next in this call. `asked`: questions asked in it so far; all by telephone where it is not said."""
    if ending(seen.book, seen.state) is not None:
        return Step("end", why=("There is nothing left to ask for.",))
    if seen.state.call is not None and seen.state.call.caller == "technician":
        return _as_advised(seen)
    return _with_kitchen(seen, asked_so_far(seen.state, seen.book) if asked is None else asked, most)


def _as_advised(seen: Assessment) -> Step:
    """A technician at the machine does what the advice says."""
    best = seen.options[0]
    what: Literal["ask", "mend", "end"] = {"check": "ask", "repair": "mend"}.get(best.what, "end")  # type: ignore[assignment]
    if what == "end":
        return Step("end", why=("What can be done there takes longer than calling somebody in.",))
    return Step(what, best.id, (_told(best.title, best.minutes),), best.option.minutes, max(best.saves, 0.0))


def _told(title: str, minutes: float) -> str:
    return f"{title}: expected {minutes:.0f} minutes from now to a verified repair"


def _with_kitchen(seen: Assessment, asked: int, most: int) -> Step:
    # What was done by telephone may have been done wrongly: once more, where it is still seen, and no third time.
    tried = Counter(repair.cause for repair in seen.state.repairs for _ in range(1 + (repair.found == "sound")))
    done = {cause for cause, times in tried.items() if times > 1}
    beyond = circumstances(seen.book, seen.state).unavailable | done
    tree, situation, solution = seen.tree, seen.situation, seen.solution
    # All of them roughly, and then the few that promise most as they are: somebody waits for the next question.
    rough = advise_call(seen.book, tree, situation, solution, seen.promising, beyond, most)
    known = len(seen.situation.findings)
    near = [question.check for question in rough.questions[: _FEW if known < _LATE else _LATE_FEW]]
    few = seen.foretold(near) if known < _TOO_LATE else {name: seen.promising[name] for name in near}
    advice = advise_call(seen.book, tree, situation, solution, few, beyond, most)
    best = advice.questions[0] if advice.questions else None
    worth = asked < MOST_QUESTIONS and best is not None and best.saves > 0.0
    if advice.mend is not None and (advice.share >= AS_GOOD_AS_KNOWN or not worth):
        why = f"{seen.book.title(advice.mend)} ({_percent(advice.share)}): the kitchen can put that right itself"
        return Step("mend", advice.mend, (why,), advice.minutes, asked=advice.questions)
    if worth and best is not None:
        return Step("ask", best.check, _why(seen, few[best.check]), best.minutes, best.spares, advice.questions)
    return Step("end", why=(_enough(asked, advice.questions),), minutes=advice.expected, asked=advice.questions)


def _enough(asked: int, questions: tuple[Question, ...]) -> str:
    if asked >= MOST_QUESTIONS:
        return f"{asked} questions were asked: that is as much as a kitchen has patience for."
    if not questions:
        return "There is nothing left that can be asked by telephone."
    return "No question left is worth the minutes it takes on the telephone."


def _why(seen: Assessment, prediction: Prediction) -> tuple[str, ...]:
    """For each answer the cause whose probability it moves most; of the answers those that tell most at a time."""
    found = []
    titles: Mapping[str, str] = {row.id: row.title for row in seen.rows}
    for outcome, after in prediction.posterior.items():
        moved = {cause: p - seen.solution.posterior[cause] for cause, p in after.items() if cause in titles}
        most = max(moved, key=lambda cause: abs(moved[cause]), default=None)
        if most is not None and abs(moved[most]) >= _WEIGHTY:
            goes = f"{titles[most]} {_percent(after[most] - moved[most])} to {_percent(after[most])}"
            said = f"{seen.book.checks[prediction.check].outcomes[outcome].title}: {goes}"
            found.append((prediction.outcomes[outcome] * abs(moved[most]), said))
    return tuple(said for _, said in sorted(found, reverse=True)[:_REASONS])


def _percent(share: float) -> str:
    return f"{100 * share:.0f} %"
