"""The letter that chooses an instrument: those of one's own that can take the reading, and the usual kind."""

from __future__ import annotations

from collections.abc import Callable, Sequence

from diagnose.dialogue import requests as rq
from diagnose.dialogue.scene import Scene
from diagnose.job import events as ev
from diagnose.model.instruments import kind_of
from diagnose.terminal.choosing import number_from
from diagnose.terminal.front import Front
from diagnose.terminal.refusals import Refused
from diagnose.view import words
from diagnose.view.question import choices

__all__ = ["choose_meter"]


def choose_meter(
    more: str, request: rq.Wanted, scene: Scene, front: Front, ask: Callable[[str, Front], str]
) -> Sequence[ev.Event]:
    """The event of a choice; none where everything stays. Raises Refused."""
    if not isinstance(request, rq.AskCheck):
        raise Refused(words.NO_LETTER_HERE)
    check = scene.book.checks[request.check]
    own = scene.fitting(check)
    if not own:
        raise Refused(words.NO_METER if check.reading else words.NO_MEASURE)
    if not more:
        usual = str(kind_of(scene.book.instruments.values(), check))
        front.say(choices([*map(str, own), words.USUAL_METER + usual], front.width))
        more = ask(words.WHICH_METER, front)
    if not more:
        return []
    chosen = number_from(more, len(own) + 1)
    return [ev.InstrumentChosen(check.id, own[chosen - 1].name if chosen <= len(own) else "")]
