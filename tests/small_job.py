"""A small book with a live check, stop conditions and two complaints, and a job on it that needs no disk."""

from __future__ import annotations

import contextlib
import copy
from collections.abc import Iterable, Sequence
from pathlib import Path

from diagnose.dialogue.conversation import Conversation
from diagnose.dialogue.scene import Scene
from diagnose.job import events as ev
from diagnose.job.journal import Journal
from diagnose.job.session import Session
from diagnose.model import Book, load_book, shipped_knowledge
from diagnose.terminal.front import Paused
from diagnose.terminal.scripted import ScriptedFront
from tests.small_knowledge import SMALL, write_small

__all__ = ["STORY", "MemoryJournal", "copy_of", "small_book", "talk", "talk_on"]

_CAUTIONS = (
    SMALL["cautions.toml"]
    + """
[[caution]]
id = "live"
hazard = "live parts"
title = "LIVE PARTS"
text = ["One hand. The data plate goes first."]
word = "LIVE"
basis = { kind = "common practice" }

[[caution]]
id = "isolate"
hazard = "stored energy"
title = "ISOLATE"
text = ["Lock it."]
word = "LOCKED"
basis = { kind = "common practice" }

[[stop]]
id = "gas"
ask = "Smell of gas?"
instruction = ["Everybody out."]
basis = { kind = "common practice" }

[[stop]]
id = "smoke"
ask = "Smoke?"
instruction = ["Switch off."]
basis = { kind = "common practice" }
"""
)
_STEAM = """
[[complaint]]
id = "steam_out"
title = "Steam comes out"
kitchen = ["fog", "like a sauna"]
of = ["box.fuse", "box.normal"]
unlisted = "uncommon"
prove_by = ["box.where"]
advice = ["Keep the doors shut."]
basis = { kind = "judgement" }
"""
_BOX = """title = "Box"

[[cause]]
id = "fuse"
title = "The fuse is blown"
shows = "Nothing runs."
why = "It was overloaded."
told_apart = "Look at it."
how_often = "common"
repair = ["Fit a new fuse."]
minutes = 5
parts = ["fuse"]
open = ["control box"]
state = "isolated"
who = "technician"
cautions = ["isolate"]
prove_by = ["volts"]
basis = { kind = "judgement" }

[[cause]]
id = "normal"
title = "It steams as it should"
shows = "A little steam."
why = "Hot water steams."
told_apart = "It was always so."
how_often = "common"
repair = ["Tell the kitchen."]
minutes = 5
parts = []
open = ["none"]
state = "running"
who = "technician"
cautions = []
prove_by = ["where"]
no_fault = true
basis = { kind = "judgement" }

[[check]]
id = "volts"
title = "Volts at the fuse"
ask = "How many volts?"
steps = ["Measure."]
mistakes = ["The wrong range."]
reading = { quantity = "voltage", unit = "V", least = "0 V", most = "600 V", example = "208" }
instrument = "voltmeter"
minutes = 2
open = ["control box"]
state = "running"
who = "technician"
cautions = ["live"]
looks_at = ["fuse"]
basis = { kind = "judgement" }
[check.outcomes]
none = { title = "none", high = "50 V" }
some = { title = "as it should be", good = true, low = "50 V" }
[check.shows]
fuse = { none = "nearly always" }
none = { some = "nearly always" }

[[check]]
id = "where"
title = "Where it steams"
ask = "Where does it steam?"
steps = ["Look."]
instrument = "eyes"
minutes = 1
open = ["none"]
state = "running"
who = "operator"
cautions = []
looks_at = ["fuse", "normal"]
basis = { kind = "judgement" }
[check.outcomes]
nowhere = { title = "nowhere", good = true }
ends = { title = "at the ends" }
[check.shows]
fuse = { ends = "nearly always" }
normal = { ends = "nearly always" }
none = { nowhere = "nearly always" }
"""

# The answers of a job on the steam complaint: from the machine to its end, by the fuse and the "no fault".
STORY = (
    *("1", "1", "Quay Street, invented", "0", "like a sauna", "", "2"),  # up to the ranking
    *("c volts", "LIVE", "20", "c where", "2", "g fuse", "LOCKED", "1"),  # measured, repaired
    *("LIVE", "208 V", "1", "1", "1"),  # proved, gone, closed
)


def small_book(folder: Path) -> Book:
    access = (shipped_knowledge() / "access.toml").read_text("utf-8")
    files = {"access": access, "cautions": _CAUTIONS, "complaints__steam": _STEAM, "assemblies__box": _BOX}
    return load_book(write_small(folder, **files))


class MemoryJournal(Journal):
    """A journal that forgets; for tests of what is said, not of what is kept."""

    writer = "test"

    def __init__(self, records: Iterable[ev.Record] = ()) -> None:
        self.kept = list(records)

    def changed(self) -> bool:
        return False

    def append(self, job: str, event: ev.Event) -> ev.Record:
        record = ev.Record(number=len(self.kept) + 1, at="2026-03-02T08:00:00+00:00", writer="test", event=event)
        self.kept.append(record)
        return record

    def records(self, job: str) -> tuple[ev.Record, ...]:
        return tuple(self.kept)


def talk_on(session: Session, answers: Sequence[str], folder: Path, columns: int = 80) -> ScriptedFront:
    """Go on with a session until the answers are used up or the job is closed."""
    front = ScriptedFront(answers, columns)
    with contextlib.suppress(Paused):
        Conversation(Scene(session, folder / "machines"), front).run()
    return front


def talk(book: Book, answers: Sequence[str], folder: Path, columns: int = 80) -> tuple[Session, ScriptedFront]:
    """A new job with these answers: the session as it stands then, and what was printed."""
    session = Session(book, MemoryJournal(), "job-1")
    front = talk_on(session, answers, folder, columns)
    return session, front


def copy_of(session: Session) -> Session:
    """The same job, to be tried in another way."""
    other = copy.copy(session)
    other._journal = MemoryJournal(session.records)
    return other
