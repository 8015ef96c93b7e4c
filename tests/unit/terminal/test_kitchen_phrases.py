"""A hundred and twenty ways in which kitchens complain, each finding its complaint among the first three.

Written without looking at the phrases in the knowledge, as they come over the telephone.
"""

from __future__ import annotations

from functools import cache

import pytest

from diagnose.model import load_book
from diagnose.terminal.matcher import find

PHRASES: dict[str, tuple[str, ...]] = {
    "rinse_cold": (
        "last rinse never gets up to 180",
        "health inspector says the rinse is not hot enough",
        "strips don't turn black at the end",
        "booster not keeping up",
    ),
    "rinse_hot": ("rinse way too hot", "rinse gauge over 200", "water boils in the rinse arms and spits"),
    "rinse_pressure_low": (
        "rinse just dribbles",
        "rinse pressure under 10",
        "weak final rinse spray",
    ),
    "rinse_pressure_high": ("rinse pressure way up at 40", "rinse blasts the glasses over", "rinse gauge pegged high"),
    "rinse_none": ("no water in the final rinse", "rinse doesn't come on at all", "racks come out soapy, never rinsed"),
    "rinse_runs_on": ("rinse won't shut off", "final rinse keeps running with nothing in it", "rinse never stops"),
    "wash_cold": ("wash water lukewarm", "wash temp won't reach 150", "tank is cold"),
    "rinse_tank_cold": ("power rinse tank not hot", "second tank cold"),
    "heat_up_slow": ("takes over an hour to heat in the morning", "slow to warm up", "forever to get hot"),
    "tank_hot": ("wash tank boiling", "tank way too hot", "wash water at 190"),
    "tank_fill_slow": ("tank won't fill", "takes ages to fill up in the morning", "no water coming into the tank"),
    "tank_overfills": (
        "water keeps running into the tank",
        "tank overflows all day",
        "water going down the drain non stop",
    ),
    "tank_loses_water": ("tank keeps going low", "water level drops by itself", "tank empties out"),
    "no_start": ("won't start", "push the button and nothing happens", "dead, no lights", "does not turn on"),
    "stops_midrun": ("it keeps stopping", "shuts off in the middle of a rack", "cuts out by itself"),
    "conveyor_dead": ("racks don't move", "conveyor not moving but the pumps run", "belt stands still"),
    "table_full_runs": (
        "doesn't stop when the clean table is full",
        "racks pile up and crash at the clean end",
        "table switch not working, keeps pushing racks",
    ),
    "stops_table_empty": (
        "stops like the table is full but it's empty",
        "conveyor stops though nothing is on the table",
        "thinks the table is full",
    ),
    "racks_jam": ("racks get stuck halfway", "rack jammed inside", "trays catch on something in the machine"),
    "conveyor_pace": ("conveyor too slow", "belt goes too fast", "racks move in jerks", "conveyor speed wrong"),
    "wash_weak": ("wash spray has no power", "hardly any pressure in the wash", "wash arms barely spray"),
    "soil_left": (
        "dishes come out dirty",
        "food still stuck on plates",
        "egg on the forks after washing",
        "lipstick on glasses",
    ),
    "film_spots": ("white film on glasses", "spots on the silverware", "glasses cloudy", "streaks on plates"),
    "not_dry": ("dishes come out wet", "ware doesn't dry", "plates still wet ten minutes later"),
    "carry_over": (
        "clean racks get dirty again at the end",
        "soapy water drips on clean dishes",
        "dirty water carried over onto the clean ware",
    ),
    "foam": ("suds coming out", "foam all over the floor", "bubbles in the wash tank", "too much foam"),
    "sanitiser_weak": ("test strip shows no chlorine", "sanitizer too low", "strips read under 50 ppm"),
    "chemical_strong": ("smells like bleach", "sanitizer way too strong", "chlorine smell burns the eyes"),
    "chemical_no_feed": (
        "soap not feeding",
        "detergent bucket stays full",
        "rinse aid pump not running",
        "not pulling chemical",
    ),
    "floor_water": ("water on floor by the clean end", "leaking on the floor", "puddle under the machine"),
    "breaker_trips": ("breaker keeps tripping", "throws the breaker when it heats", "ground fault trips"),
    "motor_trips": ("pump motor kicks out on overload", "have to reset the motor", "overload trips again and again"),
    "noise": ("loud grinding noise", "machine shakes and rattles", "squealing sound", "humming loud"),
    "burning_smell": ("smells like something is burning", "burnt plastic smell at the panel", "wires getting hot"),
    "steam_out": ("steam pouring out both ends", "kitchen full of steam", "steam comes out the entrance"),
    "room_drips": ("ceiling is dripping over the machine", "hood drips water", "wall is wet, paint peeling"),
    "uses_too_much": (
        "water bill doubled",
        "uses too much water",
        "electric bill went up",
        "goes through too much gas",
    ),
    "relief_valve_blows": ("relief valve dripping", "safety valve on the booster spits water", "pop off valve leaks"),
    "gauge_disbelieved": (
        "don't trust the thermometer",
        "gauge stuck, always shows the same",
        "two thermometers disagree",
    ),
    "steam_supply": ("no steam to the machine", "steam pressure low from the boiler", "steam line bangs"),
    "gas_supply": ("burner won't light", "gas pressure low", "pilot keeps going out"),
    "flight_jams": ("plates fall off the belt", "flight belt jams", "ware gets caught at the end of the belt"),
}


@cache
def candidates() -> dict[str, list[str]]:
    return {c.id: [c.title, *c.kitchen] for c in load_book().complaints.values()}


@pytest.mark.parametrize(("phrase", "complaint"), [(p, c) for c, each in PHRASES.items() for p in each])
def test_the_complaint_is_among_the_first_three(phrase: str, complaint: str) -> None:
    assert complaint in [m.id for m in find(phrase, candidates())[:3]]


def test_the_list_is_long_enough_and_every_complaint_is_in_it() -> None:
    assert sum(len(each) for each in PHRASES.values()) >= 120
    assert set(PHRASES) == set(candidates())


def test_no_two_complaints_share_all_their_words() -> None:
    words = {c: frozenset(w for text in each for w in text.casefold().split()) for c, each in candidates().items()}
    for one, said in words.items():
        for other, heard in words.items():
            assert one == other or not said <= heard, f"{one} has no word that {other} has not"


def test_no_phrase_stands_under_two_complaints() -> None:
    seen: dict[str, str] = {}
    for complaint, texts in candidates().items():
        for text in texts:
            assert seen.setdefault(text.casefold(), complaint) == complaint, f"{text!r} is {seen[text.casefold()]} too"
