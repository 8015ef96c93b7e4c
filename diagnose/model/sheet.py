"""What a handover is made of: the lines of its sheet, and what can be set where one fails."""

from __future__ import annotations

from typing import Annotated, Literal

import msgspec

from diagnose.model.record import BASIS, CAUTIONS, FITS, ID, Access, Basis, State, Traits, Who, said

__all__ = ["Adjustment", "SheetLine", "Working"]

Working = Literal["pressure", "thermostat", "dampers", "run on", "overload", "dose", "pitch", "speed"]


class SheetLine(msgspec.Struct, forbid_unknown_fields=True, frozen=True, kw_only=True):
    """One line of the sheet: a check that is read before the machine is handed over."""

    id: Annotated[str, ID]
    check: Annotated[str, said("what is looked at or measured; its question, cautions and figures hold here too", "id")]
    title: Annotated[str | None, said("on the sheet, where another than the check's")] = None
    wanted: Annotated[str, said("what is wanted here, where the check has no figure")] = ""
    must: Annotated[bool, said("no handover before it is as wanted")] = False
    first: Annotated[bool, said("nothing is switched on before it is as wanted")] = False
    who: Annotated[bool, said("asks besides who was shown it")] = False
    adjust: Annotated[
        list[str], said("what can be set where it fails, the likeliest first", "list of adjustments")
    ] = []
    opens: Annotated[
        dict[str, str],
        said("the complaint it comes to where nothing can be set; `any` for every outcome", "table: outcome to id"),
    ] = {}
    fits: Annotated[Traits, FITS] = {}
    basis: Annotated[Basis, BASIS]


class Adjustment(msgspec.Struct, forbid_unknown_fields=True, frozen=True, kw_only=True):
    """Something that can be set, which way and how far, so that a line comes right."""

    id: Annotated[str, ID]
    title: Annotated[str, said("what is set")]
    how: Annotated[list[str], said("how it is set, each step one act")]
    working: Annotated[
        Working | None, said("what works out how far, from the readings", "", "by eye, and read again")
    ] = None
    upsets: Annotated[list[str], said("what must be read again once it was set", "list of checks")] = []
    minutes: Annotated[float, said("for one who has done it before, without opening and isolating")]
    open: Annotated[list[Access], said("`none`, or the covers", "list of access words")]
    state: Annotated[State, said("of the machine during the work")]
    who: Annotated[Who, said("who may do it; local rules may ask for more")]
    cautions: Annotated[list[str], CAUTIONS]
    fits: Annotated[Traits, FITS] = {}
    basis: Annotated[Basis, BASIS]
