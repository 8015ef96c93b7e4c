"""Rubbish between the answers changes nothing: each line is understood or refused, and what is written is whole."""

from __future__ import annotations

import tempfile
from pathlib import Path

import msgspec
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from diagnose.model import load_book
from diagnose.terminal.matcher import find
from diagnose.writing.folder import CantWriteError
from diagnose.writing.new import New
from diagnose.writing.talk import EndOfInputError, Talk
from tests.e2e.test_rubbish import RUBBISH
from tests.small_knowledge import write_small
from tests.unit.writing.test_new import CAUSE, CHECK, COMPLAINT, EVENT

ANSWERS = {"cause": CAUSE, "check": CHECK, "complaint": COMPLAINT, "event": EVENT}


@settings(max_examples=60, deadline=None, suppress_health_check=[HealthCheck.too_slow])
@given(st.sampled_from(sorted(ANSWERS)), st.data())
def test_every_line_is_understood_or_refused(kind: str, data: st.DataObject) -> None:
    lines = ANSWERS[kind].splitlines()
    for _ in range(data.draw(st.integers(1, 6))):
        lines.insert(data.draw(st.integers(0, len(lines))), " ".join(data.draw(RUBBISH).split("\n")))
    with tempfile.TemporaryDirectory() as folder:
        home = Path(folder)
        ours, own = write_small(home / "ours"), home / "own"
        told: list[str] = []
        talk = Talk(lambda prompt: lines.pop(0) if lines else None, told.extend, 60)
        new = New(kind, [ours], own, home / "drafts", talk, lambda w, t: [m.id for m in find(w, t)])
        try:
            written = new.run()
        except EndOfInputError:
            written = False
        except CantWriteError as error:
            raise AssertionError(str(error)) from error
        if written:
            book = load_book(ours, own)
            entries = {**book.causes, **book.checks, **book.complaints, **book.events}
            mine = [entry for name, entry in entries.items() if book.places[name].shop]
            assert mine
            assert all(msgspec.to_builtins(entry) for entry in mine)
            assert not (home / "drafts" / f"{kind}.json").exists()
        else:
            assert not own.exists()
