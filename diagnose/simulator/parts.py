"""The parts of the simulated machine, each with the figures that a fault can change. All SI; sound as built."""

from __future__ import annotations

from dataclasses import dataclass, field

from diagnose.simulator.blades import Blade
from diagnose.simulator.control_parts import Coil, Control
from diagnose.simulator.conveyor_parts import Chains, Drive, Flights, JamSwitch, RunTimer, TableSwitch, Track
from diagnose.simulator.feeds import Chemistry, Feed
from diagnose.simulator.gas_parts import Burner, GasLine
from diagnose.simulator.steam_parts import SteamBranch, SteamLine

__all__ = [
    "Air",
    "Booster",
    "Burner",
    "Chemistry",
    "Control",
    "Conveyor",
    "Feed",
    "Fuel",
    "GasLine",
    "Heater",
    "Motor",
    "Power",
    "Pump",
    "RinseLine",
    "Tank",
    "Thermostat",
    "Water",
]


@dataclass
class Power:
    """The supply at the machine. Lines are 0, 1, 2; single phase has 0 and 1."""

    volts: float  # line to line, at the panel, no load
    phases: int
    frequency: float
    line_share: list[float] = field(default_factory=lambda: [1.0, 1.0, 1.0])  # of each line's voltage to neutral
    line_open: set[int] = field(default_factory=set)  # dead at the machine's terminals
    source_ohms: float = 0.02  # of each line, panel and feeder; judgement
    joint_ohms: list[float] = field(default_factory=lambda: [0.002, 0.002, 0.002])  # terminals at the machine
    swapped: bool = False  # two lines changed over: motors turn backwards
    control_share: float = 1.0  # control voltage over its rating
    leak_ohms: float = 2e7  # boxes and wiring of the machine to earth, without heaters and motors
    coil_leak_ohms: float = 5e7  # the valves' coils to earth
    neutral_ohms: float = 1e7  # neutral to earth behind the earth-leakage device
    touching: bool = False  # two lines have burnt through to one another
    others: float = 0.0  # A that something else takes from the machine's breaker
    breaker_share: float = 1.0  # current the breaker bears over its rating: small or weary ones bear less
    screw_heat: float = 0.0  # share of the breaker's trip heat that a loose screw on it gives
    panel_air: float = 304.0  # K in the panel that holds it
    wire_ohms: float = 5e7  # wires inside the machine to earth
    damp: float = 1.0  # how much more leaks at its dampest, over a usual day
    peak_share: float = 1.0  # quick release over what a start's peak asks
    device: float = 0.03  # A at which the earth-leakage device is meant to open
    device_share: float = 1.0  # of its sound sensitivity: below 1 it opens early


@dataclass
class Water:
    """The building's water at the machine: hot supply to booster and fill."""

    temperature: float  # K, of the hot supply
    static: float  # Pa, at rest
    factor: float  # m3/s per Pa**0.5 of building pipes up to the stop valve
    stop_open: float = 1.0  # share of the stop valve's opening
    strainer_open: float = 1.0
    hardness: float = 1.0e-3 * 60  # kg/m3 as calcium carbonate, 60 mg/L
    droop: float = 0.0  # K lost when much is drawn
    cold: float = 288.15  # K, of the cold main
    drips: float = 0.0  # m3/s at a joint ahead of the machine
    outlet_short: float = 0.0  # K that the building heater's outlet lies under what it should


@dataclass
class Fuel:
    """Steam as it comes to the machine; gas, flowing, as a share of the plate's pressure, and at rest."""

    steam: SteamLine = field(default_factory=SteamLine)
    gas: GasLine = field(default_factory=GasLine)


@dataclass
class Thermostat:
    """A two-point control: calls below `setting - width / 2`, is satisfied above `setting + width / 2`."""

    setting: float  # K
    width: float = 3.0  # K
    offset: float = 0.0  # K that its sensor reads high
    lag: float = 6.0  # s
    stuck: bool | None = None  # True: calls always, False: never


@dataclass
class Heater:
    """A heater: an electric bank with its contactor, or a steam coil, or a burner."""

    kind: str  # electric | steam coil | steam injector | gas | none
    power: float  # W rated
    volts: float  # rated volts of the elements
    connection: str  # delta | wye | single
    elements: list[float] = field(default_factory=lambda: [1.0, 1.0, 1.0])  # conductance over the sound one; 0 open
    poles: list[bool] = field(default_factory=lambda: [True, True, True])  # of the contactor, when it is in
    coil_works: bool = True
    welded: bool = False  # poles stay in
    earth_ohms: float = 5e6
    duty: float = 1.0  # share of the time it is in while it is called for
    heat_share: float = 1.0  # of steam heat that gets through: scale, condensate
    feed_open: bool = True  # breaker or disconnect of this heater in
    high_limit: float = 383.0  # K, trips above, by hand or by itself
    high_limit_offset: float = 0.0
    scale: float = 0.0  # m on the sheaths
    burner: Burner | None = None  # of a gas heater
    steam: SteamBranch = field(default_factory=SteamBranch)


