"""What was read and seen: each reading with what it means; figures before and after the repair beside their limits."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from diagnose.model import Check, Reading
from diagnose.report.charts import BandChart, BandRow, TraceChart
from diagnose.report.document import Block, Figure, Paragraph, Role, Row, Table
from diagnose.report.dossier import Dossier
from diagnose.report.plate import TRACE, trace_table
from diagnose.rules import Expected
from diagnose.units import Quantity, parse_quantity
from diagnose.view.layout import labelled

__all__ = ["TRACE", "band_blocks", "finding_blocks", "finding_table", "judged", "reading_text", "trace_blocks"]

_SURE = (
    0.8  # below this share of its weight on one outcome a reading is near a limit, and said to be in doubt: judgement
)


def reading_text(dossier: Dossier, reading: Reading) -> str:
    """A reading as it was given, and with which instrument where it was one's own."""
    check = dossier.book.checks[reading.check]
    if reading.outcome is not None:
        return dossier.known(check.outcomes[reading.outcome].title)
    shown = dossier.measures.values(reading.values)
    if reading.instrument:
        return dossier.texts.say("{reading} with {instrument}", reading=shown, instrument=reading.instrument)
    return shown


def judged(dossier: Dossier, reading: Reading) -> tuple[Role, str]:
    """How a reading stands: its role, and the word that says the same."""
    texts, finding = dossier.texts, dossier.findings.get(reading.id)
    if finding is None and reading.outcome is not None:
        good = dossier.book.checks[reading.check].outcomes[reading.outcome].good
        return ("good", texts.say("good")) if good else ("bad", texts.say("not as wanted"))
    if finding is None:
        return "", texts.say("not judged")
    if max(finding.weights.values()) < _SURE:
        return "doubt", texts.say("in doubt")
    if dossier.book.checks[finding.check].outcomes[finding.outcome].good:
        return "good", texts.say("good")
    return "bad", texts.say("not as wanted")


def finding_table(dossier: Dossier) -> Iterator[Block]:
    """Every reading in the order taken, with what it means; nothing where there is none."""
    texts = dossier.texts
    rows = [_finding_row(dossier, reading) for reading in dossier.readings]
    if rows:
        headers = (texts.say("Check"), texts.say("Read or seen"), texts.say("Stands"), texts.say("What it means"))
        yield Table(texts.say("Readings and observations in the order taken"), headers, tuple(rows), 2)


def finding_blocks(dossier: Dossier) -> Iterator[Block]:
    """Every reading, then what can't well be right together, and what could not be used."""
    texts = dossier.texts
    yield from finding_table(dossier)
    for sentence in dossier.assessment.conflicts if dossier.assessment is not None and not dossier.closed else ():
        yield Paragraph(dossier.measures.text(sentence), "caution")
    for unread in dossier.state.unread:
        yield Paragraph(texts.say("This reading could not be used: {reading}", reading=unread), "note")


def _finding_row(dossier: Dossier, reading: Reading) -> Row:
    check = dossier.book.checks[reading.check]
    role, word = judged(dossier, reading)
    title = dossier.known(check.title)
    if reading.stage and dossier.state.stage > 1:
        title = dossier.texts.say("{check} (after repair {number})", check=title, number=reading.stage)
    elif reading.stage:
        title = dossier.texts.say("{check} (after the repair)", check=title)
    return Row((title, reading_text(dossier, reading), word, _means(dossier, check, reading)), role)


def _means(dossier: Dossier, check: Check, reading: Reading) -> str:
    finding = dossier.findings.get(reading.id)
    if finding is None:
        return ""
    if (
        reading.outcome is not None
        and finding.says == f"{labelled(check.title, check.outcomes[reading.outcome].title)}."
    ):
        return ""  # it would only be said again
    if finding.says:
        return dossier.measures.text(finding.says)
    other = dossier.book.checks[finding.check]
    title = dossier.known(other.outcomes[finding.outcome].title)
    return "" if finding.check == check.id and reading.outcome == finding.outcome else title


def band_blocks(dossier: Dossier) -> Iterator[Block]:
    """The figures before and after the repair, side by side, with what is wanted here and where that stands."""
    texts = dossier.texts
    sides = _sides(dossier)
    rows, drawn = [], []
    for name, (before, after) in sides.items():
        expected = dossier.expected(name)
        row, band = _band(dossier, dossier.book.checks[name], before, after, expected)
        rows.append(row)
        drawn += [band] if band is not None else []
    if not rows:
        return
    repaired = bool(dossier.state.stage)
    first, second = (texts.say("Before"), texts.say("After")) if repaired else (texts.say("Read"), texts.say("After"))
    headers = [texts.say("Check"), first, second, texts.say("Stands now"), texts.say("Wanted here")]
    headers.append(texts.say("Where that figure stands"))
    caption = texts.say("Readings before and after the repair") if repaired else texts.say("Readings so far")
    shown = [(each.cells if repaired else (*each.cells[:2], *each.cells[3:]), each.role) for each in rows]
    heads = headers if repaired else [*headers[:2], *headers[3:]]
    table = Table(caption, tuple(heads), tuple(Row(cells, role) for cells, role in shown), 3 if repaired else 2)
    if not drawn:
        yield table
        return
    description = texts.say("Each reading on a line of its own scale; the band is what is wanted on this machine.")
    chart = BandChart(
        texts.say("Readings against their bands"), description, tuple(drawn), first, second, texts.say("wanted:")
    )
    yield Figure(chart, table, folded=False)


