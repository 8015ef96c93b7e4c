"""Racks of ware and rinse in the tanks, as the trade asks it: part of the subject of tanks."""

from __future__ import annotations

from diagnose.formulas.formula import Answer, Argument, Formula
from diagnose.physics import overflow, racks

__all__ = ["RACKS"]

_VOLUME = Argument("volume", "Water held", "volume", "gal", "L", plate="wash_tank_volume")
_HEAT = Argument("heat", "Heat each rack takes", "energy", "BTU", "kJ")

RACKS: tuple[Formula, ...] = (
    Formula(
        id="rack-heat",
        subject="tanks",
        title="Heat a rack carries out",
        asks="How much heat does a rack of ware take up?",
        run=racks.heat_per_rack,
        takes=(
            Argument("ware_mass", "Ware on the rack", "mass", "lb", "kg"),
            Argument(
                "ware_heat_capacity",
                "Heat capacity of the ware",
                "specific heat",
                "BTU/(lb·F°)",
                "kJ/(kg·C°)",
                usual="0.85 kJ/(kg·C°)",
                stands="china, from memory; steel 0.49, plastic 1.9",
            ),
            Argument(
                "rack_mass",
                "The rack itself",
                "mass",
                "lb",
                "kg",
                usual="4 lb",
                stands="common plastic rack, judgement",
            ),
            Argument(
                "rack_heat_capacity",
                "Heat capacity of the rack",
                "specific heat",
                "BTU/(lb·F°)",
                "kJ/(kg·C°)",
                usual="1.9 kJ/(kg·C°)",
                stands="plastic, from memory",
            ),
            Argument("start", "Ware going in", "temperature", "°F", "°C", usual="75 °F", stands="room, judgement"),
            Argument("end", "Ware coming out of the tank's zone", "temperature", "°F", "°C"),
        ),
        gives=(Answer("heat", "Heat", "energy", "BTU", "kJ"),),
        us=(
            "({ware_mass} × {ware_heat_capacity} + {rack_mass} × {rack_heat_capacity})"
            " × ({end:n} − {start:n}) = {heat}",
        ),
        also=("load", "ware", "china"),
    ),
    Formula(
        id="rack-drop",
        subject="tanks",
        title="Drop of the tank by one rack",
        asks="How far does one rack cool the tank?",
        run=racks.drop_per_rack,
        takes=(_HEAT, _VOLUME),
        gives=(Answer("drop", "Drop", "temperature difference", "F°", "C°"),),
        us=("{heat} ÷ (8.333 × {volume}) = {drop}",),
        si=("{heat} ÷ (4.181 × {volume}) = {drop}",),
        also=("temperature falls at rush",),
    ),
    Formula(
        id="rack-power",
        subject="tanks",
        title="Power that makes good what racks take",
        asks="How many kilowatts do so many racks an hour want?",
        run=racks.power_for_racks,
        takes=(_HEAT, Argument("rate", "Racks an hour", "rate", "per hour")),
        gives=(Answer("power", "Power", "power", "kW"),),
        us=("{heat} × {rate:n} ÷ 3412 = {power}",),
        si=("{heat} × {rate:n} ÷ 3600 = {power}",),
        also=("recovery", "rush", "capacity"),
    ),
    Formula(
        id="rack-recovery",
        subject="tanks",
        title="Recovery after one rack",
        asks="How long does the tank take to make good one rack?",
        run=racks.recovery_time,
        takes=(
            _HEAT,
            Argument("power", "Tank heater", "power", "kW", plate="tank_power"),
            Argument(
                "loss_power",
                "Heat lost meanwhile",
                "power",
                "kW",
                usual="2 kW",
                stands="judgement: a hot machine idle takes 1.5 to 2.6 kW",
            ),
        ),
        gives=(Answer("time", "Time", "time", "s"),),
        us=("{heat} ÷ (3412 × ({power:n} − {loss_power:n})) × 3600 = {time}",),
        si=("{heat} ÷ ({power:n} − {loss_power:n}) = {time}",),
        also=("recovery time",),
    ),
    Formula(
        id="dilution",
        subject="tanks",
        title="Detergent or soil left after so many racks",
        asks="How thin does the rinse make what is in the tank?",
        run=overflow.share_left_after_racks,
        takes=(
            _VOLUME,
            Argument("rinse_per_rack", "Rinse each rack sends into the tank", "volume", "gal", "L"),
            Argument("racks", "Racks since", "number"),
        ),
        gives=(Answer("left", "Share left", "number"),),
        us=("exp(−{racks} × {rinse_per_rack} ÷ {volume}) = {left}",),
        also=("overflow", "detergent", "change of water"),
    ),
    Formula(
        id="dilution-water",
        subject="tanks",
        title="Detergent or soil left after so much water",
        asks="How much of it is left after this much water ran through?",
        run=overflow.share_left,
        takes=(_VOLUME, Argument("water_in", "Water run in since", "volume", "gal", "L")),
        gives=(Answer("left", "Share left", "number"),),
        us=("exp(−{water_in} ÷ {volume}) = {left}",),
        also=("overflow", "thinning", "fresh water"),
    ),
    Formula(
        id="tank-after-rinse",
        subject="tanks",
        title="Tank after rinse water ran in",
        asks="How warm is the tank after this rinse fell into it?",
        run=overflow.temperature_after_rinse,
        takes=(
            _VOLUME,
            Argument("temperature", "Tank before", "temperature", "°F", "°C"),
            Argument("water_in", "Rinse water run in", "volume", "gal", "L"),
            Argument("rinse", "Rinse water as it comes into the tank", "temperature", "°F", "°C"),
        ),
        gives=(Answer("after", "Tank after", "temperature", "°F", "°C"),),
        us=("({temperature:n} − {rinse:n}) × exp(−{water_in} ÷ {volume}) + {rinse:n} = {after}",),
        also=("rinse warms the tank", "cold water through the tank"),
    ),
    Formula(
        id="water-year",
        subject="tanks",
        title="Rinse water in a year",
        asks="How much water do so many racks a day use in a year?",
        run=racks.annual_water,
        takes=(
            Argument("water_per_rack", "Rinse water for one rack", "volume", "gal", "L"),
            Argument("racks_per_day", "Racks a day", "number"),
            Argument("days", "Days a year", "number", usual="365", stands="open all days, judgement"),
        ),
        gives=(Answer("water", "Water", "volume", "gal", "m3"),),
        us=("{water_per_rack} × {racks_per_day} × {days} = {water}",),
        si=("{water_per_rack} × {racks_per_day} × {days} ÷ 1000 = {water}",),
        also=("water use", "gallons per rack"),
    ),
)
