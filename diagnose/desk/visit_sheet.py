"""The sheet for whoever comes: what the call told, what to carry, what to bring, who must come and for how long."""

from __future__ import annotations

from collections.abc import Sequence

import msgspec

from diagnose.dialogue.scene import Scene
from diagnose.job.onsite import Visit, visit
from diagnose.job.van import PartNeeded
from diagnose.view import call_words, words
from diagnose.view.layout import Line, wrap
from diagnose.view.summary import summary_block
from diagnose.view.together_words import CALL_ENDED

__all__ = ["SCHEMA", "visit_json", "visit_lines"]

SCHEMA = 1  # raised when a key changes its meaning or goes


def visit_lines(scene: Scene, width: int) -> list[Line]:
    """The job as it stands; and where somebody must come, all that they must know before they leave."""
    state, job = scene.state, scene.session.job
    lines = [] if state.machine is None else summary_block(state, scene.book, job, scene.rows, width)
    if state.call_ended is not None:
        told = f"{CALL_ENDED[state.call_ended.how]} {state.call_ended.text}".strip()
        lines += wrap(told, width, "", "  ", "heading")
    ended = state.call_ended.how if state.call_ended is not None else "visit"
    if state.closed is None and ended in ("visit", "stop"):
        lines += _prepared(visit(scene.assessment), scene, width) if scene.ranked else []
        lines += wrap(call_words.RESUME + job, width, role="good")
        lines += wrap(call_words.AGAIN + job, width, role="dim") if scene.ranked else []
    return lines


def _prepared(found: Visit, scene: Scene, width: int) -> list[Line]:
    lines = [Line(), *wrap(call_words.VISIT, width, role="heading")]
    lines += _parts(found, scene, width)
    if found.instruments:
        lines += wrap(f"{call_words.BRING}: {'; '.join(each.instrument for each in found.instruments)}.", width)
    lines += _who(found, width)
    return lines + wrap(call_words.MINUTES_THERE.format(minutes=words.minutes(round(found.minutes))), width)


def _parts(found: Visit, scene: Scene, width: int) -> list[Line]:
    van = found.van
    chance = round(100 * van.chance)
    if not van.carried:
        told = call_words.CHANCE_NONE.format(chance=chance)
        return wrap(f"{call_words.NO_PARTS} {told}", width)
    lines = wrap(f"{call_words.PARTS}:", width)
    for part in van.carried:
        lines += wrap(_part(part, scene), width, f"  {round(100 * part.probability):>3} %  ", "         ")
    lines += wrap(call_words.CHANCE.format(chance=chance), width)
    if van.left:
        named = "; ".join(f"{part.name} {round(100 * part.probability)} %" for part in van.left[:4])
        lines += wrap(f"{call_words.LEFT_OUT}: {named}.", width, "  ", role="dim")
    return lines


def _part(part: PartNeeded, scene: Scene) -> str:
    match = f" ({'; '.join(part.match)})" if part.match else ""
    causes = "; ".join(scene.book.title(cause) for cause, _ in part.causes[:2])
    return f"{part.name}{match}" + (f"; {call_words.FOR_CAUSES.format(causes=causes)}" if causes else "")


def _who(found: Visit, width: int) -> list[Line]:
    licences = [call_words.WITH_LICENCE.format(who=who, chance=round(100 * p)) for who, p in found.licences]
    return wrap(f"{call_words.WHO_COMES}: {'; '.join([call_words.ANY_TECHNICIAN, *licences])}.", width)


def visit_json(scene: Scene) -> str:
    """The same for other programs. The job must have a machine and a complaint."""
    found, state = visit(scene.assessment), scene.state
    told: dict[str, object] = {
        "schema": SCHEMA,
        "job": scene.session.job,
        "site": state.machine.site if state.machine else "",
        "ended": state.call_ended.how if state.call_ended else None,
        "ranking": [{"id": r.id, "title": r.title, "probability": round(r.probability, 6)} for r in scene.rows],
        "carried": _parts_out(found.van.carried),
        "left": _parts_out(found.van.left),
        "chance": round(found.van.chance, 6),
        "instruments": [each.instrument for each in found.instruments],
        "licences": {who: round(p, 6) for who, p in found.licences},
        "minutes": round(found.minutes, 1),
    }
    return msgspec.json.format(msgspec.json.encode(told), indent=2).decode()


def _parts_out(parts: Sequence[PartNeeded]) -> list[dict[str, object]]:
    return [
        {
            "part": p.name,
            "match": list(p.match),
            "probability": round(p.probability, 6),
            "for": [c for c, _ in p.causes],
        }
        for p in parts
    ]
