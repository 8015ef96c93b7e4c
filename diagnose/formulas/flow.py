"""Jets and the rinse's flow, filling, hammer: as the trade asks it."""

from __future__ import annotations

from diagnose.formulas.formula import Answer, Argument, Formula
from diagnose.formulas.supply_flow import SUPPLY
from diagnose.formulas.water_hammer import HAMMER
from diagnose.physics import flow, jets

__all__ = ["FORMULAS"]

_FLOW = ("flow", "gpm", "L/min")
_PRESSURE = ("pressure", "psi", "bar")
_FACTOR = ("flow factor", "gpm/√psi", "L/min/√bar")
_BORE = ("length", "in", "mm")
_COUNT = Argument("count", "Jets in all", "number")
_EXPECTED = Argument("expected", "Flow of sound jets at this pressure", *_FLOW, plate="rinse_flow")
_MEASURED = Argument("measured", "Flow measured", *_FLOW)
_RATED_FLOW = Argument("rated_flow", "Rated flow", *_FLOW, plate="rinse_flow")
_RATED_PRESSURE = Argument("rated_pressure", "Pressure it is rated at", *_PRESSURE, plate="rinse_pressure")
_NOW = Argument("pressure", "Pressure now, flowing", *_PRESSURE)

_NOZZLES: tuple[Formula, ...] = (
    Formula(
        id="rinse-flow-at-pressure",
        subject="flow",
        title="Rinse flow at another pressure",
        asks="How much do the same jets pass at this flowing pressure?",
        run=flow.flow_at_pressure,
        takes=(_RATED_FLOW, _RATED_PRESSURE, _NOW),
        gives=(Answer("flow", "Flow", *_FLOW),),
        us=("{rated_flow} × √({pressure} ÷ {rated_pressure}) = {flow}",),
        also=("square root", "gauge", "gpm"),
    ),
    Formula(
        id="nozzle-factor",
        subject="flow",
        title="Flow factor K of openings",
        asks="What K do a flow and its pressure make?",
        run=flow.factor_of_point,
        takes=(Argument("flow", "Flow", *_FLOW), Argument("pressure", "Pressure that drives it", *_PRESSURE)),
        gives=(Answer("factor", "Flow factor K", *_FACTOR),),
        us=("{flow} ÷ √({pressure}) = {factor}",),
        also=("K factor", "nozzle"),
    ),
    Formula(
        id="nozzle-flow",
        subject="flow",
        title="Flow through openings of known K",
        asks="How much passes at this pressure?",
        run=flow.flow_at,
        takes=(Argument("factor", "Flow factor K", *_FACTOR), Argument("pressure", "Pressure drop", *_PRESSURE)),
        gives=(Answer("flow", "Flow", *_FLOW),),
        us=("{factor} × √({pressure}) = {flow}",),
        also=("K factor", "nozzle"),
    ),
    Formula(
        id="nozzle-pressure",
        subject="flow",
        title="Pressure that drives a flow through openings of known K",
        asks="What pressure does this flow take?",
        run=flow.pressure_for,
        takes=(Argument("factor", "Flow factor K", *_FACTOR), Argument("flow", "Flow", *_FLOW)),
        gives=(Answer("pressure", "Pressure drop", *_PRESSURE),),
        us=("({flow} ÷ {factor:n})² = {pressure}",),
        also=("K factor", "valve loss", "strainer"),
    ),
    Formula(
        id="openings-in-series",
        subject="flow",
        title="Openings one after another",
        asks="What K have strainer, valve and jets together?",
        run=flow.factor_of_series,
        takes=(Argument("factors", "Flow factors K, one after another", *_FACTOR, many=0),),
        gives=(Answer("factor", "K of them all", *_FACTOR),),
        us=("1 ÷ K² of each added up, K = {factors}: {sum_us:n}", "√(1 ÷ {sum_us:n}) = {factor}"),
        si=("1 ÷ K² of each added up, K = {factors}: {sum_si:n}", "√(1 ÷ {sum_si:n}) = {factor}"),
        steps=lambda factors: {
            "sum_us": (sum((_K_US / f) ** 2 for f in factors), "number", "", ""),
            "sum_si": (sum((_K_SI / f) ** 2 for f in factors), "number", "", ""),
        },
        also=("restriction", "strainer", "series"),
    ),
)

_K_US = 3.785411784e-3 / 60 / 6894.757293168**0.5  # one gpm/√psi in SI
_K_SI = 1e-3 / 60 / 1e5**0.5  # one L/min/√bar in SI

