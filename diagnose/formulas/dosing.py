"""Feed pumps, doses and stocks, a part of the subject of sanitising: as the trade asks it."""

from __future__ import annotations

from diagnose.formulas.formula import Answer, Argument, Formula
from diagnose.physics import dosing, stock, tube_pump

__all__ = ["FORMULAS"]

_PUMP = Argument("pump_flow", "Output of the feed pump", "flow", "mL/min")
_STOCK = Argument("stock", "Strength of the stock, g in 100 mL", "share", "%", plate="sanitiser_stock")
_WATER = Argument("water", "Rinse water a rack", "volume", "gal", "L", plate="rinse_per_rack")
_DOSE = Argument("dose", "Stock fed a rack", "volume", "mL")
_STRENGTH = Argument("strength", "Strength wanted", "concentration", "ppm", plate="sanitiser_wanted")
_RINSE = Argument("water_flow", "Rinse flow", "flow", "gpm", "L/min", plate="rinse_flow")


FORMULAS: tuple[Formula, ...] = (
    Formula(
        id="pump-output",
        subject="sanitising",
        title="Output of a tube pump",
        asks="What does a tube pump deliver at this speed?",
        run=tube_pump.tube_pump_flow,
        takes=(
            Argument("speed", "Turns of the pump's head", "frequency", "rpm"),
            Argument("per_turn", "Stock a turn delivers", "volume", "mL"),
        ),
        gives=(Answer("pump_flow", "Output", "flow", "mL/min"),),
        us=("{speed} × {per_turn} = {pump_flow}",),
        also=("peristaltic", "squeeze tube", "sanitiser", "detergent"),
    ),
    Formula(
        id="dose-per-rack",
        subject="sanitising",
        title="Stock fed a rack",
        asks="What does a pump feed in the time it runs?",
        run=tube_pump.dose_of_pump,
        takes=(
            _PUMP,
            Argument("time", "Time the pump runs a rack", "time", "s"),
        ),
        gives=(Answer("dose", "Stock fed", "volume", "mL"),),
        us=("{pump_flow} ÷ 60 × {time} = {dose}",),
        also=("sanitiser", "detergent", "rinse aid"),
    ),
    Formula(
        id="tube-pump-dose",
        subject="sanitising",
        title="Dose of a tube pump a rack",
        asks="What does a tube pump feed a rack, by its turns?",
        run=tube_pump.dose_of_turns,
        takes=(
            Argument("speed", "Turns of the pump's head", "frequency", "rpm"),
            Argument("per_turn", "Stock a turn delivers", "volume", "mL"),
            Argument("time", "Time the pump runs a rack", "time", "s"),
        ),
        gives=(Answer("dose", "Stock fed", "volume", "mL"),),
        us=("{speed} ÷ 60 × {per_turn} × {time} = {dose}",),
        also=("peristaltic", "squeeze tube", "sanitiser"),
    ),
    Formula(
        id="feed-time",
        subject="sanitising",
        title="Feed time for a dose",
        asks="How long must the pump run for this dose?",
        run=tube_pump.feed_time,
        takes=(
            _DOSE,
            _PUMP,
        ),
        gives=(Answer("time", "Time", "time", "s"),),
        us=("60 × {dose} ÷ {pump_flow} = {time}",),
        also=("timer", "sanitiser"),
    ),
    Formula(
        id="strength-of-dose",
        subject="sanitising",
        title="Strength from a dose",
        asks="What strength does this dose give the rinse?",
        run=dosing.strength_of_dose,
        takes=(
            _DOSE,
            _STOCK,
            _WATER,
        ),
        gives=(Answer("strength", "Strength in the rinse", "concentration", "ppm"),),
        us=("{dose} × {stock:n} × 10 ÷ ({water} × 3.7854) = {strength}",),
        si=("{dose} × {stock:n} × 10 ÷ {water} = {strength}",),
        limit="sanitiser_strength",
        also=("sanitiser", "ppm", "bleach"),
    ),
    Formula(
        id="dose-wanted",
        subject="sanitising",
        title="Dose for a wanted strength",
        asks="How much stock does a rack need?",
        run=dosing.dose_for_strength,
        takes=(
            _STRENGTH,
            _STOCK,
            _WATER,
        ),
        gives=(Answer("dose", "Stock fed", "volume", "mL"),),
        us=("{strength} × {water} × 3.7854 ÷ ({stock:n} × 10) = {dose}",),
        si=("{strength} × {water} ÷ ({stock:n} × 10) = {dose}",),
        also=("sanitiser", "ppm", "bleach"),
    ),
    Formula(
        id="strength-of-feed",
        subject="sanitising",
        title="Strength from a feed running with the rinse",
        asks="What strength does this pump give this rinse?",
        run=dosing.strength_in_stream,
        takes=(
            _PUMP,
            _STOCK,
            _RINSE,
        ),
        gives=(Answer("strength", "Strength in the rinse", "concentration", "ppm"),),
        us=("{pump_flow} × {stock:n} × 10 ÷ ({water_flow} × 3.7854) = {strength}",),
        si=("{pump_flow} × {stock:n} × 10 ÷ {water_flow} = {strength}",),
        limit="sanitiser_strength",
        also=("sanitiser", "ppm", "bleach", "dilution"),
    ),
    Formula(
        id="feed-wanted",
        subject="sanitising",
        title="Pump output for a wanted strength",
        asks="What must the pump deliver into this rinse?",
        run=dosing.pump_flow_for_strength,
        takes=(
            _STRENGTH,
            _STOCK,
            _RINSE,
        ),
        gives=(Answer("pump_flow", "Output", "flow", "mL/min"),),
        us=("{strength} × {water_flow} × 3.7854 ÷ ({stock:n} × 10) = {pump_flow}",),
        si=("{strength} × {water_flow} ÷ ({stock:n} × 10) = {pump_flow}",),
        also=("sanitiser", "setting"),
    ),
    Formula(
        id="stock-by-volume",
        subject="sanitising",
        title="Stock by volume from its strength by weight",
        asks="What is a label's percent by weight in grams a 100 mL?",
        run=stock.stock_by_volume,
        takes=(
            Argument("by_weight", "Strength by weight", "share", "%"),
            Argument(
                "density",
                "Density of the stock",
                "density",
                "lb/ft3",
                "kg/m3",
                usual="1080 kg/m3",
                stands="memory: household-strength hypochlorite",
            ),
        ),
        gives=(Answer("stock", "g in 100 mL", "share", "%"),),
        us=("{by_weight:n} × {density} ÷ 62.43 = {stock:n}",),
        si=("{by_weight:n} × {density} ÷ 1000 = {stock:n}",),
        also=("bleach", "trade percent"),
    ),
    Formula(
        id="stock-left",
        subject="sanitising",
        title="Strength left of an old stock",
        asks="How strong is stock that has stood?",
        run=stock.stock_after,
        takes=(
            Argument("fresh", "Strength when delivered", "share", "%", plate="sanitiser_stock"),
            Argument("age", "Time it has stood", "time", "h"),
            Argument("half_life", "Time in which half is lost", "time", "h"),
        ),
        gives=(Answer("stock", "Strength left", "share", "%"),),
        us=("{fresh:n} × 2^(-1 × {age} ÷ {half_life}) = {stock:n}",),
        also=("stale", "bleach", "shelf life"),
    ),
    Formula(
        id="container-lasts",
        subject="sanitising",
        title="How long a container lasts",
        asks="When will the container be empty?",
        run=stock.container_lasts,
        takes=(
            Argument("volume", "Stock in the container", "volume", "gal", "L"),
            _DOSE,
            Argument("rack_rate", "Racks", "rate", "per hour", plate="racks_per_hour"),
        ),
        gives=(Answer("time", "Time until empty", "time", "h"),),
        us=("{volume} × 3785.4 ÷ ({dose} × {rack_rate}) = {time}",),
        si=("{volume} × 1000 ÷ ({dose} × {rack_rate}) = {time}",),
        also=("jug", "pail", "empty"),
    ),
    Formula(
        id="tank-detergent-left",
        subject="sanitising",
        title="Detergent left in the wash tank",
        asks="What is left of the detergent when rinse water has run through and none was fed?",
        run=stock.tank_strength_after,
        takes=(
            Argument("start", "Strength at the start", "concentration", "ppm"),
            Argument("overflow", "Rinse water that ran into the tank", "volume", "gal", "L"),
            Argument("volume", "Water the tank holds", "volume", "gal", "L", plate="wash_tank_volume"),
        ),
        gives=(Answer("left", "Strength left", "concentration", "ppm"),),
        us=("{start} × exp(-1 × {overflow} ÷ {volume}) = {left}",),
        also=("dilution", "wash tank"),
    ),
    Formula(
        id="detergent-needed",
        subject="sanitising",
        title="Detergent for an amount of water",
        asks="How much detergent does this water need?",
        run=stock.detergent_needed,
        takes=(
            Argument("strength", "Strength to hold", "concentration", "ppm"),
            Argument("water", "Water to charge, or rinse water that displaces it", "volume", "gal", "L"),
        ),
        gives=(Answer("mass", "Detergent", "mass", "oz", "g"),),
        us=("{strength} × {water} × 3.7854 ÷ 28350 = {mass}",),
        si=("{strength} × {water} ÷ 1000 = {mass}",),
        also=("charge", "dispenser"),
    ),
)
