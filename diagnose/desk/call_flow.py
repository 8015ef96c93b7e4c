"""What a call wants next: a function of the state of the job, as `dialogue.flow` is one of any job.

Danger comes first, before anybody asks which machine it is. What a kitchen worker may not do is never asked for.
"""

from __future__ import annotations

from diagnose.desk import call_requests as cr
from diagnose.desk.call_show import saved
from diagnose.dialogue import requests as rq
from diagnose.dialogue.care import caution_before
from diagnose.dialogue.flow import next_request
from diagnose.dialogue.scene import Scene
from diagnose.job.telephone import Step, next_step
from diagnose.model.telephone import next_question, types_left

__all__ = ["wanted_in_call"]


def wanted_in_call(scene: Scene) -> rq.Wanted:
    """The next question of a call."""
    state, number = scene.state, len(scene.state.answers) + 1
    if state.call is None:
        return cr.AskCaller(number)
    if not state.safety_asked:
        return rq.AskSafety(number)
    if state.stop is not None:
        return cr.AskWhere(number, state.stop)
    if state.machine is None:
        return _which_machine(scene, number)
    asked = next_request(scene.book, state, lambda: _options(scene))
    return _by_kitchen(asked, scene, number) if state.by_kitchen else _by_technician(asked, number)


def _which_machine(scene: Scene, number: int) -> rq.Wanted:
    """A kitchen is asked what tells types apart, unless the machine is one saved under a name or nothing parts them."""
    told = scene.state.types_told
    if scene.state.by_kitchen and not told and saved(scene):
        return cr.AskSaved(number)
    question = next_question(scene.book, told)
    if not scene.state.by_kitchen or question is None:
        return rq.AskMachine(number)
    return cr.AskType(number, question.id, len(types_left(scene.book, told)))


def _options(scene: Scene) -> list[rq.Option]:
    """What the telephone would do next, as an option of any dialogue."""
    if not scene.state.by_kitchen:
        return list(scene.options())
    step: Step = next_step(scene.assessment)
    why = "; ".join(step.why)
    if step.what == "end":
        return [rq.Option("help", "", why)]
    return [rq.Option("check" if step.what == "ask" else "repair", step.id, why)]


def _by_technician(asked: rq.Request, number: int) -> rq.Wanted:
    """A technician at the machine does all that any job asks; only its end is that of a call."""
    return cr.AskCallEnd(number, True) if isinstance(asked, rq.AskEnd) else _closing(asked, number)


def _closing(asked: rq.Request, number: int) -> rq.Wanted:
    return cr.AskSolved(number) if isinstance(asked, rq.AskClose) else asked


def _by_kitchen(asked: rq.Request, scene: Scene, number: int) -> rq.Wanted:
    """The same question as a kitchen can be asked it."""
    book = scene.book
    match asked:
        case rq.AskCaution(_, before, options=options) if before in book.checks:
            return rq.AskCheck(number, before, "advice", options)
        case rq.AskRepair(_, cause):
            return cr.LetMend(number, cause)
        case rq.Decide(_, options) if options and options[0].what == "repair":
            care = caution_before(book, scene.state, number, options[0].id, options)
            return care or cr.LetMend(number, options[0].id, options[0].why)
        case rq.Decide():
            return cr.AskCallEnd(number, False)
        case rq.AskEnd():
            return cr.AskCallEnd(number, True)
    return _closing(asked, number)
