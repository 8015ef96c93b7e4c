"""What can be wrong, how it shows and how it is found: complaints, events, causes and checks, read strictly from TOML.

The table of fields in knowledge/README.md and the questions of `diagnose knowledge new` are made from the notes here.
"""

from __future__ import annotations

from typing import Annotated, Literal

import msgspec

from diagnose.model.record import BASIS, CAUTIONS, FITS, ID, Access, Basis, State, Traits, Who, said

__all__ = ["Cause", "Check", "Complaint", "Event", "Meanwhile", "Outcome", "ReadingSpec", "Shift"]


class Meanwhile(msgspec.Struct, forbid_unknown_fields=True, frozen=True, kw_only=True):
    """What the kitchen does until the machine is right, inside a complaint."""

    use: Annotated[
        Literal["as usual", "with care", "stop"],
        said("whether it goes on washing: as ever, only as told, or not at all"),
    ]
    say: Annotated[list[str], said("what the kitchen is told to do until then, sentence by sentence, as said aloud")]
    ask_only: Annotated[
        list[str],
        said("the only checks asked by telephone then, as where the machine stays off", "list of checks", "any"),
    ] = []
    fits: Annotated[Traits, FITS] = {}
    basis: Annotated[Basis, BASIS]


class Complaint(msgspec.Struct, forbid_unknown_fields=True, frozen=True, kw_only=True):
    """What the kitchen says: a top event."""

    id: Annotated[str, said("without a dot", "id")]
    title: Annotated[str, said("short and in the trade's words")]
    kitchen: Annotated[list[str], said("ten or so ways in which a kitchen says it; searching finds them")]
    of: Annotated[list[str], said("what can bring it about", "list of events and causes")]
    unlisted: Annotated[str, said("how often it is something not written down here", "word of frequency")] = "uncommon"
    prove_by: Annotated[list[str], said("what shows that it is gone", "list of checks")]
    advice: Annotated[list[str], said("what the kitchen is told afterwards")] = []
    until: Annotated[
        list[Meanwhile],
        said(
            "what the kitchen does until it is right, told by telephone: the first that fits the machine",
            "",
            "nothing is said",
        ),
    ] = []
    fits: Annotated[
        Traits, said("where it can be complained of at all; elsewhere it is not offered", "traits", "every machine")
    ] = {}
    basis: Annotated[Basis, BASIS]


class Event(msgspec.Struct, forbid_unknown_fields=True, frozen=True, kw_only=True):
    """Something that is so inside the machine: a gate."""

    id: Annotated[str, ID]
    title: Annotated[str, said("what is then so inside the machine")]
    gate: Annotated[Literal["any", "all", "at_least"], said("how the members make it so")]
    k: Annotated[
        int | None, said("how many members it takes, from 2 to one less than there are", "", "with `at_least` only")
    ] = None
    of: Annotated[list[str], said("members, each once", "list of events and causes")]
    fits: Annotated[Traits, FITS] = {}
    basis: Annotated[Basis, BASIS]


class Shift(msgspec.Struct, forbid_unknown_fields=True, frozen=True, kw_only=True):
    """Makes a cause more or less frequent when a question about the job was answered so."""

    when: Annotated[str, said("which question", "id in `context.toml`")]
    among: Annotated[list[str], said("the answers that count, word for word")]
    by: Annotated[str, said("how much more or less often", "word of shift")]
    basis: Annotated[Basis | None, said("if another than the entry's", "basis")] = None


class Cause(msgspec.Struct, forbid_unknown_fields=True, frozen=True, kw_only=True):
    """What can be repaired, or shown to be no fault: a basic event."""

    id: Annotated[str, ID]
    title: Annotated[str, said('one fault of one part: "One pole of the booster contactor does not make"')]
    shows: Annotated[str, said("what is seen, heard and read, with figures")]
    why: Annotated[str, said("how it comes about, and what to mend so that it does not return")]
    told_apart: Annotated[str, said("from what it is mistaken for, by which reading, with figures")]
    how_often: Annotated[str, said("at a call, without any context", "word of frequency")]
    shifts: Annotated[list[Shift], said("what of the job as a whole makes it more or less frequent")] = []
    repair: Annotated[list[str], said("steps a trainee can follow, from making safe to measuring again")]
    aloud: Annotated[
        list[str],
        said(
            "said to a kitchen worker who puts it right alone: made safe first, what to look at afterwards last",
            "",
            "never by telephone",
        ),
    ] = []
    minutes: Annotated[float, said("for one who has done it before, part at hand, without opening and isolating")]
    parts: Annotated[
        list[str], said("NAME, what must match, if ...: the name as in `parts.toml`", "list of text, may be empty")
    ]
    open: Annotated[list[Access], said("`none`, or the covers", "list of access words")]
    state: Annotated[State, said("of the machine during the work")]
    who: Annotated[Who, said("who may do it; local rules may ask for more")]
    cautions: Annotated[list[str], CAUTIONS]
    prove_by: Annotated[list[str], said("at least one must read otherwise while the cause is there", "list of checks")]
    no_fault: Annotated[bool, said("works as designed, or lies with how the machine is used")] = False
    inseparable_from: Annotated[
        dict[str, str], said("siblings no check can part it from", "table: id to reason", "none")
    ] = {}
    fits: Annotated[Traits, FITS] = {}
    basis: Annotated[Basis, BASIS]


