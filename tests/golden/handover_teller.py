"""Tell a handover anew: a simulated machine is set right line by line, and the dialogue is printed.

`python -m tests.golden.handover_teller` writes the transcript; read the difference before keeping it.
"""

from __future__ import annotations

import tempfile
from collections.abc import Mapping, Sequence
from dataclasses import replace
from pathlib import Path

from diagnose.dialogue import requests as rq
from diagnose.dialogue.begin import machine_options
from diagnose.dialogue.conversation import Conversation
from diagnose.dialogue.flow import next_request
from diagnose.dialogue.scene import Scene
from diagnose.handover.sheet import Line
from diagnose.job import events as ev
from diagnose.job.journal import Journal
from diagnose.job.session import Session
from diagnose.model import Book, Check, load_book
from diagnose.practice.port import figures_of, machine_of
from diagnose.rules import expected
from diagnose.simulator import Plate, Simulated
from diagnose.simulator.bench import Bench
from diagnose.simulator.blades import Blade
from diagnose.simulator.senses import Senses
from diagnose.terminal.front import Paused
from diagnose.terminal.scripted import ScriptedFront
from diagnose.units import Quantity, find_unit, parse_quantity, show_number
from diagnose.view.layout import wrap
from tests.replay import CLOCK, COMMAND, JOB

__all__ = ["NAME", "tell_handover"]

NAME = "handover_two_tanks"
MACHINE, SITE = "two_tank_electric_208", "Breakwater House, invented"
HEADER = (
    "A two-tank machine is set right, proved line by line and handed over. The pressure of the rinse and both vent "
    "dampers are set; insulation that is too low becomes a diagnosis, and its cause is mended. It takes two visits.",
    "Demonstration: the site and everything that happens there are invented. Lines with > are the answers typed.",
)
FAULTS = (("breaker_earth_leakage.box_wet", 0.7), ("pressure_regulator.set_low", 0.6))
SETTABLE = ("final_rinse.pressure", "air.entrance", "air.exit", "air.balance")
PER_TURN = 0.2  # of the pressure wanted, that a turn of this machine's screw gives
HANDLES = {"entrance": 0.85, "exit": 0.5}  # as the installer left them
BLADES = {"entrance": Blade("butterfly", 1.6), "exit": Blade("butterfly", 1.8)}
LEFT = {"water.hardness": "3 strips come with the next visit"}  # lines left at first, as typed
PAUSE_BEFORE = "conveyor_bar_pawls.pawl_row"
MOST = 230


class _Site(Simulated):
    """The machine with its handles and its screw."""

    def __init__(self) -> None:
        self.handles, self.turns = dict(HANDLES), 0.0
        machine = machine_of(load_book(), MACHINE, {})
        super().__init__(Plate(machine.type.traits, figures_of(machine)), faults=FAULTS, seed=5)

    def _bench(self) -> Bench:
        plant = super()._bench().plant
        plant.air = replace(plant.air, blades=dict(BLADES), handle=dict(self.handles))
        plant.rinse.set_pressure *= 1.0 + PER_TURN * self.turns / (0.62 - 0.27 * FAULTS[1][1])
        return Bench(plant, self.rush, Senses("", self.lies))

    def set(self, event: ev.Adjusted) -> None:
        """What was set is so from now on."""
        if event.adjustment == "air.dampers":
            self.handles = {end: parse_quantity(text, "share", "%").si for end, text in event.settings.items()}
        elif event.adjustment == "final_rinse.regulator_screw":
            self.turns = parse_quantity(event.settings["turns"], "count", "x").si
        self._repairs += 1
        self.bench = self._bench()


