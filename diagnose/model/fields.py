"""The fields of every kind of entry, read from the records themselves: name, kind of value, need, meaning."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from types import NoneType, UnionType
from typing import Annotated, Any, Literal, Union, get_args, get_origin, get_type_hints

import msgspec

from diagnose.model import entities as e
from diagnose.model import record as r
from diagnose.model import sheet as h
from diagnose.model import supporting as s
from diagnose.model.machine import TRAITS

__all__ = ["RECORDS", "Field", "field_tables", "fields_of"]

# As the tables of fields are headed.
RECORDS: Mapping[str, type[msgspec.Struct]] = {
    "Basis": r.Basis,
    "Complaint": e.Complaint,
    "Meanwhile": e.Meanwhile,
    "Event": e.Event,
    "Cause": e.Cause,
    "Shift": e.Shift,
    "Check": e.Check,
    "Reading": e.ReadingSpec,
    "Outcome": e.Outcome,
    "Line of the sheet": h.SheetLine,
    "Adjustment": h.Adjustment,
    "Limit": s.Limit,
    "Instrument": s.InstrumentKind,
    "Source": s.Source,
    "Caution": s.Caution,
    "Stop": s.StopCondition,
    "Context question": s.ContextQuestion,
    "Question for the type": s.TellApart,
    "Type answer": s.TypeAnswer,
    "Machine": s.MachineType,
    "Access, state, help, visit": s.Effort,
    "Stock": s.Stock,
}
_PLAIN = {str: "text", float: "number", int: "whole number", bool: "true or false"}
_LONG = 4  # a choice of more words than these is named, not written out, in a list


@dataclass(frozen=True)
class Field:
    """One field of a kind of entry.

    `choices` are the only values it takes, where there are such; `default` stands when it is left out
    (msgspec.NODEFAULT where it must not be), and `left_out` says what that means.
    """

    name: str
    kind: str
    means: str
    needed: bool
    default: Any
    left_out: str
    choices: tuple[str, ...] = ()
    many: bool = False  # a list

    @property
    def need(self) -> str:
        """`yes`, or `no` with what holds if it is left out; a field needed with another says with which."""
        if self.needed:
            return "yes"
        if self.left_out.startswith("with "):
            return self.left_out
        return f"no: {self.left_out}" if self.left_out else "no"


def fields_of(record: type[msgspec.Struct]) -> tuple[Field, ...]:
    """The fields in the order in which an entry is written."""
    hints = get_type_hints(record, include_extras=True)
    return tuple(
        _field(info.name, hints[info.name], info.default, info.default_factory)
        for info in msgspec.structs.fields(record)
    )


def _field(name: str, hint: Any, default: Any, factory: Any) -> Field:
    bare, meta = hint, msgspec.Meta()
    if get_origin(hint) is Annotated:
        bare, meta = get_args(hint)
    if factory is not msgspec.NODEFAULT:
        default = factory()
    extra = meta.extra or {}
    inner = _without_none(bare)
    choices = _choices(inner)
    return Field(
        name,
        extra.get("kind") or _kind(inner),
        meta.description or "",
        default is msgspec.NODEFAULT,
        default,
        extra.get("left out") or _said(default),
        choices,
        get_origin(inner) is list,
    )


def _without_none(hint: Any) -> Any:
    if get_origin(hint) in (Union, UnionType):
        left = [each for each in get_args(hint) if each is not NoneType]
        return left[0] if len(left) == 1 else hint
    return hint


def _choices(hint: Any) -> tuple[str, ...]:
    inner = get_args(hint)[0] if get_origin(hint) is list else hint
    return tuple(str(c) for c in get_args(inner)) if get_origin(inner) is Literal else ()


def _kind(hint: Any) -> str:
    if hint in _PLAIN:
        return _PLAIN[hint]
    if get_origin(hint) is Literal:
        return ", ".join(f"`{c}`" for c in get_args(hint))
    if get_origin(hint) is list:
        inner = get_args(hint)[0]
        return (
            f"list of {_kind(inner)}" if not isinstance(inner, type) or inner in _PLAIN else f"list of {_named(inner)}"
        )
    if get_origin(hint) is dict:
        return "table"
    return _named(hint)


def _named(hint: Any) -> str:
    return next((name.lower() for name, record in RECORDS.items() if record is hint), str(hint))


def _said(default: Any) -> str:
    if default is msgspec.NODEFAULT or default is None:
        return ""
    if default is False:
        return "false"
    if default in ([], {}, ""):
        return "none"
    return f"`{default}`" if isinstance(default, str) else f"{default:g}"


def field_tables() -> str:
    """All tables of fields as Markdown, each with its sentence; then the traits of machines."""
    parts = []
    for name, record in RECORDS.items():
        sentence = (record.__doc__ or "").partition("\n")[0]
        rows = [(f"`{f.name}`", f.kind, f.need, f.means) for f in fields_of(record)]
        parts.append(_table(name, sentence, ("field", "type", "needed", "meaning"), rows))
    traits = [(f"`{name}`", ", ".join(_value(v) for v in values)) for name, values in TRAITS.items()]
    parts.append(_table("Traits", "What `fits` may ask of a machine.", ("trait", "values"), traits))
    return "\n\n".join(parts) + "\n"


def _table(name: str, sentence: str, headers: Sequence[str], rows: Sequence[Sequence[str]]) -> str:
    lines = [f"| {' | '.join(row)} |" for row in (headers, ["---"] * len(headers), *rows)]
    return "\n".join([f"### {name}", "", sentence, "", *lines])


def _value(value: str | int | bool) -> str:
    return f"`{str(value).lower()}`" if isinstance(value, bool) else f"`{value}`"
