"""What somebody else wrote, made fit for every screen and page, once and for all where it is read."""

from __future__ import annotations

import msgspec

from diagnose.job.events import AnyEvent, Event, Unknown
from diagnose.language.signs import clean

__all__ = ["LONGEST", "harmless"]

LONGEST = 2000  # signs of one text; nobody reads more of it beside a machine
_CUT = " [...]"


def harmless(event: AnyEvent) -> AnyEvent:
    """The event with every text short enough to show and without signs that move a cursor or turn text round.

    In the journal it stays as it was sent.
    """
    if isinstance(event, Unknown):
        return Unknown(_text(event.name))
    told = msgspec.to_builtins(event)
    tame = _tame(told)
    return event if tame == told else msgspec.convert(tame, type=Event)


def _tame(value: object) -> object:
    if isinstance(value, str):
        return _text(value)
    if isinstance(value, dict):
        return {_text(str(key)): _tame(each) for key, each in value.items()}
    if isinstance(value, list | tuple):
        return [_tame(each) for each in value]
    return value


def _text(text: str) -> str:
    return clean(text if len(text) <= LONGEST else text[:LONGEST] + _CUT)
