"""The first questions: which machine, its plate, where it stands, and whether there is danger."""

from __future__ import annotations

from collections.abc import Sequence

from diagnose.dialogue import requests as rq
from diagnose.dialogue.scene import Scene
from diagnose.job import events as ev
from diagnose.job.machines import MachineError, SavedMachine, check_plate, list_machines, save_machine
from diagnose.model import PLATE_FIGURES
from diagnose.terminal.choosing import number_from, refuse_empty, short
from diagnose.terminal.grouped import Group, listed, tell_range
from diagnose.terminal.matcher import clear_winner, find
from diagnose.terminal.refusals import Refused
from diagnose.view import words
from diagnose.view.layout import Line, flow, wrap
from diagnose.view.question import choices, heading, paragraphs

__all__ = [
    "answer",
    "keep_machine",
    "machine_groups",
    "machine_options",
    "plate_question",
    "safety_lines",
    "show",
    "stop_lines",
]

Begin = rq.AskMachine | rq.OfferPlate | rq.Describe | rq.AskFigure | rq.AskSafety


def machine_options(scene: Scene) -> list[SavedMachine]:
    """Saved machines of types known here by name, then the types themselves."""
    return [each for _, group in _options(scene) for each in group]


def _options(scene: Scene) -> list[tuple[str, list[SavedMachine]]]:
    kinds: dict[str, list[SavedMachine]] = {words.SAVED: [], **{title: [] for title in words.MACHINE_GROUPS.values()}}
    kinds[words.SAVED] = [m for m in list_machines(scene.machines) if _usable(m, scene)]
    for name, kind in scene.book.machines.items():
        flight = kind.traits["conveyor"] == "flight"
        title = words.MACHINE_GROUPS["flight" if flight else str(kind.traits["tanks"])]
        kinds[title].append(SavedMachine(name=name, type=name))
    return [(title, group) for title, group in kinds.items() if group]


def _usable(saved: SavedMachine, scene: Scene) -> bool:
    try:
        saved.machine(scene.book)
    except MachineError:
        return False
    return saved.name != saved.type


def show(request: Begin, scene: Scene, width: int) -> list[Line]:
    """The question as printed."""
    lines = heading(request.number, width)
    match request:
        case rq.AskMachine():
            return [*lines, *_machines(scene, width)]
        case rq.OfferPlate():
            lines += wrap(words.PLATE_OFFER, width)
            return lines + choices([words.PLATE_USUAL, words.PLATE_READ], width)
        case rq.Describe(_, what):
            lines += wrap(words.DESCRIBE[what], width)
            return lines + wrap(words.DESCRIBE_HINT[what], width, "  ", role="dim")
        case rq.AskFigure():
            return lines + _figure(request, scene, width)
        case rq.AskSafety():
            return lines + safety_lines(scene, width)


def machine_groups(scene: Scene) -> list[Group]:
    """The machines to choose from, in words and by kind."""
    return [Group(title, [_title(each, scene) for each in group]) for title, group in _options(scene)]


def _title(each: SavedMachine, scene: Scene) -> str:
    title = scene.book.machines[each.type].title
    where = f", {each.site}" if each.site else ""
    return title if each.name == each.type else f"{each.name} ({words.SAVED_NOTE}{where}): {title}"


def _machines(scene: Scene, width: int) -> list[Line]:
    lines = wrap(words.WHICH_MACHINE, width) + listed(machine_groups(scene), width)
    return lines + wrap(words.MACHINE_HINT, width, "  ", role="dim")


def _figure(request: rq.AskFigure, scene: Scene, width: int) -> list[Line]:
    machine = scene.state.machine
    assert machine is not None
    figure = PLATE_FIGURES[request.figure]
    lines = wrap(plate_question(request.figure), width)
    usual = machine.type.plate[request.figure]
    lines += wrap(f"Answer in {figure.unit}. Usual for the type: {usual}. {request.left} to ask.", width, "  ")
    return lines + flow(words.PLATE_NOT_THERE, width, role="dim")


def plate_question(figure: str) -> str:
    """What is to be read from the plate."""
    return f"Plate: {PLATE_FIGURES[figure].ask}?"


