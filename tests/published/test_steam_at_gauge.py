"""IAPWS R7-97, industrial formulation for the properties of water and steam: steam by what a gauge shows.

A library that computes the release is the judge; the figures are those that the entries print.
"""

from __future__ import annotations

import pytest
from iapws import IAPWS97

from diagnose.model import Machine
from diagnose.physics.steam import steam_temperature_at_gauge
from tests.rule_examples import book
from tests.rulebook import run

PSI, AIR = 6894.757293168, 101325.0
GAUGE, PIPE = "supply_steam.pressure_at_machine", "supply_steam.pipe_heat"


@pytest.mark.parametrize(("psi", "fahrenheit"), [(10, 240), (20, 259), (40, 287)])
def test_figures_of_the_entries(psi: float, fahrenheit: float) -> None:
    library = IAPWS97(P=(psi * PSI + AIR) / 1e6, x=0.5).T
    assert steam_temperature_at_gauge(psi * PSI) == pytest.approx(library, abs=0.01)
    assert library * 1.8 - 459.67 == pytest.approx(fahrenheit, abs=0.8)


@pytest.mark.parametrize("psi", [5, 15, 30, 60])
def test_a_pipe_a_shade_under_its_steam_bears_the_gauge_out(psi: float) -> None:
    library = IAPWS97(P=(psi * PSI + AIR) / 1e6, x=0.5).T
    machine = Machine("m", book().machines["two_tank_steam_208"], {"steam_pressure": f"{psi} psi"})
    for shade, outcome in ((3, "agrees"), (45, "cooler"), (-40, "hotter")):
        pipe = library * 1.8 - 459.67 - shade
        done = run(machine, (GAUGE, f"{psi} psi"), (PIPE, f"{pipe:.0f} F"), book=book())
        assert next(f for f in done.findings if f.check == PIPE).outcome == outcome
