"""Advice on the small book: who may do what, what is open already, several complaints, and the price of repairs."""

from __future__ import annotations

import numpy as np
import pytest

from diagnose.inference import (
    Advice,
    Circumstances,
    Economy,
    Option,
    Prediction,
    Situation,
    Task,
    advise,
    bearing_checks,
    build_tree,
    concerned,
    solve_and_predict,
)
from diagnose.inference.options import weigh_options
from diagnose.inference.repairs import HELP, KNOWN_OF_SEVERAL, MINUTES_A_BIT, Repairs
from diagnose.model import Book
from tests.unit.inference.hand_book import BOOK, MACHINE, saw

TREE = build_tree(BOOK, MACHINE)
ECONOMY = Economy.of(BOOK)
COLD = (("cold", 0, True),)
FREE = Economy({"box": 10.0}, {"running": 0.0}, {"running": 0.0}, 200.0)


def ask(situation: Situation, now: Circumstances | None = None) -> Advice:
    solution, predictions = solve_and_predict(TREE, situation, bearing_checks(TREE, situation))
    return advise(BOOK, TREE, situation, solution, predictions, ECONOMY, now or Circumstances())


def option(advice: Advice, name: str) -> Option | None:
    return next((o for o in advice.options if o.id == name), None)


def test_only_what_bears_on_the_complaint() -> None:
    """Not the gas flame (no gas), not the computed sum; of "stuck" only what shares a cause with it."""
    assert set(bearing_checks(TREE, Situation(COLD))) == {"a.gauge", "b.amps", "b.ohms", "a.inlet"}
    assert set(bearing_checks(TREE, Situation((("stuck", 0, True),)))) == {"b.amps"}
    assert concerned(TREE, Situation((("stuck", 0, True),))) == TREE.causes_under("stuck")
    assert concerned(TREE, Situation()) == TREE.leaves


def test_every_option_says_what_it_costs() -> None:
    advice = ask(Situation(COLD))
    amps = option(advice, "b.amps")
    assert amps is not None
    assert amps.outcomes is not None
    assert amps.then is not None
    assert sum(amps.outcomes.values()) == pytest.approx(1.0)
    assert amps.then["one_element_out"] == "b.element_open"
    assert (amps.minutes, amps.opening, amps.moving) == (6.0, 4.0, 0.0)
    (repair,) = [o for o in advice.options if o.kind == "repair"]
    assert amps.saves == pytest.approx(repair.expected - amps.expected)
    assert advice.best.kind == "check"


def test_a_cover_is_paid_once() -> None:
    closed = option(ask(Situation(COLD)), "b.amps")
    opened = option(ask(Situation(COLD), Circumstances(open=frozenset({"control box"}))), "b.amps")
    assert closed is not None
    assert opened is not None
    assert (closed.minutes - opened.minutes, opened.opening) == (4.0, 0.0)


def test_the_state_of_the_machine_is_paid_for() -> None:
    running = option(ask(Situation(COLD)), "b.ohms")
    locked = option(ask(Situation(COLD), Circumstances(state="isolated")), "b.ohms")
    assert running is not None
    assert locked is not None
    assert (running.moving, locked.moving) == (5.0, 0.0)


def test_limits_of_who_and_where() -> None:
    operator = ask(Situation(COLD), Circumstances(who=frozenset({"operator"})))
    assert {o.id for o in operator.options if o.kind == "check"} == {"a.gauge", "a.inlet"}
    assert not [o for o in operator.options if o.kind == "repair"], "every repair is a technician's"
    shut = ask(Situation(COLD), Circumstances(may_open=frozenset({"control box"})))
    assert option(shut, "b.amps") is not None
    assert option(shut, "b.ohms") is None
    skipped = ask(Situation(COLD), Circumstances(unavailable=frozenset({"b.amps"})))
    assert option(skipped, "b.amps") is None


def test_a_clear_case_is_repaired() -> None:
    known = Situation(COLD, (saw("b.amps", "one_element_out"), saw("b.ohms", "open"), saw("a.inlet", "warm")))
    best = ask(known).best
    assert (best.kind, best.id) == ("repair", "b.element_open")
    assert best.minutes == 60 + 6 + 5 + 3 + 2, "work, cover, isolating, back, and the look afterwards"


