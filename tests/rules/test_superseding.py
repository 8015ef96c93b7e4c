"""A rule that says more takes the reading from the plain band: fed to both, it is counted once, by the rule."""

from __future__ import annotations

import pytest

from diagnose.rules.engine import RuleRun
from diagnose.rules.registry import RULES
from tests.rule_examples import EXAMPLES, NAMES, book, read_example, run_example

PLAIN = tuple(r for r in RULES if r.name == "plain_band")
FIRING = [
    (name, line)
    for name, (rule, lines) in EXAMPLES.items()
    for line in lines
    if line.startswith("Fires:") and not rule.many
]


def counted(done: RuleRun) -> list[str]:
    return [r for f in done.findings for r in f.counts]


@pytest.mark.parametrize(("name", "line"), FIRING, ids=[f"{n}-{i}" for i, (n, _) in enumerate(FIRING)])
def test_the_reading_is_counted_once(name: str, line: str) -> None:
    example = read_example(line)
    done, plain = run_example(example), run_example(example, PLAIN)
    assert len(counted(done)) == len(set(counted(done)))
    mine = {r for f in done.firings if f.finding and f.rule in NAMES[name] for r in f.finding.counts}
    by_band = {r for f in done.firings if f.finding and f.rule == "plain_band" for r in f.finding.counts}
    assert mine
    assert not mine & by_band
    # Whatever the plain band would have counted alone is still counted, and by one rule only.
    assert set(counted(plain)) <= set(counted(done))


def test_some_rules_do_supersede_a_band() -> None:
    """Else the test above would compare with nothing."""
    taken = 0
    for _, line in FIRING:
        example = read_example(line)
        bands = set(counted(run_example(example, PLAIN)))
        taken += any(set(f.counts) & bands and f.rule != "plain_band" for f in run_example(example).findings)
    assert taken >= 5
    assert book().checks
