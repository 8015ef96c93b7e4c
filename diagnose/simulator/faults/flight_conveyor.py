"""Faults of a belt of flights: its loading, its rows and its way out."""

from __future__ import annotations

from diagnose.simulator.plant import Plant
from diagnose.simulator.registry import fault

__all__: list[str] = []

_FLIGHT = ("flight",)
# Shares of ware, loads and how marked a sign is: judgement throughout.


@fault(
    "flight_conveyor.small_ware",
    (
        "Pieces smaller than the gap between flights stand on the bare belt.",
        "They fall through, and lie in baskets and on the return pan.",
        "With plates alone nothing is lost.",
    ),
    onset="comes and goes",
    conveyor=_FLIGHT,
)
def small_ware(plant: Plant, severity: float) -> None:
    """A tenth of the small pieces to a third."""
    plant.conveyor.flights.falls += 0.12 + 0.25 * severity
    plant.signs["small ware on the bare belt"] = 0.6 + 0.4 * severity


@fault(
    "flight_conveyor.ware_tall",
    (
        "Ware stands taller than the tunnel or leans out of its flight.",
        "It strikes the entrance or the first arm, turns across and holds what follows.",
        "Plates pass under.",
    ),
    onset="comes and goes",
    conveyor=_FLIGHT,
)
def ware_tall(plant: Plant, severity: float) -> None:
    """Always when the pans come."""
    plant.conveyor.flights.strikes += 0.12 + 0.25 * severity
    plant.signs["ware too tall on the belt"] = 0.6 + 0.4 * severity


@fault(
    "flight_conveyor.ware_blown",
    (
        "Light ware stands on the belt with nothing over it.",
        "The lower sprays lift it and turn it over.",
        "It comes out in a heap or wedges under a curtain.",
    ),
    onset="comes and goes",
    conveyor=_FLIGHT,
)
def ware_blown(plant: Plant, severity: float) -> None:
    """Plastic bowls."""
    plant.conveyor.flights.strikes += 0.1 + 0.2 * severity
    plant.signs["light ware on the belt"] = 0.6 + 0.4 * severity


@fault(
    "flight_conveyor.belt_overloaded",
    (
        "More weight stands on the belt than its plate allows.",
        "Friction rises with the weight and the drive comes to its limit.",
        "With plates it has strength enough.",
    ),
    onset="comes and goes",
    conveyor=_FLIGHT,
)
def belt_overloaded(plant: Plant, severity: float) -> None:
    """Pots in layers: a third to seven tenths over the plate."""
    plant.conveyor.flights.load = 1.35 + 0.35 * severity
    plant.signs["heavy pans in layers"] = 0.6 + 0.4 * severity


@fault(
    "flight_conveyor.not_unloaded",
    (
        "Nobody takes the ware off, and it reaches the bar across the exit.",
        "The bar opens the conveyor's circuit, as it is meant to.",
        "With the first piece lifted away the belt goes on.",
    ),
    onset="comes and goes",
    conveyor=_FLIGHT,
)
def not_unloaded(plant: Plant, severity: float) -> None:
    """One pair of hands too few."""
    plant.conveyor.table.pressed = "rack"


@fault(
    "flight_conveyor.end_bar_stuck",
    (
        "The bar across the exit is stiff with lime, or its switch is.",
        "It stays over with no ware at it, and the circuit stays open.",
        "Pulled back by hand it lets the belt run.",
    ),
    conveyor=_FLIGHT,
)
def end_bar_stuck(plant: Plant, severity: float) -> None:
    """Crust on the pivots."""
    plant.conveyor.table.pressed = "itself"


@fault(
    "flight_conveyor.comb_bent",
    (
        "Fingers of the comb at the exit are bent or missing.",
        "Ware of those columns tips there and is drawn down with the flights.",
        "The other columns slide off as ever.",
    ),
    conveyor=_FLIGHT,
)
def comb_bent(plant: Plant, severity: float) -> None:
    """Two or three columns."""
    plant.conveyor.flights.drawn_down += 0.12 + 0.25 * severity
    plant.signs["comb fingers bent"] = 0.6 + 0.4 * severity


