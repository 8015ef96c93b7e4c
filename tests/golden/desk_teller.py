"""Tell anew what a desk does: a call that ends in a visit, and a job followed with a hint; run as a module.

The machine of a story answers, on the telephone and on site, as in `teller`; what the desk types stands here.
"""

from __future__ import annotations

import sys
import tempfile
from dataclasses import replace
from pathlib import Path

from diagnose.desk import call_requests as cr
from diagnose.desk.call import Call
from diagnose.desk.call_flow import wanted_in_call
from diagnose.desk.call_show import end_ways
from diagnose.dialogue import requests as rq
from diagnose.dialogue.conversation import Conversation
from diagnose.dialogue.run import run_job
from diagnose.dialogue.scene import Scene
from diagnose.job.journal import Journal
from diagnose.job.session import Session
from diagnose.model import Book, Machine, fits, load_book
from diagnose.terminal import ScriptedFront
from diagnose.terminal.front import Paused
from tests.golden.stories import STORIES
from tests.golden.teller import Story, Teller, heading_of
from tests.replay import CALL, CLOCK, COMMAND, DESK, FOLLOW, JOB, desk_of, run

__all__ = ["call_then_visit", "followed_with_a_hint"]

_NOTE = "Demonstration: the sites and everything that happens there are invented. Lines with > are the answers typed."
_PAUSED = f"Paused, saved. Resume with: diagnose resume {JOB}"


class _Caller(Teller):
    """Somebody of the kitchen, who sees what the machine of the story shows."""

    def request(self) -> rq.Wanted:
        return wanted_in_call(self._scene)

    def _say(self, request: rq.Wanted) -> str:
        match request:
            case cr.AskCaller():
                return "1 Ana"
            case cr.AskType(_, question, _):
                return self._seen_from_outside(question)
            case cr.LetMend(_, cause, _):
                return "1" if cause in self._left() else "2"
            case cr.AskCallEnd():
                ways = end_ways(request, self._scene)
                return f"{ways.index('stop' if ways[0] == 'stop' else 'visit') + 1} tomorrow at eight"
        return super()._say(request)

    def _seen_from_outside(self, question: str) -> str:
        kind = self._scene.book.machines[self._story.machine]
        for nth, each in enumerate(self._scene.book.tell_apart[question].answers, 1):
            if fits(Machine("", kind), each.fits) and all(kind.plate.get(k) in v for k, v in each.plate.items()):
                return str(nth)
        return "?"


def _told(book: Book, journal: Journal, story: Story, machines: Path, paused: bool = True) -> list[str]:
    """The technician of the story at work, until the job is closed or the story pauses."""
    front_of = Scene(Session(book, journal, JOB), machines)
    front = Teller(story, front_of, paused)
    try:
        Conversation(front_of, front).run()
    except Paused:
        front.printed.append(_PAUSED)
    return front.printed


def call_then_visit(book: Book, folder: Path) -> str:
    """A kitchen calls; what it can tell is asked; somebody comes with the part and goes on with what is known."""
    story = next(each for each in STORIES if each.name == "rinse_cold_one_element")
    lines = heading_of(
        (
            "A call about a final rinse that is too cold. The kitchen tells what it can see, somebody must come, and "
            "the technician goes on with the same job on site: one heating element is open.",
            _NOTE,
        )
    )
    journal = Journal(folder / "j.sqlite3", clock=lambda: CLOCK)
    desk = desk_of(journal)
    scene = Scene(Session(book, desk, JOB), folder / "machines")
    caller = _Caller(story, scene, True)
    Call(scene, caller, DESK).run()
    lines += [CALL, *caller.printed]
    arrives = ScriptedFront([])
    run_job(book, journal, folder / "machines", arrives, JOB)  # says who is there; its answers follow below
    lines += [f"{COMMAND} resume {JOB}", *_told(book, journal, story, folder / "machines")]
    desk.close()
    journal.close()
    return "\n".join(lines) + "\n"


def followed_with_a_hint(book: Book, folder: Path) -> str:
    """A technician works, the desk looks on and suggests a check, which is taken."""
    story = replace(next(each for each in STORIES if each.name == "rinse_cold_one_element"), asides={})
    lines = heading_of(
        (
            "A job that the desk follows from another computer: it suggests a check, the technician takes it. Shown by "
            "turns; on two screens both go on at the same time.",
            _NOTE,
        )
    )
    journal = Journal(folder / "j.sqlite3", clock=lambda: CLOCK)
    machines = folder / "machines"
    begun = Teller(_paused_at(story, "rinse_gauge.flow_pressure"), Scene(Session(book, journal, JOB), machines), False)
    try:
        Conversation(begun._scene, begun).run()
    except Paused:
        begun.printed.append(_PAUSED)
    lines += [COMMAND, *begun.printed]
    looks = ScriptedFront(["c booster line currents", "one line well above the other two: an element is open", "p"])
    run(FOLLOW, looks, book, journal, folder)
    lines += [f"{FOLLOW} {JOB}", *looks.printed]
    arrives = ScriptedFront([])
    run_job(book, journal, machines, arrives, JOB)
    lines += [f"{COMMAND} resume {JOB}", *_told(book, journal, story, machines)]
    ends = ScriptedFront([])
    run(f"{FOLLOW} --once", ends, book, journal, folder)
    lines += [f"{FOLLOW} {JOB} --once", *ends.printed]
    journal.close()
    return "\n".join(lines) + "\n"


def _paused_at(story: Story, check: str) -> Story:
    return replace(story, pause_before=check)


def main() -> None:
    """Write both transcripts into the folder named, or where they are kept."""
    target = Path(sys.argv[1]) if len(sys.argv) > 1 else Path(__file__).resolve().parents[2] / "transcripts_demo"
    book = load_book()
    for name, told in (("call_then_visit", call_then_visit), ("followed_with_a_hint", followed_with_a_hint)):
        with tempfile.TemporaryDirectory() as folder:
            (target / f"{name}.txt").write_text(told(book, Path(folder)), "utf-8")
        print(name)


if __name__ == "__main__":
    main()
