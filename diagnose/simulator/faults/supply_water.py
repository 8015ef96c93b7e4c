"""Faults of the building's hot water: how warm and with which pressure it comes."""

from __future__ import annotations

from diagnose.simulator.plant import Plant
from diagnose.simulator.registry import fault

__all__: list[str] = []

_BOOSTER = "A booster adds its rise to whatever comes in, so what comes in too cold goes out too cold by as much."


def _colder(plant: Plant, kelvin: float) -> None:
    plant.water.temperature = max(plant.water.temperature - kelvin, plant.water.cold + 3.0)


@fault(
    "supply_water.heater_set_low",
    ("The building's heater is set under what the booster is sized for.", _BOOSTER, "It is so at every hour."),
    after="plumbing work",
)
def heater_set_low(plant: Plant, severity: float) -> None:
    """Set down by tens of degrees Fahrenheit."""
    _colder(plant, 10.0 + 10.0 * severity)
    plant.water.outlet_short = 10.0 + 10.0 * severity
    plant.signs["building heater set low"] = 1.0


@fault(
    "supply_water.heater_short",
    (
        "The building's heater has lost part of its heat, or more is drawn than it can make.",
        _BOOSTER,
        "The first racks are right, then it sinks, and the heater never rests.",
    ),
    onset="slowly",
)
def heater_short(plant: Plant, severity: float) -> None:
    """It sinks at rush."""
    _colder(plant, 9.0 + 11.0 * severity)
    plant.water.outlet_short = 9.0 + 11.0 * severity
    plant.signs["water sinks at rush"] = 0.6 + 0.4 * severity
    plant.signs["building heater never rests"] = 1.0


@fault(
    "supply_water.drawn_elsewhere",
    (
        "Another fixture takes the hot water away while the machine rinses.",
        _BOOSTER,
        "Shut it, and the inlet climbs again.",
    ),
    onset="comes and goes",
)
def drawn_elsewhere(plant: Plant, severity: float) -> None:
    """A hose or a laundry draws."""
    _colder(plant, 9.0 + 9.0 * severity)
    plant.water.outlet_short = 6.0 + 7.0 * severity
    plant.water.static *= 0.9
    plant.signs["water sinks at rush"] = 0.6 + 0.4 * severity
    plant.signs["another fixture draws"] = 1.0
    plant.signs["building heater never rests"] = 1.0


@fault(
    "supply_water.recirc_dead",
    (
        "The circulation pump moves nothing, so the main cools between draws.",
        "The first water is what stood in the pipe.",
        "After minutes of flow it comes hot; the return pipe is cold.",
    ),
)
def recirc_dead(plant: Plant, severity: float) -> None:
    """A cold main."""
    plant.signs["water cold at first"] = 0.6 + 0.4 * severity
    plant.signs["circulation return cold"] = 1.0
    _colder(plant, 3.0)


@fault(
    "supply_water.dead_leg",
    (
        "A long branch that no circulation reaches cools between rushes.",
        "The first racks get what stood in it.",
        "Then it comes hot and stays so.",
    ),
    onset="installed",
)
def dead_leg(plant: Plant, severity: float) -> None:
    """A long branch."""
    plant.signs["water cold at first"] = 0.6 + 0.4 * severity
    plant.signs["branch long and uncirculated"] = 0.6 + 0.4 * severity
    _colder(plant, 2.0)


@fault(
    "supply_water.tap_left_mixed",
    (
        "A mixing tap stands open at its handles and is shut at its nozzle.",
        "Cold water crosses there into the hot pipe.",
        "The machine gets one lukewarm figure until the handles are closed.",
    ),
    after="cleaning by the crew",
)
def tap_left_mixed(plant: Plant, severity: float) -> None:
    """Cold crosses at a tap."""
    _colder(plant, 9.0 + 11.0 * severity)
    plant.signs["mixing station open"] = 1.0
    plant.signs["closing the station helps"] = 1.0


@fault(
    "supply_water.check_valve_leaks",
    (
        "The check valves of a mixing station leak.",
        "Cold water crosses into the hot pipe though its nozzle is shut.",
        "With the station's hot stop closed cold water still comes at its union.",
    ),
    onset="slowly",
)
def check_valve_leaks(plant: Plant, severity: float) -> None:
    """Cold crosses at a station."""
    _colder(plant, 9.0 + 10.0 * severity)
    plant.signs["cold crosses at a station"] = 1.0
    plant.signs["mixing station open"] = 1.0
    plant.signs["closing the station helps"] = 1.0


