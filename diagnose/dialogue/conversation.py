"""The conversation: ask what the state wants next, keep the answer, say what follows from it."""

from __future__ import annotations

from collections.abc import Sequence

from diagnose.dialogue import asides, begin, complain, hints, measure, mend, sheet_talk
from diagnose.dialogue import requests as rq
from diagnose.dialogue.before import old_answer
from diagnose.dialogue.flow import next_request
from diagnose.dialogue.leaving import left_out
from diagnose.dialogue.news import News
from diagnose.dialogue.numbers import number_lines
from diagnose.dialogue.reminder import reminder
from diagnose.dialogue.scene import Scene
from diagnose.dialogue.turns import turn
from diagnose.job import events as ev
from diagnose.terminal.front import Front, Paused
from diagnose.terminal.letters import Letter, letter_in
from diagnose.terminal.refusals import Refused, Told
from diagnose.view import sheet_words, together_words, words
from diagnose.view.layout import Line, wrap
from diagnose.view.past import history_block
from diagnose.view.question import keys
from diagnose.view.sheet import handover_block
from diagnose.view.summary import job_head, summary_block

__all__ = ["Conversation"]

_SHOWING = frozenset("hwrtil")  # letters that show something long
_FREE = rq.Describe | rq.AskFigure | rq.AskComplaint | rq.AskWho | rq.AskOn


