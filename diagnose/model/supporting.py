"""What the entries lean on: sources, cautions, limits, context, minutes, instruments and types of machine."""

from __future__ import annotations

from typing import Annotated, Literal

import msgspec

from diagnose.model.record import BASIS, FITS, Basis, Traits, said

__all__ = [
    "Caution",
    "ContextQuestion",
    "Effort",
    "InstrumentKind",
    "Limit",
    "MachineType",
    "Source",
    "Stock",
    "StopCondition",
    "TellApart",
    "TypeAnswer",
]


class Source(msgspec.Struct, forbid_unknown_fields=True, frozen=True, kw_only=True):
    """A published document."""

    id: Annotated[str, said("short, without blanks", "id")]
    title: Annotated[str, said("as on the document; no people")]
    publisher: Annotated[str, said("who gave it out")]
    year: Annotated[int | None, said("of the edition seen", "", "the copy seen does not say")] = None
    address: Annotated[str | None, said("where it can be read")] = None
    seen: Annotated[
        Literal["text", "secondary", "memory"],
        said("whether the document itself was read, a copy by others, or neither"),
    ]


class Caution(msgspec.Struct, forbid_unknown_fields=True, frozen=True, kw_only=True):
    """What to do before a hazardous step."""

    id: Annotated[str, said("causes and checks name it", "id")]
    hazard: Annotated[str, said("one word or two: what hurts")]
    title: Annotated[str, said("as shown, in capitals beside a question")]
    text: Annotated[list[str], said("what to do before the step")]
    word: Annotated[str | None, said("must be typed before the step appears: for what can maim", "", "only shown")] = (
        None
    )
    basis: Annotated[Basis, BASIS]


class StopCondition(msgspec.Struct, forbid_unknown_fields=True, frozen=True, kw_only=True):
    """A danger asked for before any diagnosis, which ends the job."""

    id: Annotated[str, said("short", "id")]
    ask: Annotated[str, said("the danger, as a question")]
    instruction: Annotated[list[str], said("the one thing to do then")]
    aloud: Annotated[
        str | None, said("the question for a kitchen worker on the telephone", "", "`ask` is fit to be said")
    ] = None
    aloud_then: Annotated[
        list[str],
        said("what the kitchen is told to do then, sentence by sentence", "", "`instruction` is fit to be said"),
    ] = []
    basis: Annotated[Basis, BASIS]


class Limit(msgspec.Struct, forbid_unknown_fields=True, frozen=True, kw_only=True):
    """A figure of good order: a band from `low` to `high`, either may be open.

    Each end is the same figure once per unit, as its source rounds it; a reading is compared in its own unit.
    """

    id: Annotated[str, said("bands name it as `limit.ID.low`", "id")]
    title: Annotated[str, said("what is limited")]
    quantity: Annotated[str, said("as for a reading", "quantity")]
    low: Annotated[list[str], said('lower end, like `["180 °F", "82 °C"]`', "list of figures", "open; not both")] = []
    high: Annotated[list[str], said("upper end", "list of figures", "open; not both")] = []
    plate_low: Annotated[str | None, said("governs that end where the plate gives it", "plate figure")] = None
    plate_high: Annotated[str | None, said("the same for the upper end", "plate figure")] = None
    fits: Annotated[Traits, FITS] = {}
    basis: Annotated[Basis, BASIS]


class ContextQuestion(msgspec.Struct, forbid_unknown_fields=True, frozen=True, kw_only=True):
    """Something asked about the job as a whole."""

    id: Annotated[str, said("shifts name it", "id")]
    ask: Annotated[str, said("the question")]
    answers: Annotated[list[str], said("shifts name these word for word")]
    aloud: Annotated[
        str | None, said("the question for a kitchen worker on the telephone", "", "`ask` is fit to be said")
    ] = None


class Effort(msgspec.Struct, forbid_unknown_fields=True, frozen=True, kw_only=True):
    """Minutes to open an access, to bring the machine into a state, to get help, or for a visit."""

    id: Annotated[str, said("the word that causes and checks use; `call` for help", "id")]
    title: Annotated[str, said("what it is")]
    minutes: Annotated[
        float, said("to open and put back; to bring the machine into the state; to get help; what it is counted with")
    ]
    back: Annotated[float, said("for a state: to bring the machine out of it again")] = 0.0
    basis: Annotated[Basis, BASIS]


class Stock(msgspec.Struct, forbid_unknown_fields=True, frozen=True, kw_only=True):
    """Where parts are when they are needed, by the names that causes give them."""

    id: Annotated[str, said("short; of two that name the same part the later counts", "id")]
    kept: Annotated[
        Literal["van", "store", "house", "order"],
        said(
            "`van`: in every service van; `store`: loaded for a visit; `house`: the kitchen has it or gets it; "
            "`order`: sized, ordered or built after a first visit"
        ),
    ]
    names: Annotated[list[str], said("as causes write them before the comma; what nobody names counts as `store`")]
    basis: Annotated[Basis, BASIS]


class InstrumentKind(msgspec.Struct, forbid_unknown_fields=True, frozen=True, kw_only=True):
    """A kind of instrument for one quantity, and how far it may be off; those of your own are kept elsewhere."""

    id: Annotated[str, said("short", "id")]
    title: Annotated[str, said("a kind of instrument, never a make")]
    quantity: Annotated[str, said("what it reads, as for a reading", "quantity")]
    words: Annotated[
        list[str],
        said("small letters; any of them in a check's `instrument` names it", "", "taken when nothing else fits"),
    ] = []
    absolute: Annotated[
        str, said("largest error wherever it reads; of a temperature a difference, `1 °F`", "figure", "none; not both")
    ] = ""
    share: Annotated[float, said("largest error as a share of the reading, `0.02` for 2 %", "", "none; not both")] = 0.0
    basis: Annotated[Basis, BASIS]


class MachineType(msgspec.Struct, forbid_unknown_fields=True, frozen=True, kw_only=True):
    """A type of machine: its traits and its plate."""

    id: Annotated[str, said("short", "id")]
    title: Annotated[str, said("a kind of machine, never a make")]
    traits: Annotated[
        dict[str, str | int | bool], said("every trait there is, with one of its values", "table of traits")
    ]
    plate: Annotated[
        dict[str, str],
        said(
            "usual figures of the kind; used, and said to be assumed, until the plate is read",
            "table: plate figure to figure",
        ),
    ]
    basis: Annotated[Basis, BASIS]


class TypeAnswer(msgspec.Struct, forbid_unknown_fields=True, frozen=True, kw_only=True):
    """One answer to a question that tells types of machine apart: the types it leaves."""

    answer: Annotated[str, said("in the kitchen's words")]
    fits: Annotated[Traits, said("the traits of the types it leaves", "traits", "any")] = {}
    plate: Annotated[
        dict[str, list[str]],
        said("plate figures of the types it leaves, as written there", "table: plate figure to figures", "any"),
    ] = {}


class TellApart(msgspec.Struct, forbid_unknown_fields=True, frozen=True, kw_only=True):
    """A question by which a kitchen worker finds the type of machine, on the telephone."""

    id: Annotated[str, said("short", "id")]
    aloud: Annotated[str, said("the question for a kitchen worker: what is seen from outside")]
    answers: Annotated[list[TypeAnswer], said("in the order read out; not knowing it leaves all types")]
