"""Faults of terminals, wires and parts that get too hot, and smells that are no fault."""

from __future__ import annotations

from diagnose.simulator.plant import Plant
from diagnose.simulator.registry import fault

__all__: list[str] = []

_ELECTRIC = ("electric",)
_STOP = "What smells hot goes on getting hotter, since heat ruins the contact that makes it."


@fault(
    "hot_spots.transformer_overheats",
    (
        "More hangs on the control transformer than it can give, or some of its turns are shorted.",
        "It is hot with nothing but the control circuit on, and its volts sag.",
        "Its varnish smells sweet before it fails.",
    ),
    onset="slowly",
    after="parts replaced",
)
def transformer_overheats(plant: Plant, severity: float) -> None:
    """Hot, and a little short of volts."""
    plant.power.control_share *= 0.93 - 0.05 * severity
    plant.signs["control transformer overheats"] = 0.5 + 0.5 * severity


@fault(
    "hot_spots.coil_cooks",
    (
        "A coil can't close its magnet and draws several times its holding current.",
        "Its heat goes by the square of that, and its plastic swells and smells.",
        "It still pulls, late and with a hum, until it burns through.",
    ),
)
def coil_cooks(plant: Plant, severity: float) -> None:
    """A contactor's coil."""
    plant.signs["coil cooks"] = 0.5 + 0.5 * severity


@fault(
    "hot_spots.heater_screw_hot",
    (
        "A screw of the tank heater's circuit is loose.",
        "All lines still carry their amps, and a few tenths of a volt by those make tens of watts in one screw.",
        _STOP,
    ),
    onset="slowly",
    after="electrical work",
    tank_heat=_ELECTRIC,
)
def heater_screw_hot(plant: Plant, severity: float) -> None:
    """Glows while the tank heats; what its volts take off the bank is too little to count."""
    plant.signs["tank heater screw glows"] = 0.7 + 0.6 * severity


@fault(
    "hot_spots.wire_thin",
    (
        "A wire was fitted that is too thin for its line.",
        "It is warm along all its length, for its ohms lie there and not in a joint.",
        "Its insulation softens where it lies bundled with others.",
    ),
    onset="installed",
    after="electrical work",
)
def wire_thin(plant: Plant, severity: float) -> None:
    """Warm from end to end."""
    plant.signs["wire warm along its length"] = 0.5 + 0.5 * severity


@fault(
    "hot_spots.soil_on_element",
    (
        "Food or film has sunk onto a tank's element and scorches there.",
        "The element is as good as ever, and so are its currents.",
        "It smells over the tank and nowhere else.",
    ),
    after="cleaning by the crew",
    tank_heat=_ELECTRIC,
)
def soil_on_element(plant: Plant, severity: float) -> None:
    """Scorched on."""
    plant.signs["soil burnt on the element"] = 0.5 + 0.5 * severity


@fault(
    "hot_spots.dust_burns_off",
    (
        "Lint that settled in a long rest burns off at the first heat.",
        "Each heating leaves less of it.",
        "Nothing is wrong.",
    ),
)
def dust_burns_off(plant: Plant, severity: float) -> None:
    """No fault."""
    plant.signs["dust burns off"] = 0.5 + 0.5 * severity


@fault(
    "hot_spots.smell_from_outside",
    (
        "The exhaust draws air through the dish room from all over the house, and its smells with it.",
        "It smells with the machine off as well.",
        "Nothing of the machine is wrong.",
    ),
    onset="comes and goes",
)
def smell_from_outside(plant: Plant, severity: float) -> None:
    """From elsewhere."""
    plant.signs["smell comes from elsewhere"] = 0.5 + 0.5 * severity
