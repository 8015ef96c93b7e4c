"""The control circuit: whether the machine starts, where its volts end, what shakes it open, which motors stall."""

from __future__ import annotations

from diagnose.simulator.control_parts import Coil, Control
from diagnose.simulator.electrics import sources
from diagnose.simulator.plant import Plant

__all__ = [
    "CLOSED",
    "OPEN",
    "PLACES",
    "PULLS_IN",
    "SAID_STANDING",
    "chain",
    "circuit_ohms",
    "coil_impedance",
    "control_share",
    "door_makes",
    "draws_in",
    "drop_share",
    "lost_at",
    "poor_ohms",
    "shakes_open",
    "stalls",
    "starts",
]

# Places along the chain at which volts are read, each behind these links.
PLACES = {
    "transformer": ("feed", "breaker", "transformer"),
    "fuse": ("fuse",),
    "switch": ("switch",),
    "stops": ("stops",),
    "doors": ("doors",),
    "overloads": ("overloads",),
    "permits": ("permits",),
    "coil": ("order", "start"),
}
# What the kitchen can still complain of where the machine does not start.
SAID_STANDING = frozenset({"no_start", "breaker_trips"})
PULLS_IN = 0.6  # share of its volts at which a coil just pulls in; judgement, trade asks for 0.85 to rely on it
CLOSED = 2.0  # ohm under which a contact is closed: judgement
OPEN = 2e4  # ohm over which it is open; in between water or green carries some: judgement
_STRAY = 0.03  # share of the volts that a cable's wires bring behind an open contact: judgement
_HELD_VA = 48.0  # of master relay and contactors held in together: judgement, small coils of 8 to 20 VA each
_RESISTIVE, _REACTIVE = 0.35, 0.937  # of a closed magnet's impedance: a power factor of 0.35, judgement
_JOLT = 1.2e-3  # m that doors move as pumps shake the frame: judgement
_PRESSED = 2.5e-3  # m by which a hand on the door brings the magnet nearer: judgement


def control_share(plant: Plant) -> float:
    """Volts of the control transformer over its rating; it hangs on the first two lines."""
    power = plant.power
    first, second = sources(power)[:2]
    if first is None or second is None:
        return 0.0
    return abs(first - second) / plant.plate["volts"] * power.control_share


def coil_impedance(plant: Plant) -> complex:
    """Of all coils that are held in, [ohm]: volts squared over volt-amperes, mostly reactive."""
    size = plant.plate["control_volts"] ** 2 / _HELD_VA
    return complex(_RESISTIVE * size, _REACTIVE * size)


def door_makes(control: Control, pressed: bool = False, shaken: bool = False) -> bool:
    """Whether the worst door's switch is closed at the box, its door shut; with a hand on it, or shaken."""
    door = control.door
    gap = door.gap + (_JOLT if shaken else 0.0) - (_PRESSED if pressed else 0.0)
    whole = door.frayed < (0.25 if shaken else 0.75 if not pressed else 0.9)
    return gap <= door.reach and whole and door.ohms < OPEN and control.links["doors"]


def poor_ohms(plant: Plant) -> dict[str, float]:
    """Ohms in series by link, above those of sound contacts."""
    control = plant.control
    wet = max(0.0, control.door.ohms - CLOSED)
    found = dict(control.poor)
    if wet > 0.0:
        found["doors"] = found.get("doors", 0.0) + wet
    return found


def _closed(plant: Plant, link: str) -> bool:
    control = plant.control
    return control.links[link] and (link != "doors" or door_makes(control))


def lost_at(plant: Plant) -> str:
    """The first link of the chain that is open, "" where volts come through to the master relay."""
    if control_share(plant) <= 0.0:
        return "feed"
    return next((name for name in plant.control.links if name != "relay" and not _closed(plant, name)), "")


def chain(plant: Plant) -> dict[str, float]:
    """Share of the control volts behind each place of the chain, the start button held.

    Closed, it is one current through contacts and coils; behind an open contact only what strays along the cable.
    """
    share, lost = control_share(plant), lost_at(plant)
    poor, coils = poor_ohms(plant), coil_impedance(plant)
    whole = abs(coils + sum(poor.values()))
    left, found, dead = sum(poor.values()), {}, False
    for place, links in PLACES.items():
        dead = dead or lost in links
        left -= sum(poor.get(link, 0.0) for link in links)
        at = share if lost else share * abs(coils + left) / whole
        found[place] = at * (_STRAY if dead else 1.0)
    return found if control_share(plant) > 0.0 else dict.fromkeys(PLACES, 0.0)


def drop_share(plant: Plant) -> dict[str, float]:
    """Share of the control volts across each closed contact that makes poorly, coils held in."""
    whole = abs(coil_impedance(plant) + sum(poor_ohms(plant).values()))
    return {link: control_share(plant) * ohms / whole for link, ohms in poor_ohms(plant).items()}


def starts(plant: Plant) -> bool:
    """Whether it runs on after the start button was pressed and let go."""
    control = plant.control
    return not lost_at(plant) and control.links["relay"] and control.holds and chain(plant)["coil"] >= PULLS_IN


def draws_in(coil: Coil, share: float = 1.0) -> bool:
    """Whether a contactor goes in cleanly at a share of the control volts; its pull goes with their square."""
    return coil.ohms < 1e3 and share / coil.label >= PULLS_IN and coil.free > 0.9


def circuit_ohms(plant: Plant) -> float:
    """From the control fuse to return with the chain closed and relays pushed in, [ohm]: copper of the coils, a short.

    A coil's copper is three tenths of its impedance held in: judgement.
    """
    return 1.0 / (1.0 / (0.3 * abs(coil_impedance(plant))) + 1.0 / plant.control.short_ohms)


def shakes_open(plant: Plant) -> str:
    """What opens the chain in the run now and then: doors, wire, stops, permit, keys, door or water; "" for nothing."""
    control = plant.control
    if control.shakes_open:
        return "wire"
    if door_makes(control) and not door_makes(control, shaken=True):
        return "doors"
    if 0.5 < chain(plant)["coil"] / max(control_share(plant), 0.01) < 0.9 and control.door.ohms > CLOSED:
        return "doors"
    if control.knocked:
        return "stops"
    return "permit" if control.permit_short > 0.0 else control.stops_by


def stalls(plant: Plant, name: str) -> bool:
    """Whether a motor that stands can't run up: a line of three is gone, or its start winding gets nothing."""
    motor = plant.motors[name]
    if plant.power.phases == 1:
        return not motor.starts
    dead = plant.power.line_open or motor.terminal_open or motor.winding_open or not all(motor.poles)
    return bool(dead) or not motor.starts
