"""The handover sheet: the machine set right, proved line by line, and signed over."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator

from diagnose.handover.sheet import Line, Sheet, sheet_of
from diagnose.model import PLATE_FIGURES
from diagnose.report import head, readings, rest
from diagnose.report.charts import BandChart, BandRow
from diagnose.report.document import Block, Document, Facts, Figure, Heading, Items, Paragraph, Role, Row, Signatures
from diagnose.report.document import Table as TableBlock
from diagnose.report.dossier import Dossier
from diagnose.report.service import small_print
from diagnose.report.words import LEFT, VERDICTS, renderer_words
from diagnose.rules import expected
from diagnose.units import Quantity

__all__ = ["handover_sheet"]

_ROLES: dict[str, Role] = {"pass": "good", "fail": "bad", "cannot tell": "doubt", "left": "doubt", "again": "doubt"}
# What the kitchen reads by itself from then on; each line that is on the machine's sheet.
_POSTED = (
    "heat.wash_settled",
    "heat.rinse_tank_settled",
    "final_rinse.panel",
    "final_rinse.panel_chemical",
    "final_rinse.pressure",
    "chemicals.sanitiser",
)


def handover_sheet(dossier: Dossier) -> Document:
    """The whole sheet. A part that has nothing to say is left out."""
    texts = dossier.texts
    blocks: list[Block] = [*_head(dossier)]
    if dossier.state.machine is not None:
        sheet = sheet_of(dossier.book, dossier.state)
        for title, part in (
            (texts.say("Remarks"), [*_remarks(dossier, sheet)]),
            (texts.say("Set and mended"), [*_set(dossier, sheet)]),
            (texts.say("Line by line"), [*_lines(dossier, sheet)]),
            (texts.say("Readings against what is wanted"), [*_chart(dossier, sheet)]),
            (texts.say("Temperature at the plate"), [*readings.trace_blocks(dossier)]),
            (texts.say("What the gauges should read"), [*_posted(dossier, sheet)]),
            (texts.say("Who was shown what"), [*_shown(sheet)]),
            (texts.say("Plate figures"), [*_plate(dossier), *rest.assumed_blocks(dossier)]),
            (texts.say("Notes"), [*rest.note_blocks(dossier)]),
        ):
            blocks += [Heading(title), *part] if part else []
    signers = (texts.say("Technician"), texts.say("For the kitchen"))
    blocks += [Signatures(signers, texts.say("Date")), *small_print(dossier)]
    made = dossier.records[-1].at if dossier.records else ""
    words = renderer_words(texts)
    return Document(texts.say("Handover sheet"), head.subtitle(dossier), tuple(blocks), texts.language, made, words)


def _head(dossier: Dossier) -> Iterator[Block]:
    texts = dossier.texts
    if dossier.state.purpose != "handover":
        yield Paragraph(texts.say("This job was no handover; what was read in it is set in the sheet of its machine."))
    yield from head.head_blocks(dossier)


def _remarks(dossier: Dossier, sheet: Sheet) -> Iterator[Block]:
    texts = dossier.texts
    counted: Counter[str] = Counter(line.verdict for line in sheet.lines)
    told = (f"{texts.say(VERDICTS[v])}: {counted[v]}" for v in VERDICTS if counted[v])
    yield Paragraph(texts.say("Of {count} lines: {verdicts}.", count=len(sheet.lines), verdicts=", ".join(told)))
    if sheet.missing:
        missing = "; ".join(_named(dossier, line) for line in sheet.missing)
        yield Paragraph(texts.say("Not to be handed over without: {lines}.", lines=missing), "caution")
    rows = []
    for line in sheet.remarks:
        if line.verdict != "to do":
            why = texts.say(LEFT[line.left.why]) if line.left is not None and line.verdict == "left" else ""
            why = (
                texts.say("within the instrument's error: a better one can tell")
                if line.verdict == "cannot tell"
                else why
            )
            words = line.left.text if line.left is not None else ""
            cells = (_named(dossier, line), _word(dossier, line), why, words)
            rows.append(Row(cells, _ROLES.get(line.verdict, "")))
    if rows:
        headers = (texts.say("Line"), texts.say("Stands"), texts.say("Why"), texts.say("Remark"))
        yield TableBlock(texts.say("Lines with a remark"), headers, tuple(rows), 1)


def _set(dossier: Dossier, sheet: Sheet) -> Iterator[Block]:
    texts, book = dossier.texts, dossier.book
    rows = []
    for line in sheet.lines:
        names = [e.adjustment for _, e in sheet.state.adjusted if e.adjustment in line.entry.adjust and not e.found]
        if names and line.before and line.reading is not None:
            titles = "; ".join(dossier.known(book.adjustments[n].title) for n in dict.fromkeys(names))
            read = [readings.reading_text(dossier, each) for each in (line.before[0], line.reading)]
            rows.append(Row((dossier.known(line.title), titles, *read)))
    if rows:
        headers = (texts.say("Line"), texts.say("What was set"), texts.say("Before"), texts.say("After"))
        yield TableBlock(texts.say("What was set"), headers, tuple(rows))
    mended = [r.cause for r in sheet.state.repairs if r.found != "sound"]
    if mended:
        yield Paragraph(texts.say("What was looked into and mended:"))
        yield Items(tuple(dossier.title(cause) for cause in mended))


def _lines(dossier: Dossier, sheet: Sheet) -> Iterator[Block]:
    texts = dossier.texts
    headers = (texts.say("Line"), texts.say("Wanted here, and whence"), texts.say("Read or seen"), texts.say("Stands"))
    for title, lines in sheet.sections:
        yield TableBlock(dossier.known(title), headers, tuple(_row(dossier, sheet, line) for line in lines), 3, True)


def _row(dossier: Dossier, sheet: Sheet, line: Line) -> Row:
    wanted, stands = sheet.wanted(line)
    whence = f"{wanted} ({stands})" if stands not in wanted else wanted
    read = readings.reading_text(dossier, line.reading) if line.reading is not None else "-"
    cells = (_named(dossier, line), dossier.measures.text(whence), read, _word(dossier, line))
    return Row(cells, _ROLES.get(line.verdict, ""))


def _named(dossier: Dossier, line: Line) -> str:
    return f"{line.number} {dossier.known(line.title)}"


def _word(dossier: Dossier, line: Line) -> str:
    return dossier.texts.say(VERDICTS[line.verdict])


def _chart(dossier: Dossier, sheet: Sheet) -> Iterator[Block]:
    """Every figure with a band, as found and as left."""
    texts, measures = dossier.texts, dossier.measures
    drawn, rows = [], []
    for line in sheet.lines:
        figure = expected(sheet.book, sheet.machine, sheet.state.readings, line.check.id, sheet.state.stage)
        reading = line.reading
        if figure is None or reading is None or not reading.values or line.check.id == readings.TRACE:
            continue
        if figure.low is None and figure.high is None:
            continue
        unit = next(iter(reading.values.values())).unit
        ends = [_end(dossier, end, reading.values) for end in (figure.low, figure.high)]
        first = line.before[0] if line.before else None
        sides = [measures.figures(list(r.values.values()), unit) if r is not None else () for r in (first, reading)]
        told = [measures.values(r.values) if r is not None else "" for r in (first, reading)]
        wanted = measures.span(figure.low, figure.high, texts)
        drawn.append(BandRow(dossier.known(line.title), wanted, ends[0], ends[1], sides[0], sides[1], *told))
        rows.append(Row((dossier.known(line.title), told[0] or "-", told[1], wanted)))
    if drawn:
        words = (texts.say("As found"), texts.say("As left"), texts.say("wanted:"))
        says = texts.say("Each reading on a line of its own scale; the band is what is wanted on this machine.")
        title = texts.say("Readings against their bands")
        headers = (texts.say("Line"), words[0], words[1], texts.say("Wanted here"))
        yield Figure(BandChart(title, says, tuple(drawn), *words), TableBlock(title, headers, tuple(rows)))


def _end(dossier: Dossier, end: Quantity | None, values: object) -> float | None:
    assert isinstance(values, dict)
    unit = next(iter(values.values())).unit
    return dossier.measures.figures([end], unit)[0] if end is not None else None


def _posted(dossier: Dossier, sheet: Sheet) -> Iterator[Block]:
    """For the wall beside the gauges: what each should read, and what it read on the day."""
    pairs = []
    for name in _POSTED:
        line = sheet.by_id.get(name)
        if line is not None and line.reading is not None:
            figure = expected(sheet.book, sheet.machine, sheet.state.readings, line.check.id, sheet.state.stage)
            span = dossier.measures.span(figure.low, figure.high, dossier.texts) if figure is not None else ""
            read = readings.reading_text(dossier, line.reading)
            told = dossier.texts.say("{wanted}; read {reading} on the day", wanted=span, reading=read)
            pairs.append((dossier.known(line.title), told))
    if pairs:
        yield Facts(tuple(pairs))


def _shown(sheet: Sheet) -> Iterator[Block]:
    pairs = [(line.title, "; ".join(line.notes)) for line in sheet.lines if line.notes]
    if pairs:
        yield Facts(tuple(pairs))


def _plate(dossier: Dossier) -> Iterator[Block]:
    machine = dossier.state.machine
    assert machine is not None
    read = {name: machine.plate(name) for name in machine.type.plate if not machine.assumed(name)}
    pairs = [
        (dossier.known(PLATE_FIGURES[name].ask), dossier.measures.values({"": figure}))
        for name, figure in read.items()
        if figure is not None
    ]
    if pairs:
        yield Facts(tuple(pairs))
