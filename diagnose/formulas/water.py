"""Hardness, scale, rinse aid: as the trade asks it."""

from __future__ import annotations

from diagnose.formulas.formula import Answer, Argument, Formula
from diagnose.physics import scale, water

__all__ = ["FORMULAS"]

_HARDNESS = Argument("hardness", "Hardness", "hardness", "gpg", "mg/L")
_HARD = Argument("hard", "Hardness of the raw water", "hardness", "gpg", "mg/L")
_SOFT = Argument(
    "soft",
    "Hardness behind the softener",
    "hardness",
    "gpg",
    "mg/L",
    usual="0 gpg",
    stands="what a sound softener leaves",
)
_TAKEN = Argument("hardness", "Hardness the softener takes out", "hardness", "gpg", "mg/L")
_CAPACITY = Argument("capacity", "Softener's capacity between two regenerations", "mass", "gr", "g")
_DAILY = Argument("water", "Water used a day", "volume", "gal", "L")


FORMULAS: tuple[Formula, ...] = (
    Formula(
        id="hardness-scales",
        subject="water",
        title="Hardness in each scale",
        asks="What is this hardness in the other scales?",
        run=water.hardness_scales,
        takes=(_HARDNESS,),
        gives=(
            Answer("grains", "Grains a US gallon, gpg", "number"),
            Answer("mass", "mg/L as CaCO3 (ppm)", "number"),
            Answer("german", "German degrees, °dH", "number"),
            Answer("french", "French degrees, °f", "number"),
            Answer("english", "English degrees, °e", "number"),
            Answer("molar", "mmol/L", "number"),
        ),
        us=(
            "{mass} ÷ 17.118 = {grains}",
            "{mass} ÷ 17.848 = {german}",
            "{mass} ÷ 10 = {french}",
            "{mass} ÷ 14.254 = {english}",
            "{mass} ÷ 100.09 = {molar}",
        ),
        also=("grains", "degrees", "dH", "ppm"),
    ),
    Formula(
        id="hardness-survey-word",
        subject="water",
        title="Word of the public survey for a hardness",
        asks="Which class of the U.S. Geological Survey is it?",
        run=water.usgs_class,
        takes=(_HARDNESS,),
        gives=(Answer("word", "Survey's word", "words"),),
        us=("{hardness}: {word} (survey: soft to 60 mg/L, moderately hard to 120, hard to 180).",),
        by_hand="a table of words",
        also=("class", "USGS"),
    ),
    Formula(
        id="hardness-trade-word",
        subject="water",
        title="Word of the water-treatment trade for a hardness",
        asks="Which class of the trade is it?",
        run=water.trade_class,
        takes=(_HARDNESS,),
        gives=(Answer("word", "Trade's word", "words"),),
        us=("{hardness}: {word} (trade: soft under 1 gpg, slightly hard to 3.5, moderately hard to 7, hard to 10.5).",),
        by_hand="a table of words",
        also=("class",),
    ),
    Formula(
        id="hardness-from-ions",
        subject="water",
        title="Hardness from a water analysis",
        asks="How hard is water with this calcium and magnesium?",
        run=water.hardness_from_ions,
        takes=(
            Argument("calcium", "Calcium", "concentration", "ppm"),
            Argument("magnesium", "Magnesium", "concentration", "ppm"),
        ),
        gives=(Answer("hardness", "Hardness", "hardness", "gpg", "mg/L"),),
        us=("(2.497 × {calcium} + 4.118 × {magnesium}) ÷ 17.118 = {hardness}",),
        si=("2.497 × {calcium} + 4.118 × {magnesium} = {hardness}",),
        limit="rinse_hardness",
        also=("analysis",),
    ),
    Formula(
        id="hardness-mixed",
        subject="water",
        title="Hardness behind an open bypass",
        asks="How hard is softened water with some raw water in it?",
        run=water.mixed_hardness,
        takes=(
            _HARD,
            _SOFT,
            Argument("bypass", "Share that goes round the softener", "share", "%"),
        ),
        gives=(Answer("mixed", "Hardness of the mixture", "hardness", "gpg", "mg/L"),),
        us=("{bypass:n} ÷ 100 × {hard} + (100 − {bypass:n}) ÷ 100 × {soft} = {mixed}",),
        limit="rinse_hardness",
        also=("softener", "blend"),
    ),
    Formula(
        id="bypass-share",
        subject="water",
        title="Share that goes round the softener",
        asks="How much raw water gets past the softener?",
        run=water.bypass_share,
        takes=(
            Argument("mixed", "Hardness at the machine", "hardness", "gpg", "mg/L"),
            _HARD,
            _SOFT,
        ),
        gives=(Answer("bypass", "Share that goes round", "share", "%"),),
        us=("100 × ({mixed} − {soft}) ÷ ({hard} − {soft}) = {bypass:n}",),
        also=("softener", "bypass", "blend"),
    ),
    Formula(
        id="softener-volume",
        subject="water",
        title="Water between two regenerations",
        asks="How much water does a softener make before it is used up?",
        run=scale.softener_volume,
        takes=(
            _CAPACITY,
            _TAKEN,
        ),
        gives=(Answer("water", "Water", "volume", "gal", "L"),),
        us=("{capacity} ÷ {hardness} = {water}",),
        si=("1000 × {capacity} ÷ {hardness} = {water}",),
        also=("softener", "capacity", "grains"),
    ),
    Formula(
        id="softener-days",
        subject="water",
        title="Days between two regenerations",
        asks="How often must a softener regenerate?",
        run=scale.softener_days,
        takes=(
            _CAPACITY,
            _TAKEN,
            _DAILY,
        ),
        gives=(Answer("days", "Days", "number"),),
        us=("{capacity} ÷ ({hardness} × {water}) = {days}",),
        si=("1000 × {capacity} ÷ ({hardness} × {water}) = {days}",),
        also=("softener",),
    ),
    Formula(
        id="scale-mass",
        subject="water",
        title="Scale a day",
        asks="How much scale stays in the machine when water loses this hardness?",
        run=scale.scale_mass,
        takes=(
            Argument("drop", "Hardness lost in the machine", "hardness", "gpg", "mg/L"),
            _DAILY,
        ),
        gives=(Answer("mass", "Scale", "mass", "oz", "g"),),
        us=("{drop} × {water} ÷ 437.5 = {mass}",),
        si=("{drop} × {water} ÷ 1000 = {mass}",),
        also=("lime", "deposit"),
    ),
    Formula(
        id="scale-layer",
        subject="water",
        title="Thickness of scale",
        asks="How thick a layer is that scale?",
        run=scale.scale_layer,
        takes=(
            Argument("mass", "Scale", "mass", "oz", "g"),
            Argument("area", "Surface it lies on", "area", "ft2", "m2"),
            Argument(
                "density",
                "Density of the scale",
                "density",
                "lb/ft3",
                "kg/m3",
                usual="2000 kg/m3",
                stands="judgement: solid calcite is 2710",
            ),
        ),
        gives=(Answer("thickness", "Thickness", "length", "in", "mm"),),
        us=("{mass} ÷ 16 ÷ ({area} × {density}) × 12 = {thickness}",),
        si=("{mass} ÷ ({area} × {density}) = {thickness}",),
        also=("lime", "deposit"),
    ),
    Formula(
        id="rinse-aid-dose",
        subject="water",
        title="Rinse aid a rack",
        asks="How much rinse aid does this rinse water need?",
        run=scale.rinse_aid_dose,
        takes=(
            Argument("strength", "Rinse aid wanted, parts in a million by volume", "concentration", "ppm"),
            Argument("water", "Rinse water a rack", "volume", "gal", "L", plate="rinse_per_rack"),
        ),
        gives=(Answer("dose", "Rinse aid", "volume", "mL"),),
        us=("{strength} × {water} × 3.7854 ÷ 1000 = {dose}",),
        si=("{strength} × {water} ÷ 1000 = {dose}",),
        also=("drying agent", "wetting agent"),
    ),
)