def test_help_when_nothing_listed_is_left() -> None:
    """All that this person may mend is ruled out."""
    out = ("b.element_open", "b.pole_open", "a.water_cold", "a.gauge_low")
    assert ask(Situation(COLD, (), (), out), Circumstances(who=frozenset({"technician"}))).best.kind == "help"


def test_two_complaints_that_one_cause_explains() -> None:
    both = (("cold", 0, True), ("stuck", 0, True))
    advice = ask(Situation(both, (saw("b.amps", "all_low"),)))
    first = next(o for o in advice.options if o.kind == "repair")
    assert first.id == "s.volts_low"


def test_no_complaint_left() -> None:
    """Then everything is concerned, and the advice still stands."""
    assert ask(Situation((("cold", 0, True), ("cold", 1, False)), (), ("a.gauge_low",))).options


def test_costs_must_be_known() -> None:
    with pytest.raises(ValueError, match=r"access\.toml"):
        Economy.of(Book())


def plan(p: list[float], tasks: list[Task | None]) -> tuple[float, int]:
    repairs = Repairs(tasks, [range(len(p))], Task(0.0), FREE)
    minutes, first = repairs.at_once(np.array([p]), repairs.stands([(frozenset(), "running")]))
    return float(minutes[0]), int(first[0])


def test_single_fault_by_probability_over_cost() -> None:
    """0.6 at 30 minutes before 0.4 at 40; 3 in 100 of the repairs do not take and end with help."""
    minutes, first = plan([0.4, 0.6], [Task(40.0), Task(30.0)])
    assert first == 1
    left = 1 - 0.6 * 0.97  # when the second repair is begun
    assert minutes == pytest.approx(30 + left * 40 + (left - 0.4 * 0.97**2) * 200, abs=0.01)


def test_a_wrong_repair_wastes_what_it_is_fitted_with() -> None:
    """A part that costs 30 minutes where it was the wrong one: the other repair goes first, and its waste counts."""
    minutes, first = plan([0.4, 0.6], [Task(40.0), Task(30.0, wasted=30.0)])
    assert first == 0
    left = 1 - 0.4 * 0.97  # when the second repair is begun
    still = left - 0.6 * 0.97**2
    assert minutes == pytest.approx(40 + left * 30 + still * (30 + 200), abs=0.01)


def test_certain_faults_cost_both() -> None:
    minutes, _ = plan([1.0, 1.0], [Task(40.0), Task(30.0)])
    assert minutes == pytest.approx(70 + (1 - 0.97**2) * 200, abs=0.01)


def test_shared_cover_is_opened_once() -> None:
    box = frozenset({"box"})
    apart, _ = plan([1.0, 1.0], [Task(40.0, box), Task(40.0)])
    together, _ = plan([1.0, 1.0], [Task(40.0, box), Task(40.0, box)])
    assert together == pytest.approx(apart)


def test_what_cannot_be_mended_here() -> None:
    assert plan([0.1, 0.9], [Task(90.0), None]) == (pytest.approx(200.0, abs=1e-3), HELP)


def test_one_call_does_for_two_complaints_whatever_the_last_digits() -> None:
    """Nothing can be mended here: one call, though each complaint's price is that of a call up to rounding only."""
    rng = np.random.default_rng(1)
    beliefs = rng.dirichlet(np.ones(4), size=(300, 2)).reshape(300, 8)
    repairs = Repairs([None] * 8, [range(4), range(4, 8)], Task(0.0), FREE)
    minutes, first = repairs.at_once(beliefs, repairs.stands([(frozenset(), "running")] * 300))
    assert minutes == pytest.approx(np.full(300, FREE.help_minutes))
    assert np.all(first == HELP)


def test_many_causes_are_looked_into_before_help_is_called() -> None:
    """Forty causes, any one repair of 90 minutes: no single look pays against help, but looks there are."""
    names = tuple(f"c{n}" for n in range(40))
    belief = np.full(40, 1 / 40)
    halves = np.where(np.arange(40) < 20, 1 / 20, 0.0)
    half = Prediction("half", {"left": 0.5, "right": 0.5}, names, np.array([halves, halves[::-1]]))
    repairs = Repairs([Task(90.0)] * 40, [range(40)], Task(0.0), FREE)
    advice = weigh_options(names, belief, [half], {"half": Task(5.0)}, repairs, Circumstances())
    assert advice.search
    assert advice.best.kind == "check"
    assert advice.best.saves == pytest.approx(MINUTES_A_BIT * 1.0 - 5.0), "it tells one bit and takes five minutes"
    assert advice.best.expected < FREE.help_minutes


