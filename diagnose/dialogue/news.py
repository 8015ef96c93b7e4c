"""What an answer has changed: new findings with their working, conflicts, the ranking."""

from __future__ import annotations

from diagnose.dialogue.flow import proving
from diagnose.dialogue.scene import Scene
from diagnose.model import Finding, Reading
from diagnose.view import sheet_words, words
from diagnose.view.layout import Line, wrap
from diagnose.view.past import was_and_is
from diagnose.view.ranking import ranking_block
from diagnose.view.reasons import conflict_block, finding_block
from diagnose.view.sheet import counts_text, verdict_block
from diagnose.view.together import beside_block

__all__ = ["News"]


class News:
    """Remembers what was said already, so that each finding and each ranking is printed once."""

    def __init__(self, scene: Scene, moved: bool = False) -> None:
        self._scene = scene
        self._moved = moved  # whether a row of the ranking says where it was before
        self._before: dict[str, float] = {}
        self._told: set[object] = set()
        self._last: object = None
        self._beside = 0  # answers given twice that were said already

    def keep_quiet(self) -> None:
        """Count everything so far as said."""
        self._beside = len(self._scene.state.beside)
        if self._scene.on_sheet:
            self._told |= {("sheet", r.id) for r in self._scene.state.readings}
        elif self._ready():
            self._told |= {_key(f) for f in self._scene.assessment.findings}
            self._told |= {u.reading.id for u in self._scene.assessment.run.unanswered}
            self._told |= set(self._scene.conflicts)
            self._told |= {_before(r) for r in self._scene.state.readings}
            self._last = self._mark()

    def standing(self, width: int, bars: bool) -> list[Line]:
        """The ranking as it stands, to go on from."""
        if self._scene.on_sheet:
            return [Line(), *wrap(f"{sheet_words.SHEET}{counts_text(self._scene.sheet)}.", width)]
        return [Line(), *self._ranking(width, bars)] if self._ready() else []

    def lines(self, width: int, bars: bool) -> list[Line]:
        """What is new since the last time."""
        twice = self._twice(width)
        if self._scene.on_sheet:
            return twice + self._on_sheet(width)
        if not self._ready():
            return twice
        lines = twice + self._findings(width) + self._unanswered(width) + self._changed(width) + self._conflicts(width)
        mark = self._mark()
        if mark != self._last and not proving(self._scene.book, self._scene.state):
            self._last = mark
            lines += [*([Line()] if lines else []), *self._ranking(width, bars)]
        return [Line(), *lines] if lines else []

    def _twice(self, width: int) -> list[Line]:
        """Answers that two people gave to one question, each time there are more."""
        count, self._beside = self._beside, len(self._scene.state.beside)
        return beside_block(self._scene.state, self._scene.book, width) if self._beside > count else []

    def _on_sheet(self, width: int) -> list[Line]:
        """What the reading taken last has come to, with its working, and what is worked out from it."""
        sheet = self._scene.sheet
        newest = sheet.state.readings[-1] if sheet.state.readings else None
        if newest is None or ("sheet", newest.id) in self._told:
            return []
        self._told.add(("sheet", newest.id))
        lines: list[Line] = []
        for line in sheet.lines:
            finding = line.finding
            if finding is None or newest.id not in finding.counts or _key(finding) in self._told:
                continue
            self._told.add(_key(finding))
            lines += verdict_block(line, sheet, width)
            if line.verdict != "pass":  # f shows how a figure was worked out
                lines += [each for text in finding.working for each in wrap(text, width, "   ")]
        self._told |= {_key(f) for f in sheet.run.findings}
        return [Line(), *lines] if lines else []

    def _ready(self) -> bool:
        """Before the story is told there is no ranking worth printing; after the end there is none either."""
        scene = self._scene
        asked = set(scene.book.context) <= scene.state.context_asked and "complaints" in scene.state.steps
        told = asked or scene.state.purpose == "handover"
        return scene.ranked and told and scene.state.closed is None and scene.state.stop is None

    def _mark(self) -> object:
        return tuple((r.id, round(r.probability, 4)) for r in self._scene.rows)

    def _findings(self, width: int) -> list[Line]:
        lines: list[Line] = []
        for finding in self._scene.assessment.findings:
            if _key(finding) not in self._told:
                self._told.add(_key(finding))
                lines += finding_block(finding, self._scene.book, width)
        return lines

    def _unanswered(self, width: int) -> list[Line]:
        lines: list[Line] = []
        for each in self._scene.assessment.run.unanswered:
            if each.reading.id not in self._told:
                self._told.add(each.reading.id)
                title = self._scene.book.title(each.reading.check)
                lines += wrap(f"{title}: {words.UNUSED}{each.why}", width, " ", role="refused")
        return lines

    def _changed(self, width: int) -> list[Line]:
        """What was read just now and was otherwise at the handover, or in an earlier job."""
        lines: list[Line] = []
        for reading in self._scene.state.readings:
            if _before(reading) not in self._told:
                self._told.add(_before(reading))
                told = was_and_is(self._scene.past, reading, self._scene.book)
                lines += wrap(told, width, " ") if told else []
        return lines

    def _conflicts(self, width: int) -> list[Line]:
        fresh = [text for text in self._scene.conflicts if text not in self._told]
        self._told.update(fresh)
        return conflict_block(fresh, width)

    def _ranking(self, width: int, bars: bool) -> list[Line]:
        rows = self._scene.rows
        lines = ranking_block(rows, width, bars=bars, before=self._before if self._moved else None)
        self._before = {row.id: row.probability for row in rows}
        if self._scene.state.readings and self._scene.assessment.nothing_fits:
            behind = [words.UNLISTED_BEHIND + title + "." for title in self._scene.assessment.unlisted_behind]
            lines += wrap(" ".join([words.UNLISTED_FIRST, *behind]), width, "  ", role="caution")
        return lines


def _before(reading: Reading) -> object:
    return "before", reading.id


def _key(finding: Finding) -> object:
    return finding.check, finding.counts, finding.outcome, finding.stage
