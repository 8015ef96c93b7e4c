"""What the letters show: reasons, ranking, tree, help, what is known. Nothing here changes the job."""

from __future__ import annotations

from diagnose.dialogue import requests as rq
from diagnose.dialogue.scene import Scene
from diagnose.model import Book, Check
from diagnose.model.shop import MARK
from diagnose.terminal.choosing import short
from diagnose.terminal.matcher import clear_winner, find
from diagnose.terminal.refusals import Refused
from diagnose.view import words
from diagnose.view.layout import Line, percent, wrap
from diagnose.view.past import history_block
from diagnose.view.question import paragraphs
from diagnose.view.ranking import ranking_block
from diagnose.view.reasons import why_block
from diagnose.view.summary import assumed_block, summary_block
from diagnose.view.together import beside_block
from diagnose.view.tree import branches, tree_block

__all__ = ["cause_meant", "help_lines", "info_lines", "ranking_lines", "tree_lines", "why_lines"]


def help_lines(book: Book, width: int) -> list[Line]:
    """All letters, how to answer, and what a shop's mark means where there is one."""
    lines: list[Line] = []
    for letter, _, meaning in words.LETTERS:
        lines += wrap(meaning, width, f"  {letter}  ")
    shops = dict.fromkeys(place.shop for place in book.places.values() if place.shop)
    own = [f"{MARK.strip()}: {words.SHOPS}{', '.join(shops)}."] if shops else []
    return lines + paragraphs([*words.HELP_MORE, *own], width)


def info_lines(scene: Scene, width: int) -> list[Line]:
    """The job as it stands."""
    lines = summary_block(scene.state, scene.book, scene.session.job, scene.rows, width)
    lines += assumed_block(scene.state, width)
    lines += beside_block(scene.state, scene.book, width)
    return lines + history_block(scene.past, scene.book, width)


def ranking_lines(scene: Scene, width: int, bars: bool) -> list[Line]:
    """Every row of the ranking."""
    if not scene.ranked:
        return wrap(words.NOT_YET, width)
    return ranking_block(scene.rows, width, None, bars)


def tree_lines(scene: Scene, more: str, width: int) -> list[Line]:
    """The tree; `all` or the number of a folded row opens it."""
    machine = scene.state.machine
    if machine is None or not scene.ranked:
        return wrap(words.NOT_YET, width)
    said = list(dict.fromkeys(c for c, _, _ in scene.state.complaints))
    probability = scene.assessment.solution.posterior
    rows = branches(scene.book, machine, said, probability)
    if more.isascii() and more.isdigit() and 1 <= int(more[:6]) <= len(rows):
        rows = branches(scene.book, machine, said, probability, {rows[int(more) - 1].node})
    elif more:
        rows = branches(scene.book, machine, said, probability, everything=True)
    return tree_block(rows, scene.book, width)


def why_lines(request: rq.Wanted, more: str, scene: Scene, width: int) -> list[Line]:
    """Why this question; or what speaks for and against one cause."""
    if more:
        return _why_cause(cause_meant(more, scene), scene, width)
    match request:
        case rq.AskCheck(_, name, by, options):
            return _why_check(scene.book.checks[name], by, options, scene, width)
        case rq.AskCaution(_, before, options=options):
            entry = scene.book.checks.get(before)
            return _why_check(entry, "choice", options, scene, width) if entry else _why_cause(before, scene, width)
        case rq.AskRepair(_, cause):
            return _why_cause(cause, scene, width)
        case rq.Decide():
            return _why_cause(scene.rows[0].id, scene, width) if scene.rows else wrap(words.NO_ADVICE, width)
    return wrap(words.WHY.get(type(request).__name__, words.WHY_PLAIN), width)


def _why_check(check: Check, by: str, options: tuple[rq.Option, ...], scene: Scene, width: int) -> list[Line]:
    lines = wrap(check.title, width, role="heading")
    if options and options[0].why:
        lines += wrap(options[0].why, width, "  ")
    elif by == "proof":
        lines += wrap(words.BY_PROOF, width, "  ")
    looked = [n for n in check.looks_at if _possible(n, scene)]
    if looked:
        lines += wrap(words.TELLS_APART, width, "  ")
        for node in looked:
            lines += wrap(f"{scene.book.title(node)}: {_mostly(check, node)}", width, "    - ", "      ")
    if check.mistakes:
        lines += wrap(words.STEP_MISTAKES, width, "  ")
    for mistake in check.mistakes:
        lines += wrap(mistake, width, "    - ", "      ")
    return lines


def _possible(node: str, scene: Scene) -> bool:
    return not scene.ranked or node in scene.assessment.solution.posterior


def _mostly(check: Check, node: str) -> str:
    """The outcome this node shows most often."""
    row = {o: p if isinstance(p, float | int) else None for o, p in check.shows[node].items()}
    first = max(check.shows[node], key=lambda o: row[o] or 0.0) if check.shows[node] else next(iter(check.outcomes))
    word = check.shows[node].get(first)
    return f"{check.outcomes[first].title}{f' ({word})' if isinstance(word, str) else ''}"


def _why_cause(name: str, scene: Scene, width: int) -> list[Line]:
    cause = scene.book.causes.get(name)
    row = next((r for r in scene.rows if r.id == name), None)
    title = row.title if row else scene.book.title(name)
    if row is not None:
        title = f"{title}: {percent(row.probability).strip()}"
    return why_block(title, cause.shows if cause else "", scene.assessment.reasons(name), width)


def cause_meant(text: str, scene: Scene) -> str:
    """The cause that a number of the ranking, or words, mean. Raises Refused."""
    rows = scene.rows
    if not rows:
        raise Refused(words.NOT_YET)
    if text.isascii() and text.isdigit():
        if not 1 <= int(text[:6]) <= len(rows):
            raise Refused(f"The ranking has rows 1 to {len(rows)}; r shows them all.")
        return rows[int(text) - 1].id
    names = {r.id: [r.title] for r in rows}
    matches = find(text, names)
    winner = clear_winner(matches)
    if winner is not None:
        return winner
    if not matches:
        raise Refused(f"{short(text)} is like no cause in the ranking; r shows them all, with numbers.")
    order = [r.id for r in rows]
    found = "; ".join(f"{order.index(m.id) + 1} {names[m.id][0]}" for m in matches[:4])
    raise Refused(f"{short(text)} may mean: {found}. Say its number.")
