"""Faults of the electrical supply."""

from __future__ import annotations

from diagnose.simulator.plant import Plant
from diagnose.simulator.registry import fault

__all__: list[str] = []

_THREE = (3,)
_TWO = "Motors on two lines carry the root of three times their working current, and can't start again."
_DELTA = "A heater in delta on two lines gives half its heat, and a single-phase machine is dead."


def _lost(plant: Plant) -> None:
    """The third line is gone; the control transformer hangs on the first two. Single phase loses its second."""
    plant.power.line_open = {2 if plant.power.phases == 3 else 1}


@fault("supply_power.fuse_open", ("One supply fuse has blown and its line ends there.", _TWO, _DELTA))
def fuse_open(plant: Plant, severity: float) -> None:
    """Blown by age or a passing short."""
    _lost(plant)
    plant.signs["line ends in fuse"] = 1.0


@fault("supply_power.breaker_pole_open", ("One pole of the feeding breaker does not make.", _TWO, _DELTA))
def breaker_pole_open(plant: Plant, severity: float) -> None:
    """Burnt inside."""
    _lost(plant)
    plant.signs["line ends in breaker"] = 1.0


@fault("supply_power.disconnect_blade_open", ("One blade of the disconnect stays out of its jaw.", _TWO, _DELTA))
def disconnect_blade_open(plant: Plant, severity: float) -> None:
    """Bent or burnt."""
    _lost(plant)
    plant.signs["line ends at blade"] = 1.0


@fault("supply_power.line_lug_burnt", ("A lug at the machine's block was loose and has burnt off.", _TWO, _DELTA))
def line_lug_burnt(plant: Plant, severity: float) -> None:
    """A loose screw heats by the square of the current until nothing is left."""
    _lost(plant)
    plant.signs["line ends at block"] = 1.0
    plant.signs["block burnt"] = 1.0


@fault(
    "supply_power.primary_phase_lost", ("The utility has lost a line ahead of the house.", _TWO, _DELTA), phases=_THREE
)
def primary_phase_lost(plant: Plant, severity: float) -> None:
    """Everything with three lines in the building suffers."""
    _lost(plant)
    plant.signs["line ends before panel"] = 1.0
    plant.signs["others hum or stand"] = 1.0


_WEAK = "Heat falls with the square of the volts: at nine tenths it is four fifths."
_WORK = "Motors take more current for the same work."


@fault("supply_power.service_low", ("The building's supply is low at all hours.", _WEAK, _WORK), onset="slowly")
def service_low(plant: Plant, severity: float) -> None:
    """Wrong tap or a weak utility."""
    plant.power.volts *= 0.86 - 0.06 * severity
    plant.signs["volts low both times"] = 1.0


@fault(
    "supply_power.sags_at_rush",
    ("With the kitchen at full load the supply sags.", _WEAK, _WORK),
    onset="comes and goes",
)
def sags_at_rush(plant: Plant, severity: float) -> None:
    """The transformer is too small for the rush."""
    plant.power.volts *= 0.86 - 0.06 * severity
    plant.signs["volts low at rush"] = 1.0
    plant.signs["lights brown at rush"] = 0.6 + 0.4 * severity


@fault(
    "supply_power.feeder_thin",
    ("The wires to the machine are too thin or too long.", "Each ampere costs volts on all lines alike.", _WEAK),
    onset="installed",
    after="newly connected",
)
def feeder_thin(plant: Plant, severity: float) -> None:
    """Volts good at the panel, low at the machine under load."""
    amps = max(0.6 * plant.plate["breaker_amps"], sum(m.amps for m in plant.motors.values()))
    plant.power.source_ohms = (0.1 + 0.06 * severity) * plant.power.volts / 1.73 / amps
    plant.power.volts *= 0.96
    plant.signs["drop alike on all lines"] = 1.0


@fault(
    "supply_power.wrong_service_low",
    ("The machine is built for a higher voltage than the house has.", _WEAK, _WORK),
    onset="installed",
    after="newly connected",
)
def wrong_service_low(plant: Plant, severity: float) -> None:
    """240 V elements on 208 V give three quarters of their heat."""
    plant.power.volts *= 208.0 / 240.0 - 0.01 * severity
    plant.signs["house a step lower"] = 1.0


_MUCH = "Heaters take and give more by the square of the volts."
_SATURATED = "Motor iron saturates and its idle current climbs: motors run hot, lamps burn out."


