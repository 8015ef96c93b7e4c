"""Instruments of one's own: their accuracy, when they were calibrated, and what is made of it when that is long ago."""

from __future__ import annotations

import os
import re
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import replace
from datetime import date
from difflib import get_close_matches
from pathlib import Path

import msgspec

from diagnose.job.events import ReadingTaken
from diagnose.model import Check, Instrument, InstrumentKind
from diagnose.model.instruments import kind_of, parse_accuracy
from diagnose.units import UnitError

__all__ = [
    "InstrumentError",
    "OwnInstrument",
    "add_instrument",
    "check_instrument",
    "day_of",
    "find_kind",
    "fitting",
    "in_use",
    "list_instruments",
    "overdue_since",
    "read_with",
    "remove_instrument",
    "usual",
]

INTERVAL = 12  # months between calibrations, common practice
# Judgement: past its interval an instrument is taken to be off by twice its accuracy, by half of it more for
# every further year, and never by more than four times of it; one never calibrated likewise by twice.
OVERDUE, A_YEAR, MOST = 2.0, 0.5, 4.0
_NAME = re.compile(r"[^\W_][\w .-]{0,39}")
_DATE = re.compile(r"(\d{4})-(\d{2})(?:-(\d{2}))?")


class InstrumentError(ValueError):
    """An instrument can't be kept or read; the message gives the remedy."""


class OwnInstrument(msgspec.Struct, frozen=True, forbid_unknown_fields=True, kw_only=True):
    """What is kept of one instrument."""

    name: str
    kind: str  # id of a kind in the knowledge
    accuracy: str  # as its data sheet says, like "1 °F" or "2 % + 0.1 ohm"
    calibrated: str = ""  # year-month-day or year-month; empty: never
    interval: int = INTERVAL  # months


def check_instrument(own: OwnInstrument, kinds: Mapping[str, InstrumentKind]) -> OwnInstrument:
    """The instrument with its kind by id and its accuracy as it is read. Raises InstrumentError."""
    if not _NAME.fullmatch(own.name):
        raise InstrumentError(
            f"{own.name[:40]!r} won't do as a name; use up to 40 letters, digits, blanks, dots or dashes"
        )
    kind = find_kind(own.kind, kinds)
    try:
        absolute, share = parse_accuracy(own.accuracy, kind.quantity)
    except UnitError as error:
        raise InstrumentError(f"accuracy of a {kind.title}: {error}") from None
    if own.calibrated:
        day_of(own.calibrated)
    if not 1 <= own.interval <= 120:
        raise InstrumentError(f"an interval of {own.interval} months can't be; give 1 to 120, 12 is usual")
    text = Instrument(kind.title, kind.quantity, absolute, share).text
    return msgspec.structs.replace(own, kind=kind.id, accuracy=text)


def find_kind(said: str, kinds: Mapping[str, InstrumentKind]) -> InstrumentKind:
    """The kind of that id or title. Raises InstrumentError that offers the nearest."""
    names = {**{k.title.casefold(): k for k in kinds.values()}, **kinds}
    found = names.get(said) or names.get(said.casefold())
    if found is None:
        close = get_close_matches(said.casefold(), list(names), 1)
        hint = f"did you mean {close[0]!r}?" if close else "`diagnose knowledge list instruments` lists them"
        raise InstrumentError(f"{said[:40]!r} is no kind of instrument; {hint}")
    return found


def overdue_since(own: OwnInstrument, today: date) -> str | None:
    """The month from which its calibration is overdue ("" = it never had one); None while it stands."""
    if not own.calibrated:
        return ""
    due = _months_on(day_of(own.calibrated), own.interval)
    return f"{due.year}-{due.month:02}" if due <= today else None


def in_use(own: OwnInstrument, kinds: Mapping[str, InstrumentKind], today: date) -> Instrument:
    """The instrument as a reading of today is judged: wider when its calibration is overdue, and why."""
    kind = find_kind(own.kind, kinds)
    absolute, share = parse_accuracy(own.accuracy, kind.quantity)
    made = Instrument(kind.title, kind.quantity, absolute, share, kind.basis, own.name)
    since = overdue_since(own, today)
    if since is None:
        return made
    factor = OVERDUE
    if since:
        years = (today - _months_on(day_of(own.calibrated), own.interval)).days / 365.25
        factor = min(MOST, OVERDUE + A_YEAR * int(years))
    wide = made.widened(factor)
    why = f"calibration overdue since {since}" if since else "never calibrated"
    return replace(wide, note=f"± {made.text}, {why}: taken as ± {wide.text}")


