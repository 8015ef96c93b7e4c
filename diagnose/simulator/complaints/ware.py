"""What the kitchen says of the ware, the foam and the wash spray."""

from __future__ import annotations

from diagnose.simulator.bench import Bench
from diagnose.simulator.registry import complaint
from diagnose.simulator.washing import ware

__all__: list[str] = []

_NOTICED = 0.12  # share of a gross effect from which a kitchen speaks: judgement


def _said(effect: float) -> float:
    return max(0.0, min(effect, 1.2) - _NOTICED) * 9.0


@complaint("wash_weak")
def wash_weak(bench: Bench) -> float:
    """The sound and reach of the spray: seen long before a gauge is looked at."""
    found = ware(bench)
    if not bench.restarted.standing.motors["wash"].turns:
        return 0.0  # a pump that only hums or stands is another complaint
    return _said(max(0.0, 0.95 - found.spray) * 2.6 + 0.55 * found.lane)


@complaint("soil_left")
def soil_left(bench: Bench) -> float:
    """Plates come back from the sorting table."""
    return _said(0.95 * ware(bench).soiled)


@complaint("film_spots")
def film_spots(bench: Bench) -> float:
    """Glasses held to the light."""
    return _said(0.9 * max(ware(bench).films.values()))


@complaint("not_dry")
def not_dry(bench: Bench) -> float:
    """Water on ware that is put away."""
    return _said(0.9 * max(ware(bench).wet.values()))


@complaint("foam")
def foam(bench: Bench) -> float:
    """Foam at the curtains or in the tank."""
    return _said(0.95 * max(ware(bench).foam.values()))


@complaint("carry_over")
def carry_over(bench: Bench) -> float:
    """Specks and smears on ware that had been clean."""
    return _said(0.92 * max(ware(bench).again.values()))
