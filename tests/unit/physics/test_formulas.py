"""Formulas against one another, and against nonsense; `tests/house/test_formulas.py` holds their docstrings."""

from __future__ import annotations

import ast
import importlib
import inspect
import math
import pkgutil

import pytest
from hypothesis import given
from hypothesis import strategies as st

from diagnose import physics
from diagnose.physics import air, electric_heat, element_bank, flow, heat, motors

MODULES = [importlib.import_module(f"diagnose.physics.{m.name}") for m in pkgutil.iter_modules(physics.__path__)]
SOME = st.floats(1e-3, 1e5)
SHARE = st.floats(0.05, 1.0)


def test_physics_imports_only_itself() -> None:
    for module in MODULES:
        tree = ast.parse(inspect.getsource(module))
        taken = {n.module for n in ast.walk(tree) if isinstance(n, ast.ImportFrom) and n.module}
        assert all(name.startswith("diagnose.physics") for name in taken if name.startswith("diagnose"))


@given(SOME, SOME, SOME)
def test_heat_solved_back(power: float, volume_flow: float, efficiency: float) -> None:
    rise = heat.rise_of_flow(power, volume_flow)
    assert math.isclose(heat.power_for_rise(volume_flow, rise), power, rel_tol=1e-9)
    share = efficiency / 1e5
    assert math.isclose(heat.power_for_rise(volume_flow, rise, share) * share, power, rel_tol=1e-9)


@given(SOME, SOME)
def test_heat_up_is_a_flow_through_a_tank(volume: float, power: float) -> None:
    seconds = heat.heat_up_time(volume, 10.0, power)
    assert math.isclose(heat.rise_of_flow(power, volume / seconds), 10.0, rel_tol=1e-9)


@given(SOME, SOME, SOME)
def test_flow_solved_back(volume_flow: float, rated: float, pressure: float) -> None:
    factor = flow.factor_of_point(volume_flow, rated)
    now = flow.flow_at_pressure(volume_flow, rated, pressure)
    assert math.isclose(flow.pressure_for(factor, now), pressure, rel_tol=1e-9)
    assert math.isclose(flow.factor_of_point(now, pressure), factor, rel_tol=1e-9)


@given(st.lists(SOME, min_size=1, max_size=5))
def test_series_is_narrower_than_its_narrowest_and_adds_pressure(factors: list[float]) -> None:
    together = flow.factor_of_series(factors)
    assert together <= min(factors) * (1 + 1e-12)
    drops = sum(flow.pressure_for(f, 1.0) for f in factors)
    assert math.isclose(flow.pressure_for(together, 1.0), drops, rel_tol=1e-9)


@given(SOME, SOME, SOME)
def test_power_at_voltage_solved_back(power: float, rated: float, volts: float) -> None:
    there = electric_heat.power_at_voltage(power, rated, volts)
    assert math.isclose(electric_heat.power_at_voltage(there, volts, rated), power, rel_tol=1e-9)
    assert math.isclose(electric_heat.balanced_line_current(power, volts) * math.sqrt(3) * volts, power, rel_tol=1e-9)
    assert math.isclose(electric_heat.single_phase_current(power, volts) * volts, power, rel_tol=1e-9)


STATES = [
    element_bank.BankState(frozenset(k for k in range(3) if bits >> k & 1), lost)
    for bits in range(8)
    for lost in (None, 0, 1, 2)
]


