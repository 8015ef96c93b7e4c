"""An answer that was taken back, as it would be typed: offered as the default when its question comes again."""

from __future__ import annotations

from diagnose.dialogue import requests as rq
from diagnose.dialogue.begin import machine_options
from diagnose.dialogue.complain import offered
from diagnose.dialogue.scene import Scene
from diagnose.job import events as ev
from diagnose.job.folding import standing
from diagnose.model.answers import show_values
from diagnose.units import UnitError, parse_quantity

__all__ = ["old_answer"]


def old_answer(request: rq.Wanted, scene: Scene) -> str:
    """What was answered here last, if that was taken back; empty otherwise.

    The stop conditions are never answered by Enter alone.
    """
    if isinstance(request, rq.AskSafety):
        return ""
    stands = {r.number for r in standing(scene.session.records)}
    for record in reversed(scene.session.records):
        typed = _as_typed(request, record.event, scene)
        if typed is not None:
            return "" if record.number in stands else typed
    return ""


def _as_typed(request: rq.Wanted, event: ev.AnyEvent, scene: Scene) -> str | None:
    match request, event:
        case rq.AskMachine(), ev.Opened(machine=name):
            names = [m.name for m in machine_options(scene)]
            return str(names.index(name) + 1) if name in names else None
        case rq.OfferPlate(), ev.PlateWanted(wanted):
            return "2" if wanted else "1"
        case rq.Describe(_, what), ev.MachineDescribed(told, text) if what == told and text:
            return text
        case rq.AskFigure(_, figure, _), ev.PlateRead(read, text) if figure == read and text:
            return text
        case rq.AskComplaint(_, said), ev.ComplaintSaid(complaint, True, _) if complaint not in said:
            ids = [c.id for c in offered(scene)]
            return str(ids.index(complaint) + 1) if complaint in ids else None
        case rq.AskContext(_, question), ev.ContextGiven(name, text) if question == name and text:
            answers = scene.book.context[question].answers
            return str(answers.index(text) + 1) if text in answers else None
        case rq.AskCheck(_, check), ev.ReadingTaken(name) if check == name:
            return _reading(event, scene)
        case rq.AskGone(_, complaint), ev.ComplaintSaid(name, present, _) if complaint == name:
            return "2" if present else "1"
    return None


def _reading(event: ev.ReadingTaken, scene: Scene) -> str | None:
    check = scene.book.checks[event.check]
    if event.outcome is not None:
        ids = list(check.outcomes)
        return str(ids.index(event.outcome) + 1) if event.outcome in ids else None
    spec = check.reading
    if spec is None:
        return None
    try:
        return show_values({p: parse_quantity(t, spec.quantity, spec.unit) for p, t in event.values.items()})
    except UnitError:
        return None
