"""Every rule's manual page holds an example where it fires and one where it stays silent; both are run."""

from __future__ import annotations

import pytest

from tests.rule_examples import EXAMPLES, NAMES, read_example, run_example


@pytest.mark.parametrize("name", EXAMPLES)
def test_example_holds(name: str) -> None:
    rule, lines = EXAMPLES[name]
    said = {line.partition(":")[0] for line in lines}
    assert said == {"Fires", "Silent"}, "the manual page needs a line `Fires:` and a line `Silent:`"
    for word in ("Purpose:", "Formula:", "Source:"):
        assert word in rule.manual
    for line in lines:
        example = read_example(line)
        done = run_example(example)
        fired = [f.finding for f in done.firings if f.finding is not None and f.rule in NAMES[name]]
        if not example.fires:
            assert not fired, f"it fired: {line}"
            continue
        assert fired, f"it did not fire: {line}"
        assert example.outcome in {finding.outcome for finding in fired}, f"{fired[0].outcome}: {line}"
        assert all(finding.working or finding.rule == "chosen_outcome" for finding in fired), "it shows no working"