@dataclass
class Booster:
    """Heater, shell, thermostat and what protects it."""

    heater: Heater
    volume: float  # m3
    thermostat: Thermostat
    loss: float = 4.0  # W/K of the shell, judgement
    allowed: bool = True  # low-water or flow protection lets it heat


@dataclass
class RinseLine:
    """From the booster to the jets of the final rinse."""

    set_pressure: float  # Pa that the regulator holds without flow
    rated_flow: float
    jets: float  # m3/s per Pa**0.5, all jets as drilled
    droop: float = 0.0  # Pa between rest and rated flow
    regulator_open: float = 1.0  # share of its passage
    regulator_wide: bool = False  # diaphragm gone: passes all pressure
    strainer_open: float = 1.0
    valve_opens: float = 1.0  # share of its passage when energised
    valve_leak: float = 0.0  # share of its passage when shut
    jets_open: float = 1.0  # share of area not limed up
    jets_wear: float = 1.0  # area over the drilled one
    cap_off: float = 0.0  # open area of a missing cap or jet, over all jets
    creeps: float = 0.0  # share of the main's pressure that gets past the shut regulator in minutes
    actuator: str = "works"  # works | dead | held
    commanded: bool = True  # relay, lead and volts let the command through to the coil
    coil_sound: bool = True
    lever: bool = False  # rod and lever work the valve: it has no coil
    tops_up: bool = False  # the tank is filled by it, and is under its mark when one looks
    past: float = 0.0  # share of its water that goes to waste past the tank
    robbed: float = 0.0  # area over the jets' through which water leaves behind the booster for a tank
    run_over: float = 0.0  # s that it goes on after the rack
    relief_share: float = 1.0  # pressure at which the relief valve opens over its stamp
    slams: float = 0.1  # of the whole blow of stopped water that its valve makes as it shuts; judgement
    shut_in: bool = False  # water that is heated has nowhere to expand
    actuator_share: float = 1.0  # of the rack's way for which it opens
    pipe_loss: float = 0.8  # W/K of the pipe from booster to manifold, judgement
    thermometer_offset: float = 0.0  # K that the panel's reads high
    thermometer_lag: float = 5.0
    thermometer_stuck: float | None = None  # K it always shows
    gauge_offset: float = 0.0  # Pa that the panel's reads high
    gauge_factor: float = 1.0
    gauge_stuck: float | None = None


@dataclass
class Tank:
    """A tank with its heater, its level control and its way out."""

    volume: float  # m3 to the overflow
    heater: Heater
    thermostat: Thermostat
    loss: float = 35.0  # W/K of walls and surface, judgement
    fill_flow: float = 0.0  # m3/s with the fill valve open, at sound supply
    fill_open: float = 1.0
    fill_leak: float = 0.0  # m3/s past the shut valve
    fill_dead: bool = False
    fill_held: bool = False  # opens and stays open
    low_cutout: bool = True  # heater is let on above a third of the volume
    drawn_hot: float = 0.0  # s for which the crew draws it down to its heater with the heat switched on
    says_low: bool = False  # whatever the level is
    fills_to: float = 1.0  # level at which its fill ends, as a share of the volume
    drain_leak: float = 0.0  # m3/s out of a full tank into the waste
    shell_leak: float = 0.0  # m3/s out of a full tank onto the floor: shell, flanges, joints
    thrown: float = 0.0  # m3/s that its pump throws over into the tank before it
    overflow_open: float = 1.0
    lip: float = 1.0  # height at which it runs over, as a share of the volume
    dial_offset: float = 0.0  # K that the panel's thermometer reads high
    dial_stuck: float | None = None


@dataclass
class Pump:
    """A wash, rinse or pre-wash pump and its arms."""

    pressure: float  # Pa at the manifold, sound
    flow: float  # m3/s, sound
    wheel: float = 1.0  # share of the impeller's work left
    suction_open: float = 1.0  # share of the strainer's area free
    air: float = 0.0  # share of air drawn in
    jets_open: float = 1.0
    jets_off: float = 0.0  # area over all jets through which water leaves elsewhere: lost jets, plugs, seals
    misses: float = 0.0  # share of the spray that does not reach the ware
    askew: float = 0.00008  # m of daylight at its coupling, 0.003 in as lined up; judgement
    coupled: bool = True
    turns: bool = True  # wheel free to turn
    seal_leak: float = 0.0  # m3/s
    joint_leak: float = 0.0  # m3/s out of its delivery while it runs


