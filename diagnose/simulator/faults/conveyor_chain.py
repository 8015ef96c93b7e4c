"""Faults of the two rack chains, their lugs, sprockets and idlers."""

from __future__ import annotations

from diagnose.simulator.plant import Plant
from diagnose.simulator.registry import fault

__all__: list[str] = []

_CHAIN = ("chain",)
# Shares of racks, drags and how marked a sign is: judgement throughout.


def _drags(plant: Plant, severity: float, sign: str) -> None:
    """A pull that is there without a rack as well, enough for the motor's overload."""
    much = 0.85 + 0.15 * severity
    plant.conveyor.drag += much
    plant.conveyor.stiff += much
    plant.signs[sign] = 0.4 + 0.5 * severity


def _stands(plant: Plant, severity: float, sign: str) -> None:
    plant.conveyor.chains.one_stands = True
    plant.conveyor.track.turned += 0.6 + 0.3 * severity
    plant.signs[sign] = 0.7 + 0.3 * severity


_TURNS = "Racks are pushed at one corner only, turn and wedge."


@fault(
    "conveyor_chain.lug_broken",
    (
        "One lug is bent back or gone.",
        "The rack that it should push is pushed from the other side alone, or left.",
        "That is one rack in as many as the chain has lugs, wherever it then is.",
    ),
    conveyor=_CHAIN,
)
def lug_broken(plant: Plant, severity: float) -> None:
    """One or two of the round, and more of the racks as they come at every second lug."""
    plant.conveyor.track.left["one lug of the round"] = 0.06 + 0.08 * severity
    plant.signs["lug bent or gone"] = 0.6 + 0.4 * severity


@fault(
    "conveyor_chain.strips_worn",
    (
        "The strips under the chains are worn.",
        "Over that stretch all lugs ride low and pass under light racks.",
        "Heavy racks sink to them and go.",
    ),
    onset="slowly",
    conveyor=_CHAIN,
)
def strips_worn(plant: Plant, severity: float) -> None:
    """The light ones stay, over a stretch."""
    plant.conveyor.track.left["light racks"] = 0.18 + 0.3 * severity
    plant.signs["lugs low over a stretch"] = 0.5 + 0.5 * severity


@fault(
    "conveyor_chain.sprocket_shifted",
    (
        "A driving sprocket has come loose on the shaft.",
        "The shaft turns in it and that chain stands or creeps.",
        _TURNS,
    ),
    conveyor=_CHAIN,
)
def sprocket_shifted(plant: Plant, severity: float) -> None:
    """Loose on its key."""
    _stands(plant, severity, "chain sprocket loose on the shaft")


@fault(
    "conveyor_chain.chain_off",
    ("One chain has jumped out of its teeth.", "It lies beside them and is not driven.", _TURNS),
    conveyor=_CHAIN,
)
def chain_off(plant: Plant, severity: float) -> None:
    """It lies in a loop."""
    _stands(plant, severity, "chain lies beside its teeth")
    plant.conveyor.chains.sag = 0.07 + 0.05 * severity


@fault(
    "conveyor_chain.link_lost",
    ("A chain has parted at its connecting link.", "It has two ends and lies still.", _TURNS),
    conveyor=_CHAIN,
)
def link_lost(plant: Plant, severity: float) -> None:
    """Two ends."""
    _stands(plant, severity, "chain has two ends")


@fault(
    "conveyor_chain.chains_mismatched",
    (
        "A new chain runs beside a worn one.",
        "Its links are shorter, so for each turn of the shaft its lugs are a little ahead, more with every link.",
        "However they are set, racks soon go askew.",
    ),
    onset="slowly",
    after="parts replaced",
    conveyor=_CHAIN,
)
def chains_mismatched(plant: Plant, severity: float) -> None:
    """One to two per cent apart."""
    plant.conveyor.chains.wear = [0.001, 0.010 + 0.008 * severity]
    plant.conveyor.chains.offset = 0.009 + 0.012 * severity
    plant.conveyor.track.turned += 0.2 + 0.3 * severity