@pytest.mark.parametrize("connection", element_bank.CONNECTIONS)
@pytest.mark.parametrize("state", STATES, ids=str)
def test_bank_against_node_equations(connection: str, state: element_bank.BankState) -> None:
    """Currents and power from a general nodal solution, written with matrices and sharing no code."""
    import numpy as np

    power, volts = 30e3, 208.0
    g = 1.0 / element_bank.element_resistance(power, volts, connection)
    ends = [(k, (k + 1) % 3) for k in range(3)] if connection == "delta" else [(k, 3) for k in range(3)]
    matrix = np.zeros((4, 4), complex)
    for element, (a, b) in enumerate(ends):
        if element not in state.open_elements:
            matrix[a, a] += g
            matrix[b, b] += g
            matrix[a, b] -= g
            matrix[b, a] -= g
    source = [volts / math.sqrt(3) * np.exp(-2j * np.pi * k / 3) for k in range(3)]
    fixed = {k: v for k, v in enumerate(source) if k != state.lost_line}
    if connection == "wye with neutral":
        fixed[3] = 0.0
    free = [n for n in range(4) if n not in fixed]
    nodes = np.zeros(4, complex)
    for n, v in fixed.items():
        nodes[n] = v
    if free:
        right = -matrix[np.ix_(free, sorted(fixed))] @ np.array([fixed[k] for k in sorted(fixed)])
        nodes[free] = np.linalg.lstsq(matrix[np.ix_(free, free)], right, rcond=None)[0]
    into = matrix @ nodes
    lines = [0.0 if k == state.lost_line else abs(into[k]) for k in range(3)]
    heat_given = sum(g * abs(nodes[a] - nodes[b]) ** 2 for e, (a, b) in enumerate(ends) if e not in state.open_elements)
    assert element_bank.bank_currents(power, volts, connection, state) == pytest.approx(lines, abs=1e-9)
    assert element_bank.bank_power(power, volts, connection, state) == pytest.approx(heat_given, abs=1e-6)


@given(st.lists(st.floats(10.0, 500.0), min_size=3, max_size=3), st.floats(0.1, 10))
def test_unbalance_does_not_depend_on_the_unit(volts: list[float], factor: float) -> None:
    scaled = [v * factor for v in volts]
    assert math.isclose(motors.nema_unbalance(volts), motors.nema_unbalance(scaled), rel_tol=1e-6, abs_tol=1e-9)
    assert motors.nema_unbalance([volts[0]] * 3) == pytest.approx(0.0, abs=1e-12)


@given(SOME, st.floats(0.5, 2.0))
def test_air_speed_solved_back(pressure: float, density: float) -> None:
    speed = air.speed_of_pressure(pressure, density)
    assert math.isclose(density * speed**2 / 2, pressure, rel_tol=1e-9)


NONSENSE = [
    (heat.rise_of_flow, (1.0, 0.0)),
    (heat.rise_of_flow, (-1.0, 1.0)),
    (heat.rise_of_flow, (math.nan, 1.0)),
    (heat.power_for_rise, (1.0, 1.0, 1.5)),
    (heat.heat_up_time, (1.0, 1.0, 0.0)),
    (heat.water_density, (273.15,)),
    (heat.water_heat_capacity, (400.0,)),
    (flow.factor_of_point, (1.0, 0.0)),
    (flow.flow_at, (1.0, -1.0)),
    (flow.pressure_for, (0.0, 1.0)),
    (flow.factor_of_series, ([],)),
    (electric_heat.power_at_voltage, (1.0, 0.0, 1.0)),
    (electric_heat.balanced_line_current, (1.0, math.inf)),
    (electric_heat.single_phase_current, (-1.0, 1.0)),
    (element_bank.element_resistance, (1.0, 1.0, "star")),
    (element_bank.bank_resistances, (0.0, "delta")),
    (element_bank.BankState, (frozenset({3}),)),
    (motors.nema_unbalance, ([1.0, 2.0],)),
    (motors.nema_unbalance, ([0.0, 0.0, 0.0],)),
    (motors.negative_sequence_factor, ([100.0, 1.0, 1.0],)),
    (motors.temperature_rise_factor, (0.06,)),
    (motors.current_change_at_volts, (0.8,)),
    (motors.overload_trip, (0.0, True)),
    (motors.integral_protector_trip, (-1.0,)),
    (motors.locked_rotor_current, (1.0, 1.0, 0.0)),
    (air.speed_of_pressure, (-1.0,)),
    (air.mean_speed, ([],)),
    (air.end_shares, (-1.0, 1.0)),
]


@pytest.mark.parametrize(("formula", "arguments"), NONSENSE)
def test_nonsense_is_refused(formula: object, arguments: tuple[object, ...]) -> None:
    with pytest.raises(ValueError, match=r"\w"):
        formula(*arguments)  # type: ignore[operator]