class Conversation:
    """One job with one person. All it remembers is what was said already; the rest is the state of the job.

    What is wanted next, how it is shown and what an answer means are methods of their own, so that another kind of
    conversation may say them in its own way.
    """

    def __init__(self, scene: Scene, front: Front) -> None:
        self._scene = scene
        self._front = front
        self._news = News(scene)

    def run(self) -> None:
        """Talk until the job is closed. Raises Paused."""
        resumed = bool(self._scene.session.records)
        if resumed:
            self._resume()
        else:
            self._say(wrap(self.welcome(), self._front.width, role="dim"))
        while True:
            self._take_in()
            request = self.wanted()
            if self.ends(request):
                return
            if isinstance(request, rq.Stopped):
                self._say(begin.stop_lines(request.stop, self._scene, self._front.width))
                self._do([ev.Closed("stopped for safety")])
                continue
            default = old_answer(request, self._scene)
            self._say([Line(), *self.shown(request, resumed), *_keys(request, default, self._front.width)])
            resumed = False
            self._exchange(request, default)

    def welcome(self) -> str:
        """The first sentence of a new job."""
        return words.WELCOME if self._scene.purpose == "repair" else sheet_words.WELCOME_HANDOVER

    def ends(self, request: rq.Wanted) -> bool:
        """Whether nothing is asked any more; what there is to say then is said."""
        if isinstance(request, rq.Ended):
            self._summary()
        elif isinstance(request, rq.Waiting):
            self._say([Line(), *hints.waiting_lines(self._scene, self._front.width)])
        return isinstance(request, rq.Ended | rq.Waiting)

    def _take_in(self) -> bool:
        """Say what others wrote meanwhile; whether there was anything."""
        fresh = self._scene.session.refresh()
        if fresh:
            self._say(hints.others_lines(fresh, self._scene, self._front.width))
            self._say(self._news.lines(self._front.width, self._front.bars))
        return bool(fresh)

    def _notice(self, default: str) -> str:
        """A few words beside the line while something that others wrote waits."""
        if not self._scene.session.waiting():
            return ""
        return together_words.AFTER_THIS if default else together_words.ENTER_SHOWS

    def wanted(self) -> rq.Wanted:
        """What is to be asked next."""
        return next_request(self._scene.book, self._scene.state, self._scene.options)

    def _resume(self) -> None:
        width = self._front.width
        self._say(job_head(self._scene.state, self._scene.book, self._scene.session.job, width))
        self._say(wrap(words.RESUMED, width))
        if self._scene.state.safety_asked:
            dangers = " ".join(stop.ask for stop in self._scene.book.stops.values())
            self._say(wrap(f"{dangers} {words.SAFETY_AGAIN}", width, role="caution"))
        self._news.keep_quiet()
        self._say(self._news.standing(width, self._front.bars))

    def _exchange(self, request: rq.Wanted, default: str) -> None:
        """Ask until there is an answer, or a letter has led elsewhere."""
        edit = ""
        before = len(self._scene.session.records)
        while len(self._scene.session.records) == before:
            text = self._front.ask(default, edit, notice=lambda: self._notice(default))
            edit = ""
            if not text and self._take_in():
                return  # Enter alone is no answer while there is news
            try:
                letter = letter_in(text, isinstance(request, _FREE))
                if letter is None:
                    self._do(self.answered(request, text))
                else:
                    self._letter(letter, request)
                    if letter.letter in _SHOWING and len(self._scene.session.records) == before:
                        self._say(self.again(request))
            except Told as told:
                self._say(told.lines)
            except Refused as refused:
                edit = refused.kept
                self._say(wrap(str(refused), self._front.width, role="refused"))
        self._say(self._news.lines(self._front.width, self._front.bars))

    def again(self, request: rq.Wanted) -> list[Line]:
        """The question once more, in a few lines."""
        return reminder(request, self._scene, self._front.width)

    def answered(self, request: rq.Wanted, text: str) -> Sequence[ev.Event]:
        """What an answer means. Raises Refused and Told."""
        match request:
            case rq.AskMachine() | rq.OfferPlate() | rq.Describe() | rq.AskFigure() | rq.AskSafety():
                return begin.answer(request, text, self._scene, self._front.width)
            case rq.AskComplaint() | rq.AskContext():
                return complain.answer(request, text, self._scene, self._front.width)
            case rq.AskCaution() | rq.AskCheck():
                return measure.answer(request, text, self._scene)
            case rq.Decide() | rq.AskRepair() | rq.AskGone() | rq.AskClose() | rq.AskEnd():
                return mend.answer(request, text, self._scene)
            case rq.AskFailed() | rq.AskFound() | rq.AskSet() | rq.AskLeave() | rq.AskWho() | rq.AskHandover():
                return sheet_talk.answer(request, text, self._scene)
            case rq.AskHint() | rq.AskOn():
                return hints.answer(request, text, self._scene)
            case _:
                return []

    def shown(self, request: rq.Wanted, resumed: bool) -> list[Line]:
        """The question as printed."""
        width = self._front.width
        match request:
            case rq.AskMachine() | rq.OfferPlate() | rq.Describe() | rq.AskFigure() | rq.AskSafety():
                return begin.show(request, self._scene, width)
            case rq.AskComplaint() | rq.AskContext():
                return complain.show(request, self._scene, width)
            case rq.AskCaution() | rq.AskCheck():
                return measure.show(request, self._scene, width, resumed)
            case rq.Decide() | rq.AskRepair() | rq.AskGone() | rq.AskClose() | rq.AskEnd():
                return mend.show(request, self._scene, width, resumed)
            case rq.AskFailed() | rq.AskFound() | rq.AskSet() | rq.AskLeave() | rq.AskWho() | rq.AskHandover():
                return sheet_talk.show(request, self._scene, width, resumed)
            case rq.AskHint() | rq.AskOn():
                return hints.show(request, self._scene, width)
            case _:
                return []

    def left_out(self, request: rq.Wanted, letter: str) -> Sequence[ev.Event]:
        """What it means to leave the question out. Raises Refused."""
        return left_out(request, letter, self._scene)

    def _letter(self, letter: Letter, request: rq.Wanted) -> None:
        width = self._front.width
        more = letter.more
        match letter.letter:
            case "p":
                raise Paused
            case "b":
                self._back()
            case "?" | "s":
                self._do(self.left_out(request, letter.letter))
            case "h":
                self._say(asides.help_lines(self._scene.book, width))
            case "w":
                self._say(asides.why_lines(request, more, self._scene, width))
            case "f":
                self._say(number_lines(request, more, self._scene, width))
            case "r":
                self._say(asides.ranking_lines(self._scene, width, self._front.bars))
            case "t":
                self._say(asides.tree_lines(self._scene, more, width))
            case "i":
                self._say(asides.info_lines(self._scene, width))
            case "l":
                self._do(sheet_talk.go_to(more, self._scene, self._front))
            case _:
                self._do(turn(letter.letter, more, request, self._scene, self._front) or ())

    def _back(self) -> None:
        if self._scene.session.back() is None:
            raise Refused(words.FIRST_QUESTION)

    def _do(self, events: Sequence[ev.Event]) -> None:
        for event in events:
            self._scene.session.do(event)
            if isinstance(event, ev.Opened) and self._scene.person:
                self._scene.session.do(ev.Present(self._scene.person, "machine"))
        if any(isinstance(e, ev.Opened) for e in events) and self._scene.state.machine:
            self._say(wrap(f"{words.TAKEN}{self._scene.state.machine.type.title}.", self._front.width, role="good"))
        if any(isinstance(e, ev.Opened) or (isinstance(e, ev.MachineDescribed) and e.what == "name") for e in events):
            self._say(history_block(self._scene.past, self._scene.book, self._front.width))
        if any(isinstance(e, ev.ComplaintSaid) and e.present for e in events) and self._scene.state.stage:
            self._say(wrap(words.GO_ON, self._front.width))
        if any(isinstance(e, ev.PlateRead | ev.MachineDescribed) for e in events):
            problem = begin.keep_machine(self._scene)
            if problem:
                self._say(wrap(problem, self._front.width, role="refused"))

    def _summary(self) -> None:
        scene = self._scene
        closed = scene.state.closed
        if scene.state.purpose == "handover" and scene.state.machine is not None:
            self._say([Line(), *handover_block(scene.sheet, scene.session.job, self._front.width)])
            return
        advice = closed is not None and closed.how in ("repaired", "no fault")
        rows = [] if advice else scene.rows
        self._say([Line(), *summary_block(scene.state, scene.book, scene.session.job, rows, self._front.width, advice)])

    def _say(self, lines: Sequence[Line]) -> None:
        if lines:
            self._front.say(lines)


def _keys(request: rq.Wanted, default: str, width: int) -> list[Line]:
    """The letters under a question, and what Enter alone does."""
    line = words.KEYS if isinstance(request, rq.AskCheck) else words.KEYS_CHOOSE
    if default:
        return keys(line, width) + wrap(words.OLD_ANSWER + default, width, "  ", role="dim")
    skippable = isinstance(request, rq.Describe) and request.what != "name"
    return keys(words.KEYS_FREE if skippable else line, width)
