"""`diagnose rank`: read a case, rank its causes, print or hand over as JSON."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import msgspec

from diagnose.batch.output import Advised, FindingOut, Ranked, RankOut, Reason, to_json
from diagnose.job.assess import Assessment, assess
from diagnose.job.case import Case, case_state, read_case
from diagnose.model import Book
from diagnose.view import percent, wrap

__all__ = ["rank_answer", "rank_case", "schema_text"]

_EXPLAINED = 5  # rows of the ranking that carry their reasons
_SHOWN = 12


def schema_text(which: str) -> str:
    """JSON Schema of the case file ("case") or of the answer ("answer")."""
    schema: dict[str, Any] = msgspec.json.schema(Case if which == "case" else RankOut)
    schema["$schema"] = "https://json-schema.org/draft/2020-12/schema"
    return to_json(schema)


def rank_case(book: Book, path: Path, as_json: bool, width: int) -> list[str]:
    """The answer to a case file, as lines. Raises CaseError."""
    answer = rank_answer(assess(book, case_state(read_case(path), book)))
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
        conflicts=[c.says for c in assessment.conflicts],
        advice=[
            Advised(what=o.what, id=o.id, title=o.title, expected_minutes=round(o.minutes, 1))
            for o in assessment.options[:_EXPLAINED]
        ],
        assumed=[n for n in assessment.machine.type.plate if assessment.machine.assumed(n)],
    )


def _check_of(assessment: Assessment, reading: str) -> str:
    return next(r.check for r in assessment.state.readings if r.id == reading)
