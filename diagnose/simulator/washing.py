"""What becomes of the ware: soil left, film, wetness, foam, and what soils it again."""

from __future__ import annotations

from dataclasses import dataclass

from diagnose.simulator.bench import Bench
from diagnose.simulator.dosing import arrives, chlorine_on_ware
from diagnose.simulator.flowing import DETERGENT, SOIL
from diagnose.simulator.state import DENSITY

__all__ = ["Ware", "strip_shows", "ware"]

# How much each of pressure, time, heat and detergent takes of a wash, and where the eye begins to see it: judgement
# throughout; that these four make a wash and stand in for one another is common practice of the trade.
_BY_THRUST = 0.6
_BY_SPRAY, _BY_TIME, _BY_DETERGENT = 0.8, 0.9, 0.3
_BY_HEAT = 0.022  # of the wash a kelvin under the plate's least
_IN_HAND = 1.12  # of a sound wash over what usual soil wants
_HARD = 0.2  # kg/m3 as calcium carbonate: above it one pass leaves a veil
_SPOTS = 0.45  # kg/m3 of dissolved solids above which drops leave rims
_ROOM_HOLDS = 0.7  # humidity of the room above which ware dries slowly


@dataclass(frozen=True)
class Ware:
    """The ware as it leaves the machine in late service. Effects: 0 as it should be, 1 gross, but where said."""

    spray: float  # of the sound spray that meets the ware
    detergent: float  # strength over the usual one
    heat: float  # K of the wash under the plate's least
    pace: float  # speed over the plate's
    soil: float  # in the wash water over the usual
    skims: bool  # the tank runs over its lip while it rinses
    feeble: float  # soil left all over, by a weak, cool, thin or hurried wash
    lane: float  # soil left on one side or layer
    dried: float
    nested: float
    crumbs: float  # loose soil from the water
    films: dict[str, float]  # acid_white, acid_brown, water, soap, blue, grey_lines, nothing: by what takes it off
    beads: float  # water that stands in beads
    streaks: float
    wet: dict[str, float]  # all_wet, plastic_wet, hollows_wet
    foam: dict[str, float]  # by when it comes: at_once, with_soaked, with_protein, with_any, cold_only, milky
    again: dict[str, float]  # by where: all_over, outside, drops_top, at_bars, hard_grains, hands
    aid: float  # rinse aid in the rinse over the usual
    jet_chlorine: float  # mg/L in the jet, and on the ware
    chlorine: float

    @property
    def soiled(self) -> float:
        """Soil left, the worst of its kinds."""
        return max(self.feeble, self.lane, self.dried, self.nested, self.crumbs)


def ware(bench: Bench) -> Ware:
    """Work it out once for a bench."""
    known = bench.kept.get("ware")
    if not isinstance(known, Ware):
        known = bench.kept["ware"] = _ware(bench)
    return known


def _ware(bench: Bench) -> Ware:
    plant, state, sign = bench.plant, bench.service.state, bench.sign
    chemistry, pump = plant.chemistry, plant.pumps["wash"]
    spray = _spray(bench)
    mass = max(state.flowing["mass wash"], 0.1)
    detergent = state.flowing["detergent wash"] / mass / DETERGENT
    heat = max(0.0, plant.plate["wash_temperature"] - bench.temperature("wash"))
    pace = max(plant.conveyor.pace, 0.3)
    soil = _soil(bench)
    full = plant.tanks["wash"].volume * DENSITY
    skims = mass > 0.985 * full
    scum = 0.5 if 0.88 * full < mass <= 0.985 * full else 0.0
    # The wash itself.
    strength = 0.15 + 0.85 * min(1.0, detergent)
    power = spray**_BY_SPRAY * pace**-_BY_TIME * strength**_BY_DETERGENT * max(0.2, 1.0 - _BY_HEAT * heat)
    feeble = max(0.0, 1.0 / _IN_HAND - power) * 2.5
    nested = sign("ware nested")
    dried = chemistry.dried
    lane = max(0.0, pump.misses - 0.04) * 2.0
    fouled = max(0.0, soil - 1.9) * 0.35
    coarse = max(0.7 * sign("food on the ware"), 0.65 * sign("pre-wash idle"), 0.6 * sign("crumbs in the spray"))
    crumbs = max(fouled, coarse)
    rinse = bench.restarted.standing.rinse.flow / plant.rinse.rated_flow
    aid = arrives(chemistry, chemistry.rinse_aid) * chemistry.rinse_aid.stock / max(rinse, 0.3)
    if "rinse aid" in chemistry.swapped:
        aid = 0.0
    jet, chlorine = chlorine_on_ware(plant, rinse, bench.manifold, aid)
    slippery = 1.0 if "detergent" in chemistry.swapped and "rinse aid" in chemistry.swapped else 0.0
    greasy = max(fouled, scum)
    short = max(0.0, 0.62 - aid) * 1.6
    hard = plant.water.hardness
    films = {
        "acid_white": max(0.0, hard - _HARD) * 6.0,
        "acid_brown": chemistry.iron * 1000.0,
        "water": max(
            max(0.0, chemistry.solids + chemistry.brine - _SPOTS) * 1.2,
            max(0.0, detergent - 1.6) * 0.6,
            slippery * 0.8,
            short * 0.55,
            max(0.0, aid - 2.5) * 0.08,
        ),
        "soap": max(max(0.0, 0.55 - detergent) * 1.3, greasy * 0.9, feeble * 0.5),
        "blue": sign("starch film"),
        "grey_lines": sign("metal marks"),
        "nothing": sign("ware worn"),
    }
    foam = _foam(bench, detergent, heat, greasy, aid, slippery)
    return Ware(
        spray=spray,
        detergent=detergent,
        heat=heat,
        pace=pace,
        soil=soil,
        skims=skims,
        feeble=feeble,
        lane=lane,
        dried=dried,
        nested=nested,
        crumbs=crumbs,
        films=films,
        beads=max(short, 0.5 * greasy),
        streaks=max(max(0.0, aid - 2.5) * 0.25, slippery * 0.9, max(0.0, detergent - 1.9) * 0.5),
        wet=_wet(bench, short),
        foam=foam,
        again=_again(bench, rinse, greasy, foam),
        aid=aid,
        jet_chlorine=jet,
        chlorine=chlorine,
    )


