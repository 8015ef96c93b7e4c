"""Faults of the final-rinse valve."""

from __future__ import annotations

from diagnose.simulator.plant import Plant
from diagnose.simulator.registry import fault

__all__: list[str] = []


@fault(
    "rinse_valve.leaks_by",
    (
        "Grit or a nick keeps the valve from shutting.",
        "A few per cent of its passage goes on flowing between racks, as a trickle without spray.",
        "It fills the tanks, runs the overflow, and spends the booster's heat.",
    ),
    onset="slowly",
    after="plumbing work",
)
def leaks_by(plant: Plant, severity: float) -> None:
    """Share of its passage that stays open."""
    plant.rinse.valve_leak = 0.012 + 0.03 * severity
    plant.signs["grit at rinse valve seat"] = 0.5 + 0.5 * severity


@fault(
    "rinse_valve.opens_part",
    (
        "A limed pilot or a stiff diaphragm lets the valve open only part of the way.",
        "It then takes the pressure that the jets should have, the more the more water flows.",
        "Pressure ahead of it is right and behind it low.",
    ),
    onset="slowly",
)
def opens_part(plant: Plant, severity: float) -> None:
    """A tenth of its passage and less."""
    plant.rinse.valve_opens = 0.085 - 0.05 * severity
    plant.signs["rinse valve limed inside"] = 0.5 + 0.5 * severity


@fault(
    "rinse_valve.coil_burnt",
    (
        "The coil's wire is broken, so it pulls nothing.",
        "The pilot stays shut and the main valve with it.",
        "Volts are there and no blade is pulled; the ohms are endless.",
    ),
)
def coil_burnt(plant: Plant, severity: float) -> None:
    """Open coil."""
    plant.rinse.coil_sound = False
    plant.rinse.valve_opens = 0.0


@fault(
    "rinse_valve.stays_shut",
    (
        "The coil pulls, but pilot or diaphragm do not let the valve lift.",
        "No water passes though the command is there and pressure stands before it.",
        "Opened by hand it gives little or nothing.",
    ),
)
def stays_shut(plant: Plant, severity: float) -> None:
    """Stuck on its seat."""
    plant.rinse.valve_opens = 0.0
    plant.signs["rinse valve limed inside"] = 0.9


@fault(
    "rinse_valve.valve_reversed",
    (
        "The valve is fitted against its arrow.",
        "The main's pressure lifts the diaphragm instead of pressing it down, so it never quite shuts.",
        "Much water runs at rest, with and without command.",
    ),
    onset="installed",
    after="plumbing work",
)
def valve_reversed(plant: Plant, severity: float) -> None:
    """A good part passes when shut."""
    plant.rinse.valve_leak = 0.05 + 0.05 * severity
    plant.signs["rinse valve arrow against the flow"] = 1.0


@fault(
    "rinse_valve.override_open",
    (
        "The hand override of the valve stands open.",
        "Water runs whatever the command.",
        "Turned shut it stops.",
    ),
    after="chemical call or delime",
)
def override_open(plant: Plant, severity: float) -> None:
    """A good part passes."""
    plant.rinse.valve_leak = 0.06 + 0.05 * severity
    plant.signs["rinse override open"] = 1.0


@fault(
    "rinse_valve.arms_drain",
    (
        "After each rinse the arms empty themselves through the jets.",
        "Some water drips for a few seconds and then none.",
        "That is how it must be: standing water would cool there and lime the jets.",
    ),
)
def arms_drain(plant: Plant, severity: float) -> None:
    """A drip that looks like a leak."""
    plant.signs["arms drip a while"] = 0.5 + 0.5 * severity


@fault(
    "rinse_valve.fill_takes_rinse",
    (
        "A tank's fill that is fed from the booster stands open.",
        "It takes heated water past the arms all the time, and some pressure while a rack is rinsed.",
        "The tank runs over, and the booster's heat is shared with what runs away.",
    ),
    onset="slowly",
    after="cleaning by the crew",
)
def fill_takes_rinse(plant: Plant, severity: float) -> None:
    """A share of the jets' area."""
    plant.rinse.robbed = 0.3 + 0.6 * severity
    plant.signs["fill behind the booster open"] = 0.6 + 0.4 * severity


@fault(
    "rinse_valve.linkage_off",
    (
        "The rod between rinse arm and lever valve has come off.",
        "The rack swings the arm, and the lever stays where it is.",
        "Pushed by hand the lever gives full water.",
    ),
    after="parts replaced",
)
def linkage_off(plant: Plant, severity: float) -> None:
    """Its pin has gone."""
    plant.rinse.lever = True
    plant.rinse.actuator = "dead"
    plant.signs["rinse linkage off"] = 0.7 + 0.3 * severity
