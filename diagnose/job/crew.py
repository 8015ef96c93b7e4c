"""Who works on a job, and what must stay closed while they do."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

__all__ = ["WHO", "Crew", "crew_of"]

WHO = ("operator", "technician", "licensed electrician", "licensed gas fitter", "licensed plumber")


@dataclass(frozen=True)
class Crew:
    """`who` may do a check or repair; accesses in `keep_closed` may not be opened."""

    who: tuple[str, ...] = ("operator", "technician")
    keep_closed: tuple[str, ...] = ()


def crew_of(named: Iterable[str], keep_closed: Iterable[str] = ()) -> Crew:
    """The crew when these are there: what an operator may do anybody may, and every licence is a technician's.

    >>> crew_of(["licensed plumber"]).who
    ('operator', 'technician', 'licensed plumber')
    >>> crew_of(["operator"]).who, crew_of([]).who
    (('operator',), ('operator', 'technician'))
    """
    wanted = set(named) or {"technician"}
    if wanted - {"operator"}:
        wanted.add("technician")
    return Crew(tuple(w for w in WHO if w in wanted | {"operator"}), tuple(keep_closed))