def _sides(dossier: Dossier) -> Mapping[str, tuple[Reading | None, Reading | None]]:
    """For each measured check its newest reading, and beside it the newest of before the repair that came between."""
    taken: dict[str, list[Reading]] = {}
    for reading in dossier.readings:
        if reading.values and reading.check != TRACE:
            taken.setdefault(reading.check, []).append(reading)
    sides: dict[str, tuple[Reading | None, Reading | None]] = {}
    for check, readings in taken.items():
        newest = readings[-1]
        earlier = [r for r in readings if r.stage < newest.stage]
        if earlier:
            sides[check] = (earlier[-1], newest)
        else:
            last = newest.stage == dossier.state.stage > 0
            sides[check] = (None, newest) if last else (newest, None)
    return sides


def _band(
    dossier: Dossier, check: Check, before: Reading | None, after: Reading | None, expected: Expected | None
) -> tuple[Row, BandRow | None]:
    measures, texts = dossier.measures, dossier.texts
    now = after or before
    assert now is not None
    role, word = _now(dossier, before, after)
    told = [measures.values(r.values) if r is not None else "" for r in (before, after)]
    wanted, stands = _wanted(dossier, expected)
    row = Row((dossier.known(check.title), told[0] or "-", told[1] or "-", word, wanted or "-", stands or "-"), role)
    if expected is None or (expected.low is None and expected.high is None):
        return row, None
    unit = next(iter(now.values.values())).unit
    ends = [measures.figures([e], unit)[0] if e is not None else None for e in (expected.low, expected.high)]
    sides = [measures.figures(list(r.values.values()), unit) if r is not None else () for r in (before, after)]
    where = texts.say("{check} (after)", check=row.cells[0]) if before is None else row.cells[0]
    return row, BandRow(where, wanted, ends[0], ends[1], sides[0], sides[1], told[0], told[1])


def _now(dossier: Dossier, before: Reading | None, after: Reading | None) -> tuple[Role, str]:
    """How it stands now; what was wrong before the repair and not read again is open."""
    now = after or before
    assert now is not None
    role, word = judged(dossier, now)
    if now.stage < dossier.state.stage and role in ("bad", "doubt"):
        return "doubt", dossier.texts.say("not read again")
    return role, word


def _wanted(dossier: Dossier, expected: Expected | None) -> tuple[str, str]:
    """What is wanted, in figures, and where they stand."""
    texts, measures = dossier.texts, dossier.measures
    if expected is None:
        return "", ""
    span = measures.span(expected.low, expected.high, texts)
    stands = expected.basis or texts.say("as the check states it")
    if not span:
        line = expected.lines[0] if expected.lines else ""
        span = measures.text(line.removesuffix(f" ({expected.basis})"))
    if expected.assumptions and "assumed" not in stands:
        stands = texts.say("{basis}; type's figures, assumed", basis=stands)
    return span, measures.text(stands)


def trace_blocks(dossier: Dossier) -> Iterator[Block]:
    """The newest trace of a plate's temperature, with its heat units."""
    taken = [r for r in dossier.readings if r.check == TRACE and r.values]
    if not taken:
        return
    texts, measures = dossier.texts, dossier.measures
    values = list(taken[-1].values.values())
    figures = measures.figures(values)
    unit = measures.one(values[0]).unit
    levels = [
        (parse_quantity("160 °F", "temperature"), texts.say("a label turns")),
        (parse_quantity("143 °F", "temperature"), texts.say("no credit under this")),
    ]
    drawn = []
    for level, said in levels:
        here = level.as_unit(unit)
        drawn.append((round(here.value, 6), str(_whole(here)), f"{measures.show(level)}: {said}"))
    table, sentence = trace_table(dossier, taken[-1])
    chart = TraceChart(
        texts.say("Temperature of a plate, second by second"),
        sentence,
        figures,
        unit.symbol,
        tuple(drawn),
        texts.say("seconds"),
    )
    yield Paragraph(sentence)
    yield Figure(chart, table)


def _whole(quantity: Quantity) -> Quantity:
    return Quantity(round(quantity.value), quantity.unit)