def read_with(taken: ReadingTaken, instrument: Instrument | None) -> ReadingTaken:
    """The event of a reading with all that replaying it needs of the instrument; None: as the check says."""
    if instrument is None or not taken.values:
        return taken
    return msgspec.structs.replace(
        taken,
        instrument=instrument.name,
        of_kind=instrument.kind,
        accuracy=instrument.text,
        taken_as=instrument.note,
    )


def fitting(
    check: Check, own: Sequence[OwnInstrument], kinds: Mapping[str, InstrumentKind]
) -> tuple[OwnInstrument, ...]:
    """Those that read the quantity of a check; of a kind this knowledge lacks they are passed over."""
    wanted = check.reading.quantity if check.reading else ""
    return tuple(o for o in own if o.kind in kinds and kinds[o.kind].quantity == wanted)


def usual(
    check: Check, own: Sequence[OwnInstrument], kinds: Mapping[str, InstrumentKind], today: date
) -> OwnInstrument | None:
    """The one taken for a check when nothing is said: of the kind it asks for, one whose calibration stands first."""
    wanted = kind_of(kinds.values(), check).kind
    same = [o for o in fitting(check, own, kinds) if kinds[o.kind].title == wanted]
    return min(same, key=lambda o: overdue_since(o, today) is not None, default=None)


def list_instruments(path: Path) -> tuple[OwnInstrument, ...]:
    """All of one's own, in the order added. Raises InstrumentError when the file can't be read."""
    if not path.exists():
        return ()
    try:
        return msgspec.json.decode(path.read_bytes(), type=tuple[OwnInstrument, ...])
    except (OSError, msgspec.MsgspecError) as error:
        raise InstrumentError(f"{path} can't be read ({error}); mend or delete it") from None


def add_instrument(path: Path, own: OwnInstrument, kinds: Mapping[str, InstrumentKind]) -> bool:
    """Keep an instrument; True when it takes the place of one of the same name. Raises InstrumentError."""
    checked = check_instrument(own, kinds)
    kept = list_instruments(path)
    rest = [o for o in kept if o.name.casefold() != checked.name.casefold()]
    _write(path, [*rest, checked])
    return len(rest) < len(kept)


def remove_instrument(path: Path, name: str) -> OwnInstrument:
    """Drop the instrument of that name, whatever its case. Raises InstrumentError when there is none."""
    kept = list_instruments(path)
    found = next((o for o in kept if o.name.casefold() == name.strip().casefold()), None)
    if found is None:
        names = ", ".join(o.name for o in kept) or "none yet"
        raise InstrumentError(f"no instrument {name[:40]!r} is kept; kept are: {names}")
    _write(path, [o for o in kept if o is not found])
    return found


def _write(path: Path, instruments: Iterable[OwnInstrument]) -> None:
    path.parent.mkdir(parents=True, exist_ok=True, mode=0o700)
    fresh = path.with_suffix(".new")
    with open(os.open(fresh, os.O_CREAT | os.O_WRONLY | os.O_TRUNC, 0o600), "wb") as file:
        file.write(msgspec.json.format(msgspec.json.encode(tuple(instruments)), indent=2) + b"\n")
        file.flush()
        os.fsync(file.fileno())
    fresh.replace(path)


def day_of(text: str) -> date:
    """A date as typed; of a month alone its first day. Raises InstrumentError."""
    match = _DATE.fullmatch(text.strip())
    try:
        if match is None:
            raise ValueError
        return date(int(match[1]), int(match[2]), int(match[3] or 1))
    except ValueError:
        raise InstrumentError(f"{text[:40]!r} is no date; write it like 2026-03-14 or 2026-03") from None


def _months_on(day: date, months: int) -> date:
    """The first of the month after so many months: a calibration stands to the end of its last month."""
    month = day.month + months
    return date(day.year + month // 12, month % 12 + 1, 1)
