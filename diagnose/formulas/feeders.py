"""Volts on their way to the machine, as the trade asks it."""

from __future__ import annotations

from diagnose.formulas.formula import Answer, Argument, Formula
from diagnose.physics import feeders

__all__ = ["FEEDERS"]

FEEDERS: tuple[Formula, ...] = (
    Formula(
        id="feed-drop",
        subject="electric",
        title="Share of the volts lost between panel and machine",
        asks="Is too much lost on the way?",
        run=feeders.drop_share,
        takes=(
            Argument("panel", "Volts at the panel, under load", "voltage", "V"),
            Argument("machine", "Volts at the machine, same load", "voltage", "V"),
        ),
        gives=(Answer("share", "Share lost", "share", "%"),),
        us=("({panel} − {machine}) ÷ {panel} × 100 = {share:n}",),
        limit="feed_drop",
        also=("voltage drop", "feeder", "wire"),
    ),
    Formula(
        id="wire-drop",
        subject="electric",
        title="Volts lost along a run of wire",
        asks="How many volts does this wire lose at this current?",
        run=feeders.conductor_drop,
        takes=(
            Argument("current", "Current in each line", "current", "A"),
            Argument("length", "Length of the run, one way", "length", "ft", "m"),
            Argument("ohms_per_length", "Ohms of one wire by its length", "resistance per length", "ohm/kft", "ohm/km"),
            Argument(
                "phases", "Phases, 1 or 3", "number", usual="3", stands="three-phase; the machine's plate governs"
            ),
        ),
        gives=(Answer("drop", "Drop between the lines", "voltage", "V"),),
        us=("{factor} × {current} × {length:n} × {ohms_per_length:n} ÷ 1000 = {drop}",),
        steps=lambda phases, **_: {"factor": (3.0**0.5 if phases == 3 else 2.0, "number", "", "")},
        also=("voltage drop", "feeder", "gauge", "cable"),
    ),
    Formula(
        id="supply-band",
        subject="electric",
        title="Where the supply stands in its band",
        asks="Are these volts as a supply should be?",
        run=feeders.supply_band,
        takes=(
            Argument("voltage", "Volts measured", "voltage", "V"),
            Argument(
                "nominal",
                "Volts of the system",
                "words",
                usual="208",
                stands="for example; the panel's label governs",
                words=tuple(str(v) for v in feeders.BANDS),
            ),
            Argument(
                "place",
                "Where they were read",
                "words",
                usual="where used",
                stands="at the machine",
                words=("where used", "at the service"),
            ),
        ),
        gives=(Answer("band", "Band", "words"),),
        us=("{voltage} on a {nominal} V system, {place}: {band}.",),
        by_hand="looked up in the table of bands",
        also=("range A", "range B", "utility", "voltage band"),
    ),
)
