"""What is asked there now, for one who looks on: the question of the job, or of the call that is on."""

from __future__ import annotations

from diagnose.desk import call_requests as cr
from diagnose.desk.call_flow import wanted_in_call
from diagnose.dialogue import requests as rq
from diagnose.dialogue.flow import next_request
from diagnose.dialogue.reminder import asked
from diagnose.dialogue.scene import Scene
from diagnose.view import call_words as words

__all__ = ["asked_now", "next_of"]


def next_of(scene: Scene) -> rq.Wanted:
    """What is asked there now."""
    if scene.state.call is not None and scene.state.closed is None:
        return wanted_in_call(scene)
    return next_request(scene.book, scene.state, scene.options)


def asked_now(request: rq.Wanted, scene: Scene) -> str:
    """The same in a sentence."""
    match request:
        case cr.AskCaller():
            return words.WHO_CALLS
        case cr.AskSaved():
            return words.ALOUD["machine"]
        case cr.AskType(_, question, _):
            return scene.book.tell_apart[question].aloud
        case cr.AskWhere():
            return words.WHERE
        case cr.LetMend(_, cause, _):
            return words.MENDS.format(title=scene.book.causes[cause].title)
        case cr.AskSolved():
            return words.ALOUD["thanks"]
        case cr.AskCallEnd():
            return words.END
        case rq.AskCheck(_, check) if scene.state.by_kitchen:
            return scene.book.checks[check].aloud or scene.book.checks[check].ask
    return asked(request, scene)
