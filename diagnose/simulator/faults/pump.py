"""Faults of the wash pump: its seal, its wheel, what drags and what starves it."""

from __future__ import annotations

from diagnose.simulator.plant import Plant
from diagnose.simulator.registry import fault

__all__: list[str] = []

# How far each figure goes at full severity is judgement throughout: within what technicians find.


@fault(
    "pump.seal_seized",
    (
        "The faces of the shaft seal have swollen or burnt together and brake the shaft.",
        "The motor works against the brake as well as the water: it draws more than its plate, the spray is as ever.",
        "The overload counts the square of the current: half as much again trips it within minutes.",
    ),
    onset="suddenly",
)
def seal_seized(plant: Plant, severity: float) -> None:
    """A braked shaft."""
    plant.motors["wash"].drag += 0.35 + 0.5 * severity
    plant.signs["pump tight all round"] = 0.5 + 0.5 * severity
    plant.signs["pump seal burnt"] = 0.6 + 0.4 * severity
    plant.signs["pump squeals"] = 0.2 + 0.6 * severity


@fault(
    "pump.object_in_impeller",
    (
        "A piece of cutlery or bone sits between the wheel's vanes and its casing.",
        "Each time it wedges the shaft all but stops and the motor draws a multiple of its plate.",
        "What it covers of the wheel moves no water, so the spray falls off as well.",
    ),
)
def object_in_impeller(plant: Plant, severity: float) -> None:
    """Wedges and covers a part of the vanes."""
    plant.motors["wash"].drag += 0.4 + 0.5 * severity
    plant.pumps["wash"].wheel *= 1.0 - 0.28 * severity
    plant.signs["object in the wheel"] = 0.6 + 0.4 * severity
    plant.signs["pump scrapes"] = 0.4 + 0.6 * severity


@fault(
    "pump.impeller_rubs",
    (
        "The wheel touches its casing once or all through a turn.",
        "Metal on metal brakes the shaft and more so hot, when the parts have grown into one another.",
        "The water moved is the same, the current a tenth to two fifths too high.",
    ),
    after="parts replaced",
)
def impeller_rubs(plant: Plant, severity: float) -> None:
    """A brake with a scrape."""
    plant.motors["wash"].drag += 0.25 + 0.35 * severity
    plant.signs["wheel rubs"] = 0.5 + 0.5 * severity
    plant.signs["pump scrapes"] = 0.5 + 0.5 * severity


@fault(
    "pump.lime_bound",
    (
        "Lime has grown across the gap between wheel and casing while the pump stood.",
        "A motor that can't turn takes some six times its plate's current and makes only heat of it.",
        "The overload takes it off in the seconds of its class; there is no spray at all.",
    ),
)
def lime_bound(plant: Plant, severity: float) -> None:
    """Does not turn."""
    plant.pumps["wash"].turns = False
    plant.motors["wash"].locked = True
    plant.signs["lime in the pump"] = 0.7 + 0.3 * severity


@fault(
    "pump.arm_open",
    (
        "An arm or an end plug is off and the pump meets hardly any resistance there.",
        "On a pump's curve less resistance means more flow at less pressure, and more flow takes more power.",
        "The jets that are left get a fraction of their pressure, while the motor runs over its plate.",
    ),
    after="cleaning by the crew",
)
def arm_open(plant: Plant, severity: float) -> None:
    """An open end: a large area beside the jets."""
    plant.pumps["wash"].jets_off += 0.9 + 1.0 * severity
    plant.signs["wash arm open"] = 0.7 + 0.3 * severity


@fault(
    "pump.impeller_too_big",
    (
        "The wheel is larger than the pump's, or made for a slower motor.",
        "Pressure rises with the square of its size, flow with its size, power with nearly the cube.",
        "A tenth more across means a fifth more pressure and a third more load, all day long.",
    ),
    after="parts replaced",
)
def impeller_too_big(plant: Plant, severity: float) -> None:
    """Up to a quarter larger."""
    plant.pumps["wash"].wheel *= 1.12 + 0.13 * severity
    plant.signs["wheel too large"] = 0.7 + 0.3 * severity


@fault(
    "pump.leads_swapped",
    (
        "Two of this motor's leads are changed over and it alone turns backwards.",
        "A wheel turned against its vanes still throws water, at a fraction of its pressure.",
        "Less water is less load: the three currents are alike and low.",
    ),
    after="electrical work",
    phases=(3,),
)
def leads_swapped(plant: Plant, severity: float) -> None:
    """Backwards or not: severity changes nothing."""
    plant.motors["wash"].reversed = True


@fault(
    "pump.foam_airbinds",
    (
        "Foam reaches the suction and the wheel turns in a mixture of water and air.",
        "A wheel throws a mixture less far, by its lighter weight, so pressure and load fall and swing.",
        "In a pause the foam settles, and for some minutes all is well again.",
    ),
    onset="comes and goes",
)
def foam_airbinds(plant: Plant, severity: float) -> None:
    """Foam in the tank and at the suction."""
    plant.chemistry.suds += 0.3 + 0.5 * severity
    plant.pumps["wash"].air += 0.1 + 0.22 * severity


