"""What the simulated machine shows, assembly by assembly: `python -m tests.unit.simulator.survey ASSEMBLY [FAULT]`.

For whoever writes faults and looks: each fault's complaints on every type, and what the looks of its assembly say of
it; each look's sound reading; ids that the book does not know, and sound readings that are not good.
"""

from __future__ import annotations

import sys
from collections.abc import Iterator

from diagnose.model import Machine
from diagnose.model.answers import show_values
from diagnose.model.observed import Reading
from diagnose.rules import findings
from diagnose.simulator import FAULTS, LOOKS, Answer, Simulated
from diagnose.units import Quantity, find_unit
from tests.unit.simulator.plates import BOOK, TYPES, plate

__all__ = ["as_reading", "outcome", "problems"]


def as_reading(check: str, answer: Answer) -> Reading:
    """An answer of the simulator as a reading of the check, rounded as one would type it."""
    spec = BOOK.checks[check].reading
    if spec is None:
        return Reading(check, check, outcome=answer.outcome)
    unit = find_unit(spec.unit, spec.quantity)
    assert unit is not None
    return Reading(check, check, {p: Quantity(float(f"{unit.from_si(v):.4g}"), unit) for p, v in answer.values.items()})


def outcome(kind: str, check: str, answer: Answer) -> str:
    """What the tool makes of an answer alone: the likeliest outcome of its finding."""
    if answer.outcome is not None:
        return answer.outcome
    run = findings(BOOK, Machine(kind, BOOK.machines[kind]), (as_reading(check, answer),))
    return "; ".join(f"{f.outcome}" for f in run.findings if f.check == check) or "no finding"


def problems(assembly: str, seeds: int = 3) -> Iterator[str]:
    """Ids unknown to the book, wrong places, and sound readings that are not good."""
    for name in FAULTS:
        if name.startswith(f"{assembly}.") and name not in BOOK.causes:
            yield f"fault {name}: no such cause"
    for name, look in LOOKS.items():
        if not name.startswith(f"{assembly}."):
            continue
        if name not in BOOK.checks:
            yield f"look {name}: no such check"
            continue
        check = BOOK.checks[name]
        for kind in TYPES:
            if not look.fits(plate(kind)):
                continue
            for seed in range(seeds):
                sim = Simulated(plate(kind), seed=seed)
                if not sim.can_read(name):
                    continue
                answer = sim.read(name)
                if check.reading is None and answer.outcome not in check.outcomes:
                    yield f"look {name}: {answer.outcome} is no outcome"
                elif check.reading is not None and list(answer.values) != (check.reading.each or [""]):
                    yield f"look {name}: places {list(answer.values)} instead of {check.reading.each or ['']}"
                else:
                    said = outcome(kind, name, answer)
                    if said in check.outcomes and not check.outcomes[said].good:
                        yield f"look {name} on {kind}, sound, seed {seed}: {said} ({_shown(name, answer)})"


def _shown(check: str, answer: Answer) -> str:
    return answer.outcome or show_values(as_reading(check, answer).values)


def main() -> None:
    """Print the survey of one assembly."""
    assembly = sys.argv[1]
    only = sys.argv[2] if len(sys.argv) > 2 else ""
    for name, fault in FAULTS.items():
        if not name.startswith(f"{assembly}.") or only not in name:
            continue
        print(name)
        for kind in TYPES:
            if fault.fits(plate(kind)):
                sim = Simulated(plate(kind), ((name, 0.6),), seed=1)
                said = sim.complaints()
                mine = [c for c in said if c in BOOK.complaints]
                looks = [n for n in LOOKS if n.startswith(f"{assembly}.") and sim.can_read(n)]
                print(f"  {kind}: {', '.join(mine) or 'NOTHING SAID'}")
                for each in looks:
                    answer = sim.read(each)
                    print(f"      {each}: {outcome(kind, each, answer)} ({_shown(each, answer)})")
    missing = [c for c in BOOK.causes if c.startswith(f"{assembly}.") and c not in FAULTS]
    unread = [
        c.id for c in BOOK.checks.values() if c.id.startswith(f"{assembly}.") and c.id not in LOOKS and not c.computed
    ]
    print("causes without a fault:", ", ".join(missing) or "none")
    print("checks without a look:", ", ".join(unread) or "none")
    for line in problems(assembly):
        print("PROBLEM", line)


if __name__ == "__main__":
    main()
