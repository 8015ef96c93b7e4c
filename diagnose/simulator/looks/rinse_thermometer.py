"""What can be read of the final rinse's temperature."""

from __future__ import annotations

from diagnose.simulator.bench import Bench
from diagnose.simulator.registry import look
from diagnose.simulator.rinsing import plate_trace
from diagnose.simulator.senses import Answer
from diagnose.simulator.sensing import sensor_resistance

__all__: list[str] = []

_HOT, _CHEMICAL = ("hot water",), ("chemical",)
_TURNS = 344.26  # K, a 160 °F label
_APART = 1.7  # K, 3 °F


def _panel(bench: Bench) -> float:
    """What the panel shows; the manifold's own rest where it was told from between racks."""
    if bench.sign("dial read between racks") > 0.15:
        return bench.plant.air.room + 0.62 * (bench.rinse_panel - bench.plant.air.room)
    return bench.rinse_panel


@look("rinse_thermometer.panel_reading", sanitising=_HOT)
def panel_reading(bench: Bench) -> Answer:
    """The panel's dial while a rack is rinsed."""
    return bench.value("panel thermometer", bench.rinse_panel)


@look("rinse_thermometer.panel_reading_chemical", sanitising=_CHEMICAL)
def panel_reading_chemical(bench: Bench) -> Answer:
    """The same where the rinse is chemical."""
    return bench.value("panel thermometer", bench.rinse_panel)


@look("rinse_thermometer.reference_reading", sanitising=_HOT)
def reference_reading(bench: Bench) -> Answer:
    """A proved second thermometer at the manifold while a rack is rinsed."""
    return bench.value("reference thermometer", bench.manifold)


@look("rinse_thermometer.reference_reading_chemical", sanitising=_CHEMICAL)
def reference_reading_chemical(bench: Bench) -> Answer:
    """The same where the rinse is chemical."""
    return bench.value("reference thermometer", bench.manifold)


def _band(bench: Bench) -> str:
    least = bench.plant.plate["rinse_temperature"]
    return "low" if bench.rinse_panel < least - 0.8 else "good"


@look("rinse_thermometer.trend")
def trend(bench: Bench) -> Answer:
    """The dial from rack to rack after a pause."""
    if bench.sign("water cold at first") > 0.15:
        return bench.seen("low_then_right", "holds", sure=0.95)
    if bench.sign("water sinks at rush") > 0.15:
        return bench.seen("right_then_low", "always_low", sure=0.93)
    if bench.sign("steam bangs") > 0.15:
        return bench.seen("surges", "right_then_low", sure=0.85)
    low = _band(bench) == "low" or bench.sign("dial read between racks") > 0.9
    return bench.seen("always_low" if low else "holds", "right_then_low" if low else "holds", sure=0.94)


@look("rinse_thermometer.label_on_plate", sanitising=_HOT)
def label_on_plate(bench: Bench) -> Answer:
    """Plates with a label that turns at 160 °F (FDA Food Code 4-703.11)."""
    peak = max(plate_trace(bench))
    if max(bench.sign("rinse jets askew"), bench.sign("rinse arm dead beyond a plug")) > 0.15:
        return bench.seen("some_turn", "none_turns", "all_turn", sure=0.9)
    if abs(peak - _TURNS) < 0.8:
        return bench.seen("some_turn", "all_turn", "none_turns", sure=0.7)
    return bench.seen("all_turn" if peak > _TURNS else "none_turns", "some_turn", sure=0.96)


@look("rinse_thermometer.dial_rise")
def dial_rise(bench: Bench) -> Answer:
    """How the dial moves from before a rack to the end of its rinse."""
    line = bench.plant.rinse
    if line.thermometer_stuck is not None:
        return bench.seen("dead", "slow", sure=0.95)
    if bench.sign("rinse bulb at the booster") > 0.0:
        return bench.seen("high_at_rest", "quick_to_one_figure", sure=0.94)
    if bench.sign("rinse bulb out of its well") > 0.0:
        return bench.seen("dead", "slow", sure=0.6)
    if line.thermometer_lag > 25.0:
        return bench.seen("slow", "quick_to_one_figure", sure=0.93)
    if bench.sign("dial read between racks") > 0.15:
        return bench.seen("quick_into_band", "quick_to_one_figure", sure=0.93)
    return bench.seen("quick_to_one_figure", "slow", sure=0.95)


