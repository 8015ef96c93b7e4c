"""Faults of the breaker and the earth-leakage device of the feed, and of what makes them open."""

from __future__ import annotations

import math

from diagnose.simulator.plant import Plant
from diagnose.simulator.registry import fault

__all__: list[str] = []

_BIMETAL = "A bimetal bends by all heat that reaches it, and its own current gives only a part of it."
_SUM = "The device adds up what does not come back, and opens from half its rating on."
_FROM_BREAKER = 313.15  # K for which a breaker is rated: see protecting


def _load(plant: Plant) -> float:
    """About what all loads draw from a line, over the breaker's rating: by the plates."""
    lines = math.sqrt(3.0) if plant.power.phases == 3 else 1.0
    heaters = [t.heater for t in plant.tanks.values() if t.heater.kind == "electric"]
    if plant.booster.heater.kind == "electric" and plant.plate.traits["booster_place"] != "remote":
        heaters.append(plant.booster.heater)
    amps = sum(h.power for h in heaters) / (lines * plant.power.volts)
    amps += sum(m.amps * (0.5 + 0.45 * m.load) for m in plant.motors.values())
    return amps / plant.plate["breaker_amps"]


def _heat_over(plant: Plant, severity: float) -> float:
    """Share of the trip heat that, added to what the load gives, is too much: the current's goes with its square."""
    return max(0.1, 1.0 - ((0.93 - 0.1 * severity) * _load(plant)) ** 2)


@fault(
    "breaker_earth_leakage.breaker_small",
    (
        "More runs at once than the breaker bears for hours.",
        "What was fitted since takes the margin that its rating leaves.",
        "At half load it holds, in the rush it bends and opens.",
    ),
    onset="installed",
    after="parts replaced",
    tank_heat=("electric",),
)
def breaker_small(plant: Plant, severity: float) -> None:
    """Stronger elements on the old breaker, and a full house voltage."""
    plant.power.volts *= 1.02
    more = min(1.14, max(1.07, (0.82 + 0.06 * severity) / _load(plant)))  # the plates' sum explains no more than this
    for heater in (plant.booster.heater, *(t.heater for t in plant.tanks.values())):
        heater.elements = [g * more for g in heater.elements]
    plant.power.breaker_share = min(0.8, 0.98 * _load(plant))  # 80 % for hours of work: from memory, NEC 210.20


@fault(
    "breaker_earth_leakage.screw_hot",
    (
        "A screw of the breaker is loose, and its joint heats with the square of the current.",
        "The heat walks along the copper into the bimetal.",
        _BIMETAL,
    ),
    onset="slowly",
)
def screw_hot(plant: Plant, severity: float) -> None:
    """Loosened by warming and cooling."""
    plant.power.screw_heat = _heat_over(plant, severity)
    plant.signs["breaker screw brown"] = 0.5 + 0.5 * severity


@fault(
    "breaker_earth_leakage.breaker_worn",
    (
        "The breaker's latch is worn by use as a switch, or by a short.",
        "It lets go at a load that it should bear.",
        "Its screws stay cool.",
    ),
    onset="slowly",
)
def breaker_worn(plant: Plant, severity: float) -> None:
    """Sooner from month to month; at last with the heaters off."""
    plant.power.breaker_share = (0.93 - 0.2 * severity) * _load(plant)
    plant.signs["breaker latch worn"] = severity


@fault(
    "breaker_earth_leakage.leakage_adds_up",
    (
        "Heaters and motors are each a little damp, none of them ill.",
        "Together they leak more than any does alone.",
        _SUM,
    ),
    onset="comes and goes",
    after="cleaning by the crew",
)
def leakage_adds_up(plant: Plant, severity: float) -> None:
    """The first heating of the morning, or after wash-down."""
    each = 1.35e6 - 0.2e6 * severity
    for heater in (plant.booster.heater, *(t.heater for t in plant.tanks.values())):
        heater.earth_ohms = each
    for motor in plant.motors.values():
        motor.earth_ohms = each
    plant.power.coil_leak_ohms = plant.power.leak_ohms = 1.6e6
    plant.power.damp = 3.6 + 1.4 * severity


@fault(
    "breaker_earth_leakage.start_peak",
    (
        "In its first half cycle a motor's start can draw near three times its standstill current.",
        "How high depends on the instant at which its contactor closes.",
        "The breaker's quick release stands below the highest of them.",
    ),
    after="parts replaced",
)
def start_peak(plant: Plant, severity: float) -> None:
    """Now and then at a start, never twice running."""
    plant.power.peak_share = 0.9 - 0.3 * severity


@fault(
    "breaker_earth_leakage.others_on_feed",
    (
        "Another appliance hangs on the machine's breaker.",
        "Its current adds to the machine's, and the breaker knows only the sum.",
        "It opens in a rush of either.",
    ),
    onset="installed",
    after="electrical work",
)
def others_on_feed(plant: Plant, severity: float) -> None:
    """A disposer, a plate warmer, a water heater."""
    rating = plant.plate["breaker_amps"]
    plant.power.others = (1.12 + 0.2 * severity - _load(plant)) * rating