def safety_lines(scene: Scene, width: int) -> list[Line]:
    """The stop conditions, numbered, and none of them as 0."""
    lines = wrap(words.SAFETY, width, role="caution")
    lines += choices([words.SAFETY_NONE], width, 0)
    return lines + choices([stop.ask for stop in scene.book.stops.values()], width)


def stop_lines(stop: str, scene: Scene, width: int) -> list[Line]:
    """The instruction of a stop condition that holds."""
    known = scene.book.stops.get(stop)
    if known is None:
        return wrap(words.STOP_UNKNOWN, width, role="caution")
    return [*wrap(known.ask, width, role="caution"), *paragraphs(known.instruction, width, role="caution")]


def answer(request: Begin, text: str, scene: Scene, width: int) -> Sequence[ev.Event]:
    """What the answer means. Raises Refused, or Told where more of the list was asked for."""
    match request:
        case rq.AskMachine():
            tell_range(text, machine_groups(scene), width)
            return [_opened(text, scene)]
        case rq.OfferPlate():
            return [ev.PlateWanted(number_from(text, 2) == 2)]
        case rq.Describe(_, what):
            return [_described(what, text)]
        case rq.AskFigure(_, figure, _):
            return [_plate(figure, text)]
        case rq.AskSafety():
            chosen = number_from(text, len(scene.book.stops), least=0)
            return [ev.SafetyAnswered(list(scene.book.stops)[chosen - 1] if chosen else None)]


def _opened(text: str, scene: Scene) -> ev.Event:
    options = machine_options(scene)
    by_name = [m for m in options if text.casefold() in (m.name.casefold(), m.name.casefold().replace("_", " "))]
    chosen = by_name[0] if by_name else options[_machine_number(text, scene) - 1]
    return ev.Opened(
        machine=chosen.name,
        type=chosen.type,
        own=chosen.own,
        serial=chosen.serial,
        site=chosen.site,
        allowed=scene.crew.who,
        keep_closed=scene.crew.keep_closed,
        knowledge=scene.book.fingerprint,
        purpose=scene.purpose,
    )


def _machine_number(text: str, scene: Scene) -> int:
    titles = [title for group in machine_groups(scene) for title in group.options]
    if text and not text.rstrip(".)").isdigit():
        matches = find(text, {str(n): [title] for n, title in enumerate(titles, 1)})
        winner = clear_winner(matches)
        if winner is not None:
            return int(winner)
        if matches:
            raise Refused(f"{short(text)} may be: {'; '.join(_numbered(titles, m.id) for m in matches[:4])}.", text)
    return number_from(text, len(titles), words.MACHINE_HINT)


def _numbered(titles: Sequence[str], number: str) -> str:
    return f"{number} {titles[int(number) - 1]}"


def _described(what: str, text: str) -> ev.Event:
    if what == "name":
        refuse_empty(text, words.DESCRIBE_HINT["name"])
        if not text[0].isalnum() or len(text) > 40 or not all(c.isalnum() or c in "_ .-" for c in text):
            raise Refused(f"{words.NOT_TAKEN}{text}. {words.DESCRIBE_HINT['name']}", text)
        return ev.MachineDescribed("name", text)
    return ev.MachineDescribed("serial" if what == "serial" else "site", text)


def _plate(figure: str, text: str) -> ev.Event:
    if text.casefold() == "rest":
        return ev.StepDone("plate")
    if text in ("", "?", "-"):
        return ev.PlateRead(figure)
    try:
        return ev.PlateRead(figure, check_plate(figure, text))
    except MachineError as error:
        raise Refused(f"{words.NOT_TAKEN}{error}.", text) from None


def keep_machine(scene: Scene) -> str | None:
    """Save a machine whose plate is being read; returns why not, in words, or None."""
    state, machine = scene.state, scene.state.machine
    named = "name" in state.described and (state.plate_wanted or state.purpose == "handover")
    if machine is None or not named:
        return None
    saved = SavedMachine(
        name=machine.name, type=machine.type.id, own=dict(machine.own), serial=machine.serial, site=machine.site
    )
    try:
        save_machine(scene.machines, saved)
    except (MachineError, OSError) as error:
        return str(error)
    return None
