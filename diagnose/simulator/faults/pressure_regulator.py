"""Faults of the rinse's pressure regulator."""

from __future__ import annotations

from diagnose.simulator.plant import Plant
from diagnose.simulator.registry import fault

__all__: list[str] = []


@fault(
    "pressure_regulator.set_high",
    (
        "The spring presses harder than wanted, so the valve under it shuts only at a higher pressure.",
        "Flow at the jets grows with the root of the pressure: half as much again in pressure is 22 % more water.",
        "The same heat in more water is less rise, so the rinse gets colder and uses more.",
    ),
    after="plumbing work",
)
def set_high(plant: Plant, severity: float) -> None:
    """Screwed in: 40 to 120 % over."""
    plant.rinse.set_pressure *= 1.4 + 0.8 * severity


@fault(
    "pressure_regulator.set_low",
    (
        "The spring is let out, so the valve shuts before enough pressure stands behind it.",
        "Half the pressure gives 71 % of the flow: the fans hang limp though the jets are sound.",
        "It is steady, at rest and flowing, and follows the screw.",
    ),
    after="plumbing work",
)
def set_low(plant: Plant, severity: float) -> None:
    """Screwed out: 60 down to 35 % of what is wanted."""
    plant.rinse.set_pressure *= 0.62 - 0.27 * severity


@fault(
    "pressure_regulator.seat_leaks",
    (
        "Grit holds the seat a hair open, which matters little while much water flows.",
        "At rest the main's pressure creeps past it until both sides are nearly equal.",
        "The first moment of each rinse comes with that pressure, and a relief valve behind it may open at night.",
    ),
    onset="slowly",
)
def seat_leaks(plant: Plant, severity: float) -> None:
    """At rest it creeps to most of the main's pressure."""
    plant.rinse.creeps = 0.75 + 0.22 * severity
    plant.rinse.set_pressure *= 1.0 + 0.08 * severity


@fault(
    "pressure_regulator.bypass_open",
    (
        "Water goes round the regulator through its bypass.",
        "The jets see the main less what the pipes take, at rest all of it.",
        "Turning the screw changes nothing, because the water does not pass it.",
    ),
    after="plumbing work",
)
def bypass_open(plant: Plant, severity: float) -> None:
    """All pressure gets through."""
    plant.rinse.regulator_wide = True
    plant.signs["bypass stands open"] = 0.6 + 0.4 * severity


@fault(
    "pressure_regulator.none_fitted",
    (
        "Nothing takes the main's pressure down before the rinse.",
        "The jets see the main less what the pipes take, and as the building's draw changes so does the rinse.",
        "More pressure is more flow by its root, less rise, and fog instead of drops.",
    ),
    onset="installed",
    after="newly connected",
)
def none_fitted(plant: Plant, severity: float) -> None:
    """No regulator in the line."""
    plant.rinse.regulator_wide = True
    plant.signs["no regulator"] = 1.0


@fault(
    "pressure_regulator.droops",
    (
        "A weary spring or a stiff diaphragm lets the valve open too little for the flow.",
        "At rest the gauge stands right; the more water flows, the further it sags.",
        "A figure read at rest therefore says nothing of it.",
    ),
    onset="slowly",
)
def droops(plant: Plant, severity: float) -> None:
    """It loses half and more of its pressure at rated flow."""
    plant.rinse.droop = plant.rinse.set_pressure * (0.8 + 0.9 * severity)


@fault(
    "pressure_regulator.screen_blocked",
    (
        "Grit fills the fine screen at the regulator's inlet.",
        "A narrow passage costs pressure with the square of the flow and nothing at rest.",
        "The regulator stands wide open behind it and turning it up does not help.",
    ),
    onset="slowly",
    after="plumbing work",
)
def screen_blocked(plant: Plant, severity: float) -> None:
    """The passage is a few per cent of the sound one."""
    plant.rinse.regulator_open = 0.085 - 0.05 * severity
    plant.signs["regulator screen full"] = 0.5 + 0.5 * severity


@fault(
    "pressure_regulator.fitted_backwards",
    (
        "Flow pushes the valve shut instead of open.",
        "Little gets past it whatever the screw says, and at rest the pressure is that of the main or none.",
        "It has been so since it was fitted.",
    ),
    onset="installed",
    after="plumbing work",
)
def fitted_backwards(plant: Plant, severity: float) -> None:
    """The passage left is small."""
    plant.rinse.regulator_open = 0.075 - 0.03 * severity
    plant.signs["regulator arrow against the flow"] = 1.0


@fault(
    "pressure_regulator.wrong_range",
    (
        "The spring's range begins above the rinse's pressure.",
        "With the screw let out it still holds more than the jets are made for.",
        "Steady, high, and it does not come down.",
    ),
    onset="installed",
    after="parts replaced",
)
def wrong_range(plant: Plant, severity: float) -> None:
    """Its least is half as much again as wanted, or twice."""
    plant.rinse.set_pressure *= 1.45 + 0.6 * severity
    plant.signs["regulator range too high"] = 1.0


@fault(
    "pressure_regulator.jammed_shut",
    (
        "The valve in the regulator stays on its seat.",
        "No water passes, so no jet has any, whatever command the rinse valve gets.",
        "Ahead of it there is full pressure, behind it none.",
    ),
    after="plumbing work",
)
def jammed_shut(plant: Plant, severity: float) -> None:
    """Next to nothing passes."""
    plant.rinse.regulator_open = 0.004