@fault(
    "conveyor_chain.tension_low",
    (
        "Both idlers have worked back and the chains hang slack.",
        "Under full racks the chain climbs its teeth and drops back with a crack.",
        "With one rack all is well, as the pull is small.",
    ),
    onset="slowly",
    conveyor=_CHAIN,
)
def tension_low(plant: Plant, severity: float) -> None:
    """Half an inch a foot and more."""
    plant.conveyor.chains.sag = 0.058 + 0.035 * severity
    plant.signs["rack chains jump with a bang"] = 0.3 + 0.3 * severity


@fault(
    "conveyor_chain.chain_stretched",
    (
        "Both chains are worn long in their pins.",
        "Longer links ride up the teeth and jump, though the idlers stand at their end.",
        "Twenty links measure over two per cent more than new.",
    ),
    onset="slowly",
    conveyor=_CHAIN,
)
def chain_stretched(plant: Plant, severity: float) -> None:
    """Over two and up to four per cent."""
    plant.conveyor.chains.wear = [0.027 + 0.012 * severity, 0.028 + 0.012 * severity]
    plant.conveyor.chains.sag = 0.052 + 0.025 * severity
    plant.signs["rack chains jump with a bang"] = 0.3 + 0.3 * severity


@fault(
    "conveyor_chain.teeth_hooked",
    (
        "A sprocket's teeth are worn to hooks.",
        "The chain clings to them and snaps off, a tooth too late.",
        "Sag and length of the chain are as they should be.",
    ),
    onset="slowly",
    conveyor=_CHAIN,
)
def teeth_hooked(plant: Plant, severity: float) -> None:
    """Pointed like a wave."""
    plant.conveyor.chains.hooked = 0.4 + 0.5 * severity
    plant.signs["rack chains jump with a bang"] = 0.3 + 0.3 * severity


@fault(
    "conveyor_chain.tension_high",
    (
        "The chains are set as tight as rods.",
        "Their tension presses on every bearing and idler, rack or no rack.",
        "The motor carries that beside the racks and its overload opens.",
    ),
    onset="installed",
    after="parts replaced",
    conveyor=_CHAIN,
)
def tension_high(plant: Plant, severity: float) -> None:
    """An eighth of an inch a foot and less."""
    plant.conveyor.chains.sag = 0.008 - 0.004 * severity
    _drags(plant, severity, "rack chains like rods")


@fault(
    "conveyor_chain.idler_seized",
    (
        "An idler of a rack chain does not turn.",
        "The chain slides over standing teeth and cuts into them.",
        "That friction is there all the time and warms the idler.",
    ),
    onset="slowly",
    conveyor=_CHAIN,
)
def idler_seized(plant: Plant, severity: float) -> None:
    """A steady screech."""
    _drags(plant, severity, "idler screeches and stands")


@fault(
    "conveyor_chain.link_stiff",
    (
        "Some links are stiff with lime or rust.",
        "They will not bend round a sprocket, and everything twitches as they pass one.",
        "It comes once in each round of the chain.",
    ),
    onset="slowly",
    conveyor=_CHAIN,
)
def link_stiff(plant: Plant, severity: float) -> None:
    """Once in the round, and a share of the strokes is jerked."""
    _drags(plant, severity, "stiff links knock once a round")
    plant.conveyor.chains.hooked = 0.1  # a hump that climbs the teeth


@fault(
    "conveyor_chain.return_fouled",
    (
        "Ware or caked soil holds the return strand.",
        "The chain drags it along under the track, where nobody sees it.",
        "Above, nothing is in the racks' way, and the motor labours.",
    ),
    conveyor=_CHAIN,
)
def return_fouled(plant: Plant, severity: float) -> None:
    """A lid below."""
    _drags(plant, severity, "return strand of the racks fouled")
