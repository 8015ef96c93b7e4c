"""A followed job as JSON, one object a line, for other programs."""

from __future__ import annotations

import time
from collections.abc import Callable, Iterator, Sequence

import msgspec

from diagnose.desk.now_asked import next_of
from diagnose.dialogue.requests import AskCaution, AskCheck
from diagnose.dialogue.scene import Scene
from diagnose.job import events as ev

__all__ = ["SCHEMA", "stream"]

SCHEMA = 1  # raised when a key changes its meaning or goes
_LOOK = 0.01  # seconds between two looks


def stream(scene: Scene, once: bool = False, wait: Callable[[float], None] = time.sleep) -> Iterator[str]:
    """Every event of the job as it comes, each followed by how things then stand; ends when the job is closed."""
    yield from _told(scene, scene.session.records)
    while not (once or scene.state.closed is not None):
        came = scene.session.refresh()
        if came:
            yield from _told(scene, came)
        else:
            wait(_LOOK)


def _told(scene: Scene, records: Sequence[ev.Record]) -> Iterator[str]:
    questions = {number: nth for nth, number in enumerate(scene.state.answers, 1)}
    for record in records:
        writer, seq = record.key
        presence = scene.state.presence(writer)
        yield _line(
            what="event",
            job=scene.session.job,
            number=record.number,
            question=questions.get(record.number),
            at=record.at,
            writer=writer,
            seq=seq,
            who=presence.name,
            place=presence.place,
            event=msgspec.to_builtins(record.event),
        )
    yield _line(what="standing", job=scene.session.job, **_standing(scene))


def _standing(scene: Scene) -> dict[str, object]:
    state = scene.state
    request = next_of(scene)
    check = request.check if isinstance(request, AskCheck) else ""
    check = request.before if isinstance(request, AskCaution) else check
    return {
        "closed": state.closed.how if state.closed else None,
        "waits_for": state.waits.to if state.waits else None,
        "ranking": [{"id": r.id, "title": r.title, "probability": round(r.probability, 6)} for r in scene.rows],
        "asked": {"kind": type(request).__name__, "question": getattr(request, "number", None), "id": check},
        "answered_twice": len(state.beside),
    }


def _line(**told: object) -> str:
    return msgspec.json.encode({"schema": SCHEMA, **told}).decode()
