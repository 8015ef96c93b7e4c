"""The stories of the demonstration transcripts; run as a module to tell them anew."""

from __future__ import annotations

import sys
import tempfile
from pathlib import Path

from diagnose.model import load_book
from tests.golden.teller import Story, tell

__all__ = ["STORIES"]

_NOTE = "Demonstration: the site and everything that happens there are invented. Lines with > are the answers typed."

STORIES = (
    Story(
        name="rinse_cold_one_element",
        header=("Final rinse too cold: one heating element of an electric booster is open.", _NOTE),
        machine="two_tank_electric_208",
        site="Quay Street canteen, invented",
        faults=("booster_electric.element_open",),
        complaints="water not hot at the end",
        context={"last_done": "nothing lately", "since": "days, suddenly", "pattern": "always", "hardness": "hard"},
        shows={
            "rinse_thermometer.panel_reading": "172",
            "rinse_thermometer.reference_reading": "173 F",
            "rinse_gauge.flow_pressure": "20",
            "supply_water.inlet_temperature": "140",
            "booster_electric.line_amps": "48 48 83",
            "booster_electric.terminal_ohms": "8.7 4.3 4.3",
            "supply_power.line_volts": "208 207 208",
        },
        shows_after={
            "rinse_thermometer.panel_reading": "187",
            "rinse_thermometer.reference_reading": "188",
            "booster_electric.line_amps": "83 83 84",
            "booster_electric.terminal_ohms": "2.9 2.9 2.9",
        },
        asides={"booster_electric.line_amps": ("w",)},
    ),
)


def main() -> None:
    folder = Path(__file__).resolve().parents[2] / "transcripts_demo"
    book = load_book()
    for story in STORIES:
        if not sys.argv[1:] or story.name in sys.argv[1:]:
            with tempfile.TemporaryDirectory() as scratch:
                (folder / f"{story.name}.txt").write_text(tell(story, book, Path(scratch)), "utf-8")


if __name__ == "__main__":
    main()
