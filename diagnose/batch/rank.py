"""`diagnose rank`: read a case, rank its causes, print or hand over as JSON."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import msgspec

from diagnose.batch.output import Advised, FindingOut, Ranked, RankOut, Reason, to_json
from diagnose.job.assess import Assessment, assess
from diagnose.job.case import Case, case_state, read_case
from diagnose.job.instruments import list_instruments
from diagnose.model import Book
from diagnose.view import percent, wrap
from diagnose.view.words import NO_FAULT

__all__ = ["rank_answer", "rank_case", "schema_text"]

_EXPLAINED = 5  # rows of the ranking that carry their reasons
_SHOWN = 12
_DECIDES = 99.0  # bits


def schema_text(which: str) -> str:
    """JSON Schema of the case file ("case") or of the answer ("answer")."""
    schema: dict[str, Any] = msgspec.json.schema(Case if which == "case" else RankOut)
    schema["$schema"] = "https://json-schema.org/draft/2020-12/schema"
    return to_json(schema)


def rank_case(book: Book, path: Path, as_json: bool, width: int, instruments: Path | None = None) -> list[str]:
    """The answer to a case file, as lines; `instruments` are one's own, for a case that names none.

    Raises CaseError and InstrumentError.
    """
    own = list_instruments(instruments) if instruments else ()
    answer = rank_answer(assess(book, case_state(read_case(path), book, own)))
    return [to_json(answer)] if as_json else _lines(answer, width)


def rank_answer(assessment: Assessment) -> RankOut:
    """An assessment as the record that is printed for machines."""
    rows = [
        Ranked(
            id=row.id,
            title=row.title,
            probability=round(row.probability, 6),
            kind=row.kind,
            reasons=_reasons(assessment, row.id) if nth < _EXPLAINED else [],
        )
        for nth, row in enumerate(assessment.rows)
    ]
    return RankOut(
        machine=assessment.machine.type.id,
        complaints=list(assessment.state.present),
        ranking=rows,
        findings=[
            FindingOut(
                check=f.check,
                rule=f.rule,
                outcome=f.outcome,
                weights={o: round(w, 6) for o, w in f.weights.items()},
                says=f.says,
                working=list(f.working),
                counts=[_check_of(assessment, r) for r in f.counts],
                consults=[_check_of(assessment, r) for r in f.consults],
            )
            for f in assessment.findings
        ],
        conflicts=list(assessment.conflicts),
        advice=[
            Advised(what=o.what, id=o.id, title=o.title, expected_minutes=round(o.minutes, 1))
            for o in assessment.options[:_EXPLAINED]
        ],
        assumed=[n for n in assessment.machine.type.plate if assessment.machine.assumed(n)],
    )


def _check_of(assessment: Assessment, reading: str) -> str:
    return next(r.check for r in assessment.state.readings if r.id == reading)


def _reasons(assessment: Assessment, cause: str) -> list[Reason]:
    # JSON knows no infinity; a reason that alone decides is capped, far above any other.
    return [
        Reason(says=r.says, bits=round(max(-_DECIDES, min(_DECIDES, r.bits)), 2)) for r in assessment.reasons(cause)
    ]


def _lines(answer: RankOut, width: int) -> list[str]:
    lines: list[str] = []
    for finding in answer.findings:
        lines += wrap(finding.says or f"{finding.check}: {finding.outcome}", width)
        lines += [str(line) for text in finding.working for line in wrap(text, width, "  ")]
    lines += [str(line) for text in answer.conflicts for line in wrap(text, width, "Conflict: ", "  ")]
    lines += ["", "Ranking"] if lines else ["Ranking"]
    for row in answer.ranking[:_SHOWN]:
        note = f" ({NO_FAULT.casefold()})" if row.kind == "no fault" else ""
        lines += wrap(row.title + note, width, f"{percent(row.probability)}  ", "       ")
        lines += wrap(row.id, width, "       ")
    rest = answer.ranking[_SHOWN:]
    if rest:
        more = sum(row.probability for row in rest)
        lines += wrap(f"any of {len(rest)} more", width, f"{percent(min(more, 1.0))}  ")
    lines += ["", "Next"]
    for advised in answer.advice:
        lines += wrap(
            f"{advised.what}: {advised.title} (about {advised.expected_minutes:.0f} minutes to a verified repair)",
            width,
            "  ",
            "    ",
        )
    return [str(line) for line in lines]
