"""Faults of the final-rinse arms, their jets and the pipe to them."""

from __future__ import annotations

from diagnose.simulator.plant import Plant
from diagnose.simulator.registry import fault

__all__: list[str] = []


@fault(
    "rinse_arms.jets_worn",
    (
        "Water and lime have worn the holes wider than drilled.",
        "A quarter more area passes a quarter more water at the same pressure, and pulls the pressure down.",
        "The booster's heat spreads over more water: the rise falls in proportion.",
    ),
    onset="slowly",
)
def jets_worn(plant: Plant, severity: float) -> None:
    """Area a quarter to two thirds over."""
    plant.rinse.jets_wear = 1.25 + 0.4 * severity
    plant.signs["rinse jets oversize"] = 0.4 + 0.6 * severity


@fault(
    "rinse_arms.jet_missing",
    (
        "One jet has fallen out and leaves its thread open.",
        "That hole passes as much as several jets, as one solid rope.",
        "Flow rises, pressure falls, and the rise falls with the flow.",
    ),
)
def jet_missing(plant: Plant, severity: float) -> None:
    """Open area of a thread."""
    plant.rinse.cap_off = 0.3 + 0.3 * severity
    plant.signs["rinse jet missing"] = 0.8


@fault(
    "rinse_arms.end_cap_off",
    (
        "The end of a rinse arm is open.",
        "Most of the water gushes out there without spray, at high flow and low pressure.",
        "The booster cannot heat so much water: the rinse is cold besides.",
    ),
    after="cleaning by the crew",
)
def end_cap_off(plant: Plant, severity: float) -> None:
    """Open area about that of all jets."""
    plant.rinse.cap_off = 1.0 + 0.7 * severity
    plant.signs["rinse end cap off"] = 1.0


@fault(
    "rinse_arms.arm_off",
    (
        "A whole arm has come off; water pours from its stub.",
        "The stub passes far more than the jets, so hardly any pressure is left for the other arms.",
        "Flow is high, pressure nearly gone, temperature low.",
    ),
    after="cleaning by the crew",
)
def arm_off(plant: Plant, severity: float) -> None:
    """Open area of a pipe."""
    plant.rinse.cap_off = 3.0 + severity
    plant.signs["rinse arm off"] = 1.0


@fault(
    "rinse_arms.jets_limed",
    (
        "Lime has narrowed or shut the holes.",
        "The regulator holds the pressure while the flow falls with the open area.",
        "Less water takes the same heat, so it comes hot, but there is too little of it.",
    ),
    onset="slowly",
)
def jets_limed(plant: Plant, severity: float) -> None:
    """A third to two thirds of the area shut."""
    plant.rinse.jets_open = 0.7 - 0.4 * severity
    plant.signs["rinse jets limed"] = 0.4 + 0.6 * severity
    plant.water.hardness = max(plant.water.hardness, 0.22)


@fault(
    "rinse_arms.arm_blocked",
    (
        "Flakes lie inside an arm and shut off what is behind them.",
        "The jets beyond them get nothing, the others full pressure.",
        "Flow falls by that share while the gauge stands right.",
    ),
    onset="slowly",
    after="chemical call or delime",
)
def arm_blocked(plant: Plant, severity: float) -> None:
    """A quarter to a half of the jets get nothing."""
    plant.rinse.jets_open = 0.75 - 0.3 * severity
    plant.signs["rinse arm dead beyond a plug"] = 0.5 + 0.5 * severity


@fault(
    "rinse_arms.jets_askew",
    (
        "The arms or jets are turned, so the fans miss part of the ware.",
        "Flow, pressure and temperature are right; what is not sprayed is not rinsed nor heated.",
        "Some labels turn and others do not.",
    ),
    after="cleaning by the crew",
)
def jets_askew(plant: Plant, severity: float) -> None:
    """Turned by tens of degrees."""
    plant.signs["rinse jets askew"] = 0.4 + 0.6 * severity


@fault(
    "rinse_arms.pipe_bare",
    (
        "The pipe from a remote booster is long and bare.",
        "It loses some hundred watts for each degree over the room, where the water carries a kilowatt for each.",
        "The booster's outlet is right and the manifold colder, most after a pause.",
    ),
    onset="installed",
    booster_place=("remote",),
)
def pipe_bare(plant: Plant, severity: float) -> None:
    """Watts lost for each kelvin."""
    plant.rinse.pipe_loss = 70.0 + 110.0 * severity