@fault(
    "flight_conveyor.flight_broken",
    (
        "A flight has broken fingers.",
        "Plates of that row lean on one another and drop.",
        "It comes by once in the belt's round.",
    ),
    conveyor=_FLIGHT,
)
def flight_broken(plant: Plant, severity: float) -> None:
    """One row and its neighbours."""
    plant.conveyor.flights.falls += 0.06 + 0.08 * severity
    plant.conveyor.flights.limps = 0.2 + 0.3 * severity
    plant.signs["flight fingers broken"] = 0.6 + 0.4 * severity


@fault(
    "flight_conveyor.flight_unhooked",
    (
        "A flight has come off its chain at one end.",
        "It hangs askew and catches at entrance and comb once in the round.",
        "Its fingers are whole.",
    ),
    conveyor=_FLIGHT,
)
def flight_unhooked(plant: Plant, severity: float) -> None:
    """A scrape once in the round."""
    plant.conveyor.flights.strikes += 0.04 + 0.05 * severity
    plant.conveyor.flights.limps = 0.5 + 0.4 * severity
    plant.signs["flight off its chain"] = 0.6 + 0.4 * severity
    plant.signs["row clicks once in the round"] = 0.2 + 0.2 * severity


@fault(
    "flight_conveyor.takeup_slack",
    (
        "The take-ups have worked back and the belt hangs slack.",
        "Loaded, its chains climb the teeth and drop with a crack.",
        "The links are as long as new.",
    ),
    onset="slowly",
    conveyor=_FLIGHT,
)
def takeup_slack(plant: Plant, severity: float) -> None:
    """Over half an inch a foot."""
    plant.conveyor.chains.sag = 0.058 + 0.035 * severity
    plant.signs["belt jumps with a bang"] = 0.25 + 0.3 * severity


@fault(
    "flight_conveyor.takeup_uneven",
    (
        "One take-up is set further than the other.",
        "The belt runs to one side and rubs the wall there.",
        "All flights slant alike.",
    ),
    onset="installed",
    after="parts replaced",
    conveyor=_FLIGHT,
)
def takeup_uneven(plant: Plant, severity: float) -> None:
    """A quarter to half an inch."""
    plant.conveyor.flights.askew = 0.005 + 0.008 * severity
    plant.signs["flights slant"] = 0.5 + 0.5 * severity
    plant.signs["belt edge grinds the wall"] = 0.2 + 0.2 * severity


@fault(
    "flight_conveyor.chains_worn",
    (
        "The belt's side chains are worn long.",
        "Longer links ride up the teeth and jump, with the take-ups at their end.",
        "Twenty links measure over two per cent more than new.",
    ),
    onset="slowly",
    conveyor=_FLIGHT,
)
def chains_worn(plant: Plant, severity: float) -> None:
    """Over two and up to four per cent."""
    plant.conveyor.chains.wear = [0.027 + 0.012 * severity, 0.028 + 0.012 * severity]
    plant.conveyor.chains.sag = 0.05 + 0.025 * severity
    plant.signs["belt jumps with a bang"] = 0.25 + 0.3 * severity


@fault(
    "flight_conveyor.sprocket_shifted",
    (
        "A sprocket has turned on the belt's shaft.",
        "One side of the belt runs a tooth behind the other and climbs.",
        "The take-ups stand as they always did.",
    ),
    conveyor=_FLIGHT,
)
def sprocket_shifted(plant: Plant, severity: float) -> None:
    """By a tooth."""
    plant.conveyor.chains.offset = 0.015 + 0.015 * severity
    plant.signs["flights slant"] = 0.5 + 0.5 * severity
    plant.signs["belt sprocket loose on the shaft"] = 0.6 + 0.4 * severity
    plant.signs["belt climbs with a bang"] = 0.25 + 0.2 * severity
