"""Faults of the rinse pressure gauge and of how it is read."""

from __future__ import annotations

from diagnose.simulator.plant import Plant
from diagnose.simulator.registry import fault

__all__: list[str] = []

_PSI = 6894.757


@fault(
    "rinse_gauge.needle_low",
    (
        "The needle has slipped or its tube is strained: it shows less than there is.",
        "Spray and flow are right, and a test gauge at the same point shows it.",
        "At rest it may stand below its zero pin.",
    ),
)
def needle_low(plant: Plant, severity: float) -> None:
    """Some psi low."""
    plant.rinse.gauge_offset = -(6.0 + 6.0 * severity) * _PSI


@fault(
    "rinse_gauge.needle_high",
    (
        "A knock of pressure has strained the tube: the needle shows more than there is.",
        "Flow and spray are those of the true pressure.",
        "Without pressure it stands above zero.",
    ),
)
def needle_high(plant: Plant, severity: float) -> None:
    """Some psi high."""
    plant.rinse.gauge_offset = (7.0 + 7.0 * severity) * _PSI


@fault(
    "rinse_gauge.port_limed",
    (
        "The small hole to the gauge is limed nearly shut.",
        "Pressure gets through it so slowly that the needle has not arrived when the rack has passed.",
        "The gauge shows too little and creeps.",
    ),
    onset="slowly",
)
def port_limed(plant: Plant, severity: float) -> None:
    """It shows half and less."""
    plant.rinse.gauge_factor = 0.6 - 0.3 * severity
    plant.signs["gauge needle creeps"] = 0.5 + 0.5 * severity
    plant.water.hardness = max(plant.water.hardness, 0.2)


@fault(
    "rinse_gauge.tapped_upstream",
    (
        "The gauge sits where the water stands between rinses.",
        "Read at rest it shows what the regulator or the main holds, not what drives the jets.",
        "It drops when the rinse begins.",
    ),
    onset="installed",
)
def tapped_upstream(plant: Plant, severity: float) -> None:
    """Sits ahead of the valve; the main's pressure creeps up there at rest."""
    plant.signs["gauge ahead of the valve"] = 1.0
    plant.signs["gauge read at rest"] = 0.6 + 0.4 * severity
    plant.rinse.creeps = 0.6


@fault(
    "rinse_gauge.read_between_racks",
    (
        "The gauge was read while nothing flowed.",
        "Behind the shut valve there is no pressure, so it shows nothing.",
        "While a rack is rinsed it is right.",
    ),
)
def read_between_racks(plant: Plant, severity: float) -> None:
    """Told wrongly; the gauge itself is sound."""
    plant.signs["pressure told from between racks"] = 1.0
    plant.signs["gauge read at rest"] = 0.6 + 0.4 * severity
