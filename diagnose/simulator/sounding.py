"""What ears notice beyond the sound of work: how loud, from which place, and with what it comes and goes."""

from __future__ import annotations

from dataclasses import dataclass

from diagnose.physics.hammer import hammer_rapid
from diagnose.simulator.bench import Bench
from diagnose.simulator.control import stalls
from diagnose.simulator.motoring import rattles, unbalance
from diagnose.simulator.pumping import drawn_in
from diagnose.simulator.rinsing import relief_state
from diagnose.simulator.state import DENSITY

__all__ = ["Sound", "humming", "loudest", "sounds", "surge"]

_PSI = 6894.757
_GRAVEL = 0.07  # share of air from which a pump crackles
_STARVED = 0.3  # of a pump's suction left, under which it does likewise: judgement
_WHISTLES = 0.35  # of the pressure offered that a stop valve has to take before it is heard: judgement
_LIME = 0.001  # m of lime under which water boils with a noise: judgement
_BUBBLES = 0.2  # share of an injector's steam that breaks through the water with a thump: judgement
_PIPE_SPEED = 1.1  # m/s in the pipe at the rinse's rated flow: judgement; wave speed in copper
_WAVE = 1300.0
# First word that a noise's name holds -> place and what it comes with; the drive's for all others.
_OF = (
    ("panel drums", "panel", "pumps"),
    ("frame shakes", "all_over", "strokes"),
    ("pipe beats", "pipes", "rinse_begins"),
    ("valve hammers", "pipes", "rinse_ends"),
    ("booster", "pipes", "heating"),
    ("steam bangs", "pipes", "heating"),
    ("steam joint", "pipes", "hisses"),
    ("contactor", "control_box", "a_start"),
    ("others hum", "all_over", "every_motor"),
    ("usual knocks", "nothing", "always_so"),
    ("fan ", "fan", "fan_runs"),
    ("pump", "pump", "pumps"),
    ("wash motor", "pump", "pumps"),
    ("wheel", "pump", "pumps"),
)
# Words by which a sign of any part is a noise.
_NOISES = ("squeal", "growl", "whine", "rattle", "rumble", "knock", "hammer", "buzz", "hum", "crackle", "bang", "grind")
_MORE = ("shake", "screech", "groan", "click", "gravel", "drums", "noise", "scrape", "pipe beats", "joint blows")
_ALSO = ("wheel unbalanced", "wash motor loose", "pump coupling askew")


@dataclass(frozen=True)
class Sound:
    """One noise: how loud it is (0 to 1), and the outcomes that ears would choose for it."""

    loud: float
    place: str
    comes: str


def humming(bench: Bench) -> list[str]:
    """Motors that are fed and do not turn, or would not start again."""
    if not bench.service.state.running:
        return []
    motors = bench.restarted.standing.motors
    return [n for n, flow in motors.items() if (max(flow.amps) > 0.0 and not flow.turns) or stalls(bench.plant, n)]


def sounds(bench: Bench) -> list[Sound]:
    """Every noise that there is now."""
    plant = bench.plant
    found = []
    for name, marked in plant.signs.items():
        place, comes = next(((p, w) for word, p, w in _OF if word in name), ("drive_end", "strokes"))
        if any(word in name for word in (*_NOISES, *_MORE, *_ALSO)):
            found.append(Sound(marked, place, comes))
    found += _of_motors(bench)
    found += _of_water(bench)
    return [each for each in found if each.loud > 0.0]


def loudest(bench: Bench) -> Sound | None:
    """The loudest of them; None where all sounds as ever."""
    return max(sounds(bench), key=lambda each: each.loud, default=None)


def surge(bench: Bench) -> float:
    """Highest pressure ahead of the rinse valve as it shuts, [Pa]: the main's, and its share of the whole blow."""
    plant = bench.plant
    speed = _PIPE_SPEED * bench.rinsing.standing.rinse.flow / plant.rinse.rated_flow
    return plant.water.static + plant.rinse.slams * hammer_rapid(DENSITY, _WAVE, speed)


def _of_motors(bench: Bench) -> list[Sound]:
    """Motors that hum, growl on uneven volts, and contactors that chatter; the pump by what it draws."""
    plant, found = bench.plant, []
    if not bench.service.state.running:
        return []
    hums = humming(bench)
    if len(hums) > 1:
        found.append(Sound(0.85, "all_over", "every_motor"))
    for name in hums:
        place, comes = {"drive": ("drive_end", "strokes"), "fan": ("fan", "fan_runs")}.get(name, ("pump", "pumps"))
        found.append(Sound(0.8, place, comes))
    if rattles(bench):
        found.append(Sound(0.4, "control_box", "a_start"))
    if plant.power.phases == 3 and unbalance(bench.heating.standing.volts) > 0.02:
        found.append(Sound(0.3, "all_over", "every_motor"))  # unbalanced volts make motors growl: common practice
    pump, runs = plant.pumps["wash"], bench.restarted.standing.pumps["wash"].share > 0.0
    if runs and (pump.air + drawn_in(plant, bench.service.state, "wash") > _GRAVEL or pump.suction_open < _STARVED):
        found.append(Sound(0.3, "pump", "pumps"))
    return found


def _of_water(bench: Bench) -> list[Sound]:
    """A valve that whistles, a relief valve that spits, and water that boils under lime or round large bubbles."""
    plant, found = bench.plant, []
    rinse = bench.rinsing.standing.rinse
    passage = 8.0 * plant.rinse.jets * max(plant.water.stop_open, 1e-6)  # as in `waterway`
    if (rinse.flow / passage) ** 2 > _WHISTLES * plant.water.static:
        found.append(Sound(0.3, "pipes", "rinse_begins"))
    if plant.booster.heater.kind != "none" and relief_state(bench) in ("pauses", "night") and plant.water.static > 0.0:
        found.append(Sound(0.3, "pipes", "spits"))
    heater = plant.booster.heater
    burner_lime = heater.burner.lime if heater.burner is not None else 0.0
    if max(heater.scale, burner_lime) > _LIME:
        found.append(Sound(0.4, "pipes", "heating"))
    for tank in plant.tanks.values():
        if tank.heater.kind == "steam injector" and tank.heater.steam.bursts > _BUBBLES:
            found.append(Sound(0.5, "tank", "heating"))
    return found