@fault(
    "breaker_earth_leakage.panel_warm",
    (
        "The panel hangs in the heat of the dish room.",
        _BIMETAL,
        "On warm afternoons it bends at a load it bore before.",
    ),
    onset="slowly",
)
def panel_warm(plant: Plant, severity: float) -> None:
    """Its door is shut, and it warms itself besides."""
    plant.power.panel_air = 318.0 + 14.0 * severity
    given = 0.012 * (plant.power.panel_air - _FROM_BREAKER)  # as `protecting` counts it
    # The breaker is of the size that just serves in a cool panel.
    plant.power.breaker_share = min(1.0, 0.97 * _load(plant) / math.sqrt(1.0 - given))


@fault(
    "breaker_earth_leakage.device_weak",
    (
        "The earth-leakage device has aged in the damp.",
        "It opens at a few milliamperes that every machine of heaters leaks.",
        "Nothing behind it is ill.",
    ),
    onset="comes and goes",
)
def device_weak(plant: Plant, severity: float) -> None:
    """At no load in particular."""
    plant.power.device_share = 0.16 - 0.06 * severity


@fault(
    "breaker_earth_leakage.device_too_fine",
    (
        "The device is one for people at sockets, of five milliamperes.",
        "The natural leakage of heaters as they warm is of that size.",
        "Nothing behind it is ill.",
    ),
    onset="installed",
    after="newly connected",
)
def device_too_fine(plant: Plant, severity: float) -> None:
    """It opens on the first heating of the day."""
    plant.power.device = 0.0045
    plant.power.leak_ohms = 3e6  # what the first heating drives out: damp of the night


@fault(
    "breaker_earth_leakage.neutral_joined",
    (
        "The neutral touches earth behind the device.",
        "Current of lamps and control goes back by both, and the device misses a part.",
        "To it that is leakage, whatever draws.",
    ),
    onset="installed",
    after="electrical work",
)
def neutral_joined(plant: Plant, severity: float) -> None:
    """A bonding screw left in, two wires changed over."""
    plant.power.neutral_ohms = 1.5 - severity


@fault(
    "breaker_earth_leakage.surge_once",
    (
        "A surge charges wires and filters in a blink, and the current to earth is leakage to the device.",
        "The storm is over and nothing leaks.",
        "Reset, it holds.",
    ),
)
def surge_once(plant: Plant, severity: float) -> None:
    """Once, and not again."""
    plant.signs["opened once in a storm"] = 0.6 + 0.4 * severity


@fault(
    "breaker_earth_leakage.wire_chafed",
    (
        "A wire has rubbed through on an edge inside the machine.",
        "Its copper touches metal, always or as it shakes.",
        "The current to earth is that of a short, or enough for the device.",
    ),
    after="parts replaced",
)
def wire_chafed(plant: Plant, severity: float) -> None:
    """Shaken to the metal as motors start, or lying on it."""
    if severity < 0.5:
        plant.power.wire_ohms = 4e3
    else:
        plant.power.wire_ohms = 200.0 if severity < 0.62 else 0.05
        plant.control.links["breaker"] = False


@fault(
    "breaker_earth_leakage.box_wet",
    (
        "Water stands in the control box or a junction box.",
        "Across terminals it carries current to the metal, the more the dirtier it is.",
        "Dried by noon it holds.",
    ),
    onset="comes and goes",
    after="cleaning by the crew",
)
def box_wet(plant: Plant, severity: float) -> None:
    """A hose, an open gland, steam of the night."""
    plant.power.leak_ohms = 10.0 ** (5.6 - 0.8 * severity)
    plant.power.damp = 3.5
    plant.signs["water in box"] = 0.6 + 0.4 * severity
    if severity > 0.75:
        plant.power.neutral_ohms = 2e4


@fault(
    "breaker_earth_leakage.coil_earthed",
    (
        "A valve's coil or its plug is wet inside and leaks to earth.",
        "It does so only while it has its volts.",
        "The device opens as the rinse or the fill comes on.",
    ),
)
def coil_earthed(plant: Plant, severity: float) -> None:
    """A cracked cap, a green plug."""
    plant.power.coil_leak_ohms = 10.0 ** (5.1 - severity)


@fault(
    "breaker_earth_leakage.lines_touch",
    (
        "Two lines have burnt through to one another.",
        "Nothing but the wires limits the current, hundreds of times the rated one.",
        "The breaker opens in the same half cycle, and earth is clean.",
    ),
)
def lines_touch(plant: Plant, severity: float) -> None:
    """A bang, soot, and it opens at every try."""
    plant.power.touching = True
    plant.control.links["breaker"] = False
    plant.signs["soot between lines"] = 0.6 + 0.4 * severity
