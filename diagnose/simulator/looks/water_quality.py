"""What can be read of the water, of film on ware, and of what the rinse throws."""

from __future__ import annotations

from diagnose.simulator.bench import Bench
from diagnose.simulator.dosing import rinse_ph
from diagnose.simulator.registry import look
from diagnose.simulator.senses import Answer
from diagnose.simulator.washing import ware

__all__: list[str] = []

_CHEMICAL = ("chemical",)
# Where a dried drop begins to show, in kg/m3: judgement.
_CRUST, _WHITE, _BRINY, _BROWN = 0.18, 0.45, 0.15, 0.2e-3


@look("water_quality.rinse_ph", sanitising=_CHEMICAL)
def rinse_acidity(bench: Bench) -> Answer:
    """pH of the rinse on the ware."""
    return bench.value("ph paper", rinse_ph(bench.plant, ware(bench).detergent))


@look("water_quality.supply_ph", sanitising=_CHEMICAL)
def supply_ph(bench: Bench) -> Answer:
    """pH at the tap."""
    return bench.value("ph paper", bench.plant.chemistry.ph)


@look("water_quality.softener")
def softener(bench: Bench) -> Answer:
    """Hardness before and behind the softener, and at the machine, [mg/L]."""
    chemistry = bench.plant.chemistry
    figures = {
        "raw": chemistry.raw_hardness,
        "softener": chemistry.soft_hardness,
        "machine": bench.plant.water.hardness,
    }
    return bench.values("titration kit", {place: 1000.0 * hardness for place, hardness in figures.items()})


@look("water_quality.point_look", sanitising=_CHEMICAL)
def point_look(bench: Bench) -> Answer:
    """The injection fitting."""
    collar = max(bench.sign("injection point neglected"), 0.35 * (bench.plant.chemistry.sanitiser.delivery < 0.5))
    return bench.worst({"neglected": collar}, "clean", sure=0.94)


@look("water_quality.film_test")
def film_test(bench: Bench) -> Answer:
    """What takes the film off."""
    return bench.worst(ware(bench).films, "clear", sure=0.93)


@look("water_quality.dry_down")
def dry_down(bench: Bench) -> Answer:
    """What raw water and rinse leave on a glass."""
    chemistry = bench.plant.chemistry
    if chemistry.iron > _BROWN:
        return bench.seen("brown", "crust", sure=0.93)
    if bench.plant.water.hardness > _CRUST:
        return bench.seen("crust", "wipes_both", sure=0.92)
    if chemistry.brine > _BRINY:
        return bench.seen("wipes_rinse", "faint", sure=0.88)
    if chemistry.solids > _WHITE:
        return bench.seen("wipes_both", "wipes_rinse", sure=0.88)
    return bench.seen("faint", "wipes_both", sure=0.98)


@look("water_quality.film_when")
def film_when(bench: Bench) -> Answer:
    """Since when the film is there: by how its cause comes."""
    found, chemistry = ware(bench), bench.plant.chemistry
    if max(found.films.values()) < 0.13:
        return bench.seen("no_film", "alike", sure=0.95)
    if chemistry.brine > _BRINY:
        return bench.seen("certain_days", "sudden", sure=0.9)
    if bench.sign("no softener") > 0.5 or chemistry.solids > _WHITE:
        return bench.seen("alike", "grew", sure=0.85)
    if bench.sign("softener without salt") > 0.1:
        return bench.seen("sudden", "grew", "certain_days", sure=0.5)
    slowly = max(bench.sign("starch film"), bench.sign("ware worn"), bench.sign("metal marks"))
    worn = chemistry.rinse_aid.tube < 0.8 or chemistry.rinse_aid.delivery < 0.5 or chemistry.detergent.tube < 0.5
    limed = bench.sign("detergent probe limed") > 0.2 or chemistry.iron > _BROWN or bench.plant.rinse.jets_open < 0.8
    if slowly > 0.1 or worn or limed:
        return bench.seen("grew", "alike", sure=0.88)
    return bench.seen("sudden", "alike", sure=0.8)


@look("water_quality.softener_seen")
def softener_seen(bench: Bench) -> Answer:
    """The softener, its salt and its bypass."""
    found = {
        "none_there": bench.sign("no softener"),
        "no_salt": bench.sign("softener without salt"),
        "bypass": bench.sign("softener bypass open"),
    }
    return bench.worst(found, "in_order", sure=0.93)


@look("water_quality.white_cup")
def white_cup(bench: Bench) -> Answer:
    """Two white cups through an empty machine."""
    again = ware(bench).again
    soft = max(0.7 * again["all_over"], 0.6 * again["outside"]) * (again["all_over"] + again["outside"] > 0.35)
    return bench.worst({"gritty": again["hard_grains"], "soft": soft}, "clean", sure=0.93)