def _spray(bench: Bench) -> float:
    """What the jets throw over what they should: by the thrust of their streams, pressure times area.

    A pump that does not turn at all stops the washing, which is another complaint than a poor wash.
    """
    pump, now = bench.plant.pumps["wash"], bench.restarted.standing
    if not now.motors["wash"].turns:
        return 1.0
    return float((now.pumps["wash"].pressure / pump.pressure * pump.jets_open) ** _BY_THRUST)


def _soil(bench: Bench) -> float:
    """Soil in the wash water over what a sound service leaves in it."""
    plant, state = bench.plant, bench.service.state
    belt = plant.plate["conveyor_speed"]
    a_rack = plant.rinse.rated_flow * DENSITY * min(plant.plate["rack_length"] / belt, 1.0 / bench.service.rack_rate)
    usual = SOIL / max(a_rack, 0.1)
    strength = state.flowing["soil wash"] / max(state.flowing["mass wash"], 0.1)
    return strength / usual + 4.0 * plant.chemistry.old


def _foam(bench: Bench, detergent: float, heat: float, greasy: float, aid: float, slippery: float) -> dict[str, float]:
    """Foam by when it comes: residues, soap, soil that the wash is too cool or too thin for, air drawn in."""
    plant, sign = bench.plant, bench.sign
    chemistry = plant.chemistry
    level = bench.service.state.flowing["mass wash"] / (plant.tanks["wash"].volume * DENSITY)
    return {
        "at_once": max(chemistry.suds, 0.3 * max(0.0, detergent - 2.2)),
        "with_soaked": sign("pre-soak on the ware"),
        "with_protein": max(sign("milk, egg or dough on the ware"), 0.0),
        "with_any": max(
            max(0.0, heat - 8.0) * 0.05,
            max(0.0, 0.45 - detergent) * 0.8,
            max(0.0, detergent - 1.6) * 0.4,
            max(0.0, aid - 2.5) * 0.15,
            0.8 * slippery,
            0.7 * greasy,
        ),
        "cold_only": sign("loose bubbles after a fill"),
        "milky": max(sign("wash water milky"), 0.3 * (level < 0.85)),
    }


def _wet(bench: Bench, short: float) -> dict[str, float]:
    """What stays wet: everything where rinse aid, heat or dry air is short, plastic and hollows of themselves."""
    plant, sign = bench.plant, bench.sign
    sanitised_hot = plant.plate.traits.get("sanitising") != "chemical"
    cool = max(0.0, plant.plate["rinse_temperature"] - 3.0 - bench.manifold) * 0.07 if bench.rinse_trace else 0.0
    air = bench.restarted.air
    stale = max(0.0, 0.85 - air.exhaust["exit"] / max(plant.air.wanted["exit"], 1e-6))  # ware dries in air that moves
    damp = max(0.0, 0.8 * stale, (plant.air.humidity - _ROOM_HOLDS) * 3.0)
    over = sign("spray over curtain")
    all_wet = max(short, cool, min(0.6, damp), over, 0.0 if sanitised_hot else sign("ware expected dry at once"))
    return {
        "all_wet": all_wet,
        "plastic_wet": sign("much plastic ware"),
        "hollows_wet": max(sign("ware nested"), sign("ware carries water out")),
        "stacked": sign("stacked at once"),
    }


def _again(bench: Bench, rinse: float, greasy: float, foam: dict[str, float]) -> dict[str, float]:
    """What soils clean ware again, by where it is found."""
    sign = bench.sign
    limed = bench.plant.rinse.jets_open
    thin = max(max(0.0, 0.82 - rinse) * 1.6, max(0.0, 0.8 - limed) * 1.4, sign("rinse jets askew"))
    suds = max(foam["at_once"], foam["with_soaked"], foam["with_protein"])
    return {
        "all_over": max(greasy, sign("crumbs in the spray"), sign("baffle out"), 0.9 * thin),
        "outside": max(
            sign("spray over curtain"), sign("wash arms misplaced"), 0.7 * suds, 0.5 * sign("ware carries water out")
        ),
        "drops_top": sign("drips back from the duct"),
        "at_bars": sign("racks soiled"),
        "hard_grains": sign("grit in the rinse"),
        "hands": sign("hands soil the ware"),
    }


def strip_shows(bench: Bench) -> float:
    """What the kitchen's strips show on the ware, [mg/L]: old ones read low, and read late they read high."""
    shown = ware(bench).chlorine * (1.0 - bench.sign("old strips"))
    return shown * (1.0 + 1.4 * bench.sign("strips read late"))