class ReadingSpec(msgspec.Struct, forbid_unknown_fields=True, frozen=True, kw_only=True):
    """What a measuring check reads, inside a check."""

    quantity: Annotated[str, said("`temperature`, `pressure`, `flow`, `current`, `voltage`, `time`, ...", "quantity")]
    unit: Annotated[str, said("meant when none is typed; a rise or a loss is in `F°` or `C°`, never in `°F`", "unit")]
    each: Annotated[
        list[str], said('names of the places, in the order typed: `["L1", "L2", "L3"]`', "", "one figure")
    ] = []
    least: Annotated[str | None, said("below it is a slip of the pen, and refused", "figure", "any")] = None
    most: Annotated[str | None, said("above it likewise", "figure", "any")] = None
    example: Annotated[str | None, said("how an answer may look")] = None


class Outcome(msgspec.Struct, forbid_unknown_fields=True, frozen=True, kw_only=True):
    """One answer to a check, inside a check."""

    title: Annotated[str, said("the answer in words")]
    good: Annotated[bool, said("what a healthy machine shows; one outcome at least")] = False
    low: Annotated[
        str | None,
        said(
            'from: a figure, `limit.ID.low` or `.high`, or a plate figure, `"plate.rinse_flow * 0.85"`',
            "band end",
            "open, or no band",
        ),
    ] = None
    high: Annotated[str | None, said("up to, but not including", "band end", "open, or no band")] = None


class Check(msgspec.Struct, forbid_unknown_fields=True, frozen=True, kw_only=True):
    """Something to look at or measure."""

    id: Annotated[str, ID]
    title: Annotated[str, said("what is looked at or measured")]
    ask: Annotated[str, said("the question as put on the screen")]
    steps: Annotated[list[str], said("how to do it, each step one act")]
    mistakes: Annotated[list[str], said("what goes wrong in this very check, and how that looks")] = []
    aloud: Annotated[
        str | None,
        said("the question for a kitchen worker: nothing to open, no tool, no risk", "", "never by telephone"),
    ] = None
    reading: Annotated[
        ReadingSpec | None, said("what is read, where it is a figure", "reading", "an outcome is chosen")
    ] = None
    computed: Annotated[bool, said("never asked, answered by a rule from other readings")] = False
    instrument: Annotated[str, said('its accuracy goes by this name, see "Instrument": `clamp meter`, ...')]
    minutes: Annotated[float, said("for the check alone, covers already off")]
    open: Annotated[list[Access], said("`none`, or the covers", "list of access words")]
    state: Annotated[State, said("of the machine during the check")]
    who: Annotated[Who, said("who may do it; local rules may ask for more")]
    cautions: Annotated[list[str], CAUTIONS]
    looks_at: Annotated[
        list[str],
        said(
            "in the order in which they mask one another: the first that is so decides",
            "list of events and causes",
            "asked on the sheet of a handover alone",
        ),
    ] = []
    outcomes: Annotated[dict[str, Outcome], said("in the order shown, two or more", "table: id to outcome")]
    shows: Annotated[
        dict[str, dict[str, str | float]],
        said(
            "a row for each id of `looks_at`, and `none`: what is then seen, and how often",
            "table: row to outcomes by word of likelihood",
            "nothing, where it looks at nothing",
        ),
    ] = {}
    asked_for: Annotated[
        list[str],
        said("where its question presupposes one of these, as where a noise comes from", "list of complaints", "any"),
    ] = []
    fits: Annotated[Traits, FITS] = {}
    basis: Annotated[Basis, BASIS]