_JETS: tuple[Formula, ...] = (
    Formula(
        id="orifice-flow",
        subject="flow",
        title="Flow through one hole",
        asks="How much passes a hole of this diameter?",
        run=jets.orifice_flow,
        takes=(
            Argument("diameter", "Diameter of the hole", *_BORE),
            Argument("pressure", "Pressure, flowing", *_PRESSURE, plate="rinse_pressure"),
            Argument(
                "coefficient", "Discharge coefficient", "number", usual="0.8", stands="a plain drilled jet, judgement"
            ),
        ),
        gives=(Answer("flow", "Flow", *_FLOW),),
        us=("29.84 × {coefficient} × {diameter:n}² × √({pressure}) = {flow}",),
        si=("0.6668 × {coefficient} × {diameter:n}² × √({pressure}) = {flow}",),
        also=("orifice", "drill", "jet size"),
    ),
    Formula(
        id="jets-flow",
        subject="flow",
        title="Flow of a number of like jets",
        asks="How much do all the open jets pass together?",
        run=jets.flow_of_jets,
        takes=(
            Argument("count", "Open jets", "number"),
            Argument("flow_each", "Flow of one at its rated pressure", *_FLOW),
            _RATED_PRESSURE,
            _NOW,
        ),
        gives=(Answer("flow", "Flow of them all", *_FLOW),),
        us=("{count} × {flow_each} × √({pressure} ÷ {rated_pressure}) = {flow}",),
        also=("nozzles", "several jets"),
    ),
    Formula(
        id="spray-exponent",
        subject="flow",
        title="Flow of full-cone sprays at another pressure",
        asks="How much do sprays pass that follow another exponent than one half?",
        run=jets.flow_at_exponent,
        takes=(
            _RATED_FLOW,
            _RATED_PRESSURE,
            _NOW,
            Argument(
                "exponent",
                "Exponent of the spray",
                "number",
                usual="0.46",
                stands="full cones, 0.44 to 0.47 in a secondary copy",
            ),
        ),
        gives=(Answer("flow", "Flow", *_FLOW),),
        us=("{rated_flow} × ({pressure} ÷ {rated_pressure})^{exponent} = {flow}",),
        also=("full cone", "swirl"),
    ),
    Formula(
        id="worn-jets",
        subject="flow",
        title="Flow of worn jets at the same pressure",
        asks="How much more passes once the holes have grown?",
        run=jets.flow_with_worn,
        takes=(
            Argument("rated_flow", "Flow when new", *_FLOW, plate="rinse_flow"),
            Argument("drilled", "Diameter when new", *_BORE),
            Argument("worn", "Diameter now", *_BORE),
        ),
        gives=(Answer("flow", "Flow now", *_FLOW),),
        us=("{rated_flow} × ({worn} ÷ {drilled})² = {flow}",),
        also=("wear", "drill shank"),
    ),
    Formula(
        id="jet-wear",
        subject="flow",
        title="Growth of worn jets from their flow, in per cent",
        asks="How much have the holes grown for this flow?",
        run=jets.wear_of_flow,
        takes=(_EXPECTED, _MEASURED),
        gives=(Answer("growth", "Growth of the diameter", "share", "%", "%"),),
        us=("(√({measured} ÷ {expected}) − 1) × 100 = {growth:n}",),
        also=("wear",),
    ),
    Formula(
        id="blocked-jets",
        subject="flow",
        title="Flow with some jets blocked",
        asks="How much do the open ones pass at the same pressure?",
        run=jets.flow_with_blocked,
        takes=(
            Argument("rated_flow", "Flow with all open", *_FLOW, plate="rinse_flow"),
            _COUNT,
            Argument("blocked", "Jets blocked", "number"),
        ),
        gives=(Answer("flow", "Flow now", *_FLOW),),
        us=("{rated_flow} × ({count} − {blocked}) ÷ {count} = {flow}",),
        also=("limed", "plugged"),
    ),
    Formula(
        id="jets-shut",
        subject="flow",
        title="Blocked jets that would explain a flow",
        asks="How many jets are missing from this flow?",
        run=jets.jets_shut,
        takes=(_COUNT, _EXPECTED, _MEASURED),
        gives=(Answer("shut", "Jets' worth of flow missing", "number"),),
        us=("{count} × (1 − {measured} ÷ {expected}) = {shut}",),
        also=("limed", "plugged"),
    ),
)

FORMULAS: tuple[Formula, ...] = (*_NOZZLES, *_JETS, *SUPPLY, *HAMMER)