@look("rinse_thermometer.bulb_seen")
def bulb_seen(bench: Bench) -> Answer:
    """The bulb in its well, panel off."""
    return bench.strongest(
        "seated_clean",
        0.96,
        rinse_bulb_out_of_its_well="out_of_well",
        scale_on_the_rinse_bulb="coated",
        rinse_capillary_kinked="kinked",
    )


@look("rinse_thermometer.cup_test")
def cup_test(bench: Bench) -> Answer:
    """Bulb and proved probe in a stirred cup: scale or a bad seat do not show there."""
    line = bench.plant.rinse
    if line.thermometer_stuck is not None:
        return bench.seen("no_answer", "dial_low", sure=0.96)
    placed = max(
        bench.sign("rinse bulb out of its well"),
        bench.sign("scale on the rinse bulb"),
        bench.sign("rinse bulb at the booster"),
    )
    off = 0.0 if placed > 0.15 else line.thermometer_offset
    off += bench.senses.lies.get("reference thermometer", 0.0) * -1.0
    off += bench.senses.chance.uniform(-0.6, 0.6)
    return bench.seen("dial_low" if off < -_APART else "dial_high" if off > _APART else "agree", sure=1.0)


@look("rinse_thermometer.sensor_place", sanitising=_HOT)
def sensor_place(bench: Bench) -> Answer:
    """Where the capillary ends."""
    return bench.noticed("rinse bulb at the booster", "at_booster", "at_manifold", sure=0.96)


@look("rinse_thermometer.sensor_ohms")
def sensor_ohms(bench: Bench) -> Answer:
    """Ohms at the display's end: what the display makes a temperature of."""
    plate, line = bench.plant.plate, bench.plant.rinse
    if line.thermometer_stuck is not None:
        return bench.value("ohmmeter", 1e6)
    electrical = max(
        bench.sign("rinse plug corroded"),
        bench.sign("rinse plug wet"),
        bench.sign("rinse probe of another curve"),
        bench.sign("rinse probe off its list"),
    )
    warm = bench.manifold + (line.thermometer_offset if electrical > 0.15 else 0.0)
    return bench.value("ohmmeter", sensor_resistance(plate["sensor_ohms_25"], plate["sensor_ohms_80"], warm))


@look("rinse_thermometer.connector_look")
def connector_look(bench: Bench) -> Answer:
    """The plug at the probe, and the ohms on both sides of it."""
    return bench.strongest("bright", 0.95, rinse_plug_corroded="corroded", rinse_plug_wet="wet")


@look("rinse_thermometer.probe_in_ice")
def probe_in_ice(bench: Bench) -> Answer:
    """The probe alone in melting ice."""
    return bench.strongest(
        "right", 0.95, rinse_probe_of_another_curve="other_curve", rinse_probe_off_its_list="off_its_list"
    )


@look("rinse_thermometer.difference_told")
def difference_told(bench: Bench) -> Answer:
    """By how much two thermometers were said to differ."""
    off = abs(_panel(bench) - bench.manifold)
    if bench.sign("contradiction small") > 0.0:
        return bench.seen("within", "alike", sure=0.95)
    if bench.sign("another thermometer contradicts") > 0.15 or off > 2.6:
        return bench.seen("beyond", "within", sure=0.94)
    if off > 1.5:
        return bench.seen("within", "beyond", sure=0.9)
    return bench.seen("not_compared", "alike", sure=0.5)


@look("rinse_thermometer.second_in_ice")
def second_in_ice(bench: Bench) -> Answer:
    """The thermometer that contradicts the panel, in crushed and stirred ice."""
    return bench.noticed("second thermometer off", "off", "right", sure=0.97)


@look("rinse_thermometer.how_held")
def how_held(bench: Bench) -> Answer:
    """Where that thermometer was held."""
    return bench.noticed("second thermometer held in the spray", "elsewhere", "on_the_pipe", sure=0.93)
