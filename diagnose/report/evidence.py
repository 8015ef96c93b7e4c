"""Causes with the evidence for them in words, what was done about each, and how the ranking went."""

from __future__ import annotations

from collections.abc import Iterator

from diagnose.job import events as ev
from diagnose.job.assess import Assessment
from diagnose.job.assess import Row as Ranked
from diagnose.job.telling import Reason
from diagnose.report.charts import Course, CourseChart
from diagnose.report.course import Point
from diagnose.report.document import Block, Figure, Heading, Items, Paragraph, Row, Table
from diagnose.report.dossier import Dossier
from diagnose.report.draw_course import LETTERS
from diagnose.report.words import FOUND, FOUND_NO_FAULT, strength
from diagnose.view import percent

__all__ = ["cause_blocks", "course_blocks", "likely"]

_NO_WEIGHT = 0.05  # bits, as on the screen
_REASONS = 6
_LIKELY = 5
_LEAST = 0.02  # a cause less probable than this is not named among the likely ones
_COURSES = 4


def cause_blocks(dossier: Dossier) -> Iterator[Block]:
    """Each repair with its evidence; for a job that is not proved, the likely causes as they stand."""
    for nth, repair in enumerate(dossier.state.repairs):
        yield Heading(dossier.title(repair.cause), 3)
        yield from _repair(dossier, nth)
    for node in dict.fromkeys(dossier.state.ruled_out):
        yield Paragraph(dossier.texts.say("Ruled out by the technician: {cause}.", cause=_ruled_out(dossier, node)))
    if dossier.state.present:
        yield from _standing(dossier)


def _ruled_out(dossier: Dossier, node: str) -> str:
    rows = dossier.assessment.rows if dossier.assessment is not None else ()
    title = dossier.title(node)
    return next((_named(dossier, row) for row in rows if row.id == node), title)


def _repair(dossier: Dossier, nth: int) -> Iterator[Block]:
    texts, repair = dossier.texts, dossier.state.repairs[nth]
    cause = dossier.book.causes.get(repair.cause)
    found = FOUND_NO_FAULT if cause is not None and cause.no_fault else FOUND
    yield Paragraph(texts.say("Result: {found}.", found=texts.say(found[repair.found])))
    before = dossier.before_repair(nth)
    row = next((r for r in before.rows if r.id == repair.cause), None) if before is not None else None
    if before is not None and row is not None:
        share = percent(row.probability).strip()
        yield Paragraph(texts.say("Before the work it was believed at {percent}, by this evidence:", percent=share))
        yield Items(_reasons(dossier, before, repair.cause))
    if cause is not None and repair.found != "sound":
        yield Paragraph(texts.say("How it comes about: {why}", why=dossier.known(cause.why)))


def _reasons(dossier: Dossier, assessment: Assessment, cause: str) -> tuple[str, ...]:
    # That it is complained of is the same for every cause, and stands above.
    book = dossier.book
    complaints = {f"Complaint: {book.title(c)}" for c, _, _ in dossier.state.complaints if c in book.complaints}
    told = [r for r in assessment.reasons(cause) if r.sole or abs(r.bits) >= _NO_WEIGHT]
    told = [r for r in told if r.says not in complaints]
    told.sort(key=lambda r: (r.bits < 0, not r.sole, -abs(r.bits)))
    if not told:
        return (dossier.texts.say("nothing measured: only how often it happens"),)
    return tuple(_reason(dossier, reason) for reason in told[:_REASONS])


def _reason(dossier: Dossier, reason: Reason) -> str:
    says = dossier.measures.text(reason.says)
    return dossier.texts.say(
        "{evidence} ({strength})", evidence=says, strength=strength(reason.bits, reason.sole, dossier.texts)
    )


def likely(dossier: Dossier, most: int = _LIKELY) -> list[Ranked]:
    """The causes that lead as the job stands."""
    rows = dossier.assessment.rows if dossier.assessment is not None else ()
    return [row for row in rows if row.probability >= _LEAST][:most]


def _named(dossier: Dossier, row: Ranked) -> str:
    return dossier.title(row.id) if row.id in dossier.book.causes else dossier.texts.say("something not listed here")


def _standing(dossier: Dossier) -> Iterator[Block]:
    texts, assessment = dossier.texts, dossier.assessment
    rows = likely(dossier)
    if assessment is None or not rows:
        return
    yield Heading(texts.say("Likely causes as it stands"), 3)
    headers = (texts.say("Cause"), texts.say("Probability"), texts.say("Strongest evidence"))
    told = []
    for row in rows:
        reasons = _reasons(dossier, assessment, row.id)
        told.append(Row((_named(dossier, row), percent(row.probability).strip(), reasons[0])))
    yield Table(texts.say("Causes, the most probable first"), headers, tuple(told))
    if not dossier.closed:
        steps = [
            dossier.title(o.id) if o.what != "help" else texts.say("call for help") for o in assessment.options[:3]
        ]
        if steps:
            yield Paragraph(texts.say("Best next steps: {steps}.", steps="; ".join(steps)))


def course_blocks(dossier: Dossier) -> Iterator[Block]:
    """The posterior of the leading causes after each answer, drawn where there are three points at least."""
    points = dossier.points
    leading = _leading(dossier, points)
    if len(points) < 3 or not leading:
        return
    texts = dossier.texts
    courses = tuple(Course(title, tuple(_share(p, node) for p in points)) for node, title in leading.items())
    repairs = tuple(n for n, point in enumerate(points) if point.repair)
    description = texts.say("How probable the leading causes were after each answer, in percent.")
    chart = CourseChart(
        texts.say("Leading causes over the course of the job"),
        description,
        courses,
        repairs,
        texts.say("repair"),
        texts.say("answers in their order; the table names them"),
    )
    letters = LETTERS[: len(courses)]
    key = "; ".join(f"{letter}: {course.label}" for letter, course in zip(letters, courses, strict=True))
    headers = (texts.say("No."), texts.say("After"), *letters)
    rows = tuple(
        Row((str(n + 1), _after(dossier, point), *(percent(c.values[n]).strip() for c in courses)))
        for n, point in enumerate(points)
    )
    yield Figure(chart, Table(texts.say("The course in figures. {key}", key=key), headers, rows))


def _leading(dossier: Dossier, points: tuple[Point, ...]) -> dict[str, str]:
    """The causes repaired, then those that were most probable at any point: id and title."""
    best: dict[str, tuple[float, str]] = {}
    for point in points:
        for row in point.assessment.rows[: 2 * _COURSES]:
            if row.probability > best.get(row.id, (0.0, ""))[0]:
                best[row.id] = (row.probability, _named(dossier, row))
    repaired = [r.cause for r in dossier.state.repairs if r.cause in best]
    ranked = sorted(best, key=lambda node: (node not in repaired, -best[node][0], node))
    return {node: best[node][1] for node in ranked[:_COURSES] if best[node][0] >= 0.05 or node in repaired}


def _share(point: Point, node: str) -> float:
    return next((row.probability for row in point.assessment.rows if row.id == node), 0.0)


def _after(dossier: Dossier, point: Point) -> str:
    texts = dossier.texts
    match point.event:
        case ev.ReadingTaken(check):
            return dossier.title(check)
        case ev.Repaired(cause):
            return texts.say("Repair: {cause}", cause=dossier.title(cause))
        case ev.RuledOut(node):
            return texts.say("Ruled out: {cause}", cause=dossier.title(node))
        case ev.ComplaintSaid(complaint):
            return texts.say("Complaint: {complaint}", complaint=dossier.title(complaint))
    return texts.say("What the kitchen told")