@fault(
    "supply_water.tempering_low",
    ("A tempering valve in the line mixes cold water in.", _BOOSTER, "Its hot port is hot and its outlet is not."),
    after="plumbing work",
)
def tempering_low(plant: Plant, severity: float) -> None:
    """It mixes too cold."""
    _colder(plant, 10.0 + 10.0 * severity)
    plant.signs["tempering valve mixes cold"] = 1.0


@fault(
    "supply_water.piped_cold",
    ("The machine is connected to the cold main.", _BOOSTER, "Its inlet stays as cold as a cold tap."),
    onset="installed",
    after="newly connected",
)
def piped_cold(plant: Plant, severity: float) -> None:
    """On the cold line."""
    plant.water.temperature = plant.water.cold + 2.0
    plant.signs["piped to the cold main"] = 1.0


@fault(
    "supply_water.stop_part_closed",
    (
        "A stop valve ahead of the machine is not fully open.",
        "Its narrow gap costs pressure with the square of the flow and nothing at rest.",
        "The regulator behind it stands open and cannot help.",
    ),
    after="plumbing work",
)
def stop_part_closed(plant: Plant, severity: float) -> None:
    """A few per cent of its passage."""
    plant.water.stop_open = 0.085 - 0.045 * severity
    plant.signs["stop valve not open"] = 0.6 + 0.4 * severity


@fault(
    "supply_water.line_strainer_blocked",
    (
        "The strainer ahead of the machine is full.",
        "It costs pressure with the square of the flow and nothing at rest.",
        "Ahead of it there is pressure while it flows, behind it little.",
    ),
    onset="slowly",
    after="plumbing work",
)
def line_strainer_blocked(plant: Plant, severity: float) -> None:
    """A few per cent of its passage."""
    plant.water.strainer_open = 0.085 - 0.045 * severity
    plant.signs["line strainer full"] = 0.6 + 0.4 * severity


@fault(
    "supply_water.main_low",
    (
        "The building's hot main has little pressure, or sags at rush.",
        "No regulator can give more than stands before it.",
        "The taps beside the machine run weakly too.",
    ),
)
def main_low(plant: Plant, severity: float) -> None:
    """15 psi and less."""
    plant.water.static = (17.0 - 7.0 * severity) * 6894.757
    plant.signs["neighbour taps weak"] = 0.6 + 0.4 * severity


@fault(
    "supply_water.main_high",
    (
        "The main stands far over 80 psi.",
        "A regulator lets a share of what is over that through.",
        "Flow grows with the root of the pressure, and the rise falls.",
    ),
)
def main_high(plant: Plant, severity: float) -> None:
    """120 psi and more."""
    plant.water.static = (135.0 + 45.0 * severity) * 6894.757


@fault(
    "supply_water.branch_narrow",
    (
        "The branch to the machine is too narrow or furred up.",
        "Its length costs pressure with the square of the flow.",
        "At rest the pressure is right, flowing it is low ahead of the regulator already.",
    ),
    onset="installed",
)
def branch_narrow(plant: Plant, severity: float) -> None:
    """A pipe of half the passage."""
    plant.water.factor *= 0.24 - 0.1 * severity
    plant.signs["branch narrow"] = 0.6 + 0.4 * severity


@fault(
    "supply_water.check_valve_sticks",
    (
        "A check valve ahead of the machine opens only part of the way.",
        "It costs pressure while water flows and hisses.",
        "The pressures ahead of and behind it lie far apart.",
    ),
    onset="slowly",
)
def check_valve_sticks(plant: Plant, severity: float) -> None:
    """A small gap."""
    plant.water.stop_open = 0.085 - 0.045 * severity
    plant.signs["check valve hisses"] = 0.6 + 0.4 * severity


@fault(
    "supply_water.supply_off",
    (
        "The hot water is shut off.",
        "Nothing comes to the machine, nor to the taps beside it.",
        "No pressure, no flow, no rinse.",
    ),
)
def supply_off(plant: Plant, severity: float) -> None:
    """No water at all."""
    plant.water.static = 0.0
    plant.signs["neighbour taps dry"] = 1.0