def test_a_poor_check_goes_before_a_call_that_is_far_dearer_and_not_before_one_that_is_not() -> None:
    """Of four causes it tells half a bit and takes twenty minutes; what is left to look for is two bits."""
    names = tuple(f"c{n}" for n in range(4))
    belief = np.full(4, 1 / 4)
    leans = np.array([0.445, 0.445, 0.055, 0.055])
    poor = Prediction("poor", {"left": 0.5, "right": 0.5}, names, np.array([leans, leans[::-1]]))

    def best(help_minutes: float) -> str:
        economy = Economy({}, {"running": 0.0}, {"running": 0.0}, help_minutes)
        repairs = Repairs([Task(300.0)] * 4, [range(4)], Task(0.0), economy)
        return weigh_options(names, belief, [poor], {"poor": Task(20.0)}, repairs, Circumstances()).best.kind

    assert best(240.0) == "check"
    assert best(60.0) == "help"


def test_what_another_complaint_explains_is_not_what_is_begun_with() -> None:
    """The first complaint is dear, what only the second has is quick and hardly believed: that is no start."""
    tasks = [None, None, Task(10.0)]
    stands = Repairs(tasks, [[0, 1], [2]], Task(0.0), FREE).stands([(frozenset(), "running")])
    for believed, begins in ((0.1, HELP), (0.9, 2)):
        repairs = Repairs(tasks, [[0, 1], [2]], Task(0.0), FREE, rest=[2])
        assert repairs.at_once(np.array([[0.5, 0.5, believed]]), stands)[1] == [begins]


def test_a_check_that_tells_nothing_is_not_advised() -> None:
    names = tuple(f"c{n}" for n in range(40))
    belief = np.full(40, 1 / 40)
    idle = Prediction("idle", {"yes": 0.5, "no": 0.5}, names, np.array([belief, belief]))
    repairs = Repairs([Task(90.0)] * 40, [range(40)], Task(0.0), FREE)
    advice = weigh_options(names, belief, [idle], {"idle": Task(1.0)}, repairs, Circumstances())
    assert advice.best.kind == "help"
    (check,) = [o for o in advice.options if o.kind == "check"]
    assert check.saves < 0


def test_what_is_foretold_a_little_off_spares_nothing_by_it() -> None:
    """The check tells nothing, but what is said to be believed after it is surer than what is believed now."""
    names = tuple(f"c{n}" for n in range(40))
    belief = np.full(40, 1 / 40)
    surer = np.where(np.arange(40) < 30, 1 / 30, 0.0)
    off = Prediction("off", {"yes": 0.5, "no": 0.5}, names, np.array([surer, surer]))
    repairs = Repairs([Task(90.0)] * 40, [range(40)], Task(0.0), FREE)
    advice = weigh_options(names, belief, [off], {"off": Task(1.0)}, repairs, Circumstances())
    assert advice.best.kind == "help"
    (check,) = [o for o in advice.options if o.kind == "check"]
    assert check.saves == pytest.approx(-1.0)


def test_what_is_known_is_repaired_before_another_complaint_is_searched() -> None:
    """A look at the second complaint pays more a minute; yet the known cause of the first is mended before it."""
    belief = np.array([0.98, 0.5, 0.5])
    look = Prediction("look", {"y": 0.5, "z": 0.5}, ("x", "y", "z"), np.array([[0.98, 1.0, 0.0], [0.98, 0.0, 1.0]]))
    tasks = [Task(60.0), Task(60.0), Task(60.0)]

    def first(groups: list[list[int]]) -> str:
        repairs = Repairs(tasks, groups, Task(0.0), FREE)
        there = Circumstances()
        return weigh_options(("x", "y", "z"), belief, [look], {"look": Task(2.0)}, repairs, there).best.id

    assert first([[0], [1, 2]]) == "x"
    belief[0] = KNOWN_OF_SEVERAL - 0.01
    assert first([[0], [1, 2]]) == "look"
