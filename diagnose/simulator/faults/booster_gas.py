"""Faults of the gas booster's burner and of the wall it heats through."""

from __future__ import annotations

from diagnose.simulator.burning import burner_of
from diagnose.simulator.gas_parts import Burner
from diagnose.simulator.plant import Plant
from diagnose.simulator.registry import fault

__all__: list[str] = []

_GAS = ("gas",)
_UP = "It burns its full gas, and the heat leaves by the flue, which grows hot."
_LOCKS_OUT = "After some tries the control locks out, and the rinse comes at the supply's temperature."
_ROOT = "Gas goes with the root of the pressure at the jets, and the rise with the gas."


def burner(plant: Plant) -> Burner:
    """The booster's; ValueError where it has none."""
    found = burner_of(plant, "booster")
    if found is None:
        raise ValueError("this machine has no gas booster")
    return found


@fault(
    "booster_gas.exchanger_limed",
    (
        "Lime lies on the exchanger's water side, and steam bubbles under it.",
        _UP,
        "The bubbles burst with the rumble of a kettle.",
    ),
    onset="slowly",
    booster=_GAS,
)
def exchanger_limed(plant: Plant, severity: float) -> None:
    """Millimetres at the hot end."""
    burner(plant).lime = 0.0016 + 0.0026 * severity


@fault(
    "booster_gas.exchanger_sooted",
    (
        "The flame lacks air, and soot furs the exchanger's passages.",
        _UP,
        "Carbon monoxide rises, and the flame's tips turn yellow.",
    ),
    onset="slowly",
    booster=_GAS,
)
def exchanger_sooted(plant: Plant, severity: float) -> None:
    """Lint on the burner's air, soot in its passages."""
    burner(plant).soot = 0.35 + 0.5 * severity
    burner(plant).air = 0.72 - 0.25 * severity


@fault(
    "booster_gas.flame_sensor_dirty",
    (
        "A glaze on the flame rod keeps its current under what the control asks.",
        "The burner lights, is not proved, and is shut off again within seconds.",
        _LOCKS_OUT,
    ),
    onset="comes and goes",
    booster=_GAS,
)
def flame_sensor_dirty(plant: Plant, severity: float) -> None:
    """Silica of mist and lint."""
    burner(plant).proved = 0.95 - 0.6 * severity


@fault(
    "booster_gas.ignitor_weak",
    ("The spark jumps beside the burner, or the glow bar stays dull.", "Gas comes and nothing lights it.", _LOCKS_OUT),
    booster=_GAS,
)
def ignitor_weak(plant: Plant, severity: float) -> None:
    """Gap burnt wide, ceramic cracked."""
    burner(plant).spark = 0.4 - 0.4 * severity


@fault(
    "booster_gas.air_not_proved",
    (
        "Flue or blower give the air switch less draught than its figure.",
        "The control waits for it: the blower runs, no spark and no gas follow.",
        _LOCKS_OUT,
    ),
    onset="comes and goes",
    booster=_GAS,
)
def air_not_proved(plant: Plant, severity: float) -> None:
    """Where it is slight, only with the hoods on."""
    burner(plant).draught = 1.05 - 0.6 * severity
    burner(plant).hoods_draw = 0.2


@fault(
    "booster_gas.valve_dead",
    ("The gas valve's coil is open, or its knob stands at OFF.", "It has its volts and passes no gas.", _LOCKS_OUT),
    booster=_GAS,
)
def valve_dead(plant: Plant, severity: float) -> None:
    """Shut for good."""
    burner(plant).valve_works = False


@fault(
    "booster_gas.manifold_low",
    ("The valve's regulator holds too little at the manifold.", _ROOT, "All flames are alike, short and blue."),
    onset="installed",
    after="parts replaced",
    booster=_GAS,
)
def manifold_low(plant: Plant, severity: float) -> None:
    """Set by ear."""
    burner(plant).manifold = 0.72 - 0.45 * severity


@fault(
    "booster_gas.jets_blocked",
    (
        "Some jets or ports are blocked.",
        "The pressure is right and less gas flows, with the area that is left.",
        "Flames are missing along a part of the burner, and it lights late with a soft boom.",
    ),
    onset="slowly",
    booster=_GAS,
)
def jets_blocked(plant: Plant, severity: float) -> None:
    """Webs, lint, rust."""
    burner(plant).jets_open = 0.86 - 0.4 * severity


@fault(
    "booster_gas.orifices_wrong",
    (
        "The jets are bored for another gas.",
        "At the right pressure their area lets through another gas flow than the plate's.",
        "Too small, all flames are small; too large, they are yellow for want of air.",
    ),
    onset="installed",
    after="newly connected",
    booster=_GAS,
)
def orifices_wrong(plant: Plant, severity: float) -> None:
    """For propane on natural gas; or, gross, the other way round."""
    burner(plant).bore = 1.6 if severity > 0.85 else 0.65 - 0.25 * severity
