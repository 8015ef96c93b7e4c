"""What smells burnt: of what, where, when, and what of it is found brown in the control box."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from diagnose.simulator.bench import Bench
from diagnose.simulator.burning import burners
from diagnose.simulator.motoring import case_temperature
from diagnose.simulator.parts import Heater

__all__ = ["CLAMP", "Smell", "joint_volts", "smells", "worst"]

CLAMP = 0.0001  # ohm of one sound clamp: judgement; `Power.joint_ohms` is the sum of those on the way
_GLOWS = 30.0  # W in a screw that glows: judgement, about what the book calls burning
_SCREW = 300.0  # W for the share of a breaker's trip heat that its own screw gives: judgement
_VARNISH = 383.0  # K of a motor's case from which its winding smells, 230 °F: judgement
_AT = {"drive": "drive_end", "fan": "fan"}


@dataclass(frozen=True)
class Smell:
    """One thing that smells: `mark` is how strong, 0 to 1; `part` what is brown in the control box."""

    kind: str  # plastic | varnish | rubber | brakes | oil | food | dust | fumes
    where: str  # box | booster | panel | pump | drive_end | fan | tank | room
    when: str  # fades | switched_on | with_heat | with_motors | grows | at_odds
    mark: float
    part: str = ""


# Signs of parts that rub, slip, burn or lie where they should not.
_BY_SIGN = {
    "soot between lines": ("plastic", "box", "grows", "soot"),
    "block burnt": ("plastic", "box", "grows", "supply_block"),
    "joint hot on the way": ("plastic", "panel", "grows", ""),
    "breaker screw brown": ("plastic", "panel", "grows", ""),
    "tank heater screw glows": ("plastic", "box", "with_heat", "heater_contactor"),
    "control transformer overheats": ("varnish", "box", "switched_on", "transformer"),
    "coil cooks": ("plastic", "box", "grows", "coil"),
    "wire warm along its length": ("plastic", "box", "grows", "bundle"),
    "soil burnt on the element": ("food", "tank", "with_heat", ""),
    "dust burns off": ("dust", "room", "fades", ""),
    "smell comes from elsewhere": ("dust", "room", "at_odds", ""),
    "overload terminal hot": ("plastic", "box", "with_motors", "overload"),
    "pump seal burnt": ("rubber", "pump", "with_motors", ""),
    "pump belt slack": ("rubber", "pump", "with_motors", ""),
    "clutch faces glazed": ("brakes", "drive_end", "with_motors", ""),
    "drive belt slack and shining": ("rubber", "drive_end", "with_motors", ""),
    "drive brake holds": ("brakes", "drive_end", "with_motors", ""),
    "reducer whines": ("oil", "drive_end", "with_motors", ""),
    "fan belt slack": ("rubber", "fan", "with_motors", ""),
    "fan bearing growl": ("oil", "fan", "with_motors", ""),
    "booster lead burnt off": ("plastic", "booster", "with_heat", ""),
    "tank lead burnt off": ("plastic", "tank", "with_heat", ""),
}


def smells(bench: Bench) -> list[Smell]:
    """Everything that smells, the strongest first."""
    found = [Smell(*rest[:3], bench.sign(name), rest[3]) for name, rest in _BY_SIGN.items() if bench.sign(name) > 0.15]
    found.extend(_poles(bench))
    found.extend(_motors(bench))
    found.extend(_fumes(bench))
    tank = bench.plant.tanks["wash"]
    if not tank.low_cutout and tank.drawn_hot > 0.0 and tank.heater.kind == "electric":
        found.append(Smell("food", "tank", "with_heat", 0.6))  # an element dry among crumbs
    return sorted(found, key=lambda each: -each.mark)


def worst(bench: Bench) -> Smell | None:
    """The strongest smell, None where nothing smells."""
    return next(iter(smells(bench)), None)


def _heaters(bench: Bench) -> Iterator[Heater]:
    yield bench.plant.booster.heater
    for tank in bench.plant.tanks.values():
        yield tank.heater


def _poles(bench: Bench) -> Iterator[Smell]:
    """Contacts that burnt away or together."""
    for heater in _heaters(bench):
        if heater.kind == "electric" and not all(heater.poles):
            yield Smell("plastic", "box", "with_heat", 0.5, "heater_contactor")
    for name, motor in bench.plant.motors.items():
        if name != "fan" and (not all(motor.poles) or motor.welded):  # a fan's starter hangs elsewhere
            yield Smell("plastic", "box", "with_motors", 0.5, "motor_contactor")


def _motors(bench: Bench) -> Iterator[Smell]:
    """Windings too hot for their varnish."""
    for name, motor in bench.plant.motors.items():
        if motor.welded or not all(motor.poles):
            continue
        mark = min(1.0, 0.4 + (case_temperature(bench, name) - _VARNISH) / 40.0)
        # Turns that are shorted, or a start winding that stays in or hums, are far hotter than the case.
        if motor.winding_short > 0.2 or (name in bench.plant.pumps and not motor.starts):
            mark = max(mark, 0.5)
        if mark > 0.4:
            yield Smell("varnish", _AT.get(name, "pump"), "with_motors", mark)


def _fumes(bench: Bench) -> Iterator[Smell]:
    """Soot in the passages that drives burnt gas out at the burner."""
    for name, burner in burners(bench.plant).items():
        if burner.soot > 0.3 and burner.air < 0.85:
            yield Smell("fumes", "booster" if name == "booster" else "tank", "with_heat", min(1.0, burner.soot))


def joint_volts(bench: Bench) -> float:
    """Volts across the warmest joint of the feed, everything on: its ohms by its amps, or its watts over them.

    A joint of one heater carries that heater's amps.
    """
    power, standing = bench.plant.power, bench.heating.standing
    lines = range(3 if power.phases == 3 else 2)
    sound = min(power.joint_ohms)
    found = [standing.amps[n] * (power.joint_ohms[n] - sound + CLAMP) for n in lines]
    most = max(max(standing.amps), 1.0)
    found.append(_SCREW * power.screw_heat / most)
    bank = standing.banks.get("wash")
    glows = bench.sign("tank heater screw glows")
    if bank is not None and glows > 0.0 and max(bank.amps) > 1.0:
        found.append(_GLOWS * glows / max(bank.amps))
    if bench.sign("block burnt") > 0.15:
        found.append(_GLOWS * 2.0 / most)
    return max(found)
