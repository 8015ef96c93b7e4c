"""What can be read of the electrical supply."""

from __future__ import annotations

from diagnose.simulator.bench import Bench
from diagnose.simulator.control import lost_at
from diagnose.simulator.electrics import line_volts
from diagnose.simulator.motoring import unbalance, unloaded_unbalance
from diagnose.simulator.registry import look
from diagnose.simulator.senses import Answer

__all__: list[str] = []

_THREE, _ONE = (3,), (1,)


def _fed(bench: Bench) -> bool:
    links = bench.plant.control.links
    return links["feed"] and links["breaker"]


@look("supply_power.line_volts", phases=_THREE)
def line_volts_three(bench: Bench) -> Answer:
    """Line to line at the machine's block, everything on."""
    volts = bench.heating.standing.volts if _fed(bench) else (0.0, 0.0, 0.0)
    return bench.values("voltmeter", dict(zip(("L1-L2", "L2-L3", "L3-L1"), volts, strict=True)))


@look("supply_power.line_volts_single", phases=_ONE)
def line_volts_single(bench: Bench) -> Answer:
    """Between the two lines at the machine's block."""
    volts = bench.heating.standing.volts[0] if _fed(bench) else 0.0
    return Answer({"": max(0.0, bench.senses.measure("voltmeter", volts))})


@look("supply_power.where_line_ends")
def where_line_ends(bench: Bench) -> Answer:
    """Lines followed from the panel to the machine."""
    return bench.strongest(
        "all_there",
        0.97,
        line_ends_before_panel="before_panel",
        line_ends_in_breaker="in_breaker",
        line_ends_at_blade="at_blade",
        line_ends_in_fuse="in_fuse",
        line_ends_at_block="at_block",
    )


@look("supply_power.fuse_ohms")
def fuse_ohms(bench: Bench) -> Answer:
    """Supply fuses out of their clips."""
    return bench.noticed("line ends in fuse", "one_open", "all_sound", sure=0.99)


@look("supply_power.lug_heat")
def lug_heat(bench: Bench) -> Answer:
    """Lugs and clips after ten minutes at full load: watts in a joint warm it."""
    if bench.sign("block burnt") > 0.15:
        return bench.seen("block_burnt", "alike", sure=0.96)
    power, amps = bench.plant.power, bench.heating.standing.amps
    watts = [a**2 * o for a, o in zip(amps, power.joint_ohms, strict=True)]
    usual = sorted(watts)[len(watts) // 2]
    hot = (max(watts) > 40.0 and max(watts) > 4.0 * usual) or bench.sign("joint hot on the way") > 0.3
    return bench.seen("joint_hot" if hot else "alike", "alike", sure=0.95)


@look("supply_power.other_machines")
def other_machines(bench: Bench) -> Answer:
    """What the rest of the building does."""
    return bench.strongest(
        "only_this",
        0.93,
        others_hum_or_stand="others_stop",
        lights_brown_at_rush="lights_dim_at_rush",
        lamps_burn_out="lamps_burn_out",
    )


@look("supply_power.volts_over_day")
def volts_over_day(bench: Bench) -> Answer:
    """Volts at the panel, quiet and at the rush."""
    if bench.sign("volts low at rush") > 0.15:
        return bench.seen("low_at_rush", "low_both", sure=0.95)
    # Nominal is the house's own: a machine on the wrong service reads its house's nominal both times.
    step = 240.0 / 208.0 if bench.sign("house a step higher") > 0.0 else 1.0
    step = 208.0 / 240.0 if bench.sign("house a step lower") > 0.0 else step
    share = bench.plant.power.volts / (bench.plant.plate["volts"] * step)
    truth = "low_both" if share < 0.95 else "high_quiet" if share > 1.05 else "in_band"
    return bench.seen(truth, "in_band", sure=0.96)


@look("supply_power.feed_drop")
def feed_drop(bench: Bench) -> Answer:
    """Volts at panel and machine at full load."""
    power, amps = bench.plant.power, bench.heating.standing.amps
    lines = power.phases if power.phases == 3 else 2
    neutral = power.volts / (3**0.5 if power.phases == 3 else 2.0)
    drops = [amps[n] * (power.source_ohms + power.joint_ohms[n]) / neutral for n in range(lines)]
    if bench.sign("block burnt") > 0.15 or max(drops) > min(drops) + 0.02:
        return bench.seen("one_larger", "large_alike", sure=0.96)
    return bench.seen("large_alike" if max(drops) > 0.03 else "small_alike", "small_alike", sure=0.96)


@look("supply_power.plate_against_service")
def plate_against_service(bench: Bench) -> Answer:
    """The plate's volts against the house's nominal."""
    return bench.strongest("matches", 0.97, house_a_step_lower="house_lower", house_a_step_higher="house_higher")


@look("supply_power.unbalance_unloaded", phases=_THREE)
def unbalance_unloaded(bench: Bench) -> Answer:
    """The three pairs with the machine off."""
    rest = unloaded_unbalance(bench)
    if rest > 0.01:
        return bench.seen("stays", "gone_unloaded", sure=0.96)
    loaded = unbalance(bench.heating.standing.volts)
    return bench.seen("gone_unloaded" if loaded > 0.01 else "balanced_both", "balanced_both", sure=0.96)


@look("supply_power.panel_currents", phases=_THREE)
def panel_currents(bench: Bench) -> Answer:
    """Lines of the panel's main at the rush."""
    return bench.noticed("one line of the house heavy", "one_heavy", "alike", sure=0.97)


@look("supply_power.pf_bank_off", phases=_THREE)
def pf_bank_off(bench: Bench) -> Answer:
    """The power-factor bank off."""
    return bench.noticed("bank makes it uneven", "comes_even", "no_bank_or_no_change", sure=0.97)


@look("supply_power.bank_look", phases=_THREE)
def bank_look(bench: Bench) -> Answer:
    """Transformers at pole or pad."""
    return bench.noticed("bank of unlike transformers", "two_or_unlike", "full_bank", sure=0.97)


@look("supply_power.house_off", phases=_THREE)
def house_off(bench: Bench) -> Answer:
    """Volts ahead of the open main."""
    if bench.sign("uneven ahead of the house") > 0.0:
        return bench.seen("stays", "even_both", sure=0.97)
    on = max(unloaded_unbalance(bench), unbalance(line_volts(bench.plant.power)))
    if bench.sign("joint hot on the way") > 0.3:  # a joint behind the main: even ahead of it
        return bench.seen("even_both", "even_when_off", sure=0.95)
    return bench.seen("even_when_off" if on > 0.01 else "even_both", "even_both", sure=0.96)


@look("supply_power.volts_to_ground", phases=_THREE)
def volts_to_ground(bench: Bench) -> Answer:
    """Each line to the machine's ground."""
    down = bench.sign("one line near ground") > 0.0 or bool(bench.plant.power.line_open)
    return bench.seen("one_down" if down and lost_at(bench.plant) != "breaker" else "even", "even", sure=0.96)
