"""Follow a job live: see what happens there, and send a hint that is taken or left."""

from __future__ import annotations

from collections.abc import Callable, Sequence

from diagnose.desk.feed import Feed
from diagnose.desk.now_asked import next_of
from diagnose.dialogue import asides
from diagnose.dialogue.scene import Scene
from diagnose.dialogue.turns import turn
from diagnose.job import events as ev
from diagnose.terminal.front import Front, Paused
from diagnose.terminal.letters import letter_in
from diagnose.terminal.refusals import Refused
from diagnose.terminal.watching import watch
from diagnose.view import desk_words
from diagnose.view.exits import Exit
from diagnose.view.layout import Line, wrap
from diagnose.view.question import keys

__all__ = ["Follower", "follow"]


class Follower:
    """What one who follows types: letters that look on, and hints. Answers are not changed from here."""

    def __init__(self, scene: Scene, front: Front, person: str, may_write: Callable[[], bool]) -> None:
        self._scene = scene
        self._front = front
        self._person = person
        self._may_write = may_write

    def welcome(self) -> list[Line]:
        """How to follow."""
        width = self._front.width
        shown = desk_words.FOLLOW_KEYS if self._may_write() else desk_words.READ_KEYS
        return [*wrap(desk_words.FOLLOWING, width, role="dim"), *keys(shown, width)]

    def typed(self, text: str) -> None:
        """Do what a line says. Raises Paused."""
        self._scene.session.refresh()
        try:
            self._letter(text)
        except Refused as refused:
            self._front.say(wrap(str(refused), self._front.width, role="refused"))

    def _letter(self, text: str) -> None:
        letter = letter_in(text)
        if letter is None:
            if text:
                raise Refused(desk_words.NO_LETTER)
            return
        width, scene = self._front.width, self._scene
        match letter.letter:
            case "p":
                raise Paused
            case "c" | "n":
                self._hint(letter.letter, letter.more)
            case "r":
                self._front.say(asides.ranking_lines(scene, width, self._front.bars))
            case "w":
                self._front.say(asides.why_lines(next_of(scene), letter.more, scene, width))
            case "t":
                self._front.say(asides.tree_lines(scene, letter.more, width))
            case "i":
                self._front.say(asides.info_lines(scene, width))
            case "h":
                for name, meaning in desk_words.FOLLOW_LETTERS.items():
                    self._front.say(wrap(meaning, width, f"  {name}  "))
            case _:
                raise Refused(desk_words.NO_LETTER)

    def _hint(self, letter: str, more: str) -> None:
        if not self._may_write():
            raise Refused(desk_words.READ_ONLY)
        hint = self._check(more) if letter == "c" else ev.Hinted(text=more or self._ask(desk_words.WHAT_TO_SAY))
        if hint is None or not (hint.check or hint.text):
            return
        session = self._scene.session
        known = session.state.presences.get(session.writer)
        if known is None or (known.place, known.name) != ("desk", self._person):
            session.do(ev.Present(self._person, "desk"))
        session.do(hint)
        self._front.say(wrap(desk_words.SENT, self._front.width, role="good"))

    def _check(self, more: str) -> ev.Hinted | None:
        """The check meant, as a hint; the same words and numbers mean the same as for who works there."""
        turned = turn("c", more, next_of(self._scene), self._scene, self._front)
        chosen = [e for e in turned or () if isinstance(e, ev.TurnedTo) and e.what == "check"]
        return ev.Hinted(chosen[0].id, self._ask(desk_words.WORDS_WITH)) if chosen else None

    def _ask(self, question: str) -> str:
        self._front.say(wrap(question, self._front.width))
        return self._front.ask()


def follow(
    opened: Callable[[], Scene],
    front: Front,
    person: str = "",
    may_write: Callable[[], bool] = lambda: True,
    once: bool = False,
) -> Exit:
    """Follow a job until it is closed or the person leaves. `opened` gives the job with a journal of its own;
    `may_write` is asked before each hint.

    With `once`, how it stands is shown and nothing more.
    """
    scene = opened()
    if once:
        _say(front, Feed(scene))
        return Exit.OK
    follower = Follower(scene, front, person, may_write)
    front.say(follower.welcome())
    try:
        watch(front, lambda: Feed(opened()), follower.typed)
    except Paused:
        front.say(wrap(desk_words.LEFT + scene.session.job, front.width))
        return Exit.PAUSED
    return Exit.OK


def _say(front: Front, feed: Feed) -> None:
    blocks: list[Sequence[Line]] = list(feed.catch_up(front.width, front.bars))
    for lines in blocks:
        front.say(lines)