class _Teller(ScriptedFront):
    """Answers as the machine would make a technician answer."""

    def __init__(self, site: _Site, scene: Scene, paused: bool) -> None:
        super().__init__([])
        self._site, self._scene, self._paused = site, scene, paused
        self._set = len(scene.state.adjusted)
        self._again: set[str] = set()
        self.count = 0

    def ask(self, default: str = "", edit: str = "", **more: object) -> str:
        self.count += 1
        assert self.count < MOST, "the handover does not end:\n" + "\n".join(self.printed[-70:])
        for _, event in self._scene.state.adjusted[self._set :]:
            if not event.found:
                self._site.set(event)
        self._set = len(self._scene.state.adjusted)
        answer = self._next()
        self.printed.append(f"> {answer}".rstrip())
        return answer or default

    def _next(self) -> str:
        scene = self._scene
        request = next_request(scene.book, scene.state, scene.options)
        match request:
            case rq.AskMachine():
                return str([m.name for m in machine_options(scene)].index(MACHINE) + 1)
            case rq.OfferPlate() | rq.AskClose():
                return "1"
            case rq.Describe(_, what):
                return {"name": "breakwater", "serial": "", "site": SITE}[what]
            case rq.AskSafety():
                return "0"
            case rq.AskCaution(words=words):
                return " ".join(words)
            case rq.AskCheck(_, check):
                return self._check(check)
            case rq.Decide(_, options):
                return str(next(n for n, o in enumerate(options, 1) if o.what != "help"))
            case rq.AskRepair(_, cause):
                return "1" if self._site.repair(cause) else "2"
            case rq.AskGone(_, complaint):
                return "2" if complaint in self._site.complaints() else "1"
            case _:
                return self._on_sheet(request)

    def _on_sheet(self, request: rq.Request) -> str:
        match request:
            case rq.AskFailed(_, name):
                return self._failed(self._scene.sheet.by_id[name])
            case rq.AskFound():
                return " ".join(f"{HANDLES[end] * 100:.0f}" for end in ("entrance", "exit"))
            case rq.AskSet() | rq.AskHandover():
                return "1"
            case rq.AskLeave(_, name):
                return LEFT.get(name, "5 both inside their errors")
            case rq.AskWho():
                return "two of the evening crew, the kitchen manager"
        raise AssertionError(f"no answer to {request}")

    def _failed(self, line: Line) -> str:
        """What can be set is set, what can't is looked into; what surprises is looked at once more first."""
        settable = self._scene.sheet.adjustments(line) if line.id in SETTABLE else ()
        again = not line.check.computed
        if settable:
            return "2" if line.verdict == "cannot tell" and again else "1"
        before = len(self._scene.sheet.adjustments(line))
        if again and line.id not in self._again and not line.comes_to:
            self._again.add(line.id)
            return "1" if line.verdict == "cannot tell" else str(before + 1)
        return str(before + again + (1 if line.verdict == "fail" else 1 + bool(line.comes_to)))

    def _check(self, name: str) -> str:
        scene = self._scene
        if name == PAUSE_BEFORE and not self._paused:
            return "p"
        line = scene.sheet.of_check(name)
        if line is not None and line.id in LEFT and not self._paused:
            return "s"
        check = scene.book.checks[name]
        if not self._site.can_read(name):
            return self._healthy(check)
        answer = self._site.read(name)
        if answer.outcome is not None:
            return str(list(check.outcomes).index(answer.outcome) + 1)
        return _typed(check, answer.values)

    def _healthy(self, check: Check) -> str:
        if check.reading is None:
            return str(next(n for n, o in enumerate(check.outcomes.values(), 1) if o.good))
        machine = self._scene.state.machine
        assert machine is not None
        figure = expected(self._scene.book, machine, self._scene.state.readings, check.id)
        if figure is None or (figure.low is None and figure.high is None):
            return "?"
        ends = [end.value for end in (figure.low, figure.high) if end is not None]
        middle = sum(ends) / 2
        return " ".join([show_number(middle, 3)] * max(1, len(check.reading.each)))


def _typed(check: Check, values: Mapping[str, float]) -> str:
    """As a technician reads it off: three figures, the last with its unit."""
    spec = check.reading
    assert spec is not None
    unit = find_unit(spec.unit, spec.quantity)
    told = [show_number(Quantity.of_si(v, spec.quantity, spec.unit).value, 3) for v in values.values()]
    return f"{' '.join(told)} {unit.symbol}" if unit.symbol in ("in/ft", "mL") else " ".join(told)


def tell_handover(book: Book, folder: Path) -> str:
    """The whole transcript."""
    lines = [str(line) for text in HEADER for line in wrap(text, 80, "# ", "# ")]
    journal = Journal(folder / f"{NAME}.sqlite3", clock=lambda: CLOCK)
    site, paused = _Site(), False
    try:
        while True:
            scene = Scene(Session(book, journal, JOB), folder / "machines", purpose="handover")
            front = _Teller(site, scene, paused)
            try:
                Conversation(scene, front).run()
                again = False
            except Paused:
                front.printed.append(f"Paused, saved. Resume with: diagnose resume {JOB}")
                again = True
            lines += [f"{COMMAND} resume {JOB}" if paused else f"{COMMAND} handover", *front.printed]
            paused = True
            if not again:
                return "\n".join(lines) + "\n"
    finally:
        journal.close()


def main(arguments: Sequence[str] = ()) -> None:
    folder = Path(__file__).resolve().parents[2] / "transcripts_demo"
    with tempfile.TemporaryDirectory() as scratch:
        (folder / f"{NAME}.txt").write_text(tell_handover(load_book(), Path(scratch)), "utf-8")


if __name__ == "__main__":
    main()
