"""All rules, in a plain tuple: whoever writes one adds a line here."""

from __future__ import annotations

from diagnose.rules import booster_electric
from diagnose.rules.bands import plain_band
from diagnose.rules.chosen import chosen_outcome
from diagnose.rules.engine import Rule

__all__ = ["RULES"]

_PATTERN = 100  # says more than a band about the readings of one check
_COMPUTED = 80  # answers a check that is never asked, with readings and findings of others
_PLAIN = 10  # what is left

RULES: tuple[Rule, ...] = (
    Rule("booster_electric.line_amps", _PATTERN, booster_electric.line_amps),
    Rule("booster_electric.line_amps_single", _PATTERN, booster_electric.line_amps_single),
    Rule("booster_electric.terminal_ohms", _PATTERN, booster_electric.terminal_ohms),
    Rule("chosen_outcome", _PLAIN, chosen_outcome),
    Rule("plain_band", _PLAIN, plain_band),
)