@dataclass
class Motor:
    """A motor, its contactor and its overload. Currents as shares of the plate's."""

    power: float  # W
    amps: float  # A at full load
    load: float = 0.85  # share of full load in sound service, judgement
    drag: float = 0.0  # extra load, share of full load
    locked: bool = False
    winding_open: bool = False
    winding_short: float = 0.0  # extra current share in one line
    earth_ohms: float = 5e7
    reversed: bool = False
    poles: list[bool] = field(default_factory=lambda: [True, True, True])
    coil_works: bool = True
    welded: bool = False
    trip_class: float = 10.0  # s
    dial: float = 1.0  # overload's setting over full-load amps
    early: float = 1.0  # current at which it trips over what it should: weary below 1
    around: float = 303.15  # K, air at motor and overload
    joint_heat: float = 0.0  # share of the trip heat that a bad joint at the overload adds
    terminal_open: set[int] = field(default_factory=set)
    volts_share: float = 1.0  # volts it is joined or made for over the plate's
    starts: bool = True  # single phase: its start winding gets what it needs
    cooling: float = 1.0  # share of its heat that it can shed
    coil: Coil = field(default_factory=Coil)  # of its contactor


@dataclass
class Conveyor:
    """The drive from motor to racks, what they run on, and the switches that stop it."""

    speed: float  # m/s
    timer: RunTimer
    pace: float = 1.0  # of the plate's speed: gearing, drive setting
    drag: float = 0.0  # extra pull over the sound one of a full machine
    stiff: float = 0.0  # of that pull, what is there without a rack
    slips_at: float = 2.5  # pull over the sound one at which the clutch slips
    ware: float = 1.0  # heat that a rack takes up over the usual
    carries: float = 0.0  # kg of water a rack carries out in hollow ware, over the usual
    jams: float = 0.0  # racks that hang at tables or for their own sake, of all
    drive: Drive = field(default_factory=Drive)
    chains: Chains = field(default_factory=Chains)
    flights: Flights = field(default_factory=Flights)
    track: Track = field(default_factory=Track)
    jam: JamSwitch = field(default_factory=JamSwitch)
    table: TableSwitch = field(default_factory=TableSwitch)


@dataclass
class Air:
    """Exhaust, dampers, curtains, room."""

    wanted: dict[str, float]  # m3/s for entrance and exit
    fan: float = 1.0  # share of the fan's speed
    fan_backwards: bool = False
    fan_linked: bool = True  # belt whole, wheel fast on its shaft
    wheel: float = 1.0  # share of its pressure that the wheel still makes
    filters_open: float = 1.0  # of a hood
    duct_open: float = 1.0  # before the fan
    after_open: float = 1.0  # flap and cap behind the fan
    parted: float = 0.0  # opening of a parted joint in the run, over that of the sound dampers
    let_in: float = 0.0  # opening just before the fan: an access door, a slit sleeve
    damper: dict[str, float] = field(default_factory=lambda: {"entrance": 1.0, "exit": 1.0})  # over the right opening
    blades: dict[str, Blade] = field(default_factory=dict)  # with a handle to set; an end without one stays as it is
    handle: dict[str, float] = field(default_factory=lambda: {"entrance": 1.0, "exit": 1.0})  # 0 shut, 1 wide open
    gap: dict[str, float] = field(default_factory=lambda: {"entrance": 0.0, "exit": 0.0})  # curtain missing, share
    held: dict[str, float] = field(default_factory=lambda: {"entrance": 0.0, "exit": 0.0})  # held open by ware
    thrown: float = 0.0  # share by which spray swings the exit curtain
    leaks: float = 0.0  # share of the steam that leaves at doors, covers and holes
    supply: float = 0.9  # make-up air over what the exhaust takes
    hoods: float = 0.0  # air that other hoods take from the room, likewise
    ways: float = 1.0  # free ways into the room: 1 lets everything in that is wanted
    between: float = 0.0  # Pa of the soiled side's room over the clean side's
    draught: dict[str, float] = field(default_factory=lambda: {"entrance": 0.0, "exit": 0.0})  # m/s across the opening
    moist: float = 0.0  # water in the room's air from other sources, kg/kg
    surface: float | None = None  # K of the coldest surface over the machine, where one is colder than the ceiling
    surface_at: str = "wide"  # wide | pipe | grille
    room: float = 299.15  # K
    humidity: float = 0.5