@fault(
    "pump.suction_blocked",
    (
        "The suction screen is felted over, or a rag sits in the pipe behind it.",
        "What can't come in can't go out: the loss on the suction side grows with the square of the flow.",
        "Starved of water the wheel crackles and the motor has less to do.",
    ),
    after="cleaning by the crew",
)
def suction_blocked(plant: Plant, severity: float) -> None:
    """A quarter to a twentieth of the screen left."""
    plant.pumps["wash"].suction_open = 0.22 - 0.16 * severity
    plant.signs["suction felted"] = 0.6 + 0.4 * severity
    plant.signs["scrap baskets full"] = 0.15 + 0.6 * severity


@fault(
    "pump.level_low",
    (
        "The tank's water stands well under its mark and nothing calls for more.",
        "A whirl forms over the suction and air goes down with the water.",
        "Air in the wheel costs pressure and load, in gusts as the whirl comes and goes.",
    ),
)
def level_low(plant: Plant, severity: float) -> None:
    """Runs over below its mark, and is not made up."""
    tank = plant.tanks["wash"]
    tank.lip = tank.fills_to = 0.76 - 0.18 * severity


@fault(
    "pump.boils_at_suction",
    (
        "The wash water is so hot that it boils at the low pressure of the pump's suction.",
        "Vapour fills the wheel and collapses again in it, which is the crackle.",
        "At 170 °F the same pump is quiet, since the vapour pressure there is little more than half.",
    ),
    tank_heat=("steam coil", "steam injector"),
)
def boils_at_suction(plant: Plant, severity: float) -> None:
    """A steam-heated tank held at 190 to 200 °F, by a valve that lets three times its steam in; both judgement."""
    tank = plant.tanks["wash"]
    tank.thermostat.setting = 362.5 + 6.0 * severity
    tank.heater.power *= 3.0
    tank.heater.high_limit = 390.0


@fault(
    "pump.impeller_loose",
    (
        "Key, thread or coupling has gone and the wheel no longer follows the shaft.",
        "No water is moved, so the motor idles at its magnetising current.",
        "That current is steady and a third to half of the plate's.",
    ),
    after="parts replaced",
)
def impeller_loose(plant: Plant, severity: float) -> None:
    """Follows or not."""
    plant.pumps["wash"].coupled = False
    plant.signs["wheel loose on its shaft"] = 0.7 + 0.3 * severity


@fault(
    "pump.seal_sucks_air",
    (
        "On the suction side the pressure is under the room's while the pump runs, so a worn seal lets air in.",
        "The water turns milky with fine bubbles and the wheel throws it less far.",
        "At rest the tank's head stands on the same seal and pushes drops out.",
    ),
    onset="slowly",
)
def seal_sucks_air(plant: Plant, severity: float) -> None:
    """Air in while it runs, drops out at rest."""
    plant.pumps["wash"].air += 0.12 + 0.2 * severity
    plant.pumps["wash"].seal_leak += 4e-6 * severity
    plant.signs["pump seal drips at rest"] = 0.4 + 0.6 * severity
    plant.signs["wash water milky"] = 0.5 + 0.5 * severity


@fault(
    "pump.impeller_worn",
    (
        "The vanes are thin or the gap at the wear face has opened, and water slips back inside the pump.",
        "Less head at every flow: pressure at the manifold falls, and with it flow and load.",
        "Nothing is blocked, nothing swings; it went over years.",
    ),
    onset="slowly",
)
def impeller_worn(plant: Plant, severity: float) -> None:
    """A fifteenth to a third of its work gone."""
    plant.pumps["wash"].wheel *= 0.92 - 0.17 * severity
    plant.signs["wheel worn"] = 0.5 + 0.5 * severity


@fault(
    "pump.belt_slips",
    (
        "The belt is slack or glazed and the pump turns slower than its motor would have it.",
        "Pressure falls with the square of the turns, load with nearly the cube.",
        "The slip is heat and noise in the belt, most of it at the start.",
    ),
    onset="slowly",
)
def belt_slips(plant: Plant, severity: float) -> None:
    """Up to a third of the turns lost."""
    plant.pumps["wash"].wheel *= 0.9 - 0.2 * severity
    plant.signs["pump belt slack"] = 0.6 + 0.4 * severity
    plant.signs["pump squeals"] = 0.5 + 0.5 * severity


@fault(
    "pump.speed_low",
    (
        "Motor or mains make fewer turns than the pump is built for.",
        "50 for 60 Hz leaves 83 % of the flow and 69 % of the pressure; 1150 turns for 1750 leave 43 % of it.",
        "The three currents are alike, and everything looks sound.",
    ),
    onset="installed",
    after="newly connected",
)
def speed_low(plant: Plant, severity: float) -> None:
    """50 for 60 Hz, or (gross) a motor with two more poles."""
    plant.pumps["wash"].wheel *= 0.83 if severity < 0.8 else 0.657
    plant.signs["pump turns too slowly"] = 1.0