@fault("supply_power.tap_high", ("The transformer's tap is set too high.", _MUCH, _SATURATED), onset="installed")
def tap_high(plant: Plant, severity: float) -> None:
    """Most when the house is quiet."""
    plant.power.volts *= 1.175 + 0.04 * severity
    plant.signs["volts high when quiet"] = 1.0
    plant.signs["lamps burn out"] = 0.5 + 0.5 * severity


@fault(
    "supply_power.wrong_service_high",
    ("A machine for 208 V hangs on a 240 V house.", _MUCH, _SATURATED),
    onset="installed",
    after="newly connected",
)
def wrong_service_high(plant: Plant, severity: float) -> None:
    """A third more heat and current than the feed was sized for."""
    plant.power.volts *= 240.0 / 208.0 + 0.03 * severity
    plant.signs["house a step higher"] = 1.0
    plant.power.breaker_share *= 0.78  # it stands warm the whole shift; sized for the plate's current


_GROWL = "Volts that differ by a few percent make motor currents differ by six to ten times as many."
_BURN = "Windings run hot, overloads open."


@fault(
    "supply_power.loose_feeder_joint",
    ("A joint in one line of the feed has come loose.", "It drops volts as the load goes on, and heats.", _GROWL),
    onset="slowly",
    phases=_THREE,
)
def loose_feeder_joint(plant: Plant, severity: float) -> None:
    """The drop is there under load alone."""
    amps = plant.plate["breaker_amps"] * 0.6
    plant.power.joint_ohms[2] = (0.09 + 0.08 * severity) * plant.power.volts / 1.73 / amps
    plant.signs["joint hot on the way"] = 0.5 + 0.5 * severity


def _uneven(plant: Plant, severity: float) -> None:
    plant.power.line_share[1] *= 1.0 - 0.1 - 0.06 * severity


@fault(
    "supply_power.single_phase_loads_uneven",
    ("Single-phase loads hang on one line of the house more than on the others.", _GROWL, _BURN),
    onset="comes and goes",
    phases=_THREE,
)
def single_phase_loads_uneven(plant: Plant, severity: float) -> None:
    """One line carries much more and stands lower."""
    _uneven(plant, severity)
    plant.signs["one line of the house heavy"] = 1.0


@fault(
    "supply_power.pf_capacitor_fuse",
    ("The house's power-factor bank works on two lines only.", "It lifts those and leaves the third.", _GROWL),
    phases=_THREE,
)
def pf_capacitor_fuse(plant: Plant, severity: float) -> None:
    """A fuse of the bank is open."""
    _uneven(plant, severity)
    plant.signs["bank makes it uneven"] = 1.0


@fault(
    "supply_power.bank_uneven",
    ("Two or unlike transformers feed the house.", "Their drops differ, so the three volts do.", _GROWL),
    onset="installed",
    phases=_THREE,
)
def bank_uneven(plant: Plant, severity: float) -> None:
    """An open-delta bank."""
    _uneven(plant, severity)
    plant.signs["bank of unlike transformers"] = 1.0


@fault(
    "supply_power.utility_uneven",
    ("The utility itself delivers uneven volts.", _GROWL, _BURN),
    onset="comes and goes",
    phases=_THREE,
)
def utility_uneven(plant: Plant, severity: float) -> None:
    """Uneven ahead of the main, the house off."""
    _uneven(plant, severity)
    plant.signs["uneven ahead of the house"] = 1.0


@fault(
    "supply_power.ground_fault",
    (
        "A line somewhere in the building leaks to ground unseen.",
        "It stands near ground and its load tilts the volts.",
        _GROWL,
    ),
    phases=_THREE,
)
def ground_fault(plant: Plant, severity: float) -> None:
    """One line near ground."""
    _uneven(plant, severity)
    plant.signs["one line near ground"] = 1.0
    plant.signs["others hum or stand"] = 0.4


@fault(
    "supply_power.phase_order_swapped",
    (
        "Two supply lines were changed over.",
        "The field of every motor turns the other way.",
        "Pumps move half their water backwards, the conveyor and the fan run the wrong way.",
    ),
    after="electrical work",
    phases=_THREE,
)
def phase_order_swapped(plant: Plant, severity: float) -> None:
    """All motors backwards."""
    plant.power.swapped = True
    plant.air.fan_backwards = True
