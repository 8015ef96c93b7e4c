"""A small sound knowledge folder, for tests that need one to break."""

from __future__ import annotations

from pathlib import Path

__all__ = ["SMALL", "write_small"]

_CAUSE = """
[[cause]]
id = "{id}"
title = "{title}"
shows = "Water drips from the arm."
why = "It wears where the rack rubs it."
told_apart = "Look at it: the other one is whole."
how_often = "common"
repair = ["Isolate at the switch.", "Fit a new one.", "Run a rack."]
minutes = 10
parts = ["one"]
open = ["none"]
state = "isolated"
who = "technician"
cautions = ["wet_floor"]
prove_by = ["look_{id}"]
basis = {{ kind = "judgement" }}

[[check]]
id = "look_{id}"
title = "The {title}"
ask = "Look at it. Is it whole?"
steps = ["Stop the machine.", "Look at it."]
instrument = "eyes"
minutes = 1
open = ["none"]
state = "idle hot"
who = "operator"
cautions = []
looks_at = ["{id}"]
basis = {{ kind = "judgement" }}
[check.outcomes]
whole = {{ title = "whole", good = true }}
broken = {{ title = "broken" }}
[check.shows]
{id} = {{ broken = "nearly always" }}
none = {{ whole = "nearly always" }}
"""

SMALL: dict[str, str] = {
    "instruments.toml": """
[[instrument]]
id = "gauge"
title = "gauge"
quantity = "pressure"
absolute = "2 psi"
basis = { kind = "judgement" }
""",
    "words.toml": """
[likelihood]
title = "t"
origin = "o"
words = { "nearly always" = 0.93, "seldom" = 0.07 }
[frequency]
title = "t"
origin = "o"
words = { "common" = 0.02, "uncommon" = 0.003 }
[shift]
title = "t"
origin = "o"
words = { "twice" = 2.0 }
""",
    "context.toml": '[[question]]\nid = "age"\nask = "How old?"\nanswers = ["new", "old"]\n',
    "cautions.toml": """
[[caution]]
id = "wet_floor"
hazard = "wet floor"
title = "WET"
text = ["Mop."]
basis = { kind = "common practice" }
""",
    "sources.toml": "",
    "machines/plain.toml": """
[[machine]]
id = "plain"
title = "Plain machine"
basis = { kind = "judgement" }
[machine.traits]
tanks = 1
prewash = false
sanitising = "hot water"
booster = "electric"
booster_place = "built in"
tank_heat = "electric"
phases = 3
connection = "delta"
vents = "both ends"
table_turn = false
conveyor = "pawl bar"
motor_protection = "overload relay"
[machine.plate]
volts = "208 V"
rinse_pressure = "20 psi"
""",
    "limits/rinse.toml": """
[[limit]]
id = "pressure"
title = "Rinse pressure"
quantity = "pressure"
low = ["15 psi", "100 kPa"]
high = ["25 psi", "170 kPa"]
basis = { kind = "common practice" }
""",
    "complaints/rinse.toml": """
[[complaint]]
id = "no_rinse"
title = "No rinse"
kitchen = ["no water at the end"]
of = ["arm.short"]
unlisted = "uncommon"
prove_by = ["arm.pressure"]
basis = { kind = "judgement" }
""",
    "assemblies/arm.toml": 'title = "Rinse arm"\n'
    + """
[[event]]
id = "short"
title = "Too little water leaves the arm"
gate = "any"
of = ["cracked", "capless", "choked"]
basis = { kind = "judgement" }

[[check]]
id = "pressure"
title = "Rinse pressure"
ask = "What does the gauge read?"
steps = ["Run a rack.", "Read the gauge."]
reading = { quantity = "pressure", unit = "psi", least = "0 psi", most = "150 psi" }
instrument = "panel gauge"
minutes = 1
open = ["none"]
state = "running"
who = "operator"
cautions = []
looks_at = ["choked", "short"]
basis = { kind = "judgement" }
[check.outcomes]
low = { title = "low", high = "limit.pressure.low" }
good = { title = "good", good = true, low = "limit.pressure.low", high = "limit.pressure.high" }
high = { title = "high", low = "limit.pressure.high" }
[check.shows]
choked = { high = "nearly always" }
short = { low = "nearly always" }
none = { good = "nearly always" }
"""
    + "".join(
        _CAUSE.format(id=i, title=t)
        for i, t in (("cracked", "arm is cracked"), ("capless", "end cap is off"), ("choked", "jets are choked"))
    ),
}


def write_small(folder: Path, **changes: str) -> Path:
    """Write the small knowledge; `changes` maps a file (dots and slashes as __) to text put in its place.

    A value may also be "old => new", which replaces within the file.
    """
    files = dict(SMALL)
    for key, value in changes.items():
        name = key.replace("__", "/") + ".toml"
        old, arrow, new = value.partition(" => ")
        if arrow:
            assert old in files[name], f"{old!r} is not in {name}"
            files[name] = files[name].replace(old, new, 1)
        else:
            files[name] = value
    for name, text in files.items():
        path = folder / name
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_text(text, "utf-8")
    return folder
