"""What all records of the knowledge share: strict reading, a note of what each field means, and the basis."""

from __future__ import annotations

from typing import Annotated, Literal

import msgspec

__all__ = ["BASIS", "CAUTIONS", "FITS", "ID", "Access", "Basis", "State", "Traits", "Who", "said"]

Access = Literal[
    "none", "front panel", "control box", "booster cover", "pump guard", "drive guard", "vent duct", "tank drained"
]
State = Literal["running", "idle hot", "isolated", "cold and drained"]
Who = Literal["operator", "technician", "licensed electrician", "licensed gas fitter", "licensed plumber"]
Traits = dict[str, list[str | int | bool]]


def said(means: str, kind: str = "", left_out: str = "") -> msgspec.Meta:
    """What a field means, what kind of value it takes where the type doesn't say, what holds when it is left out."""
    return msgspec.Meta(description=means, extra={"kind": kind, "left out": left_out})


class Basis(msgspec.Struct, forbid_unknown_fields=True, frozen=True, kw_only=True):
    """Where a statement or figure stands: in every entry as `basis = { ... }`."""

    kind: Annotated[
        Literal["published", "common practice", "memory", "judgement", "learnt"],
        said("on what ground the entry stands"),
    ]
    source: Annotated[str | None, said("the document", "id in `sources.toml`", "with `published` only")] = None
    where: Annotated[str | None, said("section, table or page", "", "with `published` only")] = None
    note: Annotated[str | None, said("what the basis covers, and what it does not")] = None


ID = said("in an assembly's file without the assembly's name; never changed once jobs have used it", "id")
BASIS = said("where the entry stands", "basis")
FITS = said("the machines it belongs to, by traits", "traits", "every machine")
CAUTIONS = said("shown before the first step", "list of cautions, may be empty")
